import { describe, expect, it } from 'vitest';
import { analyse } from '../../analysis/index.js';
import { buildLoads } from '../../loads/index.js';
import type { Cover, Project, TrussPaper } from '../../project/model.js';
import { trussOrders } from '../../report/truss-order.js';
import { place } from '../../structure/place.js';
import { given } from '../../structure/testing.js';
import { bracedGable } from '../../structure/testing-braced.js';
import type { CheckContext } from '../contract.js';
import { LOT } from '../testing.js';
import { diaphragmChord } from './diaphragm-chord.js';
import { ask } from './testing.js';
import { trussChordForce } from './truss-chord.js';

function context(change: Partial<Cover> = {}): CheckContext {
  const project: Project = { ...bracedGable, cover: { ...bracedGable.cover, ...change } };
  const structure = place(project).value!;
  const loads = buildLoads(project, structure).value!;
  return { project, structure, loads, lot: LOT, effects: analyse(project, structure, loads).value! };
}

const ctx = context();
const ends = ctx.structure.members.find((m) => m.role === 'gable-truss')!.mark;

/** Only what the chord is asked of; the rest of the sheet is the business of `truss-papers`. */
const sheet = (chordForce: number, sealedBy = 'an engineer'): TrussPaper =>
  ({ mark: ends, from: 'sheet A1', sealedBy, chordForce, reactions: [], path: '/cover/trussPapers/0' }) as never;

/** The papers change no load here: the same forces, other words. */
const withPapers = (...papers: TrussPaper[]): CheckContext => ({
  ...ctx,
  project: { ...ctx.project, cover: { ...ctx.project.cover, trussPapers: papers } },
});

describe('a truss as chord of a roof held by posts', () => {
  const { roofs, joints, members } = ctx.structure;
  const roof = roofs[0]!;
  const edge = members.filter((m) => m.mark === ends).map((m) => (m.start.y + m.end.y) / 2);
  const apart = Math.max(...edge) - Math.min(...edge);
  const framing = new Set(members.filter((m) => m.strips.length > 0).map((m) => m.id));
  // V·L/(4·d), V the load along y that the framing brings, L across the roof, d between the end trusses.
  const hand = Math.max(
    ...ctx.loads.combinations.map((c) => {
      let V = 0;
      for (const j of joints) {
        const force = ctx.effects.joints.get(j.id)?.force;
        if (framing.has(j.ties[0]!.part) && force) for (const t of c.terms) V += t.factor * force[t.case]!.y;
      }
      return (Math.abs(V) * (roof.max.x - roof.min.x)) / 4 / apart;
    }),
  );

  it('takes V·L/(4·d), which is on the order', () => {
    expect(hand).toBeGreaterThan(1);
    expect(trussChordForce(ctx, ends).value).toBeCloseTo(hand, 6);
    const orders = trussOrders(ctx);
    expect(orders.find((o) => o.mark === ends)!.chordForce).toBeCloseTo(hand, 6);
    expect(orders.filter((o) => o.mark !== ends).every((o) => o.chordForce === 0)).toBe(true);
  });

  it('waits for the sealed sheet, and says what it must state', () => {
    const f = ask(diaphragmChord, ctx);
    expect(f.status).toBe('not-evaluated');
    expect(f.note).toContain(`${Math.ceil(hand)} lb`);
    expect(ask(diaphragmChord, withPapers(sheet(1000, ''))).status).toBe('not-evaluated');
  });

  it('is beyond this program where the sheet says nothing of it', () => {
    expect(ask(diaphragmChord, withPapers(sheet(0))).status).toBe('outside-scope');
  });

  it('is compared with what the sheet states', () => {
    const enough = ask(diaphragmChord, withPapers(sheet(2 * hand)));
    expect([enough.status, enough.ratio]).toEqual(['pass', expect.closeTo(0.5, 9)]);
    const less = ask(diaphragmChord, withPapers(sheet(hand / 2)));
    expect([less.status, less.ratio]).toEqual(['fail', expect.closeTo(2, 9)]);
  });

  it('may come later where the office has said so of the truss papers', () => {
    const deferred = given(['trusses'] as const, 'building office, call of 2 May', '/cover/deferred');
    const f = ask(diaphragmChord, { ...ctx, project: { ...ctx.project, cover: { ...ctx.project.cover, deferred } } });
    // The beams, chords of the other direction, are still proved.
    expect(f.status).toBe('pass');
    expect(f.note).toContain(`${Math.ceil(hand)} lb`);
  });
});
