/**
 * The longest fill rafter in closed form. A pair leans together at the ridge, feet held by the plates: each is bent as a
 * simple span and pressed along by what the pair pushes. Sheathing holds its upper edge.
 */
import type { Recorder } from '../../base/trace.js';
import type { OverlayPlaced, Section } from '../../structure/model.js';
import {
  axialStress,
  bendingCompression,
  C_SAWN,
  CP,
  columnSlenderness,
  FcE,
  fb,
  momentOfInertia,
  SLENDERNESS_LIMIT,
} from '../codes/nds-2018/index.js';
import { say } from '../codes/say.js';
import type { Check, CheckContext, Finding } from '../contract.js';
import { measured, notEvaluated, outsideScope } from '../finding.js';
import { designValue, WET_REFUSED } from '../members/design.js';
import { overlayAt, overlaysOf } from './overlay-load.js';
import { overlayLoads, overlayOf } from './overlay-loads.js';

const CLAUSE = 'NDS 2018 3.9.2';
/** Stands for no buckling limit where sheathing holds the member all along. */
const HELD = 1e12;

/** Gravity on plan and wind pressing square to the slope, psf, with the load duration of the shortest. */
interface Press {
  readonly id: string;
  readonly gravity: number;
  readonly wind: number;
  readonly CD: number;
}

/** Combinations of ASCE 7-16 2.4.1 that press a roof; uplift is the old roof's question. */
function presses(ctx: CheckContext, o: OverlayPlaced): Press[] {
  const q = overlayLoads(ctx, o);
  const W = Math.max(0, ctx.loads.attachedWind?.find((a) => a.roof === o.roof)?.down ?? 0);
  const CD = q.liveKind === 'S' ? 1.15 : 1.25;
  return [
    { id: 'D', gravity: q.dead, wind: 0, CD: 0.9 },
    { id: `D+${q.liveKind}`, gravity: q.dead + q.live, wind: 0, CD },
    { id: 'D+0.6W', gravity: q.dead, wind: 0.6 * W, CD: 1.6 },
    { id: `D+0.75${q.liveKind}+0.45W`, gravity: q.dead + 0.75 * q.live, wind: 0.45 * W, CD: 1.6 },
  ];
}

export interface FillForces {
  /** Moment at mid-length, lb·in, and push along the rafter there, lb. */
  readonly M: number;
  readonly N: number;
}

/** Forces of one rafter of a pair: `run` level, `slope` rise over run, `width` of roof it carries, inches; loads psf. */
export function fillForces(run: number, slope: number, width: number, gravity: number, wind: number): FillForces {
  const cos = 1 / Math.hypot(1, slope);
  const sin = slope * cos;
  const V = (gravity * run * width) / 144;
  const length = run / cos;
  // Moments about the foot: half the span's load at its middle against the push at the ridge.
  const H = V / (2 * slope);
  const P = (wind * length * width) / 144;
  const Hw = (P * length) / (2 * run * slope);
  return { M: (V * run + P * length) / 8, N: H * cos + (V / 2) * sin + Hw * cos };
}

interface Longest {
  readonly mark: string;
  readonly section: Section;
  readonly run: number;
  readonly width: number;
  readonly count: number;
}

function longest(ctx: CheckContext, o: OverlayPlaced): Longest | undefined {
  const f = o.fills[0];
  const m = o.members.find((x) => x.mark === f?.mark);
  const width = overlayOf(ctx, o.roof)?.spacing;
  return f && m && width ? { mark: f.mark, section: m.section, run: f.run, width, count: o.fills.length } : undefined;
}

