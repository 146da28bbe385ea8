import { describe, expect, it } from 'vitest';
import { volume } from '../../base/geometry/index.js';
import { area as areaOf } from '../../base/plane.js';
import { dot, flat, sub, unit, type Vec3 } from '../../base/vec.js';
import type { GableRoof, Project } from '../../project/model.js';
import { planeAt } from '../house/profile.js';
import type { OverlayPlaced } from '../model.js';
import { piecesOf } from '../pieces/index.js';
import { place } from '../place.js';
import { planeHeight } from '../surfaces.js';
import { change } from '../testing.js';
import { overlayProject, overlayWith } from '../testing-overlay.js';
import { inOverlay } from './frame.js';
import { overlaySolid } from './pieces.js';

/** Thickness of a 7/16 panel in the catalogue. */
const PANEL = 0.437;

const placed = (p: Project) => {
  const { value, issues } = place(p);
  return { structure: value, issues, overlay: value?.overlays?.[0] };
};
const codes = (p: Project): string[] => place(p).issues.map((i) => i.code);

const { structure, overlay, issues } = placed(overlayProject);
const o = overlay!;
const s = structure!;
const oldTop = (p: Vec3): number => planeAt(s.housePlanes.find((h) => h.id === 'HR1-1')!.outline, p);
const newTop = (p: Vec3): number => Math.min(...s.surfaces.map((f) => planeHeight(f, p)));
const member = (id: string) => o.members.find((m) => m.id === id)!;
const solid = (x: OverlayPlaced, id: string) => overlaySolid(x, x.members.find((m) => m.id === id)!)!;

