/** What the plies of a built-up section are fastened with, and what one fastener carries from ply to ply. */
import type { Recorder } from '../../base/trace.js';
import { type Fastener, findFastener } from '../../catalog/index.js';
import type { PlyFastening } from '../../project/ply-fastening.js';
import type { Section } from '../../structure/model.js';
import {
  adjustedZ,
  CMConnection,
  dowelBearing,
  LEAST_PENETRATION,
  lateralValueGap,
  TIP_DIAMETERS,
} from '../codes/nds-2018/index.js';
import type { CheckContext } from '../contract.js';

export interface Plies {
  readonly section: Section;
  readonly fastening: PlyFastening | undefined;
  readonly fastener: Fastener | undefined;
  /** Width of what lies between two plies, inches. */
  readonly gap: number;
}

/** The plies of a section; undefined when it is one piece. */
export function pliesOf(ctx: CheckContext, section: Section): Plies | undefined {
  if (section.plies < 2) return undefined;
  const choice = ctx.project.choices.sections[section.choice];
  const fastening = choice && 'plyFastening' in choice ? choice.plyFastening : undefined;
  // Strips are shared out over the faces; where there are fewer than faces, one face has a whole one.
  const gap = choice && 'spacers' in choice && choice.spacers > 0 ? choice.spacerThickness : 0;
  return { section, fastening, fastener: fastening && findFastener(fastening.fastener), gap };
}

/** Length of a nail in the ply its point is in, without the tip; a bolt goes through. */
export function pointLength(p: Plies, f: Fastener): { readonly lm: number; readonly penetration: number } {
  const t = p.section.plyWidth;
  if (f.length === undefined) return { lm: t, penetration: t };
  const penetration = Math.min(f.length - t - p.gap, t);
  return { lm: f.length - t - p.gap > t ? t : penetration - TIP_DIAMETERS * f.D, penetration };
}

/** Why the fastener cannot join these plies; undefined when it can. */
export function tooShort(p: Plies, f: Fastener): string | undefined {
  const { penetration } = pointLength(p, f);
  const least = LEAST_PENETRATION.nails * f.D;
  if (f.length === undefined || penetration >= least - 1e-9) return undefined;
  return `the ${f.name} reaches ${Math.max(0, penetration).toFixed(2)} in into the next ply, at least ${least.toFixed(2)} in: use a longer one`;
}

/** Z' of one fastener between two plies, load across the grain, lb. NDS 2018 12.3, AWC TR12 for the strip between. */
export function plyZ(p: Plies, f: Fastener, CD: number, rec?: Recorder): number {
  const G = p.section.values.G;
  const across = Math.PI / 2;
  const Fe = dowelBearing(G, f.D, across, false, rec);
  const { lm } = pointLength(p, f);
  const { Z } = lateralValueGap(
    { D: f.D, lm: Math.max(lm, 1e-3), ls: p.section.plyWidth, Fem: Fe, Fes: Fe, Fyb: f.Fyb, thetaMax: across },
    p.gap,
    rec,
  );
  // Treated wood is mostly wet when it is nailed up.
  const moisture = { wetAtFabrication: p.section.treatment !== 'none', wetInService: p.section.wet };
  return adjustedZ(
    Z,
    { CD, CM: CMConnection('dowel-lateral', moisture, f.D, (p.fastening?.rows ?? 1) === 1, rec) },
    rec,
  );
}
