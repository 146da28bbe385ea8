/** What each kind of joint is to the checks. A new kind does not compile until it says. */
import type { JointKind } from '../../structure/model.js';

export interface JointTraits {
  /** Part of the load path; trim carries little more than its own weight. */
  readonly carries: boolean;
}

export const JOINT_TRAITS: Readonly<Record<JointKind, JointTraits>> = {
  'rafter-to-ledger': { carries: true },
  'rafter-to-beam': { carries: true },
  'truss-to-beam': { carries: true },
  'beam-to-post': { carries: true },
  'beam-splice': { carries: true },
  'post-to-footing': { carries: true },
  'ledger-to-house': { carries: true },
  'fascia-to-framing': { carries: false },
};
