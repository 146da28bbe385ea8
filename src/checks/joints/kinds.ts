/** What each kind of joint is to the checks. A new kind does not compile until it says. */
import type { JointKind } from '../../structure/model.js';

export interface JointTraits {
  /** Part of the load path; trim carries little more than its own weight. */
  readonly carries: boolean;
  /** Ties down a single framing member, which the larger component wind pressure lifts (ASCE 7-16 30.7). */
  readonly component: boolean;
  /** A check of its own that answers for its fasteners. */
  readonly own?: string;
}

export const JOINT_TRAITS: Readonly<Record<JointKind, JointTraits>> = {
  'outlooker-to-frame': { carries: true, component: true },
  'rafter-to-ledger': { carries: true, component: true },
  'rafter-to-beam': { carries: true, component: true },
  'jack-to-hip': { carries: true, component: true },
  'hip-to-beam': { carries: true, component: true },
  'hip-to-ridge': { carries: true, component: true },
  'truss-to-beam': { carries: true, component: true },
  'rafter-to-ridge': { carries: true, component: false },
  // Its nails are named with the ties; no product row serves it.
  'tie-to-rafter': { carries: false, component: false, own: 'tie-heel' },
  'beam-to-post': { carries: true, component: false },
  'beam-splice': { carries: true, component: false },
  'strut-to-post': { carries: true, component: false },
  'brace-to-beam': { carries: true, component: false },
  'brace-to-post': { carries: true, component: false },
  'post-to-footing': { carries: true, component: false },
  'ledger-to-house': { carries: true, component: false },
  'beam-to-wall-post': { carries: true, component: false },
  'beam-to-wall': { carries: true, component: false },
  'post-to-house': { carries: true, component: false },
  'fascia-to-framing': { carries: false, component: false },
};
