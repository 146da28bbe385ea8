/** The example of two roofs in an L: complete, closed, and drawn with what only such a cover needs. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { mandatoryOf } from '../src/checks/mandatory.js';
import { carriersOf } from '../src/drawings/sheets/section-plane.js';
import { derive, drawingInput, drawSet } from '../src/index.js';

const text = readFileSync(resolve(import.meta.dirname, '../examples/05-l-shape-two-roofs/project.json'), 'utf8');
const d = derive(text);
const texts = (sheet: string): readonly string[] =>
  drawSet(drawingInput(d)!)
    .filter((s) => s.title === sheet)
    .flatMap((s) => s.items.flatMap((i) => (i.kind === 'text' ? [i.content] : [])));

describe('two sheds in an L', () => {
  it('can be issued: every mandatory check answered, nothing open, nothing left to a professional', () => {
    expect(d.issues).toEqual([]);
    expect(d.loads!.outside).toEqual([]);
    const mandatory = mandatoryOf(d.project!);
    const unanswered = d.results.filter(
      (r) => mandatory.has(r.check) && r.status !== 'pass' && r.status !== 'not-applicable',
    );
    expect(unanswered.map((r) => `${r.id} ${r.status}`)).toEqual([]);
    expect(d.verdict!.issuable).toBe(true);
  });

  it('is held by the house in both ways a beam can be', () => {
    const kinds = d.structure!.joints.map((j) => j.kind);
    for (const kind of ['beam-to-wall', 'beam-to-wall-post', 'post-to-house', 'ledger-to-house'])
      expect(kinds).toContain(kind);
  });

  it('covers less of the lot than both roofs together: one laps over the other', () => {
    const [a, b] = d.structure!.roofs.map((r) => (r.max.x - r.min.x) * (r.max.y - r.min.y));
    const fascias = 1.5 * 160 + 1.5 * 160;
    const cover = d.lot!.coverage.rows.find((r) => r.name === 'Patio cover')!.area;
    // R1 ends 12 in past the outer face of B2, at x = -57.25; R2 begins 8 in past its first rafter, at x = -67.25; R2 is
    // deep from the wall to its fascia.
    const lap = 10 * d.structure!.roofs[1]!.max.y;
    expect(cover).toBeCloseTo(a! + b! + fascias - lap, -2);
  });

  it('knows which beams, posts and footings carry which roof', () => {
    const [r1, r2] = d.structure!.roofs.map((r) => [...carriersOf(d.structure!, r)].sort());
    expect(r1).toEqual(['B1', 'B2', 'F1', 'F2', 'P1', 'P2']);
    expect(r2).toEqual(['B3', 'F3', 'F4', 'P3', 'P4']);
  });

  it('fixes footings that fill no rectangle from both corners of the wall', () => {
    const shown = texts('Footing plan');
    expect(shown.join(' ')).toContain('Every center must agree with both its check lengths');
    // F2 stands 20 ft from either corner of the 40 ft wall and 12 ft 6 in out: √(240² + 150²) = 283.02 in.
    expect(shown.filter((t) => t === '23\'-7"').length).toBe(2);
  });
});
