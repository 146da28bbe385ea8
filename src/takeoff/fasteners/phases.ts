import type { Phase } from '../../project/model/buying.js';
import type { JointKind } from '../../structure/model.js';

/** Activity in which a joint is made. */
export const JOINT_PHASE: Readonly<Record<JointKind, Phase>> = {
  'rafter-to-ledger': 'framing',
  'rafter-to-beam': 'framing',
  'jack-to-hip': 'framing',
  'hip-to-beam': 'framing',
  'hip-to-ridge': 'framing',
  'truss-to-beam': 'framing',
  'rafter-to-ridge': 'framing',
  'tie-to-rafter': 'framing',
  'outlooker-to-frame': 'framing',
  'fascia-to-framing': 'framing',
  'beam-to-post': 'posts-and-beams',
  'beam-splice': 'posts-and-beams',
  'strut-to-post': 'posts-and-beams',
  'brace-to-beam': 'posts-and-beams',
  'brace-to-post': 'posts-and-beams',
  'post-to-footing': 'posts-and-beams',
  'ledger-to-house': 'posts-and-beams',
  'beam-to-wall-post': 'posts-and-beams',
  'beam-to-wall': 'posts-and-beams',
  'post-to-house': 'posts-and-beams',
};
