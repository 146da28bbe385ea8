/** A gable of rafters on a ridge beam: hand statics of one rafter, no thrust, every case closed. */
import { describe, expect, it } from 'vitest';
import { buildLoads } from '../loads/index.js';
import { place } from '../structure/place.js';
import { change } from '../structure/testing.js';
import { ridgeProject } from '../structure/testing-ridge.js';
import { analyse } from './analyse.js';
import { BALANCE_LIMIT } from './balance.js';

const placed = place(ridgeProject);
const structure = placed.value!;
const loads = buildLoads(ridgeProject, structure).value!;
const { value: effects, issues } = analyse(ridgeProject, structure, loads);
const errors = (p: typeof ridgeProject) => place(p).issues.filter((i) => i.severity === 'error');

describe('rafters on a ridge beam', () => {
  it('is placed without errors and closes in every case', () => {
    expect(placed.issues.filter((i) => i.severity === 'error')).toEqual([]);
    expect(issues).toEqual([]);
    expect(effects!.failure).toBeUndefined();
    for (const b of effects!.balance) {
      expect(b.errorApplied, b.case).toBeLessThan(BALANCE_LIMIT);
      expect(b.errorReactions, b.case).toBeLessThan(BALANCE_LIMIT);
    }
  });

  it('hangs the ridge beam under the rafters: they meet over its centre line', () => {
    const ridge = structure.members.find((m) => m.mark === 'B3')!;
    const eave = structure.members.find((m) => m.mark === 'B1')!;
    const roof = ridgeProject.cover.roofs[0]!;
    // From the inner top corner of the eave beam the rafters' bottom edge rises to the middle.
    const run = ridge.start.x - (eave.start.x + eave.section.width / 2);
    const top = (m: typeof ridge) => m.start.z + m.section.depth / 2;
    expect(top(ridge) - top(eave)).toBeCloseTo(run * Math.tan(roof.pitch), 9);
    const rafters = structure.members.filter((m) => m.role === 'rafter');
    for (const r of rafters) expect(r.end.x).toBeCloseTo(ridge.start.x, 9);
    expect(rafters.length % 2).toBe(0);
  });

  it('a rafter under roof live load by hand: the lever between its two seats', () => {
    const c = effects!.cases.indexOf('Lr');
    const psf = loads.cases[c]!.plan![0]!.psf;
    const inner = structure.members.filter((m) => m.role === 'rafter')[3]!;
    const ridge = structure.members.find((m) => m.mark === 'B3')!;
    const low = structure.members.find((m) => m.mark === 'B1')!;
    const roof = ridgeProject.cover.roofs[0]!;
    // Plan distances from the ridge line, inches.
    const whole = ridge.start.x - low.start.x + low.section.width / 2 + roof.eave;
    const q = (psf * roof.framing.spacing) / 144;
    const [x1, x2] = [ridge.start.x - low.start.x, ridge.section.width / 4];
    const high = (q * whole * (x1 - whole / 2)) / (x1 - x2);
    const of = (beam: string) => {
      const j = structure.joints.find((k) => k.ties[0]!.part === inner.id && k.ties[1]!.part === beam)!;
      return effects!.joints.get(j.id)!.force[c]!;
    };
    expect(-of('B3').z).toBeCloseTo(high, 6);
    expect(-of('B1').z).toBeCloseTo(q * whole - high, 6);
    // No thrust: what presses straight down is handed straight down.
    expect(Math.abs(of('B1').x) + Math.abs(of('B3').x)).toBeLessThan(1e-9);
  });

  it('is refused when the beam is off the ridge, missing, or stands under trusses', () => {
    const b3 = (x: number) =>
      change(ridgeProject, {
        cover: {
          beams: (old) => old.map((b) => (b.mark === 'B3' ? { ...b, from: { ...b.from, x }, to: { ...b.to, x } } : b)),
        },
      });
    expect(errors(b3(6)).map((i) => i.code)).toContain('ridge-beam-off-ridge');
    const roof = (by: object) =>
      change(ridgeProject, { cover: { roofs: (old) => old.map((r) => ({ ...r, ...by }) as typeof r) } });
    expect(errors(roof({ ridgeBeam: 'B9' })).map((i) => i.code)).toContain('beam-unknown');
    expect(errors(roof({ ridgeBeam: undefined })).map((i) => i.code)).toContain('framing-unsupported');
    const trusses = change(ridgeProject, {
      cover: {
        roofs: (old) =>
          old.map(
            (r) =>
              ({
                ...r,
                framing: {
                  kind: 'common-truss',
                  spacing: 24,
                  chord: '2x4',
                  wood: {
                    species: 'Douglas Fir-Larch',
                    grade: 'No. 2',
                    treatment: 'none',
                    incised: false,
                    service: 'dry',
                  },
                  heel: 5.5,
                  bottomPitch: 0,
                  weight: 6,
                },
              }) as typeof r,
          ),
      },
    });
    expect(errors(trusses).map((i) => i.code)).toContain('ridge-beam-under-trusses');
  });
});
