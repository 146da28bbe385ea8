/** Wind beside a house and loads on some spans, against published equations and beam formulas. */
import { describe, it } from 'vitest';
import { analyse } from '../../src/analysis/index.js';
import { makeShed } from '../../src/analysis/testing.js';
import { canopyNetGCp, exposureKz, partialSnowPatterns, velocityPressure } from '../../src/loads/codes/asce7/index.js';
import { buildLoads } from '../../src/loads/index.js';
import { verificationSuite } from './record.js';

const suite = verificationSuite('loads-attached-partial');

describe('attached canopy', () => {
  // Printed beside the figure: GCp = a + b·ln A, A in ft² from 10 to 100.
  const rows = [
    { name: '0.9 to 1.0', ratio: 0.95, sign: 'minus', a: -1.7, b: 0.1303 },
    { name: '0.5 to 0.9', ratio: 0.7, sign: 'minus', a: -1.15, b: 0.1086 },
    { name: 'up to 0.5', ratio: 0.4, sign: 'minus', a: -0.7, b: 0.0434 },
    { name: 'downward', ratio: 0.7, sign: 'plus', a: 1.15, b: -0.109 },
  ] as const;
  it('K01 net coefficients by the printed equations', () => {
    for (const r of rows)
      for (const A of [20, 50, 80])
        suite.compare({
          id: 'K01',
          quantity: `GCp ${r.name}, ${A} ft²`,
          clause: 'ASCE 7-16 Fig. 30.11-1B',
          source: 'ASCE 7-22 Tables C30.9-1 and C30.9-2, equations of the canopy figure',
          where: 'public transcription of ASCE 7-22 chapter 30 (the same figure as 7-16, recalled)',
          provenance: 'read',
          published: r.a + r.b * Math.log(A),
          ours: canopyNetGCp(r.ratio, r.sign, A * 144, '7-16'),
          unit: '',
          tolerance: {
            abs: 0.0025,
            reason: 'the printed slope 0.109 is 0.0004 off its own end values, times ln A up to 4.6',
          },
        });
  });

  const qz = (Kz: number, V: number): number => velocityPressure({ Kz, Kzt: 1, Kd: 0.85, Ke: 1, V }, '7-16');
  it('K02 to K04 velocity pressures printed for canopies and overhangs', () => {
    suite.compare({
      id: 'K02',
      quantity: 'Kz at 17.5 ft, exposure C',
      clause: 'ASCE 7-16 Table 26.10-1 Note 1',
      source: 'wind calculation of a gabled house with overhangs, ASCE 7-16',
      where: 'https://mygateway.pages.dev/p/https://www.scribd.com/document/986083497/01',
      provenance: 'read',
      published: 0.877,
      ours: exposureKz(17.5 * 12, 'C', '7-16') as number,
      unit: '',
      tolerance: { abs: 0.0006, reason: 'printed to three figures' },
    });
    suite.compare({
      id: 'K03',
      quantity: 'qh',
      clause: 'ASCE 7-16 Eq. 26.10-1',
      source: 'wind calculation for a canopy: Kz 0.865, 115 mph',
      where: 'https://www.scribd.com/document/287994953/Wind-Calculation-for-Canopy',
      provenance: 'read',
      published: 24.89,
      ours: qz(0.865, 115),
      unit: 'psf',
      tolerance: { abs: 0.006, reason: 'printed to 0.01' },
      note: 'an ASCE 7-10 sheet; the equation with Ke = 1 is the same',
    });
    suite.compare({
      id: 'K04',
      quantity: 'qz',
      clause: 'ASCE 7-16 Eq. 26.10-1',
      source: 'structural calculations with a canopy: Kz 0.70, exposure B, 115 mph',
      where: 'https://laserfiche.rexburg.org/WebLink/DocView.aspx?dbid=0&id=435445&repo=Rexburg',
      provenance: 'read',
      published: 20.1,
      ours: qz(0.7, 115),
      unit: 'psf',
      tolerance: { abs: 0.06, reason: 'printed to 0.1' },
    });
  });
});

describe('partial snow', () => {
  it('K05 as many pairs of neighbouring full spans as spans less one', () => {
    for (const n of [3, 4, 5, 6])
      suite.compare({
        id: 'K05',
        quantity: `case 3, ${n} spans`,
        clause: 'ASCE 7-16 7.5.1',
        source: 'partial loading of purlins, ASCE 7-22 7.5.1: (n − 1) combinations',
        where: 'https://docs.mkapeb.com/ASCESEI7-22_SnowLoadPartialLoadi.html',
        provenance: 'read',
        published: n - 1,
        ours: partialSnowPatterns(n).filter(
          (p) => p.filter((f) => f === 1).length === 2 && p.some((f, i) => f === 1 && p[i + 1] === 1),
        ).length,
        unit: 'cases',
        tolerance: { abs: 1e-9, reason: 'a count: exact' },
      });
  });
});

