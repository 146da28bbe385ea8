/** Calculation sheets: basis, then the steps behind the governing result of each check, in formula – numbers – result – clause. */
import { thrustSet } from '../../analysis/index.js';
import type { LoadBasis } from '../../loads/model.js';
import type { Block, TableRow } from '../annotate/index.js';
import { sketchBlocks } from './basis-sketches.js';
import { notAskedTable } from './calculations-not-asked.js';
import type { SheetBody, SheetContext, SheetKind } from './contract.js';
import { diagramBlocks } from './diagrams.js';
import { governingTable, sorted, statementsTable, stepsOf, value } from './governing.js';
import { flowSheets } from './parts.js';
import { sideWords } from './side-words.js';

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

/** What a reader must know of the method, true of this project. */
function howToRead(ctx: SheetContext): string[] {
  const { effects } = ctx.input;
  const held = effects.sway.some((s) => s.force.some((f) => Math.abs(f.x) + Math.abs(f.y) > 1e-9));
  return [
    'Allowable-stress design of wood and soil, strength design of concrete. Each step names the quantity, with its clause at the right, then shows formula = numbers = result. Of equal parts the one nearest its limit stands for all of them, but joints and trusses are shown mark by mark; numbers are rounded only in print.',
    'Loads act on the roof planes: dead on the slope, live and snow on the horizontal projection, wind square to the surface. Framing hands its reactions to the beams, beams and posts are solved as a space frame, and footings take what the posts bring. Wood shortens under load, posts in the frame too, so a beam on more than two posts leans on them a little differently than on stiff supports. Every case is balanced against an independent integral of the loads and against the reactions.',
    'Beside the analysis stands plain statics of tributary lengths. Where the frame shows less than statics by over 5 % without a named reason (the beam runs on over a post, knee braces carry part, framing nearer the bearing than a spread load), statics governs and the demand is raised to it; else the frame governs, and the table names the reason. A force marked “from the frame” is output of that analysis: its parts by load case stand beside their factors, so that the sum can be redone.',
    `${sideWords(ctx)}${held ? ' The analysis notes what each system must take at roof level, case by case; the checks of that system start from it.' : ''}`,
    ...(thrustSet(ctx.input)
      ? [
          'Trusses that spread are worked out twice: with one bearing free to slide, and with both fastened, so that they push the beams apart: joints are scheduled for the larger of both, and the beams are checked for the push sideways.',
        ]
      : []),
  ];
}

function draw(ctx: SheetContext): SheetBody[] {
  const { loads, effects } = ctx.input;
  const { area, style } = ctx;
  const found = sorted(ctx);
  const basis = basisRows(loads.basis.rows);
  const cases: TableRow[] = loads.cases.map((c) => [c.id, c.title, c.clause]);
  const balance: TableRow[] = effects.balance.map((b) => [
    b.case,
    value(b.applied.x),
    value(b.applied.y),
    value(-b.applied.z),
    value(-b.reactions.z),
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
        : k.reason || (k.analysed < k.statics * 0.9995 ? 'within 5 % of statics: the frame governs' : 'alike'),
  ]);
  const families = [...new Map(loads.combinations.map((c) => [c.label, c])).values()].map(
    (c): TableRow => [c.label, String(c.CD), c.clause],
  );
  const blocks: Block[] = [
    { kind: 'heading', text: 'How to read these sheets' },
    ...howToRead(ctx).map((text): Block => ({ kind: 'para', text })),
    governingTable(found, style.note),
    statementsTable(found, ctx),
    notAskedTable(ctx),
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
    ...sketchBlocks(ctx, found),
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
    ...found.calculated.flatMap((r) => stepsOf(ctx, r)),
  ];
  return flowSheets(ctx, { title: 'Calculations', blocks, columns: area.w > 24 ? 3 : 2, layer: 'G-ANNO-NOTE' });
}

export const calculations: SheetKind = {
  title: 'Calculations',
  discipline: 'S',
  file: 'calculations',
  needed: () => true,
  draw,
};
