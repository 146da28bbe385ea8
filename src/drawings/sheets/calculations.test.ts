/** What the calculation sheets show: small numbers, joints mark by mark, what is not asked. */
import { describe, expect, it } from 'vitest';
import { deriveProject, drawingInput, drawSet, layout } from '../../index.js';
import { shedProject } from '../../structure/testing.js';
import { governing, value } from './governing.js';

describe('figures of a calculation', () => {
  it.each([
    [0.00021, '2.10e-4'],
    [-0.0000312, '-3.12e-5'],
    [0.00522, '0.00522'],
    [0.01692, '0.0169'],
    [0.2538, '0.254'],
    [47.513, '47.51'],
    [398.671875, '398.7'],
    [16728.4, '16,728'],
    [7.7e-15, '0'],
    [0, '0'],
  ])('%d is printed %s', (n, text) => expect(value(n)).toBe(text));
});

describe('a cover with many joints', () => {
  const input = drawingInput(deriveProject(shedProject))!;
  const sheets = drawSet(input).filter((s) => s.id.startsWith('S-7'));
  const text = sheets.flatMap((s) => layout.textBoxes(s).map((b) => b.content));

  it('shows every joint mark that presses wood or has its connection worked out', () => {
    const shown = new Set(governing(input.results).map((r) => r.id));
    const asked = input.results.filter(
      (r) =>
        (r.check === 'joint-products' || r.check === 'joint-bearing') &&
        (r.status === 'fail' || (r.status === 'pass' && r.capacity > 0)),
    );
    expect(asked.length).toBeGreaterThan(1);
    for (const r of asked) expect(shown, r.id).toContain(r.id);
    for (const r of asked.filter((q) => q.check === 'joint-bearing'))
      expect(
        text.some((t) => t.startsWith(`${r.subject} – ${r.title}`)),
        r.id,
      ).toBe(true);
  });

  it('says what is not asked, with the earthquake’s reason', () => {
    expect(text).toContain('Not asked here, and why');
    const seismic = input.results.find((r) => r.check === 'seismic')!;
    expect(seismic.status).toBe('not-applicable');
    expect(text.join(' ').replace(/\s+/g, ' ')).toContain(seismic.note.split(' ').slice(0, 6).join(' '));
  });
});
