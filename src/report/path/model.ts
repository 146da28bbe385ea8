/** The chain of parts that carries a load to the ground, as printed, drawn and shown. */

export type PathWay = 'down' | 'up' | 'side';

/**
 * One direction of one link. `capacity` is undefined where nothing states one: with a ratio, a connection worked out for
 * all ways together; without, the joint is open that way.
 */
export interface PathShare {
  readonly way: PathWay;
  readonly demand: number;
  readonly capacity: number | undefined;
  readonly unit: string;
  /** Demand over capacity, or the ratio of all ways together; undefined where open, 0 where nothing is asked. */
  readonly ratio: number | undefined;
  /** What holds it, or what is missing: `wood bearing`, `no product or connection named`. */
  readonly by: string;
  /** Result to ask for the steps, `` when none. */
  readonly result: string;
}

export interface PathStation {
  /** Mark of the parts at this station: `B1`, `R1`, `soil`, a wall's name. */
  readonly mark: string;
  /** `beam`, `roof surface`, `footing`, `soil`, `house wall: verify`. */
  readonly what: string;
  readonly count: number;
  /** Own check nearest its limit: `Beam bending 0.82`; undefined where the part has none. */
  readonly worst:
    | { readonly title: string; readonly ratio: number; readonly status: string; readonly result: string }
    | undefined;
}

export interface PathStep {
  readonly from: string;
  readonly to: string;
  /** Joint mark; `` where sheathing lies on framing and a footing on soil. */
  readonly mark: string;
  readonly what: string;
  readonly count: number;
  readonly shares: readonly PathShare[];
  /** Ratio of all ways together at the worst joint of the mark; undefined where the link is no joint or open. */
  readonly together: number | undefined;
}

export interface PathAnswer {
  readonly mark: string;
  readonly stations: readonly PathStation[];
  readonly steps: readonly PathStep[];
  /** Breaks that touch these parts; empty when the chain is closed. */
  readonly breaks: readonly string[];
  /** Marks at which the chain ends: `soil`, walls of the house. */
  readonly ends: readonly string[];
}
