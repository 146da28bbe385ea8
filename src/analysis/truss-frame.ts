/**
 * One truss as a plane frame: chords run on over their panel points and are pinned where they meet at an angle, webs are
 * pinned. Solved with one bearing free to slide and under a unit of outward push at that bearing; everything else is a sum
 * of the two (statics and the force method). Plane axes: x along the truss from the outer face of the left beam, z up from
 * the bearing; inches, pounds. Plate slip is not in it.
 */

import type { TrussBar, WebLayout } from '../structure/framing/webs.js';
import type { Section } from '../structure/model.js';
import {
  type DistributedLoad,
  type FactoredFrame,
  type FrameCase,
  type FrameElement,
  factorFrame,
  type MemberPointLoad,
  makeSamples,
  type NodalLoad,
  type Support,
  sampleElement,
  solveCase,
} from './solver/index.js';

/** Stations of each chord bar, evenly spaced, both ends included. */
export const CHORD_STATIONS = 9;

/** Axial forces by bar (tension positive) and moments by chord station (positive: lower edge in tension). */
export interface BarForces {
  readonly n: Float64Array;
  /** `CHORD_STATIONS` values a bar in the order of `bars`; zeros for pinned bars. */
  readonly m: Float64Array;
}

export interface TrussSolution extends BarForces {
  /** How far the sliding bearing moves away from the other one, inches. */
  readonly spread: number;
  /** Reactions on the truss: the held bearing's horizontal and vertical one, the sliding bearing's vertical one. */
  readonly held: { readonly x: number; readonly z: number };
  readonly sliding: number;
}

export interface TrussModel {
  readonly layout: WebLayout;
  /** Bars that carry, in the order of every per-bar array: studs are left out. */
  readonly bars: readonly TrussBar[];
  readonly frame: FactoredFrame;
  /** Under one pound of outward push at the sliding bearing; its spread is the flexibility, in/lb. */
  readonly push: TrussSolution;
}

const isChord = (bar: TrussBar): boolean => bar.role === 'top' || bar.role === 'bottom';

/** Bars whose far end is a pin of the chord: at the apex, and at the middle of a bottom chord that bends there. */
function pinned(layout: WebLayout, bar: TrussBar): boolean {
  if (bar.role === 'top') return bar.to === layout.apex;
  const foot = layout.joints[bar.to]!;
  const next = layout.bars.find((b) => b.role === 'bottom' && b.from === bar.to);
  if (!next) return false;
  const from = layout.joints[bar.from]!;
  const beyond = layout.joints[next.to]!;
  const bend = (foot.z - from.z) / (foot.x - from.x) - (beyond.z - foot.z) / (beyond.x - foot.x);
  return Math.abs(bend) > 1e-6 && Math.abs(foot.x - layout.joints[layout.apex]!.x) < 1e-6;
}

const PIN = { mz: true };

/** Undefined when the layout is a mechanism, which none of the patterns is. */
export function makeTruss(layout: WebLayout, chord: Section): TrussModel | undefined {
  const bars = layout.bars.filter((b) => b.role !== 'stud');
  const used = new Set(bars.flatMap((b) => [b.from, b.to]));
  const nodes = layout.joints.map((j) => ({ x: j.x, y: 0, z: j.z }));
  const { b, d, values } = chord;
  const elements = bars.map((bar): FrameElement => {
    const p = nodes[bar.from]!;
    const q = nodes[bar.to]!;
    const chordBar = isChord(bar);
    const end = chordBar ? (pinned(layout, bar) ? { end: PIN } : {}) : { start: PIN, end: PIN };
    return {
      start: bar.from,
      end: bar.to,
      up: { x: p.z - q.z, y: 0, z: q.x - p.x },
      E: values.E,
      G: values.E / 16,
      A: b * d,
      Iz: (b * d ** 3) / 12,
      Iy: (d * b ** 3) / 12,
      J: (d * b ** 3) / 3,
      releases: end,
    };
  });
  const [first, second] = layout.bearings;
  const supports: Support[] = nodes.map((_, node) =>
    used.has(node)
      ? { node, dy: 'fixed', rx: 'fixed', rz: 'fixed' }
      : { node, dx: 'fixed', dy: 'fixed', dz: 'fixed', rx: 'fixed', ry: 'fixed', rz: 'fixed' },
  );
  supports.push({ node: first, dx: 'fixed', dz: 'fixed' }, { node: second, dz: 'fixed' });
  const factored = factorFrame({ nodes, elements, supports });
  if (!factored.ok) return undefined;
  const bare = { layout, bars, frame: factored.frame };
  const push = solveTruss(bare, { nodal: [{ node: second, force: { x: 1, y: 0, z: 0 } }] });
  return { ...bare, push };
}

