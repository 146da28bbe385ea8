/** Where the cover meets the house, and what each place must take: forces of its joints with the side load added. */
import { combineComponent } from '../../analysis/index.js';
import type { Vec3 } from '../../base/vec.js';
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

const forces = new WeakMap<CheckContext['effects'], Map<string, readonly Vec3[] | undefined>>();

/** Force of a joint on the house with the side load added, per case, lb; undefined when it has none. */
export function houseForce(ctx: PlaceSource, joint: string): readonly Vec3[] | undefined {
  let known = forces.get(ctx.effects);
  if (!known) {
    known = new Map();
    forces.set(ctx.effects, known);
  }
  if (!known.has(joint)) {
    const side = sideDemand(ctx, joint);
    const own = ctx.effects.joints.get(joint)?.force;
    known.set(
      joint,
      own?.map((f, c) => ({ x: f.x + (side[c]?.x ?? 0), y: f.y + (side[c]?.y ?? 0), z: f.z })),
    );
  }
  return known.get(joint);
}

const NOTHING: Need = { value: 0, combination: '' };

function needsOf(ctx: PlaceSource, joints: readonly Joint[], wall: WallPlaced): Needs | undefined {
  let needs: Needs = { down: NOTHING, up: NOTHING, along: NOTHING, away: NOTHING, against: NOTHING };
  const { x, y } = wall.out;
  for (const joint of joints) {
    const force = houseForce(ctx, joint.id);
    if (!force) return undefined;
    for (const combination of ctx.loads.combinations) {
      const fx = combineComponent(force, combination, 'x');
      const fy = combineComponent(force, combination, 'y');
      const fz = combineComponent(force, combination, 'z');
      const away = fx * x + fy * y;
      const more = (key: keyof Needs, value: number): void => {
        if (value > needs[key].value) needs = { ...needs, [key]: { value, combination: combination.id } };
      };
      more('down', -fz);
      more('up', fz);
      more('along', Math.abs(fy * x - fx * y));
      more('away', away);
      more('against', -away);
    }
  }
  return joints.length > 0 ? needs : undefined;
}

/**
 * Greatest load down on a stretch of the wall, lb/in: places within half a spacing of it, divided by its length. `from`
 * and `to` along the wall, inches.
 */
export function downOn(ctx: PlaceSource, place: HousePlace, from: number, to: number): number {
  const half = (place.ledger?.fastening?.spacing ?? place.house.build.studSpacing) / 2;
  const on = place.joints.filter((j) => {
    const { along } = fromWall(place.wall, j.at);
    return along > from - half && along < to + half;
  });
  const force = on.flatMap((j) => [houseForce(ctx, j.id) ?? []]);
  let most = 0;
  for (const c of ctx.loads.combinations) {
    let sum = 0;
    for (const f of force) for (const t of c.terms) sum -= t.factor * (f[t.case]?.z ?? 0);
    most = Math.max(most, sum);
  }
  return to > from ? most / (to - from) : 0;
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
