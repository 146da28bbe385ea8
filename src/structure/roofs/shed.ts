import type { ShedRoof } from '../../project/model.js';
import { fallAxes, type RoofAxes, toRoof } from '../axes.js';
import { MEETS } from '../constants.js';
import { error } from '../issues.js';
import { atLedger, type Kit } from '../kit.js';
import { inches } from '../text.js';
import type { Bearing, Profile } from './contract.js';
import type { RoofShape } from './lay.js';
import { beamBearing } from './sharing.js';
import { stationsOf } from './stations.js';

interface Support {
  readonly bearing: Bearing;
  /** Extent along the house axis square to the fall. */
  readonly from: number;
  readonly to: number;
  readonly path: string;
}

/** One slope falling from a ledger or a beam to a beam: along +y, or along +x or -x from a wing's side wall. */
export const shed: RoofShape<'shed'> = {
  profile(roof, kit): Profile | undefined {
    const fall = roof.fall ?? '+y';
    const axes = fallAxes(fall);
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
          `The roof falls along ${fall}: its low beam must stand well in front of its high support.`,
          { subject: roof.mark },
        ),
      );
      return undefined;
    }
    if (![high, low].every((s) => carriesEnds(roof, s, kit))) return undefined;
    const [lowSeat, highSeat] = [low.bearing.seat, high.bearing.seat];
    const top = high.bearing.kind === 'beam' ? highSeat.at + highSeat.width / 2 + roof.highOverhang : high.bearing.at;
    return {
      axes,
      ridgeAxis: axes.across.x === 0 ? 'x' : 'y',
      bearings: [low.bearing, high.bearing],
      legs: [
        {
          surface: roof.mark,
          eave: lowSeat.at - lowSeat.width / 2 - roof.eave,
          top,
        },
      ],
      ...alongRidge(axes, stations, [roof.from - roof.rake, roof.to + roof.rake]),
      shape: 'monoslope',
    };
  },
};

/** Stations and extent are given along a house axis; the roof's own axis may run the other way. */
function alongRidge(
  axes: RoofAxes,
  stations: readonly number[],
  extent: readonly [number, number],
): Pick<Profile, 'stations' | 'extent'> {
  if (axes.along.x + axes.along.y > 0) return { stations, extent };
  return { stations: stations.map((s) => 0 - s).reverse(), extent: [0 - extent[1], 0 - extent[0]] };
}

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
  const axes = fallAxes(roof.fall ?? '+y');
  const along = axes.across.x === 0 ? 'x' : 'y';
  const [p, q] = [plan.line.from, plan.line.to];
  if (Math.abs(toRoof(axes, p).a - toRoof(axes, q).a) > MEETS) {
    kit.issues.push(
      error('beam-not-across-fall', path, `Beam ${mark} does not run square to the fall.`, {
        subject: roof.mark,
        expected: `a beam along ${along}`,
      }),
    );
    return undefined;
  }
  return {
    bearing: beamBearing(roof, plan, axes, key === 'low' ? 1 : -1, kit),
    from: Math.min(p[along], q[along]),
    to: Math.max(p[along], q[along]),
    path,
  };
}

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
  const axes = fallAxes(roof.fall ?? '+y');
  if (plan.out.x * axes.across.x + plan.out.y * axes.across.y > -1 + MEETS) {
    kit.issues.push(
      error('ledger-across-fall', path, `The wall of ledger ${mark} does not face the way the roof falls.`, {
        subject: roof.mark,
        found: roof.fall ?? '+y',
        expected: `"fall": "${plan.out.y > 0 ? '+y' : plan.out.x > 0 ? '+x' : '-x'}"`,
      }),
    );
    return undefined;
  }
  const { a } = toRoof(axes, atLedger(plan, plan.spec.from, plan.face));
  return {
    bearing: { part: mark, kind: 'ledger', at: a, section: plan.section, seat: { at: a, width: 0 } },
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
