/** First set of forces under scissor trusses: one bearing free to slide. How far do the bearings move apart? */
import type { TrussEffects } from '../../analysis/index.js';
import type { Combination } from '../../loads/model.js';
import type { Check, CheckContext } from '../contract.js';
import { measured, notEvaluated } from '../finding.js';
import { sumText } from '../members/scan.js';
import { isScissor, ofMark, trussMarks } from './subjects.js';

const CLAUSE = 'ANSI/TPI 1 (recalled)';
/** Where the building's designer states none: 1.25 in under total load, as ANSI/TPI 1 is recalled. Confirm. */
export const SPREAD_LIMIT = 1.25;
/** Creep factor on lasting load, seasoned lumber in dry service (NDS 2018 3.5.2); trusses are dry lumber. */
const CREEP = 1.5;

/** Words for the bearing that slides. */
const WHERE: Readonly<Record<number, string>> = { 0: 'its left bearing', 1: 'its right bearing' };

interface Worst {
  readonly on: TrussEffects;
  readonly combination: Combination;
  readonly spread: number;
}

/** Greatest opening of a mark, inches; a closing counts as its size. */
function worstSpread(ctx: CheckContext, mark: string): Worst | undefined {
  let worst: Worst | undefined;
  for (const on of ofMark(ctx, mark)) {
    for (const combination of ctx.loads.combinations) {
      let spread = 0;
      for (const t of combination.terms) spread += factorOf(ctx, t) * on.spread[t.case]!;
      if (!worst || Math.abs(spread) > Math.abs(worst.spread)) worst = { on, combination, spread };
    }
  }
  return worst;
}

const factorOf = (ctx: CheckContext, t: Combination['terms'][number]): number =>
  t.factor * (ctx.loads.cases[t.case]?.kind === 'D' ? CREEP : 1);

export const scissorSpread: Check = {
  id: 'scissor-spread',
  title: 'Scissor truss: bearings moving apart',
  subjects: (ctx) => trussMarks(ctx, isScissor),
  run(subject, ctx, rec) {
    const worst = worstSpread(ctx, subject.id);
    if (!worst) return notEvaluated(CLAUSE, 'no load combination was found for this truss');
    const { on, combination, spread } = worst;
    const framing = ctx.project.cover.roofs.find((r) => r.mark === on.member.roof)?.framing;
    const given = framing && 'spreadLimit' in framing ? framing.spreadLimit : undefined;
    const limit = given ?? SPREAD_LIMIT;
    const { spread: flexibility } = on.model.push;
    rec?.heading(`${subject.id}: preliminary layout (${on.model.layout.pattern}), one bearing free to slide`);
    rec?.step({
      symbol: 'f',
      meaning: 'opening under 1000 lb of outward push at each bearing',
      formula: 'plane frame of the layout, chords continuous, webs pinned, no plate slip',
      substituted: on.member.section.label,
      value: 1000 * flexibility,
      unit: 'in',
      clause: 'statics',
      note: 'lumber and webs are assumed; the truss plant’s engineer decides',
    });
    rec?.step({
      symbol: 'Δ',
      meaning: 'opening between the bearings, dead load with its creep, from the plane frame of the preliminary layout',
      formula: `${combination.label}, dead load · ${CREEP}`,
      substituted: sumText(
        ctx,
        { ...combination, terms: combination.terms.map((t) => ({ case: t.case, factor: factorOf(ctx, t) })) },
        (c) => on.spread[c]!,
      ),
      value: spread,
      unit: 'in',
      clause: 'NDS 2018 3.5.2',
      from: [on.member.path],
    });
    return measured(
      {
        demand: Math.abs(spread),
        capacity: limit,
        unit: 'in',
        combination: combination.id,
        clause: given === undefined ? CLAUSE : 'project file',
        formula: 'Δ / limit',
        note: `Preliminary: with one bearing free the bearings of ${subject.id} move ${Math.abs(spread).toFixed(2)} in apart; the connector at ${WHERE[on.member.truss?.slides ?? -1] ?? 'one side'} must let them.`,
        remedy: `The bearings of ${subject.id} would move ${Math.abs(spread).toFixed(2)} in apart: make the roof steeper or the bottom chord flatter, use deeper chords, or tie the beams together with ties designed by a licensed professional.`,
      },
      rec,
    );
  },
};
