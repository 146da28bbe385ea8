/** Posts that hold side load: the buckling length found from a frame's sway stiffness against the tabulated one. */
import { describe, it } from 'vitest';
import { analyse } from '../../src/analysis/index.js';
import { keOf } from '../../src/checks/lateral/sway-length.js';
import { postEnds } from '../../src/checks/members/post-ends.js';
import { buildLoads } from '../../src/loads/index.js';
import { measureLot, surveyLot } from '../../src/lot/index.js';
import { coverFootprint } from '../../src/report/footprint.js';
import { place } from '../../src/structure/place.js';
import { fixedGable } from '../../src/structure/testing-braced.js';
import { verificationSuite } from './record.js';

const suite = verificationSuite('side-load');
const TABLE = {
  clause: 'NDS 2018 App. G Table G1',
  source: 'NDS 2018, Appendix G, Table G1: foot fixed, top free to turn and to move',
  where: 'recalled, to be confirmed in the printed table',
  provenance: 'memory',
  unit: '',
} as const;

describe('effective length of a post fixed at its foot', () => {
  it('theory, from the stiffness of a cantilever', () => {
    const EI = 1.2e8;
    const h = 108;
    suite.compare({
      ...TABLE,
      id: 'sway-length-cantilever',
      quantity: 'theoretical Ke',
      published: 2,
      ours: keOf({ EI, flexibility: h ** 3 / (3 * EI), lean: h, height: h, leaning: 1 }),
      tolerance: { abs: 1e-9, reason: 'closed form' },
    });
  });

  it('design value, from the frame of a whole free-standing cover', () => {
    const survey = surveyLot(fixedGable).value!;
    const structure = place(fixedGable).value!;
    const loads = buildLoads(fixedGable, structure).value!;
    const effects = analyse(fixedGable, structure, loads).value!;
    const lot = measureLot(fixedGable, survey, coverFootprint(structure));
    const post = structure.members.find((m) => m.id === 'P1')!;
    const { one, two } = postEnds({ project: fixedGable, lot, structure, loads, effects }, post);
    for (const [quantity, ours] of [
      ['design Ke across the beam', one.Ke],
      ['design Ke along the beam', two.Ke],
    ] as const)
      suite.compare({
        ...TABLE,
        id: 'sway-length-frame',
        quantity,
        published: 2.1,
        ours,
        tolerance: {
          rel: 0.05,
          reason: 'the wind pushes beside the middle of the posts, so the roof turns and the far post moves more',
        },
      });
  });
});
