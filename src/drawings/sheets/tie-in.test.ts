/** The sheets of a roof over the old roof: judged like any set, and every figure of the tie-in printed as it is placed. */
import { describe, expect, it } from 'vitest';
import { formatLength } from '../../base/quantity/index.js';
import { deriveProject, drawingInput, drawSet, layout } from '../../index.js';
import { judgeSheets } from '../../review/sheets/registry.js';
import { drawnSet } from '../../review/sheets/set.js';
import { overlayProject } from '../../structure/testing-overlay.js';

const input = drawingInput(deriveProject(overlayProject))!;
const o = input.structure.overlays![0]!;
const len = (x: number): string => formatLength(x, { units: 'us', glyphs: true });

describe.each(['ARCH D', 'ANSI B'] as const)('%s', (size) => {
  const sheets = drawSet(input, size);
  const words = (id: RegExp): string =>
    sheets
      .filter((s) => id.test(s.id))
      .flatMap((s) => layout.textBoxes(s).map((b) => b.content))
      .join(' ');

  it('passes every sheet check', () => {
    const faults = Object.entries(judgeSheets(drawnSet(sheets, input.structure))).filter(([, f]) => f.length > 0);
    expect(faults).toEqual([]);
  });

  it('prints lengths, angles and marks of the tie-in as placed', () => {
    const text = words(/^S-54/);
    for (const f of o.fills) for (const x of [f.long, f.short]) if (x > 0) expect(text).toContain(len(x));
    for (const x of [o.shape.valley, o.plates.long, o.board.long, o.board.short, o.head, o.ridge])
      expect(text).toContain(len(x));
    expect(text).toContain(`${((o.shape.planAngle * 180) / Math.PI).toFixed(1)}°`);
    for (const m of o.members) expect(text).toContain(m.mark);
  });

  it('states how each joint over the old roof is fastened, and who says what takes the push at the seats', () => {
    const flat = (id: RegExp): string => words(id).replace(/\s+/g, ' ');
    for (const id of [/^S-54/, /^G-0/, /^S-60/]) {
      for (const how of ['(4) 16d common toe-nails', '(3) 16d common nails into a block', '(2) 1/4 in x 4-1/2 in wood'])
        expect(flat(id), String(id)).toContain(how);
    }
    expect(flat(/^S-54/)).toContain('2000 lb stated');
  });

  it('shows on the roof plan each slope, the valleys, and where the water goes', () => {
    const text = words(/^A-121/);
    for (const t of ['R1 4/12', 'HR1-1 5/12', 'valley V1', 'valley V2', 'DS1', 'DS2', 'Where the water goes'])
      expect(text).toContain(t);
  });
});

describe('without one', () => {
  it('there is no tie-in sheet', async () => {
    const { gableProject } = await import('../../structure/testing.js');
    const plain = drawingInput(deriveProject(gableProject))!;
    expect(drawSet(plain).map((s) => s.id)).not.toContain('S-541');
  });
});
