/** Sheathing between the frames: its span rating against their spacing, and its rated loads against what lies on it. */
import type { Recorder } from '../../base/trace.js';
import type { SheathingPanel } from '../../catalog/index.js';
import { isOutOfScope } from '../../loads/codes/asce7/index.js';
import type { LoadKind } from '../../loads/model.js';
import { findPanel } from '../../structure/layers.js';
import { say } from '../codes/say.js';
import type { Check, CheckContext } from '../contract.js';
import { measured, notEvaluated, outsideScope } from '../finding.js';
import { componentCombinations } from './combinations.js';
import { panelArea, roofOf, roofSubjects } from './roof.js';
import { beyond, componentPressure } from './zone-wind.js';

const CLAUSE = 'IBC 2018 Table 2304.8(3)';

/** Factor by which a panel on a span shorter than its rating carries more than the table: shear grows slowest, as 1/L. */
export const shorterSpan = (panel: SheathingPanel, spacing: number): number =>
  Math.max(1, panel.maxSpanUnsupported / spacing);

/**
 * The live column of the table is a deflection limit (L/240 under live load alone; IBC Table 2304.8(3) footnote, from
 * memory), and deflection as a share of the span falls with its cube. Strength is held by the total load's column.
 */
export const stifferSpan = (panel: SheathingPanel, spacing: number): number => shorterSpan(panel, spacing) ** 3;

interface Lying {
  readonly psf: number;
  /** Width down the slope of the region whose mean this is, inches; absent where the load is even. */
  readonly over?: number;
}

/**
 * Pressure of a case on a roof, psf, the largest on any of its surfaces: what lies on the whole surface and the heaviest
 * of its regions (a drift is cut into strips, each with its mean). Loads on plan are kept whole, which is safe.
 */
function lyingOn(ctx: CheckContext, roof: string, loadCase: number): Lying {
  let most: Lying = { psf: 0 };
  for (const s of ctx.structure.surfaces) {
    if (s.roof !== roof) continue;
    let whole = 0;
    let part = 0;
    let over: number | undefined;
    for (const a of ctx.loads.cases[loadCase]?.areas ?? []) {
      if (a.surface !== s.id) continue;
      if (!a.region) whole += a.psf;
      else if (a.psf > part) {
        part = a.psf;
        const vs = a.region.map((p) => p.y);
        over = Math.max(...vs) - Math.min(...vs);
      }
    }
    if (whole + part > most.psf) most = { psf: whole + part, ...(over === undefined ? {} : { over }) };
  }
  return most;
}

/** `S·drift (mean of its heaviest strip, 12.0 in wide)`. */
const named = (id: string, { over }: Lying): string =>
  over === undefined ? id : `${id}: mean of its heaviest strip, ${over.toFixed(1)} in down the slope`;

const kindOf = (ctx: CheckContext, loadCase: number): LoadKind | undefined => ctx.loads.cases[loadCase]?.kind;

interface Pressing {
  readonly psf: number;
  readonly combination: string;
  readonly clause: string;
  readonly text: string;
}

/** Largest total pressure of the combinations, all taken as acting square to the panel. */
function worstTotal(ctx: CheckContext, roof: string, wind: number): Pressing {
  let worst: Pressing = { psf: 0, combination: '', clause: '', text: '' };
  const consider = (id: string, clause: string, terms: readonly { case: number; factor: number }[], w: number) => {
    let psf = w * wind;
    const parts = w > 0 ? [`${say(w)}·${say(wind)} (W)`] : [];
    for (const t of terms) {
      const p = lyingOn(ctx, roof, t.case);
      psf += t.factor * p.psf;
      parts.unshift(`${say(t.factor)}·${say(p.psf)} (${named(ctx.loads.cases[t.case]?.id ?? '', p)})`);
    }
    if (psf > worst.psf) worst = { psf, combination: id, clause, text: parts.join(' + ') };
  };
  for (const c of ctx.loads.combinations) {
    if (!c.terms.some((t) => kindOf(ctx, t.case) === 'W')) consider(c.id, c.clause, c.terms, 0);
  }
  for (const c of componentCombinations(ctx.loads)) consider(c.id, c.clause, c.terms, c.wind);
  return worst;
}

function ratingSteps(panel: SheathingPanel, spacing: number, path: string, rec?: Recorder): void {
  rec?.step({
    symbol: 'L',
    meaning: `spacing of the framing; ${panel.name} panel ${panel.spanRating} may span ${panel.maxSpanUnsupported} in without edge support`,
    formula: 'as placed',
    substituted: `${say(spacing)} ≤ ${say(panel.maxSpanUnsupported)}`,
    value: spacing,
    unit: 'in',
    clause: CLAUSE,
    from: [`${path}/framing/spacing`, `${path}/finish/sheathing`],
    note: 'panel edge clips are not counted: the project file does not state any',
  });
  rec?.step({
    symbol: 'k',
    meaning: 'gain of the shorter span over the tabulated one',
    formula: 'max(1, Lmax / L)',
    substituted: `${say(panel.maxSpanUnsupported)} / ${say(spacing)}`,
    value: shorterSpan(panel, spacing),
    unit: '',
    clause: 'statics',
    note: 'shear grows as 1/L; bending and deflection allow more, which is not used',
  });
  rec?.step({
    symbol: 'wt; wl,table',
    meaning: 'allowable total load, and live load, at the tabulated span',
    formula: 'tabulated',
    substituted: `live ${panel.liveLoad} psf, total`,
    value: panel.totalLoad,
    unit: 'psf',
    clause: CLAUSE,
    ...(panel.provenance === 'memory' ? { note: 'values recalled from memory: confirm in the printed table' } : {}),
  });
}

