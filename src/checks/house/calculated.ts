import type { Recorder } from '../../base/trace.js';
import type { LedgerFastening } from '../../project/model.js';
import type { CheckContext, Finding } from '../contract.js';
import type { JointDemand } from '../joints/demands.js';
import { fastenersOf } from './ledger-fasteners.js';
import { type HousePlace, housePlaces, type PlaceSource } from './places.js';

/** The calculated connection of a ledger's joints, where its fasteners are given: the worst ledger of the mark. */
export function calculatedAtHouse(ctx: CheckContext, d: JointDemand, rec?: Recorder): Finding | undefined {
  if (d.kind !== 'ledger-to-house') return undefined;
  const places = housePlaces(ctx).filter((p) => p.joints.some((j) => j.mark === d.mark));
  if (places.length === 0 || places.some((p) => !p.ledger?.fastening)) return undefined;
  const findings = places.map((p) => fastenersOf(ctx, p));
  const open = findings.findIndex((f) => f.status !== 'pass');
  const worst = open >= 0 ? open : findings.reduce((w, f, i) => (f.ratio > findings[w]!.ratio ? i : w), 0);
  return fastenersOf(ctx, places[worst]!, rec);
}

/** Diameter of a fastener as it is bought: screws go by thousandths of an inch, lag screws and bolts by fractions. */
export const shankText = (f: Pick<LedgerFastening, 'kind' | 'diameter'>, length: (inches: number) => string): string =>
  f.kind === 'screw' ? `${Number(f.diameter.toFixed(3))}"` : length(f.diameter);

/** Where a ledger's places are: `21 places, the first 3 1/2" from each end, the others in equal spaces of 11 5/8" between`. */
export function placesText(place: HousePlace, length: (inches: number) => string): string {
  const at = place.joints.map((j) => j.ties[0]!.along).sort((p, q) => p - q);
  const spacing = at.length > 1 ? at[1]! - at[0]! : (place.ledger?.fastening?.spacing ?? 0);
  return `${at.length} places, the first ${length(at[0] ?? 0)} from each end, the others in equal spaces of ${length(spacing)} between`;
}

/** What is fastened there, for the joint schedule: `3 bolts 1/2" x 5", calculated`; undefined where nothing is given. */
export function calculatedText(ctx: PlaceSource, mark: string, length: (inches: number) => string): string | undefined {
  const fastened = housePlaces(ctx).filter((p) => p.joints.some((j) => j.mark === mark));
  const f = fastened[0]?.ledger?.fastening;
  if (!f || fastened.some((p) => !p.ledger?.fastening)) return undefined;
  const what = f.kind === 'bolt' ? 'through bolts' : f.kind === 'lag' ? 'lag screws' : 'wood screws';
  const others = fastened.length > 1 ? ', each ledger as its own fasteners say' : '';
  return `${f.rows.length} ${what} ${shankText(f, length)} x ${length(f.length)} at each place; ${fastened.map((p) => `${fastened.length > 1 ? `${p.id}: ` : ''}${placesText(p, length)}`).join('; ')}: calculated, see ledger fasteners${others}`;
}
