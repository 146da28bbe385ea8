import { describe, expect, it } from 'vitest';
import type { LineDistance } from '../../lot/model.js';
import { gableProject } from '../../structure/testing.js';
import { contextFor, pad, runFirst } from '../testing.js';
import { easement } from './easement.js';
import { fireSeparation } from './fire-separation.js';
import { heightLimit } from './height-limit.js';
import { lotClosure } from './lot-closure.js';
import { lotCoverage } from './lot-coverage.js';
import { setback } from './setback.js';

const away = (change: Partial<LineDistance> = {}): LineDistance => ({
  line: 'north line',
  yard: 'rear',
  required: 180,
  toPost: 216,
  toEave: 200,
  toHouse: 400,
  governing: 200,
  nearestPost: { x: 0, y: 0 },
  nearestEave: { x: 0, y: 0 },
  ...change,
});
const lines = gableProject.lot.courses.map((c) => ({
  ...c,
  start: { x: 0, y: 0 },
  end: { x: 1, y: 0 },
  inward: { x: 0, y: 1 },
}));
const at = (change: Partial<LineDistance> = {}) =>
  contextFor({ lot: { lines, distances: [away(change)] }, structure: { footings: [pad()] } });

describe('setbacks', () => {
  it('compares the office’s edge with the required yard', () => {
    expect(runFirst(setback, at()).ratio).toBeCloseTo(180 / 200, 9);
    const f = runFirst(setback, at({ governing: 170 }));
    expect(f.status).toBe('fail');
    expect(f.note).toContain(`0' 10"`);
  });
  it('is finite for work across the line, and passes where nothing is required', () => {
    expect(runFirst(setback, at({ governing: -5 })).ratio).toBe(99);
    expect(runFirst(setback, at({ required: 0, governing: 0 })).status).toBe('pass');
  });
});

describe('easement', () => {
  it('keeps eaves and footings out', () => {
    // Utility easement 90 in on the north line; eave 200, footing edge 216 − 12.
    expect(runFirst(easement, at()).ratio).toBeCloseTo(90 / 200, 9);
    expect(runFirst(easement, at({ toEave: 300, toPost: 100 })).capacity).toBe(88);
    expect(runFirst(easement, at({ toEave: 300, toPost: 100 })).status).toBe('fail');
  });
  it('does not arise without one', () => {
    const none = { ...gableProject, lot: { ...gableProject.lot, easements: [] } };
    expect(runFirst(easement, { ...at(), project: none }).status).toBe('not-applicable');
  });
});

describe('fire separation', () => {
  it('is free from 5 ft on, needs a professional from 2 ft, and is forbidden nearer', () => {
    expect(runFirst(fireSeparation, at({ toEave: 60 })).status).toBe('pass');
    expect(runFirst(fireSeparation, at({ toEave: 59.9 })).status).toBe('outside-scope');
    expect(runFirst(fireSeparation, at({ toEave: 24 })).status).toBe('outside-scope');
    expect(runFirst(fireSeparation, at({ toEave: 23.9 })).status).toBe('fail');
  });
});

describe('coverage, closure, height', () => {
  it('takes the share of the lot', () => {
    const coverage = { basis: 1000, existing: 300, proposed: 390, limit: 0.4, rows: [] };
    expect(runFirst(lotCoverage, contextFor({ lot: { coverage } })).ratio).toBeCloseTo(0.975, 9);
    expect(runFirst(lotCoverage, contextFor({ lot: { coverage: { ...coverage, proposed: 401 } } })).status).toBe(
      'fail',
    );
  });
  it('wants one in five thousand', () => {
    const closure = { error: 1, perimeter: 5000, ratio: 0.0002, azimuth: 0 };
    expect(runFirst(lotClosure, contextFor({ lot: { closure } })).ratio).toBeCloseTo(1, 9);
    expect(runFirst(lotClosure, contextFor({ lot: { closure: { ...closure, error: 1.1 } } })).status).toBe('fail');
  });
  it('measures from the lowest ground beside the roof', () => {
    const roof = {
      mark: 'R1',
      surfaces: [],
      meanHeight: 120,
      min: { x: 0, y: 0 },
      max: { x: 120, y: 96 },
      ridgeAxis: 'x' as const,
      slope: 0.3,
      highestPoint: 150,
      lowestEave: 100,
      attached: false,
      path: '/cover/roofs/0',
    };
    // Ground −12 − y/48: at y = 96 it is −14. Height 164 against 192.
    const ctx = contextFor({ structure: { roofs: [roof], grade: { z0: -12, gx: 0, gy: -1 / 48 } } });
    expect(runFirst(heightLimit, ctx).demand).toBeCloseTo(164, 9);
  });
});
