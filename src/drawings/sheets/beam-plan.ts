/** Column and beam plan: what carries. */

import { type Block, placeTags, sectionMark, type TableRow, type TagWish } from '../annotate/index.js';
import type { Primitive } from '../ir/index.js';
import { idAt, SHEET_IDS, type SheetBody, type SheetContext, type SheetKind } from './contract.js';
import { bar, jointTags } from './frame-parts.js';
import { alongHouse, coverView, houseStretch, type Stretch, stretchPlan } from './house-stretch.js';
import { dims, inflate, unique } from './parts.js';
import { postsOnPlan, slabPlan, standsOff } from './plan-base.js';
import { planSheet } from './plans/plan-sheet.js';
import { sectionLayout } from './section-layout.js';
import { sectionLines } from './section-plane.js';

function content(ctx: SheetContext, stretch: Stretch) {
  const { structure } = ctx.input;
  const { style } = ctx;
  const h = style.note;
  const off = standsOff(structure);
  const { model, scale } = stretch;
  const items: Primitive[] = [...(off ? [] : stretchPlan(ctx, stretch)), ...slabPlan(structure)];
  const over: Primitive[] = [];
  const wishes: TagWish[] = [];
  const beams = structure.members.filter((m) => m.role === 'beam' || m.role === 'ledger');
  const struts = structure.members.filter((m) => m.role === 'strut');
  const braces = structure.members.filter((m) => m.role === 'brace');
  // Braces lie below what they brace.
  items.push(...[...struts, ...braces].map((m) => bar(m, 'S-BEAM', 'hidden')));
  items.push(...beams.map((m) => bar(m, 'S-BEAM', 'new')), ...postsOnPlan(structure, { pen: 'cut', fill: 'poche' }));
  const mid = { x: model.x + model.w / 2, y: model.y + model.h / 2 };
  for (const m of [...beams, ...struts]) {
    const at = { x: m.start.x + 0.38 * (m.end.x - m.start.x), y: m.start.y + 0.38 * (m.end.y - m.start.y) };
    const runsAlongY = Math.abs(m.end.y - m.start.y) > Math.abs(m.end.x - m.start.x);
    const off = runsAlongY
      ? { x: at.x < mid.x ? h * 5 : -h * 5, y: 0 }
      : { x: 0, y: at.y < mid.y ? h * 3.5 : -h * 3.5 };
    wishes.push({ kind: 'beam', text: m.mark, at, off, layer: 'S-ANNO-SYMB', style, path: m.path });
  }
  for (const m of structure.members.filter((p) => p.role === 'post')) {
    wishes.push({
      kind: 'post',
      text: m.mark,
      at: { x: m.start.x, y: m.start.y },
      off: { x: m.start.x < mid.x ? -h * 3.4 : h * 3.4, y: h * 2.6 },
      layer: 'S-ANNO-SYMB',
      style,
      path: m.path,
    });
  }
  const joints = jointTags(ctx);
  const reach = { x: h * 4.5, y: h * 4.2 };
  wishes.push(
    ...joints.wish(['beam-to-post', 'beam-splice', 'beam-to-wall-post', 'beam-to-wall'], reach),
    ...joints.wish(['brace-to-beam', 'brace-to-post', 'strut-to-post'], reach),
    ...joints.wish(['ledger-to-house', 'post-to-house'], reach),
  );
  // Braces of one mark are alike: the last one carries the tag, away from the joints, which begin with the first.
  for (const mark of new Set(braces.map((m) => m.mark))) {
    const m = braces.findLast((b) => b.mark === mark)!;
    const at = { x: (m.start.x + m.end.x) / 2, y: (m.start.y + m.end.y) / 2 };
    const off = { x: at.x < mid.x ? h * 4 : -h * 4, y: at.y < mid.y ? h * 3 : -h * 3 };
    wishes.push({ kind: 'beam', text: mark, at, off, layer: 'S-ANNO-SYMB', style, path: m.path });
  }
  const posted = structure.members.filter((m) => m.role === 'post');
  const px = unique(posted.map((m) => m.start.x));
  const py = unique(posted.map((m) => m.start.y));
  const bx = unique(beams.flatMap((m) => [m.start.x, m.end.x]));
  // A ledger lies against the wall line the string starts from: its own center is no dimension to lay out by.
  const by = unique(beams.filter((m) => m.role === 'beam').flatMap((m) => [m.start.y, m.end.y]));
  // From a house far off the footing plan lays the posts out.
  const house = off ? [] : [0];
  // A slab that runs on toward a house far off ends with the view.
  const seen = (x: number): number => (off ? Math.min(Math.max(x, model.x), model.x + model.w) : x);
  const slabs = structure.slabs.flatMap((p) => p.outline.map((q) => seen(q.x)));
  const datum = Math.min(...bx, ...slabs);
  const common = { scale: scale.ratio, layer: 'S-ANNO-DIMS' } as const;
  const across = dims(ctx, {
    ...common,
    side: 'above',
    datum: model.y + model.h,
    tiers: [{ stations: unique([...px, ...bx]) }, { stations: [bx[0]!, bx.at(-1)!] }],
  });
  const up = dims(ctx, {
    ...common,
    side: 'left',
    datum,
    tiers: [
      { stations: unique([...house, ...py, ...by]) },
      { stations: [house[0] ?? Math.min(...by, ...py), Math.max(...by, ...py)] },
    ],
  });
  // Along the house: beam and ledger ends from the corners a tape can be hooked on.
  const along = off ? [] : alongHouse(ctx, stretch, common, bx);
  over.push(...across.items, ...up.items, ...along);
  const clear = (up.depth + h * 2) / scale.ratio;
  const cuts = sectionLines(
    structure,
    datum - clear,
    model.y,
    Math.max(...bx, ...slabs) + 24,
    model.y + model.h + (across.depth + h * 2) / scale.ratio,
  );
  const spots = sectionLayout(ctx);
  for (const [i, cut] of cuts.entries())
    over.push(
      ...sectionMark({
        ...cut,
        ends: Math.abs(cut.a.x - cut.b.x) < 1 ? 'b' : 'both',
        number: String(i + 1),
        sheet: idAt(SHEET_IDS.sections, spots[i]!.sheet),
        layer: 'A-ANNO-SYMB',
        style,
      }),
    );
  over.push(...placeTags(wishes, scale.ratio, over, items));
  return { items, over };
}

