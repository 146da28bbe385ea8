/**
 * Bending and shear of outlookers by hand statics: a cantilever over the end frame, and the same load on the bay behind it as a
 * simple span, since the sheathing there may press on the outlookers alone. The forces of the main system are those of the
 * inner joint; component wind (ASCE 7-16 30.7) stands in their place where the combination has wind.
 */
import type { Recorder } from '../../base/trace.js';
import { isOutOfScope, type OutOfScope } from '../../loads/codes/asce7/index.js';
import type { Combination } from '../../loads/model.js';
import type { Member, RakePatch } from '../../structure/model.js';
import { componentCombinations } from '../cladding/combinations.js';
import { rakeArea } from '../cladding/rake-wind.js';
import { beyond, componentPressure } from '../cladding/zone-wind.js';
import { fb, fv } from '../codes/nds-2018/index.js';
import type { Check, CheckContext, Finding } from '../contract.js';
import { measured, notApplicable, outsideScope } from '../finding.js';
import { designValue, WET_REFUSED } from './design.js';
import { feetText } from './scan.js';
import { memberSubjects, noForces } from './subjects.js';

type Outlooker = Member & { readonly rake: RakePatch };

interface Worst {
  readonly member: Outlooker;
  readonly combination: string;
  readonly label: string;
  readonly clause: string;
  readonly CD: number;
  /** Moment over the end frame with its parts, lb·in; size without sign. */
  readonly M: number;
  readonly others: number;
  readonly wind: number;
  readonly pressure: number;
}

/** Moment over the end frame of each case, lb·in: the inner joint's force square to the roof times its lever. */
function momentsOf(ctx: CheckContext, m: Outlooker): readonly number[] | undefined {
  const joint = ctx.structure.joints.find(
    (j) => j.kind === 'outlooker-to-frame' && j.ties[0]!.part === m.id && j.ties[0]!.along < 1e-6,
  );
  const forces = joint && ctx.effects.joints.get(joint.id)?.force;
  const n = ctx.structure.surfaces.find((s) => s.id === m.rake.surface)?.n;
  if (!forces || !n) return undefined;
  return forces.map((f) => (f.x * n.x + f.y * n.y + f.z * n.z) * m.rake.back);
}

function worstOf(ctx: CheckContext, mark: string): Worst | OutOfScope | undefined {
  let worst: Worst | undefined;
  const take = (w: Worst): void => {
    if (!worst || w.M / w.CD > worst.M / worst.CD) worst = w;
  };
  for (const m of ctx.structure.members) {
    if (m.mark !== mark || m.rake === undefined) continue;
    const member = m as Outlooker;
    const moments = momentsOf(ctx, member);
    if (!moments) return undefined;
    const sum = (terms: Combination['terms']): number =>
      terms.reduce((t, { case: c, factor }) => t + factor * (moments[c] ?? 0), 0);
    for (const c of ctx.loads.combinations) {
      const M = sum(c.terms);
      take({
        member,
        combination: c.id,
        label: c.label,
        clause: c.clause,
        CD: c.CD,
        M: Math.abs(M),
        others: M,
        wind: 0,
        pressure: 0,
      });
    }
    const { rake } = member;
    for (const sign of ['plus', 'minus'] as const) {
      const p = componentPressure(ctx, member.roof ?? '', sign, rakeArea(rake));
      if (p === undefined) return undefined;
      if (isOutOfScope(p)) return p;
      const unit = ((p / 144) * (rake.v1 - rake.v0) * rake.over ** 2) / 2;
      for (const c of componentCombinations(ctx.loads)) {
        const [others, wind] = [sum(c.terms), c.wind * unit];
        take({
          member,
          combination: c.id,
          label: c.label,
          clause: c.clause,
          CD: c.CD,
          M: Math.abs(others + wind),
          others,
          wind,
          pressure: p,
        });
      }
    }
  }
  return worst;
}

