/** Existing and demolition plan: what is there, what stays, what goes, and where the house is opened. */
import type { Vec2 } from '../../../base/vec.js';
import { placeTags, type TagWish } from '../../annotate/index.js';
import type { Primitive } from '../../ir/index.js';
import type { DrawingInput, SheetBody, SheetContext, SheetKind } from '../contract.js';
import { dims, unique } from '../parts.js';
import { slabPlan, WALL } from '../plan-base.js';
import { type KeyedNote, keyedNotes } from './demolition-notes.js';
import { oldNames, oldThings, roofWords, slabNames, steps } from './ground.js';
import { type NearHouse, nearHouse, nearHousePlan, roofAbove } from './near-house.js';
import { openingTags, shownOpenings } from './openings.js';
import { planSheet } from './plan-sheet.js';

/** Holes cut through slabs that stay, and strips of wall opened up. */
function openedUp(notes: readonly KeyedNote[]): Primitive[] {
  return notes.flatMap((n): Primitive[] =>
    n.cuts.map((ring) => ({
      kind: 'polyline',
      layer: n.layer,
      pen: 'demolition',
      closed: true,
      points: ring,
      ...(n.mark !== undefined && { mark: n.mark }),
    })),
  );
}

function strings(ctx: SheetContext, v: NearHouse, notes: readonly KeyedNote[]): Primitive[] {
  const { structure, project } = ctx.input;
  const old = [
    ...structure.slabs.filter((s) => s.state !== 'new').flatMap((s) => s.outline),
    ...project.patio.existing.flatMap((t) => t.outline),
    ...project.patio.steps.filter((s) => s.state !== 'new').flatMap((s) => s.outline),
  ];
  const corners = structure.walls.filter((w) => Math.abs(w.start.y) < 1).flatMap((w) => [w.start.x, w.end.x]);
  const seen = corners.filter((x) => x >= v.model.x && x <= v.model.x + v.model.w);
  const common = { scale: v.scale.ratio, layer: 'A-ANNO-DIMS' } as const;
  // Where the wall faced by the cover is opened up, from the corners in view.
  const opened = notes.flatMap((n) => n.stations ?? []);
  const ends = seen.length > 0 ? seen : [Math.min(...old.map((p) => p.x)), Math.max(...old.map((p) => p.x))];
  const below =
    opened.length === 0
      ? []
      : dims(ctx, {
          ...common,
          side: 'below',
          datum: v.model.y,
          tiers: [{ stations: unique([...opened, ...ends.filter(Number.isFinite)]) }],
        }).items;
  if (old.length === 0) return [...below];
  return [
    ...below,
    ...dims(ctx, {
      ...common,
      side: 'above',
      datum: v.model.y + v.model.h,
      tiers: [{ stations: unique([...old.map((p) => p.x), ...seen]) }],
    }).items,
    ...dims(ctx, {
      ...common,
      side: 'left',
      datum: Math.min(...old.map((p) => p.x)),
      tiers: [{ stations: unique([0, ...old.map((p) => p.y)]) }],
    }).items,
  ];
}

function content(ctx: SheetContext, v: NearHouse, notes: readonly KeyedNote[]) {
  const { structure } = ctx.input;
  const { style } = ctx;
  const h = style.note;
  const shown = shownOpenings(ctx, v.model);
  const slabs = new Set(structure.slabs.filter((s) => s.state !== 'new').map((s) => s.mark));
  const items: Primitive[] = [
    ...slabPlan(structure).filter((p) => p.mark !== undefined && slabs.has(p.mark)),
    ...steps(ctx),
    ...oldThings(ctx, () => true),
    ...nearHousePlan(ctx, v),
    ...roofAbove(structure),
    ...openedUp(notes),
  ];
  const over: Primitive[] = strings(ctx, v, notes);
  const wishes: TagWish[] = notes.flatMap((n) =>
    n.places.map((at: Vec2) => ({
      kind: 'note' as const,
      text: String(n.number),
      at,
      off: { x: 3.4 * h, y: at.y < WALL ? 3.4 * h : 2.6 * h },
      layer: 'A-ANNO-SYMB' as const,
      style,
      mark: `note ${n.number}`,
    })),
  );
  over.push(...placeTags([...openingTags(ctx, shown), ...wishes], v.scale.ratio, over, items));
  over.push(
    ...oldNames(ctx, v.scale.ratio, over, items, (t) => (t.state === 'removed' ? `${t.name}, removed` : t.name)),
  );
  over.push(...roofWords(ctx, v.scale.ratio, over, items));
  over.push(...slabNames(ctx, v.scale.ratio, over, items));
  return { items, over };
}

function draw(ctx: SheetContext): SheetBody[] {
  const notes = keyedNotes(ctx.input, ctx.len);
  const { built } = ctx.input.project.house;
  return planSheet(ctx, {
    title: 'Existing and demolition plan',
    view: (box) => nearHouse(ctx, box, { rooms: false }),
    content: (v) => content(ctx, v, notes),
    blocks: [
      { kind: 'heading', text: 'Keyed notes' },
      { kind: 'numbered', items: notes.map((n) => n.text) },
      { kind: 'heading', text: 'What the lines mean' },
      {
        kind: 'bullets',
        items: [
          'Thin: existing, stays. Filled wall: existing wall.',
          'Heavy short dashes: removed, cut or opened up.',
          'Long dashes: edge of the new roof, for reference.',
        ],
      },
      { kind: 'heading', text: 'Cautions' },
      {
        kind: 'bullets',
        items: [
          'Have the utility locating service mark the ground before digging or sawing; it does not mark private lines. Slabs hide conduit, water and gas: stop at anything not expected.',
          'Turn off and prove dead the circuits in any wall or cover that is opened. Cap nothing under pressure without its trade.',
          'No wall, header, rafter or post of the house is cut beyond what is shown. Treat every wall as load-bearing until somebody qualified has said otherwise.',
          'Shore an old cover before its posts or ledger are loosened; take it down from the top, nobody under it.',
          `${built === undefined ? 'The year the house was built is not stated.' : `The house was built in ${built}, as stated.`} Before 1978 paint may hold lead; old stucco, siding, roofing and pipe wrap may hold asbestos (common knowledge, no source read). Have them tested where local rules ask, before they are disturbed.`,
          'Saw concrete wet or with extraction; wear a mask for silica dust, goggles and ear muffs. Keep the street and drains clear of slurry.',
          'Close opened walls against rain the same day. Debris goes where the local rule says.',
        ],
      },
    ],
  });
}

/** Drawn where something stands already at the cover, or the house is opened. */
const needed = (input: DrawingInput): boolean => keyedNotes(input, String).length > 0;

export const demolition: SheetKind = { title: 'Existing and demolition plan', discipline: 'A', needed, draw };
