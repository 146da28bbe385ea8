/**
 * How wet each piece of wood gets where it stands, what that asks of it, and what it has. Decay rules as read in IRC 2012
 * R317.1.4 (county record scan) and unchanged in 2018; treatment classes are the use categories of AWPA U1.
 */

import type { Vec2 } from '../../base/vec.js';
import type { Treatment } from '../../project/model.js';
import { jointsAt } from '../../structure/lookup.js';
import type { Member, SlabPlaced, Structure } from '../../structure/model.js';
import type { CheckContext } from '../contract.js';

export type Exposure = 'in-wall' | 'low-in-wall' | 'under-roof' | 'weather' | 'near-ground' | 'ground';

export interface DurabilityRow {
  readonly mark: string;
  readonly path: string;
  readonly exposure: Exposure;
  /** Why it is that exposed: `1 in over the slab`. */
  readonly why: string;
  readonly needs: Treatment;
  readonly has: Treatment;
  /** Treatment as an office reads it: `UC4A ground contact`. */
  readonly category: string;
  readonly cutEnds: string;
  readonly metal: string;
}

interface Trait {
  readonly words: string;
  readonly needs: Treatment;
  /** Use category of AWPA U1 (recalled; UC3B and UC4A as read in a trade article on treated wood in ground contact). */
  readonly category: string;
}

export const EXPOSURES: Readonly<Record<Exposure, Trait>> = {
  'in-wall': { words: 'dry, inside the house wall', needs: 'none', category: 'UC1 where treated' },
  'low-in-wall': {
    words: 'on concrete close over the ground, inside the house wall',
    needs: 'above-ground',
    category: 'UC2 above ground, damp',
  },
  'under-roof': { words: 'outdoors, kept dry by the roof', needs: 'none', category: 'UC3B where treated' },
  weather: { words: 'rain reaches it', needs: 'above-ground', category: 'UC3B above ground, exposed' },
  'near-ground': { words: 'close over the ground', needs: 'ground-contact', category: 'UC4A ground contact' },
  ground: { words: 'in the ground or in concrete in it', needs: 'ground-contact', category: 'UC4B heavy duty' },
};

/** Use category that a treatment as entered comes up to (AWPA U1, recalled). */
const TREATED: Readonly<Record<Exclude<Treatment, 'none'>, string>> = {
  'above-ground': 'UC3B above ground',
  'ground-contact': 'UC4A ground contact',
};

/**
 * Outdoors a part treated well enough is told by the treatment it has; elsewhere, and where it is short of it, by what the place
 * asks for. In the ground it stays what is asked for: the file does not tell UC4A from UC4B.
 */
function categoryOf(exposure: Exposure, has: Treatment): string {
  const { needs, category } = EXPOSURES[exposure];
  const outdoors = exposure === 'under-roof' || exposure === 'weather' || exposure === 'near-ground';
  return outdoors && has !== 'none' && RANK[has] >= RANK[needs] ? TREATED[has] : category;
}

export const RANK: Readonly<Record<Treatment, number>> = { none: 0, 'above-ground': 1, 'ground-contact': 2 };

/** Least height of a post's end over a concrete floor and over earth, inches (IRC R317.1.4 exception 1). */
export const OVER_CONCRETE = 1;
export const OVER_EARTH = 6;
/** Least height over the ground outside of wood that rests on the foundation of a house, inches (IRC R317.1 item 2, recalled). */
export const OVER_GROUND_AT_HOUSE = 8;

function slabAt(structure: Structure, x: number, y: number): SlabPlaced | undefined {
  const inside = (s: SlabPlaced): boolean => {
    let odd = false;
    const n = s.outline.length;
    for (let i = 0, j = n - 1; i < n; j = i++) {
      const a = s.outline[i]!;
      const b = s.outline[j]!;
      if (a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x) odd = !odd;
    }
    return odd;
  };
  return structure.slabs.find((s) => s.state !== 'removed' && inside(s));
}

/** Whether a post of the house wall carries this end of a member: then the house covers it. */
function endsInWall(structure: Structure, m: Member, end: Vec2): boolean {
  return jointsAt(structure, m.id).some((j) => {
    if (j.kind !== 'beam-to-wall-post' || j.ties[0]?.part !== m.id) return false;
    return Math.hypot(j.at.x - end.x, j.at.y - end.y) <= j.contact.length;
  });
}

