/** Each joint needs a product with a published allowable load, or a calculated connection; a named product is compared. */

import type { Recorder } from '../../base/trace.js';
import type { JointProduct, LateralSystem } from '../../project/model.js';
import { JOINT_WORDS } from '../../structure/joint-words.js';
import { memberOf } from '../../structure/lookup.js';
import type { Check, CheckContext, Finding } from '../contract.js';
import { failed, type Measured, measured, notApplicable, notEvaluated, outsideScope } from '../finding.js';
import { calculatedAtHouse } from '../house/calculated.js';
import { assessConnection } from './connections/assess.js';
import { type Demand, demandText, type JointDemand, jointDemand } from './demands.js';
import { forceParts } from './force-parts.js';
import { JOINT_TRAITS } from './kinds.js';
import { lieOf, misfit, recordWorst, WAY, worstOf } from './rating.js';
import { servedBy } from './serving.js';

const CLAUSE = 'NDS 2018 chapter 11';

/** Whether the word names something that holds the cover sideways. */
const RESISTS: Readonly<Record<LateralSystem, boolean>> = {
  house: true,
  'knee-braces': true,
  'fixed-posts': true,
  none: false,
  unknown: false,
};

function record(
  ctx: CheckContext,
  symbol: string,
  meaning: string,
  axis: 'x' | 'y' | 'z',
  d: Demand,
  path: string,
  rec?: Recorder,
): void {
  if (!rec) return;
  const parts = forceParts(ctx, d.joint, d.combination, d.value, (f) => f[axis]);
  rec.step({
    symbol,
    meaning: d.value > 0 ? meaning : `${meaning}: none under any combination`,
    formula: 'largest over the joints of this mark',
    substituted: d.value > 0 ? `${d.joint}, ${d.combination}${parts && `, from the frame: ${parts}`}` : 'none',
    value: d.value,
    unit: 'lb',
    clause: 'ASCE 7-16 2.4',
    from: [path],
  });
}

/**
 * Directions whose side load the joint forces do not hold yet. They hold it down to where the beam is kept from moving
 * sideways, so an axis is complete once a real system is named for it; whether that system holds is its own check's
 * question. Where none is named, nothing is known of the path and the axis stays open.
 */
export function openSides(ctx: CheckContext): readonly ('along' | 'across')[] {
  const { lateral } = ctx.project.cover;
  const axes = [
    ['along', lateral.x],
    ['across', lateral.y],
  ] as const;
  return axes.flatMap(([way, system]) => (RESISTS[system] ? [] : [way]));
}

const pendingText = (open: readonly ('along' | 'across')[]): string =>
  open.length > 0
    ? ` Side load not included yet: ${open.map((w) => WAY[w]).join(' and ')}, name under "lateral" what holds it.`
    : '';

/** A named product against one mark; `open` lists the directions whose side load is still missing. */
export function assessProduct(
  ctx: CheckContext,
  d: JointDemand,
  product: JointProduct,
  open: readonly ('along' | 'across')[],
  rec?: Recorder,
): Finding {
  const pending = pendingText(open);
  const lie = lieOf(ctx, product);
  if (lie === 'turned') {
    return outsideScope(
      CLAUSE,
      `Joints served by ${product.product} are turned out of the house axes; a licensed professional must compare them.${pending}`,
    );
  }
  const worst = d.known ? worstOf(ctx, d.mark, product, lie) : undefined;
  if (!worst) {
    return notEvaluated(CLAUSE, `Forces of this joint are not all known, see the frame check.${pending}`);
  }
  // A joint without wood under it would want a rating, and fail below for lack of one.
  const byBearing =
    product.down === undefined && d.down.value > 0 && !worst.shares.some((s) => s.way === 'down') ? d.down : undefined;
  recordWorst(ctx, worst, product, lie, byBearing, rec);
  const unfit = misfit(ctx, d.mark, product);
  const unrated = worst.shares.filter((s) => s.allowed === undefined);
  const most = [...worst.shares].sort((a, b) => b.ratio - a.ratio)[0];
  const shares = worst.shares
    .map((s) => `${Math.ceil(s.P)} lb ${WAY[s.way]}${s.allowed === undefined ? '' : ` of ${Math.floor(s.allowed)}`}`)
    .join(', ');
  const where = `${worst.joint.id} under ${worst.combination.id}`;
  const named = `${product.count} × ${product.product}`;
  const turned =
    lie === 'both-ways' ? ' Joints lie both ways in plan: the lesser sideways rating is used for both.' : '';
  const bearing = byBearing ? ` ${Math.ceil(byBearing.value)} lb down by wood bearing on wood, checked apart.` : '';
  const anchor = product.concrete === undefined ? '' : ' Anchor, edge distance and cover as the source says.';
  const truss = worst.joint.ties.some((t) => memberOf(ctx.structure, t.part)?.truss !== undefined);
  const chord = truss ? ' Truss chord wood is the one in the file: confirm it on the sealed truss drawing.' : '';
  const remedy =
    unrated.length > 0
      ? `${named} has no rating ${unrated.map((s) => WAY[s.way]).join(' or ')}, and ${where} asks for ${shares}.`
      : `${named} is too weak: ${where} asks for ${shares}; forces acting together are added as ratios. Choose one rated higher, or more pieces where its source lets them add.`;
  const measure: Measured = {
    demand: most?.P ?? 0,
    capacity: most?.allowed ?? 0,
    unit: 'lb',
    combination: worst.combination.id,
    clause: CLAUSE,
    formula: 'sum of P / P,allow',
    ratio: worst.ratio,
    mustFail: unrated.length > 0,
    note: `${named}: ${shares || 'nothing asked of it'}.${bearing}${turned}${anchor}${chord} ${product.source}.`,
    remedy: `${remedy}${turned}${pending}`,
  };
  const finding = measured(measure);
  // An answer that is held back must not end its trace with "passes".
  if (finding.status === 'fail' || (!unfit && !pending)) return measured(measure, rec);
  if (unfit) return { ...finding, status: unfit.status, note: unfit.note + pending };
  return { ...finding, status: 'not-evaluated', note: `So far it fits: ${finding.note}${pending}` };
}

