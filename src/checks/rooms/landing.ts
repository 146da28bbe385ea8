/** Landings at the doors under the cover: size, step from the threshold, slope. IRC 2018 R311.3. */
import { contains } from '../../base/plane.js';
import type { Vec2 } from '../../base/vec.js';
import type { Opening, OpeningKind } from '../../project/model.js';
import type { Incline } from '../../structure/model.js';
import { LANDING_DEPTH, LANDING_SLOPE, RISERS_WITHOUT_LANDING, THRESHOLD_STEP } from '../codes/irc-2018/index.js';
import type { Check, CheckContext } from '../contract.js';
import { measured, notApplicable, notEvaluated } from '../finding.js';
import { type Placed, underCover } from './facts.js';

const CLAUSE = 'IRC 2018 R311.3';
const DOORS: ReadonlySet<OpeningKind> = new Set(['door', 'sliding-door', 'french-door']);

const JOINT = 1;
const SLACK = 1 / 16;

export const isDoor = (o: Opening): boolean => DOORS.has(o.kind);

const zAt = (s: Incline, p: Vec2): number => s.z0 + s.gx * p.x + s.gy * p.y;

export interface Landing {
  /** Slab mark, or `steps`. */
  readonly on: string;
  /** From the threshold down to it at the door, inches. */
  readonly step: number;
  /** Depth and width of the door are within it. */
  readonly fits: boolean;
  readonly slope: number;
  readonly risers: number;
}

/** What lies before a door to step out on; undefined when nothing is entered there. */
export function landingAt(
  { project, structure }: Pick<CheckContext, 'project' | 'structure'>,
  p: Placed,
): Landing | undefined {
  const { out } = p.wall;
  // A slab may stand off the wall by a joint; its far edge is held to the sixteenth.
  const ring = p.ground.map((q, i) => {
    const by = i < 2 ? JOINT : -SLACK;
    return { x: q.x + by * out.x, y: q.y + by * out.y };
  });
  const before = { x: p.middle.x + 6 * out.x, y: p.middle.y + 6 * out.y };
  const flight = project.patio.steps.find((s) => s.state !== 'removed' && contains(s.outline, before));
  if (flight)
    return {
      on: 'steps',
      step: p.opening.sill - flight.top,
      fits: ring.every((q) => contains(flight.outline, q, SLACK)),
      slope: 0,
      risers: flight.risers,
    };
  const slab = structure.slabs.find((s) => s.state !== 'removed' && contains(s.outline, before, 1));
  if (!slab) return undefined;
  return {
    on: slab.mark,
    step: p.opening.sill - zAt(slab.top, p.middle),
    fits: ring.every((q) => contains(slab.outline, q, SLACK)),
    slope: Math.hypot(slab.top.gx, slab.top.gy),
    risers: 1,
  };
}

export const doorLanding: Check = {
  id: 'door-landing',
  title: 'Landing at doors under the cover',
  subjects: ({ structure }) => {
    const found = underCover(structure).filter((p) => isDoor(p.opening));
    return found.length === 0
      ? [{ id: 'house', path: '/house/openings' }]
      : found.map((p) => ({ id: p.opening.mark, path: p.opening.path }));
  },
  run(subject, ctx, rec) {
    const placed = underCover(ctx.structure).find((p) => p.opening.mark === subject.id);
    if (!placed) return notApplicable(CLAUSE, 'no door lies under the cover');
    const l = landingAt(ctx, placed);
    const { mark, width, swing } = placed.opening;
    if (!l)
      return notEvaluated(
        CLAUSE,
        `No slab or steps are entered before door ${mark}: enter the landing it has or gets.`,
      );
    const few = l.on === 'steps' && l.risers <= RISERS_WITHOUT_LANDING && swing !== 'out';
    const small = !l.fits && !few;
    const steep = l.slope > LANDING_SLOPE + 1e-6;
    rec?.step({
      symbol: 'step',
      meaning: `threshold of ${mark} above ${l.on}`,
      formula: 'z(threshold) − z(landing)',
      substituted: `${placed.opening.sill.toFixed(2)} − ${(placed.opening.sill - l.step).toFixed(2)}`,
      value: l.step,
      unit: 'in',
      clause: CLAUSE,
      from: [placed.opening.path],
    });
    const faults = [
      ...(l.step > THRESHOLD_STEP
        ? [`it lies ${l.step.toFixed(2)} in below the threshold where 7-3/4 in is the most`]
        : []),
      ...(small ? [`it is not ${LANDING_DEPTH} in deep and ${width.toFixed(0)} in wide`] : []),
      ...(steep ? [`it falls ${(12 * l.slope).toFixed(2)} in per foot where 1/4 in is the most`] : []),
    ];
    return measured(
      {
        demand: l.step,
        capacity: THRESHOLD_STEP,
        unit: 'in',
        clause: CLAUSE,
        formula: 'step / 7-3/4 in',
        prescriptive: true,
        mustFail: small || steep,
        note: `${l.on}, ${few && !l.fits ? 'two risers or fewer need no landing' : 'as wide as the door and 36 in deep'}`,
        remedy: `The landing at ${mark}: ${faults.join('; ')}.`,
      },
      rec,
    );
  },
};
