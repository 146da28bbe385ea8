/**
 * Truss frames against the method of joints and the unit-load method, worked by hand for trusses whose chords meet in
 * points: slender chords carry next to no bending, so the closed forms of pinned trusses hold.
 */
import { describe, it } from 'vitest';
import { makeTruss, solveTruss, type TrussModel } from '../../src/analysis/index.js';
import { webLayout } from '../../src/structure/framing/webs.js';
import type { Section, TrussShape } from '../../src/structure/model.js';
import { verificationSuite } from './record.js';

const suite = verificationSuite('trusses');
const E = 1.6e6;
const HAND = {
  source: 'method of joints and unit-load method, by hand',
  where: 'derivation beside the comparison',
  provenance: 'hand' as const,
  tolerance: {
    rel: 2e-3,
    reason: 'chords of the frame are continuous and a hair deep, those of the hand method are lines',
  },
};

/** A truss of nearly no depth of chord: heel, apex and foot lie on the corners of the hand calculation. */
const shape = (span: number, top: number, bottom: number, overhang = 0.001): TrussShape => ({
  kind: bottom > 0 ? 'scissor-truss' : 'common-truss',
  span,
  topPitch: Math.atan(top),
  bottomPitch: Math.atan(bottom),
  heel: 0.02,
  overhang: [overhang, overhang],
  chordDepth: 0.01,
  bearing: 0.01,
  weight: 0,
  height: (span / 2) * top,
});

/** 5.25 in² in a strip too thin to bend. */
const section = { b: 525, d: 0.01, values: { E } } as Section;
const AREA = 5.25;

const made = (t: TrussShape): TrussModel => makeTruss(webLayout(t, false), section)!;
const joint = (m: TrussModel, name: string): number => m.layout.joints.findIndex((j) => j.name === name);
/** Forces of the bars that run along a chord's first panel, heel wedge and chord together. */
const firstPanel = (m: TrussModel, n: Float64Array): number => {
  const wedge = m.bars.findIndex(
    (b) => b.role === 'heel' && b.from === m.layout.bearings[0] && m.layout.joints[b.to]!.name !== 'Lh',
  );
  const chord = m.bars.findIndex((b) => b.role === 'top' && m.layout.joints[b.from]!.name === 'Lh');
  return n[wedge]! + n[chord]!;
};

describe('king-post truss, load at the apex', () => {
  // Span 120, rise 30, 1000 lb at the apex: rafter 500/sin, tie 500/tan, king post nothing.
  const m = made(shape(120, 0.5, 0));
  const s = solveTruss(m, { nodal: [{ node: m.layout.apex, force: { x: 0, y: 0, z: -1000 } }] });
  const sin = 30 / Math.hypot(60, 30);
  it('chord forces', () => {
    const common = { ...HAND, id: 'truss-king-post', clause: 'statics', unit: 'lb' };
    suite.compare({ ...common, quantity: 'top chord', published: -500 / sin, ours: firstPanel(m, s.n) });
    const tie = m.bars.findIndex((b) => b.role === 'bottom');
    suite.compare({ ...common, quantity: 'bottom chord', published: 1000, ours: s.n[tie]! });
  });
});