export function solveTruss(truss: Omit<TrussModel, 'push'>, load: FrameCase): TrussSolution {
  const { frame, bars, layout } = truss;
  const result = solveCase(frame, load);
  const n = new Float64Array(bars.length);
  const m = new Float64Array(bars.length * CHORD_STATIONS);
  const samples = makeSamples(CHORD_STATIONS);
  const x = new Float64Array(CHORD_STATIONS);
  bars.forEach((bar, e) => {
    const l = frame.lengths[e]!;
    // Where a load runs along the bar its axial force changes; the larger end counts.
    const start = -result.endForces[12 * e]!;
    const end = result.endForces[12 * e + 6]!;
    n[e] = Math.abs(start) > Math.abs(end) ? start : end;
    if (!isChord(bar)) return;
    for (let i = 0; i < CHORD_STATIONS; i++) x[i] = (l * i) / (CHORD_STATIONS - 1);
    sampleElement(frame, load, result, e, x, samples);
    m.set(samples.mz, e * CHORD_STATIONS);
  });
  const [first, second] = layout.bearings;
  const r = result.reactions;
  return {
    n,
    m,
    spread: result.displacements[6 * second]!,
    held: { x: r[6 * first]!, z: r[6 * first + 2]! },
    sliding: r[6 * second + 2]!,
  };
}

/** A straight run of load on the top chord between two places `x`, in the plane of the truss: force per inch of `x`. */
export interface RunLoad {
  readonly from: number;
  readonly to: number;
  readonly atFrom: number;
  readonly atTo: number;
}

/** Puts runs of load in direction (`dx`, `dz`) on the bars of one chord; what lies past its ends acts on the end joint. */
export function onChord(
  truss: Omit<TrussModel, 'push'>,
  role: 'top' | 'bottom',
  runs: readonly RunLoad[],
  direction: { readonly x: number; readonly z: number },
): FrameCase {
  const distributed: DistributedLoad[] = [];
  const nodal: NodalLoad[] = [];
  const chord = truss.bars.flatMap((bar, element) => (bar.role === role ? [{ bar, element }] : []));
  const { joints } = truss.layout;
  const ends = [joints[chord[0]!.bar.from]!.x, joints[chord.at(-1)!.bar.to]!.x] as const;
  const force = (q: number) => ({ x: q * direction.x, y: 0, z: q * direction.z });
  for (const run of runs) {
    const value = (x: number): number =>
      run.atFrom + ((run.atTo - run.atFrom) * (x - run.from)) / (run.to - run.from || 1);
    const past = (a: number, b: number, node: number): void => {
      if (b - a > 1e-9) nodal.push({ node, force: force(((value(a) + value(b)) / 2) * (b - a)) });
    };
    past(run.from, Math.min(run.to, ends[0]), chord[0]!.bar.from);
    past(Math.max(run.from, ends[1]), run.to, chord.at(-1)!.bar.to);
    for (const { bar, element } of chord) {
      const p = joints[bar.from]!.x;
      const q = joints[bar.to]!.x;
      const a = Math.max(run.from, p);
      const b = Math.min(run.to, q);
      if (b - a < 1e-9) continue;
      const per = (q - p) / truss.frame.lengths[element]!;
      distributed.push({
        element,
        measure: 'fraction',
        from: (a - p) / (q - p),
        to: (b - p) / (q - p),
        startForce: force(value(a) * per),
        endForce: force(value(b) * per),
      });
    }
  }
  return { distributed, nodal };
}

/** One downward force of `amount` on the top chord at `x`. */
export function pointOnChord(truss: Omit<TrussModel, 'push'>, x: number, amount: number): FrameCase {
  const { joints } = truss.layout;
  const tops = truss.bars.flatMap((bar, element) => (bar.role === 'top' ? [{ bar, element }] : []));
  const found = tops.find(({ bar }) => x <= joints[bar.to]!.x) ?? tops.at(-1)!;
  const p = joints[found.bar.from]!.x;
  const q = joints[found.bar.to]!.x;
  const at = Math.min(Math.max((x - p) / (q - p), 0), 1);
  const point: MemberPointLoad = {
    element: found.element,
    measure: 'fraction',
    at,
    force: { x: 0, y: 0, z: -amount },
  };
  return { points: [point] };
}
