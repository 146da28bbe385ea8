/**
 * Covers of many sizes for property tests, all from the complete projects of the testing modules: plain gables and sheds,
 * braced and fixed-foot gables, gables on a ridge beam or with ties, two sheds in an L, and beams ending at the house.
 * Not every draw can be placed; `mirrored` turns any of them x → −x.
 */
import fc from 'fast-check';
import type { BeamLine, CoverRoof, Project, TrussPaper, WorkState } from '../project/model.js';
import { change, gableProject, given, houseEndsProject, shedProject } from './testing.js';
import { bracedGable, fixedGable } from './testing-braced.js';
import { lProject } from './testing-l.js';
import { ridgeProject, tiedProject } from './testing-ridge.js';

/** Gables of many sizes in front of the house, on two beams with three posts each. */
export const gables: fc.Arbitrary<Project> = fc
  .record({
    half: fc.integer({ min: 40, max: 150 }),
    middle: fc.integer({ min: -60, max: 60 }),
    run: fc.integer({ min: 96, max: 360 }),
    spacing: fc.constantFrom(16, 19.2, 24),
    rise: fc.integer({ min: 3, max: 10 }),
    bearing: fc.integer({ min: 90, max: 120 }),
    eave: fc.integer({ min: 0, max: 24 }),
    rake: fc.integer({ min: 0, max: 24 }),
    heel: fc.integer({ min: 5, max: 12 }),
    fall: fc.integer({ min: 0, max: 4 }),
    ridge: fc.constantFrom('x' as const, 'y' as const),
    slab: fc.constantFrom<WorkState>('existing', 'removed'),
    scissor: fc.boolean(),
    lift: fc.integer({ min: 0, max: 6 }),
  })
  .map((g) => {
    const start = g.ridge === 'y' ? 30 : -g.run / 2;
    const end = start + g.run;
    const line = (k: number, a: number) => {
      const old = gableProject.cover.beams[k]!;
      const at = (l: number) => (g.ridge === 'y' ? { x: a, y: l } : { x: l, y: 200 + g.half - a });
      const posts = [6, g.run / 2, g.run - 6].map((p, i) => ({
        ...old.posts[0]!,
        mark: `P${3 * k + i + 1}`,
        footingMark: `F${3 * k + i + 1}`,
        at: p,
        path: `/cover/beams/${k}/posts/${i}`,
      }));
      return { ...old, from: at(start), to: at(end), posts };
    };
    const inset = 3;
    const rest = (g.run - 2 * inset) % g.spacing;
    // Keeps clear of last bays too narrow to build.
    const to = rest > 0 && rest < 2 ? end - inset - 2 : end - inset;
    return change(gableProject, {
      patio: { slabs: (old) => [{ ...old[0]!, state: g.slab, fall: g.fall / 96 }] },
      cover: {
        beams: [line(0, g.middle - g.half), line(1, g.middle + g.half)],
        roofs: (old) => [
          {
            ...old[0]!,
            ridge: g.ridge,
            from: start + inset,
            to,
            pitch: Math.atan(g.rise / 12),
            bearing: g.bearing,
            eave: g.eave,
            rake: g.rake,
            framing: {
              ...old[0]!.framing,
              kind: g.scissor ? 'scissor-truss' : 'common-truss',
              spacing: g.spacing,
              heel: g.heel,
              bottomPitch: g.scissor ? Math.atan(1 / 12) : 0,
            },
          } as CoverRoof,
        ],
      },
      choices: { footings: (old) => ({ pier: { ...old.pier!, top: g.lift } as never }) },
    });
  });

