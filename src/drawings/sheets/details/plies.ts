/** Built-up sections: their plies in section, and how they are fastened to each other along the member. */
import { distance } from '../../../base/vec.js';
import { findFastener } from '../../../catalog/index.js';
import type { PlyFastening } from '../../../project/ply-fastening.js';
import type { Member } from '../../../structure/model.js';
import type { Primitive, Rect } from '../../ir/index.js';
import { see } from '../../views/camera.js';
import type { SheetContext } from '../contract.js';
import { dims } from '../parts.js';
import type { Detail, DetailView } from './contract.js';
import { broken, dot, facing, nearPicture, planDirection, spot, squareTo } from './picture.js';

/** Fasteners shown along the member. */
const SHOWN = 3;

/** One member of each built-up section: level ones; posts are fastened as the schedule says. */
const builtUp = (ctx: SheetContext): Member[] =>
  ctx.input.structure.members.filter(
    (m, i, all) =>
      m.section.plies > 1 &&
      (m.role === 'beam' || m.role === 'ridge') &&
      all.findIndex((o) => o.section.choice === m.section.choice && o.role === m.role) === i,
  );

function heights(f: PlyFastening, depth: number): number[] {
  if (f.rows < 2) return [depth / 2];
  const run = depth - 2 * f.edge;
  return Array.from({ length: f.rows }, (_, i) => f.edge + (i * run) / (f.rows - 1));
}

function face(ctx: SheetContext, m: Member, f: PlyFastening | undefined, notes: Notes): DetailView {
  const camera = facing(planDirection(m));
  const a = spot(camera, m.start);
  const low = a.y - m.section.depth / 2;
  const run = Math.min(f ? f.end + SHOWN * f.spacing : 30, distance(m.start, m.end), 60);
  const frame: Rect = { x: a.x - 2, y: low - 1, w: run + 2, h: m.section.depth + 2 };
  const depth = see(camera, m.start).depth;
  const picture = nearPicture(ctx, { camera, frame, depth: [depth - 10, depth + 10], keep: (p) => p.part === m.id });
  const zs = f ? heights(f, m.section.depth) : [];
  const xs = f ? Array.from({ length: SHOWN }, (_, i) => f.end + i * f.spacing).filter((x) => x < run) : [];
  const d = f ? (findFastener(f.fastener)?.D ?? 0.162) : 0;
  return {
    name: 'From the side',
    frame,
    items: [
      ...picture,
      ...xs.flatMap((x) => zs.map((z) => dot({ x: a.x + x, y: low + z }, Math.max(0.3, d), 'fastener'))),
    ],
    margin: { left: 5.5, right: 2, above: 1, below: 6.5 },
    over: (scale): Primitive[] => {
      const common = { scale, layer: 'S-ANNO-DIMS', first: 3.2 * ctx.style.note } as const;
      return [
        ...dims(ctx, {
          ...common,
          side: 'below',
          datum: frame.y,
          tiers: [{ stations: [a.x, ...xs.map((x) => a.x + x)] }],
        }).items,
        ...dims(ctx, {
          ...common,
          side: 'left',
          datum: frame.x,
          tiers: [{ stations: [low, ...zs.map((z) => low + z), low + m.section.depth] }],
        }).items,
        ...broken(ctx, { x: a.x + run, y: low - 1.5 }, { x: a.x + run, y: low + m.section.depth + 1.5 }),
      ];
    },
    keys: [
      ...(f
        ? [{ at: { x: a.x + (xs[1] ?? xs[0] ?? 4), y: low + zs.at(-1)! }, text: notes.nails, off: { x: 3, y: -3 } }]
        : []),
    ],
  };
}

function section(ctx: SheetContext, m: Member, notes: Notes): DetailView {
  const camera = facing(squareTo(planDirection(m)));
  const at = { x: (m.start.x + m.end.x) / 2, y: (m.start.y + m.end.y) / 2, z: m.start.z };
  const c = spot(camera, at);
  const depth = see(camera, at).depth;
  const { width, depth: tall, plyWidth } = m.section;
  const frame: Rect = { x: c.x - width / 2 - 2, y: c.y - tall / 2 - 1, w: width + 4, h: tall + 2 };
  return {
    name: 'Section',
    frame,
    items: nearPicture(ctx, {
      camera,
      frame,
      depth: [depth - 1, depth + 1],
      cutAt: depth,
      keep: (p) => p.part === m.id,
    }),
    margin: { left: 2, right: 5, above: 1, below: 6.5 },
    over: (scale) =>
      dims(ctx, {
        scale,
        layer: 'S-ANNO-DIMS',
        side: 'below',
        datum: frame.y,
        first: 3.2 * ctx.style.note,
        tiers: [{ stations: [c.x - width / 2, c.x + width / 2] }],
      }).items,
    keys: [
      {
        at: { x: c.x - width / 2 + plyWidth / 2, y: c.y + tall * 0.25 },
        text: notes.plies,
        mark: m.mark,
        off: { x: 5, y: 3 },
      },
      ...(notes.spacers !== ''
        ? [
            {
              at: {
                x: c.x - width / 2 + plyWidth + (width - plyWidth * m.section.plies) / (m.section.plies - 1) / 2,
                y: c.y - tall * 0.2,
              },
              text: notes.spacers,
              off: { x: 5, y: -2 },
            },
          ]
        : []),
    ],
  };
}

interface Notes {
  readonly plies: string;
  readonly spacers: string;
  readonly nails: string;
}

function detailOf(ctx: SheetContext, m: Member): Detail {
  const { len, input } = ctx;
  const choice = input.project.choices.sections[m.section.choice];
  const f = choice && 'plyFastening' in choice ? choice.plyFastening : undefined;
  const said = choice && 'fastening' in choice ? choice.fastening : '';
  const marks = [
    ...new Set(
      input.structure.members
        .filter((o) => o.section.choice === m.section.choice && o.role === m.role)
        .map((o) => o.mark),
    ),
  ];
  const spacers = choice && 'spacers' in choice && choice.spacers > 0 ? choice : undefined;
  const notes: Notes = {
    plies: `${marks.join(', ')}: ${m.section.plies} plies, each ${len(m.section.plyWidth)} x ${len(m.section.depth)}, ${m.section.label}. Crowns up, tops flush.`,
    spacers: spacers
      ? `${spacers.spacers} strips of plywood ${len(spacers.spacerThickness)} between plies, full depth: they carry nothing.`
      : '',
    nails: f
      ? `${findFastener(f.fastener)?.name ?? f.fastener} at every face where two plies meet: ${f.rows} rows, ${len(f.spacing)} along each, ${len(f.edge)} from the edges, the first ${len(f.end)} from the end.`
      : '',
  };
  return {
    id: `plies ${m.section.choice} ${m.role}`,
    title: `Plies of ${marks.join(', ')}`,
    views: [face(ctx, m, f, notes), section(ctx, m, notes)],
    words: [
      ...(said !== '' && said !== '–' ? [`Fastening of the plies as stated: ${said.replace(/\.$/, '')}.`] : []),
      'Every ply runs the whole length between splices; butt joints of plies only over posts.',
    ],
    scales: ['3', '1-1/2', '1', '3/4', '1/2'],
    call: {
      at: { x: m.start.x + 0.62 * (m.end.x - m.start.x), y: m.start.y + 0.62 * (m.end.y - m.start.y), z: m.start.z },
      radius: 10,
    },
  };
}

export const plyDetails = (ctx: SheetContext): readonly Detail[] => builtUp(ctx).map((m) => detailOf(ctx, m));
