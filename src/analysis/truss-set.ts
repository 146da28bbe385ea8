/**
 * Every truss under every load case, as a frame of its preliminary layout, twice: (a) one bearing slides and the bearings
 * move apart; (b) both bearings are held and push outward. Trusses that catch the same loads share one answer. What they
 * hand down vertically is that of the rigid body (truss.ts): the frame only adds the outward push, which balances itself.
 */
import type { Loads } from '../loads/model.js';
import { type WebLayout, webLayout } from '../structure/framing/webs.js';
import type { Member, Structure, Surface, TrussShape } from '../structure/model.js';
import { type Catch, catchTerms } from './catch.js';
import { catchKey } from './framing.js';
import { indexStructure, type StructureIndex } from './index-structure.js';
import type { Effects } from './model.js';
import { type Near, nearTo } from './near.js';
import type { Profile } from './profile.js';
import { collectTerms, type Term, type Terms } from './terms.js';
import { type BarForces, makeTruss, solveTruss, type TrussModel, type TrussSolution } from './truss-frame.js';
import { ownWeight, type Plane, planeOf, termLoad } from './truss-loads.js';

/** Forces in one truss, per load case. */
export interface TrussEffects {
  readonly mark: string;
  /** Ids of the trusses that share this answer, and one of them. */
  readonly members: readonly string[];
  readonly member: Member;
  readonly model: TrussModel;
  /** (a) One bearing slides: opening between the bearings, inches, outward positive. */
  readonly spread: Float64Array;
  /** (b) Both held: outward push on each beam, lb. */
  readonly thrust: Float64Array;
  /** Upward reactions of the first and the second bearing on the truss, and the whole push to the right, lb. */
  readonly up: readonly [Float64Array, Float64Array];
  readonly sideways: Float64Array;
  readonly sliding: readonly BarForces[];
  /** Empty where a bearing is ordered to slide. */
  readonly held: readonly BarForces[];
}

function sumCases(
  truss: TrussModel,
  cases: number,
  near: Near,
  units: readonly (Unit | undefined)[],
  ceilings: readonly (Ceiling | undefined)[],
  self: TrussSolution,
  slides: 0 | 1 | undefined,
): Omit<TrussEffects, 'mark' | 'members' | 'member' | 'model'> {
  const { push } = truss;
  const spread = new Float64Array(cases);
  const thrust = new Float64Array(cases);
  const up = [new Float64Array(cases), new Float64Array(cases)] as const;
  const sideways = new Float64Array(cases);
  const sliding: BarForces[] = [];
  const held: BarForces[] = [];
  const plus = (into: BarForces, s: BarForces, factor: number): void => {
    if (factor === 0) return;
    for (let i = 0; i < into.n.length; i++) into.n[i] = into.n[i]! + factor * s.n[i]!;
    for (let i = 0; i < into.m.length; i++) into.m[i] = into.m[i]! + factor * s.m[i]!;
  };
  const size = push.n.length;
  const nothing: BarForces = { n: new Float64Array(size), m: new Float64Array(push.m.length) };
  const byCase = new Map(near.cases.map((c) => [c.index, c]));
  for (let k = 0; k < cases; k++) {
    const c = byCase.get(k);
    if (!c) {
      sliding.push(nothing);
      if (slides === undefined) held.push(nothing);
      continue;
    }
    const a: BarForces = { n: new Float64Array(size), m: new Float64Array(push.m.length) };
    let open = 0;
    let pushed = 0;
    const take = (s: TrussSolution, factor: number): void => {
      plus(a, s, factor);
      open += factor * s.spread;
      // What the held bearing receives is the whole horizontal load.
      pushed -= factor * s.held.x;
      up[0][k] = up[0][k]! + factor * s.held.z;
      up[1][k] = up[1][k]! + factor * s.sliding;
    };
    if (c.self !== 0) take(self, c.self);
    for (let t = 0; t < c.term.length; t++) {
      const u = units[c.term[t]!];
      const ceiling = c.self === 0 ? undefined : ceilings[c.term[t]!];
      const part = ceiling?.share ?? 0;
      if (u) take(u.solution, c.factor[t]! * u.size * (1 - part));
      if (ceiling) take(ceiling.unit.solution, c.factor[t]! * ceiling.unit.size * part);
    }
    // Both bearings take half of the horizontal load, as the rigid body gives, or the one that does not slide all of it;
    // the rest of the movement is the spread.
    const second = slides === undefined ? pushed / 2 : slides === 1 ? 0 : pushed;
    plus(a, push, -second);
    sideways[k] = pushed;
    spread[k] = open - second * push.spread;
    thrust[k] = spread[k]! / push.spread;
    sliding.push(a);
    if (slides !== undefined) continue;
    const b: BarForces = { n: a.n.slice(), m: a.m.slice() };
    plus(b, push, -thrust[k]!);
    held.push(b);
  }
  return { spread, thrust, up, sideways, sliding, held };
}

function groupKey(mark: string, near: Near, caught: Catch): string {
  return `${mark}|${near.terms}|${caught.map((c) => (c === undefined ? '' : catchKey(c))).join('/')}`;
}

/** A frame with the unit answers of all trusses of one roof that are alike but for what they catch. */
interface Shared {
  readonly roof: string | undefined;
  readonly weight: number;
  readonly model: TrussModel;
  readonly units: Map<string, TrussSolution>;
  self?: TrussSolution;
}

