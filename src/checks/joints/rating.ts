/**
 * A joint product against the forces of one mark's joints. The published allowable load holds for one load duration,
 * one wood and one piece; it is taken times the pieces, lowered for longer loads and never raised.
 */

import type { Recorder } from '../../base/trace.js';
import type { Vec3 } from '../../base/vec.js';
import type { JointProduct } from '../../project/model.js';
import { footingOf, jointMarks, jointsOf, memberOf } from '../../structure/lookup.js';
import type { Joint } from '../../structure/model.js';
import { say } from '../codes/say.js';
import type { CheckContext } from '../contract.js';
import { RATIO_CAP, ratioOf } from '../finding.js';
import { type Raise, raised } from '../hand.js';
import { type Action, type Cause, eachAction } from './actions.js';
import { bearsOnWood } from './bearing.js';
import { type Demand, TRACE } from './demands.js';
import { forceParts } from './force-parts.js';
import { houseMisfit, type Misfit } from './house-side.js';
import { productFor } from './serving.js';

export type Way = 'down' | 'up' | 'along' | 'across';

/** Words of a direction, as notes and traces use them. */
export const WAY: Readonly<Record<Way, string>> = {
  down: 'down',
  up: 'up',
  along: 'along the house wall',
  across: 'square to the house wall',
};

const AXIS: Readonly<Record<Way, keyof Vec3>> = { down: 'z', up: 'z', along: 'x', across: 'y' };

const SYMBOL: Readonly<Record<Way, string>> = { down: 'd', up: 'u', along: 'x', across: 'y' };

/** How a joint lies in plan: 0 along the house wall, 1 square to it, undefined when turned out of both. */
function lies(ctx: CheckContext, joint: Joint): 0 | 1 | undefined {
  const m = memberOf(ctx.structure, joint.ties[0]?.part ?? '');
  if (!m) return undefined;
  const x = Math.abs(m.end.x - m.start.x);
  const y = Math.abs(m.end.y - m.start.y);
  // A post has no direction in plan; its depth has.
  const [a, b] = Math.max(x, y) > 1e-6 * m.length ? [x, y] : [Math.abs(m.up.x), Math.abs(m.up.y)];
  if (b < 1e-3 * a) return 0;
  if (a < 1e-3 * b) return 1;
  return undefined;
}

export type Lie = 'alike' | 'both-ways' | 'turned';

/** Whether the sideways ratings, which are in house axes, mean the same at every joint the row serves. */
export function lieOf(ctx: CheckContext, product: JointProduct): Lie {
  let first: 0 | 1 | undefined;
  let lie: Lie = 'alike';
  for (const [mark, joints] of jointMarks(ctx.structure)) {
    if (productFor(ctx.project.choices, mark, joints[0]!.kind) !== product) continue;
    for (const joint of joints) {
      const way = lies(ctx, joint);
      if (way === undefined) return 'turned';
      first ??= way;
      if (way !== first) lie = 'both-ways';
    }
  }
  return lie;
}

/** Allowable load of all pieces at the published duration, lb; undefined when not rated. */
export function ratings(product: JointProduct, lie: Lie): Readonly<Record<Way, number | undefined>> {
  const all = (one: number | undefined): number | undefined => (one === undefined ? undefined : one * product.count);
  let { along, across } = product;
  if (lie !== 'alike') {
    const less = along === undefined || across === undefined ? undefined : Math.min(along, across);
    along = less;
    across = less;
  }
  return { down: all(product.down), up: all(product.up), along: all(along), across: all(across) };
}

/** Part of the published load left under a combination: CD / published CD, never over 1 (NDS 2018 11.3.2, section number recalled). */
export const durationPart = (CD: number, published: number): number => Math.min(1, CD / published);

interface Share {
  readonly way: Way;
  readonly P: number;
  /** Allowable under this combination; undefined when the product is not rated this way. */
  readonly allowed: number | undefined;
  readonly ratio: number;
}

export interface Worst {
  readonly joint: Joint;
  readonly combination: Cause;
  readonly part: number;
  readonly raise: Raise;
  /** Force as analysed, before raising to hand statics. */
  readonly vertical: number;
  readonly shares: readonly Share[];
  readonly ratio: number;
}

