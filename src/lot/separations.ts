/** What stands near what on the lot, with the distances one county asks for between wells and what could foul them. */
import type { Vec2 } from '../base/vec.js';
import type { Project, SiteItemKind } from '../project/model.js';
import { type Footprint, nearestOf } from './apart.js';

export interface Separation {
  readonly from: string;
  readonly to: string;
  /** Inches; 0 where they touch. */
  readonly distance: number;
  readonly a: Vec2;
  readonly b: Vec2;
  /** Least distance and who says so; absent where no figure was read. */
  readonly required?: { readonly distance: number; readonly source: string };
  /** Worth a dimension on the plan: the new work is one of the two. */
  readonly newWork: boolean;
}

/** Read in one county's site plan check list; the health department at hand decides. Inches. */
const SOURCE = 'figure of one county’s site plan check list, read; your health department decides';
export const WELL_TO_STRUCTURE = 60;
export const WELL_TO_TANK = 600;
export const WELL_TO_FIELD = 1200;

const WELLS: ReadonlySet<SiteItemKind> = new Set(['well']);
const TANKS: ReadonlySet<SiteItemKind> = new Set(['septic-tank']);
const FIELDS: ReadonlySet<SiteItemKind> = new Set(['leach-field', 'reserve-field']);

interface Thing {
  readonly name: string;
  readonly footprints: readonly Footprint[];
}

const between = (one: Thing, two: Thing, newWork: boolean, least?: number): Separation[] => {
  const gap = two.footprints
    .flatMap((f) => nearestOf(one.footprints, f) ?? [])
    .reduce<ReturnType<typeof nearestOf>>((a, b) => (a && a.distance <= b.distance ? a : b), undefined);
  if (!gap) return [];
  const required = least === undefined ? {} : { required: { distance: least, source: SOURCE } };
  return [{ from: one.name, to: two.name, ...gap, newWork, ...required }];
};

/** Distances of the new work and of the house to other buildings, wells and septic parts, and of wells to septic parts. */
export function separationsOf(project: Project, eaves: readonly Footprint[]): Separation[] {
  const items = (kinds: ReadonlySet<SiteItemKind>): Thing[] =>
    project.lot.items
      .filter((i) => kinds.has(i.kind))
      .map((i) => ({ name: i.label, footprints: [i.outline ?? [i.at]] }));
  const fresh: Thing = { name: 'New roof', footprints: eaves };
  const house: Thing = { name: 'House', footprints: [project.house.walls.map((w) => w.start)] };
  const wells = items(WELLS);
  const tanks = items(TANKS);
  const fields = items(FIELDS);
  return [
    ...between(fresh, house, true),
    ...project.lot.buildings.flatMap((b) => between(fresh, { name: b.name, footprints: [b.outline] }, true)),
    ...wells.flatMap((w) => [
      ...between(fresh, w, true, WELL_TO_STRUCTURE),
      ...between(house, w, false, WELL_TO_STRUCTURE),
    ]),
    ...[...tanks, ...fields].flatMap((t) => between(fresh, t, true)),
    ...wells.flatMap((w) => [
      ...tanks.flatMap((t) => between(w, t, false, WELL_TO_TANK)),
      ...fields.flatMap((f) => between(w, f, false, WELL_TO_FIELD)),
    ]),
  ];
}