/** Studs carry nothing, so a gable end often is the same frame as the trusses beside it. */
function sharedModel(member: Member, shape: TrussShape, known: readonly (Shared | undefined)[]): Shared | undefined {
  const layout = webLayout(shape, member.role === 'gable-truss');
  const places = (l: WebLayout): string =>
    JSON.stringify(l.bars.flatMap((b) => (b.role === 'stud' ? [] : [b.role, place(l, b.from), place(l, b.to)])));
  const place = (l: WebLayout, joint: number): readonly number[] => [l.joints[joint]!.x, l.joints[joint]!.z];
  const mine = places(layout);
  const twin = known.find(
    (k) => k && k.roof === member.roof && k.weight === shape.weight && places(k.model.layout) === mine,
  );
  if (twin) return twin;
  const model = makeTruss(layout, member.section);
  return model && { roof: member.roof, weight: shape.weight, model, units: new Map() };
}

/** What `size` times a solution makes. */
interface Unit {
  readonly solution: TrussSolution;
  readonly size: number;
}

/** Strips of one even width differ by that width only, so they share the answer for a width of one. */
function unitOf(
  shared: Shared,
  plane: Plane,
  term: Term,
  surface: Surface,
  caught: Profile | number,
  chord: 'top' | 'bottom',
  name: string,
): Unit {
  const even = typeof caught !== 'number' && caught.length === 1 && caught[0]!.wa === caught[0]!.wb;
  const size = typeof caught === 'number' ? caught : even ? caught[0]!.wa : 1;
  const one = typeof caught === 'number' ? 1 : even ? [{ ...caught[0]!, wa: 1, wb: 1 }] : caught;
  const key = `${chord} ${name}:${catchKey(one)}`;
  let solution = shared.units.get(key);
  if (!solution) {
    solution = solveTruss(shared.model, termLoad(shared.model, plane, term, surface, one, chord));
    shared.units.set(key, solution);
  }
  return { solution, size };
}

/** A ceiling's share of a surface's dead load, and what a unit of load on the bottom chord does. */
interface Ceiling {
  readonly share: number;
  readonly unit: Unit;
}

/** Undefined for terms that no ceiling is part of; past the bearings a ceiling hangs on the heel. */
function ceilingOf(
  shared: Shared,
  plane: Plane,
  term: Term,
  surfaces: ReadonlyMap<string, Surface>,
  caught: Profile | number | undefined,
  name: string,
): Ceiling | undefined {
  if (caught === undefined || typeof caught === 'number' || term.kind !== 'vertical' || term.region) return undefined;
  const surface = surfaces.get(term.surface)!;
  const all = surface.layers.reduce((n, l) => n + l.psf, 0);
  const under = surface.layers.reduce((n, l) => n + (l.under ? l.psf : 0), 0);
  if (under === 0) return undefined;
  return { share: under / all, unit: unitOf(shared, plane, term, surface, caught, 'bottom', name) };
}

export function analyseTrusses(index: StructureIndex, terms: Terms): readonly TrussEffects[] {
  const groups = new Map<string, { effects: TrussEffects; members: string[] }>();
  const models = new Map<string, Shared | undefined>();
  for (const member of index.structure.members) {
    const shape = member.truss;
    const [a, b] = index.below.get(member.id) ?? [];
    if (!shape || !a || !b) continue;
    const caught = catchTerms(member, terms, index.surfaces);
    const near = nearTo(member, terms);
    const key = groupKey(member.mark, near, caught);
    const known = groups.get(key);
    if (known) {
      known.members.push(member.id);
      continue;
    }
    if (!models.has(member.mark)) models.set(member.mark, sharedModel(member, shape, [...models.values()]));
    const shared = models.get(member.mark);
    if (!shared) continue;
    const { model } = shared;
    const plane = planeOf(a, b, shape.bearing);
    const units = caught.map((c, i) => {
      if (c === undefined) return undefined;
      const number = near.terms[i]!;
      const term = terms.terms[number]!;
      return unitOf(shared, plane, term, index.surfaces.get(term.surface)!, c, 'top', `${number}`);
    });
    const ceilings = caught.map((c, i) => {
      const number = near.terms[i]!;
      return ceilingOf(shared, plane, terms.terms[number]!, index.surfaces, c, `${number}`);
    });
    shared.self ??= solveTruss(model, ownWeight(model, shape.weight));
    const { self } = shared;
    const members = [member.id];
    groups.set(key, {
      members,
      effects: {
        mark: member.mark,
        members,
        member,
        model,
        ...sumCases(model, terms.cases.length, near, units, ceilings, self, shape.slides),
      },
    });
  }
  return [...groups.values()].map((g) => g.effects);
}

const made = new WeakMap<Effects, readonly TrussEffects[]>();

/** Worked out once for the same effects, and only when somebody asks. */
export function trussEffects(ctx: {
  readonly structure: Structure;
  readonly loads: Loads;
  readonly effects: Effects;
}): readonly TrussEffects[] {
  let known = made.get(ctx.effects);
  if (!known) {
    const index = indexStructure(ctx.structure);
    known = ctx.structure.members.some((m) => m.truss)
      ? analyseTrusses(index, collectTerms(ctx.loads, index.surfaces))
      : [];
    made.set(ctx.effects, known);
  }
  return known;
}
