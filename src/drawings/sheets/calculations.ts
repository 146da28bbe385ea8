/** Calculation sheets: basis, then the steps behind the governing result of each check, in formula – numbers – result – clause. */
import { formatNumber } from '../../base/quantity/index.js';
import type { CheckResult } from '../../checks/contract.js';
import type { LoadBasis } from '../../loads/model.js';
import type { Block, TableRow } from '../annotate/index.js';
import type { SheetBody, SheetContext, SheetKind } from './contract.js';
import { diagramBlocks } from './diagrams.js';
import { flowSheets } from './parts.js';

const value = (v: number): string => {
  const a = Math.abs(v);
  return formatNumber(v, a >= 1000 ? 0 : a >= 100 ? 1 : a >= 10 ? 2 : 3, { trim: true });
};

/** Of results that ask the same question of equal parts, the one nearest its limit. */
function governing(results: readonly CheckResult[]): CheckResult[] {
  const best = new Map<string, CheckResult>();
  for (const r of results) {
    if ((r.status !== 'pass' && r.status !== 'fail') || r.capacity <= 0) continue;
    const key = `${r.check}|${r.path.replace(/\/\d+/g, '/#')}`;
    const known = best.get(key);
    if (!known || r.ratio > known.ratio) best.set(key, r);
  }
  return [...best.values()];
}

/** The sheet's face has no perpendicular sign: Fc⊥ is lettered Fc,perp. */
const lettered = (text: string): string => text.replaceAll('⊥', ',perp');

function stepsOf(ctx: SheetContext, r: CheckResult): Block[] {
  const out: Block[] = [{ kind: 'heading', text: `${r.subject} – ${r.title}: ${r.ratio.toFixed(2)}, ${r.status}` }];
  if (r.combination) out.push({ kind: 'para', text: `Governing combination ${r.combination}`, face: 'condensed' });
  for (const line of ctx.input.explain(r.id)) {
    if (line.kind === 'heading') {
      out.push({ kind: 'para', text: lettered(line.text), face: 'condensed-bold' });
      continue;
    }
    const middle = line.substituted && line.substituted !== line.formula ? ` = ${line.substituted}` : '';
    const note = line.note ? ` (${line.note})` : '';
    const text = `${line.symbol} = ${line.formula}${middle} = ${value(line.value)} ${line.unit}   [${line.clause}] ${line.meaning}${note}`;
    out.push({ kind: 'para', text: lettered(text), face: 'condensed' });
  }
  return out;
}

/** Load basis, each net coefficient on one row with the pressure it gives. */
function basisRows(rows: LoadBasis['rows']): TableRow[] {
  const out: TableRow[] = [];
  for (let i = 0; i < rows.length; i++) {
    const r = rows[i]!;
    const next = rows[i + 1];
    const recalled = r.provenance === 'memory' ? '; recalled, confirm' : '';
    if (r.symbol === 'CN' && next?.symbol === 'p') {
      out.push([
        'CN; p',
        r.meaning.replace('net coefficient, ', ''),
        `${value(r.value)}; ${value(next.value)}`,
        next.unit,
        `${r.clause}; ${next.clause}${recalled}`,
      ]);
      i++;
    } else out.push([r.symbol, r.meaning, value(r.value), r.unit, `${r.clause}${recalled}`]);
  }
  return out;
}

function draw(ctx: SheetContext): SheetBody[] {
  const { loads, effects, results } = ctx.input;
  const { area, style } = ctx;
  const basis = basisRows(loads.basis.rows);
  const cases: TableRow[] = loads.cases.map((c) => [c.id, c.title, c.clause]);
  const balance: TableRow[] = effects.balance.map((b) => [
    b.case,
    value(b.applied.x),
    value(b.applied.y),
    value(-b.applied.z),
    value(b.reactions.z),
    b.errorApplied.toExponential(0),
    b.errorReactions.toExponential(0),
  ]);
  const hand: TableRow[] = effects.hand.map((k) => [
    k.about,
    k.case,
    value(k.statics),
    value(k.analysed),
    k.unit,
    k.governs === 'statics'
      ? 'statics governs'
      : k.analysed > k.statics * 1.0005
        ? 'analysis is more and governs'
        : k.reason,
  ]);
  const families = [...new Map(loads.combinations.map((c) => [c.label, c])).values()].map(
    (c): TableRow => [c.label, String(c.CD), c.clause],
  );
  const blocks: Block[] = [
    { kind: 'heading', text: 'How to read these sheets' },
    {
      kind: 'para',
      text: 'Allowable-stress design. Each step gives symbol = formula = numbers = result, then the clause. A part that stands for several equal ones is the one nearest its limit. Loads act on the roof planes: dead on the slope, live and snow on the horizontal projection, wind square to the surface. Framing gives its reactions to the beams, beams and posts are solved as a space frame of pinned joints, footings take the post reactions. Side load at roof level is held by a notional restraint until the side-load system is worked out: see the cover.',
    },
    {
      kind: 'table',
      title: 'Load basis',
      columns: [
        { head: 'Symbol' },
        { head: 'Meaning', max: 26 * style.note },
        { head: 'Value', align: 'right' },
        { head: 'Unit' },
        { head: 'Clause', grow: true },
      ],
      rows: basis,
    },
    {
      kind: 'table',
      title: 'Load cases',
      columns: [{ head: 'Case' }, { head: 'What it is', max: 44 * style.note }, { head: 'Clause', grow: true }],
      rows: cases,
    },
    {
      kind: 'table',
      title: 'Combinations',
      columns: [{ head: 'Combination' }, { head: 'CD', align: 'right' }, { head: 'Clause', grow: true }],
      rows: families,
    },
    {
      kind: 'table',
      title: 'Balance: loads put on, and reactions, lb (down positive)',
      columns: [
        { head: 'Case' },
        { head: 'Along house', align: 'right' },
        { head: 'Out', align: 'right' },
        { head: 'Down', align: 'right' },
        { head: 'Reactions', align: 'right' },
        { head: 'Against integral', align: 'right' },
        { head: 'Against reactions', align: 'right', grow: true },
      ],
      rows: balance,
    },
    {
      kind: 'table',
      title: 'Hand statics beside the analysis',
      columns: [
        { head: 'Quantity', max: 24 * style.note },
        { head: 'Case' },
        { head: 'By hand', align: 'right' },
        { head: 'Analysed', align: 'right' },
        { head: 'Unit' },
        { head: 'Remark', grow: true },
      ],
      rows: hand,
    },
    ...diagramBlocks(ctx),
    ...governing(results).flatMap((r) => stepsOf(ctx, r)),
  ];
  return flowSheets(ctx, { title: 'Calculations', blocks, columns: area.w > 24 ? 3 : 2, layer: 'G-ANNO-NOTE' });
}

export const calculations: SheetKind = { title: 'Calculations', discipline: 'S', needed: () => true, draw };
