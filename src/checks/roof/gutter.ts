/**
 * Gutter and leader of each eave, sized by the rainfall: smallest semicircular gutter at the flattest fall of the table, with
 * as few leaders as do. A gutter given away too small overflows at the posts' feet.
 */
import { wallTopAt } from '../../structure/house/profile.js';
import type { Surface } from '../../structure/model.js';
import {
  drainedArea,
  GUTTER_FALLS,
  gutterFor,
  LEADERS,
  leaderCapacity,
  roofRunoff,
} from '../codes/roof-drainage/index.js';
import { say } from '../codes/say.js';
import type { Check, CheckContext } from '../contract.js';
import { failed, measured, notApplicable, notEvaluated } from '../finding.js';

const CLAUSE = 'gutter table, NSPC 2006 Table 13.6.1';
/** Rain taken where none is given, inches an hour: more than any place in the codes' lists of cities, as recalled. */
export const HEAVY_RAIN = 6;
/** More leaders than this on one eave is a job for other drainage. */
const MOST_LEADERS = 6;

function area(surface: Surface): number {
  let twice = 0;
  surface.outline.forEach((p, i) => {
    const q = surface.outline[(i + 1) % surface.outline.length]!;
    twice += p.x * q.y - q.x * p.y;
  });
  return (Math.abs(twice) / 2) * Math.cos(surface.slope);
}

/** House wall above the high edge of a surface that falls away from it, in² (0 where the roof stands free). */
function wallAbove(ctx: CheckContext, s: Surface): number {
  const roof = ctx.structure.roofs.find((r) => r.mark === s.roof);
  if (!roof?.attached) return 0;
  const us = s.outline.map((p) => p.x);
  const top = Math.max(...s.outline.map((p) => p.y));
  const at = (u: number): { x: number; y: number; z: number } => ({
    x: s.origin.x + u * s.u.x + top * s.v.x,
    y: s.origin.y + u * s.u.y + top * s.v.y,
    z: s.origin.z + u * s.u.z + top * s.v.z,
  });
  const low = Math.min(...us);
  const high = Math.max(...us);
  const mid = at((low + high) / 2);
  const wall = ctx.structure.walls.find((w) => {
    const gap = (mid.x - w.start.x) * w.out.x + (mid.y - w.start.y) * w.out.y;
    return Math.abs(gap) <= 12 && w.out.x * s.downhill.x + w.out.y * s.downhill.y > 1 - 1e-6;
  });
  if (!wall) return 0;
  const planes = ctx.structure.housePlanes.filter((p) => p.state !== 'removed');
  const height = Math.max(0, wallTopAt(planes, mid, wall.plate) - mid.z);
  return height * (high - low);
}

/** Gutter and leaders of each eave of a roof. */
export interface GutterChoice {
  /** Width of the gutter and diameter of each leader, inches. */
  readonly gutter: number;
  readonly leader: number;
  /** Leaders of one eave. */
  readonly count: number;
}

/** Largest plan area on one eave with half of the wall above it, in², and that wall. */
function mostDrained(ctx: CheckContext, roof: string): { readonly most: number; readonly wall: number } {
  let most = 0;
  let wall = 0;
  for (const s of ctx.structure.surfaces) {
    if (s.roof !== roof) continue;
    const a = drainedArea(area(s), wallAbove(ctx, s));
    if (a > most) {
      most = a;
      wall = wallAbove(ctx, s);
    }
  }
  return { most, wall };
}

/** Fewest leaders that do, with the smallest gutter and leader of the tables; undefined where none do. */
function choose(most: number, rain: number): (GutterChoice & { readonly gutterArea: number }) | undefined {
  for (let count = 1; count <= MOST_LEADERS; count++) {
    const size = gutterFor(most / count, GUTTER_FALLS[0], rain);
    const leader = LEADERS.find((l) => l.diameter >= (size?.leader ?? 3) && leaderCapacity(l, rain) >= most / count);
    if (size && leader)
      return { gutter: size.diameter, leader: leader.diameter, count, gutterArea: (size.ft2At4[0] * 4) / rain };
  }
  return undefined;
}

/** What hangs on the eaves of a roof, as the check sizes it; undefined where it has no gutter or none does. */
export function gutterOf(ctx: CheckContext, mark: string): GutterChoice | undefined {
  const roof = ctx.project.cover.roofs.find((r) => r.mark === mark);
  if (!roof?.finish.gutter) return undefined;
  return choose(mostDrained(ctx, mark).most, ctx.project.basis.rainfall?.value ?? HEAVY_RAIN);
}

export const gutter: Check = {
  id: 'gutter',
  title: 'Gutter and leaders',
  subjects: (ctx) => ctx.project.cover.roofs.map((r) => ({ id: r.mark, path: `${r.path}/finish/gutter` })),
  run(subject, ctx, rec) {
    const roof = ctx.project.cover.roofs.find((r) => r.mark === subject.id);
    if (!roof?.finish.gutter) return notApplicable(CLAUSE, 'no gutter is named');
    const surfaces = ctx.structure.surfaces.filter((s) => s.roof === roof.mark);
    if (surfaces.length === 0) return notEvaluated(CLAUSE, 'this roof was not placed');
    const given = ctx.project.basis.rainfall;
    const rain = given?.value ?? HEAVY_RAIN;
    const { most, wall: fall } = mostDrained(ctx, roof.mark);
    rec?.step({
      symbol: 'i',
      meaning: given ? 'rainfall, one hour, as the office states it' : 'rainfall taken, none being given',
      formula: given ? 'given' : 'taken',
      substituted: given?.from ?? 'more than any place in the codes’ lists, as recalled',
      value: rain,
      unit: 'in/h',
      clause: 'plumbing code rainfall map',
      from: [given?.path ?? '/basis/rainfall'],
    });
    rec?.step({
      symbol: 'A',
      meaning: 'largest plan area on one eave, with half of the house wall above it',
      formula: 'roof + wall / 2',
      substituted: `${((most - fall / 2) / 144).toFixed(1)} + ${(fall / 144).toFixed(1)} / 2`,
      value: most / 144,
      unit: 'ft²',
      clause: 'IPC 1106.4',
      from: [roof.path],
    });
    const Q = roofRunoff(most, rain, rec);
    const found = choose(most, rain);
    if (found) {
      const { gutterArea, count: n } = found;
      rec?.step({
        symbol: 'Ag',
        meaning: `roof area that a ${found.gutter} in gutter drains to each leader, fall 1/16 in per foot`,
        formula: 'table at 4 in/h · 4 / i',
        substituted: `${say((gutterArea * rain) / 4)} · 4 / ${rain}`,
        value: gutterArea,
        unit: 'ft²',
        clause: CLAUSE,
        note: 'semicircular gutter of a handbook table; the adopted plumbing code governs',
      });
      const count = n === 1 ? 'one leader' : `${n} leaders`;
      return measured(
        {
          demand: most / 144 / n,
          capacity: gutterArea,
          unit: 'ft²',
          clause: CLAUSE,
          formula: 'A to one leader / Ag',
          note: `Each eave of ${roof.mark}: gutter ${found.gutter} in wide or larger, fall 1/16 in per foot, ${count} of ${found.leader} in, ${Q.toFixed(1)} gpm at ${rain} in/h${given ? '' : ' (no rainfall is given: 6 in/h taken)'}.`,
          remedy: '',
        },
        rec,
      );
    }
    return failed(
      CLAUSE,
      `One eave of ${roof.mark} sheds more water than ${MOST_LEADERS} leaders of the table drain: drain it otherwise.`,
    );
  },
};
