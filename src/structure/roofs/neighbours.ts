/** How the roofs of one cover stand to each other: who drains onto whom, and where two slopes meet in a valley or a ridge. */
import { area, clipConvex, signedArea } from '../../base/plane.js';
import type { Vec2 } from '../../base/vec.js';
import type { RoofNeighbour, Surface } from '../model.js';
import { onSurface, planeHeight } from '../surfaces.js';

/** How far in front of an eave its water still falls, inches: gutters and wind. Common practice, no source. */
const DRIP = 12;
/** Heights that count as one, inches. */
const LEVEL = 1;

export const planOf = (s: Surface): Vec2[] => {
  const p = s.outline.map((q) => {
    const { x, y } = onSurface(s, q.x, q.y);
    return { x, y };
  });
  return signedArea(p) < 0 ? p.reverse() : p;
};

/** The strip of ground in front of an edge v = const of a surface, `reach` deep, on the side given by `sign` (1: downhill). */
function bandAt(s: Surface, v: number, sign: 1 | -1, reach: number): Vec2[] {
  const us = s.outline.filter((p) => Math.abs(p.y - v) < 1e-6).map((p) => p.x);
  if (us.length < 2) return [];
  const [a, b] = [onSurface(s, Math.min(...us), v), onSurface(s, Math.max(...us), v)];
  const d = { x: s.downhill.x * sign * reach, y: s.downhill.y * sign * reach };
  const p = [
    { x: a.x, y: a.y },
    { x: b.x, y: b.y },
    { x: b.x + d.x, y: b.y + d.y },
    { x: a.x + d.x, y: a.y + d.y },
  ];
  return signedArea(p) < 0 ? p.reverse() : p;
}

const touches = (p: readonly Vec2[], q: readonly Vec2[]): Vec2[] | undefined => {
  if (p.length < 3) return undefined;
  const common = clipConvex(p, q);
  return common.length >= 3 && area(common) > 1 ? common : undefined;
};

const topOf = (s: Surface): number => Math.max(...s.outline.map((p) => p.y));
const against = (s: Surface, t: Surface): boolean => s.downhill.x * t.downhill.x + s.downhill.y * t.downhill.y < -0.999;

/** What the water and the slopes of `s` do to the other surface. */
function relation(s: Surface, t: Surface): RoofNeighbour['how'] | undefined {
  const eave = bandAt(s, 0, 1, DRIP);
  const low = onSurface(s, 0, 0).z;
  const over = touches(eave, planOf(t));
  if (against(s, t)) {
    const eaves = touches(eave, bandAt(t, 0, -1, DRIP));
    if (eaves && Math.abs(low - onSurface(t, 0, 0).z) <= DRIP) return 'valley';
    const ridge = touches(bandAt(s, topOf(s), -1, LEVEL), bandAt(t, topOf(t), 1, DRIP));
    if (ridge && Math.abs(onSurface(s, 0, topOf(s)).z - onSurface(t, 0, topOf(t)).z) <= DRIP) return 'ridge';
  }
  if (over?.some((p) => planeHeight(t, p) <= low + LEVEL)) return 'drains-onto';
  // Higher than the eave but not clear above it: the water meets the framing of the other roof.
  if (over?.some((p) => planeHeight(t, p) <= low + DRIP)) return 'drains-against';
  return undefined;
}

/** Neighbours of one roof among all surfaces of the cover, each told once with the gravest relation first. */
export function neighboursOf(roof: string, surfaces: readonly Surface[]): RoofNeighbour[] {
  const out: RoofNeighbour[] = [];
  for (const s of surfaces) {
    if (s.roof !== roof) continue;
    for (const t of surfaces) {
      if (t.roof === roof) continue;
      const how = relation(s, t);
      if (how && !out.some((n) => n.roof === t.roof && n.how === how)) out.push({ roof: t.roof, how });
    }
  }
  return out;
}