/** Sheds of many sizes on a ledger or on a second beam. */
export const sheds: fc.Arbitrary<Project> = fc
  .record({
    half: fc.integer({ min: 60, max: 190 }),
    out: fc.integer({ min: 72, max: 200 }),
    spacing: fc.constantFrom(12, 16, 24),
    rise: fc.constantFrom(0.5, 1, 2, 3, 4),
    bearing: fc.integer({ min: 120, max: 140 }),
    eave: fc.integer({ min: 0, max: 20 }),
    rake: fc.integer({ min: 0, max: 12 }),
    ledger: fc.boolean(),
    highOverhang: fc.integer({ min: 0, max: 8 }),
    plies: fc.integer({ min: 2, max: 3 }),
  })
  .map((g) => {
    const old = shedProject.cover.beams[0]!;
    const line = (mark: string, k: number, y: number) => ({
      ...old,
      mark,
      from: { x: -g.half, y },
      to: { x: g.half, y },
      posts: [6, g.half, 2 * g.half - 6].map((at, i) => ({
        ...old.posts[i]!,
        mark: `P${3 * k + i + 1}`,
        footingMark: `F${3 * k + i + 1}`,
        at,
        path: `/cover/beams/${k}/posts/${i}`,
      })),
      path: `/cover/beams/${k}`,
    });
    const low = line('B1', 0, g.out);
    const rest = (2 * g.half - 1.5) % g.spacing;
    const to = rest > 0 && rest < 2 ? g.half - 0.75 - 2 : g.half - 0.75;
    return change(shedProject, {
      cover: {
        beams: g.ledger ? [low] : [low, line('B2', 1, 20)],
        ledgers: (l) => (g.ledger ? [{ ...l[0]!, from: -g.half, to: g.half }] : []),
        roofs: (r) => [
          {
            ...r[0]!,
            high: g.ledger ? { ledger: 'L1' } : { beam: 'B2' },
            from: -g.half + 0.75,
            to,
            pitch: Math.atan(g.rise / 12),
            bearing: g.bearing,
            eave: g.eave,
            rake: g.rake,
            highOverhang: g.highOverhang,
            framing: { ...r[0]!.framing, spacing: g.spacing },
          } as CoverRoof,
        ],
      },
      choices: { sections: (s) => ({ ...s, beam: { ...s.beam!, plies: g.plies, spacers: g.plies - 1 } as never }) },
    });
  });

/** What may change on any roof without moving its supports, and the loads of the place. */
const turns = fc.record({
  pitch: fc.integer({ min: 2, max: 9 }),
  spacing: fc.constantFrom(12, 16, 24),
  eave: fc.integer({ min: 0, max: 18 }),
  rake: fc.integer({ min: 0, max: 12 }),
  snow: fc.constantFrom(0, 20, 45),
  wind: fc.integer({ min: 95, max: 150 }),
  shaken: fc.boolean(),
});
type Turns = typeof turns extends fc.Arbitrary<infer T> ? T : never;

const turned = (p: Project, t: Turns): Project =>
  change(p, {
    basis: {
      snow: { ground: (g) => ({ ...g, value: t.snow }) },
      wind: { speed: (s) => ({ ...s, value: t.wind }) },
      seismic: (old) => (t.shaken ? { category: given('D0'), sds: given(0.6), sd1: given(0.3), s1: given(0.2) } : old),
    },
    cover: {
      roofs: (old) =>
        old.map(
          (r): CoverRoof => ({
            ...r,
            pitch: Math.atan(t.pitch / 12),
            pitchText: `${t.pitch}/12`,
            eave: t.eave,
            rake: t.rake,
            framing: { ...r.framing, spacing: t.spacing },
          }),
        ),
    },
  });

/** Braces of any reach on every post and cross member. */
const braced: fc.Arbitrary<Project> = fc
  .tuple(turns, fc.record({ run: fc.integer({ min: 20, max: 40 }), rise: fc.integer({ min: 20, max: 40 }) }))
  .map(([t, k]) =>
    change(turned(bracedGable, t), {
      cover: {
        beams: (old) =>
          old.map(
            (b): BeamLine => ({
              ...b,
              posts: b.posts.map((q) => ({ ...q, braces: (q.braces ?? []).map((x) => ({ ...x, ...k })) })),
            }),
          ),
        struts: (old) => (old ?? []).map((s) => (s.braces ? { ...s, braces: { ...s.braces, ...k } } : s)),
      },
    }),
  );

const of = (base: Project): fc.Arbitrary<Project> => turns.map((t) => turned(base, t));
/** Sealed sheets for the trusses, with a push outward. */
const papered: fc.Arbitrary<Project> = fc
  .record({
    down: fc.integer({ min: 200, max: 3000 }),
    up: fc.integer({ min: 0, max: 2000 }),
    side: fc.integer({ min: 0, max: 300 }),
  })
  .map((g) =>
    change(gableProject, {
      cover: {
        trussPapers: ['T1', 'T2'].map((mark, i): TrussPaper => {
          const shape = {
            span: 216,
            pitch: 0.3,
            bottomPitch: 0.15,
            heel: 6,
            overhang: 12,
            spacing: 24,
            bearingWidth: 5.5,
          };
          const row = { side: g.side, duration: 1.15 };
          return {
            mark,
            ...shape,
            from: 'sealed sheet',
            chordForce: 0,
            sealedBy: 'a licensed engineer',
            reactions: (['left', 'right'] as const).flatMap((bearing) => [
              { bearing, kind: 'gravity' as const, amount: g.down, ...row },
              { bearing, kind: 'uplift' as const, amount: g.up, ...row, duration: 1.6 },
            ]),
            bracing: '',
            deflection: '',
            path: `/cover/trussPapers/${i}`,
          };
        }),
      },
    }),
  );

