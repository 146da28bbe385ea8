import { describe, expect, it } from 'vitest';
import { deriveProject, drawingInput } from '../../derive.js';
import type { Project, TrussPaper } from '../../project/model.js';
import { change, gableProject } from '../../structure/testing.js';
import { strayPapers, trussSheets } from './truss.js';

const context = (p: Project) => drawingInput(deriveProject(p))!;
const [t1] = trussSheets(context(gableProject));
const shape = t1!.order.shape;

const paper = (o: Partial<TrussPaper> = {}): TrussPaper => ({
  mark: t1!.order.mark,
  from: 'sheet A1',
  sealedBy: 'an engineer',
  span: shape.span,
  pitch: shape.topPitch,
  bottomPitch: shape.bottomPitch,
  heel: shape.heel,
  overhang: shape.overhang[0],
  spacing: t1!.order.spacing,
  bearingWidth: 1.5,
  reactions: [],
  bracing: '',
  deflection: '',
  chordForce: 0,
  path: '/cover/trussPapers/0',
  ...o,
});
const sheetsWith = (...papers: TrussPaper[]) =>
  trussSheets(context(change(gableProject, { cover: { trussPapers: papers } })));

describe('trussSheets', () => {
  it('answers every item a plant asks for', () => {
    const asked = [
      'Quantity',
      'Type',
      'Gable end',
      'Span',
      'Pitch',
      'Heel height',
      'Overhang',
      'Cantilever',
      'Tail cut',
      'Bearings',
      'Top chord',
      'Bottom chord',
      'Ceiling',
      'Wind',
      'Site',
      'Access',
      'Wanted on site',
    ];
    expect(t1!.rows.map((r) => r.name)).toEqual(expect.arrayContaining(asked));
    for (const r of t1!.rows) expect(r.value).not.toBe('');
  });
  it('says the sealed sheet is missing until it is entered, and then that it agrees', () => {
    expect(t1!.missing).toContain(`sealed design of ${t1!.order.mark}`);
    expect(sheetsWith(paper())[0]!.mismatches).toEqual([]);
  });
  it.each([
    ['span', { span: shape.span + 0.5 }],
    ['spacing', { spacing: t1!.order.spacing - 5 }],
    ['heel height', { heel: shape.heel + 0.5 }],
    ['overhang', { overhang: shape.overhang[0] + 2 }],
    ['pitch', { pitch: Math.atan(Math.tan(shape.topPitch) + 1 / 12) }],
    ['bottom pitch', { bottomPitch: Math.atan(Math.tan(shape.bottomPitch) + 1 / 12) }],
    ['bearing', { bearingWidth: shape.bearing + 1 }],
    ['seal', { sealedBy: '' }],
  ] as const)('tells a different %s', (what, wrong) => {
    expect(sheetsWith(paper(wrong))[0]!.mismatches.map((m) => m.what)).toEqual([what]);
  });
  it('lets a sixteenth pass', () => {
    expect(sheetsWith(paper({ span: shape.span + 1 / 16 }))[0]!.mismatches).toEqual([]);
  });
  it('tells papers of trusses that are not there', () => {
    const p = change(gableProject, { cover: { trussPapers: [paper({ mark: 'T9' })] } });
    expect(strayPapers(context(p))).toEqual(['T9']);
  });
});
