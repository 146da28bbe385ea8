import { describe, expect, it } from 'vitest';
import { analyse, thrustSet, trussEffects } from '../../analysis/index.js';
import { makeRecorder } from '../../base/trace.js';
import { buildLoads } from '../../loads/index.js';
import type { Project, TrussPaper } from '../../project/model.js';
import { place } from '../../structure/place.js';
import { gableProject } from '../../structure/testing.js';
import type { CheckContext, Finding } from '../contract.js';
import { jointDemands } from '../joints/demands.js';
import { LOT } from '../testing.js';
import { trussPapers } from './papers.js';
import { trussPreliminary } from './preliminary.js';
import { reactionPairs } from './reactions.js';
import { scissorSpread } from './spread.js';
import { scissorThrust, thrustEnvelope } from './thrust.js';

function contextOf(project: Project): CheckContext {
  const structure = place(project).value!;
  const loads = buildLoads(project, structure).value!;
  return { project, lot: LOT, structure, loads, effects: analyse(project, structure, loads).value! };
}

const scissor = (by: Partial<Project['cover']> = {}, framing: object = {}): Project => ({
  ...gableProject,
  cover: {
    ...gableProject.cover,
    ...by,
    roofs: gableProject.cover.roofs.map((r) => ({
      ...r,
      framing: { ...r.framing, kind: 'scissor-truss' as const, bottomPitch: Math.atan(2 / 12), ...framing } as never,
    })),
  },
});
const plain = contextOf(scissor());
const run = (ctx: CheckContext): Finding => trussPapers.run(trussPapers.subjects(ctx)[0]!, ctx);

/** A sheet that agrees with our own truss of this mark; reactions given. */
function sheet(ctx: CheckContext, mark: string, down: number, up: number, by: Partial<TrussPaper> = {}): TrussPaper {
  const t = ctx.structure.members.find((m) => m.mark === mark)!.truss!;
  return {
    mark,
    from: 'sheet A1',
    sealedBy: 'an engineer',
    span: t.span,
    pitch: t.topPitch,
    bottomPitch: t.bottomPitch,
    heel: t.heel,
    overhang: t.overhang[0],
    spacing: 24,
    bearingWidth: 1.5,
    reactions: (['left', 'right'] as const).flatMap((bearing) => [
      { bearing, kind: 'gravity' as const, amount: down, side: 0, duration: 1.25 },
      { bearing, kind: 'uplift' as const, amount: up, side: 0, duration: 1.6 },
    ]),
    bracing: 'none',
    chordForce: 0,
    deflection: '',
    path: '/cover/trussPapers/0',
    ...by,
  };
}

/** Our own greatest reactions of a mark. */
function own(ctx: CheckContext, mark: string): { down: number; up: number } {
  let [down, up] = [0, 0];
  for (const j of ctx.structure.joints) {
    if (!j.ties[0]!.part.startsWith(`${mark}-`)) continue;
    for (const c of ctx.loads.combinations) {
      const z = c.terms.reduce((n, t) => n + t.factor * ctx.effects.joints.get(j.id)!.force[t.case]!.z, 0);
      down = Math.max(down, -z);
      up = Math.max(up, z);
    }
  }
  return { down, up };
}
const MARKS = ['T1', 'T2'];
const agreeing = (by: (mark: string) => Partial<TrussPaper> = () => ({})): Project =>
  scissor({ trussPapers: MARKS.map((m) => sheet(plain, m, own(plain, m).down, own(plain, m).up, by(m))) });

