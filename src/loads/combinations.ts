/**
 * Combinations over the cases at hand. The standard's list names loads; each load of a line stands for one of its cases at
 * a time: every wind case, and every way the snow may lie (balanced, drifted, slid down, unbalanced), which are alternatives
 * and never added to each other. A line naming a load that has no case is left out (a lesser line covers the rest).
 */
import { COMBINATIONS, type CombinationMethod, type NominalLoad } from './codes/asce7/index.js';
import type { Asce7Edition } from './codes/support.js';
import type { Combination, LoadCase, LoadKind } from './model.js';

/** Load duration factors of NDS 2018 Table 2.3.2 for the loads of a cover; D stands alone as permanent. */
const DURATION: Readonly<Record<LoadKind, number>> = { D: 0.9, Lr: 1.25, S: 1.15, W: 1.6, E: 1.6 };

/** CD of the shortest load in a combination (NDS 2018 2.3.2). */
const shortest = (kinds: readonly LoadKind[]): number => kinds.reduce((cd, kind) => Math.max(cd, DURATION[kind]), 0.9);

const CARRIED: readonly LoadKind[] = ['D', 'Lr', 'S', 'W', 'E'];
const isKind = (load: string): load is LoadKind => (CARRIED as readonly string[]).includes(load);
const term = (kind: LoadKind, factor: number): string =>
  factor === 1 ? kind : `${Number(factor.toPrecision(4))}${kind}`;

/** Combinations whose snow or live load is a lesser companion of dead load alone (2.4.1 (4), 2.3.1 (2)). */
const BETWEEN: readonly string[] = ['ASD-4', 'LRFD-2'];

/** One case for each kind, in every way: `[[D, W1, S1], [D, W1, S2], …]` by index, the last kind running slowest. */
function choices(
  kinds: readonly LoadKind[],
  byKind: Readonly<Record<LoadKind, readonly number[]>>,
): readonly number[][] {
  let rows: number[][] = [[]];
  for (const kind of kinds) rows = byKind[kind].flatMap((i) => rows.map((row) => [...row, i]));
  return rows;
}

/** Vertical load of one case on one roof by plan, per unit of width: its total and its moments about both edges, both axes. */
function pressOn(c: LoadCase, roof: string, lengths: Readonly<Record<'x' | 'y', number>>): readonly number[] {
  let total = 0;
  const about: Record<'x' | 'y', [number, number]> = { x: [0, 0], y: [0, 0] };
  for (const p of c.plan ?? []) {
    if (p.roof !== roof) continue;
    const axis = p.zone?.toward.endsWith('y') ? 'y' : 'x';
    const L = lengths[axis];
    const from = p.zone && L > 0 ? p.zone.from / L : 0;
    const to = p.zone && L > 0 ? p.zone.to / L : 1;
    const w = p.psf * (to - from);
    const far = (w * (from + to)) / 2;
    total += w;
    const back = p.zone?.toward.startsWith('-') ?? false;
    about[axis][0] += back ? w - far : far;
    about[axis][1] += back ? far : w - far;
    const other = axis === 'x' ? 'y' : 'x';
    about[other][0] += w / 2;
    about[other][1] += w / 2;
  }
  return [total, ...about.x, ...about.y];
}

/**
 * Wind cases that press hardest on a roof in total, or toward one of its four edges. A load on some spans is combined with
 * these alone, to keep the list short: a wind that lifts takes from what the load does, and the uplift combinations hold
 * neither snow nor live load. Held by a test: the combinations left out raise no member's or joint's extreme by over 0.5 %.
 */
