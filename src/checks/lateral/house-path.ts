/**
 * The house beyond the tie: its studs, its wall's bracing and its own floor or roof are not worked out here. What the wall
 * may be given is stated by the building department or an engineer, and the force it must take is compared with that word.
 * Without one the program never passes the house. It then only says whether the force is a modest share of a wall that is
 * mostly solid there (the office may well agree), or more (a professional must say).
 *
 * What is modest is this program's own rule, no source. Along the wall: at most 50 plf of solid wall (stretches of 4 ft and
 * more between openings, the usual least length of a braced panel, IRC R602.10, recalled). Square to it: at most 150 plf where
 * a floor or roof behind takes it in its own plane, that is into a plate or band or within 2 ft of the plates (there 50 plf
 * for the part that is even over the line), else 50 plf. At most two thirds of the fastened length over openings. All are
 * allowable-stress forces.
 */
import type { Recorder } from '../../base/trace.js';
import type { WallSideLoad } from '../../project/model.js';
import type { WallPlaced } from '../../structure/model.js';
import type { CheckContext, Finding } from '../contract.js';
import { measured, notApplicable, notEvaluated, outsideScope } from '../finding.js';
import { tieLevel } from './house-tie.js';
import { once } from './once.js';
import { type HouseTieDemand, houseTieDemands } from './side-loads.js';

const CLAUSE = 'rule of this program, no source';
const WORD = 'authority having jurisdiction';
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
  return verified?.state === 'given' && verified.value && verified.from !== '';
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

/** The forces a stretch hands to its wall, and how they compare with what is modest. */
interface Handed {
  readonly along: Most;
  readonly square: Most;
  readonly even: Most;
  readonly length: number;
  /** In words, for notes. */
  readonly force: string;
}

type Step = (
  symbol: string,
  meaning: string,
  formula: string,
  substituted: string,
  value: number,
  unit: string,
) => void;

function handed(ctx: CheckContext, d: HouseTieDemand, all: readonly HouseTieDemand[], step: Step): Handed {
  const onWall = all.filter((x) => x.wall === d.wall);
  const along = most(ctx, (k) => Math.abs(onWall.reduce((sum, x) => sum + x.along[k]!, 0)));
  const length = d.to - d.from;
  const square = most(
    ctx,
    (k) => (12 * Math.abs(d.square[k]!)) / length + (72 * Math.abs(d.couple[k]!)) / (length * length),
  );
  const even = most(ctx, (k) => (12 * Math.abs(d.square[k]!)) / length);
  step(
    'Vx',
    'greatest force along this wall from all ties and ledgers on it',
    `Σ over ${onWall.map((x) => x.mark).join(', ')}, ${along.id || 'no combination'}`,
    onWall.map((x) => (along.k < 0 ? 0 : x.along[along.k]!).toFixed(0)).join(' + '),
    along.value,
    'lb',
  );
  step(
    'n',
    'greatest pull or push square to the wall',
    `Vy/L + 6·M/L², ${square.id || 'no combination'}`,
    square.k < 0
      ? '0'
      : `12·${Math.abs(d.square[square.k]!).toFixed(0)}/${length.toFixed(1)} + 72·${Math.abs(d.couple[square.k]!).toFixed(0)}/${length.toFixed(1)}²`,
    square.value,
    'plf',
  );
  const force = `${Math.ceil(along.value)} lb along it and ${Math.ceil(square.value)} lb per foot square to it, in or out, over ${(length / 12).toFixed(1)} ft`;
  return { along, square, even, length, force };
}

