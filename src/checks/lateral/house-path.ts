/**
 * The house beyond the tie: its studs, its wall's bracing and its own floor or roof are not worked out here. The force it
 * must take is printed as a condition for the office or a professional to confirm; past a modest share of a wall that
 * is mostly solid there, the program gives no answer.
 *
 * The rule is this program's own, no source. Along the wall: at most 50 plf of solid wall (stretches of 4 ft and more
 * between openings, the usual least length of a braced panel, IRC R602.10, recalled). Square to it: at most 150 plf where
 * a floor or roof behind takes it in its own plane, that is into a plate or band or within 2 ft of the plates (there 50 plf
 * for the part that is even over the line), else 50 plf. At most two thirds of the fastened length over openings. All are
 * allowable-stress forces.
 */
import type { Recorder } from '../../base/trace.js';
import type { WallPlaced } from '../../structure/model.js';
import type { CheckContext, Finding } from '../contract.js';
import { measured, notApplicable, notEvaluated, outsideScope } from '../finding.js';
import { tieLevel } from './house-tie.js';
import { once } from './once.js';
import { type HouseTieDemand, houseTieDemands } from './side-loads.js';

const CLAUSE = 'rule of this program, no source';
export const MODEST = { along: 50, square: 50, squareAtPlane: 150, near: 24, panel: 48, open: 2 / 3 } as const;

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Openings of a wall that begin under `level`, merged, as stretches along the house x axis. */
function openings(wall: WallPlaced, level: number): readonly Stretch[] {
  const all = wall.openings
    .filter((o) => o.sill < level)
    .map((o) => ({ from: wall.start.x + o.offset, to: wall.start.x + o.offset + o.width }))
    .sort((a, b) => a.from - b.from);
  const out: { from: number; to: number }[] = [];
  for (const o of all) {
    const last = out.at(-1);
    if (last && o.from <= last.to) last.to = Math.max(last.to, o.to);
    else out.push({ ...o });
  }
  return out;
}

/** Length of wall in solid stretches long enough to brace, inches. */
export function solidLength(wall: WallPlaced, level: number): number {
  let at = wall.start.x;
  let sum = 0;
  for (const o of [...openings(wall, level), { from: wall.end.x, to: wall.end.x }]) {
    const run = o.from - at;
    if (run >= MODEST.panel) sum += run;
    at = Math.max(at, o.to);
  }
  return sum;
}

const openUnder = (wall: WallPlaced, d: HouseTieDemand, level: number): number =>
  openings(wall, level).reduce((sum, o) => sum + Math.max(0, Math.min(o.to, d.to) - Math.max(o.from, d.from)), 0);

interface Most {
  readonly value: number;
  readonly id: string;
  /** Index of the combination; −1 when none asks for any. */
  readonly k: number;
}

function most(ctx: CheckContext, of: (k: number) => number): Most {
  let value = 0;
  let id = '';
  let at = -1;
  ctx.loads.combinations.forEach((c, k) => {
    const x = of(k);
    if (x > value) {
      value = x;
      id = c.id;
      at = k;
    }
  });
  return { value, id, k: at };
}

const tieOf = (ctx: CheckContext, d: HouseTieDemand) => ctx.project.cover.houseTies?.find((t) => t.mark === d.mark);

/** Height of the fastened line above finished floor. */
function levelOf(ctx: CheckContext, d: HouseTieDemand): number {
  const tie = tieOf(ctx, d);
  if (tie) return tieLevel(ctx, tie);
  return ctx.structure.members.find((m) => m.mark === d.mark)?.start.z ?? d.wall.plate;
}

/** Whether a floor or roof of the house stands right behind the line. */
function takenInPlane(ctx: CheckContext, d: HouseTieDemand, level: number): boolean {
  return tied(ctx, d) || Math.abs(level - d.wall.plate) <= MODEST.near;
}

/** Whether the fasteners go into a band or plate, which a floor or roof holds. */
function tied(ctx: CheckContext, d: HouseTieDemand): boolean {
  const into = tieOf(ctx, d)?.into;
  return into === 'band' || into === 'plate';
}

/** Whether somebody has seen what the tie or ledger is fastened to. */
function seen(ctx: CheckContext, d: HouseTieDemand): boolean {
  const tie = tieOf(ctx, d);
  const ledger = ctx.project.cover.ledgers.find((l) => l.mark === d.mark);
  const verified = tie?.verified ?? (ledger && ctx.project.house.walls[ledger.wall]?.build.verified);
  return verified?.state === 'given' && verified.value;
}

export const housePath = once({
  id: 'house-path',
  title: 'House beyond the tie',
  subjects(ctx) {
    const { lateral, houseTies, ledgers } = ctx.project.cover;
    const marks = [...(houseTies ?? []), ...ledgers];
    if (marks.length === 0 || (lateral.x !== 'house' && lateral.y !== 'house'))
      return [{ id: 'cover', path: '/cover' }];
    return marks.map((m) => ({ id: m.mark, path: m.path }));
  },
  run(subject, ctx, rec): Finding {
    const { lateral } = ctx.project.cover;
    if (lateral.x !== 'house' && lateral.y !== 'house') return notApplicable(CLAUSE, 'the house holds no side load');
    const demands = houseTieDemands(ctx);
    const d = demands.find((x) => x.mark === subject.id);
    if (!d) return notEvaluated(CLAUSE, 'Nothing on the house is named to hold the side load of this cover.');
    return answer(ctx, d, demands, rec);
  },
});

