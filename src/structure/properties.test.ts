import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { area } from '../base/plane.js';
import { dot, length, sub, type Vec3 } from '../base/vec.js';
import type { CoverRoof, Project, WorkState } from '../project/model.js';
import type { Member, Structure } from './model.js';
import { place } from './place.js';
import { change, gableProject, shedProject } from './testing.js';

/** Gables of many sizes in front of the house, on two beams with three posts each. */
const gables: fc.Arbitrary<Project> = fc
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
const sheds: fc.Arbitrary<Project> = fc
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

const anyProject = fc.oneof(gables, sheds);

const placed = (p: Project): Structure => {
  const { value, issues } = place(p);
  if (value === undefined) throw new Error(issues.map((i) => `${i.code}: ${i.message}`).join('\n'));
  return value;
};

/** Distance from a point to a member's axis, within its length. */
function offAxis(m: Member, p: Vec3): number {
  const d = sub(m.end, m.start);
  const t = Math.min(1, Math.max(0, dot(sub(p, m.start), d) / dot(d, d)));
  return length(sub(p, { x: m.start.x + d.x * t, y: m.start.y + d.y * t, z: m.start.z + d.z * t }));
}

describe('every placed structure', () => {
  it('tiles each surface with the strips of its frames', () => {
    fc.assert(
      fc.property(anyProject, (p) => {
        const s = placed(p);
        for (const surface of s.surfaces) {
          const strips = s.members
            .flatMap((m) => m.strips.filter((k) => k.surface === surface.id))
            .sort((a, b) => a.u0 - b.u0);
          const width = Math.max(...surface.outline.map((q) => q.x));
          const height = Math.max(...surface.outline.map((q) => q.y));
          expect(strips[0]!.u0).toBeCloseTo(0, 9);
          expect(strips.at(-1)!.u1).toBeCloseTo(width, 9);
          for (let i = 1; i < strips.length; i++) expect(strips[i]!.u0).toBeCloseTo(strips[i - 1]!.u1, 9);
          const sum = strips.reduce((t, k) => t + (k.u1 - k.u0) * height, 0);
          expect(sum).toBeCloseTo(area(surface.outline), 6);
        }
      }),
    );
  });

  it('stacks concrete, standoff, post and beam up to the framing', () => {
    fc.assert(
      fc.property(anyProject, (p) => {
        const s = placed(p);
        const at = new Map(s.members.map((m) => [m.id, m]));
        for (const j of s.joints) {
          if (j.kind !== 'beam-to-post') continue;
          const beam = at.get(j.ties[0]!.part)!;
          const post = at.get(j.ties[1]!.part)!;
          const foot = s.joints.find((k) => k.kind === 'post-to-footing' && k.ties[0]!.part === post.id)!;
          const footing = s.footings.find((f) => f.id === foot.ties[1]!.part)!;
          const seat = s.joints.find(
            (k) => k.ties[1]!.part === beam.id && (k.kind === 'rafter-to-beam' || k.kind === 'truss-to-beam'),
          )!;
          const up = footing.top + p.choices.standoff + post.length + beam.section.depth;
          expect(up).toBeCloseTo(seat.at.z, 6);
          expect(footing.at).toEqual({ x: post.start.x, y: post.start.y });
        }
      }),
    );
  });

  it('has every joint on the axes of the parts it ties, within half a section', () => {
    fc.assert(
      fc.property(anyProject, (p) => {
        const s = placed(p);
        const at = new Map(s.members.map((m) => [m.id, m]));
        for (const j of s.joints) {
          for (const tie of j.ties) {
            const m = at.get(tie.part);
            // A fascia meets the tail of a truss's top chord, which is not on the level axis.
            if (m === undefined || (j.kind === 'fascia-to-framing' && m.truss)) continue;
            const reach = Math.hypot(m.section.depth, m.section.width) / 2;
            expect(offAxis(m, j.at), `${j.id} at ${m.id}`).toBeLessThanOrEqual(reach + 1e-6);
            expect(tie.along).toBeGreaterThanOrEqual(0);
            expect(tie.along).toBeLessThanOrEqual(length(sub(m.end, m.start)) + 1e-6);
          }
        }
      }),
    );
  });

  it('carries each frame on two bearings, each beam on posts, each post on a footing', () => {
    fc.assert(
      fc.property(anyProject, (p) => {
        const s = placed(p);
        const below = new Map<string, number>();
        for (const j of s.joints) {
          if (j.kind === 'fascia-to-framing' || j.kind === 'beam-splice') continue;
          const top = j.ties[0]!.part;
          below.set(top, (below.get(top) ?? 0) + 1);
        }
        for (const m of s.members) {
          const n = below.get(m.id) ?? 0;
          if (m.role === 'rafter' || m.role === 'truss' || m.role === 'gable-truss') expect(n).toBe(2);
          if (m.role === 'beam') expect(n).toBe(3);
          if (m.role === 'post') expect(n).toBe(1);
          if (m.role === 'ledger') expect(n).toBeGreaterThan(2);
        }
      }),
    );
  });

  it('has unit frames and no number that is not one', () => {
    fc.assert(
      fc.property(anyProject, (p) => {
        const s = placed(p);
        for (const f of s.surfaces) {
          for (const e of [f.u, f.v, f.n]) expect(length(e)).toBeCloseTo(1, 12);
          expect(f.n.z).toBeGreaterThan(0);
          expect(dot(f.u, f.v)).toBeCloseTo(0, 12);
          expect(f.u.z).toBe(0);
        }
        for (const m of s.members) expect(dot(m.up, sub(m.end, m.start))).toBeCloseTo(0, 6);
        expect(JSON.stringify(s)).not.toMatch(/null|NaN/);
      }),
    );
  });
});

