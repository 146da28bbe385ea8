/** Outer edge of each slab: thickness, fall, what is new and what is kept; joints and thickened edge of a new one. */
import { formatSlope } from '../../../base/quantity/index.js';
import type { Vec2, Vec3 } from '../../../base/vec.js';
import { GROUND } from '../../../checks/roof/slab-fall.js';
import { heightAt } from '../../../structure/ground.js';
import type { SlabPlaced } from '../../../structure/model.js';
import type { Primitive, Rect } from '../../ir/index.js';
import type { SheetContext } from '../contract.js';
import { dims } from '../parts.js';
import type { Detail } from './contract.js';
import { broken, facing, nearPicture, part, soilIn, stroke } from './picture.js';

/** Control joints no farther apart than this many thicknesses, and as deep as this share of it. Common practice, no source. */
const JOINTS = 30;
const JOINT_DEPTH = 1 / 4;
/** A new slab's edge is made this deep and wide where it is not shuttered against something. Common practice, no source. */
const EDGE = 8;

/** A slab that begins within this of the house line meets the wall, inches. */
const AT_HOUSE = 2;

export const meetsHouse = (slab: SlabPlaced): boolean => slab.outline.some((p) => Math.abs(p.y) <= AT_HOUSE);

/** Whether an outline turns both ways round. */
function hasInnerCorner(outline: readonly Vec2[]): boolean {
  const turns = outline.map((p, i) => {
    const q = outline[(i + 1) % outline.length]!;
    const r = outline[(i + 2) % outline.length]!;
    return (q.x - p.x) * (r.y - q.y) - (q.y - p.y) * (r.x - q.x);
  });
  return turns.some((t) => t > 1e-6) && turns.some((t) => t < -1e-6);
}

