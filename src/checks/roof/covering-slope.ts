/** Each covering has a least slope below which it leaks. IRC 2018 chapter 9. */
import { findCovering } from '../../catalog/index.js';
import type { Check } from '../contract.js';
import { measured, notEvaluated } from '../finding.js';

const CLAUSE = 'IRC 2018 R905';

export const coveringSlope: Check = {
  id: 'covering-slope',
  title: 'Slope under the roof covering',
  subjects: ({ project }) => project.cover.roofs.map((r) => ({ id: r.mark, path: `${r.path}/finish/covering` })),
  run(subject, { project }, rec) {
    const roof = project.cover.roofs.find((r) => r.mark === subject.id);
    const covering = roof && findCovering(roof.finish.covering);
    if (!roof || !covering) return notEvaluated(CLAUSE, 'this covering is not in the catalogue');
    const slope = 12 * Math.tan(roof.pitch);
    rec?.step({
      symbol: 'slope',
      meaning: 'rise of the roof in 12 in of run',
      formula: '12 · tan(pitch)',
      substituted: roof.pitchText,
      value: slope,
      unit: 'in/ft',
      clause: CLAUSE,
      from: [`${roof.path}/pitch`],
    });
    rec?.step({
      symbol: 'least',
      meaning: `least slope of ${covering.name.toLowerCase()}`,
      formula: 'catalogue',
      substituted: covering.source,
      value: covering.minSlope,
      unit: 'in/ft',
      clause: covering.source,
      from: [subject.path],
    });
    const double =
      covering.underlayment.kind === 'double-below' && slope < covering.underlayment.slope
        ? 'two layers of underlayment are needed at this slope'
        : '';
    return measured(
      {
        demand: covering.minSlope,
        capacity: slope,
        unit: 'in/ft',
        clause: CLAUSE,
        formula: 'least slope / slope',
        note: double,
        remedy: `${covering.name} needs ${covering.minSlope} in 12 and this roof has ${slope.toFixed(2)}: make it steeper or take another covering.`,
      },
      rec,
    );
  },
};
