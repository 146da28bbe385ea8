/** Where side load comes to the sheathing, as steps: the force at each place, and its part of a couple. */
import type { Recorder } from '../../base/trace.js';
import type { Combination } from '../../loads/model.js';
import type { CheckContext } from '../contract.js';
import { sumText } from '../members/scan.js';
import { caseSums, type RoofSide, type SidePoint, under } from './side-loads.js';

/** Point the couple is taken about, inches, and how it is called. */
export interface About {
  readonly centre: number;
  readonly y: number;
  readonly about: string;
}

interface Group {
  readonly places: SidePoint[];
  readonly dx: number;
  readonly dy: number;
}

/** Forces smaller than this are rounding, lb. */
const SMALL = 0.05;
/** Sums that agree to this share are the same. */
const SAME = 1e-3;

const FROM_FRAME = 'from the frame: what the beam, held level where it stands on posts, hands over there';

/**
 * How each beam shares its side load between the places that hold it. Two places share by the lever of the load's centre;
 * more of them as a level continuous beam, which the frame works out.
 */
export function recordSplit(ctx: CheckContext, side: RoofSide, combination: Combination, rec: Recorder): void {
  const cases = ctx.loads.cases.length;
  const beams = new Set(side.points.flatMap((p) => (p.restraint && p.beam !== undefined ? [p.beam] : [])));
  for (const beam of beams) {
    const held = side.points.filter((p) => p.beam === beam);
    const seats = side.all.filter((p) => p.beam === beam);
    const [a, b] = held;
    if (!a || !b || held.length !== 2) continue;
    const along = Math.abs(b.at.x - a.at.x) > Math.abs(b.at.y - a.at.y) ? 'x' : 'y';
    const key = along === 'y' ? 'along' : 'square';
    const V = under(combination, caseSums(held, cases, 0, 0)[key]);
    const push = seats.map((p) => ({ at: p.at[along], F: under(combination, caseSums([p], cases, 0, 0)[key]) }));
    const total = push.reduce((sum, p) => sum + p.F, 0);
    // Where the wind on the beam itself or a brace has a share, the lever of the framing alone would not tell the truth.
    if (Math.abs(V) < SMALL || Math.abs(total - V) > SAME * Math.abs(V)) continue;
    const centre = push.reduce((sum, p) => sum + p.F * p.at, 0) / total;
    const far = (V * (centre - a.at[along])) / (b.at[along] - a.at[along]);
    rec.step({
      symbol: 'c',
      meaning: `centre of the side load that the framing puts on ${beam}, on the ${along} axis of the house`,
      formula: `Σ F·${along} / Σ F`,
      substituted: `(${push.map((p) => `${p.F.toFixed(1)}·${p.at.toFixed(1)}`).join(' + ')}) / ${V.toFixed(1)}`,
      value: centre,
      unit: 'in',
      clause: 'statics',
    });
    rec.step({
      symbol: 'F2',
      meaning: `what ${beam} hands over at ${along} = ${b.at[along].toFixed(1)} in; the rest, ${(V - far).toFixed(1)} lb, at ${a.at[along].toFixed(1)} in`,
      formula: `V·(c − ${along}1) / (${along}2 − ${along}1)`,
      substituted: `${V.toFixed(1)}·(${centre.toFixed(1)} − ${a.at[along].toFixed(1)}) / (${b.at[along].toFixed(1)} − ${a.at[along].toFixed(1)})`,
      value: far,
      unit: 'lb',
      clause: 'statics',
      note: 'the beam lies level on two places: a lever',
    });
  }
}

/** One or two steps a place: force there and its part of the couple. Places with the same lever are summed. */
export function recordPlaces(
  ctx: CheckContext,
  { points }: Pick<RoofSide, 'points'>,
  { centre, y: y0, about }: About,
  combination: Combination,
  rec: Recorder,
): void {
  const groups = new Map<string, Group>();
  for (const p of points) {
    const dx = p.at.x - centre;
    const dy = p.at.y - y0;
    const key = `${dx.toFixed(1)} ${dy.toFixed(1)}`;
    const group = groups.get(key) ?? { places: [], dx, dy };
    group.places.push(p);
    groups.set(key, group);
  }
  for (const { places, dx, dy } of groups.values()) {
    const sums = caseSums(places, ctx.loads.cases.length, 0, 0);
    const x = under(combination, sums.along);
    const y = under(combination, sums.square);
    const where = `${dy.toFixed(1)} in out from ${about} and ${dx.toFixed(1)} in along from the middle`;
    if (Math.abs(x) < SMALL && Math.abs(y) < SMALL) continue;
    const beams = [...new Set(places.flatMap((p) => (p.beam === undefined ? [] : [p.beam])))].join(', ');
    for (const [symbol, value, rows, way] of [
      ['Fx', x, sums.along, 'along the wall'],
      ['Fy', y, sums.square, 'square to the wall'],
    ] as const) {
      if (Math.abs(value) < SMALL) continue;
      rec.step({
        symbol,
        meaning: `side load ${way} that ${beams === '' ? 'the framing' : beams} hands over ${where}`,
        formula: combination.label,
        substituted: sumText(ctx, combination, (c) => rows[c]!),
        value,
        unit: 'lb',
        clause: combination.clause,
        ...(places.some((p) => p.restraint) ? { note: FROM_FRAME } : {}),
      });
    }
    rec.step({
      symbol: 'Mi',
      meaning: `part of the couple from ${where}`,
      formula: 'Fx·(y − y0) − Fy·(x − xc)',
      substituted: `${x.toFixed(1)}·${dy.toFixed(1)} − ${y.toFixed(1)}·${dx.toFixed(1)}`,
      value: x * dy - y * dx,
      unit: 'lb·in',
      clause: 'statics',
    });
  }
}