export const sheathingSpan: Check = {
  id: 'sheathing-span',
  title: 'Sheathing span and load',
  subjects: (ctx) => roofSubjects(ctx, 'finish/sheathing'),
  run(subject, ctx, rec) {
    const roof = roofOf(ctx, subject.id);
    const panel = roof && findPanel(roof.finish.sheathing);
    if (!roof || !panel) {
      return notEvaluated(
        CLAUSE,
        'No sheathing lies on this roof, so the covering spans the framing itself. Needed: its maker’s load table, compared with these loads.',
      );
    }
    const { spacing } = roof.framing;
    rec?.heading(`${roof.mark}: ${panel.name} panel ${panel.spanRating}, frames at ${spacing} in`);
    ratingSteps(panel, spacing, roof.path, rec);
    const wind = componentPressure(ctx, roof.mark, 'plus', panelArea(spacing), rec);
    if (wind === undefined) return notEvaluated(CLAUSE, 'this roof was not placed');
    if (isOutOfScope(wind)) return outsideScope(wind.clause, beyond(wind));
    const k = shorterSpan(panel, spacing);
    const total = worstTotal(ctx, roof.mark, wind);
    rec?.step({
      symbol: 'w',
      meaning: 'largest total load on the panel, all taken square to it',
      formula: total.combination,
      substituted: total.text,
      value: total.psf,
      unit: 'psf',
      clause: total.clause,
    });
    const most = (kind: LoadKind): number =>
      ctx.loads.cases.reduce((m, c, i) => (c.kind === kind ? Math.max(m, lyingOn(ctx, roof.mark, i).psf) : m), 0);
    const [roofLive, snow] = [most('Lr'), most('S')];
    const live = Math.max(roofLive, snow);
    rec?.step({
      symbol: 'wl',
      meaning: 'roof live or snow load alone',
      formula: 'max(Lr, S), each the largest of its cases',
      substituted: `max(${say(roofLive)}, ${say(snow)})`,
      value: live,
      unit: 'psf',
      clause: 'ASCE 7-16 2.4',
    });
    const stiff = stifferSpan(panel, spacing);
    const [allTotal, allLive] = [panel.totalLoad * k, panel.liveLoad * stiff];
    rec?.step({
      symbol: 'wt,allow',
      meaning: 'total load the panel may carry at this spacing',
      formula: 'wt · k',
      substituted: `${panel.totalLoad} · ${say(k)}`,
      value: allTotal,
      unit: 'psf',
      clause: CLAUSE,
    });
    rec?.step({
      symbol: 'wl,allow',
      meaning: 'live or snow load the panel may carry at this spacing',
      formula: 'wl,table · k³',
      substituted: `${panel.liveLoad} · ${say(k)}³`,
      value: allLive,
      unit: 'psf',
      clause: CLAUSE,
      note: 'the live column is a deflection limit, L/240: recalled from memory, confirm in the printed table',
    });
    const byLive = live / allLive > total.psf / allTotal;
    rec?.step({
      symbol: 'use',
      meaning: `${byLive ? 'the live load' : 'the total load'} governs`,
      formula: 'greater of w / wt,allow and wl / wl,allow',
      substituted: `${say(total.psf)} / ${say(allTotal)} = ${say(total.psf / allTotal)}, ${say(live)} / ${say(allLive)} = ${say(live / allLive)}`,
      value: Math.max(total.psf / allTotal, live / allLive),
      unit: '',
      clause: CLAUSE,
    });
    const tooFar = spacing > panel.maxSpanUnsupported + 1e-9;
    return measured(
      {
        demand: byLive ? live : total.psf,
        capacity: byLive ? allLive : allTotal,
        unit: 'psf',
        combination: byLive ? '' : total.combination,
        clause: CLAUSE,
        formula: byLive ? 'wl / wl,allow' : 'w / wt,allow',
        mustFail: tooFar,
        remedy: tooFar
          ? `Frames at ${spacing} in are farther apart than a ${panel.name} panel may span without edge support (${panel.maxSpanUnsupported} in): use a thicker panel or closer frames.`
          : `The ${panel.name} panel is overloaded at ${spacing} in: use a thicker panel or closer frames.`,
      },
      rec,
    );
  },
};
