/** Covers of more than one roof through placing, loads and analysis: every case closes, a mirror changes nothing. */
import { describe, expect, it } from 'vitest';
import { buildLoads } from '../loads/index.js';
import type { Project, ShedRoof } from '../project/model.js';
import { place } from '../structure/place.js';
import { change, gableProject, shedProject } from '../structure/testing.js';
import { lProject, mirroredL } from '../structure/testing-l.js';
import { analyse } from './analyse.js';
import { BALANCE_LIMIT } from './balance.js';
import { footingEnvelope } from './effects.js';

function run(p: Project) {
  const placed = place(p);
  const structure = placed.value!;
  expect(structure, placed.issues.map((i) => `${i.code} ${i.path} ${i.found} ${i.expected}`).join('; ')).toBeDefined();
  const loads = buildLoads(p, structure).value!;
  const { value, issues } = analyse(p, structure, loads);
  expect(issues).toEqual([]);
  expect(value!.failure).toBeUndefined();
  for (const b of value!.balance) expect(b.errorApplied, b.case).toBeLessThan(BALANCE_LIMIT);
  return { structure, loads, effects: value!, issues: placed.issues };
}

const errors = (issues: readonly { code: string; severity: string }[]) =>
  issues.filter((i) => i.severity === 'error').map((i) => i.code);

