/** Joints: which parts meet, where, and how. */
import type { Vec3 } from '../../base/vec.js';

export type JointKind =
  | 'rafter-to-ledger'
  | 'rafter-to-beam'
  | 'jack-to-hip'
  | 'hip-to-beam'
  | 'hip-to-ridge'
  | 'truss-to-beam'
  | 'rafter-to-ridge'
  | 'tie-to-rafter'
  | 'outlooker-to-frame'
  | 'beam-to-post'
  | 'beam-splice'
  | 'strut-to-post'
  | 'brace-to-beam'
  | 'brace-to-post'
  | 'post-to-footing'
  | 'ledger-to-house'
  | 'beam-to-wall-post'
  | 'beam-to-wall'
  | 'post-to-house'
  | 'fascia-to-framing';

export interface Tie {
  /** Member id, footing id, or house wall id. */
  readonly part: string;
  /** Distance of the joint along that member's axis from its start; 0 for a footing or wall. */
  readonly along: number;
}

export interface Joint {
  /** Unique: `J3-07`. */
  readonly id: string;
  /** As drawn and scheduled; every joint of one kind between the same marks of section shares it: `J3`. */
  readonly mark: string;
  readonly kind: JointKind;
  readonly at: Vec3;
  /** Load comes down from the first to the last. */
  readonly ties: readonly Tie[];
  /** Length and width of the wood-to-wood or wood-to-plate contact, inches; 0 when load goes through a connector only. */
  readonly contact: { readonly length: number; readonly width: number };
  readonly path: string;
}
