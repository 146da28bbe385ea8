/**
 * Runs of flashing where the new roof meets what stands: lengths from the placed roof, one row a run. Widths are those the
 * sections named ask for; where none is named, common practice, no source.
 */
import type { Vec3 } from '../../base/vec.js';
import { type EdgeAtWall, edgesAtWalls } from '../describe.js';
import type { Structure, Surface } from '../model.js';
import { onSurface } from '../surfaces.js';

export type FlashingKind = 'valley' | 'step' | 'apron' | 'kick-out' | 'drip-edge';

export interface FlashingRun {
  readonly kind: FlashingKind;
  /** Roof it belongs to; valley or wall it lies at. */
  readonly roof: string;
  readonly at: string;
  /** True length, inches; 0 for a single piece (kick-out). */
  readonly length: number;
  readonly from: Vec3;
  readonly to: Vec3;
  readonly what: string;
}

/** Edges that rise less than this along the wall carry an apron, steeper ones step flashing, inches. */
const LEVEL = 0.5;

const WHAT: Readonly<Record<FlashingKind, string>> = {
  valley: 'valley lining, open metal 24 in wide or more, or closed on 36 in of roll (IRC 2018 R905.2.8.2)',
  step: 'step flashing, 4 in up the wall and 4 in out, one piece a course, behind cladding and water barrier',
  apron: 'apron flashing, 4 in up the wall behind the water barrier, out over the covering',
  'kick-out': 'kick-out at the low end of the flashing along the wall, into the gutter',
  'drip-edge':
    'drip edge, 2 in up the roof, lapped 2 in; underlayment over it at eaves, under it at rakes (IRC 2018 R905.2.8.5)',
};

const run = (kind: FlashingKind, roof: string, at: string, from: Vec3, to: Vec3, single = false): FlashingRun => ({
  kind,
  roof,
  at,
  length: single ? 0 : Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z),
  from,
  to,
  what: WHAT[kind],
});

/** A place on an edge at a wall, kept on the wall's length. */
function onEdge(e: EdgeAtWall, along: number): Vec3 {
  const { wall } = e;
  const length = Math.hypot(wall.end.x - wall.start.x, wall.end.y - wall.start.y);
  const s = Math.min(Math.max(along, 0), length);
  const t = (s - e.from.along) / (e.to.along - e.from.along);
  return {
    x: wall.start.x + ((wall.end.x - wall.start.x) / length) * s,
    y: wall.start.y + ((wall.end.y - wall.start.y) / length) * s,
    z: e.from.z + t * (e.to.z - e.from.z),
  };
}

function atWalls(structure: Structure): FlashingRun[] {
  return edgesAtWalls(structure.surfaces, structure.walls).flatMap((e) => {
    const { surface, wall } = e;
    const [p, q] = [onEdge(e, e.from.along), onEdge(e, e.to.along)];
    if (Math.abs(p.z - q.z) <= LEVEL) return [run('apron', surface.roof, wall.name, p, q)];
    const low = p.z < q.z ? p : q;
    return [run('step', surface.roof, wall.name, p, q), run('kick-out', surface.roof, wall.name, low, low, true)];
  });
}

/** Eaves and free rakes of a surface, in (u, v): both ends of each edge that is no ridge, hip, valley or joint. */
function freeEdges(s: Surface, structure: Structure): FlashingRun[] {
  const walls = edgesAtWalls([s], structure.walls);
  const out: FlashingRun[] = [];
  for (let i = 0; i < s.outline.length; i++) {
    const a = s.outline[i]!;
    const b = s.outline[(i + 1) % s.outline.length]!;
    const eave = Math.abs(a.y) < 1e-6 && Math.abs(b.y) < 1e-6;
    const rake = Math.abs(a.x - b.x) < 1e-6 && (s.onto === undefined || Math.abs(a.x - s.onto) > 1e-6);
    if (!eave && !rake) continue;
    const [p, q] = [onSurface(s, a.x, a.y), onSurface(s, b.x, b.y)];
    const atWall = walls.some((w) =>
      [onEdge(w, w.from.along), onEdge(w, w.to.along)].every((r) =>
        [p, q].some((o) => Math.hypot(o.x - r.x, o.y - r.y) <= 13),
      ),
    );
    if (!atWall) out.push(run('drip-edge', s.roof, eave ? 'eave' : 'rake', p, q));
  }
  return out;
}

export function flashingRuns(structure: Structure): FlashingRun[] {
  const overlays = structure.overlays ?? [];
  return [
    ...overlays.flatMap((o) => o.valleys.map((v) => run('valley', o.roof, v.mark, v.foot, v.head))),
    ...atWalls(structure),
    ...structure.surfaces.flatMap((s) => freeEdges(s, structure)),
    // Eaves of an overlay run from the cover's own to the valley's foot.
    ...overlays.flatMap((o) => o.faces.map((f) => run('drip-edge', o.roof, 'eave', f.outline[1]!, f.outline[2]!))),
  ];
}
