/** Fasteners of a tie between roof and house wall: side load along the wall, pull out of it, both together (NDS 12.4). */
import type { Recorder } from '../../base/trace.js';
import type { Combination } from '../../loads/model.js';
import type { HouseTie } from '../../project/model.js';
import { combinedLateralWithdrawal } from '../codes/nds-2018/index.js';
import { say } from '../codes/say.js';
import type { CheckContext, Finding } from '../contract.js';
import { failed, measured, notApplicable, notEvaluated, ratioOf } from '../finding.js';
import { sumText } from '../members/scan.js';
import { once } from './once.js';
import { caseSums, type HouseTieDemand, houseTieDemands, roofSides, sideOf } from './side-loads.js';
import { type TieJoint, type TieValues, tieJoint, tieValues } from './tie-fastener.js';

const CLAUSE = 'NDS 2018 12.4';

/** Height of the line above finished floor: as given, else the lowest bearing of the roof's framing. */
export function tieLevel(ctx: Pick<CheckContext, 'structure'>, t: HouseTie): number {
  if (t.level !== undefined) return t.level;
  const ids = new Set(ctx.structure.members.filter((m) => m.roof === t.roof).map((m) => m.id));
  let least = Number.POSITIVE_INFINITY;
  for (const j of ctx.structure.joints) {
    if (ids.has(j.ties[0]?.part ?? '') && j.kind !== 'fascia-to-framing') least = Math.min(least, j.at.z);
  }
  return Number.isFinite(least) ? least : 0;
}

interface Share {
  readonly combination: Combination;
  /** On one fastener: along the wall, pull out of it, lb. */
  readonly along: number;
  readonly pull: number;
  readonly capacity: number;
  readonly ratio: number;
  readonly k: number;
}

/** Farthest place from the middle and Σ of squared distances of all places, inches. */
function spreadOf(places: number, spacing: number): { readonly reach: number; readonly squares: number } {
  const reach = ((places - 1) * spacing) / 2;
  return { reach, squares: (spacing * spacing * places * (places * places - 1)) / 12 };
}

function capacityOf(t: HouseTie, v: TieValues, CD: number, along: number, pull: number, rec?: Recorder): number {
  const Z = v.lateral * CD;
  const Wp = v.pull * CD;
  if (pull <= 0) return Z;
  return combinedLateralWithdrawal(
    t.fastener.kind === 'lag' ? 'lag' : 'wood-screw',
    Wp,
    Z,
    Math.atan2(pull, along),
    rec,
  );
}

function worstShare(ctx: CheckContext, t: HouseTie, d: HouseTieDemand, j: TieJoint, v: TieValues): Share | undefined {
  const { reach, squares } = spreadOf(j.places, t.fastener.spacing);
  const each = j.places * t.fastener.rows;
  let worst: Share | undefined;
  ctx.loads.combinations.forEach((combination, k) => {
    const along = Math.abs(d.along[k]!) / each;
    const turn = squares > 0 ? (Math.abs(d.couple[k]!) * reach) / squares / t.fastener.rows : 0;
    const pull = Math.max(0, d.square[k]! / each + turn);
    const capacity = capacityOf(t, v, combination.CD, along, pull);
    const ratio = ratioOf(Math.hypot(along, pull), capacity);
    if (!worst || ratio > worst.ratio) worst = { combination, along, pull, capacity, ratio, k };
  });
  return worst;
}

/** The demands of a tie case by case, for the trace: the roof's line loads over the length of the tie. */
function perCase(ctx: CheckContext, t: HouseTie, d: HouseTieDemand) {
  const side = sideOf(ctx, t.roof);
  const line = side?.line;
  if (!side || !line) return { along: () => 0, square: () => 0, couple: () => 0 };
  const sums = caseSums([...side.points, ...side.direct], ctx.loads.cases.length, line.centre, line.y);
  const L = d.to - d.from;
  const off = (d.from + d.to) / 2 - line.centre;
  return {
    along: (c: number) => (sums.along[c]! * L) / line.length,
    square: (c: number) => (sums.square[c]! * L) / line.length - (sums.couple[c]! / line.second) * off * L,
    couple: (c: number) => ((sums.couple[c]! / line.second) * L ** 3) / 12,
  };
}