describe('truss papers', () => {
  it('are asked for until each mark has a sealed sheet', () => {
    expect(run(plain)).toMatchObject({ status: 'not-evaluated' });
    const one = contextOf(scissor({ trussPapers: [sheet(plain, 'T1', own(plain, 'T1').down, own(plain, 'T1').up)] }));
    expect(run(one).note).toContain('T2 not entered');
    expect(run(contextOf(agreeing((m) => (m === 'T2' ? { sealedBy: '' } : {})))).note).toContain('T2 not sealed');
  });

  it('pass when they are sealed and agree', () => {
    const f = run(contextOf(agreeing()));
    expect(f.status).toBe('pass');
    // Scissor trusses with both bearings fastened push; a sheet that says nothing of it is told of, never called larger.
    expect(f.note).toContain('Not printed on the sheets');
    expect(f.note).not.toContain('Larger');
  });

  it.each([
    ['span', { span: 260 }],
    ['pitch', { pitch: Math.atan(5 / 12) }],
    ['bottom chord', { bottomPitch: 0 }],
    ['heel', { heel: 9 }],
    ['overhang', { overhang: 30 }],
    ['spacing', { spacing: 16 }],
    ['bearing', { bearingWidth: 20 }],
  ])('fail when the sheet is for another %s', (word, by) => {
    const f = run(contextOf(agreeing((m) => (m === 'T1' ? by : {}))));
    expect(f.status).toBe('fail');
    expect(f.note).toContain(`T1: ${word}`);
  });

  it('fail when the sheet carries less than this roof weighs, or names no truss here', () => {
    const light = contextOf(scissor({ trussPapers: MARKS.map((m) => sheet(plain, m, 100, 500)) }));
    expect(run(light).note).toContain('too small');
    const odd = contextOf(agreeing((m) => (m === 'T2' ? { mark: 'T9' } : {})));
    expect(run(odd).note).toContain('T9');
  });

  it('fail where any one reaction of any mark is sealed for a few pounds less than ours', () => {
    for (const kind of ['gravity', 'uplift'] as const) {
      const { down, up } = own(plain, 'T2');
      const most = kind === 'gravity' ? down : up;
      const short = agreeing((m) => {
        const whole = sheet(plain, m, own(plain, m).down, own(plain, m).up);
        const reactions = whole.reactions.map((r) =>
          m === 'T2' && r.bearing === 'right' && r.kind === kind ? { ...r, amount: r.amount - 10 } : r,
        );
        return { reactions };
      });
      const f = run(contextOf(short));
      expect(f.status, kind).toBe('fail');
      expect(f.note).toContain(
        `T2: right bearing sealed for ${(most - 10).toFixed(0)} lb ${kind === 'gravity' ? 'down' : 'up'}`,
      );
      expect(f.note).toContain(`reseal T2 for at least ${Math.ceil(most - 1e-6)} lb`);
      expect(f.note).not.toContain('T1:');
    }
  });

  it('compare the push of a truss whose bearings are both fastened, where the sheet prints one', () => {
    const push = reactionPairs(plain, 'T1', sheet(plain, 'T1', 1, 1)).find((r) => r.way === 'outward')!;
    expect(push.ours).toBeGreaterThan(25);
    const side = (by: number) =>
      contextOf(
        agreeing((m) => {
          const whole = sheet(plain, m, own(plain, m).down, own(plain, m).up);
          return m === 'T1' ? { reactions: whole.reactions.map((r) => ({ ...r, side: push.ours + by })) } : {};
        }),
      );
    expect(run(side(-10)).note).toContain('lb outward, too small');
    expect(run(side(0)).status).toBe('pass');
  });

  it('may come later only on the word of a named office', () => {
    const office = (from: string, state: 'given' | 'unknown' = 'given') =>
      contextOf(scissor({ deferred: { value: ['trusses'], state, from, path: '' } }));
    expect(run(office('building counter'))).toMatchObject({ status: 'not-applicable' });
    expect(run(office('building counter')).note).toContain('may not be set before');
    expect(run(office('')).status).toBe('not-evaluated');
    expect(run(office('', 'unknown')).status).toBe('not-evaluated');
  });

  it('are carried to the soil when they are larger than ours', () => {
    const heavy = contextOf(scissor({ trussPapers: MARKS.map((m) => sheet(plain, m, 2000, 900)) }));
    expect(run(heavy)).toMatchObject({ status: 'pass' });
    expect(run(heavy).note).toContain('2000 lb on the sheet');
    const tie = jointDemands(heavy).find((d) => d.kind === 'truss-to-beam')!;
    expect(tie.down.value).toBeCloseTo(2000, 6);
    expect(tie.down.combination).toBe('D + papers gravity');
    expect(tie.up.value).toBeCloseTo(900, 6);
    // All trusses press 2000 on each side: footings receive their sum and the dead load of beams and posts.
    const k = heavy.loads.combinations.find((c) => c.id === 'D + papers gravity')!;
    const sum = (c: CheckContext, pick: (i: number) => number): number =>
      [...c.effects.footings.values()].reduce(
        (n, f) => n + k.terms.reduce((m, t) => m + pick(t.case) * f.force[t.case]!.z, 0),
        0,
      );
    const trusses = heavy.structure.members.filter((m) => m.truss);
    const dead = sum(heavy, (i) => (heavy.loads.cases[i]!.kind === 'D' ? 1 : 0));
    const seats = heavy.structure.joints
      .filter((j) => j.kind === 'truss-to-beam')
      .reduce((n, j) => n - heavy.effects.joints.get(j.id)!.force[0]!.z, 0);
    expect(sum(heavy, () => 1)).toBeCloseTo(2000 * 2 * trusses.length + dead - seats, 3);
    for (const b of heavy.effects.balance) expect(b.errorReactions).toBeLessThan(1e-9);
  });

  it('leave every other number alone when they are set aside with a reason', () => {
    const aside = contextOf(
      scissor({
        trussPapers: MARKS.map((m) => sheet(plain, m, 2000, 900, { govern: { set: 'ours', why: 'old covering' } })),
      }),
    );
    expect(aside.loads.cases).toEqual(plain.loads.cases);
    expect(run(aside).note).toContain('set aside: old covering');
  });
});

