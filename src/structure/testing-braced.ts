/**
 * A gable standing free in the yard, for tests of the side load: `bracedGable` on pinned posts with knee braces to the
 * beams and to struts across, so braced both ways. `change` as in testing.ts.
 */
import type { BeamLine, Project } from '../project/model.js';
import type { Member, Structure } from './model.js';
import { gableProject, given } from './testing.js';

const FT = 12;
const OUT = 20 * FT;
export const KNEE = { section: 'brace', run: 30, rise: 30 } as const;

const line = (b: BeamLine): BeamLine => ({
  ...b,
  from: { ...b.from, y: b.from.y + OUT },
  to: { ...b.to, y: b.to.y + OUT },
});

const braced = (b: BeamLine): BeamLine => ({
  ...b,
  posts: b.posts.map((p, i) => ({
    ...p,
    braces: [{ ...KNEE, toward: i === 0 ? ('end' as const) : ('start' as const), path: `${p.path}/braces/0` }],
  })),
});

const roof = gableProject.cover.roofs[0]!;

/** Free-standing, with nothing chosen that holds it sideways. */
export const looseGable: Project = {
  ...gableProject,
  basis: { ...gableProject.basis, wind: { ...gableProject.basis.wind, speed: given(115), exposure: given('C') } },
  patio: {
    ...gableProject.patio,
    grade: { atHouse: -10, fall: 0 },
    slabs: gableProject.patio.slabs.map((s) => ({
      ...s,
      fall: 0,
      topAtHouse: -8,
      outline: s.outline.map((p) => ({ ...p, y: p.y + OUT - 6 })),
    })),
  },
  cover: {
    ...gableProject.cover,
    attachment: 'free-standing',
    lateral: { x: 'unknown', y: 'unknown' },
    beams: gableProject.cover.beams.map(line),
    roofs: [{ ...roof, from: roof.from + OUT, to: roof.to + OUT }],
  },
  choices: {
    ...gableProject.choices,
    sections: {
      ...gableProject.choices.sections,
      brace: {
        kind: 'solid',
        size: '4x4',
        species: 'Douglas Fir-Larch',
        grade: 'No. 1',
        treatment: 'none',
        incised: false,
        service: 'dry',
      },
      strut: {
        kind: 'solid',
        size: '6x8',
        species: 'Douglas Fir-Larch',
        grade: 'No. 1',
        treatment: 'none',
        incised: false,
        service: 'dry',
      },
    },
  },
};

export const bracedGable: Project = {
  ...looseGable,
  cover: {
    ...looseGable.cover,
    lateral: { x: 'knee-braces', y: 'knee-braces' },
    beams: looseGable.cover.beams.map(braced),
    struts: [
      { mark: 'ST1', from: 'P1', to: 'P3', section: 'strut', braces: KNEE, path: '/cover/struts/0' },
      { mark: 'ST2', from: 'P2', to: 'P4', section: 'strut', braces: KNEE, path: '/cover/struts/1' },
    ],
  },
};

/** Posts held at their feet by bases with a published moment, nothing else. */
export const fixedGable: Project = {
  ...looseGable,
  cover: {
    ...looseGable.cover,
    lateral: { x: 'fixed-posts', y: 'fixed-posts' },
    beams: looseGable.cover.beams.map((b) => ({ ...b, posts: b.posts.map((p) => ({ ...p, base: 'fixed' })) })),
  },
};

/**
 * The placed structure with every post run on into the ground by `depth` inches and held as an embedded post is, until a
 * footing kind places it so.
 */
export function sunk(structure: Structure, depth: number): Structure {
  const surface = (m: Member): number =>
    structure.footings.find((f) => Math.hypot(f.at.x - m.start.x, f.at.y - m.start.y) < 1)!.surface;
  return {
    ...structure,
    members: structure.members.map((m) =>
      m.role !== 'post'
        ? m
        : {
            ...m,
            start: { ...m.start, z: surface(m) - depth },
            length: m.end.z - surface(m) + depth,
            foot: { kind: 'embedded', at: surface(m) - depth / 3 },
          },
    ),
  };
}