/** Sheds in an L have no room for steep slopes or eaves over each other. */
const lShaped = turns.map((t) => turned(lProject, { ...t, pitch: 1 + (t.pitch % 3), eave: 0 }));

/** Every way of framing and holding a cover, by name. */
export const COVERS = {
  gable: gables,
  shed: sheds,
  papers: papered,
  braced,
  'fixed posts': of(fixedGable),
  'ridge beam': of(ridgeProject),
  'tied rafters': of(tiedProject),
  'two roofs': lShaped,
  'beams at the house': of(houseEndsProject),
} as const satisfies Readonly<Record<string, fc.Arbitrary<Project>>>;

/** The same with whole bays only, the frames centred: counted from one end, a last narrow bay has no mirror image. */
export const wholeBays = (p: Project): Project =>
  change(p, {
    cover: {
      roofs: (old) =>
        old.map((r): CoverRoof => {
          const run = r.framing.spacing * Math.floor((r.to - r.from) / r.framing.spacing + 1e-9);
          const middle = (r.from + r.to) / 2;
          return { ...r, from: middle - run / 2, to: middle + run / 2 };
        }),
    },
  });

const TURN = 2 * Math.PI;

/**
 * The same project seen in a mirror: x → −x, lot and all. House walls turn the other way, so their order is reversed; posts,
 * beams and roofs keep their marks.
 */
export function mirrored(p: Project): Project {
  const flip = <T extends { readonly x: number; readonly y: number }>(q: T): T => ({ ...q, x: 0 - q.x });
  const last = p.house.walls.length - 1;
  const wall = (i: number): number => last - i;
  const turn = (azimuth: number): number => (((2 * p.lot.outward - azimuth) % TURN) + TURN) % TURN;
  const yard = { front: 'front', rear: 'rear', left: 'right', right: 'left', 'street-side': 'street-side' } as const;
  const outward = { east: Math.sin(p.lot.outward), north: Math.cos(p.lot.outward) };
  const o = p.lot.origin;
  const ahead = o.east * outward.east + o.north * outward.north;
  const fall = { '+x': '-x', '-x': '+x', '+y': '+y' } as const;
  return change(p, {
    basis: {
      zoning: { setbacks: (old) => ({ ...old, left: old.right, right: old.left }) },
    },
    lot: {
      courses: (old) => old.map((c) => ({ ...c, azimuth: turn(c.azimuth), yard: yard[c.yard] })),
      origin: { east: 2 * ahead * outward.east - o.east, north: 2 * ahead * outward.north - o.north },
    },
    house: {
      walls: (old) => [...old].reverse().map((w) => ({ ...w, start: flip(w.end), end: flip(w.start) })),
      openings: (old) =>
        old.map((h) => {
          const w = p.house.walls[h.wall]!;
          const run = Math.hypot(w.end.x - w.start.x, w.end.y - w.start.y);
          return { ...h, wall: wall(h.wall), offset: run - h.offset - h.width };
        }),
      roofs: (old) => old.map((r) => ({ ...r, min: { x: -r.max.x, y: r.min.y }, max: { x: -r.min.x, y: r.max.y } })),
    },
    patio: { slabs: (old) => old.map((s) => ({ ...s, outline: [...s.outline].reverse().map(flip) })) },
    cover: {
      beams: (old) =>
        old.map((b): BeamLine => {
          const ends = b.ends && {
            ...(b.ends.start ? { start: { ...b.ends.start, wall: wall(b.ends.start.wall) } } : {}),
            ...(b.ends.end ? { end: { ...b.ends.end, wall: wall(b.ends.end.wall) } } : {}),
          };
          return { ...b, from: flip(b.from), to: flip(b.to), ...(ends ? { ends } : {}) };
        }),
      ledgers: (old) =>
        old.map((l) => {
          const w = p.house.walls[l.wall]!;
          const alongX = Math.abs(w.start.y - w.end.y) < 1e-9;
          return { ...l, wall: wall(l.wall), ...(alongX ? { from: -l.to, to: -l.from } : {}) };
        }),
      roofs: (old) =>
        old.map((r): CoverRoof => {
          if (r.kind === 'gable') {
            return r.ridge === 'y' ? { ...r, beams: [r.beams[1], r.beams[0]] } : { ...r, from: -r.to, to: -r.from };
          }
          // No random project has a hip: its four beams would have to change places.
          if (r.kind === 'hip') return r;
          if (r.fall === '+x' || r.fall === '-x') return { ...r, fall: fall[r.fall] };
          return { ...r, from: -r.to, to: -r.from };
        }),
    },
  });
}
