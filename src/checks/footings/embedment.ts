/** Depth of piers and posts that the soil beside them holds against side force and moment. IBC 2018 1807.3. */
import {
  BACKFILL_OVERSIZE,
  BACKFILL_SAND_LAYER,
  BACKFILL_STRENGTH,
  castRoom,
  freePostDepth,
  heldPostDepth,
} from '../codes/ibc-2018/index.js';
import type { Check, CheckContext, Finding } from '../contract.js';
import { failed, measured, notApplicable, outsideScope } from '../finding.js';
import { noForces } from '../members/subjects.js';
import { recordActions } from './actions.js';
import { footingSubjects, type LoadedFooting, loadedFootings } from './footing.js';
import { atGrade, poleFactor, type Sideways, sidewaysOf } from './sideways.js';

const CLAUSE = 'IBC 2018 1807.3';

/** What 1807.3.3 asks of the hole, whatever the load. */
function backfillFault({ footing }: LoadedFooting): Finding | undefined {
  const e = footing.embedded;
  if (!e?.cast) return undefined;
  const clause = 'IBC 2018 1807.3.3 (recalled)';
  if (castRoom(footing.size, e.diagonal) < BACKFILL_OVERSIZE)
    return failed(
      clause,
      `The hole of ${footing.id} is ${(footing.size - e.diagonal).toFixed(1)} in wider than the post's diagonal where concrete backfill needs ${BACKFILL_OVERSIZE} in: drill it wider.`,
    );
  if (footing.fc < BACKFILL_STRENGTH)
    return failed(clause, `The concrete round ${footing.id} must have ${BACKFILL_STRENGTH} psi or more.`);
  return undefined;
}

const BRITTLE = /plaster|stucco|gypsum|drywall/i;
const brittle = (ctx: CheckContext): boolean =>
  ctx.project.cover.roofs.some((r) => BRITTLE.test(r.finish.ceiling) || BRITTLE.test(r.finish.covering));

const placing = ({ footing }: LoadedFooting): string =>
  footing.embedded && !footing.embedded.cast
    ? ` Backfill in layers of ${BACKFILL_SAND_LAYER} in at most, tamped (1807.3.3, recalled).`
    : '';

export const embedment: Check = {
  id: 'embedment',
  title: 'Depth against side force and moment',
  subjects: footingSubjects,
  run(subject, ctx, rec) {
    const loaded = loadedFootings(ctx, subject.id);
    if (!loaded) return noForces(CLAUSE);
    let worst: { on: LoadedFooting; side: Sideways } | undefined;
    let base = false;
    for (const on of loaded) {
      const fault = backfillFault(on);
      if (fault) return fault;
      const side = sidewaysOf(ctx, on);
      base ||= side.by === 'base';
      if (side.by === 'soil' && (!worst || side.needs / side.depth > worst.side.needs / worst.side.depth))
        worst = { on, side };
    }
    if (!worst?.side.governs)
      return notApplicable(
        CLAUSE,
        base
          ? 'the base takes side force and moment, see overturning and sliding'
          : 'nothing pushes this footing sideways',
      );
    if (brittle(ctx))
      return outsideScope(
        'IBC 2018 1807.3.1',
        'Posts held by the soil alone may not support plaster, stucco or other brittle finishes sideways; a licensed professional must answer.',
      );
    const { on, side } = worst;
    const { footing } = on;
    const a = side.governs!;
    const post = atGrade(ctx, on, a);
    const { lateral, halfInchMotion } = ctx.project.basis.soil;
    rec?.heading(
      `${footing.id}: ${post.b.toFixed(1)} in wide, ${side.depth.toFixed(1)} in in the ground, ${a.combination.id}`,
    );
    recordActions(ctx, on, a, rec);
    rec?.step({
      symbol: 'V',
      meaning: 'side force, both axes together: P of Eq. 18-1',
      formula: '√(Vx² + Vy²)',
      substituted: `√(${Math.abs(a.Vx).toFixed(1)}² + ${Math.abs(a.Vy).toFixed(1)}²)`,
      value: post.P,
      unit: 'lb',
      clause: 'statics',
    });
    rec?.step({
      symbol: 'Mg',
      meaning: 'moment at the ground surface, d above the underside',
      formula: '√((Mx + d·Vy)² + (My − d·Vx)²)',
      substituted: `√((${a.Mx.toFixed(0)} + ${side.depth.toFixed(1)} · ${a.Vy.toFixed(2)})² + (${a.My.toFixed(0)} − ${side.depth.toFixed(1)} · ${a.Vx.toFixed(2)})²)`,
      value: post.Mg,
      unit: 'lb·in',
      clause: 'statics',
    });
    const factor = poleFactor(ctx, footing, a);
    rec?.step({
      symbol: 'S',
      meaning:
        factor === 1
          ? 'allowable lateral bearing per foot'
          : 'allowable lateral bearing per foot, doubled for 1/2 in of motion',
      formula: 'given · factor',
      substituted: `${lateral.value} (${lateral.from}) · ${factor}${factor === 1 ? '' : ` (${halfInchMotion?.from ?? ''})`}`,
      value: post.lateral,
      unit: 'psf/ft',
      clause: factor === 1 ? 'IBC 2018 Table 1806.2' : 'IBC 2018 1806.3.4',
      from: [lateral.path],
    });
    const needs = side.held ? heldPostDepth(post, rec) : freePostDepth(post, side.depth, rec);
    // Soil pressure grows with the square of the depth below a post that turns about the slab: Mg = p·b·d²/4, sum p·b·d/3.
    const onSlab = side.held ? post.P + (4 * post.Mg) / (3 * side.depth) : 0;
    if (side.held)
      rec?.step({
        symbol: 'Rs',
        meaning: 'force the slab must take at the surface, soil pressure growing with the square of the depth',
        formula: 'V + 4·Mg/(3·d), d the depth there is',
        substituted: `${post.P.toFixed(0)} + 4 · ${post.Mg.toFixed(0)}/(3 · ${side.depth.toFixed(1)})`,
        value: onSlab,
        unit: 'lb',
        clause: 'statics',
      });
    const wants =
      footing.slabHolds && !side.held
        ? ' No slab of this project lies all round it: taken as free at the surface.'
        : '';
    return measured(
      {
        demand: needs,
        capacity: side.depth,
        unit: 'in',
        combination: a.combination.id,
        clause: side.held ? 'IBC 2018 1807.3.2.2' : 'IBC 2018 1807.3.2.1',
        formula: 'depth asked for / depth',
        note: `${side.held ? `Held at the surface by the slab as the owner states, which must take ${Math.ceil(onSlab)} lb there. ` : ''}Only where nothing brittle leans on it (1807.3.1).${wants}${placing(on)}`,
        remedy: `${footing.id} is ${side.depth.toFixed(0)} in in the ground where ${needs.toFixed(0)} in is asked for: go deeper, make it wider, or brace the posts.${wants}`,
      },
      rec,
    );
  },
};