describe('scissor trusses', () => {
  it('are held to a limit on how far the bearings part', () => {
    const [subject] = scissorSpread.subjects(plain);
    expect(scissorSpread.run(subject!, plain)).toMatchObject({ status: 'pass', capacity: 1.25 });
    const strict = contextOf(scissor({}, { spreadLimit: 0.01 }));
    expect(scissorSpread.run(subject!, strict)).toMatchObject({ status: 'fail', capacity: 0.01 });
  });

  it('push their beams sideways when both bearings are held: less than with beams that do not give', () => {
    const set = thrustSet(plain)!;
    const d = 0;
    for (const t of trussEffects(plain)) {
      for (const id of t.members) expect(Math.abs(set.push.get(id)![d]!)).toBeLessThan(1.3 * Math.abs(t.thrust[d]!));
    }
    const inner = trussEffects(plain).filter((t) => t.mark === 'T1');
    const middle = inner.flatMap((t) => t.members.map((id) => set.push.get(id)![d]! / t.thrust[d]!));
    expect(Math.min(...middle)).toBeLessThan(0.9);
  });

  it('adds the push to what the joints must hold sideways', () => {
    const tie = plain.structure.joints.find((j) => j.kind === 'truss-to-beam' && j.ties[0]!.part.startsWith('T1'))!;
    const held = thrustEnvelope(plain, tie.id)!;
    const demand = jointDemands(plain).find((x) => x.mark === tie.mark)!;
    expect(Math.max(demand.alongX.value, demand.alongY.value)).toBeGreaterThanOrEqual(
      Math.max(held.x.value, held.y.value) - 1e-9,
    );
    expect(Math.max(held.x.value, held.y.value)).toBeGreaterThan(100);
  });

  it('checks the beam for both ways of bending, and shows how the push was found', () => {
    const [subject] = scissorThrust.subjects(plain);
    const rec = makeRecorder();
    const f = scissorThrust.run(subject!, plain, rec);
    expect(['pass', 'fail']).toContain(f.status);
    expect(f.note).toContain('lb outward');
    const symbols = rec.lines.flatMap((l) => (l.kind === 'step' ? [l.symbol] : []));
    expect(symbols.slice(0, 4)).toEqual(['Δ', 'δ', 'H', 'Ht']);
    expect(symbols).toContain('fb2');
  });

  it('leaves the push open where braces or fixed posts would have to hold it as well', () => {
    const braced = contextOf(scissor({ lateral: { x: 'fixed-posts', y: 'fixed-posts' } }));
    const [subject] = scissorThrust.subjects(braced);
    expect(scissorThrust.run(subject!, plain).status).toBe('pass');
    expect(scissorThrust.run(subject!, braced)).toMatchObject({ status: 'not-evaluated' });
  });

  it('push no beam where one bearing slides, which then leaves all that acts along the truss to the other', () => {
    const free = contextOf(scissor({}, { slides: 'right' }));
    expect(thrustSet(free)).toBeUndefined();
    expect(scissorThrust.run(scissorThrust.subjects(free)[0]!, free)).toMatchObject({ status: 'not-applicable' });
    expect(scissorSpread.run(scissorSpread.subjects(free)[0]!, free).note).toContain('its right bearing');
    const pair = (c: CheckContext) => {
      const joints = c.structure.joints.filter((j) => j.ties[0]!.part === 'T1-02' && j.kind === 'truss-to-beam');
      const across = joints[0]!.at.y === joints[1]!.at.y ? ('x' as const) : ('y' as const);
      return joints
        .sort((p, q) => p.at[across] - q.at[across])
        .map((j) => c.effects.joints.get(j.id)!.force.map((f) => ({ along: f[across], z: f.z })));
    };
    const [left, right] = pair(free);
    const [l, r] = pair(plain);
    left!.forEach((f, c) => {
      expect(f.along).toBeCloseTo(l![c]!.along + r![c]!.along, 9);
      expect(right![c]!.along).toBeCloseTo(0, 9);
      expect(f.z).toBeCloseTo(l![c]!.z, 9);
    });
    expect(left!.some((f) => Math.abs(f.along) > 1)).toBe(true);
    for (const b of free.effects.balance) expect(b.errorReactions).toBeLessThan(1e-9);
  });

  it('are not a question under level bottom chords', () => {
    const level = contextOf(scissor({}, { kind: 'common-truss', bottomPitch: 0 }));
    expect(scissorThrust.subjects(level)).toEqual([]);
    expect(scissorSpread.subjects(level)).toEqual([]);
    expect(thrustSet(level)).toBeUndefined();
  });
});

describe('the preliminary members', () => {
  it('inform and never pass or fail', () => {
    for (const subject of trussPreliminary.subjects(plain)) {
      const f = trussPreliminary.run(subject, plain);
      expect(f.status).toBe('not-applicable');
      expect(f.ratio).toBeGreaterThan(0);
      expect(f.note).toContain('engineer decides');
    }
  });
});
