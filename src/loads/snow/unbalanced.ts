/** Snow blown from one slope of a gable to the other (ASCE 7 7.6.1). */
import type { RoofPlaced } from '../../structure/model.js';
import { note } from '../basis.js';
import { asce, num, unbalancedApplies, unbalancedGableSnow } from '../codes/asce7/index.js';
import type { SnowAnswer } from '../model.js';
import { DIRECTIONS, isAcross, lengthAlong } from '../wind-plan.js';
import { answer, carry, type Sheet, W2_LARGEST, type Zone } from './case.js';

export function unbalanced(sheet: Sheet, roof: RoofPlaced): SnowAnswer {
  const { project, structure, snow, ledger, gamma } = sheet;
  const edition = project.basis.codes.loads;
  const clause = asce(edition, '7.6.1');
  const valley = roof.neighbours?.find((n) => n.how === 'valley');
  if (valley)
    return answer(
      'unbalanced',
      roof,
      'outside',
      asce(edition, '7.6.3'),
      `Unbalanced snow is not covered where the roof meets ${valley.roof} in a valley.`,
    );
  const surfaces = structure.surfaces.filter((s) => s.roof === roof.mark);
  if (surfaces.every((s) => s.shape === 'monoslope'))
    return answer('unbalanced', roof, 'none', clause, 'a roof of one slope has no ridge to drift across');
  if (surfaces.length !== 2 || surfaces.some((s) => s.shape !== 'pitched'))
    return answer('unbalanced', roof, 'outside', clause, 'Unbalanced snow is covered for a roof of two slopes only.');
  if (!unbalancedApplies(roof.slope))
    return answer('unbalanced', roof, 'none', clause, 'the slope is under 1/2 in 12 or over 7 in 12');
  const ps = snow.ps.get(roof.mark) ?? 0;
  const cases: string[] = [];
  const from = [project.basis.snow.ground.path, roof.path];
  // Trusses are not the prismatic members from eave to ridge of the narrow form: they take the wide one at any width.
  const framing = structure.members.filter((m) => m.roof === roof.mark && m.strips.length > 0);
  const simpleMembers = framing.length > 0 && framing.every((m) => m.role === 'rafter');
  let peak = 0;
  let text = '';
  for (const d of DIRECTIONS) {
    if (!isAcross(roof, d)) continue;
    const whole = lengthAlong(roof, d);
    const W = whole / 2;
    const u = unbalancedGableSnow(
      { pg: snow.pg, Is: snow.Is, W2: W2_LARGEST, gamma, W, ps, theta: roof.slope, simpleMembers },
      edition,
    );
    if (!u) continue;
    const zones: Zone[] = [];
    const even = (a: number, b: number, p: number): void => {
      if (p > 0 && b > a) zones.push({ from: a, to: b, p0: p, p1: p });
    };
    even(0, W, u.windward);
    even(W, whole, u.leeward);
    even(W, Math.min(W + u.extent, whole), u.surcharge);
    const id = `S·unbalanced${d}`;
    cases.push(
      carry(sheet, id, `Unbalanced snow, wind toward ${d}`, d, clause, { roof: roof.mark, zones, instead: true }),
    );
    if (text !== '') continue;
    const narrow = u.extent === 0;
    peak = narrow ? u.leeward : u.surcharge;
    note(ledger, 'W', `${roof.mark}, unbalanced: eave to ridge`, W / 12, 'ft', clause, from);
    note(ledger, 'pu', `${roof.mark}, unbalanced: windward slope`, u.windward, 'psf', clause, from);
    note(ledger, 'pu', `${roof.mark}, unbalanced: leeward slope`, u.leeward, 'psf', clause, from);
    if (!narrow) {
      note(ledger, 'pd', `${roof.mark}, unbalanced: surcharge beside the ridge`, u.surcharge, 'psf', clause, from);
      note(ledger, 'w', `${roof.mark}, unbalanced: width of it from the ridge`, u.extent / 12, 'ft', clause, from);
    }
    text = narrow
      ? `narrow roof, ${num(u.leeward)} psf on one slope and none on the other`
      : `${num(u.windward)} psf windward, ${num(u.leeward)} psf leeward with ${num(u.surcharge)} psf more over ${num(u.extent / 12)} ft from the ridge`;
  }
  return answer('unbalanced', roof, 'included', clause, `Carried as ${cases.join(', ')}: ${text}.`, cases, peak);
}