describe('two sheds in an L on a house with a wing', () => {
  const l = run(lProject);

  it('stands without faults and gives every part a mark of its own', () => {
    expect(errors(l.issues)).toEqual([]);
    const ids = [...l.structure.members, ...l.structure.joints].map((m) => m.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect([...new Set(l.structure.members.map((m) => m.mark))].sort()).toEqual(
      ['B1', 'B2', 'FA1', 'FA2', 'L1', 'L2', 'P1', 'P2', 'P3', 'P4', 'RF1', 'RF2'].sort(),
    );
  });

  it('puts two beams on the corner post, each with a share of its top', () => {
    const caps = l.structure.joints.filter((j) => j.kind === 'beam-to-post' && j.ties[1]!.part === 'P2');
    expect(caps.map((c) => c.ties[0]!.part).sort()).toEqual(['B1', 'B2']);
    const post = l.structure.members.find((m) => m.id === 'P2')!.section;
    const total = caps.reduce((sum, c) => sum + c.contact.length * c.contact.width, 0);
    // Less than the whole top of a 6x6: plywood spacers of the built-up beams bear nothing.
    expect(total).toBeLessThanOrEqual(post.width * post.depth + 1e-9);
    for (const c of caps) expect(c.contact.length * c.contact.width).toBeGreaterThan(4);
    // What both beams bring comes down the post: the foot carries their sum and the post's own weight.
    const dead = 0;
    const foot = l.structure.joints.find((j) => j.kind === 'post-to-footing' && j.ties[0]!.part === 'P2')!;
    const z = (id: string) => l.effects.joints.get(id)!.force[dead]!.z;
    const own = l.structure.members.find((m) => m.id === 'P2')!;
    expect(z(foot.id)).toBeCloseTo(z(caps[0]!.id) + z(caps[1]!.id) - own.section.weight * own.length, 6);
  });

  it('carries more on the footing under the corner post than under the end post', () => {
    const of = (id: string) => footingEnvelope(l.effects, id, l.loads.combinations)!.down.value;
    expect(of('F2')).toBeGreaterThan(of('F1'));
    expect(of('F4')).toBeGreaterThan(0);
  });

  it('takes wind and least wind roof by roof', () => {
    for (const c of l.loads.cases.filter((k) => k.kind === 'W')) {
      const on = new Set([...(c.plan ?? []).map((q) => q.roof), ...c.side.map((s) => s.roof)]);
      expect(on.has('R1') || on.has('R2'), c.id).toBe(true);
    }
    const least = l.loads.cases.find((c) => c.id === 'W+x·least')!;
    expect(least.side.map((s) => s.roof)).toEqual(['R1', 'R2']);
  });

  it('leaves drift and sliding between the two roofs to a professional', () => {
    const answers = l.loads.snow!.filter((a) => a.question === 'drift' || a.question === 'sliding');
    expect(answers.map((a) => `${a.roof} ${a.question} ${a.outcome}`)).toEqual([
      'R1 drift outside',
      'R1 sliding outside',
      'R2 drift outside',
      'R2 sliding outside',
    ]);
  });

  it('mirrors', () => {
    const m = run(mirroredL(lProject));
    expect(errors(m.issues)).toEqual([]);
    for (const f of l.structure.footings) {
      const a = footingEnvelope(l.effects, f.id, l.loads.combinations)!;
      const b = footingEnvelope(m.effects, f.id, m.loads.combinations)!;
      expect(m.structure.footings.find((g) => g.id === f.id)!.at.x).toBeCloseTo(-f.at.x, 9);
      for (const k of ['down', 'up', 'x', 'y'] as const) expect(b[k].value, `${f.id} ${k}`).toBeCloseTo(a[k].value, 4);
    }
  });

  it('tells when the roofs run into each other, and when a beam runs into a roof', () => {
    const nearer = change(lProject, {
      cover: {
        roofs: ([a, b]) => [a!, { ...b!, from: 118 }],
        ledgers: ([a, b]) => [a!, { ...b!, from: 110 }],
        beams: ([a, b]) => [
          a!,
          { ...b!, from: { x: -18, y: 110 }, shared: [{ post: 'P2', at: 16 }], posts: [{ ...b!.posts[0]!, at: 122 }] },
        ],
      },
    });
    expect(errors(place(nearer).issues)).toContain('roofs-overlap');
    const tails = change(lProject, { cover: { roofs: ([a, b]) => [{ ...a!, eave: 12 }, b!] } });
    expect(errors(place(tails).issues)).toContain('beam-through-roof');
    expect(l.issues.map((i) => i.code)).toContain('roof-drains-onto-roof');
  });

  it('refuses a shared post that is elsewhere, unknown or at another height', () => {
    const b2 = (by: object) => change(lProject, { cover: { beams: ([a, b]) => [a!, { ...b!, ...by }] } });
    expect(errors(place(b2({ shared: [{ post: 'P2', at: 6 }] })).issues)).toContain('shared-post-off-beam');
    expect(errors(place(b2({ shared: [{ post: 'P9', at: 0 }] })).issues)).toContain('shared-post-unknown');
    const high = change(lProject, { cover: { roofs: ([a, b]) => [a!, { ...b!, bearing: 121 }] } });
    expect(errors(place(high).issues)).toContain('beams-at-two-heights-on-post');
  });
});

describe('a roof that goes on where another ends', () => {
  const top = place(shedProject).value!.members.find((m) => m.id === 'B1')!;
  const bearing = (p: Project) => {
    const b = place(p).value!.members.find((m) => m.id === 'B1')!;
    return b.start.z + b.section.depth / 2;
  };
  const first = shedProject.cover.roofs[0] as ShedRoof;
  const low = shedProject.cover.beams[0]!;
  const both = (at: number): Project =>
    change(shedProject, {
      cover: {
        beams: [
          low,
          {
            ...low,
            mark: 'B2',
            from: { x: -120, y: 230 },
            to: { x: 120, y: 230 },
            posts: low.posts.map((q, i) => ({ ...q, mark: `P${i + 4}`, footingMark: `F${i + 4}` })),
          },
        ],
        roofs: [
          { ...first, eave: 0, finish: { ...first.finish, gutter: false } },
          { ...first, mark: 'R2', high: { beam: 'B1' }, low: 'B2', bearing: at, path: '/cover/roofs/1' },
        ],
      },
    });

  it('shares the beam, half of its top for each, and every case closes', () => {
    // The first roof ends on the uphill half of B1, so B1 hangs as high as it did.
    const p = both(bearing(shedProject));
    const { structure, issues } = run(p);
    expect(errors(issues)).toEqual([]);
    expect(structure.members.find((m) => m.id === 'B1')!.start.z).toBeCloseTo(top.start.z, 9);
    const seats = structure.joints.filter((j) => j.kind === 'rafter-to-beam' && j.ties[1]!.part === 'B1');
    expect(new Set(seats.map((j) => j.contact.length))).toEqual(new Set([top.section.width / 2]));
    expect(structure.roofs[0]!.max.y).toBeCloseTo(126, 9);
    expect(structure.roofs[1]!.min.y).toBeCloseTo(126, 9);
    expect(structure.roofs[0]!.neighbours).toEqual([{ roof: 'R2', how: 'drains-onto' }]);
  });

  it('wants the beam at one height', () => {
    expect(errors(place(both(bearing(shedProject) + 2)).issues)).toContain('beam-at-two-heights');
  });
});

it('a lean-to on the side beam of a gable: trusses on one half of the beam, rafters on the other', () => {
  const [, b2] = gableProject.cover.beams;
  const gable = gableProject.cover.roofs[0]!;
  const x = b2!.from.x + 120;
  const low = {
    ...b2!,
    mark: 'B3',
    from: { ...b2!.from, x },
    to: { ...b2!.to, x },
    posts: b2!.posts.map((q, i) => ({ ...q, mark: `P${i + 30}`, footingMark: `F${i + 30}` })),
    path: '/cover/beams/2',
  };
  const { rafter } = shedProject.choices.sections;
  const lean: ShedRoof = {
    ...(shedProject.cover.roofs[0] as ShedRoof),
    ...{ mark: 'R2', fall: '+x', high: { beam: 'B2' }, low: 'B3', highOverhang: 0, bearing: gable.bearing },
    ...{ from: gable.from, to: gable.to, rake: gable.rake, pitch: Math.atan(1 / 12), pitchText: '1/12' },
    path: '/cover/roofs/1',
  };
  const p = change(gableProject, {
    cover: {
      beams: (old) => [...old, low],
      roofs: [{ ...gable, eave: 0, finish: { ...gable.finish, gutter: false, fascia: '' } }, lean],
    },
    choices: { sections: (old) => ({ ...old, rafter: rafter! }) },
  });
  const { structure, effects, loads, issues } = run(p);
  expect(structure.roofs.map((r) => r.neighbours?.map((n) => n.how))).toEqual([['drains-against'], undefined]);
  // The trusses' heel is lower than the rafters are deep.
  expect(issues.map((i) => i.code)).toContain('roof-drains-against-roof');
  const on = structure.joints.filter((j) => j.ties[1]!.part === 'B2' && /^(truss|rafter)/.test(j.kind));
  const width = structure.members.find((m) => m.id === 'B2')!.section.width;
  for (const j of on) expect(j.contact.length).toBeCloseTo(width / 2, 9);
  expect(new Set(on.map((j) => j.kind)).size).toBe(2);
  // The shared beam's footings carry more than the outer one's of the gable.
  const down = (id: string) => footingEnvelope(effects, id, loads.combinations)!.down.value;
  expect(down('F3')).toBeGreaterThan(down('F1'));
});

it('two gables on one middle beam make a valley: they stand, and wind and unbalanced snow are left to a professional', () => {
  const [b1, b2] = gableProject.cover.beams;
  const r = gableProject.cover.roofs[0]!;
  const shift = b2!.from.x - b1!.from.x;
  const third = {
    ...b2!,
    mark: 'B3',
    from: { ...b2!.from, x: b2!.from.x + shift },
    to: { ...b2!.to, x: b2!.to.x + shift },
    posts: b2!.posts.map((q, i) => ({ ...q, mark: `P${i + 50}`, footingMark: `F${i + 50}` })),
    path: '/cover/beams/2',
  };
  const plain = { ...r, eave: 0, finish: { ...r.finish, gutter: false, fascia: '' } };
  const p = change(gableProject, {
    basis: { snow: { ground: (g) => ({ ...g, value: 30 }) } },
    house: { roofs: [], openings: [] },
    cover: {
      beams: [b1!, b2!, third],
      roofs: [plain, { ...plain, mark: 'R2', beams: ['B2', 'B3'], path: '/cover/roofs/1' } as typeof r],
    },
  });
  const { structure, loads, issues } = run(p);
  expect(issues.map((i) => i.code)).toContain('roofs-make-valley');
  expect(issues.map((i) => i.code)).not.toContain('roofs-overlap');
  expect(structure.roofs.map((q) => q.neighbours?.map((n) => n.how))).toEqual([['valley'], ['valley']]);
  expect(loads.outside.map((o) => o.about)).toEqual(['wind on R1', 'wind on R2']);
  expect(loads.snow!.filter((a) => a.question === 'unbalanced').map((a) => a.outcome)).toEqual(['outside', 'outside']);
});
