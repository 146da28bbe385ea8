/** Connections against the printed tables read for them: whole tables where the scan can be read, cell by cell. */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { findFastener, STEEL_PLATES } from '../../src/catalog/fasteners.js';
import {
  Cg,
  dowelBearing,
  FeSteel,
  lateralValue,
  lateralValueGap,
  slipModulus,
  W,
} from '../../src/checks/codes/nds-2018/index.js';
import { WOOD } from './helpers/wood-published.js';
import { verificationSuite } from './record.js';

const suite = verificationSuite('connections');
const DATA = JSON.parse(
  readFileSync(join(dirname(fileURLToPath(import.meta.url)), 'data', 'connections.json'), 'utf8'),
);
const RIGHT = Math.PI / 2;

/** Cells the older suite compares already. */
const KNOWN = new Set(
  WOOD.filter((p) => p.topic === 'lag screw, steel side plate').map(
    (p) => `${p.inputs.ts_in} ${p.inputs.D_in} ${p.inputs.G}`,
  ),
);

it('lag screws through a steel plate: every readable cell of Table 12K', () => {
  const { source, where, provenance, G, rows } = DATA.table12K;
  let cells = 0;
  for (const [gage, lag, text] of rows as readonly [string, string, string][]) {
    const plate = STEEL_PLATES.find((s) => s.id === gage)!;
    const f = findFastener(lag)!;
    text.split(' ').forEach((printed, i) => {
      const g = G[Math.floor(i / 2)] as number;
      if (KNOWN.has(`${plate.thickness} ${f.D} ${g}`)) return;
      const theta = i % 2 === 0 ? 0 : RIGHT;
      const { Z } = lateralValue(
        {
          D: f.Dr!,
          nominalD: f.D,
          lm: 8 * f.D,
          ls: plate.thickness,
          Fem: dowelBearing(g, f.D, theta, true),
          Fes: plate.Fe,
          Fyb: f.Fyb,
          thetaMax: theta,
        },
        'single',
      );
      cells++;
      suite.compare({
        id: `12K-${gage}-${lag}-G${g}`,
        quantity: theta === 0 ? 'Z parallel' : 'Z perpendicular',
        clause: 'NDS 2018 12.3.1',
        source,
        where,
        provenance,
        published: Number(printed),
        ours: Z,
        unit: 'lb',
        tolerance: { abs: 5.01, reason: 'table rounds to 10 lb' },
      });
    });
  }
  expect(cells).toBeGreaterThan(140);
});

it('lag screw withdrawal: rows of Table 12.2A', () => {
  const { source, where, provenance, lags, rows } = DATA.table12_2A;
  for (const [g, cells] of Object.entries(rows as Record<string, (number | null)[]>)) {
    cells.forEach((printed, i) => {
      if (printed === null) return;
      const f = findFastener(lags[i])!;
      suite.compare({
        id: `12.2A-G${g}`,
        quantity: f.name,
        clause: 'NDS 2018 Eq. 12.2-1',
        source,
        where,
        provenance,
        published: printed,
        ours: W('lag', Number(g), f.D),
        unit: 'lb/in',
        tolerance: { abs: 0.51, reason: 'table rounds to 1 lb/in' },
      });
    });
  }
});

it('bolts in double shear between steel plates: Table 12G', () => {
  const { source, where, provenance, D, lm, parallel, perpendicular } = DATA.table12G;
  const z = (theta: number) =>
    lateralValue(
      {
        D,
        lm,
        ls: 0.25,
        Fem: dowelBearing(0.5, D, theta, true),
        Fes: FeSteel(0.25, 58000),
        Fyb: 45000,
        thetaMax: theta,
      },
      'double',
    );
  for (const [quantity, theta, published] of [
    ['Z parallel', 0, parallel],
    ['Z perpendicular', RIGHT, perpendicular],
  ] as const) {
    suite.compare({
      id: '12G-DF-L-1/2',
      quantity,
      clause: 'NDS 2018 12.3.1',
      source,
      where,
      provenance,
      published,
      ours: z(theta).Z,
      unit: 'lb',
      tolerance: { abs: 5.01, reason: 'table rounds to 10 lb' },
    });
  }
});

it('steel bearing strength of the plates the tables use', () => {
  for (const p of STEEL_PLATES.filter((s) => s.provenance === 'read')) {
    suite.compare({
      id: `steel-Fe-${p.id}`,
      clause: 'NDS 2018 I.2',
      source: 'NDS 2018 Tables 12B, 12K footnotes: Fe 61,850 psi (grade 33), 87,000 psi (A36)',
      where: DATA.table12K.where,
      provenance: 'read',
      published: p.Fe,
      ours: FeSteel(p.thickness, p.thickness < 0.25 ? 45000 : 58000),
      unit: 'psi',
      tolerance: { abs: 25.01, reason: 'table rounds to 50 psi' },
    });
  }
});

it('withdrawal examples', () => {
  const { source, where, provenance, nail, lag } = DATA.examples;
  const NEWTON = 4.4482216152605;
  const asked = {
    clause: 'NDS 2018 12.2',
    source,
    where,
    provenance,
    tolerance: { rel: 0.001, reason: 'converted from SI' },
  };
  suite.compare({
    ...asked,
    id: 'awc-E2.1a',
    published: (nail.W_N_per_m / NEWTON) * 0.0254,
    ours: W('smooth-nail', nail.G, nail.D),
    unit: 'lb/in',
  });
  const f = findFastener(lag.lag)!;
  suite.compare({
    ...asked,
    id: 'awc-E2.3',
    published: lag.force_N / NEWTON,
    ours: W('lag', lag.G, f.D) * (lag.length - lag.side - f.tip!),
    unit: 'lb',
  });
});

it('group action, and dowels across a gap of nothing', () => {
  const { source, where, provenance, values } = DATA.groupAction;
  for (const [n, published] of Object.entries(values as Record<string, number>)) {
    suite.compare({
      id: 'group-action-11.3.6A',
      quantity: `${n} in a row`,
      clause: 'NDS 2018 Eq. 11.3-1',
      source,
      where,
      provenance,
      published,
      ours: Cg(Number(n), 4, 1, 1.4e6 * 10, 1.4e6 * 5, slipModulus(1, false)),
      unit: '',
      tolerance: { abs: 0.0051, reason: 'table rounds to 0.01' },
    });
  }
  // A published bolt value once more, by the general dowel equations.
  const p = WOOD.find((q) => q.id === 'bolt-12A-DF-L-tm3.5-ts1.5-D0.5')!;
  const { D_in, tm_in, ts_in, G, Fyb_psi } = p.inputs;
  const Fe = dowelBearing(G, D_in, 0, true);
  suite.compare({
    id: `${p.id}-general`,
    clause: 'AWC TR12, general dowel equations; NDS 2018 Table 12A',
    source: p.source,
    where: p.where,
    provenance: p.provenance,
    published: p.expected.Z_par_lb,
    ours: lateralValueGap({ D: D_in, lm: tm_in, ls: ts_in, Fem: Fe, Fes: Fe, Fyb: Fyb_psi, thetaMax: 0 }, 0).Z,
    unit: 'lb',
    tolerance: { abs: 5.01, reason: 'table rounds to 10 lb' },
  });
});