function blocks(ctx: SheetContext): Block[] {
  const { structure } = ctx.input;
  const { len } = ctx;
  const h = ctx.style.note;
  const braces = structure.members.some((m) => m.role === 'brace');
  const lengths = new Set(structure.members.filter((m) => m.role === 'post').map((m) => len(m.length))).size;
  const rows: TableRow[] = structure.members
    .filter((m) => ['beam', 'ledger', 'post', 'strut'].includes(m.role))
    .map((m) => [
      { text: m.mark, mark: m.mark, path: m.path },
      m.section.label,
      m.role === 'post'
        ? `bottom ${len(m.start.z)}, top ${len(m.end.z)}`
        : `top at ${len(m.start.z + m.section.depth / 2)}`,
      len(m.length),
    ]);
  return [
    {
      kind: 'table',
      title: structure.members.some((m) => m.role === 'ledger') ? 'Posts, beams and ledger' : 'Posts and beams',
      columns: [
        { head: 'Mark' },
        { head: 'Section', max: 24 * h },
        { head: 'Level from floor' },
        { head: 'Cut length', align: 'right', grow: true },
      ],
      rows,
    },
    {
      kind: 'para',
      text: `Levels are from the finished house floor; below it is negative. ${lengths > 1 ? 'Posts differ in length: measure' : 'Measure'} again after the piers are set and cut each post to the measured length.`,
    },
    { kind: 'heading', text: 'Notes' },
    {
      kind: 'numbered',
      items: [
        'Beams bear on their posts, not on bolts. Splices only where shown, over a post.',
        'Dimensions are to post centers, to beam ends, and from the face of the existing wall line.',
        'Joints are numbered in diamonds; the joint schedule gives the allowable load each must have.',
        ...(braces
          ? [
              'Knee braces and cross members are dashed. A brace’s run and rise are to where its center line meets the underside and the center of the post; its cuts are in the schedules.',
            ]
          : []),
        'Brace posts both ways until the roof is sheathed. Lifting beams takes a lift or enough hands: weights are in the schedules.',
      ],
    },
  ];
}

function draw(ctx: SheetContext): SheetBody[] {
  const off = standsOff(ctx.input.structure);
  // A section mark stands beyond the strings above.
  const above = 2.5 * ctx.style.bubble;
  return planSheet(ctx, {
    title: 'Column and beam plan',
    blocks: blocks(ctx),
    view: (box) => (off ? coverView(ctx, box, above) : houseStretch(ctx, box, above)),
    content: (v) => content(ctx, v),
    // Slabs that run on toward a house far off end at the edge of the view.
    window: (v) => (off ? inflate(v.model, 24) : undefined),
  });
}

export const beamPlanSheet: SheetKind = {
  title: 'Column and beam plan',
  discipline: 'S',
  needed: () => true,
  draw,
};
