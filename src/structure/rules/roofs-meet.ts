/** Roofs of one cover: none runs into another or into the other's beams and posts, and their water is led somewhere. */
import type { Issue } from '../../base/issue.js';
import { area, clipConvex, contains } from '../../base/plane.js';
import type { Vec2 } from '../../base/vec.js';
import { error, warning } from '../issues.js';
import type { Surface } from '../model.js';
import { planOf } from '../roofs/neighbours.js';
import type { LaidRoof } from '../supports/place.js';
import { planeHeight } from '../surfaces.js';
import type { Placed, StructureRule } from './contract.js';
import { beamOutline, postOutline } from './plan.js';

/** A roof surface with what hangs under it, as a plumb-thick slab over its plan. */
interface Slab {
  readonly surface: Surface;
  readonly laid: LaidRoof;
  readonly plan: readonly Vec2[];
  top(p: Vec2): number;
  bottom(p: Vec2): number;
}

function slabsOf({ structure, roofs }: Placed): Slab[] {
  return structure.surfaces.map((surface) => {
    const laid = roofs.find((r) => r.roof.mark === surface.roof)!;
    const cos = Math.cos(surface.slope);
    const depth = laid.framed.plumb + laid.layers.sheathing / cos;
    // A truss fills the room down to its bearing, and so do rafters with ties.
    const solid = laid.framed.members.some((m) => m.truss || m.role === 'tie');
    return {
      surface,
      laid,
      plan: planOf(surface),
      top: (p) => planeHeight(surface, p) + surface.thickness / cos,
      bottom: (p) =>
        solid ? Math.min(laid.roof.bearing, planeHeight(surface, p) - depth) : planeHeight(surface, p) - depth,
    };
  });
}

const shared = (p: readonly Vec2[], q: readonly Vec2[]): Vec2[] => {
  const common = clipConvex(p, q);
  return common.length >= 3 && area(common) > 1 ? common : [];
};

/** True where two bodies over the same plan share space: neither wholly over the other. */
const collide = (
  over: readonly Vec2[],
  a: { top(p: Vec2): number; bottom(p: Vec2): number },
  b: { top(p: Vec2): number; bottom(p: Vec2): number },
): boolean => {
  const TOUCH = 1 / 16;
  return !over.every((p) => a.bottom(p) >= b.top(p) - TOUCH) && !over.every((p) => b.bottom(p) >= a.top(p) - TOUCH);
};

function overlaps(slabs: readonly Slab[]): Issue[] {
  const issues: Issue[] = [];
  const told = new Set<string>();
  for (const [i, a] of slabs.entries()) {
    for (const b of slabs.slice(i + 1)) {
      const pair = `${a.surface.roof} ${b.surface.roof}`;
      if (a.surface.roof === b.surface.roof || told.has(pair)) continue;
      const over = shared(a.plan, b.plan);
      if (over.length === 0 || !collide(over, a, b)) continue;
      told.add(pair);
      issues.push(
        error('roofs-overlap', a.surface.path, `Roofs ${a.surface.roof} and ${b.surface.roof} run into each other.`, {
          subject: a.surface.roof,
          expected:
            'roofs that end beside each other, or one wholly above the other: another extent, overhang or bearing',
        }),
      );
    }
  }
  return issues;
}

/** True where the place lies on a beam that carries the roof: another beam ends there on the same post, mitred under it. */
const ontoItsBeam = ({ structure }: Placed, slab: Slab, over: readonly Vec2[]): boolean =>
  structure.members.some(
    (b) =>
      b.role === 'beam' && slab.laid.framed.tops.has(b.mark) && over.every((p) => contains(beamOutline(b), p, 1 / 16)),
  );

/** Beams and posts that stand up into a roof they do not carry. */
function piercings(placed: Placed, slabs: readonly Slab[]): Issue[] {
  const issues: Issue[] = [];
  const told = new Set<string>();
  for (const m of placed.structure.members) {
    if (m.role !== 'beam' && m.role !== 'post') continue;
    const outline = m.role === 'beam' ? beamOutline(m) : postOutline(m);
    const half = m.role === 'beam' ? m.section.depth / 2 : 0;
    const body = { top: () => m.end.z + half, bottom: () => m.start.z - half };
    for (const slab of slabs) {
      const key = `${m.mark} ${slab.surface.roof}`;
      if (told.has(key) || slab.laid.framed.tops.has(m.mark)) continue;
      const over = shared(outline, slab.plan);
      if (over.length === 0 || !collide(over, body, slab) || ontoItsBeam(placed, slab, over)) continue;
      told.add(key);
      const what = m.role === 'beam' ? 'Beam' : 'Post';
      issues.push(
        error(
          `${m.role}-through-roof`,
          m.path,
          `${what} ${m.mark} stands in roof ${slab.surface.roof}, which it does not carry.`,
          {
            subject: m.mark,
            expected: `clear of ${slab.surface.roof}: another place, height or overhang`,
          },
        ),
      );
    }
  }
  return issues;
}

function water({ structure }: Placed): Issue[] {
  const issues: Issue[] = [];
  for (const roof of structure.roofs) {
    for (const n of roof.neighbours ?? []) {
      if (n.how === 'drains-onto')
        issues.push(
          warning('roof-drains-onto-roof', roof.path, `${roof.mark} drains onto ${n.roof}.`, {
            subject: roof.mark,
            expected: `a gutter along the eave of ${roof.mark}, or the covering of ${n.roof} flashed and laid for that water`,
          }),
        );
      if (n.how === 'drains-against')
        issues.push(
          warning(
            'roof-drains-against-roof',
            roof.path,
            `${roof.mark} drains against ${n.roof}, which stands higher there.`,
            {
              subject: roof.mark,
              expected: `the eave of ${roof.mark} above ${n.roof}, or a lined gutter between them`,
            },
          ),
        );
      // Told once for the two.
      if (roof.mark > n.roof) continue;
      if (n.how === 'valley')
        issues.push(
          warning('roofs-make-valley', roof.path, `${roof.mark} and ${n.roof} drain against each other.`, {
            subject: roof.mark,
            expected: 'a lined valley or gutter with a fall of its own between them',
          }),
        );
      if (n.how === 'ridge')
        issues.push(
          error(
            'roofs-make-ridge',
            roof.path,
            `${roof.mark} and ${n.roof} rise to one ridge: together they are a gable.`,
            {
              subject: roof.mark,
              expected: 'one roof of kind "gable"',
            },
          ),
        );
    }
  }
  return issues;
}

export const roofsMeet: StructureRule = (placed) => {
  if (placed.structure.roofs.length < 2) return [];
  const slabs = slabsOf(placed);
  return [...overlaps(slabs), ...piercings(placed, slabs), ...water(placed)];
};
