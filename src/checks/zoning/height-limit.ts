/** Highest point of each roof above the lowest ground beside it. */
import type { Check } from '../contract.js';
import { measured, notEvaluated } from '../finding.js';
import { feet, ZONING } from './zoning.js';

export const heightLimit: Check = {
  id: 'height-limit',
  title: 'Height',
  subjects: ({ structure }) => structure.roofs.map((r) => ({ id: r.mark, path: r.path })),
  run(subject, { structure, project }, rec) {
    const roof = structure.roofs.find((r) => r.mark === subject.id);
    if (!roof) return notEvaluated(ZONING, 'this roof was not placed');
    const { grade } = structure;
    // Grade is a plane, so its lowest value over the roof's rectangle is at one of the corners.
    let lowest = Number.POSITIVE_INFINITY;
    for (const x of [roof.min.x, roof.max.x]) {
      for (const y of [roof.min.y, roof.max.y]) lowest = Math.min(lowest, grade.z0 + grade.gx * x + grade.gy * y);
    }
    const height = roof.highestPoint - lowest;
    const limit = project.basis.zoning.heightLimit;
    rec?.step({
      symbol: 'h',
      meaning: 'highest point of the roof above the lowest grade beside it',
      formula: 'z(top) − z(grade)',
      substituted: `${roof.highestPoint.toFixed(1)} − ${lowest.toFixed(1)}`,
      value: height,
      unit: 'in',
      clause: ZONING,
      from: [limit.path, '/patio/grade'],
    });
    return measured(
      {
        demand: height,
        capacity: limit.value,
        unit: 'in',
        clause: ZONING,
        formula: 'h / limit',
        remedy: `The roof stands ${feet(height)} above the lowest ground where ${feet(limit.value)} is allowed: lower the bearing or the pitch.`,
      },
      rec,
    );
  },
};
