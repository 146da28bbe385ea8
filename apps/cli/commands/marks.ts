import type { Structure } from '../../../src/index.js';

/** Every mark that can be asked about, in the order of the structure. */
export const marksOf = (s: Structure): string[] => [
  ...new Set([...s.members, ...s.footings, ...s.joints, ...s.roofs].map((p) => p.mark)),
];
