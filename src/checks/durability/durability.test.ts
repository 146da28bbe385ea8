import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive } from '../../derive.js';
import { contextOf } from '../../report/derived.js';
import { place } from '../../structure/place.js';
import { change, houseEndsProject } from '../../structure/testing.js';
import { TRIGGERS } from '../triggers/registry.js';
import { durability } from './durability.js';
import { durabilityRows } from './rows.js';

const root = resolve(import.meta.dirname, '../../..');
const GABLE = readFileSync(resolve(root, 'examples/01-gable-scissor-kept-slab/project.json'), 'utf8');
const context = (text: string) => contextOf(derive(text))!;
const post = (text: string) => {
  const ctx = context(text);
  return { row: durabilityRows(ctx).find((r) => r.mark === 'P1')!, found: durability.run({ id: 'P1', path: '' }, ctx) };
};

describe('decay', () => {
  it('takes a post one inch over the slab and under the roof as dry, as the residential code does', () => {
    const { row, found } = post(GABLE);
    expect(row).toMatchObject({
      exposure: 'under-roof',
      needs: 'none',
      has: 'above-ground',
      category: 'UC3B above ground',
    });
    expect(found.status).toBe('pass');
  });

  it('asks for ground contact when the post base leaves less than an inch', () => {
    const { row, found } = post(GABLE.replace('"standoff": "1 in"', '"standoff": "1/2 in"'));
    expect(row.needs).toBe('ground-contact');
    expect(found.status).toBe('fail');
    expect(found.note).toMatch(/UC4A/);
  });

  it('takes a beam end and its post inside the house wall as dry, and asks treatment of a post close over the ground', () => {
    const row = (mark: string, grade = -10) => {
      const p = change(houseEndsProject, {
        patio: { grade: { atHouse: grade, fall: 1 / 48 } },
        cover: { roofs: (old) => old.map((r) => ({ ...r, rake: 9 })) },
      });
      return durabilityRows({ structure: place(p).value! }).find((r) => r.mark === mark)!;
    };
    expect(row('B1')).toMatchObject({ exposure: 'under-roof', needs: 'none' });
    // Foot 1-1/2 in under the floor: 8-1/2 in over the ground outside, then 7-1/2 in.
    expect(row('P3')).toMatchObject({ exposure: 'in-wall', needs: 'none' });
    expect(row('P3', -9)).toMatchObject({ exposure: 'low-in-wall', needs: 'above-ground' });
  });

  it('asks for treatment where a beam runs out past the roof', () => {
    const long = GABLE.replaceAll('ft", "14 ft 9 in"]', 'ft", "16 ft"]');
    const ctx = context(long);
    expect(durabilityRows(ctx).find((r) => r.mark === 'B1')).toMatchObject({ exposure: 'weather' });
    expect(durability.run({ id: 'B1', path: '' }, ctx).status).toBe('fail');
  });
});

describe('conditions that call for a licensed professional', () => {
  const found = (text: string) => {
    const ctx = context(text);
    return TRIGGERS.filter((t) => t.found(ctx) !== undefined).map((t) => t.id);
  };

  it('names those of the gable', () => {
    expect(found(GABLE)).toEqual(['not-a-shed', 'over-12-ft', 'trusses']);
  });

  it.each([
    ['soft-soil', '"value": "1500 psf"', '"value": "1000 psf"'],
    ['risk-category', '"riskCategory": "II"', '"riskCategory": "III"'],
    ['other-use', '"use": "recreation"', '"use": "storage"'],
    ['wind-over-140', '"value": "100 mph"', '"value": "150 mph"'],
    ['snow-over-70', '"value": "0 psf"', '"value": "80 psf"'],
    ['hill', '"value": 1.0', '"value": 1.3'],
  ])('notices %s', (id, before, after) => {
    expect(GABLE).toContain(before);
    expect(found(GABLE.replace(before, after))).toContain(id);
  });
});
