/**
 * Fasteners of a ledger: gravity, uplift, side load along the wall and pull out from it acting together, place by place
 * and combination by combination. NDS 2018 chapters 11 and 12; sheathing and spacers count as a gap.
 */
import { leverShares } from '../../analysis/ledger.js';
import type { Recorder } from '../../base/trace.js';
import type { Joint } from '../../structure/model.js';
import { combinedLateralWithdrawal } from '../codes/nds-2018/index.js';
import type { Check, CheckContext, Finding } from '../contract.js';
import { failed, measured, notApplicable, notEvaluated, RATIO_CAP } from '../finding.js';
import { componentUplifts } from '../joints/component-uplift.js';
import { sumText } from '../members/scan.js';
import { type Factors, factorsOf, lateralOf, pullOf, reference, type Shank, shankOf, spotsOf } from './fastener.js';
import { type FlatForces, flatForces, type HousePlace, housePlaces } from './places.js';

const CLAUSE = 'NDS 2018 12.3, 12.4';
/** Forces under this are rounding, lb. */
const TRACE = 0.5;

/** Words of somebody who leans on a table for decks. */
const DECK_TABLE = /deck|R ?507|R ?502\.2|joist span table/i;
export const DECK_NOTE =
  'A deck-ledger table is no proof here: it holds for floor load on a deck alone, without uplift and without snow against the wall; this calculation stands in its place.';

export const namesDeckTable = (basis: string): boolean => DECK_TABLE.test(basis);

/** Forces at one place: sideways along the wall, down (positive) or up, and out from the wall, lb. */
interface Force {
  readonly joint: Joint;
  readonly combination: string;
  readonly CD: number;
  readonly along: number;
  readonly down: number;
  readonly out: number;
}

/** The larger component wind under each rafter, brought to the places as its reaction is (ASCE 7-16 30.7). */
function componentForces(ctx: CheckContext, place: HousePlace): Force[] {
  const { byJoint } = componentUplifts(ctx);
  const joints = [...place.joints].sort((p, q) => p.ties[0]!.along - q.ties[0]!.along);
  const at = joints.map((j) => j.ties[0]!.along);
  const up = joints.map(() => 0);
  let combination = '';
  for (const u of byJoint.values()) {
    if (u.joint.ties.at(-1)?.part !== place.member.id) continue;
    combination = u.combination;
    for (const { index, share } of leverShares(at, u.joint.ties.at(-1)!.along)) up[index]! += share * u.up;
  }
  return joints.flatMap((joint, i) =>
    up[i]! > TRACE
      ? [{ joint, combination: `${combination}, component wind`, CD: 1.6, along: 0, down: -up[i]!, out: 0 }]
      : [],
  );
}

/** Arm of the couple that turns the ledger: hanger on its outer face, framing behind it. */
function armOf(s: Shank, down: boolean): number {
  const { rows } = s.f;
  const depth = s.ledger.section.depth;
  const [high, low] = [rows[0]!, rows[rows.length - 1]!];
  // With spacers nothing bears behind the ledger: the rows must make the couple between them.
  if (s.f.standoff > 0) return low - high;
  return down ? depth - high : low;
}

interface Case {
  readonly lateral: number;
  readonly pull: number;
  readonly ratio: number;
}

/** Pull of the fastener farthest from the edge the ledger turns about, lb; infinite when nothing makes the couple. */
function pullAt(s: Shank, down: number, out: number): number {
  const arm = armOf(s, down > 0);
  if (down === 0) return Math.max(0, out) / s.f.rows.length;
  return arm > 0
    ? Math.max(0, out) / s.f.rows.length + (Math.abs(down) * (s.ledger.section.width + s.gap)) / arm
    : Number.POSITIVE_INFINITY;
}

const caseOf = (s: Shank, F: Force, ratio: number): Case => ({
  lateral: Math.hypot(F.along, F.down) / s.f.rows.length,
  pull: pullAt(s, F.down, F.out),
  ratio,
});

function ratioAt(s: Shank, along: number, down: number, out: number, Z: number, P: number): number {
  const lateral = Math.sqrt(along * along + down * down) / s.f.rows.length;
  const pull = pullAt(s, down, out);
  if (!Number.isFinite(pull) || (pull > TRACE && P <= 0) || Z <= 0) return RATIO_CAP;
  const R = Math.sqrt(lateral * lateral + pull * pull);
  if (R <= 0) return 0;
  const ratio =
    s.f.kind === 'bolt'
      ? lateral / Z + pull / P
      : R /
        combinedLateralWithdrawal(
          s.f.kind === 'lag' ? 'lag' : 'wood-screw',
          Math.max(P, 1e-9),
          Z,
          Math.atan2(pull, lateral),
        );
  return Math.min(ratio, RATIO_CAP);
}

interface Worst {
  readonly F: Force;
  readonly at: Case;
}

/** What all combinations ask: whether anything lifts or pushes along the ledger, and the worst place of them all. */
interface Search {
  readonly lifts: boolean;
  readonly along: boolean;
  readonly worst: Worst | undefined;
}

