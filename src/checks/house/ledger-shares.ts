/** How the load on one fastener place comes from the rafters: the ledger as a continuous beam on its places. Statics. */
import { beamShares, evenShares } from '../../analysis/ledger.js';
import type { Recorder } from '../../base/trace.js';
import { distance } from '../../base/vec.js';
import type { Combination } from '../../loads/model.js';
import type { Joint } from '../../structure/model.js';
import type { CheckContext } from '../contract.js';
import type { HousePlace } from './places.js';

/** Parts under this are lumped together, lb. */
const SMALL = 0.5;

/** One part of the sum: what it is, its share of the load, and the load, lb. */
export interface Part {
  readonly what: string;
  readonly share: number;
  readonly load: number;
}

/** Shares of the rafters down on a place and of the ledger's own weight, largest first; they add up to the place's force. */
export function partsAt(ctx: CheckContext, place: HousePlace, joint: Joint, c: Combination): readonly Part[] {
  const at = place.joints.map((j) => j.ties[0]!.along).sort((p, q) => p - q);
  const i = at.indexOf(joint.ties[0]!.along);
  const parts: Part[] = [];
  for (const hung of ctx.structure.joints) {
    const tie = hung.ties.at(-1)!;
    const force = ctx.effects.joints.get(hung.id)?.force;
    if (tie.part !== place.member.id || !force) continue;
    const load = c.terms.reduce((sum, t) => sum - t.factor * force[t.case]!.z, 0);
    parts.push({ what: hung.id, share: beamShares(at, tie.along)[i]!, load });
  }
  const { member } = place;
  const width = evenShares(at, distance(member.start, member.end))[i]!;
  const heavy = c.terms.reduce((sum, t) => sum + (ctx.loads.cases[t.case]?.selfWeight ? t.factor : 0), 0);
  parts.push({ what: 'own weight', share: width, load: heavy * member.section.weight });
  return parts.sort((p, q) => Math.abs(q.share * q.load) - Math.abs(p.share * p.load));
}

/** The sum as one step. */
export function recordParts(ctx: CheckContext, place: HousePlace, joint: Joint, c: Combination, rec: Recorder): void {
  const parts = partsAt(ctx, place, joint, c);
  const shown = parts.filter((p) => Math.abs(p.share * p.load) >= SMALL);
  const rest = parts.filter((p) => !shown.includes(p)).reduce((sum, p) => sum + p.share * p.load, 0);
  rec.step({
    symbol: 'Vr',
    meaning:
      'on this place, down positive: ledger continuous over its places, which do not give way; share of each load by the three-moment equation',
    formula: 'Σ share · load, largest first',
    substituted: `${shown.map((p) => `${p.share.toFixed(3)}·${p.load.toFixed(p.what === 'own weight' ? 3 : 1)} (${p.what})`).join(' + ')}${Math.abs(rest) >= 0.05 ? ` + ${rest.toFixed(1)} (all others)` : ''}`,
    value: parts.reduce((sum, p) => sum + p.share * p.load, 0),
    unit: 'lb',
    clause: 'statics',
    from: [place.path],
    note: 'a load at a beyond the end place of equal bays s: 1 + 1.268·a/s there',
  });
}
