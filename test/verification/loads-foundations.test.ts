import { describe, expect, it } from 'vitest';
import { SOIL_CLASSES } from '../../src/catalog/soils.js';
import { effectiveThickness } from '../../src/checks/codes/aci-318-14/index.js';
import {
  constrainedEmbedment,
  effectiveWidthSquare,
  embedmentA,
  lateralBearing,
  PRESSURE_DEPTH_CAP,
  requiredBearingArea,
} from '../../src/checks/codes/ibc-2018/index.js';
import { against, EXACT, leaveOut, within, withinShare } from './loads-published.js';
import { verificationSuite } from './record.js';

const suite = verificationSuite('loads-foundations');
const FT = 12;
const asked = (clause: string, unit: string, tolerance = EXACT, note?: string) => ({
  clause,
  tolerance,
  unit,
  ...(note ? { note } : {}),
});

describe('bearing', () => {
  it('F01 the soil table of the catalogue', () => {
    const table = (unit: string) => asked('IBC 2018 Table 1806.2', unit);
    SOIL_CLASSES.forEach((soil, i) => {
      expect(soil.number).toBe(i + 1);
      against(suite, 'F01', `vertical_psf.${i}`, soil.bearing, table('psf'));
      against(suite, 'F01', `lateral_psf_per_ft.${i}`, soil.lateral, table('psf/ft'));
      if (soil.friction !== undefined) against(suite, 'F01', `friction.${i}`, soil.friction, table(''));
      if (soil.cohesion !== undefined) against(suite, 'F01', `cohesion_psf.${i}`, soil.cohesion, table('psf'));
    });
  });

  it('F06 a state’s table of pier footing areas', () => {
    const loads = [3200, 3700, 4250, 4950, 5650, 5300, 6150, 7050];
    const soils = [1000, 1500, 2000, 3000, 4000];
    loads.forEach((P, i) => {
      soils.forEach((qa, j) => {
        against(
          suite,
          'F06',
          `area_in2.${i}.${j}`,
          requiredBearingArea(P, qa),
          asked('IBC 2018 1806.1, 1809.4', 'in²', within(0.6, 'printed to 1 in²')),
        );
      });
    });
  });

  it('F11 deck footing sizes as a check on area', () => {
    const tolerance = within(0.5, 'table rounds to the nearest inch');
    [20, 40, 60, 80, 100, 120, 140, 160].forEach((ft2, i) => {
      const A = requiredBearingArea(50 * ft2, 1500);
      const clause = 'IBC 2018 1806.1, 1809.4';
      against(
        suite,
        'F11',
        `square_in.${i}`,
        Math.sqrt(A),
        asked(clause, 'in', tolerance, 'deck table, 40 + 10 psf: a check on area only'),
      );
      against(
        suite,
        'F11',
        `diameter_in.${i}`,
        Math.sqrt((4 * A) / Math.PI),
        asked(clause, 'in', tolerance, 'deck table, 40 + 10 psf: a check on area only'),
      );
    });
  });
});

describe('embedment', () => {
  const rel = withinShare(0.001, 'printed to four figures');

  it('F03 restrained at grade, pole factor 2, metric answers', () => {
    const PA_PER_PSF = 47.88026;
    const b = 4.5 * FT;
    const d = constrainedEmbedment(30000, 3 * FT, b, 350 * 2);
    const S1 = lateralBearing(350, d / 3, 2);
    against(suite, 'F03', 'd_m', d * 0.0254, asked('IBC 2018 Eq. 18-2', 'm', rel));
    against(suite, 'F03', 'S1_Pa', S1 * PA_PER_PSF, asked('IBC 2018 1806.3', 'Pa', rel));
    against(suite, 'F03', 'S3_Pa', lateralBearing(350, d, 2) * PA_PER_PSF, asked('IBC 2018 1806.3', 'Pa', rel));
    against(suite, 'F03', 'A_ft', embedmentA(30000, S1, b), asked('IBC 2018 Eq. 18-1', 'ft', rel));
  });

  it('F04 restrained at grade, pressure capped at 12 ft', () => {
    const b = effectiveWidthSquare(126);
    const d = constrainedEmbedment(33700, 39.4 * FT, b, 150 * 1.33);
    const note = 'one-third increase taken by the source; ours is passed the increased value and never takes it itself';
    against(suite, 'F04', 'diagonal_in', b, asked('IBC 2018 1807.3.2', 'in', rel));
    against(suite, 'F04', 'd_ft', d / FT, asked('IBC 2018 Eq. 18-2', 'ft', rel, note));
    against(
      suite,
      'F04',
      'pressure_psf',
      lateralBearing(150, Math.min(d, PRESSURE_DEPTH_CAP), 1.33),
      asked('IBC 2018 1807.3.2.2', 'psf', rel, note),
    );
  });

  it('F05 term A at a trial depth', () => {
    const S1 = lateralBearing(150, (6 * FT) / 3, 1.33);
    against(
      suite,
      'F05',
      'A_ft',
      embedmentA(3000, S1, FT),
      asked('IBC 2018 Eq. 18-1', 'ft', within(0.02, 'printed to 0.1 ft')),
    );
  });
});

describe('plain concrete', () => {
  it('F09 the deduction against soil', () => {
    against(suite, 'F09', 'effectiveThickness_in', effectiveThickness(9), asked('ACI 318-14 14.5.1.7', 'in'));
    leaveOut(
      suite,
      'F10',
      'ACI 318-14 14.5.2.1',
      'no printed answer: the number would be our own arithmetic (held by a unit test)',
    );
  });
});
