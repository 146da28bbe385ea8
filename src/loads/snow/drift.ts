/** Drift on a new roof below the house: leeward from the house roof, windward from the new roof itself (ASCE 7 7.7). */
import type { RoofPlaced } from '../../structure/model.js';
import { note } from '../basis.js';
import { adjacentLeewardDrift, asce, driftHeight, num, stepDrift } from '../codes/asce7/index.js';
import type { SnowAnswer } from '../model.js';
import { lengthAlong } from '../wind-plan.js';
import { answer, carry, type Sheet, W2_LARGEST, type Zone } from './case.js';
import { houseLength, type Step, stepsBeside, unknownNeighbour } from './house-steps.js';

interface Drift {
  readonly sense: 'leeward' | 'windward';
  readonly zone: Zone;
  /** Clear height and height at the roof's near edge, inches. */
  readonly height: number;
  readonly lu: number;
}

/** Drifts of one step, each as a zone on the roof. Touching roofs in 7-16 take the larger of the two (7.7.1). */
function driftsOf(sheet: Sheet, roof: RoofPlaced, step: Step): readonly Drift[] {
  const { project, structure, snow, gamma } = sheet;
  const edition = project.basis.codes.loads;
  const ps = snow.ps.get(roof.mark) ?? 0;
  const base = { pg: snow.pg, Is: snow.Is, W2: W2_LARGEST, gamma };
  const out: Drift[] = [];
  for (const sense of ['leeward', 'windward'] as const) {
    const lu = sense === 'leeward' ? houseLength(structure, step.toward) : lengthAlong(roof, step.toward);
    const drift = stepDrift(sense, { ...base, lu }, step.height, ps, edition);
    if (!drift.required) continue;
    if (step.gap === 0) {
      if (drift.pd > 0)
        out.push({ sense, lu, height: drift.height, zone: { from: 0, to: drift.width, p0: drift.pd, p1: 0 } });
    } else if (sense === 'leeward') {
      const a = adjacentLeewardDrift(driftHeight({ ...base, lu }, edition), step.height, step.gap);
      const p0 = (a.height / 12) * gamma;
      if (a.extent > 0 && p0 > 0) out.push({ sense, lu, height: a.height, zone: { from: 0, to: a.extent, p0, p1: 0 } });
    } else if (drift.width > step.gap) {
      // What would lie in the gap falls through it (7.7.2).
      const left = 1 - step.gap / drift.width;
      const zone = { from: 0, to: drift.width - step.gap, p0: drift.pd * left, p1: 0 };
      out.push({ sense, lu, height: drift.height * left, zone });
    }
  }
  const [a, b] = out;
  if (step.gap === 0 && edition === '7-16' && a && b) return [a.height >= b.height ? a : b];
  return out;
}

export function drift(sheet: Sheet, roof: RoofPlaced): SnowAnswer {
  const { project, structure, ledger } = sheet;
  const edition = project.basis.codes.loads;
  const clause = asce(edition, '7.7');
  const neighbour = unknownNeighbour(project, structure, roof);
  const { steps, outside } = stepsBeside(project, structure, roof);
  const why = neighbour ?? outside;
  if (why !== undefined) return answer('drift', roof, 'outside', clause, `Drift is not covered: ${why}.`);
  if (steps.length === 0)
    return answer('drift', roof, 'none', clause, 'no higher wall or roof faces this roof within 20 ft');
  const lacking = steps.find((s) => houseLength(structure, s.toward) <= 0);
  if (lacking)
    return answer('drift', roof, 'outside', clause, 'Drift is not covered: the length of the house is not known.');
  const cases: string[] = [];
  let peak = 0;
  const said: string[] = [];
  const from = [project.basis.snow.ground.path, roof.path, '/house'];
  for (const step of steps) {
    const about = `${roof.mark}, drift toward ${step.toward}`;
    const section = step.gap > 0 ? '7.7.2' : '7.7.1';
    for (const d of driftsOf(sheet, roof, step)) {
      const id = `S·drift${step.toward}·${d.sense}`;
      const title = `Drifted snow toward ${step.toward}, ${d.sense}`;
      const at = asce(edition, section);
      const seen = step.gap > 0 ? 'memory' : 'read';
      cases.push(carry(sheet, id, title, step.toward, at, { roof: roof.mark, zones: [d.zone], instead: false }));
      note(
        ledger,
        'step',
        `${about}: height of the ${step.walls.join(', ')} wall above it`,
        step.height / 12,
        'ft',
        at,
        from,
        seen,
      );
      note(ledger, 'lu', `${about}: fetch, ${d.sense}`, d.lu / 12, 'ft', asce(edition, '7.7.1'), from);
      note(ledger, 'hd', `${about}: height of the drift at the roof's edge`, d.height / 12, 'ft', at, from, seen);
      note(ledger, 'pd', `${about}: surcharge at the edge, on top of ps`, d.zone.p0, 'psf', at, from, seen);
      note(ledger, 'w', `${about}: width to where the drift ends`, d.zone.to / 12, 'ft', at, from, seen);
      if (d.zone.p0 > peak) peak = d.zone.p0;
      said.push(`${d.sense} ${num(d.zone.p0)} psf falling to nothing in ${num(d.zone.to / 12)} ft`);
    }
  }
  if (cases.length === 0)
    return answer('drift', roof, 'none', clause, 'the step is too low, or too far off, for a drift to form');
  return answer('drift', roof, 'included', clause, `Carried as ${cases.join(', ')}: ${said.join('; ')}.`, cases, peak);
}