/** Why the force is more than a modest share of the wall; undefined when it is not. */
function immodest(ctx: CheckContext, d: HouseTieDemand, h: Handed, step: Step): string | undefined {
  const { wall } = d;
  const level = levelOf(ctx, d);
  const squareLimit = takenInPlane(ctx, d, level) ? MODEST.squareAtPlane : MODEST.square;
  // Near the plates only the ends of a sloping line are near; what is even over it may fall on studs alone.
  const evenLimit = tied(ctx, d) ? MODEST.squareAtPlane : MODEST.square;
  const solid = solidLength(wall, level);
  const open = openUnder(wall, d, level) / h.length;
  step(
    'ΣLs',
    `solid wall in stretches of ${MODEST.panel / 12} ft and more`,
    'wall − openings',
    `${((wall.end.x - wall.start.x) / 12).toFixed(2)} ft − openings`,
    solid / 12,
    'ft',
  );
  const v = solid > 0 ? (12 * h.along.value) / solid : 0;
  step(
    'v',
    `force along each foot of solid wall, modest to ${MODEST.along}; n modest to ${squareLimit}`,
    'Vx / ΣLs',
    `${h.along.value.toFixed(0)} / ${(solid / 12).toFixed(2)}`,
    v,
    'plf',
  );
  step(
    'ne',
    `even part of n, modest to ${evenLimit}`,
    `Vy/L, ${h.even.id || 'no combination'}`,
    h.even.k < 0 ? '0' : `12·${Math.abs(d.square[h.even.k]!).toFixed(0)}/${h.length.toFixed(1)}`,
    h.even.value,
    'plf',
  );
  step(
    'open',
    `part of the fastened length over openings, at most ${MODEST.open.toFixed(2)}`,
    'ΣLo / L',
    `${((open * h.length) / 12).toFixed(2)} / ${(h.length / 12).toFixed(2)}`,
    open,
    '',
  );
  if (open > MODEST.open || (solid <= 0 && h.along.value > 0)) return `the ${wall.name} wall is mostly openings there`;
  const share = Math.max(v / MODEST.along, h.square.value / squareLimit, h.even.value / evenLimit);
  return share > 1 + 1e-9
    ? `more than a modest share of the ${wall.name} wall (${MODEST.along} plf along solid wall, ${squareLimit} plf square to it, ${evenLimit} of it even)`
    : undefined;
}

/** The word of somebody who can judge the house; undefined until both amounts and who said so are there. */
function stated(ctx: CheckContext, d: HouseTieDemand): WallSideLoad | undefined {
  const word = ctx.project.house.walls.find((w) => w.path === d.wall.path)?.sideLoad;
  return word && [word.along, word.square].every((o) => o.state === 'given' && o.from !== '') ? word : undefined;
}

const NEEDED_WORD =
  'Needed: what the building department or an engineer says the wall may be given, under "sideLoad" of this wall of the house, with who said so.';

function answer(ctx: CheckContext, d: HouseTieDemand, all: readonly HouseTieDemand[], rec?: Recorder): Finding {
  const { wall } = d;
  const word = stated(ctx, d);
  const step: Step = (symbol, meaning, formula, substituted, value, unit) =>
    rec?.step({
      symbol,
      meaning,
      formula,
      substituted,
      value,
      unit,
      clause: word ? WORD : CLAUSE,
      from: [word?.path ?? wall.path],
    });
  rec?.heading(`${d.mark} on the ${wall.name} wall`);
  const h = handed(ctx, d, all, step);
  if (!word) {
    const why = immodest(ctx, d, h, step);
    const must = `The house must take ${h.force} at ${d.mark} (allowable-stress forces)`;
    return why === undefined
      ? notEvaluated(
          WORD,
          `${must}, a modest share of the ${wall.name} wall by this program’s own rule. ${NEEDED_WORD}`,
        )
      : outsideScope(
          CLAUSE,
          `${must}: ${why}. Hold the outer posts with knee braces or fixed feet, or have a licensed professional state what the wall may be given, under "sideLoad" of this wall.`,
        );
  }
  if (!seen(ctx, d)) {
    return notEvaluated(
      WORD,
      `The house must take ${h.force} at ${d.mark} (allowable-stress forces). Needed: somebody has seen the framing it is fastened to, and says where.`,
    );
  }
  const square = 12 * word.square.value;
  const shares = [
    { demand: h.along.value, capacity: word.along.value, unit: 'lb', id: h.along.id },
    { demand: h.square.value, capacity: square, unit: 'plf', id: h.square.id },
  ];
  const worst = shares.reduce((a, b) => (b.demand / b.capacity > a.demand / a.capacity ? b : a));
  const who = [...new Set([word.along.from, word.square.from])].join('; ');
  const allowed = `${Math.floor(word.along.value)} lb along and ${Math.floor(square)} lb per foot square to it`;
  return measured(
    {
      demand: worst.demand,
      capacity: worst.capacity,
      unit: worst.unit,
      combination: worst.id,
      clause: WORD,
      formula: 'max(Vx / Vx,stated, n / n,stated)',
      note: `House, as stated by others and not computed: the ${wall.name} wall, its bracing and the floor or roof behind it take ${h.force} at ${d.mark} (allowable-stress forces); stated for ${allowed}: ${who}.`,
      remedy: `The ${wall.name} wall must take ${h.force} at ${d.mark}, and is stated for ${allowed} (${who}): ask them for the larger load, or hold the outer posts with knee braces or fixed feet.`,
    },
    rec,
  );
}
