import { expect, it } from 'vitest';
import { findFastener, LAG_SCREWS, nailFyb, STEEL_PLATES } from '../../src/catalog/fasteners.js';
import {
  adjustedZ,
  CD,
  dowelBearing,
  type LateralValue,
  lateralValue,
  penetrationFactor,
  plasticMoment,
  W,
} from '../../src/checks/codes/nds-2018/index.js';
import { against, forgotten, type Published, published, topic } from './helpers/wood-published.js';
import { verificationSuite } from './record.js';

const suite = verificationSuite('wood-connections');
const RIGHT = Math.PI / 2;

interface Joint {
  readonly D: number;
  readonly Dr?: number;
  readonly lm: number;
  readonly ls: number;
  readonly Gm: number;
  /** Specific gravity of the side member, or the bearing strength of steel. */
  readonly Gs?: number;
  readonly FeSteel?: number;
  readonly Fyb: number;
  readonly rounded?: boolean;
  readonly shear?: 'single' | 'double';
}

/** Lateral value with the main and side members loaded at the given angles to their grain. */
function lateral(j: Joint, thetaM: number, thetaS: number): LateralValue {
  const rounded = j.rounded ?? true;
  return lateralValue(
    {
      D: j.Dr ?? j.D,
      nominalD: j.D,
      lm: j.lm,
      ls: j.ls,
      Fem: dowelBearing(j.Gm, j.D, thetaM, rounded),
      Fes: j.FeSteel ?? dowelBearing(j.Gs!, j.D, thetaS, rounded),
      Fyb: j.Fyb,
      thetaMax: Math.max(thetaM, thetaS),
    },
    j.shear ?? 'single',
  );
}

const TENS = 'table rounds to 10 lb';
/** Half of the table's step, and a sliver for a value that falls on the middle. */
const TO_TEN = { abs: 5.01 };

function fourWays(p: Published, j: Joint, clause: string): void {
  const asked = { clause, unit: 'lb', reason: TENS, tolerance: TO_TEN };
  against(suite, p, 'Z_par_lb', lateral(j, 0, 0).Z, asked);
  against(suite, p, 'Zs_perp_lb', lateral(j, 0, RIGHT).Z, asked);
  against(suite, p, 'Zm_perp_lb', lateral(j, RIGHT, 0).Z, asked);
  against(suite, p, 'Z_perp_lb', lateral(j, RIGHT, RIGHT).Z, asked);
}

it.each(topic('bolt, wood to wood single shear'))('$id', (p) => {
  const { D_in, tm_in, ts_in, G, Fyb_psi } = p.inputs;
  const bolt = { D: D_in, lm: tm_in, ls: ts_in, Gm: G, Gs: G, Fyb: Fyb_psi };
  fourWays(p, bolt, 'NDS 2018 12.3.1, Table 12A');
});

it('bolt with a steel side plate', () => {
  const p = published('fast-12B-DFL');
  const { D_in, tm_in, ts_in, G, Fyb_psi, Fes_psi } = p.inputs;
  expect(STEEL_PLATES.find((s) => s.id === '1/4')?.Fe).toBe(Fes_psi);
  const j = { D: D_in, lm: tm_in, ls: ts_in, Gm: G, FeSteel: Fes_psi, Fyb: Fyb_psi };
  const asked = { clause: 'NDS 2018 12.3.1, Table 12B', unit: 'lb', reason: TENS, tolerance: TO_TEN };
  against(suite, p, 'Z_par_lb', lateral(j, 0, 0).Z, asked);
  against(suite, p, 'Z_perp_lb', lateral(j, RIGHT, 0).Z, asked);
});

const lagOf = (D: number) => LAG_SCREWS.find((f) => f.D === D)!;

it.each(topic('lag screw, steel side plate'))('$id', (p) => {
  const { D_in, ts_in, G } = p.inputs;
  const f = lagOf(D_in);
  const plate = STEEL_PLATES.find((s) => s.thickness === ts_in)!;
  const j = { D: f.D, Dr: f.Dr!, lm: 8 * f.D, ls: plate.thickness, Gm: G, FeSteel: plate.Fe, Fyb: f.Fyb };
  const asked = { clause: 'NDS 2018 12.3.1, Table 12K', unit: 'lb', reason: TENS, tolerance: TO_TEN };
  against(suite, p, 'Z_par_lb', lateral(j, 0, 0).Z, asked);
  against(suite, p, 'Z_perp_lb', lateral(j, RIGHT, 0).Z, asked);
});

it.each(topic('lag screw, wood side member'))('$id', (p) => {
  const { D_in, ts_in, G } = p.inputs;
  const f = lagOf(D_in);
  const j = { D: f.D, Dr: f.Dr!, lm: 8 * f.D, ls: ts_in, Gm: G, Gs: G, Fyb: f.Fyb };
  fourWays(p, j, 'NDS 2018 12.3.1, Table 12J');
});

