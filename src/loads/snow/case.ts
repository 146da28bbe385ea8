/** One snow case in the making: which roof carries what between which distances, and the case that comes of it. */
import type { Project } from '../../project/model.js';
import type { RoofPlaced, Structure } from '../../structure/model.js';
import type { Ledger } from '../basis.js';
import type { BalancedSnow } from '../gravity.js';
import type { AreaLoad, LoadCase, PlanLoad, SnowAnswer, SnowQuestion, WindDirection } from '../model.js';
import { isAcross, lengthAlong, zoneOn } from '../wind-plan.js';

/** Strips that stand for a sloping load: each even at its mean, so the total is exact and the moment about the wall 0.8 % high. */
const STRIPS = 8;
/** Winter wind parameter of 7-22, not in the project file: the largest of the map. */
export const W2_LARGEST = 0.65;

/** Load between two distances from the roof's near edge along the direction, running straight from `p0` to `p1`. */
export interface Zone {
  readonly from: number;
  readonly to: number;
  readonly p0: number;
  readonly p1: number;
}

/** What one roof carries in one case. */
export interface Carried {
  readonly roof: string;
  readonly zones: readonly Zone[];
  /** True where the zones replace the balanced load instead of lying on it. */
  readonly instead: boolean;
}

/** One case in the making; roofs that share its id come together. */
export interface Draft {
  readonly id: string;
  readonly title: string;
  readonly toward: WindDirection;
  readonly clause: string;
  readonly carried: Carried[];
}

export interface Sheet {
  readonly project: Project;
  readonly structure: Structure;
  readonly snow: BalancedSnow;
  readonly ledger: Ledger;
  readonly gamma: number;
  readonly drafts: Map<string, Draft>;
}

function addZones(
  areas: AreaLoad[],
  plan: PlanLoad[],
  structure: Structure,
  roof: RoofPlaced,
  toward: WindDirection,
  zone: Zone,
): void {
  const end = Math.min(zone.to, lengthAlong(roof, toward));
  if (end <= zone.from) return;
  plan.push({
    roof: roof.mark,
    psf: zone.p0,
    ...(zone.p1 === zone.p0 ? {} : { psfTo: zone.p1 }),
    acts: 'plan',
    zone: { toward, from: zone.from, to: zone.to },
  });
  const count = zone.p0 === zone.p1 ? 1 : STRIPS;
  const at = (q: number): number => zone.p0 + ((zone.p1 - zone.p0) * (q - zone.from)) / (zone.to - zone.from);
  for (let i = 0; i < count; i++) {
    const a = zone.from + ((end - zone.from) * i) / count;
    const b = zone.from + ((end - zone.from) * (i + 1)) / count;
    const psf = (at(a) + at(b)) / 2;
    for (const s of structure.surfaces) {
      if (s.roof !== roof.mark) continue;
      const part = zoneOn(s, roof, toward, a, b);
      if (part) areas.push({ surface: s.id, ...(part.whole ? {} : { region: part.region }), psf, acts: 'plan' });
    }
  }
}

export function finish(draft: Draft, { structure, snow }: Sheet): LoadCase {
  const areas: AreaLoad[] = [];
  const plan: PlanLoad[] = [];
  let unevenAlong = false;
  for (const roof of structure.roofs) {
    const mine = draft.carried.filter((c) => c.roof === roof.mark);
    const ps = snow.ps.get(roof.mark) ?? 0;
    if (ps > 0 && !mine.some((c) => c.instead)) {
      plan.push({ roof: roof.mark, psf: ps, acts: 'plan' });
      for (const s of structure.surfaces)
        if (s.roof === roof.mark) areas.push({ surface: s.id, psf: ps, acts: 'plan' });
    }
    if (mine.length > 0 && !isAcross(roof, draft.toward)) unevenAlong = true;
    for (const c of mine) for (const z of c.zones) addZones(areas, plan, structure, roof, draft.toward, z);
  }
  const { id, title, clause } = draft;
  return {
    id,
    kind: 'S',
    title,
    areas,
    edges: [],
    plan,
    selfWeight: false,
    side: [],
    clause,
    ...(unevenAlong ? { unevenAlong } : {}),
  };
}

export function carry(
  sheet: Sheet,
  id: string,
  title: string,
  toward: WindDirection,
  clause: string,
  carried: Carried,
): string {
  const draft = sheet.drafts.get(id);
  if (draft) draft.carried.push(carried);
  else sheet.drafts.set(id, { id, title, toward, clause, carried: [carried] });
  return id;
}

export const answer = (
  question: SnowQuestion,
  roof: RoofPlaced,
  outcome: SnowAnswer['outcome'],
  clause: string,
  text: string,
  cases: readonly string[] = [],
  peak = 0,
): SnowAnswer => ({ question, roof: roof.mark, outcome, cases, peak, clause, note: text });