export function pressingWinds(cases: readonly LoadCase[]): ReadonlySet<number> {
  const roofs = new Set(cases.flatMap((c) => (c.plan ?? []).map((p) => p.roof)));
  const chosen = new Set<number>();
  for (const roof of roofs) {
    // A zone without pressure is left out of its case; over all cases the farthest end is the far edge.
    const lengths = { x: 0, y: 0 };
    for (const c of cases)
      for (const { roof: on, zone } of c.plan ?? []) {
        const axis = zone?.toward.endsWith('y') ? 'y' : 'x';
        if (on === roof && zone && c.kind === 'W') lengths[axis] = Math.max(lengths[axis], zone.to);
      }
    const best: { at: number; value: number }[] = [];
    cases.forEach((c, i) => {
      if (c.kind !== 'W') return;
      pressOn(c, roof, lengths).forEach((value, k) => {
        if (value > 1e-9 && value > (best[k]?.value ?? 0) + 1e-9) best[k] = { at: i, value };
      });
    });
    for (const b of best) if (b) chosen.add(b.at);
  }
  return chosen;
}

/**
 * Factors on the kinds of cases: floor live load does not act on a cover and is left out; the vertical seismic effect
 * 0.2·SDS·D (12.4.2.2) joins the dead load; snow beside an earthquake drops out where there is none.
 */
function carriedFactors(
  rule: Readonly<Partial<Record<NominalLoad, number>>>,
  SDS: number,
  snow: boolean,
): Readonly<Record<string, number>> {
  const { L: _floor, Ev, Eh, ...rest } = rule;
  if (Ev === undefined || Eh === undefined) return rest;
  const { S, ...others } = rest;
  const D = Number(((rest.D ?? 0) + 0.2 * SDS * Ev).toPrecision(12));
  return { ...others, D, E: Eh, ...(S !== undefined && snow ? { S } : {}) };
}

/**
 * Expands one method of the standard over the cases, in list order; exact repeats are dropped. `SDS` (g) is the
 * acceleration of the earthquake cases, where there are any.
 */
export function expandCombinations(
  cases: readonly LoadCase[],
  edition: Asce7Edition,
  method: CombinationMethod,
  SDS = 0,
): readonly Combination[] {
  const of = (kind: LoadKind): number[] => cases.flatMap((c, i) => (c.kind === kind ? [i] : []));
  const byKind: Readonly<Record<LoadKind, readonly number[]>> = {
    D: of('D'),
    Lr: of('Lr'),
    S: of('S'),
    W: of('W'),
    E: of('E'),
  };
  const pressing = pressingWinds(cases);
  const out: Combination[] = [];
  const seen = new Set<string>();
  for (const rule of COMBINATIONS[edition][method]) {
    const factors = carriedFactors(rule.factors, SDS, byKind.S.length > 0);
    const loads = Object.keys(factors);
    if (!loads.every(isKind)) continue;
    const kinds = loads;
    if (kinds.some((k) => byKind[k].length === 0)) continue;
    const label = kinds.map((k) => term(k, factors[k]!)).join(' + ');
    if (seen.has(label)) continue;
    seen.add(label);
    const CD = shortest(kinds);
    const uplift = (kinds.includes('W') || kinds.includes('E')) && (rule.factors.D ?? 1) < 1;
    const short = label.replaceAll(' ', '');
    for (const chosen of choices(kinds, byKind)) {
      if (chosen.some((i) => cases[i]!.pattern)) {
        if (kinds.includes('E')) continue;
        const wind = chosen.find((i) => cases[i]!.kind === 'W');
        if (wind !== undefined && !pressing.has(wind)) continue;
        // D with a part of a pattern lies between D alone and D with all of it.
        if (BETWEEN.some((id) => rule.id.startsWith(id))) continue;
      }
      const terms = chosen.map((i, k) => ({ case: i, factor: factors[kinds[k]!]! }));
      // A case named like its kind is the plain one and needs no mention.
      const named = chosen.flatMap((i) => (cases[i]!.id === cases[i]!.kind ? [] : [cases[i]!.id]));
      const id = named.length === 0 ? short : `${short} (${named.join(', ')})`;
      out.push({ id, label, terms, CD, clause: rule.clause, uplift });
    }
  }
  return out;
}
