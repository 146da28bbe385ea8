/** What one rafter or truss catches of each term of the loads: a width profile for areas, a width for edges. */
import type { Member, Surface } from '../structure/model.js';
import { nearTo } from './near.js';
import { edgeWidth, type Profile, stripProfile } from './profile.js';
import { type Bar, type BarLoad, DOWN, placeOnBar, profileOnBar } from './rafter.js';
import type { Term, Terms } from './terms.js';

/** Of each of the terms near the member (`Near.terms`). */
export type Catch = readonly (Profile | number | undefined)[];

/** A profile of which only a share comes to the member. */
const shared = (p: Profile, share: number | undefined): Profile =>
  share === undefined ? p : p.map((q) => ({ ...q, wa: q.wa * share, wb: q.wb * share }));

function caughtOf(member: Member, term: Term, surfaces: ReadonlyMap<string, Surface>): Profile | number | undefined {
  let found: Profile | number | undefined;
  for (const strip of member.strips) {
    if (strip.surface !== term.surface) continue;
    const { outline } = surfaces.get(strip.surface)!;
    if (term.kind === 'edge') {
      found =
        ((found as number | undefined) ?? 0) + (strip.share ?? 1) * edgeWidth(outline, term.v, strip.u0, strip.u1);
    } else {
      const more = shared(stripProfile(outline, term.region, strip.u0, strip.u1), strip.share);
      if (more.length > 0) found = found ? [...(found as Profile), ...more] : more;
    }
  }
  return found;
}

export const catchTerms = (member: Member, terms: Terms, surfaces: ReadonlyMap<string, Surface>): Catch =>
  nearTo(member, terms).terms.map((i) => caughtOf(member, terms.terms[i]!, surfaces));

/** The load one unit of a term puts on a rafter. */
export function rafterLoad(bar: Bar, term: Term, surface: Surface, caught: Profile | number): BarLoad {
  if (typeof caught !== 'number') return profileOnBar(bar, surface, caught, term.kind === 'vertical');
  const { at, rate } = placeOnBar(bar, surface, true);
  const place = Math.min(Math.max(at + rate * term.v, 0), bar.beam.length);
  return { direction: DOWN, lines: [], points: [{ at: place, p: caught }] };
}