/** A beam on posts at even places under closely set rafters, so that its load is nearly even. */
function beamOn(posts: readonly number[]) {
  const shed = makeShed({ posts, rake: 0.75, spacing: 1.5, length: 240 });
  // The formulas stand on rigid supports: posts that hardly shorten.
  const members = shed.structure.members.map((m) =>
    m.role === 'post' ? { ...m, section: { ...m.section, values: { ...m.section.values, E: 1e12 } } } : m,
  );
  const f = { ...shed, structure: { ...shed.structure, members } };
  const loads = buildLoads(f.project, f.structure).value!;
  const effects = analyse(f.project, f.structure, loads).value!;
  const at = (id: string): number => loads.cases.findIndex((c) => c.id === id);
  const beam = f.structure.members.find((m) => m.role === 'beam')!;
  const whole = (c: number): number =>
    f.structure.joints
      .filter((j) => j.ties.at(-1)!.part === beam.id)
      .reduce((sum, j) => sum - effects.joints.get(j.id)!.force[c]!.z, 0);
  const reactions = (c: number): readonly number[] =>
    f.structure.joints
      .filter((j) => j.kind === 'beam-to-post')
      .sort((a, b) => a.at.x - b.at.x)
      .map((j) => -effects.joints.get(j.id)!.force[c]!.z);
  const e = effects.members.get(beam.id)!;
  /** Moment nearest a place, and the largest positive moment between two places, lb·in. */
  const moment = (c: number, x: number): number => {
    let best = 0;
    e.stations.forEach((s, i) => {
      if (Math.abs(s - x) < Math.abs(e.stations[best]! - x)) best = i;
    });
    return e.m[c]![best]!;
  };
  const most = (c: number, from: number, to: number): number =>
    e.m[c]!.reduce((m, v, i) => (e.stations[i]! >= from && e.stations[i]! <= to ? Math.max(m, v) : m), 0);
  return { at, whole, reactions, moment, most };
}

const CLOSE = { rel: 0.01, abs: 0.0005, reason: 'rafters at 1-1/2 in stand for the even load' };

describe('every other span loaded', () => {
  const source = 'beam formulas: continuous beam of two equal spans, even load on one span';
  const where = 'http://www.engineersedge.com/calculators/uniform_load_between_two_supports_16063.htm';
  it('K06 two spans, one loaded', () => {
    const b = beamOn([0, 120, 240]);
    const L = 120;
    const c = b.at('Lr·partial·B1·1');
    const w = b.whole(b.at('Lr')) / 240;
    const put = (quantity: string, published: number, ours: number): void =>
      suite.compare({
        id: 'K06',
        quantity,
        clause: 'ASCE 7-16 4.3.3',
        source,
        where,
        provenance: 'read',
        published,
        ours,
        unit: '',
        tolerance: CLOSE,
      });
    const R = b.reactions(c).map((r) => r / (w * L));
    put('R1/wL', 7 / 16, R[0]!);
    put('R2/wL', 5 / 8, R[1]!);
    put('R3/wL', -1 / 16, R[2]!);
    put('M over the middle/wL²', -1 / 16, b.moment(c, 120) / (w * L * L));
    put('M in the span/wL²', 49 / 512, b.most(c, 0, 120) / (w * L * L));
    // Full on one span and half on the other: half of the even load's −1/8 and half of the one span's −1/16.
    const ws = b.whole(b.at('S')) / 240;
    suite.compare({
      id: 'K06',
      quantity: 'M over the middle, partial snow/wL²',
      clause: 'ASCE 7-16 7.5.1',
      source: `${source}, and on both`,
      where,
      provenance: 'read',
      published: -0.5 / 8 - 0.5 / 16,
      ours: b.moment(b.at('S·partial·B1·1'), 120) / (ws * L * L),
      unit: '',
      tolerance: CLOSE,
    });
  });

  it('K07 four spans, first and third loaded', () => {
    const b = beamOn([0, 60, 120, 180, 240]);
    const L = 60;
    const c = b.at('Lr·partial·B1·1');
    const w = b.whole(b.at('Lr')) / 240;
    const put = (quantity: string, published: number, ours: number): void =>
      suite.compare({
        id: 'K07',
        quantity,
        clause: 'ASCE 7-16 4.3.3',
        source: 'beam formulas: continuous beam of four equal spans, even load on two spans',
        where:
          'https://piping-designer.com/index.php/disciplines/civil/structural/2408-four-span-continuous-beam-equal-spans-uniform-load-on-two-spans',
        provenance: 'read',
        published,
        ours,
        unit: '',
        tolerance: CLOSE,
      });
    const printed = [0.446, 0.572, 0.464, 0.572, -0.054];
    b.reactions(c).forEach((r, i) => {
      put(`R${i + 1}/wL`, printed[i]!, r / (w * L));
    });
    put('M1/wL²', 0.0996, b.most(c, 0, 60) / (w * L * L));
    put('M2/wL²', -0.0536, b.moment(c, 60) / (w * L * L));
    put('M3/wL²', -0.0357, b.moment(c, 120) / (w * L * L));
    put('M5/wL²', -0.0536, b.moment(c, 180) / (w * L * L));
  });
});
