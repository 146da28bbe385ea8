/** What the plans beside the house must say, on the first and the fourth example. */
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive, drawingInput } from '../../../derive.js';
import { textBoxes } from '../../annotate/layout.js';
import type { Sheet } from '../../ir/index.js';
import { drawParts, PERMIT_SET } from '../set.js';
import { keyedNotes } from './demolition-notes.js';

const examples = resolve(import.meta.dirname, '../../../../examples');
const inputOf = (name: string) => drawingInput(derive(readFileSync(join(examples, name, 'project.json'), 'utf8')))!;
const PLANS = new Set(['AD101', 'A-101', 'E-101']);
const plansOf = (input: ReturnType<typeof inputOf>): readonly Sheet[] =>
  drawParts(
    input,
    'ARCH D',
    PERMIT_SET.filter((p) => PLANS.has(p.id)),
  );
const words = (sheets: readonly Sheet[], id: string): string =>
  textBoxes(sheets.find((s) => s.id === id)!)
    .map((b) => b.content)
    .join(' ');

const gable = inputOf('01-gable-scissor-kept-slab');
const gableSheets = plansOf(gable);

describe('existing and demolition plan', () => {
  it('keys what stays, what is cut, what goes, and where the wall is opened', () => {
    const notes = keyedNotes(gable, String);
    expect(notes.map((n) => n.number)).toEqual([1, 2, 3, 4, 5]);
    expect(notes[0]!.text).toMatch(/^Slab S1.*stays/);
    // One square hole for each of the four footings that go through the kept slab, as wide as the footing.
    expect(notes[1]!.cuts).toHaveLength(4);
    const hole = notes[1]!.cuts[0]!;
    expect(hole[1]!.x - hole[0]!.x).toBeCloseTo(gable.structure.footings[0]!.size, 9);
    expect(notes[2]!.text).toMatch(/^Lattice cover.*remove/);
    expect(notes[4]!.stations).toEqual([-108, 108]);
    expect(words(gableSheets, 'AD101')).toContain('built in 1996');
  });
  it('is left out where nothing stands and nothing is opened', () => {
    const free = inputOf('04-free-gable-knee-braces');
    expect(keyedNotes(free, String)).toEqual([]);
    expect(plansOf(free).map((s) => s.id)).toEqual(['A-101', 'E-101']);
  });
});

describe('floor plan', () => {
  it('prints what each room needs and has, as the checks found it', () => {
    const text = words(gableSheets, 'A-101');
    const light = gable.results.find((r) => r.id === 'room-light:family room')!;
    expect(text).toContain(`${light.demand.toFixed(1)} / ${light.capacity.toFixed(1)}`);
    for (const said of ['FAMILY ROOM', 'BEDROOM 2', 'dryer vent', 'W1', 'D1', 'edge of roof R1 above'])
      expect(text).toContain(said);
  });
});

describe('electrical plan', () => {
  it('schedules every device and says what the inspector looks for', () => {
    const text = words(gableSheets, 'E-101');
    for (const d of gable.project.cover.electrical!.devices) expect(text).toContain(d.mark);
    for (const said of ['GFCI', 'weather-resistant', 'in-use covers', 'rated for it', 'licensed electrician'])
      expect(text).toContain(said);
  });
  it('says that none is proposed where the file says so', () => {
    expect(words(plansOf(inputOf('04-free-gable-knee-braces')), 'E-101')).toContain('No electrical work is proposed');
  });
});
