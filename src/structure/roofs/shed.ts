import type { ShedRoof } from '../../project/model.js';
import { roofAxes } from '../axes.js';
import { MEETS } from '../constants.js';
import { error } from '../issues.js';
import type { BeamPlan, Kit } from '../kit.js';
import { inches } from '../text.js';
import type { Bearing, Profile, RoofShape } from './contract.js';
import { stationsOf } from './stations.js';

/** Seen along x, the roof falls to the left: y and `a` run against each other. */
const axes = roofAxes('x');

interface Support {
  readonly bearing: Bearing;
  /** Extent along x. */
  readonly from: number;
  readonly to: number;
  readonly path: string;
}

/** One slope falling along +y from a ledger or a beam to a beam. */
export const shed: RoofShape<'shed'> = {
  profile(roof, kit): Profile | undefined {
    const high =
      'ledger' in roof.high ? ledger(roof, roof.high.ledger, kit) : beam(roof, roof.high.beam, 'high/beam', kit);
    const low = beam(roof, roof.low, 'low', kit);
    const stations = stationsOf(roof, kit);
    if (high === undefined || low === undefined || stations === undefined) return undefined;
    if (high.bearing.at - low.bearing.at < 24) {
      kit.issues.push(
        error(
          'low-beam-not-in-front',
          `${roof.path}/low`,
          'The roof falls along +y: its low beam must stand well in front of its high support.',
          { subject: roof.mark },
        ),
      );
      return undefined;
    }
    if (![high, low].every((s) => carriesEnds(roof, s, kit))) return undefined;
    const outer = high.bearing.kind === 'beam' ? high.bearing.section.width / 2 + roof.highOverhang : 0;
    return {
      axes,
      ridgeAxis: 'x',
      bearings: [low.bearing, high.bearing],
      legs: [
        {
          surface: roof.mark,
          eave: low.bearing.at - low.bearing.section.width / 2 - roof.eave,
          top: high.bearing.at + outer,
        },
      ],
      stations,
      extent: [roof.from - roof.rake, roof.to + roof.rake],
      shape: 'monoslope',
    };
  },
};

function beam(roof: ShedRoof, mark: string, key: string, kit: Kit): Support | undefined {
  const plan = kit.beams.get(mark);
  const path = `${roof.path}/${key}`;
  if (plan === undefined) {
    if (!kit.project.cover.beams.some((b) => b.mark === mark))
      kit.issues.push(
        error('beam-unknown', path, 'The roof names a beam that is not listed.', { found: mark, subject: roof.mark }),
      );
    return undefined;
  }
  if (Math.abs(plan.line.from.y - plan.line.to.y) > MEETS) {
    kit.issues.push(
      error('beam-not-across-fall', path, `Beam ${mark} does not run square to the fall.`, {
        subject: roof.mark,
        expected: 'a beam along x',
      }),
    );
    return undefined;
  }
  return { bearing: bearingOf(plan), ...extentOf(plan), path };
}

const bearingOf = (p: BeamPlan): Bearing => ({
  part: p.line.mark,
  kind: 'beam',
  at: -(p.line.from.y + p.line.to.y) / 2,
  section: p.section,
});

const extentOf = (p: BeamPlan): { from: number; to: number } => ({
  from: Math.min(p.line.from.x, p.line.to.x),
  to: Math.max(p.line.from.x, p.line.to.x),
});

function ledger(roof: ShedRoof, mark: string, kit: Kit): Support | undefined {
  const plan = kit.ledgers.get(mark);
  const path = `${roof.path}/high/ledger`;
  if (plan === undefined) {
    if (!kit.project.cover.ledgers.some((l) => l.mark === mark))
      kit.issues.push(
        error('ledger-unknown', path, 'The roof names a ledger that is not listed.', {
          found: mark,
          subject: roof.mark,
        }),
      );
    return undefined;
  }
  return {
    bearing: { part: mark, kind: 'ledger', at: -plan.face, section: plan.section },
    from: plan.spec.from,
    to: plan.spec.to,
    path,
  };
}

/** The end rafters need their whole thickness on the support. */
function carriesEnds(roof: ShedRoof, s: Support, kit: Kit): boolean {
  const half = 0.75;
  const off = roof.from < s.from + half - MEETS ? 'from' : roof.to > s.to - half + MEETS ? 'to' : undefined;
  if (off === undefined) return true;
  kit.issues.push(
    error('frames-off-beam', `${roof.path}/${off}`, `The end rafter stands past the end of ${s.bearing.part}.`, {
      subject: roof.mark,
      found: inches(roof[off]),
      expected: `between ${inches(s.from + half)} and ${inches(s.to - half)}`,
    }),
  );
  return false;
}
