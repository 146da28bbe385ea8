/** A gable of trusses that goes on over the rear slope of a gabled house, old 5 in 12, new 4 in 12. For tests. */
import type { GableRoof, Project, SectionChoice } from '../project/model.js';
import { change, gableProject, given } from './testing.js';

const sawn = (size: string): SectionChoice => ({
  kind: 'solid',
  size,
  species: 'Douglas Fir-Larch',
  grade: 'No. 2',
  treatment: 'none',
  incised: false,
  service: 'dry',
});

const LETTER = 'letter of an engineer on the rear rafters';

export const overlayProject: Project = change(gableProject, {
  house: {
    roofs: (old) =>
      old.map((r) => ({
        ...r,
        ridge: 'x' as const,
        overhang: 16,
        rake: 12,
        heel: 4,
        framing: { kind: 'rafters' as const, size: '2x6', spacing: 16, sheathing: '1/2 in plywood', dead: 12 },
        gutter: true,
      })),
  },
  cover: {
    lateral: { x: 'fixed-posts', y: 'fixed-posts' },
    beams: (old) =>
      old.map((b) => ({
        ...b,
        from: { ...b.from, y: 22 },
        to: { ...b.to, y: 194 },
        posts: b.posts.map((p, i) => ({ ...p, at: i === 0 ? 12 : 160, base: 'fixed' as const })),
      })),
    roofs: (old) =>
      old.map((r) => ({
        ...(r as GableRoof),
        from: 24,
        to: 192,
        meetsHouse: {
          kind: 'overlay' as const,
          plane: 'HR1-1',
          rafter: 'fill',
          plate: 'plate',
          ridge: 'ridge',
          spacing: 24,
          oldCovering: 'removed' as const,
          statement: {
            down: given(9, LETTER),
            up: given(40, LETTER),
            point: given(900, LETTER),
            side: given(true, LETTER),
            thrust: given(2000, LETTER),
            rafterToPlate: '(4) 16d common toe-nails',
            rafterToRidge: '(4) 16d common toe-nails',
            ridgeToFrame: '(3) 16d common nails into a block',
            fastening: '(2) 1/4 in x 4-1/2 in wood screws into every old rafter crossed',
          },
        },
      })),
  },
  choices: { sections: (old) => ({ ...old, fill: sawn('2x6'), plate: sawn('2x10'), ridge: sawn('2x8') }) },
});

/** The same with other values of its roof, of what it says of the house, and of the house roof. */
export const overlayWith = (
  roof: Partial<GableRoof>,
  meets: Partial<NonNullable<GableRoof['meetsHouse']>> = {},
  house: Partial<Project['house']['roofs'][number]> = {},
): Project =>
  change(overlayProject, {
    house: { roofs: (old) => old.map((r) => ({ ...r, ...house })) },
    cover: {
      roofs: (old) =>
        old.map((r) => {
          const g = r as GableRoof;
          return { ...g, ...roof, meetsHouse: { ...g.meetsHouse!, ...meets } };
        }),
    },
  });