/** What a product allows at one joint under one combination, and what is asked of it. */
interface Case {
  readonly rated: Readonly<Record<Way, number | undefined>>;
  readonly published: number;
  readonly onWood: boolean;
}

const WAYS_UP = ['up', 'along', 'across'] as const;
const WAYS_DOWN = ['down', 'along', 'across'] as const;

const forceIn = (way: Way, x: number, y: number, z: number, raise: Raise): number =>
  way === 'along' ? Math.abs(x) : way === 'across' ? Math.abs(y) : Math.abs(z) * raise.factor;

/** Neither asked of a product that is not rated this way: rounding, and what wood takes by bearing. */
const spared = ({ rated, onWood }: Case, way: Way, P: number): boolean =>
  rated[way] === undefined && (P < TRACE || (way === 'down' && onWood));

/** Sum of ratios and of forces at one joint under one combination. Hot: every joint, every combination. */
function addUse(
  CD: number,
  x: number,
  y: number,
  z: number,
  raise: Raise,
  c: Case,
  out: { ratio: number; total: number },
): void {
  const part = durationPart(CD, c.published);
  let ratio = 0;
  let total = 0;
  for (const way of z < 0 ? WAYS_DOWN : WAYS_UP) {
    const P = forceIn(way, x, y, z, raise);
    if (spared(c, way, P)) continue;
    const rating = c.rated[way];
    ratio += ratioOf(P, rating === undefined ? 0 : rating * part);
    total += P;
  }
  out.ratio = Math.min(ratio, RATIO_CAP);
  out.total = total;
}

/** The same with each direction by itself. */
function sharesOf(action: Action, c: Case): Worst {
  const { joint, combination, raise, x, y, z } = action;
  const part = durationPart(combination.CD, c.published);
  const shares: Share[] = [];
  for (const way of z < 0 ? WAYS_DOWN : WAYS_UP) {
    const P = forceIn(way, x, y, z, raise);
    if (spared(c, way, P)) continue;
    const rating = c.rated[way];
    const allowed = rating === undefined ? undefined : rating * part;
    shares.push({ way, P, allowed, ratio: ratioOf(P, allowed ?? 0) });
  }
  const use = { ratio: 0, total: 0 };
  addUse(combination.CD, x, y, z, raise, c, use);
  return { joint, combination, part, raise, vertical: Math.abs(z), shares, ratio: use.ratio };
}

/** The joint and combination that ask most of the product; undefined when a joint's forces are not known. */
export function worstOf(ctx: CheckContext, mark: string, product: JointProduct, lie: Lie): Worst | undefined {
  const rated = ratings(product, lie);
  const use = { ratio: 0, total: 0 };
  const most = { ratio: 0, total: 0 };
  let worst: { readonly action: Action; readonly at: Case } | undefined;
  let last: Joint | undefined;
  let at: Case = { rated, published: product.duration, onWood: false };
  const known = eachAction(ctx, mark, (joint, combination, x, y, z, raise) => {
    if (joint !== last) {
      last = joint;
      at = { rated, published: product.duration, onWood: bearsOnWood(ctx.structure, joint) };
    }
    addUse(combination.CD, x, y, z, raise, at, use);
    // Where no rating exists every ratio is capped: the larger force is the one to name.
    if (worst && use.ratio < most.ratio) return;
    if (worst && use.ratio === most.ratio && use.total <= most.total) return;
    worst = { action: { joint, combination, x, y, z, raise }, at };
    most.ratio = use.ratio;
    most.total = use.total;
  });
  return known && worst ? sharesOf(worst.action, worst.at) : undefined;
}

