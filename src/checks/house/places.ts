/** Where the cover meets the house, and what each place must take: forces of its joints with the side load added. */
import type { Recorder } from '../../base/trace.js';
import type { Combination } from '../../loads/model.js';
import type { BeamEnd, HouseWall, LedgerSpec } from '../../project/model.js';
import { fromWall } from '../../structure/describe.js';
import type { Joint, Member, WallPlaced } from '../../structure/model.js';
import type { CheckContext } from '../contract.js';
import { sideDemand } from './side.js';

export type PlaceSource = Pick<CheckContext, 'project' | 'structure' | 'loads' | 'effects'>;

export interface Need {
  readonly value: number;
  readonly combination: string;
}

/** Largest forces on the house at any one joint of the place, lb. */
export interface Needs {
  readonly down: Need;
  readonly up: Need;
  /** Along the wall, either way. */
  readonly along: Need;
  /** Out from the house, and against it. */
  readonly away: Need;
  readonly against: Need;
}

export interface HousePlace {
  /** Subject of the checks: `L1`, `B1 start`. */
  readonly id: string;
  readonly kind: 'ledger' | 'beam-on-wall' | 'beam-on-post';
  readonly wall: WallPlaced;
  readonly house: HouseWall;
  readonly member: Member;
  readonly ledger: LedgerSpec | undefined;
  readonly end: BeamEnd | undefined;
  /** Joints that hand load to the house. */
  readonly joints: readonly Joint[];
  /** Undefined when some joint has no forces. */
  readonly needs: Needs | undefined;
  readonly path: string;
}

const made = new WeakMap<CheckContext['effects'], readonly HousePlace[]>();

export function housePlaces(ctx: PlaceSource): readonly HousePlace[] {
  const known = made.get(ctx.effects);
  if (known) return known;
  const places = [...ledgers(ctx), ...beamEnds(ctx)];
  made.set(ctx.effects, places);
  return places;
}

function ledgers(ctx: PlaceSource): HousePlace[] {
  const { structure, project } = ctx;
  return project.cover.ledgers.flatMap((ledger): HousePlace[] => {
    const member = structure.members.find((m) => m.id === ledger.mark);
    const wall = structure.walls[ledger.wall];
    const house = project.house.walls[ledger.wall];
    if (!member || !wall || !house) return [];
    const joints = structure.joints.filter((j) => j.kind === 'ledger-to-house' && j.ties[0]?.part === member.id);
    const needs = needsOf(ctx, joints, wall);
    return [
      {
        id: ledger.mark,
        kind: 'ledger',
        wall,
        house,
        member,
        ledger,
        end: undefined,
        joints,
        needs,
        path: ledger.path,
      },
    ];
  });
}

function beamEnds(ctx: PlaceSource): HousePlace[] {
  const { structure, project } = ctx;
  return project.cover.beams.flatMap((line) =>
    (['start', 'end'] as const).flatMap((key): HousePlace[] => {
      const end = line.ends?.[key];
      const wall = end && structure.walls[end.wall];
      const house = end && project.house.walls[end.wall];
      const own = structure.members.filter((m) => m.role === 'beam' && m.mark === line.mark);
      const member = key === 'start' ? own[0] : own[own.length - 1];
      if (!end || !wall || !house || !member) return [];
      const kind = end.kind === 'on-wall' ? 'beam-to-wall' : 'beam-to-wall-post';
      const joints = structure.joints.filter((j) => j.kind === kind && j.path === end.path);
      return [
        {
          id: `${line.mark} ${key}`,
          kind: end.kind === 'on-wall' ? 'beam-on-wall' : 'beam-on-post',
          wall,
          house,
          member,
          ledger: undefined,
          end,
          joints,
          needs: needsOf(ctx, joints, wall),
          path: end.path,
        },
      ];
    }),
  );
}

/** Forces of one joint on the house by load case: along the wall, down, and out from it, in threes, lb. */
export interface FlatForces {
  readonly joint: Joint;
  readonly rows: Float64Array;
}

const flat = new WeakMap<CheckContext['effects'], Map<string, FlatForces | undefined>>();

/** Kept flat, so that the loops over combinations allocate nothing; undefined when some joint has no forces. */
export function flatForces(ctx: PlaceSource, joints: readonly Joint[], wall: WallPlaced): FlatForces[] | undefined {
  let known = flat.get(ctx.effects);
  if (!known) {
    known = new Map();
    flat.set(ctx.effects, known);
  }
  const out: FlatForces[] = [];
  for (const joint of joints) {
    if (!known.has(joint.id)) known.set(joint.id, flatten(ctx, joint, wall));
    const one = known.get(joint.id);
    if (!one) return undefined;
    out.push(one);
  }
  return out.length > 0 ? out : undefined;
}

