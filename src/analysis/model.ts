/**
 * What the analysis hands to the checks. Tiers meet at bearings: framing members give reactions case by case, beams on
 * posts take them, footings take those. Everything is kept per load case; a combination is a linear sum, formed by
 * whoever needs it so that P, V and M of one combination stay together.
 */
import type { Vec3 } from '../base/vec.js';

/**
 * Effects along one member, per load case. Local axes: x from start to end, y the depth direction (`member.up`), z = x × y.
 * `m` is moment about local z (strong axis), positive when the edge away from `up` (the bottom) is in tension;
 * `v` shear in the depth direction, dm/dx; `n` axial, tension positive; `mWeak`, `vWeak` about the other axis;
 * `sag` deflection along −up relative to the chord between the supports that bound each station, positive down.
 * Each case's array is stations long: value = m[case][station].
 */
export interface MemberEffects {
  readonly member: string;
  /** Distance from the start, inches, increasing; a support or point load appears twice (left and right of the jump). */
  readonly stations: Float64Array;
  /** Span the station lies in: index into `spans`. */
  readonly spanOf: Int32Array;
  readonly spans: readonly Span[];
  readonly m: readonly Float64Array[];
  readonly v: readonly Float64Array[];
  readonly n: readonly Float64Array[];
  readonly mWeak: readonly Float64Array[];
  readonly vWeak: readonly Float64Array[];
  readonly sag: readonly Float64Array[];
}

export interface Span {
  readonly from: number;
  readonly to: number;
  readonly length: number;
  /** `span` between two supports; `overhang` beyond the first or last. */
  readonly kind: 'span' | 'overhang';
}

/** Force that the upper part of a joint exerts on the lower part, house axes, lb; index = load case. */
export interface JointForces {
  readonly joint: string;
  readonly force: readonly Vec3[];
  /** Moment passed as well (a held foot), about house axes by the right-hand rule, lb·in; absent: none. */
  readonly moment?: readonly Vec3[];
}

/**
 * Actions at the top of a footing's soil contact (its underside), per case: `force.z` vertical, down positive; `force.x`,
 * `force.y` horizontal, house axes; `moment.x`, `moment.y` about those axes by the right-hand rule. The footing's own
 * weight and the soil on it are not in these: they are dead load the checks add with its factor.
 */
export interface FootingForces {
  readonly footing: string;
  readonly force: readonly Vec3[];
  readonly moment: readonly Vec3[];
}

/** Hand statics beside each analysed number: tributary length or area times load. */
export interface HandCheck {
  readonly about: string;
  readonly case: string;
  readonly statics: number;
  readonly analysed: number;
  readonly unit: string;
  /** Named reason why the analysed number may lie below statics by over 5 %: `continuity over P2`. */
  readonly reason: string;
  readonly governs: 'analysed' | 'statics';
}

export interface Balance {
  readonly case: string;
  /** Totals put on the model (surfaces, edges, members), lb. */
  readonly applied: Vec3;
  /** The same from an independent integral of the project's own geometry, lb. */
  readonly integral: Vec3;
  /** Sum of what all supports receive (footings, house, and sway restraints), lb: same sense as the loads. */
  readonly reactions: Vec3;
  /** Greatest relative differences, per largest component. */
  readonly errorApplied: number;
  readonly errorReactions: number;
}

/**
 * Side force that the model holds at roof level by a notional restraint because the sway system has not been worked
 * out (what the restraint receives, same sense as the load); it is reported so that nothing is lost, per case, per roof, in house axes.
 */
export interface SwayForce {
  readonly roof: string;
  readonly force: readonly Vec3[];
}

/**
 * One place where a beam is kept from moving sideways: what the restraint receives there (same sense as the load), per
 * case, house axes. The system named for each direction must take it; their sum over all places is the sway force.
 */
export interface Restraint {
  readonly beam: string;
  readonly at: Vec3;
  readonly force: readonly Vec3[];
}

/** Movement of the top of a post, house axes, per case, inches, and the height over which it leans. */
export interface Drift {
  readonly post: string;
  readonly height: number;
  readonly move: readonly Vec3[];
}

export interface Effects {
  /** Names of the load cases, in the order of every per-case array. */
  readonly cases: readonly string[];
  readonly members: ReadonlyMap<string, MemberEffects>;
  readonly joints: ReadonlyMap<string, JointForces>;
  readonly footings: ReadonlyMap<string, FootingForces>;
  readonly sway: readonly SwayForce[];
  readonly restraints: readonly Restraint[];
  /** One for each post where posts hold the side load in some direction; else empty or absent. */
  readonly drift?: readonly Drift[];
  readonly hand: readonly HandCheck[];
  readonly balance: readonly Balance[];
  /** Freedoms of the support frame and cases solved, for the record. */
  readonly size: { readonly freedoms: number; readonly cases: number };
  /** Set when the model is a mechanism or not solvable: names what is loose. */
  readonly failure?: string;
}
