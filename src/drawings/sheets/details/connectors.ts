/**
 * What holds a joint, in a view of it: the fasteners and plates of a calculated connection where its file puts them, or the
 * place of a bought connector, whose shape is its maker's.
 */
import type { Vec2, Vec3 } from '../../../base/vec.js';
import { dot as inner } from '../../../base/vec.js';
import { findFastener } from '../../../catalog/index.js';
import { servedBy } from '../../../checks/joints/serving.js';
import type { Bolts, DrivenDowels, FastenerPattern } from '../../../project/connections.js';
import type { Joint, Member } from '../../../structure/model.js';
import type { Primitive } from '../../ir/index.js';
import type { Camera } from '../../views/camera.js';
import type { SheetContext } from '../contract.js';
import { dot, planDirection, rect, spot, squareTo } from './picture.js';

/** How far a bought connector is drawn on either side of the meeting faces, inches. Drawing only. */
const REACH = 4;

export interface Connector {
  readonly items: readonly Primitive[];
  /** Stations worth a dimension, from the meeting of the parts: heights of fasteners above and below it. */
  readonly heights: readonly number[];
  /** Offsets of fasteners from the centre of the joint along the picture. */
  readonly across: readonly number[];
}

/** Evenly set places: `n` of them `spacing` apart, the first at `from`, running in a direction. */
const row = (n: number, spacing: number, from: number, way: 1 | -1): number[] =>
  Array.from({ length: n }, (_, i) => from + way * i * spacing);

const centred = (n: number, spacing: number): number[] =>
  Array.from({ length: n }, (_, i) => (i - (n - 1) / 2) * spacing);

const dowels = (p: unknown): p is Bolts | DrivenDowels =>
  typeof p === 'object' && p !== null && 'upper' in p && 'axis' in p;

/**
 * Places of the fasteners of a joint whose lower part is a post, seen from the side: the upper part level, its lower edge on
 * the post's top.
 */
function overPost(part: Bolts | DrivenDowels, post: Member): { readonly upper: Vec2[]; readonly lower: Vec2[] } {
  const u: FastenerPattern = part.upper;
  const l: FastenerPattern = part.lower;
  const grid = (xs: readonly number[], ys: readonly number[]): Vec2[] => xs.flatMap((x) => ys.map((y) => ({ x, y })));
  const upper = grid(centred(u.alongGrain, u.spacingAlong), row(u.acrossGrain, u.spacingAcross, u.edge, 1));
  const half = post.section.width / 2;
  const acrossPost = l.acrossGrain === 1 ? [l.edge - half] : row(l.acrossGrain, l.spacingAcross, l.edge - half, 1);
  const lower = grid(acrossPost, row(l.alongGrain, l.spacingAlong, -l.end, -1));
  return { upper, lower };
}

/** The connector at a joint of a level member over a post, in a view through a camera. `z` is the level where they meet. */
export function connectorOver(ctx: SheetContext, joint: Joint, upper: Member, post: Member, camera: Camera): Connector {
  const served = servedBy(ctx.input.project.choices, joint.mark, joint.kind);
  const c = spot(camera, { ...joint.at });
  const along = planDirection(upper);
  const side = squareTo(along);
  const facesBeam = Math.abs(inner(camera.right, { ...along, z: 0 })) > 0.7;
  if (served?.by !== 'connection') {
    const half = (facesBeam ? post.section.width : upper.section.width) / 2 + 0.4;
    return {
      items: [
        {
          kind: 'polyline',
          layer: 'S-JNTS',
          pen: 'hidden',
          closed: true,
          points: rect(c.x - half, c.y - REACH, c.x + half, c.y + REACH),
          mark: joint.mark,
        },
      ],
      heights: [],
      across: [],
    };
  }
  const items: Primitive[] = [];
  const heights: number[] = [0];
  const across: number[] = [];
  for (const p of served.connection.parts) {
    if (!dowels(p)) continue;
    const dir: Vec3 =
      p.axis === 'crosswise' ? { ...side, z: 0 } : p.axis === 'lengthwise' ? { ...along, z: 0 } : { x: 0, y: 0, z: 1 };
    const seenOnEnd = Math.abs(inner(dir, camera.toward)) > 0.7;
    const { upper: up, lower: low } = overPost(p, post);
    const d = findFastener(p.size)?.D ?? 0.5;
    const all = p.plates ? [...up, ...low] : low;
    heights.push(...all.map((q) => q.y));
    const [z0, z1] = [Math.min(...all.map((q) => q.y)), Math.max(...all.map((q) => q.y))];
    const { plates } = p;
    const steel = plates?.material === 'steel' ? plates : undefined;
    const half = seenOnEnd ? (steel ? steel.width / 2 : post.section.width / 2) : upper.section.width / 2;
    if (plates) {
      const [a, b] = [c.y + z0 - plates.end, c.y + z1 + plates.end];
      heights.push(z0 - plates.end, z1 + plates.end);
      const t = steel?.thickness ?? 1.5;
      const faces = seenOnEnd
        ? [rect(c.x - half, a, c.x + half, b)]
        : [-1, 1].slice(0, plates.count).map((s) => rect(c.x + s * half, a, c.x + s * (half + t), b));
      for (const points of faces)
        items.push({
          kind: 'polyline',
          layer: 'S-JNTS',
          pen: 'new',
          closed: true,
          fill: seenOnEnd ? 'tint' : 'ink',
          points,
          mark: joint.mark,
        });
    }
    if (seenOnEnd) {
      across.push(...all.map((q) => q.x));
      for (const q of all) items.push(dot({ x: c.x + q.x, y: c.y + q.y }, Math.max(d, 0.35) / 2 + 0.15, 'fastener'));
    } else {
      for (const y of new Set(all.map((q) => q.y)))
        items.push({
          kind: 'line',
          layer: 'S-JNTS',
          pen: 'new',
          a: { x: c.x - half - 0.6, y: c.y + y },
          b: { x: c.x + half + 0.6, y: c.y + y },
          mark: joint.mark,
        });
    }
  }
  return { items, heights, across };
}