describe('Howe truss with equal loads at its top joints', () => {
  // Span 384, rise 96 at 6/12, six panels of 64 in, 500 lb at each of the five top joints; R = 1250.
  // Joint L: rafter −1250/sinα, tie 1250/tanα = 2500. Section through panel 3, moments about the top joint at 128:
  // T·64 = 1250·128 − 500·64, T = 2000. Moments about the foot: rafter horizontal H·96 = 1250·192 − 500·(128 + 64).
  const m = made(shape(384, 0.5, 0));
  const tops = ['Lt1', 'Lt2', 'apex', 'Rt1', 'Rt2'].map((n) => joint(m, n));
  const s = solveTruss(m, { nodal: tops.map((node) => ({ node, force: { x: 0, y: 0, z: -500 } })) });
  const cos = 2 / Math.sqrt(5);
  const bottom = (from: string): number =>
    s.n[m.bars.findIndex((b) => b.role === 'bottom' && m.layout.joints[b.from]!.name === from)]!;
  it('chord and web forces', () => {
    const common = { ...HAND, id: 'truss-howe', clause: 'statics', unit: 'lb' };
    suite.compare({
      ...common,
      quantity: 'top chord at the heel',
      published: -1250 * Math.sqrt(5),
      ours: firstPanel(m, s.n),
    });
    suite.compare({ ...common, quantity: 'bottom chord, end panel', published: 2500, ours: bottom('L') });
    suite.compare({ ...common, quantity: 'bottom chord, middle panel', published: 2000, ours: bottom('Lb2') });
    const upper = m.bars.findIndex((b) => b.role === 'top' && b.to === m.layout.apex);
    suite.compare({
      ...common,
      quantity: 'top chord at the apex',
      published: -(1250 * 192 - 500 * (128 + 64)) / 96 / cos,
      ours: s.n[upper]!,
    });
    // Apex joint: two rafters push up with their vertical parts, the king post pulls down what is left of 500.
    const vertical = (2 * (1250 * 192 - 500 * 192)) / 96 / 2;
    const king = m.bars.findIndex((b) => b.role === 'web' && b.to === m.layout.apex);
    suite.compare({ ...common, quantity: 'king post', published: vertical - 500, ours: s.n[king]! });
  });
});

describe('scissor truss, load at the apex', () => {
  // Span 216, top 4/12, bottom 2/12, 1200 lb at the apex. At the heel: C cosα = T cosβ and C sinα − T sinβ = 600.
  const m = made(shape(216, 4 / 12, 2 / 12));
  const load = { nodal: [{ node: m.layout.apex, force: { x: 0, y: 0, z: -1200 } }] };
  const s = solveTruss(m, load);
  const [a, b] = [Math.atan(4 / 12), Math.atan(2 / 12)];
  const C = 600 / (Math.sin(a) - Math.cos(a) * Math.tan(b));
  const T = (C * Math.cos(a)) / Math.cos(b);
  // One pound pushed outward at each bearing: c cosα + t cosβ = 1 outward, c sinα + t sinβ = 0 (tension positive).
  const t = 1 / (Math.cos(b) - (Math.sin(b) / Math.sin(a)) * Math.cos(a));
  const c = (-t * Math.sin(b)) / Math.sin(a);
  const [La, Lb, Lk] = [108 / Math.cos(a), 108 / Math.cos(b), 108 * (4 / 12 - 2 / 12)];
  const K = 2 * T * Math.sin(b);
  const k = 2 * t * Math.sin(b);
  const EA = E * AREA;
  const spread = (2 * -C * c * La + 2 * T * t * Lb + K * k * Lk) / EA;
  const flexibility = (2 * c * c * La + 2 * t * t * Lb + k * k * Lk) / EA;
  it('chord forces, king post, spread and thrust', () => {
    const common = { ...HAND, id: 'truss-scissor', clause: 'statics', unit: 'lb' };
    suite.compare({ ...common, quantity: 'top chord', published: -C, ours: firstPanel(m, s.n) });
    suite.compare({
      ...common,
      quantity: 'bottom chord',
      published: T,
      ours: s.n[m.bars.findIndex((x) => x.role === 'bottom')]!,
    });
    suite.compare({
      ...common,
      quantity: 'king post',
      published: K,
      ours: s.n[m.bars.findIndex((x) => x.role === 'web' && x.to === m.layout.apex)]!,
    });
    suite.compare({ ...common, quantity: 'spread', unit: 'in', published: spread, ours: s.spread });
    suite.compare({ ...common, quantity: 'thrust', published: spread / flexibility, ours: s.spread / m.push.spread });
  });
});
