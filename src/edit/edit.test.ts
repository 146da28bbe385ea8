import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseLength } from '../base/quantity/index.js';
import { editText, read } from '../project/index.js';
import { place } from '../structure/place.js';
import { editsOf, handlesOf, movesOf, writeLength } from './index.js';

const file = (name: string) => readFileSync(join(import.meta.dirname, '../../examples', name, 'project.json'), 'utf8');
const L = file('05-l-shape-two-roofs');

function opened(text: string) {
  const project = read(text).value!;
  const structure = place(project).value!;
  return { project, structure, handles: handlesOf(project, structure) };
}

describe('writeLength', () => {
  it('writes what the reader reads', () => {
    for (const v of [0, 6.5, -9, 12, 138.0625, -150.5, 11.9999])
      for (const units of ['us', 'metric'] as const) {
        const back = parseLength(writeLength(v, units));
        expect(back.ok && Math.abs(back.value - v) <= (units === 'us' ? 1 / 32 : 0.02), `${v} ${units}`).toBe(true);
      }
    expect(writeLength(150.5, 'us')).toBe('12 ft 6 1/2 in');
    expect(writeLength(-0.01, 'us')).toBe('0 in');
  });
});

describe('handles', () => {
  const { handles, structure } = opened(L);
  it('stand where the parts stand', () => {
    for (const h of handles.filter((x) => x.id.startsWith('post:'))) {
      const post = structure.members.find((m) => m.mark === h.mark)!;
      expect(h.at.x).toBeCloseTo(post.start.x, 6);
      expect(h.at.y).toBeCloseTo(post.start.y, 6);
    }
    expect(handles.map((h) => h.id)).toContain('roof-edge:R2:eave+');
    // B1 and B2 are held by the house at their start: that end does not move along the beam.
    expect(handles.map((h) => h.id)).not.toContain('beam-end:B1:start');
  });
  it('move their part, and only theirs, by what they are asked', () => {
    const post = handles.find((h) => h.id === 'post:P4')!;
    const after = opened(editText(L, post.edits(-7)).value!);
    const was = new Map(structure.footings.map((f) => [f.mark, f.at.x]));
    for (const f of after.structure.footings)
      expect(f.at.x - was.get(f.mark)!).toBeCloseTo(f.mark === 'F4' ? -7 : 0, 6);
  });
  it('a beam’s near end moves and its posts stay', () => {
    const end = handles.find((h) => h.id === 'beam-end:B3:start')!;
    const after = opened(editText(L, end.edits(5)).value!);
    const b = after.structure.members.find((m) => m.mark === 'B3')!;
    const b0 = structure.members.find((m) => m.mark === 'B3')!;
    expect(b.start.x - b0.start.x).toBeCloseTo(-5, 6);
    for (const f of after.structure.footings)
      expect(f.at.x).toBeCloseTo(structure.footings.find((g) => g.mark === f.mark)!.at.x, 6);
  });
  it('an eave grows the roof on its own side', () => {
    const eave = handles.find((h) => h.id === 'roof-edge:R2:eave+')!;
    const after = opened(editText(L, eave.edits(4)).value!);
    const y = (s: typeof structure) => s.roofs.find((r) => r.mark === 'R2')!.max.y;
    expect(y(after.structure) - y(structure)).toBeCloseTo(4, 6);
  });
});

describe('a dimension read backwards', () => {
  const { handles, structure } = opened(L);
  const at = (mark: string) => structure.footings.find((f) => f.mark === mark)!.at;
  it('between two posts moves the far one, or the near one the other way', () => {
    const moves = movesOf({ a: at('F3'), b: at('F4'), angle: 0 }, handles);
    expect(moves[0]!.handles).toEqual(['post:P4']);
    expect(moves.map((m) => m.handles)).toContainEqual(['post:P3']);
    for (const m of moves.filter((x) => x.handles[0]!.startsWith('post:'))) {
      const text = editText(L, editsOf(m, 6, handles)).value!;
      const s = opened(text).structure;
      const x = (mark: string) => s.footings.find((f) => f.mark === mark)!.at.x;
      expect(x('F4') - x('F3')).toBeCloseTo(at('F4').x - at('F3').x + 6, 4);
    }
  });
  it('offers parts in line together and alone', () => {
    const moves = movesOf({ a: { x: 0, y: 0 }, b: { x: 0, y: at('F3').y }, angle: Math.PI / 2 }, handles);
    expect(moves.some((m) => m.handles.includes('beam:B3'))).toBe(true);
  });
  it('has nothing to move between house corners', () => {
    expect(movesOf({ a: { x: -312, y: 0 }, b: { x: 360, y: 0 }, angle: 0 }, handles)).toEqual([]);
  });
});
