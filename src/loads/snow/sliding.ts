/** Snow sliding from the house onto a new roof below it (ASCE 7 7.9). */
import type { RoofPlaced } from '../../structure/model.js';
import { note } from '../basis.js';
import { asce, flatRoofSnow, num, slidingApplies, slidingSnow } from '../codes/asce7/index.js';
import type { SnowAnswer } from '../model.js';
import { DIRECTIONS, lengthAlong } from '../wind-plan.js';
import { answer, carry, type Sheet, type Zone } from './case.js';
import { higherRoof, sheddingOn, stepsBeside } from './house-steps.js';

/** Thermal factor of the upper roof: that of an unheated one, the heaviest a house can have. */
const CT_UPPER = 1.2;

export function sliding(sheet: Sheet, roof: RoofPlaced): SnowAnswer {
  const { project, structure, snow, ledger } = sheet;
  const edition = project.basis.codes.loads;
  const clause = asce(edition, '7.9');
  const above = higherRoof(structure, roof);
  if (above !== undefined) return answer('sliding', roof, 'outside', clause, `Sliding is not covered: ${above}.`);
  const slopes = sheddingOn(project, structure, roof);
  const { steps, outside } = stepsBeside(project, structure, roof);
  if ((steps.length > 0 || outside !== undefined) && structure.housePlanes.every((p) => p.state === 'removed'))
    return answer(
      'sliding',
      roof,
      'outside',
      clause,
      'Sliding is not covered: no roof is described on the higher wall.',
    );
  if (slopes.length === 0)
    return answer('sliding', roof, 'none', clause, 'no house roof falls toward this roof from above it');
  const pf = flatRoofSnow(snow.pg, snow.Ce, CT_UPPER, snow.Is, edition);
  const cases: string[] = [];
  let peak = 0;
  const said: string[] = [];
  const from = [project.basis.snow.ground.path, roof.path, '/house/roofs'];
  for (const d of DIRECTIONS) {
    // Two slopes one behind the other would both reach the roof; the heavier stands for each direction.
    let zone: Zone | undefined;
    let W = 0;
    for (const s of slopes) {
      if (s.toward !== d || !slidingApplies(s.slope, s.slippery)) continue;
      const room = lengthAlong(roof, d) - s.under;
      const load = slidingSnow(pf, s.W, room, edition, { s: s.gap, h: s.drop });
      if (load.width <= 0 || load.intensity * load.width <= (zone ? zone.p0 * (zone.to - zone.from) : 0)) continue;
      zone = { from: s.under, to: s.under + load.width, p0: load.intensity, p1: load.intensity };
      W = s.W;
    }
    if (!zone) continue;
    const id = `S·sliding${d}`;
    const about = `${roof.mark}, sliding toward ${d}`;
    cases.push(
      carry(sheet, id, `Snow sliding from the house toward ${d}`, d, clause, {
        roof: roof.mark,
        zones: [zone],
        instead: false,
      }),
    );
    const at = asce(edition, 'Eq. 7.3-1');
    note(ledger, 'pf', `${about}: flat roof load of the house, Ct ${CT_UPPER} as unheated`, pf, 'psf', at, from);
    note(ledger, 'W', `${about}: eave to ridge of the house roof`, W / 12, 'ft', clause, from);
    note(ledger, 'psl', `${about}: 0.4·pf·W over 15 ft, on top of ps`, zone.p0, 'psf', clause, from, 'memory');
    note(
      ledger,
      'w',
      `${about}: loaded width from the upper eave`,
      (zone.to - zone.from) / 12,
      'ft',
      clause,
      from,
      'memory',
    );
    peak = Math.max(peak, zone.p0);
    said.push(`${num(zone.p0)} psf over ${num((zone.to - zone.from) / 12)} ft`);
  }
  if (cases.length === 0)
    return answer(
      'sliding',
      roof,
      'none',
      clause,
      'the house roof is too flat to shed, or too far off to reach this roof',
    );
  return answer(
    'sliding',
    roof,
    'included',
    clause,
    `Carried as ${cases.join(', ')}: ${said.join('; ')}.`,
    cases,
    peak,
  );
}