function detailOf(ctx: SheetContext, slab: SlabPlaced): Detail {
  const { len } = ctx;
  const { structure } = ctx.input;
  const xs = slab.outline.map((p) => p.x);
  const y1 = Math.max(...slab.outline.map((p) => p.y));
  // A cut clear of the piers, through the outermost edge.
  const edge = slab.outline.filter((p) => Math.abs(p.y - y1) < 1).map((p) => p.x);
  const middle =
    edge.length > 1 ? (Math.min(...edge) + Math.max(...edge)) / 2 : (Math.min(...xs) + Math.max(...xs)) / 2;
  const piers = structure.footings.map((f) => f.at.x);
  const x =
    [0, 0.11, -0.13, 0.23, -0.27]
      .map((t) => middle + t * (Math.max(...xs) - Math.min(...xs)))
      .find((v) => piers.every((p) => Math.abs(p - v) > 24)) ?? middle;
  const camera = facing({ x: 0, y: 1 });
  const top = heightAt(slab.top, { x, y: y1 });
  const fresh = slab.state === 'new';
  const frame: Rect = {
    x: y1 - 30,
    y: top - Math.max(slab.thickness, fresh ? EDGE : 0) - 7,
    w: 48,
    h: Math.max(slab.thickness, fresh ? EDGE : 0) + 14,
  };
  const low = (y: number): number => heightAt(slab.top, { x, y }) - slab.thickness;
  const thick = [
    { x: y1 - EDGE, y: top - EDGE },
    { x: y1, y: top - EDGE },
    { x: y1, y: top - slab.thickness },
    { x: y1 - EDGE - (EDGE - slab.thickness), y: low(y1 - EDGE) },
  ];
  const cutAt = x;
  const joint = y1 - 20;
  const items: Primitive[] = [
    ...soilIn(ctx, cutAt, frame),
    ...(fresh && slab.thickness < EDGE
      ? part(thick, 'hidden', { pattern: 'concrete', fill: true, finish: true, mark: slab.mark })
      : []),
    ...nearPicture(ctx, {
      camera,
      frame,
      depth: [cutAt - 2, cutAt + 2],
      cutAt,
      finish: true,
      keep: (p) => p.part === slab.mark,
    }),
    ...(fresh
      ? [
          stroke(
            [
              { x: joint, y: heightAt(slab.top, { x, y: joint }) },
              { x: joint, y: heightAt(slab.top, { x, y: joint }) - slab.thickness * JOINT_DEPTH },
            ],
            'cut',
            'control-joint',
            true,
          ),
        ]
      : []),
  ];
  const bays = Math.ceil((Math.max(...xs) - Math.min(...xs)) / (JOINTS * slab.thickness));
  const fall = -slab.top.gy;
  const grade = heightAt(structure.grade, { x, y: y1 });
  return {
    id: `slab-edge ${slab.mark}`,
    title: `Edge of ${fresh ? 'new' : 'kept'} slab ${slab.mark}`,
    views: [
      {
        frame,
        items,
        margin: { left: 5.5, right: 5.5, above: 2, below: fresh ? 6.5 : 3 },
        over: (scale) => {
          const common = { scale, layer: 'A-ANNO-DIMS', first: 3.2 * ctx.style.note } as const;
          return [
            ...dims(ctx, {
              ...common,
              side: 'left',
              datum: frame.x,
              tiers: [{ stations: [low(frame.x), heightAt(slab.top, { x, y: frame.x })] }],
            }).items,
            ...dims(ctx, {
              ...common,
              side: 'right',
              datum: frame.x + frame.w,
              tiers: [{ stations: [...(fresh && slab.thickness < EDGE ? [top - EDGE] : []), grade, top] }],
            }).items,
            ...(fresh && slab.thickness < EDGE
              ? dims(ctx, { ...common, side: 'below', datum: frame.y, tiers: [{ stations: [y1 - EDGE, y1] }] }).items
              : []),
            ...broken(
              ctx,
              { x: frame.x, y: low(frame.x) - 1 },
              { x: frame.x, y: heightAt(slab.top, { x, y: frame.x }) + 1 },
            ),
          ];
        },
        keys: [
          {
            at: { x: y1 - 12, y: heightAt(slab.top, { x, y: y1 - 12 }) },
            text: `${slab.mark}: ${fresh ? 'new' : 'existing'} slab, ${len(slab.thickness)} thick, falls ${formatSlope(fall)} away from the house; at least 1/4 in per foot (IRC 2018 R401.3). Its outer edge ${len(top)} from the floor.`,
            mark: slab.mark,
            path: slab.path,
            off: { x: 2, y: 4 },
          },
          {
            at: { x: y1 + 10, y: heightAt(structure.grade, { x, y: y1 + 10 }) },
            text: `Ground below the slab’s edge, falling ${len(GROUND.fall)} in the first ${len(GROUND.over)} where the lot allows (IRC 2018 R401.3); water may not run to the neighbour.`,
            off: { x: 2, y: 4 },
          },
          ...(fresh
            ? [
                {
                  at: { x: joint, y: heightAt(slab.top, { x, y: joint }) },
                  text: `Control joints cut ${len(slab.thickness * JOINT_DEPTH)} deep within a day, no farther apart than ${len(JOINTS * slab.thickness)} (${JOINTS} thicknesses): ${bays > 1 ? `${bays} bays across the slab` : 'one bay across the slab'}${hasInnerCorner(slab.outline) ? '; one at each inner corner' : ''} (common practice, no source).`,
                  off: { x: -2, y: 4 },
                },
                {
                  at: { x: y1 - EDGE * 0.6, y: top - EDGE * 0.75 },
                  text: `Edge thickened to ${len(EDGE)} deep and wide on undisturbed or compacted ground (common practice, no source); it is no footing.`,
                  off: { x: -4, y: -3 },
                },
              ]
            : [
                {
                  at: { x: y1 - 2, y: top - slab.thickness / 2 },
                  text: 'Kept slab: saw it clear of each new pier, no nearer to its edge than it is thick; it carries no post unless the footing schedule says so.',
                  off: { x: -3, y: -5 },
                },
              ]),
        ],
      },
    ],
    words: [
      `Isolation joint wherever the slab meets a ${meetsHouse(slab) ? 'pier or the house' : 'pier'}: compressible filler the full depth, sealed on top (common practice, no source).`,
    ],
    scales: ['1-1/2', '1', '3/4'],
    call: { at: { x, y: y1, z: top - 2 }, alike: alongEdge(slab, edge, y1), runs: { x: 0, y: 1 }, radius: 12 },
  };
}

/** Points along the outer edge, so that a section shows the one nearest to its plane. */
const alongEdge = (slab: SlabPlaced, edge: readonly number[], y: number): Vec3[] => {
  const [x0, x1] = [Math.min(...edge), Math.max(...edge)];
  return Array.from({ length: 9 }, (_, i) => {
    const x = x0 + ((i + 0.5) * (x1 - x0)) / 9;
    return { x, y, z: heightAt(slab.top, { x, y }) - 2 };
  });
};

export const slabEdgeDetails = (ctx: SheetContext): readonly Detail[] =>
  ctx.input.structure.slabs.filter((s) => s.state !== 'removed').map((s) => detailOf(ctx, s));
