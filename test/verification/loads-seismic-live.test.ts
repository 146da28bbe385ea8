/** Earthquake combinations, roof live load, open-roof snow and runoff against permit sheets and printed rules. */
import { describe, it } from 'vitest';
import { makeShed } from '../../src/analysis/testing.js';
import { roofRunoff } from '../../src/checks/codes/roof-drainage/index.js';
import {
  approximatePeriod,
  flatRoofSnow,
  minimumRoofSnow,
  rainOnSnow,
  reductionR2,
  roofLiveLoad,
  seismicCs,
  slopeCs,
  slopedRoofSnow,
  snowDensity,
  thermalCt,
  velocityPressure,
} from '../../src/loads/codes/asce7/index.js';
import { buildLoads } from '../../src/loads/index.js';
import type { Combination } from '../../src/loads/model.js';
import { type Suite, verificationSuite } from './record.js';

const suite = verificationSuite('loads-seismic-live');
type Given = Parameters<Suite['compare']>[0];
const put = (
  id: string,
  quantity: string,
  clause: string,
  published: number,
  ours: number,
  unit: string,
  tolerance: Given['tolerance'],
  from: Pick<Given, 'source' | 'where'> & { readonly note?: string },
): void => suite.compare({ id, quantity, clause, published, ours, unit, tolerance, provenance: 'read', ...from });
const RAD = Math.PI / 180;

describe('combinations with an earthquake', () => {
  const f = makeShed();
  const given = <T>(value: T) => ({ value, state: 'given' as const, from: '', path: '' });
  const at = (SDS: number) => {
    const seismic = { category: given('D1' as const), sds: given(SDS) };
    const project = { ...f.project, basis: { ...f.project.basis, seismic } };
    return buildLoads(project, f.structure).value!;
  };
  /** Factor on dead load in the first combination of a method whose earthquake has factor `Eh` and whose dead load is small or not. */
  const dead = (
    list: readonly Combination[],
    cases: readonly { kind: string }[],
    Eh: number,
    uplift: boolean,
  ): number =>
    list
      .find((c) => c.uplift === uplift && c.terms.some((t) => cases[t.case]!.kind === 'E' && t.factor === Eh))!
      .terms.find((t) => cases[t.case]!.kind === 'D')!.factor;

  it('Q01, Q02 the vertical effect in the factor on dead load', () => {
    const exact = { abs: 1e-9, reason: 'a printed expression evaluated: exact' };
    const asd = {
      source: 'wood shear wall calculation, ASD: compression (1 + 0.7·0.2·SDS)·D, tension (0.6 − 0.7·0.2·SDS)·D',
      where: 'https://publicdocs.santa-ana.org/BuildingWeblink/0/doc/370270/Page70.aspx',
    };
    const lrfd = {
      source: 'load combinations 1.2D + Ev + Eh + L + 0.2S and 0.9D − Ev + Eh with Ev = 0.2·SDS·D, ASCE 7-16 2.3.6',
      where: 'https://idecad.atlassian.net/wiki/pages/diffpages.action?originalId=2339569668&pageId=2342846559',
    };
    for (const SDS of [0.5, 1, 1.2]) {
      const l = at(SDS);
      const q = (name: string): string => `${name}, SDS ${SDS}`;
      const c = 'ASCE 7-16 2.4.5';
      put('Q01', q('D with 0.7E'), c, 1 + 0.14 * SDS, dead(l.combinations, l.cases, 0.7, false), '', exact, asd);
      put('Q01', q('0.6D with 0.7E'), c, 0.6 - 0.14 * SDS, dead(l.combinations, l.cases, 0.7, true), '', exact, asd);
      const s = 'ASCE 7-16 2.3.6';
      put('Q02', q('1.2D with E'), s, 1.2 + 0.2 * SDS, dead(l.strength, l.cases, 1, false), '', exact, lrfd);
      put('Q02', q('0.9D with E'), s, 0.9 - 0.2 * SDS, dead(l.strength, l.cases, 1, true), '', exact, lrfd);
    }
  });

  it('Q03 a house of 2019, TL 6 s: period and coefficients', () => {
    const from = {
      source:
        'permit calculation of a residence: SDS 0.90, SD1 0.49, hn 25 ft, R 6.5 (inferred from two printed results)',
      where: 'https://lfportal.everettwa.gov/WebLink/0/doc/1333458/Page57.aspx',
    };
    const T = approximatePeriod(25 * 12, '7-16');
    const past = seismicCs({ SDS: 0.9, SD1: 0.49, S1: 0, R: 6.5, Ie: 1, T, TL: T / 2 }, '7-16');
    put('Q03', 'Ta', 'ASCE 7-16 Eq. 12.8-7', 0.22, T, 's', { abs: 0.006, reason: 'printed to 0.01' }, from);
    // The sheet prints SD1·TL/(T²·R/Ie) for its TL of 6 s though T is shorter; the branch is linear in TL.
    put(
      'Q03',
      'Cs past TL, for TL = 6 s',
      'ASCE 7-16 Eq. 12.8-4',
      9.09,
      past.upper * (6 / (T / 2)),
      '',
      { rel: 0.02, reason: 'the sheet’s SD1 is printed to two figures' },
      from,
    );
  });
});