function record(ctx: CheckContext, d: HouseTieDemand, t: HouseTie, j: TieJoint, w: Share, rec?: Recorder): void {
  if (!rec) return;
  const { reach, squares } = spreadOf(j.places, t.fastener.spacing);
  const rows = t.fastener.rows;
  const step = (symbol: string, meaning: string, formula: string, substituted: string, value: number, unit: string) =>
    rec.step({ symbol, meaning, formula, substituted, value, unit, clause: 'statics', from: [t.path] });
  const { label } = w.combination;
  const share = perCase(ctx, t, d);
  const sum = (of: (c: number) => number): string => sumText(ctx, w.combination, of);
  step('Vx', `side load along the wall, part of ${t.mark}`, label, sum(share.along), d.along[w.k]!, 'lb');
  step('Vy', 'pull out of the wall (negative pushes)', label, sum(share.square), d.square[w.k]!, 'lb');
  step('M', 'couple about the middle of the tie', label, sum(share.couple), d.couple[w.k]!, 'lb·in');
  step(
    'N',
    `places at ${t.fastener.spacing} in, ${rows} at each`,
    'whole spacings in (to − from), + 1',
    `${say(t.to - t.from)} / ${say(t.fastener.spacing)} = ${say((t.to - t.from) / t.fastener.spacing)}, whole ${j.places - 1}, + 1`,
    j.places,
    '',
  );
  step(
    'V1',
    'on one fastener along the wall',
    'Vx / (N·rows)',
    `${Math.abs(d.along[w.k]!).toFixed(0)} / (${j.places}·${rows})`,
    w.along,
    'lb',
  );
  step(
    'P1',
    'greatest pull on one fastener',
    'Vy / (N·rows) + M·c / (Σx²·rows) ≥ 0',
    `${d.square[w.k]!.toFixed(0)} / (${j.places}·${rows}) + ${Math.abs(d.couple[w.k]!).toFixed(0)}·${reach.toFixed(1)} / (${squares.toFixed(0)}·${rows})`,
    w.pull,
    'lb',
  );
}

export const tieText = (t: HouseTie, fastener: string): string =>
  `${t.fastener.rows > 1 ? `(${t.fastener.rows}) ` : ''}${fastener} × ${t.fastener.length} in at ${t.fastener.spacing} in into ${t.into}`;

export const houseTie = once({
  id: 'house-tie',
  title: 'Tie of the roof to the house',
  subjects: (ctx) => {
    const ties = ctx.project.cover.houseTies ?? [];
    return ties.length > 0 ? ties.map((t) => ({ id: t.mark, path: t.path })) : [{ id: 'cover', path: '/cover' }];
  },
  run(subject, ctx, rec): Finding {
    const { lateral } = ctx.project.cover;
    if (lateral.x !== 'house' && lateral.y !== 'house') return notApplicable(CLAUSE, 'the house holds no side load');
    const t = ctx.project.cover.houseTies?.find((x) => x.mark === subject.id);
    if (!t) {
      const loose = roofSides(ctx).filter((s) => !s.line && !s.turned);
      return loose.length === 0
        ? notApplicable(CLAUSE, 'every roof is held along its ledger, which is checked as connection to the house')
        : notEvaluated(
            CLAUSE,
            `What ties ${loose.map((s) => s.roof.mark).join(', ')} to the house is not stated. ${NEEDED}`,
          );
    }
    const roof = ctx.structure.roofs.find((r) => r.mark === t.roof);
    const demand = houseTieDemands(ctx).find((d) => d.mark === t.mark);
    if (!roof || !demand) return notEvaluated(CLAUSE, `The side load that ${t.mark} must take is not known.`);
    const joint = tieJoint(ctx, t, roof, demand.wall, tieLevel(ctx, t));
    if ('finding' in joint) return joint.finding;
    if (!t.verified.value || t.verified.state !== 'given' || t.verified.from === '') {
      return notEvaluated(
        CLAUSE,
        `Nobody is named who has seen the framing of the house behind ${t.mark}. Needed: where it was seen, under cover.houseTies.`,
      );
    }
    if (joint.places < 2)
      return failed(CLAUSE, `${t.mark} has one place only and cannot stop the roof from turning: add fasteners.`);
    rec?.heading(`${t.mark}: ${joint.sideName} to the house, ${tieText(t, joint.fastener.name)}`);
    const v = tieValues(t, joint, rec);
    const worst = worstShare(ctx, t, demand, joint, v);
    if (!worst) return notApplicable(CLAUSE, 'no combination of loads exists');
    record(ctx, demand, t, joint, worst, rec);
    const { CD, id } = worst.combination;
    rec?.step({
      symbol: "Z'",
      meaning: 'along the wall, and pull, with the load duration of this combination',
      formula: "Z' · CD, W'p · CD",
      substituted: `${v.lateral.toFixed(1)}·${CD}, ${v.pull.toFixed(1)}·${CD} = ${(v.pull * CD).toFixed(1)}`,
      value: v.lateral * CD,
      unit: 'lb',
      clause: 'NDS 2018 11.3.2',
    });
    capacityOf(t, v, CD, worst.along, worst.pull, rec);
    return measured(
      {
        demand: Math.hypot(worst.along, worst.pull),
        capacity: worst.capacity,
        unit: 'lb',
        combination: id,
        clause: CLAUSE,
        formula: "√(V1² + P1²) / Zα'",
        note: `${joint.sideName}: ${tieText(t, joint.fastener.name)}.`,
        remedy: `The fasteners of ${t.mark} cannot hold the side load: use more rows, closer spacing, or longer and thicker fasteners.`,
      },
      rec,
    );
  },
});

export const NEEDED = 'Needed: a line of fasteners under cover.houseTies, or a ledger.';
