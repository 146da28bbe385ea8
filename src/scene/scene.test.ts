import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { volume } from '../base/geometry/index.js';
import { derive } from '../derive.js';
import { piecesOf } from '../structure/pieces/index.js';
import { sceneOf, sceneState } from './index.js';

const text = readFileSync(join(import.meta.dirname, '../../examples/05-l-shape-two-roofs/project.json'), 'utf8');
const d = derive(text);
const { project, structure, loads, effects } = d;

/** Volume inside closed triangles, by the divergence theorem. */
function inside(t: Float32Array): number {
  let sum = 0;
  for (let i = 0; i < t.length; i += 9) {
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = t.subarray(i, i + 9) as unknown as number[];
    sum += ax! * (by! * cz! - bz! * cy!) + ay! * (bz! * cx! - bx! * cz!) + az! * (bx! * cy! - by! * cx!);
  }
  return sum / 6;
}

describe('sceneOf', () => {
  const scene = sceneOf(project!, structure!);
  it('keeps the volume of every part', () => {
    const pieces = piecesOf(structure!, project!);
    for (const mesh of scene.meshes) {
      const whole = pieces
        .filter(
          (p) => p.part === mesh.part && p.role === mesh.role && p.state === mesh.state && p.material === mesh.material,
        )
        .reduce((s, p) => s + volume(p.solid), 0);
      expect(Math.abs(inside(mesh.triangles) - whole), `${mesh.part} ${mesh.role}`).toBeLessThan(2 + 1e-3 * whole);
    }
  });
  it('holds every member and footing, under its mark', () => {
    const parts = new Set(scene.meshes.map((m) => m.part));
    for (const m of structure!.members.filter((x) => x.role === 'beam' || x.role === 'post'))
      expect(parts).toContain(m.id);
    for (const f of structure!.footings) expect(parts).toContain(f.id);
  });
  it('has numbers only', () => {
    for (const m of scene.meshes) expect([...m.triangles, ...m.edges].every(Number.isFinite)).toBe(true);
  });
});

describe('sceneState', () => {
  const first = loads!.combinations[0]!.id;
  const state = sceneState(structure!, loads!, effects!, first)!;
  it('passes load down to the soil and the house', () => {
    const to = new Set(['soil', ...structure!.walls.map((w) => w.id)]);
    const down = state.flows.filter((f) => to.has(f.to)).reduce((s, f) => s - f.force[2], 0);
    expect(down).toBeGreaterThan(0);
    expect(state.members.length).toBeGreaterThan(5);
  });
  it('combines as the analysis does', () => {
    const c = loads!.combinations.find((x) => x.terms.length > 1)!;
    const s = sceneState(structure!, loads!, effects!, c.id)!;
    const b = s.members.find((m) => m.mark === 'B3')!;
    const e = effects!.members.get(b.part)!;
    const i = Math.floor(e.stations.length / 2);
    const want = c.terms.reduce((sum, t) => sum + t.factor * e.m[t.case]![i]!, 0);
    expect(b.m[i]).toBeCloseTo(want, -1);
  });
  it('knows no combination that is not there', () => {
    expect(sceneState(structure!, loads!, effects!, 'none')).toBeUndefined();
  });
});
