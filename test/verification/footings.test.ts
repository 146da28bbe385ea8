/** Footings under moment and side force against published examples. */
import { describe, it } from 'vitest';
import {
  BOLTS,
  basicBreakout,
  edgeFactor,
  KC_CAST_IN,
  PHI_ANCHOR,
  pullout,
  steelTension,
} from '../../src/checks/codes/aci-318-14/index.js';
import { depthTrial, heldPostDepth } from '../../src/checks/codes/ibc-2018/index.js';
import { rectangularFootingPressure, roundFootingPressure } from '../../src/checks/codes/statics/index.js';
import { verificationSuite } from './record.js';

const suite = verificationSuite('footings');
const FT = 12;

describe('embedment', () => {
  const SIGNS =
    'Calculations for freestanding signs in a city’s public permit records, Florida Building Code 1807.3.2.1 (the text of the IBC)';
  const WHERE = 'archives.ci.zephyrhills.fl.us, WebLink document 178567';
  const signs = [
    { page: 35, P: 1740, h: 4.17, b: 5.5, depth: 4, published: 3.97 },
    { page: 40, P: 890, h: 3.4, b: 3, depth: 4, published: 3.54 },
    { page: 30, P: 80, h: 3.2, b: 1.5, depth: 2.67, published: 1.53 },
  ];
  it.each(signs)('depth asked for at a trial depth, page $page', ({ page, P, h, b, depth, published }) => {
    // Lateral value 150 psf/ft, doubled by the source (1806.3.4); its footing depth is the trial.
    const t = depthTrial(depth * FT, { P, Mg: P * h * FT, b: b * FT, lateral: 2 * 150 });
    suite.compare({
      id: `embed.free.${page}`,
      clause: 'IBC 2018 Eq. 18-1',
      source: SIGNS,
      where: `${WHERE}, page ${page}`,
      provenance: 'read',
      published,
      ours: t.needs,
      tolerance: { abs: 0.012, reason: 'printed to 0.01 ft, its force to 10 lb' },
      unit: 'ft',
    });
  });
  it('restrained at grade, from the moment', () => {
    suite.compare({
      id: 'embed.held.moment',
      clause: 'IBC 2018 Eq. 18-3',
      source: 'Worksheet “FlagpoleFooting”, IBC 2018 1807.3: 30 000 lb at 3 ft, 4.5 ft wide, 350 psf/ft doubled',
      where: 'public copy, scribd.com document 560795266',
      provenance: 'read',
      published: 1.509,
      ours: heldPostDepth({ P: 30000, Mg: 9e4 * FT, b: 4.5 * FT, lateral: 700 }) * 0.0254,
      tolerance: { abs: 0.001, reason: 'printed to 1 mm' },
      unit: 'm',
    });
  });
  it('leaves out the literal reading of the 12 ft limit', () => {
    suite.leaveOut({
      id: 'embed.free.deep',
      clause: 'IBC 2018 Eq. 18-1',
      source: 'Spreadsheet “Flagpole”, 100 kip at 62.11 ft, 6 ft wide, 30.55 ft deep',
      reason:
        'it counts d/3 up to 12 ft, we count d up to 12 ft, which is the safer reading; such depths do not occur here',
    });
  });
});

