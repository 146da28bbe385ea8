/** The same project written in metric: every check gives the same ratio, within the rounding of the written numbers. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive, STARTER_KINDS, starter } from '../../src/index.js';
import { metricOf, metricProject } from './metric-text.js';

const EXAMPLES = resolve(import.meta.dirname, '../../examples');
const files: readonly (readonly [string, string])[] = [
  ...STARTER_KINDS.map((k) => [`starter ${k}`, starter(k)] as const),
  ...readdirSync(EXAMPLES)
    .sort()
    .map((name) => [name, readFileSync(join(EXAMPLES, name, 'project.json'), 'utf8')] as const),
];
/** Lengths are written to a hundred-thousandth of a millimetre, of which a steep ratio may lose a few digits. */
const TOLERANCE = 1e-6;

describe('the converter', () => {
  it.each([
    ['12 ft 6 in', '3810 mm'],
    ['9 ft 11-1/4 in', '3028.95 mm'],
    ['-10 in', '-254 mm'],
    ['5/8 in', '15.875 mm'],
    ['110 mph', '49.1744 m/s'],
    ['two rows 16d at 12 in each face', undefined],
    ['2x10', undefined],
  ])('%s', (us, metric) => expect(metricOf(us)).toBe(metric));
});

describe.each(files)('%s in metric', (_name, us) => {
  const converted = metricProject(us);
  it('holds hardly anything that is still in feet', () => {
    expect(converted.count).toBeGreaterThan(60);
  });
  it('gives the same answers', () => {
    const [a, b] = [derive(us), derive(converted.text)];
    expect(b.issues.map((i) => `${i.code} ${i.path}`)).toEqual(a.issues.map((i) => `${i.code} ${i.path}`));
    expect(b.results.map((r) => r.id)).toEqual(a.results.map((r) => r.id));
    for (const [i, r] of a.results.entries()) {
      const t = b.results[i]!;
      expect(t.status, `${r.id}: ${r.note} / ${t.note}`).toBe(r.status);
      expect(
        Math.abs(t.ratio - r.ratio) / Math.max(1, Math.abs(r.ratio)),
        `${r.id}: ${r.ratio}, ${t.ratio}`,
      ).toBeLessThan(TOLERANCE);
    }
  });
});
