/** The covering's own rated uplift against the component pressure. Its fastening is the maker's; only the rating is compared. */
import { isOutOfScope } from '../../loads/codes/asce7/index.js';
import type { Check } from '../contract.js';
import { measured, notEvaluated, outsideScope } from '../finding.js';
import { panelArea, roofOf, roofSubjects } from './roof.js';
import { beyond, componentPressure } from './zone-wind.js';

const CLAUSE = 'ASCE 7-16 30.7';

export const coveringUplift: Check = {
  id: 'covering-uplift',
  title: 'Covering’s rated uplift',
  subjects: (ctx) => roofSubjects(ctx, 'finish/coveringRating'),
  run(subject, ctx, rec) {
    const roof = roofOf(ctx, subject.id);
    if (!roof) return notEvaluated(CLAUSE, 'this roof is not in the project');
    const wind = componentPressure(ctx, roof.mark, 'minus', panelArea(roof.framing.spacing));
    if (wind === undefined) return notEvaluated(CLAUSE, 'this roof was not placed');
    if (isOutOfScope(wind)) return outsideScope(wind.clause, beyond(wind));
    const demand = -0.6 * wind;
    const rating = roof.finish.coveringRating;
    if (!rating) {
      return {
        ...notEvaluated(
          CLAUSE,
          `The covering must hold ${demand.toFixed(1)} psf of uplift (0.6W, zone 3); no rating is stated. Needed: its allowable uplift as fastened here and where it was read, under finish.coveringRating.`,
        ),
        demand,
        unit: 'psf',
      };
    }
    rec?.heading(`${roof.mark}: ${roof.finish.covering}`);
    componentPressure(ctx, roof.mark, 'minus', panelArea(roof.framing.spacing), rec);
    rec?.step({
      symbol: 'w',
      meaning: 'uplift on the covering; its weight is not counted',
      formula: '0.6·W',
      substituted: `0.6 · ${(-wind).toFixed(2)}`,
      value: demand,
      unit: 'psf',
      clause: 'ASCE 7-16 2.4.1',
    });
    rec?.step({
      symbol: 'R',
      meaning: 'allowable uplift of the covering as fastened, safety factor taken',
      formula: 'as rated',
      substituted: rating.from,
      value: rating.uplift,
      unit: 'psf',
      clause: rating.from,
      from: [`${subject.path}/uplift`],
      note: 'the program does not know this product: fasten it as its report says, or the rating does not hold',
    });
    return measured(
      {
        demand,
        capacity: rating.uplift,
        unit: 'psf',
        combination: '0.6W (C&C zone 3)',
        clause: CLAUSE,
        formula: 'w / R',
        remedy: `Wind lifts the covering of ${roof.mark} with ${demand.toFixed(1)} psf, more than its rating of ${rating.uplift} psf: choose a covering or a fastening rated for it.`,
      },
      rec,
    );
  },
};
