import type { GableRoof } from '../../project/model.js';
import { roofAxes, toRoof } from '../axes.js';
import { MEETS } from '../constants.js';
import { error } from '../issues.js';
import type { BeamPlan, Kit } from '../kit.js';
import { inches } from '../text.js';
import { extentOf } from '../tie-in/old-slope.js';
import type { Bearing, Profile } from './contract.js';
import type { RoofShape } from './lay.js';
import { beamBearing } from './sharing.js';
import { stationsOf } from './stations.js';

interface Line {
  readonly plan: BeamPlan;
  readonly a: number;
  readonly l0: number;
  readonly l1: number;
}

/** Two equal slopes on two beams parallel to the ridge; the ridge stands midway. */
export const gable: RoofShape<'gable'> = {
  profile(roof, kit): Profile | undefined {
    const axes = roofAxes(roof.ridge);
    const lines: Line[] = [];
    let missing = false;
    for (const [i, mark] of roof.beams.entries()) {
      const plan = kit.beams.get(mark);
      if (plan === undefined) {
        if (!kit.project.cover.beams.some((b) => b.mark === mark))
          kit.issues.push(
            error('beam-unknown', `${roof.path}/beams/${i}`, 'The roof names a beam that is not listed.', {
              found: mark,
              subject: roof.mark,
            }),
          );
        missing = true;
        continue;
      }
      const p = toRoof(axes, plan.line.from);
      const q = toRoof(axes, plan.line.to);
      if (Math.abs(p.a - q.a) > MEETS) {
        mismatch(kit, roof, `Beam ${mark} does not run parallel to the ridge.`, `a beam along ${roof.ridge}`);
        missing = true;
      }
      lines.push({ plan, a: (p.a + q.a) / 2, l0: Math.min(p.l, q.l), l1: Math.max(p.l, q.l) });
    }
    const stations = stationsOf(roof, kit);
    const [left, right] = lines.sort((p, q) => p.a - q.a);
    if (missing || left === undefined || right === undefined || stations === undefined) return undefined;
    return fits(kit, roof, left, right) ? lay(roof, left, right, stations) : undefined;

    function lay(r: typeof roof, lo: Line, hi: Line, at: readonly number[]): Profile | undefined {
      const [left, right] = [beamBearing(r, lo.plan, axes, 1, kit), beamBearing(r, hi.plan, axes, -1, kit)];
      // Both slopes start at one height over the outer edges of the seats, so the ridge stands midway between these.
      const outer = [left.seat.at - left.seat.width / 2, right.seat.at + right.seat.width / 2] as const;
      const ridge = (outer[0] + outer[1]) / 2;
      const under = r.ridgeBeam === undefined ? undefined : ridgeBearing(r, r.ridgeBeam, ridge, kit);
      if (r.ridgeBeam !== undefined && under === undefined) return undefined;
      return {
        axes,
        ridgeAxis: r.ridge,
        ...(under ? { ridge: under } : {}),
        bearings: [left, right],
        legs: [
          { surface: `${r.mark}-left`, eave: outer[0] - r.eave, top: ridge },
          { surface: `${r.mark}-right`, eave: outer[1] + r.eave, top: ridge },
        ],
        stations: at,
        extent: extentOf(r, kit.project.house),
        shape: 'pitched',
      };
    }
  },
};

/** The beam under the ridge, each slope on its own half. */
function ridgeBearing(roof: GableRoof, mark: string, ridge: number, kit: Kit): readonly [Bearing, Bearing] | undefined {
  const path = `${roof.path}/ridgeBeam`;
  const refuse = (code: string, message: string, found: string, expected: string): undefined => {
    kit.issues.push(error(code, path, message, { subject: roof.mark, found, expected }));
    return undefined;
  };
  const plan = kit.beams.get(mark);
  if (plan === undefined) {
    if (kit.project.cover.beams.some((b) => b.mark === mark)) return undefined;
    return refuse('beam-unknown', 'The roof names a beam that is not listed.', mark, 'the mark of a beam');
  }
  const axes = roofAxes(roof.ridge);
  const [p, q] = [toRoof(axes, plan.line.from), toRoof(axes, plan.line.to)];
  const off = Math.max(Math.abs(p.a - ridge), Math.abs(q.a - ridge));
  if (off > MEETS)
    return refuse(
      'ridge-beam-off-ridge',
      `Beam ${mark} does not run under the ridge.`,
      `${inches(off)} off`,
      `a beam along ${roof.ridge} midway between the outer faces of the eave beams`,
    );
  const half = 0.75;
  const [start, end] = [Math.min(p.l, q.l) + half, Math.max(p.l, q.l) - half];
  if (roof.from < start - MEETS || roof.to > end + MEETS)
    return refuse(
      'frames-off-beam',
      `The end rafters stand past the end of ${mark}.`,
      `${inches(roof.from)} to ${inches(roof.to)}`,
      `between ${inches(start)} and ${inches(end)}`,
    );
  const { width } = plan.section;
  const on = (side: 1 | -1): Bearing => ({
    part: mark,
    kind: 'beam',
    at: ridge,
    section: plan.section,
    seat: { at: ridge + (side * width) / 4, width: width / 2 },
  });
  return [on(-1), on(1)];
}

const mismatch = (kit: Kit, roof: { path: string; mark: string }, message: string, expected: string): void => {
  kit.issues.push(error('truss-wider-than-beams', `${roof.path}/beams`, message, { subject: roof.mark, expected }));
};

function fits(
  kit: Kit,
  roof: { path: string; mark: string; from: number; to: number },
  left: Line,
  right: Line,
): boolean {
  const [wl, wr] = [left.plan.section.width, right.plan.section.width];
  if (Math.abs(wl - wr) > MEETS) {
    mismatch(
      kit,
      roof,
      `The two beams differ in width (${inches(wl)} and ${inches(wr)}): the slopes would not be equal.`,
      'two beams of one width',
    );
    return false;
  }
  if (right.a - left.a < wl + 24) {
    mismatch(
      kit,
      roof,
      `The two beams stand ${inches(right.a - left.a)} apart: no roof spans that.`,
      'two beams at least a few feet apart',
    );
    return false;
  }
  // A frame needs the whole thickness of its chord on both beams.
  const half = 0.75;
  const start = Math.max(left.l0, right.l0) + half;
  const end = Math.min(left.l1, right.l1) - half;
  const off = roof.from < start - MEETS ? 'from' : roof.to > end + MEETS ? 'to' : undefined;
  if (off === undefined) return true;
  kit.issues.push(
    error('frames-off-beam', `${roof.path}/${off}`, 'The end frame stands past the end of a beam.', {
      subject: roof.mark,
      found: inches(roof[off]),
      expected: `between ${inches(start)} and ${inches(end)}`,
    }),
  );
  return false;
}