it.each(topic('nail, wood to wood single shear'))('$id', (p) => {
  const { D_in, ts_in, G } = p.inputs;
  const j = { D: D_in, lm: 10 * D_in, ls: ts_in, Gm: G, Gs: G, Fyb: nailFyb(D_in)! };
  against(suite, p, 'Z_lb', lateral(j, 0, 0).Z, {
    clause: 'NDS 2018 12.3.1, Table 12N',
    unit: 'lb',
    reason: 'table rounds to 1 lb',
    tolerance: { abs: 0.51 },
  });
});

it('nail with short penetration', () => {
  const p = published('nail-reduced-penetration');
  const { Z_lb, D_in, penetration_in, CD: duration } = p.inputs;
  expect(CD('ten-minutes')).toBe(duration);
  const factor = penetrationFactor('nail', penetration_in, D_in)!;
  const asked = { clause: 'NDS 2018 12.1.6', reason: 'printed to 3 or 4 figures' };
  against(suite, p, 'penetration_factor', factor, { ...asked, unit: '' });
  against(suite, p, 'Z_adj_lb', adjustedZ(Z_lb * factor, { CD: duration }), { ...asked, unit: 'lb' });
});

it('nails of worked examples', () => {
  const clause = 'NDS 2018 12.3.1';
  const nail = (id: string, extra: { Gs?: number; FeSteel?: number; Gm: number; lm: number; ls: number }): void => {
    const p = published(id);
    const { D_in, Fyb_psi } = p.inputs;
    expect(nailFyb(D_in)).toBe(Fyb_psi);
    const asked = { clause, unit: 'lb', reason: 'worked example, printed to 3 or 4 figures' };
    against(suite, p, 'Z_lb', lateral({ D: D_in, Fyb: Fyb_psi, ...extra }, 0, 0).Z, asked);
  };
  const i = (id: string) => published(id).inputs;
  const a = i('nail-awc-single-shear');
  nail('nail-awc-single-shear', { Gm: a.G, Gs: a.G, lm: a.lm_in, ls: a.ts_in });
  const b = i('nail-breyer-12.3');
  nail('nail-breyer-12.3', { Gm: b.Gm, Gs: b.Gs, lm: b.lm_in, ls: b.ls_in });
  const c = i('nail-breyer-12.4');
  nail('nail-breyer-12.4', { Gm: c.Gm, FeSteel: c.Fes_psi, lm: c.lm_in, ls: c.ls_in });
  const d = i('nail-breyer-12.5');
  nail('nail-breyer-12.5', { Gm: d.Gm, Gs: d.Gs, lm: d.lm_in, ls: d.ls_in });
});

it('plastic moment of a dowel', () => {
  const p = published('dowel-Mp');
  const asked = { clause: 'AWC TR12', unit: 'lb·in', reason: 'exact' };
  against(suite, p, 'Mp_lb_in', plasticMoment(p.inputs.Fyb_psi, p.inputs.D_in), asked);
});

it('bolt in double shear, by mode', () => {
  const p = published('bolt-double-shear-component');
  const { D_in, Fyb_psi, lm_in, ls_in } = p.inputs;
  const j: Joint = { D: D_in, lm: lm_in, ls: ls_in, Gm: 0.5, Gs: 0.5, Fyb: Fyb_psi, shear: 'double' };
  const { modes } = lateral(j, 0, RIGHT);
  const asked = {
    clause: 'NDS 2018 Table 12.3.1A',
    unit: 'lb',
    reason: 'independent arithmetic, bearing strengths rounded',
  };
  against(suite, p, 'IIIs_lb', modes.IIIs, asked);
  against(suite, p, 'IV_lb', modes.IV, asked);
});

it.each(topic('lag screw withdrawal'))('$id', (p) => {
  for (const name of Object.keys(p.expected.W_lb_per_in)) {
    const D = findFastener(`lag-${name.replace('/', '-')}`)!.D;
    against(suite, p, `W_lb_per_in.${name}`, W('lag', p.inputs.G, D), {
      clause: 'NDS 2018 Eq. 12.2-1',
      unit: 'lb/in',
      reason: 'table rounds to 1 lb/in',
      tolerance: { abs: 0.51 },
    });
  }
});

it.each(topic('nail withdrawal'))('$id', (p) => {
  for (const name of Object.keys(p.expected.W_lb_per_in)) {
    against(suite, p, `W_lb_per_in.${name}`, W('smooth-nail', p.inputs.G, Number(name)), {
      clause: 'NDS 2018 Eq. 12.2-3',
      unit: 'lb/in',
      reason: 'table rounds to 1 lb/in',
      tolerance: { abs: 0.51 },
    });
  }
});

it('leaves no connection check unanswered', () => expect(forgotten(suite, 'wood-connections')).toEqual([]));
