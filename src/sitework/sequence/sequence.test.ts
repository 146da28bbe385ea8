import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { read } from '../../project/index.js';
import { place } from '../../structure/place.js';
import { scheduleOf, sequenceOf, type Task, tasksOf } from './index.js';
import { liftOf } from './lifting.js';

const example = (name: string) =>
  read(readFileSync(new URL(`../../../examples/${name}/project.json`, import.meta.url), 'utf8')).value!;
const task = (id: string, days: number, ...after: readonly (readonly [string, number])[]): Task => ({
  id,
  title: id,
  days,
  after: after.map(([on, lag]) => ({ on, days: lag, why: '' })),
  basis: '',
});

describe('the schedule of a small network worked by hand', () => {
  // A 3; B 2 after A; C 4 after A, a day later; D 1 after B and C: A 0-3, B 3-5, C 4-8, D 8-9; B may slip 3 days.
  const s = scheduleOf([
    task('A', 3),
    task('B', 2, ['A', 0]),
    task('C', 4, ['A', 1]),
    task('D', 1, ['B', 0], ['C', 0]),
  ]);
  it('starts, ends, slack, critical chain', () => {
    expect(s.bars.map((b) => [b.id, b.start, b.end, b.slack, b.critical])).toEqual([
      ['A', 0, 3, 0, true],
      ['B', 3, 5, 3, false],
      ['C', 4, 8, 0, true],
      ['D', 8, 9, 0, true],
    ]);
    expect(s.days).toBe(9);
  });
  it('refuses a task that waits for one that is not before it', () => {
    expect(() => scheduleOf([task('A', 1, ['B', 0]), task('B', 1)])).toThrow(RangeError);
  });
});

describe.each([
  '01-gable-scissor-kept-slab',
  '02-shed-snow-two-storey',
  '04-free-gable-knee-braces',
  '05-l-shape-two-roofs',
  '06-gable-over-roof',
])('the build order of example %s', (name) => {
  const project = example(name);
  const structure = place(project).value!;
  const s = sequenceOf(project, structure);
  const bar = (id: string) => s.bars.find((b) => b.id === id)!;
  it('keeps the waits: seven days of cure before load, two before forms come off, inspection before pour and cover', () => {
    expect(bar('posts').start - bar('pour').end).toBeGreaterThanOrEqual(7);
    expect(bar('strip').start - bar('pour').end).toBeGreaterThanOrEqual(1);
    expect(bar('footing-look').end).toBeLessThanOrEqual(bar('pour').start);
    expect(bar('nail-look').end).toBeLessThanOrEqual(bar('roofing').start);
    expect(s.bars.at(-1)!.id).toBe('final');
    expect(s.bars.at(-1)!.critical).toBe(true);
  });
  it('has a critical chain as long as the whole', () => {
    expect(s.bars.some((b) => b.critical && b.start === 0)).toBe(true);
    for (const b of s.bars) expect(b.slack).toBeGreaterThanOrEqual(-1e-9);
  });
  it('tells every piece that one person does not lift', () => {
    const heavy = structure.members.filter((m) => m.state === 'new' && (liftOf(m).people > 1 || liftOf(m).machine));
    expect(s.heavy.reduce((n, h) => n + h.count, 0)).toBe(heavy.length);
  });
});

describe('what a roof without trusses or a new slab leaves out', () => {
  it('has no lead time and no slab', () => {
    const ids = tasksOf(place(example('02-shed-snow-two-storey')).value!).map((t) => t.id);
    expect(ids).not.toContain('truss-lead');
    expect(ids).toContain('slab-pour');
    expect(tasksOf(place(example('01-gable-scissor-kept-slab')).value!).map((t) => t.id)).not.toContain('slab-pour');
  });
});
