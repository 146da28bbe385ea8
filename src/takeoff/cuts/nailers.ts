/** Boards flat against the house wall that a house tie's fasteners go through. */
import { makeSection } from '../../structure/sections.js';
import type { TakeoffInput } from './input.js';
import type { LooseCut } from './model.js';
import { specOf } from './stock.js';

export function nailerCuts({ project, buying }: TakeoffInput): LooseCut[] {
  return (project.cover.houseTies ?? []).flatMap((t): LooseCut[] => {
    const choice = t.nailer === '' ? undefined : project.choices.sections[t.nailer];
    if (!choice) return [];
    const made = makeSection(choice, { choice: t.nailer, path: t.path });
    if (!made.ok) return [];
    const length = t.to - t.from;
    const cut = { id: `${t.mark}.nailer`, part: t.mark, mark: t.mark, what: 'nailer on the house wall', length };
    return [{ spec: specOf(made.section, buying, length), phase: 'framing', cut }];
  });
}