function answer(ctx: CheckContext, d: HouseTieDemand, all: readonly HouseTieDemand[], rec?: Recorder): Finding {
  const { wall } = d;
  const level = levelOf(ctx, d);
  const squareLimit = takenInPlane(ctx, d, level) ? MODEST.squareAtPlane : MODEST.square;
  // Near the plates only the ends of a sloping line are near; what is even over it may fall on studs alone.
  const evenLimit = tied(ctx, d) ? MODEST.squareAtPlane : MODEST.square;
  const onWall = all.filter((x) => x.wall === wall);
  const along = most(ctx, (k) => Math.abs(onWall.reduce((sum, x) => sum + x.along[k]!, 0)));
  const length = d.to - d.from;
  const square = most(
    ctx,
    (k) => (12 * Math.abs(d.square[k]!)) / length + (72 * Math.abs(d.couple[k]!)) / (length * length),
  );
  const even = most(ctx, (k) => (12 * Math.abs(d.square[k]!)) / length);
  const solid = solidLength(wall, level);
  const open = openUnder(wall, d, level) / length;
  const step = (symbol: string, meaning: string, formula: string, substituted: string, value: number, unit: string) =>
    rec?.step({ symbol, meaning, formula, substituted, value, unit, clause: CLAUSE, from: [d.wall.path] });
  rec?.heading(`${d.mark} on the ${wall.name} wall`);
  step(
    'Vx',
    'greatest force along this wall from all ties and ledgers on it',
    `Σ over ${onWall.map((x) => x.mark).join(', ')}, ${along.id || 'no combination'}`,
    onWall.map((x) => (along.k < 0 ? 0 : x.along[along.k]!).toFixed(0)).join(' + '),
    along.value,
    'lb',
  );
  step(
    'ΣLs',
    `solid wall in stretches of ${MODEST.panel / 12} ft and more`,
    'wall − openings',
    `${((wall.end.x - wall.start.x) / 12).toFixed(2)} ft − openings`,
    solid / 12,
    'ft',
  );
  const v = solid > 0 ? (12 * along.value) / solid : 0;
  step(
    'v',
    `force along each foot of solid wall, at most ${MODEST.along}`,
    'Vx / ΣLs',
    `${along.value.toFixed(0)} / ${(solid / 12).toFixed(2)}`,
    v,
    'plf',
  );
  step(
    'n',
    `greatest pull or push square to the wall, at most ${squareLimit}`,
    `Vy/L + 6·M/L², ${square.id || 'no combination'}`,
    square.k < 0
      ? '0'
      : `12·${Math.abs(d.square[square.k]!).toFixed(0)}/${length.toFixed(1)} + 72·${Math.abs(d.couple[square.k]!).toFixed(0)}/${length.toFixed(1)}²`,
    square.value,
    'plf',
  );
  step(
    'ne',
    `even part of it, at most ${evenLimit}`,
    `Vy/L, ${even.id || 'no combination'}`,
    even.k < 0 ? '0' : `12·${Math.abs(d.square[even.k]!).toFixed(0)}/${length.toFixed(1)}`,
    even.value,
    'plf',
  );
  step(
    'open',
    `part of the fastened length over openings, at most ${MODEST.open.toFixed(2)}`,
    'ΣLo / L',
    `${((open * length) / 12).toFixed(2)} / ${(length / 12).toFixed(2)}`,
    open,
    '',
  );
  const force = `${Math.ceil(along.value)} lb along it and ${Math.ceil(square.value)} lb per foot square to it, in or out, over ${(length / 12).toFixed(1)} ft`;
  const across = Math.max(square.value / squareLimit, even.value / evenLimit);
  const demand = Math.max(v / MODEST.along, across);
  if (open > MODEST.open || (solid <= 0 && along.value > 0) || demand > 1 + 1e-9) {
    const why =
      open > MODEST.open || solid <= 0
        ? `the ${wall.name} wall is mostly openings there`
        : `more than a modest share of the ${wall.name} wall (${MODEST.along} plf along solid wall, ${squareLimit} plf square to it, ${evenLimit} of it even)`;
    return outsideScope(
      CLAUSE,
      `The house must take ${force} at ${d.mark}: ${why}. Hold the outer posts with knee braces or fixed feet, or have a licensed professional confirm the house.`,
    );
  }
  if (!seen(ctx, d)) {
    return notEvaluated(
      CLAUSE,
      `The house must take ${force} at ${d.mark} (allowable-stress forces). Needed: somebody has seen the framing it is fastened to, and says where.`,
    );
  }
  return measured(
    {
      demand,
      capacity: 1,
      unit: '',
      combination:
        v / MODEST.along >= across
          ? along.id
          : square.value / squareLimit >= even.value / evenLimit
            ? square.id
            : even.id,
      clause: CLAUSE,
      formula: `max(v / ${MODEST.along}, n / ${squareLimit}, ne / ${evenLimit})`,
      note: `House, to be confirmed by the building department or a professional: the ${wall.name} wall, its bracing and the floor or roof behind it take ${force} at ${d.mark} (allowable-stress forces).`,
      remedy: '',
    },
    rec,
  );
}
