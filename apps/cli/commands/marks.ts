import type { Project, Structure } from '../../../src/checking.js';

/** Every mark that can be asked about, in the order of the structure. */
export const marksOf = (s: Structure, p?: Project): string[] => [
  ...new Set(
    [...s.members, ...s.footings, ...s.joints, ...s.roofs, ...(p?.cover.houseTies ?? [])].map((part) => part.mark),
  ),
];
