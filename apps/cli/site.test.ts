/** The site commands as a script sees them. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { BROKEN, GABLE, root, run, scratch } from './cli.testing.js';

const BUILT = join(root, 'test/site/as-built.project.json');
const temp = scratch();

describe('stake', () => {
  it('writes pages, points and data, the same bytes each time', async () => {
    const [a, b] = [join(temp, 'a'), join(temp, 'b')];
    const r = await run('stake', GABLE, '-o', a, '--json');
    expect(r.code).toBe(0);
    expect(JSON.parse(r.out).files).toHaveLength(3);
    await run('stake', GABLE, '-o', b);
    for (const f of ['stake.pdf', 'stake.csv', 'stake.json'])
      expect(readFileSync(join(a, f)).equals(readFileSync(join(b, f)))).toBe(true);
    const { layout } = JSON.parse(readFileSync(join(a, 'stake.json'), 'utf8'));
    expect(layout.posts).toHaveLength(4);
    expect(readFileSync(join(a, 'stake.csv'), 'utf8')).toMatch(/^name,along,out,level,x ft/);
    expect(readFileSync(join(a, 'stake.json'), 'utf8')).not.toContain('null');
  });
  it('writes nothing for a project that cannot be placed', async () => {
    const dir = join(temp, 'c');
    const r = await run('stake', BROKEN, '-o', dir);
    expect(r.code).toBe(2);
    expect(existsSync(dir)).toBe(false);
  });
});

describe('stages', () => {
  it('writes cards with the log’s ticks, and the clock of the permit', async () => {
    const dir = join(temp, 'd');
    const r = await run('stages', BUILT, '-o', dir, '--today', '2026-05-01');
    expect(r.code).toBe(0);
    const j = JSON.parse(readFileSync(join(dir, 'stages.json'), 'utf8'));
    expect(j.approvals.find((a: { kind: string }) => a.kind === 'building').clock.daysLeft).toBe(159);
    expect(readFileSync(join(dir, 'stages.csv'), 'utf8')).toContain('footing,partial,depth');
    expect(readFileSync(join(dir, 'stages.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
  });
  it('tells what changed since the approved project', async () => {
    const dir = join(temp, 'e');
    const wider = join(temp, 'wider.json');
    writeFileSync(wider, readFileSync(GABLE, 'utf8').replace('"rake": "6 in"', '"rake": "8 in"'));
    await run('stages', wider, '-o', dir, '--approved', GABLE, '--today', '2026-05-01');
    const j = JSON.parse(readFileSync(join(dir, 'stages.json'), 'utf8'));
    expect(j.changes.map((c: { path: string }) => c.path)).toEqual(['/cover/roofs/0/rake']);
    expect(j.changes[0].reopens).toEqual(['zoning', 'association', 'building']);
  });
  it('refuses a day that is none', async () => {
    expect((await run('stages', GABLE, '-o', join(temp, 'f'), '--today', 'tomorrow')).code).toBe(2);
  });
});

describe('asbuilt', () => {
  it('names the bad reading and what to do, and runs the checks with the measured places', async () => {
    const r = await run('asbuilt', BUILT);
    expect(r.out).toContain('BAD READING  F1 to F4');
    expect(r.out).toContain('Pack 1/4"');
    // Pier F2 came out lower than drawn: its post’s end stands too near the slab.
    expect(r.out).toContain('As measured the set is not issuable');
    expect(r.code).toBe(1);
    const j = JSON.parse((await run('asbuilt', BUILT, '--json')).out);
    expect(j.bad).toHaveLength(1);
    expect(j.asMeasured.issuable).toBe(false);
  });
  it('says so when nothing was measured', async () => {
    const r = await run('asbuilt', GABLE);
    expect(r.code).toBe(2);
    expect(r.err).toContain('Nothing was measured');
  });
});
