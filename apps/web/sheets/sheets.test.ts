import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive, drawingInput, drawSet, flatten, handlesOf } from '../../../src/index.js';
import { HEAD, pack } from '../core/pack.js';
import { fitted, panned, snapStep, toPaper, toScreen, zoomAt } from './camera.js';
import { gripAt, gripsOf, snapped } from './handles.js';
import { hitAt, thingsOn } from './hit.js';

const text = readFileSync(join(import.meta.dirname, '../../../examples/05-l-shape-two-roofs/project.json'), 'utf8');
const d = derive(text);
const set = drawSet(drawingInput(d)!);
const plan = set.find((s) => s.id === 'S-101')!;
const packed = pack(plan);
const size = { w: 1000, h: 700 };

describe('camera', () => {
  const c = fitted(size, [0, 0, 36, 24]);
  it('shows all of the paper, and screen and paper undo each other', () => {
    for (const p of [
      { x: 0, y: 0 },
      { x: 36, y: 24 },
    ]) {
      const s = toScreen(c, size, p);
      expect(s.x >= 0 && s.x <= size.w && s.y >= 0 && s.y <= size.h).toBe(true);
      const back = toPaper(c, size, s);
      expect(back.x).toBeCloseTo(p.x, 9);
      expect(back.y).toBeCloseTo(p.y, 9);
    }
  });
  it('zooms about the pointer and pans with it', () => {
    const at = { x: 250, y: 480 };
    const p = toPaper(c, size, at);
    const z = toScreen(zoomAt(c, size, at, 2), size, p);
    expect(z.x).toBeCloseTo(at.x, 6);
    expect(z.y).toBeCloseTo(at.y, 6);
    const moved = toScreen(panned(c, 30, -20), size, p);
    expect(moved.x).toBeCloseTo(at.x + 30, 6);
    expect(moved.y).toBeCloseTo(at.y - 20, 6);
  });
  it('snaps finer the closer one looks', () => {
    expect([0.1, 1, 10].map((px) => snapStep(px, false))).toEqual([12, 1, 0.5]);
    expect(snapStep(0.1, true)).toBe(0.5);
  });
});

describe('a packed sheet', () => {
  it('holds every item of the flat sheet, in order, with marks', () => {
    const flat = flatten(plan);
    expect(packed.head.length / HEAD).toBe(flat.length);
    const marks = new Set(flat.flatMap((f) => f.mark ?? []));
    for (const m of marks) expect(packed.words).toContain(m);
  });
  it('knows what its dimensions measure', () => {
    const texts = Object.values(packed.dimensions).map((x) => x.text);
    expect(texts).toContain(`13'-6"`);
    expect(Object.values(packed.dimensions).every((x) => x.plan)).toBe(true);
  });
  it('finds a dimension and a tag where they stand', () => {
    for (const t of thingsOn(packed)) {
      const hit = hitAt(packed, t.at, 0.02);
      expect(hit?.role ?? hit?.mark ?? hit?.path, t.label).toBe(t.hit.role ?? t.hit.mark ?? t.hit.path);
    }
  });
  it('has a grip at every footing, which a drag moves along its beam in whole steps', () => {
    const handles = handlesOf(d.project!, d.structure!);
    const grips = gripsOf(packed, handles);
    expect(grips.map((g) => g.handle.mark).sort()).toEqual(['P1', 'P2', 'P3', 'P4']);
    const g = grips.find((x) => x.handle.mark === 'P4')!;
    expect(gripAt(grips, { x: g.at.x + 0.05, y: g.at.y }, 0.1)).toBe(g);
    // 10.3 in to the right on a beam that runs to the right, snapped so that the value is a whole number of inches.
    const by = snapped(g, g.at, { x: g.at.x + 10.3 * g.view.scale, y: g.at.y + 5 }, 1);
    expect((g.handle.value + by) % 1).toBeCloseTo(0, 9);
    expect(Math.abs(by - 10.3)).toBeLessThanOrEqual(0.5);
  });
});