/** Tells the moment over the end frame, and gives the even load that makes it, lb/in. */
function tell(ctx: CheckContext, w: Worst, rec?: Recorder): number {
  const { rake, section, path, roof } = w.member;
  rec?.heading(`${w.member.id}: ${section.label} ${rake.lay === 'flat' ? 'flat' : 'on edge'}, ${w.combination}`);
  if (w.pressure !== 0) componentPressure(ctx, roof ?? '', w.pressure > 0 ? 'plus' : 'minus', rakeArea(rake), rec);
  rec?.step({
    symbol: 'M',
    meaning: 'moment over the end frame: wind on the overhang w·c²/2, the rest from the inner joint times its lever',
    formula: w.label,
    substituted: `${w.others.toFixed(0)} (cases of the main system) + ${w.wind.toFixed(0)} (component wind), c = ${feetText(rake.over)}, one each ${feetText(rake.v1 - rake.v0)}`,
    value: w.M,
    unit: 'lb·in',
    clause: w.clause,
    from: [path],
  });
  const load = (2 * w.M) / rake.over ** 2;
  rec?.step({
    symbol: 'w',
    meaning: 'even load that gives this moment',
    formula: '2·M / c²',
    substituted: `2·${w.M.toFixed(0)} / ${rake.over.toFixed(2)}²`,
    value: load,
    unit: 'lb/in',
    clause: 'statics',
  });
  return load;
}

function answer(ctx: CheckContext, mark: string, clause: string, work: (w: Worst) => Finding): Finding {
  const worst = worstOf(ctx, mark);
  if (worst === undefined) return noForces(clause);
  if (isOutOfScope(worst)) return outsideScope(worst.clause, beyond(worst));
  if (worst.M <= 0) return notApplicable(clause, 'no combination bends the outlookers');
  return work(worst);
}

const BENDING = 'NDS 2018 3.3.1';

export const outlookerBending: Check = {
  id: 'outlooker-bending',
  title: 'Outlooker bending',
  subjects: (ctx) => memberSubjects(ctx, 'outlooker'),
  run(subject, ctx, rec) {
    return answer(ctx, subject.id, BENDING, (w) => {
      const { section: s, rake } = w.member;
      const load = tell(ctx, w, rec);
      const inBay = (load * rake.back ** 2) / 8;
      rec?.step({
        symbol: 'Mb',
        meaning: 'moment of the same load on the bay behind, as a simple span',
        formula: 'w·L²/8',
        substituted: `${load.toFixed(3)}·${rake.back.toFixed(2)}²/8`,
        value: inBay,
        unit: 'lb·in',
        clause: 'statics',
      });
      const [b, d] = rake.lay === 'flat' ? [s.d, s.b] : [s.b, s.d];
      const stress = fb(Math.max(w.M, inBay), b, d, rec);
      const Fb = designValue('Fb', s, { CD: w.CD, CL: 1 }, rec);
      if (Fb === undefined) return outsideScope('NDS 2018 8.1.4', WET_REFUSED);
      return measured(
        {
          demand: stress,
          capacity: Fb,
          unit: 'psi',
          combination: w.combination,
          clause: BENDING,
          formula: "fb / Fb'",
          note: 'no deeper than twice its thickness, or flat: CL = 1 (NDS 2018 4.4.1.2); the flat-use factor, never below 1, is left out',
          remedy: `${subject.id} is overstressed in bending: set the outlookers closer, take a larger section, or shorten the overhang.`,
        },
        rec,
      );
    });
  },
};

const SHEAR = 'NDS 2018 3.4.2';

export const outlookerShear: Check = {
  id: 'outlooker-shear',
  title: 'Outlooker shear',
  subjects: (ctx) => memberSubjects(ctx, 'outlooker'),
  run(subject, ctx, rec) {
    return answer(ctx, subject.id, SHEAR, (w) => {
      const { section: s, rake } = w.member;
      const load = tell(ctx, w, rec);
      const V = Math.max(load * rake.over, (load * rake.back) / 2 + w.M / rake.back);
      rec?.step({
        symbol: 'V',
        meaning: 'shear beside the end frame: of the overhang, or of the bay behind with the moment over the frame',
        formula: 'max(w·c, w·L/2 + M/L)',
        substituted: `max(${load.toFixed(3)}·${rake.over.toFixed(2)}, ${load.toFixed(3)}·${rake.back.toFixed(2)}/2 + ${w.M.toFixed(0)}/${rake.back.toFixed(2)})`,
        value: V,
        unit: 'lb',
        clause: 'statics',
      });
      const [b, d] = rake.lay === 'flat' ? [s.d, s.b] : [s.b, s.d];
      const stress = fv(V, b, d, rec);
      const Fv = designValue('Fv', s, { CD: w.CD }, rec);
      if (Fv === undefined) return outsideScope('NDS 2018 8.1.4', WET_REFUSED);
      return measured(
        {
          demand: stress,
          capacity: Fv,
          unit: 'psi',
          combination: w.combination,
          clause: SHEAR,
          formula: "fv / Fv'",
          remedy: `${subject.id} is overstressed in shear: set the outlookers closer or take a larger section.`,
        },
        rec,
      );
    });
  },
};
