/** Calculated connections at the joints of a whole project: compared, explained, printed. */
import { describe, expect, it } from 'vitest';
import { derive, drawingInput, drawSet, explain, layout, sheetFrame, starter } from '../src/index.js';

const one = (end: string, edge: string) => `{ "alongGrain": 1, "acrossGrain": 1, "end": "${end}", "edge": "${edge}" }`;
/** Beam held down on its post by plates and bolts, sideways by the same; rafters toe-nailed and screwed. */
const CAP = `{ "serves": ["beam-to-post"], "made": "dry", "parts": [
  { "kind": "bolts", "takes": ["up", "lengthwise", "crosswise"], "size": "bolt-1-2", "washer": "2 in", "axis": "crosswise",
    "plates": { "material": "steel", "count": 2, "end": "2 in", "thickness": "0.25 in", "width": "5 in", "Fy": "36000 psi", "Fu": "58000 psi" },
    "upper": { "alongGrain": 2, "acrossGrain": 1, "spacingAlong": "3 in", "end": "4 in", "edge": "3 in" },
    "lower": { "alongGrain": 2, "acrossGrain": 1, "spacingAlong": "3 in", "end": "4 in", "edge": "2-3/4 in" } }] }`;
const TOES = `{ "serves": ["rafter-to-beam"], "made": "dry", "parts": [
  { "kind": "toe-nails", "takes": ["up", "lengthwise", "crosswise"], "size": "common-16d", "count": 3 }] }`;
const FOOT = `{ "serves": ["post-to-footing"], "made": "dry", "parts": [
  { "kind": "nails", "takes": ["up"], "size": "common-10d", "length": "3 in", "axis": "crosswise", "upper": ${one('4 in', '1 in')}, "lower": ${one('4 in', '1 in')} }] }`;

const text = starter('shed-attached').replace(
  '"standoff": "1 in",',
  `"standoff": "1 in", "connections": [${CAP}, ${TOES}, ${FOOT}],`,
);
const d = derive(text);
const of = (kind: string) => {
  const marks = new Set(d.structure!.joints.filter((j) => j.kind === kind).map((j) => j.mark));
  return d.results.filter((r) => r.check === 'joint-products' && marks.has(r.subject));
};

describe('a project with calculated connections', () => {
  it('reads without an error', () => expect(d.issues.filter((i) => i.severity === 'error')).toEqual([]));

  it('answers every joint it serves, with a finite ratio and a trace that ends in it', () => {
    for (const kind of ['beam-to-post', 'rafter-to-beam']) {
      expect(of(kind).length).toBeGreaterThan(0);
      for (const r of of(kind)) {
        expect(['pass', 'fail'], `${kind} ${r.note}`).toContain(r.status);
        expect(r.ratio).toBeGreaterThan(0);
        const last = explain(d, r.id).at(-1);
        expect(last).toMatchObject({ symbol: 'ratio', value: r.ratio });
        for (const line of explain(d, r.id))
          if (line.kind === 'step') {
            expect(Number.isFinite(line.value), line.meaning).toBe(true);
            expect(/NaN|undefined|\?/.test(line.substituted), line.substituted).toBe(false);
          }
      }
    }
  });

  it('leaves anchors in concrete to a product', () => {
    for (const r of of('post-to-footing')) expect(r.note).toContain('An anchor in concrete is not calculated');
  });

  for (const size of ['ARCH D', 'ANSI B'] as const) {
    it(`prints them in the joint schedule, ${size}`, () => {
      const sheets = drawSet(drawingInput(d)!, size);
      const boxes = sheets.filter((s) => s.title.startsWith('Schedules')).flatMap((s) => layout.textBoxes(s));
      const words = boxes.map((b) => b.content).join(' ');
      expect(words).toContain('by calculation, ');
      expect(words).toContain('toe-nailed');
      expect(words).toContain('from the edge');
      for (const s of sheets) {
        expect(layout.outside(layout.textBoxes(s), sheetFrame(size))).toEqual([]);
        expect(layout.overlaps(layout.textBoxes(s))).toEqual([]);
      }
    });
  }
});