/** Rows that serve a mark no joint has: a slip that would leave the joint meant without its product. */
const strays = (ctx: CheckContext) =>
  [...ctx.project.choices.joints, ...ctx.project.choices.connections].flatMap((row) =>
    row.serves
      .filter((name) => /^J\d/.test(name) && !ctx.structure.joints.some((j) => j.mark === name))
      .map((id) => ({ id, path: row.path })),
  );

export const jointProducts: Check = {
  id: 'joint-products',
  title: 'Joint product or calculated connection',
  subjects(ctx) {
    const seen = new Map(ctx.structure.joints.map((j) => [j.mark, j.path]));
    return [...[...seen].map(([id, path]) => ({ id, path })), ...strays(ctx)];
  },
  run(subject, ctx, rec): Finding {
    const d = jointDemand(ctx, subject.id);
    if (!d) {
      return strays(ctx).some((s) => s.id === subject.id)
        ? failed(
            CLAUSE,
            `A product or connection is named for ${subject.id}, and no joint has that mark: see the joint schedule.`,
          )
        : notEvaluated(CLAUSE, 'no joint of this mark was placed');
    }
    const { own } = JOINT_TRAITS[d.kind];
    if (own !== undefined) return notApplicable(CLAUSE, `its fasteners are answered by the check ${own}`);
    if (!JOINT_TRAITS[d.kind].carries) {
      return notApplicable(
        CLAUSE,
        'it holds trim, not the roof: nailed at every tail by the code’s fastening schedule',
      );
    }
    rec?.heading(`${d.mark}: ${d.count} × ${JOINT_WORDS[d.kind]}`);
    record(ctx, 'Pd', 'allowable load needed downward', 'z', d.down, d.path, rec);
    record(ctx, 'Pu', 'allowable load needed upward', 'z', d.up, d.path, rec);
    record(ctx, 'Px', 'allowable load needed along the house wall', 'x', d.alongX, d.path, rec);
    record(ctx, 'Py', 'allowable load needed square to the house wall', 'y', d.alongY, d.path, rec);
    const served = servedBy(ctx.project.choices, d.mark, d.kind);
    if (served?.by === 'product') return assessProduct(ctx, d, served.product, openSides(ctx), rec);
    if (served) return assessConnection(ctx, d, served.connection, pendingText(openSides(ctx)), rec);
    const atHouse = calculatedAtHouse(ctx, d, rec);
    if (atHouse) return atHouse;
    const most = [d.down, d.up, d.alongX, d.alongY].reduce((a, b) => (b.value > a.value ? b : a));
    return {
      ...notEvaluated(CLAUSE, `This joint ${demandText(d)}; no product or calculated connection is named for it yet.`),
      demand: most.value,
      unit: 'lb',
      combination: most.combination,
    };
  },
};
