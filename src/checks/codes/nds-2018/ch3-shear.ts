import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';

/**
 * Shear stress of a rectangle under V (lb), psi. Loads within d of a support may be left out of V where the member
 * bears fully on it and the load is on the opposite edge (3.4.3.1a). NDS 2018 Eq. 3.4-2.
 */
export function fv(V: number, b: number, d: number, rec?: Recorder): number {
  const value = (3 * Math.abs(V)) / (2 * b * d);
  rec?.step({
    symbol: 'fv',
    meaning: 'shear stress parallel to grain',
    formula: '3·V / (2·b·d)',
    substituted: `3·${say(Math.abs(V))} / (2·${say(b)}·${say(d)})`,
    value,
    unit: 'psi',
    clause: 'NDS 2018 Eq. 3.4-2',
  });
  return value;
}

/** Shear capacity of an unnotched rectangle, lb: (2/3)·Fv'·b·d. NDS 2018 3.4.2 turned round. */
export const Vr = (FvAdj: number, b: number, d: number): number => (2 / 3) * FvAdj * b * d;

/**
 * Shear capacity at an end notched on the tension edge, lb; `dn` is the depth left, in. NDS 2018 Eq. 3.4-3.
 */
export function VrNotchTension(FvAdj: number, b: number, d: number, dn: number, rec?: Recorder): number {
  const value = (2 / 3) * FvAdj * b * dn * (dn / d) ** 2;
  rec?.step({
    symbol: "Vr'",
    meaning: 'shear capacity at the notch on the tension edge',
    formula: "(2/3·Fv'·b·dn)·(dn/d)²",
    substituted: `(2/3·${say(FvAdj)}·${say(b)}·${say(dn)})·(${say(dn)}/${say(d)})²`,
    value,
    unit: 'lb',
    clause: 'NDS 2018 Eq. 3.4-3',
  });
  return value;
}

/**
 * Shear capacity at an end notched on the compression edge, lb. `dn` depth left; `e` distance the notch extends past
 * the inside edge of the support, in. Where e > dn the depth left alone counts. NDS 2018 Eq. 3.4-5.
 */
export function VrNotchCompression(FvAdj: number, b: number, d: number, dn: number, e: number, rec?: Recorder): number {
  const effective = e > dn ? dn : d - ((d - dn) / dn) * e;
  const value = (2 / 3) * FvAdj * b * effective;
  rec?.step({
    symbol: "Vr'",
    meaning: 'shear capacity at the notch on the compression edge',
    formula: e > dn ? "2/3·Fv'·b·dn" : "2/3·Fv'·b·[d − ((d−dn)/dn)·e]",
    substituted: `2/3·${say(FvAdj)}·${say(b)}·${say(effective)}`,
    value,
    unit: 'lb',
    clause: 'NDS 2018 Eq. 3.4-5',
  });
  return value;
}

/**
 * Shear capacity where a beam hangs on bolts, lag screws or other fasteners, lb. `de` is the depth from the loaded
 * edge's far side to the nearest fastener, in; `distanceToEnd` from the fasteners to the member end, in. Nearer than 5d
 * Eq. 3.4-6 applies, else Eq. 3.4-7. NDS 2018 3.4.3.3 (recalled).
 */
export function VrConnection(
  FvAdj: number,
  b: number,
  d: number,
  de: number,
  distanceToEnd: number,
  rec?: Recorder,
): number {
  const near = distanceToEnd < 5 * d;
  const plain = (2 / 3) * FvAdj * b * de;
  const value = near ? plain * (de / d) ** 2 : plain;
  rec?.step({
    symbol: "Vr'",
    meaning: 'shear capacity of the beam at its fasteners',
    formula: near ? "(2/3·Fv'·b·de)·(de/d)²" : "2/3·Fv'·b·de",
    substituted: near
      ? `(2/3·${say(FvAdj)}·${say(b)}·${say(de)})·(${say(de)}/${say(d)})²`
      : `2/3·${say(FvAdj)}·${say(b)}·${say(de)}`,
    value,
    unit: 'lb',
    clause: near ? 'NDS 2018 Eq. 3.4-6' : 'NDS 2018 Eq. 3.4-7',
  });
  return value;
}
