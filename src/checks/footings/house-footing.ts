/**
 * New footings beside the footing of the house: neither may its hole undermine the house, nor its load lean on the house
 * wall. Line between the lower edges at 45 degrees (common practice, no source) and 30 degrees on granular soil
 * (IBC 2018 1809.6, recalled).
 */
import type { Vec2 } from '../../base/vec.js';
import { say } from '../codes/say.js';
import type { Check } from '../contract.js';
import { failed, measured, notApplicable, notEvaluated, outsideScope } from '../finding.js';
import { groundBeside } from './actions.js';
import { footingSubjects } from './footing.js';

const CLAUSE = 'IBC 2018 1809.6 (recalled); 45 degrees by common practice, no source';
const STEEPEST = Math.tan(Math.PI / 4);
const STEEPEST_GRANULAR = Math.tan(Math.PI / 6);

function distance(p: Vec2, a: Vec2, b: Vec2): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const l2 = dx * dx + dy * dy;
  const t = l2 > 0 ? Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / l2)) : 0;
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

export const houseFooting: Check = {
  id: 'house-footing',
  title: 'Footing beside the house footing',
  subjects: footingSubjects,
  run(subject, ctx, rec) {
    const footings = ctx.structure.footings.filter((f) => f.mark === subject.id && !f.onSlab);
    const { walls, grade } = ctx.structure;
    if (footings.length === 0 || walls.length === 0)
      return notApplicable(CLAUSE, 'no footing is dug beside a house here');
    const house = ctx.project.house.footing;
    if (!house)
      return notApplicable(
        CLAUSE,
        'depth of the house footing not given: verify on site that the 45-degree line between the lower edges of both footings clears the deeper one',
      );
    if (house.bottom.state === 'unknown' || house.projection.state === 'unknown')
      return notEvaluated(
        CLAUSE,
        'The depth or the projection of the house footing is not known yet: dig it free at one place.',
      );
    const at = footings.map((f) => {
      const half = (f.round ? f.size : f.size * Math.SQRT2) / 2;
      const near = Math.min(...walls.map((w) => distance(f.at, w.start, w.end)));
      return {
        f,
        clear: near - half - house.projection.value,
        drop: f.bottom - (grade.z0 - house.bottom.value),
        half,
        near,
      };
    });
    const slope = (x: (typeof at)[number]): number =>
      x.clear > 0 ? Math.abs(x.drop) / x.clear : Number.POSITIVE_INFINITY;
    const worst = at.reduce((w, x) => (slope(x) > slope(w) ? x : w));
    const { f, clear, drop, half, near } = worst;
    if (clear <= 0)
      return failed(CLAUSE, `${f.id} lies over or in the footing of the house: move the post away from the wall.`);
    rec?.heading(`${f.id}: ${(groundBeside(ctx, f) - f.bottom).toFixed(0)} in deep beside the house`);
    rec?.step({
      symbol: 'a',
      meaning: 'clear distance between the two footings on the plan',
      formula: 'wall to centre − half the footing − projection',
      substituted: `${near.toFixed(1)} − ${half.toFixed(1)} − ${say(house.projection.value)}`,
      value: clear,
      unit: 'in',
      clause: 'statics',
      from: [f.path, house.projection.path],
    });
    rec?.step({
      symbol: 'Δ',
      meaning: drop < 0 ? 'how much deeper this footing reaches' : 'how much higher this footing stands',
      formula: 'z(bottom) − z(house footing)',
      substituted: `${f.bottom.toFixed(1)} − (${grade.z0.toFixed(1)} − ${say(house.bottom.value)})`,
      value: drop,
      unit: 'in',
      clause: 'statics',
      from: [house.bottom.path],
    });
    const steep = Math.abs(drop) / clear;
    if (steep > STEEPEST_GRANULAR && steep <= STEEPEST)
      return outsideScope(
        CLAUSE,
        `The line between the lower edges of ${f.id} and of the house footing is flatter than 45 degrees but steeper than the 30 degrees allowed on granular soil: a licensed professional must name the soil, or move the post.`,
      );
    return measured(
      {
        demand: Math.abs(drop),
        capacity: STEEPEST * clear,
        unit: 'in',
        clause: CLAUSE,
        formula: '|Δ| / (a · tan 45°)',
        remedy:
          drop < 0
            ? `The hole of ${f.id} would undermine the house footing: move the post away or make the footing shallower; else a licensed professional must design the shoring.`
            : `${f.id} would press on the house wall from the side: move the post away or set its footing as deep as that of the house.`,
      },
      rec,
    );
  },
};
