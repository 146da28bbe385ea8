import 'fake-indexeddb/auto';
import { describe, expect, it } from 'vitest';
import { begun, committed, moved, named, present } from './history.js';
import * as storage from './storage.js';

const e = (text: string) => ({ name: `made ${text}`, text, when: 1 });

describe('history', () => {
  it('goes back and forth without limit, and a new change leaves undone states behind', () => {
    let h = begun(e('0'));
    for (let i = 1; i <= 500; i++) h = committed(h, e(String(i)));
    expect(present(moved(h, 0)).text).toBe('0');
    expect(present(moved(moved(h, 0), 500)).text).toBe('500');
    const branched = committed(moved(h, 10), e('other'));
    expect(branched.entries).toHaveLength(12);
    expect(present(branched).text).toBe('other');
    expect(moved(h, 501)).toBe(h);
    expect(moved(h, -1)).toBe(h);
  });
  it('names a version without making a state', () => {
    const h = named(committed(begun(e('a')), e('b')), 'handed in');
    expect(h.entries).toHaveLength(2);
    expect(present(h).version).toBe('handed in');
  });
});

describe('storage', () => {
  it('keeps every state and where one stands', async () => {
    const h = committed(begun(e('a')), e('b'));
    expect(await storage.save('p1', 'Title', h, 0, 0, 7)).toEqual({ ok: true, revision: 1 });
    const back = await storage.load('p1');
    expect(back?.history).toEqual(h);
    expect(back?.row).toMatchObject({ title: 'Title', revision: 1, count: 2, at: 1 });
  });
  it('drops states that were left behind', async () => {
    const h = committed(committed(begun(e('a')), e('b')), e('c'));
    await storage.save('p2', 'T', h, 0, 0, 1);
    const shorter = committed(moved(h, 0), e('d'));
    await storage.save('p2', 'T', shorter, 1, 1, 2);
    expect((await storage.load('p2'))?.history.entries.map((x) => x.text)).toEqual(['a', 'd']);
  });
  it('refuses to write over what another tab has saved, and leaves it whole', async () => {
    await storage.save('p3', 'mine', begun(e('a')), 0, 0, 1);
    await storage.save('p3', 'theirs', committed(begun(e('a')), e('their')), 1, 1, 2);
    const r = await storage.save('p3', 'mine', committed(begun(e('a')), e('mine')), 1, 1, 3);
    expect(r.ok).toBe(false);
    expect((await storage.load('p3'))?.history.entries.map((x) => x.text)).toEqual(['a', 'their']);
  });
  it('lists the newest first and forgets on request', async () => {
    await storage.save('old', 'old', begun(e('a')), 0, 0, 1);
    await storage.save('new', 'new', begun(e('a')), 0, 0, 99);
    expect((await storage.list())[0]?.id).toBe('new');
    await storage.remove('new');
    expect(await storage.load('new')).toBeUndefined();
  });
});