function search(
  ctx: CheckContext,
  place: HousePlace,
  s: Shank,
  all: readonly FlatForces[],
  Z: number,
  k: Factors,
): Search {
  const known = new Map<number, readonly [number, number]>();
  const strength = (CD: number): readonly [number, number] => {
    let c = known.get(CD);
    if (!c) {
      c = [lateralOf(Z, k, CD), pullOf(s, k, CD)];
      known.set(CD, c);
    }
    return c;
  };
  let lifts = false;
  let sideways = false;
  let most = -1;
  let worst: Force | undefined;
  for (const combination of ctx.loads.combinations) {
    const [Zp, Pp] = strength(combination.CD);
    for (const { joint, rows } of all) {
      let along = 0;
      let down = 0;
      let out = 0;
      for (const t of combination.terms) {
        along += t.factor * rows[3 * t.case]!;
        down += t.factor * rows[3 * t.case + 1]!;
        out += t.factor * rows[3 * t.case + 2]!;
      }
      if (down < -TRACE) lifts = true;
      if (Math.abs(along) > TRACE) sideways = true;
      const ratio = ratioAt(s, along, down, out, Zp, Pp);
      if (ratio <= most) continue;
      most = ratio;
      worst = { joint, combination: combination.id, CD: combination.CD, along, down, out };
    }
  }
  for (const F of componentForces(ctx, place)) {
    lifts = true;
    const [Zp, Pp] = strength(F.CD);
    const ratio = ratioAt(s, F.along, F.down, F.out, Zp, Pp);
    if (ratio <= most) continue;
    most = ratio;
    worst = F;
  }
  return { lifts, along: sideways, worst: worst && { F: worst, at: caseOf(s, worst, most) } };
}

function record(ctx: CheckContext, place: HousePlace, s: Shank, { F, at }: Worst, rec: Recorder): void {
  const n = s.f.rows.length;
  const step = (symbol: string, meaning: string, formula: string, substituted: string, value: number): void =>
    rec.step({ symbol, meaning, formula, substituted, value, unit: 'lb', clause: 'statics', from: [s.f.path] });
  rec.heading(`${F.joint.id}, ${F.combination}: ${n} × ${s.fastener.name}`);
  const combination = ctx.loads.combinations.find((c) => c.id === F.combination);
  const rows = flatForces(ctx, place.joints, place.wall)?.find((l) => l.joint === F.joint)?.rows;
  // Component wind is no combination of cases: its lift is worked out with the ties of the rafters.
  const sum = (k: number): string =>
    combination && rows
      ? sumText(ctx, combination, (c) => rows[3 * c + k]!)
      : `${F.combination}, as at the rafters' ties`;
  const formula = combination?.label ?? 'component uplift of the rafters by the lever';
  step('V', F.down >= 0 ? 'down on this place' : 'up on this place', formula, sum(1), Math.abs(F.down));
  step('H', 'along the wall on this place, side load with it', formula, sum(0), Math.abs(F.along));
  step('Fo', 'out from the wall on this place, side load with it', formula, sum(2), Math.max(0, F.out));
  step(
    'L',
    'lateral load of one fastener',
    '√(V² + H²) / n',
    `√(${F.down.toFixed(0)}² + ${F.along.toFixed(0)}²) / ${n}`,
    at.lateral,
  );
  const arm = armOf(s, F.down > 0);
  step(
    'T',
    'pull of the fastener farthest from the edge the ledger turns about',
    'out/n + V·(t + gap)/arm',
    `${Math.max(0, F.out).toFixed(0)}/${n} + ${Math.abs(F.down).toFixed(0)}·${(s.ledger.section.width + s.gap).toFixed(3)}/${arm.toFixed(2)}`,
    at.pull,
  );
}

/** Lengths that the yield modes and the pull start from. */
function recordLengths(s: Shank, rec: Recorder): void {
  const { f, ledger } = s;
  const step = (symbol: string, meaning: string, formula: string, substituted: string, value: number): void =>
    rec.step({ symbol, meaning, formula, substituted, value, unit: 'in', clause: 'NDS 2018 12.3.5', from: [f.path] });
  step('g', 'gap between ledger and framing', 'sheathing + spacers', `${f.through} + ${f.standoff}`, s.gap);
  step(
    'lm',
    'bearing length in the framing',
    f.kind === 'bolt' ? 'its depth' : 'least of its depth and length − ledger − gap − tip',
    f.kind === 'bolt'
      ? `${f.framing.depth}`
      : `${f.framing.depth}, ${f.length} − ${ledger.section.width} − ${s.gap} − ${s.fastener.tip ?? 2 * s.fastener.D}`,
    s.lm,
  );
  if (f.kind !== 'bolt')
    step(
      'p',
      'thread in the framing without its tip',
      'thread − tip, at most lm',
      `${s.cut} − ${s.fastener.tip ?? 2 * s.fastener.D}, ${s.lm}`,
      s.thread,
    );
}