function flatten(ctx: PlaceSource, joint: Joint, wall: WallPlaced): FlatForces | undefined {
  const own = ctx.effects.joints.get(joint.id)?.force;
  if (!own) return undefined;
  const side = sideDemand(ctx, joint.id);
  const { x: ox, y: oy } = wall.out;
  const rows = new Float64Array(3 * own.length);
  own.forEach((f, c) => {
    const x = f.x + (side[c]?.x ?? 0);
    const y = f.y + (side[c]?.y ?? 0);
    rows[3 * c] = y * ox - x * oy;
    rows[3 * c + 1] = -f.z;
    rows[3 * c + 2] = x * ox + y * oy;
  });
  return { joint, rows };
}

function needsOf(ctx: PlaceSource, joints: readonly Joint[], wall: WallPlaced): Needs | undefined {
  const all = flatForces(ctx, joints, wall);
  if (!all) return undefined;
  // Down, up, along, away, against: greatest value and its combination.
  const most = new Float64Array(5);
  const under = new Int32Array(5).fill(-1);
  const keep = (i: number, value: number, k: number): void => {
    if (value <= most[i]!) return;
    most[i] = value;
    under[i] = k;
  };
  ctx.loads.combinations.forEach(({ terms }, k) => {
    for (const { rows } of all) {
      let along = 0;
      let down = 0;
      let out = 0;
      for (const t of terms) {
        along += t.factor * rows[3 * t.case]!;
        down += t.factor * rows[3 * t.case + 1]!;
        out += t.factor * rows[3 * t.case + 2]!;
      }
      keep(0, down, k);
      keep(1, -down, k);
      keep(2, Math.abs(along), k);
      keep(3, out, k);
      keep(4, -out, k);
    }
  });
  const need = (i: number): Need => ({ value: most[i]!, combination: ctx.loads.combinations[under[i]!]?.id ?? '' });
  return { down: need(0), up: need(1), along: need(2), away: need(3), against: need(4) };
}

/** Greatest load down on a stretch of the wall. */
export interface Spread {
  /** lb/in. */
  readonly even: number;
  readonly combination: Combination | undefined;
  /** Places that load the stretch, and its length, inches. */
  readonly joints: readonly Joint[];
  readonly length: number;
}

/**
 * Greatest load down on a stretch of the wall: places within half a spacing of it, divided by its length. `from` and `to`
 * along the wall, inches.
 */
export function downOn(ctx: PlaceSource, place: HousePlace, from: number, to: number): Spread {
  const half = (place.ledger?.fastening?.spacing ?? place.house.build.studSpacing) / 2;
  const on = place.joints.filter((j) => {
    const { along } = fromWall(place.wall, j.at);
    return along > from - half && along < to + half;
  });
  const force = flatForces(ctx, on, place.wall) ?? [];
  let most = 0;
  let combination: Combination | undefined;
  for (const c of ctx.loads.combinations) {
    let sum = 0;
    for (const { rows } of force) for (const t of c.terms) sum += t.factor * rows[3 * t.case + 1]!;
    if (sum <= most) continue;
    most = sum;
    combination = c;
  }
  return { even: to > from ? most / (to - from) : 0, combination, joints: on, length: to - from };
}

/** The spread as steps: what each place brings under the combination, and their sum on the stretch. */
export function recordSpread(
  ctx: PlaceSource,
  place: HousePlace,
  spread: Spread,
  onto: string,
  from: string,
  rec?: Recorder,
): void {
  const { combination, joints, length } = spread;
  if (!rec || !combination) return;
  const down = (flatForces(ctx, joints, place.wall) ?? []).map(({ rows }) =>
    combination.terms.reduce((sum, t) => sum + t.factor * rows[3 * t.case + 1]!, 0),
  );
  const [first, last] = [joints[0]?.id ?? '', joints.at(-1)?.id ?? ''];
  rec.step({
    symbol: 'q',
    meaning: `load of the cover on ${onto}, ${combination.id}: ${first} to ${last}, as the ledger presses on each place within half a spacing`,
    formula: 'Σ V / length',
    substituted: `(${down.map((v) => v.toFixed(0)).join(' + ')})/${length}`,
    value: spread.even,
    unit: 'lb/in',
    clause: combination.clause,
    from: [from],
    note: `${(12 * spread.even).toFixed(0)} lb per foot`,
  });
}

const lb = (v: number): string => `${Math.ceil(v)} lb`;

/** `812 lb down, 240 lb up, 31 lb along the wall, 60 lb out from it, 55 lb against it`. */
export function needsText(n: Needs | undefined): string {
  if (!n) return 'forces not known';
  const rows: readonly (readonly [number, string])[] = [
    [n.down.value, 'down'],
    [n.up.value, 'up'],
    [n.along.value, 'along the wall'],
    [n.away.value, 'out from it'],
    [n.against.value, 'against it'],
  ];
  return rows.map(([v, way]) => (v >= 0.5 ? `${lb(v)} ${way}` : `nothing ${way}`)).join(', ');
}
