/** Roofs as subjects of the cladding checks, and the small areas their parts catch wind on. */
import type { CoverRoof } from '../../project/model.js';
import type { CheckContext, Subject } from '../contract.js';

/** One subject a roof; `key` is what the answer comes from, so that a missing one is named by its own path. */
export const roofSubjects = (ctx: CheckContext, key: string): readonly Subject[] =>
  ctx.project.cover.roofs.map((r) => ({ id: r.mark, path: `${r.path}/${key}` }));

export const roofOf = (ctx: CheckContext, mark: string): CoverRoof | undefined =>
  ctx.project.cover.roofs.find((r) => r.mark === mark);

/**
 * Effective wind area of sheathing and covering between frames, in²: span times a third of it, the least width the
 * definition allows and therefore the largest pressure. ASCE 7-16 26.2.
 */
export const panelArea = (spacing: number): number => (spacing * spacing) / 3;