/** Whether a roof's sheathing, or the house, covers both ends of a member in plan. */
function covered(structure: Structure, m: Member): boolean {
  const under = ({ x, y }: Vec2): boolean =>
    structure.roofs.some(
      (r) => x >= r.min.x - 1e-6 && x <= r.max.x + 1e-6 && y >= r.min.y - 1e-6 && y <= r.max.y + 1e-6,
    );
  return [m.start, m.end].every((end) => under(end) || endsInWall(structure, m, end));
}

/** A post inside the wall of the house: dry, and asked only what its foot stands close over. */
function wallPostExposure(structure: Structure, m: Member): { exposure: Exposure; why: string } {
  const { x, y, z } = m.start;
  const gap = z - (structure.grade.z0 + structure.grade.gx * x + structure.grade.gy * y);
  if (gap <= 0) return { exposure: 'ground', why: 'its end stands below the ground' };
  const why = `its end stands ${gap.toFixed(1)} in over the ground outside; under ${OVER_GROUND_AT_HOUSE} in it must be treated`;
  return { exposure: gap < OVER_GROUND_AT_HOUSE - 1e-6 ? 'low-in-wall' : 'in-wall', why };
}

function postExposure(structure: Structure, m: Member): { exposure: Exposure; why: string } {
  const { x, y, z } = m.start;
  const slab = slabAt(structure, x, y);
  const floor = slab ? slab.top : structure.grade;
  const gap = z - (floor.z0 + floor.gx * x + floor.gy * y);
  const over = slab ? 'the slab' : 'the ground';
  if (gap <= 0) return { exposure: 'ground', why: `its end stands below ${over}` };
  const least = slab ? OVER_CONCRETE : OVER_EARTH;
  const why = `its end stands ${gap.toFixed(gap < 3 ? 2 : 0)} in over ${over}; ${least} in is the least`;
  if (gap < least - 1e-6) return { exposure: 'near-ground', why };
  return { exposure: covered(structure, m) ? 'under-roof' : 'weather', why };
}

function exposureOf(structure: Structure, m: Member): { exposure: Exposure; why: string } {
  const inWall =
    m.role === 'post' &&
    jointsAt(structure, m.id).some((j) => j.kind === 'beam-to-wall-post' && j.ties[1]?.part === m.id);
  if (inWall) return wallPostExposure(structure, m);
  if (m.role === 'post') return postExposure(structure, m);
  if (m.section.wet) return { exposure: 'weather', why: 'wet in service as entered' };
  if (!covered(structure, m)) return { exposure: 'weather', why: 'it runs out past the roof' };
  return { exposure: 'under-roof', why: 'the roof covers all of it' };
}

const METAL: Readonly<Record<Treatment, string>> = {
  none: 'zinc coated for outdoors',
  'above-ground': 'hot-dip galvanized ASTM A153, connectors ASTM A653 G185, or stainless',
  'ground-contact': 'hot-dip galvanized ASTM A153, connectors ASTM A653 G185, or stainless',
};

const known = new WeakMap<Structure, ReadonlyMap<string, DurabilityRow>>();

/** One row a mark, the worst exposed piece of it; worked out once a structure. Trim is left to the paint note. */
export function durabilityByMark({ structure }: Pick<CheckContext, 'structure'>): ReadonlyMap<string, DurabilityRow> {
  let rows = known.get(structure);
  if (!rows) {
    rows = workOut(structure);
    known.set(structure, rows);
  }
  return rows;
}

export const durabilityRows = (ctx: Pick<CheckContext, 'structure'>): readonly DurabilityRow[] => [
  ...durabilityByMark(ctx).values(),
];

function workOut(structure: Structure): ReadonlyMap<string, DurabilityRow> {
  const worst = new Map<string, { row: DurabilityRow; need: number }>();
  for (const m of structure.members) {
    if (m.role === 'fascia' || m.role === 'gutter' || m.state !== 'new') continue;
    const { exposure, why } = exposureOf(structure, m);
    const trait = EXPOSURES[exposure];
    const has = m.section.treatment;
    const row: DurabilityRow = {
      mark: m.mark,
      path: m.section.path,
      exposure,
      why,
      needs: trait.needs,
      has,
      category: categoryOf(exposure, has),
      cutEnds: has === 'none' ? 'prime or seal' : 'brush with copper naphthenate (AWPA M4)',
      metal: METAL[has],
    };
    const need = RANK[trait.needs];
    const before = worst.get(m.mark);
    if (!before || need > before.need) worst.set(m.mark, { row, need });
  }
  return new Map([...worst].map(([mark, w]) => [mark, w.row]));
}