describe('a gable over the old roof', () => {
  it('places without errors', () => {
    expect(issues.filter((i) => i.severity === 'error')).toEqual([]);
  });

  it('by hand: old eave 94.33, new eave 100.63, ridge 142.88', () => {
    // Plate 97 + heel 4 − 16 · 5/12.
    expect(o.frame.origin.z).toBeCloseTo(97 + 4 - (16 * 5) / 12, 9);
    // Bearing 100 + heel 5-1/2 − 16 · 4/12 + a panel of 0.437 in, plumb.
    const eave = 100 + 5.5 - 16 / 3 + PANEL * Math.hypot(1, 1 / 3);
    expect(o.eave).toBeCloseTo(eave, 9);
    // Half width: 9 ft, half the beam, overhang.
    expect(o.half).toBeCloseTo(108 + 2.75 + 16, 9);
    expect(o.ridge).toBeCloseTo(eave + o.half / 3, 9);
    expect(o.start).toBeCloseTo(((eave - o.frame.origin.z) * 12) / 5, 9);
    expect(o.head).toBeCloseTo(((o.ridge - o.frame.origin.z) * 12) / 5, 9);
    expect(o.shape.halfWidth).toBeCloseTo(o.half, 9);
    expect((o.shape.planAngle * 180) / Math.PI).toBeCloseTo(51.34, 2);
  });

  it('valley ends lie on both roofs, and the length is between them', () => {
    for (const v of o.valleys) {
      for (const p of [v.foot, v.head]) {
        expect(p.z).toBeCloseTo(oldTop(p), 6);
        expect(p.z).toBeCloseTo(newTop(p), 6);
      }
      expect(v.length).toBeCloseTo(Math.hypot(v.head.x - v.foot.x, v.head.y - v.foot.y, v.head.z - v.foot.z), 9);
    }
  });

  it('new roof pieces lie in the slopes of the cover, joined to them, with the area between', () => {
    for (const f of o.faces) {
      for (const p of f.outline) expect(p.z).toBeCloseTo(newTop(p), 6);
      expect(areaOf(f.outline.map(flat))).toBeCloseTo(f.planArea, 6);
      expect(f.area).toBeCloseTo(f.planArea * Math.hypot(1, 4 / 12), 6);
      // The cover's own surface ends where this one begins.
      const own = s.surfaces.find((q) => `${q.id}-over` === f.id)!;
      expect(own.onto).toBeDefined();
      const at = own.origin.y + own.u.y * own.onto!;
      expect(f.outline[0]!.y).toBeCloseTo(at, 9);
    }
  });

  it('the tributary areas of the fill rafters are the whole of it', () => {
    const sum = o.fills.reduce((t, f) => t + f.area, 0);
    expect(sum).toBeCloseTo(
      o.faces.reduce((t, f) => t + f.planArea, 0),
      6,
    );
  });

  it('fill rafters: cut lengths and seats are those of the solids', () => {
    for (const fill of o.fills) {
      for (const k of [1, 2]) {
        const m = member(`${fill.mark}-0${k}`);
        const body = solid(o, m.id);
        expect(volume(body)).toBeGreaterThan(0);
        const axis = unit(sub(m.end, m.start));
        const along = body.vertices.map((p) => dot(axis, p));
        expect(Math.max(...along) - Math.min(...along)).toBeCloseTo(fill.long, 6);
        // Nothing of it reaches into the plate or through the sheathing.
        for (const p of body.vertices) {
          expect(p.z).toBeGreaterThan(oldTop(p) + 1.5 * Math.hypot(1, 5 / 12) - 1e-6);
          expect(p.z).toBeLessThan(newTop(p) - PANEL * Math.hypot(1, 1 / 3) + 1e-6);
        }
        const touching = body.vertices.filter((p) => Math.abs(p.z - oldTop(p) - 1.5 * Math.hypot(1, 5 / 12)) < 1e-6);
        expect(touching.length).toBeGreaterThanOrEqual(3);
      }
    }
    // Each is shorter than the last by spacing · old / new over the cosine: 24 · 5/4 = 30 in of run.
    const [a, b] = o.fills;
    expect(a!.run - b!.run).toBeCloseTo(30, 9);
    expect(a!.long - b!.long).toBeCloseTo(30 * Math.hypot(1, 4 / 12), 9);
  });

  it('plates lie flat under the new sheathing, as long as listed', () => {
    for (const k of [1, 2]) {
      const m = member(`VP1-0${k}`);
      const body = solid(o, m.id);
      for (const p of body.vertices) {
        expect(p.z).toBeGreaterThan(oldTop(p) - 1e-6);
        expect(p.z).toBeLessThan(newTop(p) - PANEL * Math.hypot(1, 1 / 3) + 1e-6);
      }
      const axis = unit(sub(m.end, m.start));
      const along = body.vertices.map((p) => dot(axis, p));
      expect(Math.max(...along) - Math.min(...along)).toBeCloseTo(m.length, 6);
    }
  });

  it('the ridge board ends on the plates, as long as listed', () => {
    const body = solid(o, o.board.mark);
    const xs = body.vertices.map((p) => inOverlay(o.frame, p).x);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(o.board.long, 6);
    const low = Math.min(...body.vertices.map((p) => p.z));
    const short = body.vertices.filter((p) => Math.abs(p.z - low) < 1e-6).map((p) => inOverlay(o.frame, p).x);
    expect(Math.max(...short) - Math.min(...short)).toBeCloseTo(o.board.short, 6);
  });

  it('every member of it is drawn', () => {
    const parts = new Set(piecesOf(s, overlayProject).map((p) => p.part));
    for (const m of o.members) expect(parts, m.id).toContain(m.id);
    for (const f of o.faces) expect(parts).toContain(f.mark);
  });

  it('no ledger, wall flashing or wall height is asked of the edge that goes on', () => {
    expect(codes(overlayProject)).not.toContain('cover-above-wall');
    expect(codes(overlayProject)).not.toContain('roof-overlaps-house-roof');
    expect(s.roofs[0]!.attached).toBe(true);
  });
});

