/** What serves a joint: the allowable loads copied from the maker's published table, direction by direction. */
import { useState } from 'react';
import type { CheckResult } from '../../../src/index.js';
import { edit } from '../store/project.js';

const LOADS = [
  ['down', 'Down'],
  ['up', 'Up'],
  ['along', 'Along the house'],
  ['across', 'Square to the house'],
] as const;

/** Demands as the note states them: `This joint must carry 392 lb down, …`. */
const asked = (note: string, word: string): string => new RegExp(`([\\d,]+) lb ${word}`).exec(note)?.[1] ?? '';
const WORD: Readonly<Record<string, string>> = {
  down: 'down',
  up: 'up',
  along: 'along the house',
  across: 'square to the house',
};

export function ProductForm({ result }: { readonly result: CheckResult }) {
  const [v, setV] = useState<Record<string, string>>({
    species: 'Douglas Fir-Larch',
    G: '0.5',
    duration: '1.6',
    count: '1',
  });
  const [fault, setFault] = useState('');
  const put = (k: string) => (e: React.ChangeEvent<HTMLInputElement>) => setV((o) => ({ ...o, [k]: e.target.value }));
  const field = (k: string, label: string, placeholder = '') => (
    <label key={k}>
      {label}
      <input name={k} value={v[k] ?? ''} placeholder={placeholder} onChange={put(k)} />
    </label>
  );
  const submit = async (e: React.FormEvent): Promise<void> => {
    e.preventDefault();
    if (!v.product?.trim() || !v.source?.trim()) {
      setFault('Say what it is and which table the loads were copied from: the reviewer will ask.');
      return;
    }
    setFault('');
    const load = (k: string): string => (v[k]?.trim() ? (/[a-z]/i.test(v[k]!) ? v[k]! : `${v[k]} lb`) : 'none');
    await edit(`${result.subject}: ${v.product}`, [
      {
        path: '/choices/joints/-',
        value: {
          serves: [result.subject],
          product: v.product,
          count: Number(v.count) || 1,
          down: load('down'),
          up: load('up'),
          along: load('along'),
          across: load('across'),
          duration: Number(v.duration) || 1.6,
          species: v.species,
          G: Number(v.G) || 0.5,
          ...(v.concrete?.trim() ? { concrete: v.concrete } : {}),
          source: v.source,
        },
      },
    ]);
  };
  return (
    <form className="remedies" onSubmit={submit}>
      <p className="quiet">
        Pick a connector or fasteners in the shop’s or maker’s published table and copy its <b>allowable</b> loads.
        Leave a direction empty when the table gives none.
      </p>
      {field('product', 'What it is', 'e.g. steel post base, 5/8 in anchor')}
      {LOADS.map(([k, label]) => {
        const need = asked(result.note, WORD[k]!);
        return field(k, `${label}${need ? `, needs ${need} lb` : ''}`, 'lb, or empty');
      })}
      <div className="pair">
        {field('count', 'Pieces at each joint')}
        {field('duration', 'Load duration factor of the table')}
        {field('species', 'Wood the table is for')}
        {field('G', 'Its specific gravity')}
      </div>
      {field('concrete', 'Concrete the table is for, if it stands on any', 'e.g. 2500 psi')}
      {field('source', 'Where the loads were read', 'e.g. evaluation report, Table 1')}
      {fault && (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
      <button type="submit" className="main">
        Use it at {result.subject}
      </button>
    </form>
  );
}
