import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { area } from '../base/plane.js';
import { dot, length, sub, type Vec3 } from '../base/vec.js';
import type { Project } from '../project/model.js';
import type { Member, Structure } from './model.js';
import { place } from './place.js';
import { gables, mirrored, sheds, wholeBays } from './random.testing.js';

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
  const symmetric = anyProject.map(wholeBays);
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
