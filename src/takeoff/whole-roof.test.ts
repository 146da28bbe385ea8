import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { area } from '../base/plane.js';
import { derive } from '../derive.js';
import { lengthOf, roofEdges } from './edges.js';
import { takeOff } from './take-off.js';
import { wholeRoof } from './whole-roof.js';

const d = derive(readFileSync('examples/06-gable-over-roof/project.json', 'utf8'));
const structure = d.structure!;
const overlay = structure.overlays![0]!;
const whole = wholeRoof(structure);
const sum = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0);

describe('a roof that runs on over the house', () => {
  it('is bought as one: its area is the cover’s and that of the faces on the old roof', () => {
    const apart = sum(structure.surfaces.map((s) => area(s.outline))) + sum(overlay.faces.map((f) => f.area));
    expect(sum(whole.surfaces.map((s) => area(s.outline)))).toBeCloseTo(apart, 2);
    const sheathing = takeOff(d.project!, structure).lines.find((l) => l.group === 'sheathing' && l.unit === 'sq ft')!;
    expect(sheathing.net).toBeCloseTo(apart / 144, 4);
  });

  it('has the valleys on the old roof as its only valleys, and one ridge over both parts', () => {
    const edges = roofEdges(whole);
    expect(lengthOf(edges, 'valley')).toBeCloseTo(sum(overlay.valleys.map((v) => v.length)), 0);
    const [first] = structure.surfaces;
    const cover = Math.max(...first!.outline.map((p) => p.x));
    expect(lengthOf(edges, 'ridge')).toBeCloseTo(cover + overlay.head - overlay.edge, 3);
  });

  it('has every member on the old roof once in the cut list', () => {
    const cuts = takeOff(d.project!, structure).cuts.flatMap((g) => g.cuts);
    for (const m of overlay.members) expect(cuts.filter((c) => c.part === m.id)).toHaveLength(1);
  });

  it('is the structure itself where nothing lies on an old roof', () => {
    const plain = { ...structure, overlays: [] };
    expect(wholeRoof(plain)).toBe(plain);
  });
});
