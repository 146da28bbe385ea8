/** Pressure on the soil under the allowable-stress combinations, the footing's own net weight included. IBC 2018 1806. */
import type { Recorder } from '../../base/trace.js';
import type { Check, CheckContext } from '../contract.js';
import { measured, notApplicable, RATIO_CAP } from '../finding.js';
import { raised, raiseToStatics } from '../hand.js';
import { sumText } from '../members/scan.js';
import { noForces } from '../members/subjects.js';
import { type Actions, actionsUnder, recordActions } from './actions.js';
import { contactUnder, evenPressure } from './contact.js';
import { footingSubjects, footingWeights, type LoadedFooting, loadedFootings, recordWeights } from './footing.js';
import { recordCentral, sidewaysOf } from './sideways.js';

const CLAUSE = 'IBC 2018 1806.1';

interface Worst {
  readonly on: LoadedFooting;
  readonly a: Actions;
  readonly q: number;
  readonly tips: boolean;
}

/** Pressure under one combination beyond what the ground carried before. `tips` where the resultant leaves the base. */
function under(ctx: CheckContext, on: LoadedFooting, a: Actions, rec?: Recorder): { q: number; tips: boolean } {
  const w = footingWeights(ctx, on.footing);
  if (sidewaysOf(ctx, on).by !== 'base') {
    rec?.step({
      symbol: 'Wnet',
      meaning: 'weight of the concrete less the soil it displaces',
      formula: 'Wc − Wd',
      substituted: `${w.concrete.toFixed(0)} − ${(w.concrete - w.net).toFixed(0)}`,
      value: w.net,
      unit: 'lb',
      clause: 'common practice, no source',
      from: [on.footing.path, '/basis/soil/density'],
    });
    // A footing that is lifted presses on nothing; uplift is another check.
    return a.P + w.net <= 0 ? { q: 0, tips: false } : { q: evenPressure(on, a.P + w.net, rec), tips: false };
  }
  const c = contactUnder(on, a, w, rec);
  if (c.q === undefined) return { q: 0, tips: c.N > 0 };
  const before = ((a.dead * (w.concrete - w.net + w.soilOver)) / on.footing.bearingArea) * 144;
  rec?.step({
    symbol: 'q',
    meaning: 'less the weight of soil that lay there before (displaced by concrete, and over the pad)',
    formula: 'qmax − γ·(Wd + Ws)/A · 144',
    substituted: `${c.q.toFixed(0)} − ${a.dead} · (${(w.concrete - w.net).toFixed(0)} + ${w.soilOver.toFixed(0)})/${on.footing.bearingArea.toFixed(0)} · 144`,
    value: c.q - before,
    unit: 'psf',
    clause: 'common practice, no source',
    from: ['/basis/soil/density'],
  });
  return { q: c.q - before, tips: false };
}

export const soilBearing: Check = {
  id: 'soil-bearing',
  title: 'Soil pressure',
  subjects: footingSubjects,
  run(subject, ctx, rec) {
    const loaded = loadedFootings(ctx, subject.id);
    if (!loaded) return noForces(CLAUSE);
    if (loaded.some(({ footing }) => footing.onSlab))
      return notApplicable(CLAUSE, 'no footing: the slab carries the post by rule, see the slab check');
    let worst: Worst | undefined;
    for (const on of loaded) {
      for (const a of actionsUnder(ctx, on, ctx.loads.combinations)) {
        const { q, tips } = under(ctx, on, a);
        if ((tips && !worst?.tips) || (!worst?.tips && q > (worst?.q ?? 0))) worst = { on, a, q, tips };
      }
    }
    if (!worst) return notApplicable(CLAUSE, 'no combination presses on this footing');
    const { on, a } = worst;
    const { footing } = on;
    const { combination } = a;
    const { bearing } = ctx.project.basis.soil;
    rec?.heading(`${footing.id}: ${footing.size} in ${footing.round ? 'round' : 'square'}, ${combination.id}`);
    if (sidewaysOf(ctx, on).by !== 'nothing') recordActions(ctx, on, a, rec);
    else
      rec?.step({
        symbol: 'P',
        meaning: 'load from the post',
        formula: combination.label,
        substituted: sumText(ctx, combination, (c) => on.forces.force[c]!.z),
        value: a.P,
        unit: 'lb',
        clause: combination.clause,
        from: [footing.path],
      });
    recordCentral(ctx, on, rec);
    recordWeights(ctx, footing, rec);
    const p = under(ctx, on, a, rec);
    const raise = raiseToStatics(ctx, (about) => about.startsWith(`${footing.id} under `));
    const q = raised(p.q, 'qmax', 'psf', raise, rec);
    rec?.step({
      symbol: 'qa',
      meaning: 'allowable soil bearing',
      formula: 'given',
      substituted: bearing.from,
      value: bearing.value,
      unit: 'psf',
      clause: 'IBC 2018 Table 1806.2',
      from: [bearing.path],
    });
    return measured(
      {
        demand: q,
        capacity: bearing.value,
        unit: 'psf',
        combination: combination.id,
        clause: CLAUSE,
        formula: 'qmax / qa',
        ...(worst.tips ? { ratio: RATIO_CAP, mustFail: true } : {}),
        remedy: worst.tips
          ? `${footing.id} would tip over: make its base wider.`
          : `${footing.id} presses too hard on the soil: make its base wider.`,
      },
      rec,
    );
  },
};
