/** An overlay keeps clear of what stands on and over the old roof, and the cover's beams clear of its eave. */
import type { Issue } from '../../base/issue.js';
import { area, clipConvex, contains, distanceToSegment, signedArea } from '../../base/plane.js';
import { flat, type Vec2 } from '../../base/vec.js';
import { HOUSE_ROOF_DEPTH } from '../constants.js';
import { error } from '../issues.js';
import type { OverlayPlaced } from '../model.js';
import { inches } from '../text.js';
import { oldAt } from '../tie-in/frame.js';
import type { Placed, StructureRule } from './contract.js';
import { beamOutline } from './plan.js';

/** Room beside a valley for its lining and for work, inches: half of a 24 in metal lining. */
const BESIDE_VALLEY = 12;

const positive = (p: readonly Vec2[]): readonly Vec2[] => (signedArea(p) < 0 ? [...p].reverse() : p);

export const overlays: StructureRule = (placed) =>
  (placed.structure.overlays ?? []).flatMap((o) => [...standing(placed, o), ...walls(placed, o), ...beams(placed, o)]);

const covers = (o: OverlayPlaced, ring: readonly Vec2[]): boolean =>
  o.faces.some((f) => {
    const common = clipConvex(ring, positive(f.outline.map(flat)));
    return common.length >= 3 && area(common) > 0.5;
  });

/** Chimneys, vents and skylights of the old roof. */
function standing({ project, structure }: Placed, o: OverlayPlaced): Issue[] {
  const plane = structure.housePlanes.find((p) => p.id === o.plane);
  return project.house.roofs.flatMap((r) =>
    (r.standing ?? []).flatMap((t): Issue[] => {
      if (!plane || !contains(plane.outline, t.at)) return [];
      const [w, d] = [t.width / 2, t.depth / 2];
      const ring = [
        { x: t.at.x - w, y: t.at.y - d },
        { x: t.at.x + w, y: t.at.y - d },
        { x: t.at.x + w, y: t.at.y + d },
        { x: t.at.x - w, y: t.at.y + d },
      ];
      if (covers(o, ring))
        return [
          error('overlay-covers-standing', o.path, `The ${t.name} comes out of the old roof under the new one.`, {
            subject: o.roof,
            expected: `another place of the roof, or the ${t.name} carried up through it by its own trade and design`,
          }),
        ];
      const off = Math.min(
        ...o.valleys.flatMap((v) => ring.map((p) => distanceToSegment(p, flat(v.foot), flat(v.head)))),
      );
      if (off >= BESIDE_VALLEY) return [];
      return [
        error('valley-into-standing', o.path, `A valley runs ${inches(off)} beside the ${t.name}.`, {
          subject: o.roof,
          expected: `${inches(BESIDE_VALLEY)} or more, so that its water passes and its lining fits`,
        }),
      ];
    }),
  );
}

/** A wall that stands higher than the old slope, such as that of an upper storey, in the way of the new roof. */
function walls({ structure }: Placed, o: OverlayPlaced): Issue[] {
  return structure.walls.flatMap((w): Issue[] => {
    const back = { x: w.start.x - w.out.x, y: w.start.y - w.out.y };
    const far = { x: w.end.x - w.out.x, y: w.end.y - w.out.y };
    if (!covers(o, positive([w.start, w.end, far, back]))) return [];
    const deep = Math.min(...[w.start, w.end].map((p) => oldAt(o, depthOf(o, p))));
    if (w.plate <= deep + 1) return [];
    return [
      error(
        'valley-into-wall',
        o.path,
        `The new roof runs into the ${w.name} wall, which stands above the old slope.`,
        {
          subject: o.roof,
          expected: 'a roof that stops at that wall, or another slope',
        },
      ),
    ];
  });
}

const depthOf = (o: OverlayPlaced, p: Vec2): number =>
  (p.x - o.frame.origin.x) * o.frame.into.x + (p.y - o.frame.origin.y) * o.frame.into.y;

/** Beams end in front of the old eave, or pass wholly under or over it. */
function beams({ structure }: Placed, o: OverlayPlaced): Issue[] {
  const plane = structure.housePlanes.find((p) => p.id === o.plane);
  if (!plane) return [];
  const ring = positive(plane.outline.map(flat));
  return structure.members.flatMap((m): Issue[] => {
    if (m.role !== 'beam') return [];
    const common = clipConvex([...positive(beamOutline(m))], ring);
    if (common.length < 3 || area(common) < 0.5) return [];
    const [low, high] = [m.start.z - m.section.depth / 2, m.start.z + m.section.depth / 2];
    const z = common.map((p) => oldAt(o, depthOf(o, p)));
    if (high <= Math.min(...z) - HOUSE_ROOF_DEPTH || low >= Math.max(...z)) return [];
    return [
      error('beam-into-eave', m.path, `${m.mark} runs into the eave of the house.`, {
        subject: m.mark,
        expected: 'a beam that ends in front of the old eave',
      }),
    ];
  });
}