describe('roof live load and snow of a steep open cover', () => {
  const from = {
    source: 'loads of a timber gable cover: 12 in 12, pg 56 psf, unheated, exposure C partially exposed, 107 mph',
    where: 'https://www.scribd.com/document/872286235/Loads',
  };
  const cent = { abs: 0.006, reason: 'printed to 0.01' };
  it('Q04 step by step', () => {
    put('Q04', 'R2', 'ASCE 7-16 4.8.2', 0.6, reductionR2(12, '7-16'), '', { abs: 1e-9, reason: 'exact' }, from);
    put(
      'Q04',
      'Lr',
      'ASCE 7-16 4.8.2',
      12,
      roofLiveLoad(20, 0, 12, '7-16'),
      'psf',
      { abs: 1e-9, reason: 'exact' },
      from,
    );
    put('Q04', 'γ', 'ASCE 7-16 Eq. 7.7-1', 21.28, snowDensity(56, '7-16'), 'pcf', cent, from);
    const Ct = thermalCt('unheated-or-open', '7-16', undefined) as number;
    put('Q04', 'Ct', 'ASCE 7-16 Table 7.3-2', 1.2, Ct, '', { abs: 1e-9, reason: 'exact' }, from);
    const pf = flatRoofSnow(56, 1, Ct, 1, '7-16');
    put('Q04', 'pf', 'ASCE 7-16 Eq. 7.3-1', 47.04, pf, 'psf', cent, from);
    const Cs = slopeCs(45 * RAD, Ct, false, false, '7-16');
    put('Q04', 'Cs', 'ASCE 7-16 Fig. 7.4-1', 1, Cs, '', { abs: 1e-9, reason: 'exact' }, from);
    put('Q04', 'ps', 'ASCE 7-16 Eq. 7.4-1', 47.04, slopedRoofSnow(pf, Cs, '7-16'), 'psf', cent, from);
    const none = { abs: 1e-9, reason: 'the sheet says there is none' };
    put('Q04', 'rain on snow', 'ASCE 7-16 7.10', 0, rainOnSnow(56, 'II', 45 * RAD, 132, '7-16'), 'psf', none, from);
    put('Q04', 'pm', 'ASCE 7-16 7.3.4', 0, minimumRoofSnow(56, 'II', 45 * RAD, '7-16'), 'psf', none, from);
    put(
      'Q04',
      'qz',
      'ASCE 7-16 Eq. 26.10-1',
      22.422,
      velocityPressure({ Kz: 0.9, Kzt: 1, Kd: 0.85, Ke: 1, V: 107 }, '7-16'),
      'psf',
      { abs: 0.0006, reason: 'printed to 0.001' },
      from,
    );
  });

  it('Q05 an open-air structure, fully exposed', () => {
    const open = {
      source: 'load calculation of a canopy: pg 20 psf, Ce 0.9, unheated and open-air, risk category II',
      where: 'https://www.scribd.com/document/694096767/Load-Calculation',
    };
    const Ct = thermalCt('unheated-or-open', '7-16', undefined) as number;
    put('Q05', 'Ct', 'ASCE 7-16 Table 7.3-2', 1.2, Ct, '', { abs: 1e-9, reason: 'exact' }, open);
    put('Q05', 'pf', 'ASCE 7-16 Eq. 7.3-1', 15.12, flatRoofSnow(20, 0.9, Ct, 1, '7-16'), 'psf', cent, open);
  });

  it('Q06 a heated clubhouse', () => {
    put(
      'Q06',
      'pf',
      'ASCE 7-16 Eq. 7.3-1',
      30,
      flatRoofSnow(43, 1, 1, 1, '7-16'),
      'psf',
      { abs: 0.5, reason: 'printed to the pound' },
      {
        source: 'structural calculations of a clubhouse: pg 43 psf, Ce = Ct = Is = 1',
        where: 'https://laserfiche.rexburg.org/WebLink/DocView.aspx?dbid=0&id=530489&repo=Rexburg',
        note: 'an ASCE 7-10 sheet; the equation is the same',
      },
    );
  });
});

describe('runoff', () => {
  it('Q07 a thousand square feet at one inch an hour', () => {
    put(
      'Q07',
      'Q for 1000 ft² at 1 in/h',
      'plumbing code basis',
      10.4,
      roofRunoff(1000 * 144, 1),
      'gpm',
      { abs: 0.006, reason: 'the printed factor 0.0104 has three figures' },
      { source: 'gutter sizing method: area · i · 0.0104', where: 'https://premiergutterskc.com/tools/gutter-sizer/' },
    );
  });
});