function ratioAt(o: OverlayPlaced, l: Longest, p: Press, rec?: Recorder): number | undefined {
  const { section: s } = l;
  const row = o.sheathing > 0 ? { members: l.count, spacing: l.width } : undefined;
  const Fb = designValue('Fb', s, { CD: p.CD, ...(row ? { row } : {}) }, rec);
  const FcStar = designValue('Fc', s, { CD: p.CD }, rec);
  const Emin = designValue('Emin', s, {}, rec);
  if (Fb === undefined || FcStar === undefined || Emin === undefined) return undefined;
  const { M, N } = fillForces(l.run, o.shape.slope, l.width, p.gravity, p.wind);
  rec?.step({
    symbol: 'M',
    meaning: 'moment at mid-length of a simple span, gravity on plan and wind square to the slope',
    formula: 'w r² / 8 + p L² / 8',
    substituted: `${say(p.gravity)} psf and ${say(p.wind)} psf on ${say(l.width)} in, run ${say(l.run)} in`,
    value: M,
    unit: 'lb·in',
    clause: 'statics',
  });
  rec?.step({
    symbol: 'N',
    meaning: 'push along the rafter at mid-length: the pair leans together at the ridge',
    formula: 'H cos + V/2 sin, H = V / (2 · slope)',
    substituted: say(N),
    value: N,
    unit: 'lb',
    clause: 'statics',
  });
  const length = l.run * Math.hypot(1, o.shape.slope);
  const slender = columnSlenderness(1, length, s.d, rec);
  if (slender > SLENDERNESS_LIMIT) return Number.POSITIVE_INFINITY;
  const limit = FcE(Emin, slender, rec);
  const result = bendingCompression(
    {
      fc: axialStress('fc', N, s.b * s.d, rec),
      fb1: fb(M, s.b, s.d, rec),
      fb2: 0,
      FcAdj: FcStar * CP(limit, FcStar, C_SAWN, 1, rec),
      Fb1Adj: Fb,
      Fb2Adj: Fb,
      FcE1: limit,
      FcE2: HELD,
      FbE: HELD,
    },
    rec,
  );
  return result.ratio;
}

export const overlayRafter: Check = {
  id: 'overlay-rafter',
  title: 'Fill rafter bent and pressed along',
  subjects: overlaysOf,
  run(subject, ctx, rec): Finding {
    const o = overlayAt(ctx, subject.id);
    const l = o && longest(ctx, o);
    if (!o || !l) return notEvaluated(CLAUSE, 'the overlay was not placed');
    let worst: { press: Press; ratio: number } | undefined;
    for (const press of presses(ctx, o)) {
      const ratio = ratioAt(o, l, press);
      if (ratio === undefined) return outsideScope('NDS 2018 8.1.4', WET_REFUSED);
      if (!worst || ratio > worst.ratio) worst = { press, ratio };
    }
    rec?.heading(`${l.mark}: ${l.section.label}, ${worst!.press.id}`);
    ratioAt(o, l, worst!.press, rec);
    return measured(
      {
        demand: worst!.ratio,
        capacity: 1,
        ratio: worst!.ratio,
        unit: '',
        combination: worst!.press.id,
        clause: CLAUSE,
        formula: "(fc/Fc')² + fb / (Fb' (1 − fc/FcE)) ≤ 1",
        remedy: `Fill rafter ${l.mark} is overstressed: a deeper section or closer spacing.`,
      },
      rec,
    );
  },
};

export const overlayRafterDeflection: Check = {
  id: 'overlay-rafter-deflection',
  title: 'Fill rafter deflection under live load or snow',
  subjects: overlaysOf,
  run(subject, ctx, rec): Finding {
    const clause = 'IRC 2018 Table R301.7 (recalled)';
    const o = overlayAt(ctx, subject.id);
    const l = o && longest(ctx, o);
    if (!o || !l) return notEvaluated(clause, 'the overlay was not placed');
    const E = designValue('E', l.section, {}, rec);
    if (E === undefined) return outsideScope('NDS 2018 8.1.4', WET_REFUSED);
    const { live } = overlayLoads(ctx, o);
    const length = l.run * Math.hypot(1, o.shape.slope);
    // Square to the rafter, on each inch of its length.
    const w = (live * l.width) / 144 / (1 + o.shape.slope ** 2);
    const I = momentOfInertia(l.section.b, l.section.d);
    const sag = (5 * w * length ** 4) / (384 * E * I);
    const allowed = length / ctx.project.choices.deflection.live;
    rec?.step({
      symbol: 'Δ',
      meaning: `deflection of ${l.mark}, square to it`,
      formula: '5 w L⁴ / (384 E I)',
      substituted: `5 · ${say(w)} · ${say(length)}⁴ / (384 · ${say(E)} · ${say(I)})`,
      value: sag,
      unit: 'in',
      clause: 'statics',
      from: [o.path],
    });
    return measured(
      {
        demand: sag,
        capacity: allowed,
        unit: 'in',
        combination: overlayLoads(ctx, o).liveKind,
        clause,
        formula: `Δ / (L/${ctx.project.choices.deflection.live})`,
        remedy: `Fill rafter ${l.mark} bends too much: a deeper section or closer spacing.`,
      },
      rec,
    );
  },
};