/** The same project seen in a mirror: x → −x. House walls turn the other way, so their order is reversed. */
function mirrored(p: Project): Project {
  const flip = <T extends { readonly x: number; readonly y: number }>(q: T): T => ({ ...q, x: -q.x + 0 });
  const last = p.house.walls.length - 1;
  const wall = (i: number): number => last - i;
  return change(p, {
    house: {
      walls: (old) => [...old].reverse().map((w) => ({ ...w, start: flip(w.end), end: flip(w.start) })),
      openings: (old) =>
        old.map((o) => {
          const w = p.house.walls[o.wall]!;
          const run = Math.hypot(w.end.x - w.start.x, w.end.y - w.start.y);
          return { ...o, wall: wall(o.wall), offset: run - o.offset - o.width };
        }),
      roofs: (old) => old.map((r) => ({ ...r, min: { x: -r.max.x, y: r.min.y }, max: { x: -r.min.x, y: r.max.y } })),
    },
    patio: { slabs: (old) => old.map((s) => ({ ...s, outline: [...s.outline].reverse().map(flip) })) },
    cover: {
      beams: (old) => old.map((b) => ({ ...b, from: flip(b.from), to: flip(b.to) })),
      ledgers: (old) => old.map((l) => ({ ...l, wall: wall(l.wall), from: -l.to, to: -l.from })),
      roofs: (old) =>
        old.map(
          (r) =>
            (r.kind === 'gable' && r.ridge === 'y'
              ? { ...r, beams: [r.beams[1], r.beams[0]] }
              : { ...r, from: -r.to, to: -r.from }) as CoverRoof,
        ),
    },
  });
}

const round = (x: number): number => Math.round(x * 1e6) / 1e6 + 0;

/** Axes as an unordered set, so that it does not matter which end is the start. */
const axes = (s: Structure, sign: 1 | -1): string[] =>
  s.members
    .map((m) => {
      const ends = [m.start, m.end].map((q) => `${round(sign * q.x)},${round(q.y)},${round(q.z)}`).sort();
      return `${m.role} ${ends.join(' – ')} ${round(m.length)} ${round(m.notch)}`;
    })
    .sort();

it('mirrors: x → −x of the project is x → −x of the structure', () => {
  // Frames counted from one end only mirror when the last bay is a whole one.
  const symmetric = anyProject.filter((p) => {
    const r = p.cover.roofs[0]!;
    const rest = (r.to - r.from) % r.framing.spacing;
    return (r.kind === 'gable' && r.ridge === 'y') || rest < 1e-9;
  });
  fc.assert(
    fc.property(symmetric, (p) => {
      const a = placed(p);
      const b = placed(mirrored(p));
      expect(axes(b, -1)).toEqual(axes(a, 1));
      const footings = (s: Structure, sign: 1 | -1) =>
        s.footings.map((f) => `${round(sign * f.at.x)},${f.at.y},${f.top},${f.bottom}`).sort();
      expect(footings(b, -1)).toEqual(footings(a, 1));
      expect(b.roofs[0]!.min.x).toBeCloseTo(-a.roofs[0]!.max.x, 9);
      expect(b.roofs[0]!.meanHeight).toBeCloseTo(a.roofs[0]!.meanHeight, 9);
      const planes = (s: Structure, sign: 1 | -1) =>
        s.housePlanes
          .map((h) =>
            h.outline
              .map((q) => `${round(sign * q.x)},${round(q.y)},${round(q.z)}`)
              .sort()
              .join(' '),
          )
          .sort();
      expect(planes(b, -1)).toEqual(planes(a, 1));
      expect(
        place(mirrored(p))
          .issues.map((i) => i.code)
          .sort(),
      ).toEqual(
        place(p)
          .issues.map((i) => i.code)
          .sort(),
      );
    }),
    { numRuns: 60 },
  );
});