describe('eccentric footings', () => {
  const KPA_PER_PSF = 0.04788026;
  it('one way, a part lifted', () => {
    const inch = (m: number): number => m / 0.0254;
    const p = rectangularFootingPressure(inch(7), inch(7), 2687.5 / 0.0044482216, inch(1.563), 0)!;
    suite.compare({
      id: 'pressure.square.one-way',
      clause: 'statics',
      source: 'Worked example of a crane foundation: 2687.5 kN, 7 m square, e = 1.563 m',
      where: 'public web page “tower crane foundation design calculation example”',
      provenance: 'read',
      published: 132.2,
      ours: p.qMax * KPA_PER_PSF,
      tolerance: { abs: 0.1, reason: 'printed to 0.1 kPa' },
      unit: 'kPa',
    });
  });
  const ROUND: readonly (readonly [number, number])[] = [
    [0.25, 2.0],
    [0.3, 2.2],
    [0.35, 2.43],
    [0.4, 2.7],
    [0.45, 3.1],
    [0.5, 3.55],
    [0.55, 4.22],
    [0.6, 4.92],
    [0.65, 5.9],
  ];
  it.each(ROUND)('round base, e/R = %d', (share, k) => {
    const D = 24;
    suite.compare({
      id: 'pressure.round',
      quantity: `k at e/R = ${share}`,
      clause: 'statics',
      source: 'Roark, Formulas for Stress and Strain: greatest stress k·P/A of a solid circle without tension',
      where: 'recalled',
      provenance: 'memory',
      published: k,
      ours: roundFootingPressure(D, 1000, (share * D) / 2)!.qMax / (1000 / (Math.PI * 144)) / 144,
      tolerance: { rel: 0.02, reason: 'an old table, read off curves' },
      unit: '',
    });
  });
  it('leaves out what was not found or recalled well', () => {
    suite.leaveOut({
      id: 'pressure.round.rim',
      clause: 'statics',
      source: 'The same table of Roark beyond e/R = 0.65',
      reason: 'recalled values differ by 3 to 5 %; the closed form is held by unit tests (half circle, kern)',
    });
    suite.leaveOut({
      id: 'pressure.square.both-ways',
      clause: 'statics',
      source: 'Chokshi, Analysis of eccentrically loaded rectangular footing resting on soil',
      reason:
        'its numbers were not in the part that could be read; the corner pyramid is held by closed form in unit tests',
    });
    suite.leaveOut({
      id: 'plain.footing',
      clause: 'ACI 318-14 14.5',
      source: 'any worked plain concrete footing',
      reason: 'none with printed answers was found',
    });
  });
});

describe('anchor bolts', () => {
  const GROUP = 'Worked example “Tension only” of cast-in headed 1 in bolts to ACI 318-19: hef 12 in, 3000 psi, 58 ksi';
  const AT = 'public copy, scribd.com document 718396519';
  const kip = (id: string, quantity: string, clause: string, published: number, ours: number) =>
    suite.compare({
      id,
      quantity,
      clause,
      source: GROUP,
      where: AT,
      provenance: 'read',
      published,
      ours: ours / 1000,
      tolerance: { abs: 0.02, reason: 'printed to 0.01 kip; tensile area to three figures' },
      unit: 'kip',
    });
  it('deep headed bolts', () => {
    const inch = BOLTS.find((b) => b.d === 1)!;
    kip('anchor.breakout', 'Nb', 'ACI 318-14 17.4.2.2', 55.12, basicBreakout(KC_CAST_IN, 3000, 12));
    kip('anchor.steel', 'Nsa', 'ACI 318-14 17.4.1.2', 35.13, steelTension(inch.Ase, 58000) / PHI_ANCHOR.steelTension);
    kip('anchor.pullout', 'φNpn at 1.0 in² of head', 'ACI 318-14 17.4.3.4', 16.8, pullout(3000, 1));
  });
  it('the usual form and the edge factor', () => {
    const source =
      'Design guide to the breakout provisions of ACI 318-19, group of adhesive anchors: kc 21, hef 5.75 in, 4000 psi, edge 8 in';
    const where = 'viewer.joomag.com, edition of October 2025, page 86';
    const common = { source, where, provenance: 'read' as const };
    suite.compare({
      ...common,
      id: 'anchor.breakout',
      quantity: 'Nb with kc = 21',
      clause: 'ACI 318-14 17.4.2.2',
      published: 18313,
      ours: basicBreakout(21, 4000, 5.75),
      tolerance: { abs: 1, reason: 'printed to 1 lb' },
      unit: 'lb',
    });
    suite.compare({
      ...common,
      id: 'anchor.edge',
      quantity: 'ψed,N',
      clause: 'ACI 318-14 17.4.2.5',
      published: 0.978,
      ours: edgeFactor(8, 5.75),
      tolerance: { abs: 0.0005, reason: 'printed to three figures' },
      unit: '',
    });
  });
});
