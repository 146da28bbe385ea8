/** The sheets of a cover whose beams end at the house: every text in its place, every fact printed. */
import { describe, expect, it } from 'vitest';
import { houseFacts } from '../../checks/house/facts.js';
import { bolts } from '../../checks/house/house.testing.js';
import { deriveProject, drawingInput, drawSet, layout, sheetFrame } from '../../index.js';
import { change, houseEndsProject, shedProject } from '../../structure/testing.js';

const bolted = change(shedProject, { cover: { ledgers: (old) => [{ ...old[0]!, fastening: bolts() }] } });

describe.each([
  ['beam ends', houseEndsProject],
  ['ledger', bolted],
] as const)('%s', (_, project) => {
  const input = drawingInput(deriveProject(project))!;
  describe.each(['ARCH D', 'ANSI B'] as const)('%s', (size) => {
    const sheets = drawSet(input, size);
    it('keeps every text inside the frame, none on another', () => {
      for (const s of sheets) {
        expect(layout.outside(layout.textBoxes(s), sheetFrame(size)).map((b) => `${s.id}: ${b.content}`)).toEqual([]);
        expect(layout.overlaps(layout.textBoxes(s)).map(([a, b]) => `${s.id}: ${a.content} | ${b.content}`)).toEqual(
          [],
        );
      }
    });

    it('shows every mark on a plan', () => {
      const text = sheets
        .filter((s) => /^S-10/.test(s.id))
        .flatMap((s) => layout.textBoxes(s).map((b) => b.content))
        .join(' ');
      const { members, footings, joints } = input.structure;
      const marks = new Set([...members, ...footings, ...joints].map((p) => p.mark));
      expect([...marks].filter((m) => !new RegExp(`\\b${m}\\b`).test(text))).toEqual([]);
    });

    it('prints every fact of the house with its state', () => {
      const text = sheets
        .filter((s) => s.id.startsWith('S-51'))
        .flatMap((s) => layout.textBoxes(s).map((b) => b.content))
        .join(' ');
      for (const f of houseFacts(input)) for (const word of f.what.split(' ').slice(0, 3)) expect(text).toContain(word);
      expect(text).toContain('Cautions');
    });
  });
});