export const ledgerFasteners: Check = {
  id: 'ledger-fasteners',
  title: 'Ledger fasteners into the house',
  subjects(ctx) {
    const { ledgers } = ctx.project.cover;
    return ledgers.length > 0 ? ledgers.map((l) => ({ id: l.mark, path: l.path })) : [{ id: 'cover', path: '/cover' }];
  },
  run(subject, ctx, rec): Finding {
    const place = housePlaces(ctx).find((p) => p.id === subject.id && p.kind === 'ledger');
    if (!place) return notApplicable(CLAUSE, 'no ledger is fastened to the house');
    return fastenersOf(ctx, place, rec);
  },
};

interface Found extends Search {
  readonly first: number;
  readonly Z: number;
  readonly k: Factors;
}

const made = new WeakMap<CheckContext['effects'], Map<string, Found | undefined>>();

/** The search is asked for by this check and by the joint's: once for the same effects. */
function searched(ctx: CheckContext, place: HousePlace, s: Shank): Found | undefined {
  let known = made.get(ctx.effects);
  if (!known) {
    known = new Map();
    made.set(ctx.effects, known);
  }
  if (!known.has(place.id)) {
    const all = flatForces(ctx, place.joints, place.wall);
    const first = Math.min(...place.joints.map((j) => j.ties[0]!.along));
    const Z = reference(s).Z;
    const k = factorsOf(s, first);
    known.set(place.id, all && { ...search(ctx, place, s, all, Z, k), first, Z, k });
  }
  return known.get(place.id);
}

/** The answer for one ledger; also the calculated connection of its joint mark. */
export function fastenersOf(ctx: CheckContext, place: HousePlace, rec?: Recorder): Finding {
  const f = place.ledger?.fastening;
  if (!f)
    return notEvaluated(
      CLAUSE,
      `How ${place.id} is fastened is not said. Needed: "fastening" with its screws or bolts and the wood they go into.`,
    );
  const s = shankOf(f, place.member);
  if ('why' in s) return failed(CLAUSE, `${place.id}: ${s.why}.`);
  const { missing } = componentUplifts(ctx);
  const blind = ctx.structure.joints.find((j) => missing.has(j.id) && j.ties.at(-1)?.part === place.member.id);
  if (blind)
    return notEvaluated(
      CLAUSE,
      `${place.id}: the component wind on its rafters is not known, see ${blind.mark} and the wind checks.`,
    );
  const found = searched(ctx, place, s);
  if (!found?.worst) return notEvaluated(CLAUSE, 'no forces were worked out for this ledger, see the frame check');
  const { first, Z, k, worst } = found;
  for (const spot of spotsOf(s, found)) {
    rec?.step({
      symbol: 'a',
      meaning: `distance ${spot.what}`,
      formula: 'at least',
      substituted: `${spot.have.toFixed(2)} in of ${spot.need.toFixed(2)} in`,
      value: spot.have,
      unit: 'in',
      clause: 'NDS 2018 12.5.1',
      from: [f.path],
    });
    if (spot.have < spot.need - 1e-6)
      return failed(
        'NDS 2018 12.5.1',
        `${place.id}: a fastener stands ${Math.max(0, spot.have).toFixed(2)} in ${spot.what}, where ${spot.need.toFixed(2)} in is the least: move the rows, use thinner fasteners, or go into the floor band or solid blocking.`,
      );
  }
  const { F, at } = worst;
  if (!Number.isFinite(at.pull))
    return failed(
      CLAUSE,
      `${place.id} stands off the wall on spacers with one fastener at each place: nothing keeps it from turning. Give two rows, or no spacers.`,
    );
  if (rec) {
    rec.heading(`${place.id}: one ${s.fastener.name}, the weaker of both directions`);
    recordLengths(s, rec);
    reference(s, rec);
    factorsOf(s, first, rec);
    record(ctx, place, s, worst, rec);
  }
  const Zp = lateralOf(Z, k, F.CD, rec);
  const Pp = pullOf(s, k, F.CD, rec);
  const screw = f.kind !== 'bolt';
  const alpha = Math.atan2(at.pull, at.lateral);
  const both =
    screw && at.ratio < RATIO_CAP
      ? combinedLateralWithdrawal(f.kind === 'lag' ? 'lag' : 'wood-screw', Pp, Zp, alpha, rec)
      : Zp;
  const R = Math.hypot(at.lateral, at.pull);
  const deck = namesDeckTable(f.basis) ? ` ${DECK_NOTE}` : '';
  return measured(
    {
      demand: screw ? R : at.lateral,
      capacity: both,
      unit: 'lb',
      combination: F.combination,
      clause: screw ? 'NDS 2018 12.4.1' : 'NDS 2018 11.3, 3.10',
      formula: screw ? "√(L² + T²) / Zα'" : "L/Z' + T/Pw",
      ratio: at.ratio,
      note: `${f.rows.length} × ${s.fastener.name} at ${f.spacing} in: ${Math.ceil(at.lateral)} lb across and ${Math.ceil(at.pull)} lb pull on one.${deck}`,
      remedy: `${place.id}: its fasteners are overloaded at ${F.joint.id}: closer spacing, another row, or thicker fasteners.${deck}`,
    },
    rec,
  );
}
