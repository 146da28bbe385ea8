import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Project, read } from '../../project/index.js';
import { place } from '../../structure/place.js';
import { gableProject } from '../../structure/testing.js';
import { approvalsOf, changesBetween, dateOf, dayNumber, reopened } from './index.js';

const file = new URL('../../../test/site/as-built.project.json', import.meta.url);
const project = read(readFileSync(file, 'utf8')).value!;
const structure = place(project).value!;

describe('days', () => {
  it('counts as the calendar does', () => {
    expect(dayNumber('1970-01-01')).toBe(0);
    expect(dayNumber('2000-03-01')! - dayNumber('2000-02-28')!).toBe(2);
    expect(dayNumber('2100-03-01')! - dayNumber('2100-02-28')!).toBe(1);
    expect(dayNumber('2026-02-30x')).toBeUndefined();
    // Against the calendar of the machine, over four hundred years.
    for (let d = -100000; d < 80000; d += 977) expect(dateOf(d)).toBe(new Date(d * 864e5).toISOString().slice(0, 10));
    for (let d = -100000; d < 80000; d += 977) expect(dayNumber(dateOf(d))).toBe(d);
  });
});

describe('approvals', () => {
  const step = (p: Project, kind: string, today?: string) =>
    approvalsOf(p, structure, today).find((s) => s.kind === kind);
  it('stand in the order to ask', () => {
    expect(approvalsOf(project, structure).map((s) => s.kind)).toEqual([
      'zoning',
      'association',
      'building',
      'electrical',
    ]);
  });
  it('ask the health department where a tank, field or well is on the lot', () => {
    const tank = {
      ...project,
      lot: { ...project.lot, items: [{ kind: 'septic-tank' as const, at: { x: 0, y: 0 }, label: '' }] },
    };
    expect(step(tank, 'health')!.applies).toBe('yes');
    expect(step(project, 'health')).toBeUndefined();
  });
  it('run the clock from the last inspection that was passed, 180 days', () => {
    // Granted 2026-03-30, inspected last on 2026-04-10: 180 days later is 2026-10-07.
    const c = step(project, 'building', '2026-05-01')!.clock!;
    expect(c).toMatchObject({ since: '2026-04-10', lapses: '2026-10-07', state: 'running', daysLeft: 159 });
    expect(step(project, 'building', '2026-09-20')!.clock!.state).toBe('soon');
    expect(step(project, 'building', '2026-10-08')!.clock!.state).toBe('lapsed');
    expect(step(project, 'building')!.clock!.state).toBe('unknown');
  });
  it('take the days an office has said', () => {
    const approvals = project.log.approvals.map((a) => (a.kind === 'building' ? { ...a, lapsesAfter: 365 } : a));
    expect(step({ ...project, log: { ...project.log, approvals } }, 'building')!.clock!.lapses).toBe('2027-04-10');
  });
  it('know an office by its name where the log names no kind', () => {
    const named = (body: string) =>
      approvalsOf(
        { ...project, log: { ...project.log, approvals: [{ body, state: 'granted', date: '', note: '' }] } },
        structure,
      ).find((s) => s.state === 'granted')?.kind;
    expect(named('Zoning clearance')).toBe('zoning');
    expect(named('Building permit')).toBe('building');
    expect(named('Electrical permit')).toBe('electrical');
    expect(named('Ridge Hollow architectural review')).toBe('association');
  });
});

describe('changes', () => {
  const base = gableProject;
  const only = (p: Project) => changesBetween(base, p);
  it('none, where nothing changed or only the log did', () => {
    expect(only(base)).toEqual([]);
    expect(
      reopened(only({ ...base, log: { ...base.log, revisions: [{ number: '1', date: '2026-01-01', note: '' }] } })),
    ).toEqual([]);
  });
  it('a wider roof reopens zoning, association and building', () => {
    const roofs = base.cover.roofs.map((r) => ({ ...r, eave: 24 }));
    const c = only({ ...base, cover: { ...base.cover, roofs } });
    expect(c.map((x) => x.path)).toEqual(['/cover/roofs/0/eave']);
    expect(reopened(c)).toEqual(['zoning', 'association', 'building']);
  });
  it('another beam size reopens building only; another covering the association too', () => {
    const beam = { ...base.choices.sections.beam!, depth: 13.5 } as never;
    expect(
      reopened(only({ ...base, choices: { ...base.choices, sections: { ...base.choices.sections, beam } } })),
    ).toEqual(['building']);
    const roofs = base.cover.roofs.map((r) => ({ ...r, finish: { ...r.finish, covering: 'standing-seam-metal' } }));
    expect(reopened(only({ ...base, cover: { ...base.cover, roofs } }))).toEqual(['association', 'building']);
  });
  it('a part put in front of others is one change, not a change of all', () => {
    const [b1, b2] = base.cover.beams;
    const c = only({ ...base, cover: { ...base.cover, beams: [{ ...b1!, mark: 'B9', posts: [] }, b1!, b2!] } });
    expect(c).toHaveLength(1);
    expect(c[0]!.path).toBe('/cover/beams/0');
  });
  it('does not take the source of an answer for a change of it', () => {
    const frost = { ...base.basis.frost, from: 'told on the phone' };
    expect(only({ ...base, basis: { ...base.basis, frost } })).toEqual([]);
    expect(reopened(only({ ...base, basis: { ...base.basis, frost: { ...frost, value: 30 } } }))).toEqual(['building']);
  });
});