describe('what does not go', () => {
  it.each<[string, Project]>([
    ['house-plane-unknown', overlayWith({}, { plane: 'HR9-1' })],
    ['overlay-free-standing', change(overlayProject, { cover: { attachment: 'free-standing' as const } })],
    ['overlay-plane-direction', overlayWith({}, {}, { ridge: 'y' })],
    ['overlay-frame-on-house', overlayWith({}, {}, { overhang: 30 })],
    ['overlay-eave-low', overlayWith({ bearing: 92 })],
    ['overlay-eave-unsupported', overlayWith({ bearing: 106 })],
    ['overlay-over-old-ridge', overlayWith({}, {}, { min: { x: -264, y: -150 } })],
    ['valley-off-house-roof', overlayWith({}, {}, { min: { x: -100, y: -456 } })],
    [
      'overlay-covers-standing',
      overlayWith({}, {}, { standing: [{ name: 'flue', kind: 'vent', at: { x: 20, y: -20 }, width: 6, depth: 6 }] }),
    ],
    [
      'valley-into-standing',
      overlayWith({}, {}, { standing: [{ name: 'flue', kind: 'vent', at: { x: 136, y: -8 }, width: 6, depth: 6 }] }),
    ],
    [
      'beam-into-eave',
      change(overlayProject, { cover: { beams: (old) => old.map((b) => ({ ...b, from: { ...b.from, y: 4 } })) } }),
    ],
    ['bearing-too-short', overlayWith({}, { plate: 'thin' })],
    ['ridge-board-too-shallow', overlayWith({}, { ridge: 'thin' })],
  ])('%s', (code, project) => {
    const thin = {
      kind: 'solid',
      size: '2x3',
      species: 'Douglas Fir-Larch',
      grade: 'No. 2',
      treatment: 'none',
    } as const;
    const sections = { ...project.choices.sections, thin: { ...thin, incised: false, service: 'dry' as const } };
    expect(codes({ ...project, choices: { ...project.choices, sections } })).toContain(code);
  });
});

describe('beside the house', () => {
  /** The same house roof with its ridge along y, the cover turned to the right or left of it. */
  const beside = (sign: 1 | -1): Project => {
    const at = (q: number): number => sign * (264 + q);
    const [near, far] = [at(24), at(192)];
    return change(overlayProject, {
      house: { roofs: (old) => old.map((r) => ({ ...r, ridge: 'y' as const })) },
      patio: { slabs: [] },
      cover: {
        beams: (old) =>
          old.map((b, i) => ({
            ...b,
            from: { x: Math.min(at(22), at(194)), y: i === 0 ? -92 : -308 },
            to: { x: Math.max(at(22), at(194)), y: i === 0 ? -92 : -308 },
            posts: b.posts.map((p, k) => ({ ...p, at: k === 0 ? 12 : 160 })),
          })),
        roofs: (old) =>
          old.map((r) => {
            const g = r as GableRoof;
            return {
              ...g,
              ridge: 'x' as const,
              from: Math.min(near, far),
              to: Math.max(near, far),
              meetsHouse: { ...g.meetsHouse!, plane: sign > 0 ? 'HR1-2' : 'HR1-1' },
            };
          }),
      },
    });
  };

  it.each([1, -1] as const)('to the %i side: the same figures turned', (sign) => {
    const turned = placed(beside(sign));
    expect(turned.issues.filter((i) => i.severity === 'error')).toEqual([]);
    const t = turned.overlay!;
    expect(t.frame.into).toEqual({ x: -sign, y: 0 });
    for (const key of ['start', 'head', 'ridge', 'eave', 'half', 'last', 'edge'] as const)
      expect(t[key]).toBeCloseTo(o[key], 6);
    expect(t.fills.map((f) => f.long)).toEqual(o.fills.map((f) => expect.closeTo(f.long, 6)));
    for (const v of t.valleys)
      for (const p of [v.foot, v.head])
        expect(p.z).toBeCloseTo(planeAt(turned.structure!.housePlanes.find((h) => h.id === t.plane)!.outline, p), 6);
  });
});
