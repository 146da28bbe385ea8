/** What a thing on a sheet is, and its value changed in place. What cannot be changed there says where it comes from. */
import { useEffect, useRef, useState } from 'react';
import { type DimensionMove, formatLength } from '../../../src/drawing.js';
import { quick } from '../core/client.js';
import type { PackedSheet } from '../core/pack.js';
import { Field } from '../fields/Field.js';
import { child, valueAt } from '../fields/schema.js';
import { openField, openPanel, pick } from '../store/desk.js';
import { applied, useProject } from '../store/project.js';
import type { Point, Size } from './camera.js';
import type { Hit } from './hit.js';

interface Props {
  readonly sheet: PackedSheet;
  readonly hit: Hit;
  readonly at: Point;
  readonly room: Size;
  readonly close: () => void;
}

export function EditBox({ sheet, hit, at, room, close }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const before = useRef<Element | null>(document.activeElement);
  useEffect(() => {
    const first = box.current?.querySelector<HTMLElement>('input, select, button');
    first?.focus({ preventScroll: true });
    return () => (before.current as HTMLElement | null)?.focus?.({ preventScroll: true });
  }, []);
  const narrow = room.w < 560;
  const wide = 340;
  const style = narrow
    ? undefined
    : {
        left: Math.max(8, Math.min(at.x + 14, room.w - wide - 8)),
        ...(at.y > room.h * 0.55 ? { bottom: Math.max(8, room.h - at.y + 14) } : { top: at.y + 14 }),
      };
  return (
    <div
      ref={box}
      className={narrow ? 'edit-box from-below' : 'edit-box'}
      style={style}
      role="dialog"
      aria-label="Change in place"
      onKeyDown={(e) => {
        if (e.key === 'Escape') close();
        e.stopPropagation();
      }}
    >
      <button type="button" className="close" aria-label="Close" onClick={close}>
        ×
      </button>
      <Body sheet={sheet} hit={hit} close={close} />
    </div>
  );
}

function Body({ sheet, hit, close }: { sheet: PackedSheet; hit: Hit; close: () => void }) {
  const dimension = hit.role === undefined ? undefined : sheet.dimensions[hit.role];
  if (dimension && dimension.path === undefined) return <DimensionBody dimension={dimension} close={close} />;
  if (hit.mark !== undefined) return <PartBody mark={hit.mark} close={close} />;
  const path = dimension?.path ?? hit.path;
  if (path !== undefined) return <ValueBody path={path} text={dimension?.text ?? hit.text} close={close} />;
  return <NoteBody text={hit.text ?? ''} sheet={sheet} />;
}

function DimensionBody({ dimension: d, close }: { dimension: PackedSheet['dimensions'][string]; close: () => void }) {
  const [moves, setMoves] = useState<readonly DimensionMove[]>();
  const [choice, setChoice] = useState(0);
  const units = useProject((p) => p.summary?.units ?? 'us');
  // What is shown may carry words (“to corner”): only the length is typed over.
  const [typed, setTyped] = useState(() => formatLength(d.value, { units, glyphs: true }));
  const [fault, setFault] = useState<string>();
  useEffect(() => {
    let here = true;
    if (d.plan) void quick.call('moves', d.a, d.b, d.angle).then((m) => here && setMoves(m));
    else setMoves([]);
    return () => {
      here = false;
    };
  }, [d]);
  if (!moves) return <p>Looking up what stands at both ends…</p>;
  const move = moves[choice];
  if (!move)
    return (
      <>
        <h3>{d.text}</h3>
        <p>
          {d.plan
            ? 'Both ends of this dimension stand at the house or the lot, as you measured them. Change them under “Your file”, house or lot.'
            : 'This length is measured off the placed structure. It follows from the plans: change it there, on S-101, S-102 or S-103.'}
        </p>
      </>
    );
  const apply = async (e: React.FormEvent): Promise<void> => {
    e.preventDefault();
    const changed = await quick.call('dimension', move, d.value, typed);
    if (changed.text === undefined) {
      const i = changed.issues[0];
      setFault(`${i?.message ?? 'That is no length.'} ${i?.expected ? `Write ${i.expected}.` : ''}`);
      return;
    }
    if (await applied(`${d.text} to ${typed}`, changed)) close();
  };
  return (
    <form onSubmit={apply}>
      <h3>Dimension {d.text}</h3>
      <label>
        New length
        <input
          value={typed}
          onChange={(e) => setTyped(e.target.value)}
          onFocus={(e) => e.target.select()}
          aria-invalid={fault !== undefined}
          inputMode="text"
        />
      </label>
      {fault && (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
      {moves.length > 1 ? (
        <fieldset>
          <legend>What moves</legend>
          {moves.map((m, i) => (
            <label key={m.handles.join()} className="choice">
              <input type="radio" name="move" checked={i === choice} onChange={() => setChoice(i)} /> {m.text}
            </label>
          ))}
        </fieldset>
      ) : (
        <p className="quiet">{move.text}</p>
      )}
      <button type="submit" className="main">
        Change
      </button>
    </form>
  );
}

function PartBody({ mark, close }: { mark: string; close: () => void }) {
  const part = useProject((p) => p.summary?.parts.find((x) => x.mark === mark));
  const results = useProject((p) => p.summary?.results.filter((r) => r.subject === mark).length ?? 0);
  const tree = useProject((p) => p.summary?.tree);
  const shared = part ? choicesOf(tree, part.path) : [];
  return (
    <>
      <h3>{part?.what ?? mark}</h3>
      {part?.path ? (
        <Field path={part.path} shallow />
      ) : (
        <p>This mark belongs to something measured, not designed: it is written under “Your file”.</p>
      )}
      {shared.map(([path, name]) => (
        <details key={path}>
          <summary>Size of “{name}”</summary>
          <p className="quiet">Shared by every part that names it.</p>
          <Field path={path} shallow />
        </details>
      ))}
      <div className="row">
        {results > 0 && (
          <button
            type="button"
            onClick={() => {
              pick(mark);
              openPanel('part');
              close();
            }}
          >
            Its {results} checks and load path
          </button>
        )}
        {part?.path && (
          <button
            type="button"
            onClick={() => {
              openField(part.path);
              close();
            }}
          >
            All its values
          </button>
        )}
      </div>
    </>
  );
}

function ValueBody({ path, text, close }: { path: string; text: string | undefined; close: () => void }) {
  return (
    <>
      <h3>{text ?? 'Value'}</h3>
      <Field path={path} done={close} />
    </>
  );
}

function NoteBody({ text, sheet }: { text: string; sheet: PackedSheet }) {
  const calculated = sheet.id.startsWith('S-7') || sheet.id.startsWith('S-6') || sheet.id.startsWith('S-3');
  return (
    <>
      <h3 className="clipped">{text}</h3>
      <p>
        {calculated
          ? 'This is a result: it follows from sizes, places and loads. Pick a mark beside it to see the steps, or change what it follows from.'
          : 'These words are written by the program from the model and change with it. They cannot be changed by hand, so that no two sheets disagree.'}
      </p>
    </>
  );
}

/** Choices that a part names: its section, its footing. */
function choicesOf(tree: unknown, path: string): readonly (readonly [path: string, name: string])[] {
  const part = valueAt(tree, path);
  if (typeof part !== 'object' || part === null) return [];
  const { section, footing } = part as { section?: unknown; footing?: unknown };
  return [
    ...(typeof section === 'string' ? [[child('/choices/sections', section), section] as const] : []),
    ...(typeof footing === 'string' ? [[child('/choices/footings', footing), footing] as const] : []),
  ];
}
