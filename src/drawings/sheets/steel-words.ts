/** The steel of a footing in words, from the bars as they are laid: schedule, notes and details say the same. */
import { BAR_GRADE, EARTH_COVER, type LaidSteel, laidSteel, TOP_COVER } from '../../checks/footings/laid-steel.js';
import type { Footing } from '../../structure/model.js';
import type { Block, TableRow } from '../annotate/index.js';
import type { SheetContext } from './contract.js';

type Len = (inches: number) => string;

/** Where the bar sizes, hooks and covers come from. */
export const STEEL_SOURCE = 'ACI 318-14 20.6.1.3, 25.3, recalled';

/** Bars are cut and bent to the eighth. */
const eighth = (x: number): number => Math.round(x * 8) / 8;

export const matText = ({ mat }: LaidSteel, len: Len): string =>
  mat
    ? `(${mat.count}) #${mat.bar} each way, ${len(eighth(mat.length))} long${mat.count > 1 ? `, ${len(eighth(mat.spacing))} apart` : ''}`
    : '–';

export const uprightText = ({ uprights: u }: LaidSteel, len: Len): string =>
  u
    ? `(${u.count}) #${u.bar}, ${len(eighth(u.height))} high, evenly on a ring ${len(eighth(2 * u.ring))} dia. through their centers`
    : '–';

export function hookText({ uprights: u }: LaidSteel, len: Len): string {
  if (!u) return '–';
  if (!u.hook) return 'straight';
  const { leg, bend, room, need, fits } = u.hook;
  const share =
    room < need ? `, of ${len(eighth(need))} for full yield: counted in part` : `; ${len(eighth(need))} needed`;
  return `90°, leg ${len(eighth(leg))} outward, bend ${len(eighth(bend))} inside dia.; ${len(eighth(room))} of pad over its underside${share}${fits ? '' : '. THE LEG DOES NOT FIT THE PAD WITH ITS COVER: ask the office'}`;
}

export const tieText = ({ ties }: LaidSteel, len: Len): string =>
  ties
    ? `(${ties.count}) #${ties.bar} rings ${len(eighth(ties.outside))} outside dia. at ${len(ties.spacing)} from the top down, cut ${len(eighth(ties.stock))}`
    : 'none stated';

export function anchorText(ctx: SheetContext, f: Footing): string {
  const a = ctx.input.project.choices.anchors?.[f.choice];
  if (f.embedded || f.onSlab) return '–';
  return a
    ? `${ctx.len(a.bolt)} headed bolt, ${ctx.len(a.embedment)} in concrete`
    : 'embedment not stated: as the base’s maker prints';
}

/** Footings whose bars can be placed, with them. */
export const steeled = (ctx: SheetContext): { readonly f: Footing; readonly steel: LaidSteel }[] =>
  ctx.input.structure.footings.flatMap((f) => {
    const steel = laidSteel(f);
    return !f.onSlab && (steel.mat || steel.uprights) ? [{ f, steel }] : [];
  });

/** One sentence of cover and grade for notes. */
export const coverText = (len: Len): string =>
  `Bars ASTM A615 grade ${BAR_GRADE}; ${len(EARTH_COVER)} concrete to soil below and beside every bar and tie, ${len(TOP_COVER)} over the upper ends (${STEEL_SOURCE})`;

/** Bars, hooks, ties and anchor of each footing, one row for those made alike. */
export function steelSchedule(ctx: SheetContext): Block[] {
  const groups = new Map<string, { marks: string[]; cells: string[] }>();
  for (const { f, steel } of steeled(ctx)) {
    const cells = [
      matText(steel, ctx.len),
      uprightText(steel, ctx.len),
      hookText(steel, ctx.len),
      tieText(steel, ctx.len),
      anchorText(ctx, f),
    ];
    const known = groups.get(cells.join('|'));
    if (!known) groups.set(cells.join('|'), { marks: [f.mark], cells });
    else if (!known.marks.includes(f.mark)) known.marks.push(f.mark);
  }
  if (groups.size === 0) return [];
  const rows: TableRow[] = [...groups.values()].map(({ marks, cells }) => [marks.join(', '), ...cells]);
  const max = 26 * ctx.style.note;
  return [
    { kind: 'gap' },
    {
      kind: 'table',
      title: 'Footing steel schedule',
      columns: [
        { head: 'Mark', max: 10 * ctx.style.note },
        { head: 'Pad', max },
        { head: 'Pier uprights', max },
        { head: 'Hook in the pad', max, grow: true },
        { head: 'Ties', max },
        { head: 'Anchor', max: 18 * ctx.style.note },
      ],
      rows,
    },
    {
      kind: 'para',
      text: `${coverText(ctx.len)}. Lengths to the nearest eighth; steel detail as called on the footing plan.`,
    },
  ];
}

/** For the footing plan: what has to lie in the hole before the pour, briefly. */
export function steelNotes(ctx: SheetContext): string[] {
  const all = steeled(ctx);
  if (all.length === 0) return [];
  const hooked = all.some(({ steel }) => steel.uprights?.hook);
  return [
    `${coverText(ctx.len)}.${hooked ? ' Pier uprights end in hooks in the pad, legs outward.' : ''} Bars, hooks, ties and anchors: footing steel schedule and steel detail.`,
  ];
}
