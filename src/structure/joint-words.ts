/** Joints and members in words, the same on every sheet, in `path` and in `why`. */
import type { JointKind, Member } from './model.js';

export const JOINT_WORDS: Readonly<Record<JointKind, string>> = {
  'rafter-to-ledger': 'rafter to ledger',
  'rafter-to-beam': 'rafter to beam',
  'truss-to-beam': 'truss to beam',
  'outlooker-to-frame': 'outlooker to end frame and next frame',
  'jack-to-hip': 'jack rafter to hip',
  'hip-to-beam': 'hip to beams at the corner',
  'hip-to-ridge': 'hip or king rafter to end of ridge beam',
  'rafter-to-ridge': 'rafter to ridge board',
  'tie-to-rafter': 'tie to rafter',
  'beam-to-post': 'beam to post',
  'beam-splice': 'beam splice over post',
  'strut-to-post': 'cross member to post',
  'brace-to-beam': 'knee brace to beam or cross member',
  'brace-to-post': 'knee brace to post',
  'post-to-footing': 'post to footing',
  'ledger-to-house': 'ledger to house framing',
  'beam-to-wall-post': 'beam on post in wall',
  'beam-to-wall': 'beam fixed to wall',
  'post-to-house': 'post in wall to foundation',
  'fascia-to-framing': 'fascia to framing',
};

/** Roles whose name in the model is not the word of the trade; the others read as they are. */
const ROLE_WORDS: Readonly<Partial<Record<Member['role'], string>>> = {
  strut: 'cross member',
  brace: 'knee brace',
};

/** A role in words: `cross member`, `gable truss`. */
export const roleWords = (role: string): string => ROLE_WORDS[role as Member['role']] ?? role.replaceAll('-', ' ');