/** Steps of the worst joint: force, allowable load and their ratio each way; `byBearing` is what the product is spared. */
export function recordWorst(
  ctx: CheckContext,
  worst: Worst,
  product: JointProduct,
  lie: Lie,
  byBearing: Demand | undefined,
  rec: Recorder | undefined,
): void {
  if (!rec) return;
  const { joint, combination, part } = worst;
  const rated = ratings(product, lie);
  rec.heading(`${joint.id}, ${combination.id}: ${product.count} × ${product.product}`);
  rec.step({
    symbol: 'k',
    meaning: 'part of the published load that may be used at this load duration',
    formula: 'min(1, CD / CD published)',
    substituted: `min(1, ${say(combination.CD)} / ${say(product.duration)})`,
    value: part,
    unit: '',
    clause: 'NDS 2018 11.3.2',
    from: [`${product.path}/duration`],
    note: 'section recalled; never raised above the published load; steel or concrete may govern it, so lowering all of it is cautious',
  });
  for (const s of worst.shares) {
    const i = SYMBOL[s.way];
    const steep = s.way === 'down' || s.way === 'up';
    const P = steep ? worst.vertical : s.P;
    const parts = forceParts(ctx, joint.id, combination.id, P, (f) => f[AXIS[s.way]]);
    rec.step({
      symbol: `P${i}`,
      meaning: `force ${WAY[s.way]} at ${joint.id}${parts && ', from the frame'}`,
      formula: 'sum of factored cases',
      substituted: parts || combination.id,
      value: P,
      unit: 'lb',
      clause: combination.clause,
      from: [joint.path],
    });
    if (steep) raised(worst.vertical, `P${i}`, 'lb', worst.raise, rec);
    const both = (s.way === 'along' || s.way === 'across') && lie === 'both-ways';
    rec.step({
      symbol: `P${i},allow`,
      meaning: `allowable load ${WAY[s.way]}${s.allowed === undefined ? ': not rated' : ''}`,
      formula: 'published · pieces · k',
      substituted:
        s.allowed === undefined ? 'none' : `${say(rated[s.way]! / product.count)} · ${product.count} · ${say(part)}`,
      value: s.allowed ?? 0,
      unit: 'lb',
      clause: product.source,
      from: [`${product.path}/${s.way}`, `${product.path}/count`],
      ...(both ? { note: 'joints of this row lie both ways in plan: the lesser sideways load is used for both' } : {}),
    });
  }
  if (byBearing) {
    rec.step({
      symbol: 'Pd',
      meaning: `force down at ${byBearing.joint}, not counted on the product: wood bears on wood, see the bearing check`,
      formula: 'by bearing',
      substituted: byBearing.combination,
      value: byBearing.value,
      unit: 'lb',
      clause: 'NDS 2018 3.10.2',
      from: [`${product.path}/down`],
    });
  }
  rec.step({
    symbol: 'sum',
    meaning: 'forces that act together, as the sum of their ratios',
    formula: worst.shares.map((s) => `P${SYMBOL[s.way]}/P${SYMBOL[s.way]},allow`).join(' + ') || '0',
    substituted: worst.shares.map((s) => say(s.ratio)).join(' + ') || '0',
    value: worst.ratio,
    unit: '',
    clause: 'common practice, no source',
    note: 'linear interaction; follow the source of the ratings where it asks for more',
  });
}

/** What keeps the table from applying to this mark's wood, moisture or concrete; undefined when it does apply. */
export function misfit(ctx: CheckContext, mark: string, product: JointProduct): Misfit | undefined {
  for (const joint of jointsOf(ctx.structure, mark)) {
    for (const { part } of joint.ties) {
      const wood = memberOf(ctx.structure, part)?.section;
      if (wood) {
        if (wood.values.G < product.G - 1e-9) {
          const note = `The published loads are for wood of specific gravity ${product.G} (${product.species}); ${part} is ${wood.species} with ${wood.values.G}: take the column for that wood.`;
          return { status: 'outside-scope', note };
        }
        if (wood.wet && product.service !== 'wet') {
          const note = `The published loads are for dry wood; ${part} is wet in service (NDS 2018 11.3.3): take loads published for wet service, or ask a licensed professional.`;
          return { status: 'outside-scope', note };
        }
        continue;
      }
      const footing = footingOf(ctx.structure, part);
      if (!footing) {
        const at = houseMisfit(ctx, joint, part, product);
        if (at) return at;
        continue;
      }
      if (product.concrete === undefined) {
        const note = `This joint stands on concrete; enter under "concrete" the strength the published loads are for.`;
        return { status: 'not-evaluated', note };
      }
      if (footing.fc < product.concrete - 0.5) {
        const note = `The published loads are for concrete of ${Math.round(product.concrete)} psi; ${footing.mark} has ${Math.round(footing.fc)} psi.`;
        return { status: 'outside-scope', note };
      }
    }
  }
  return undefined;
}
