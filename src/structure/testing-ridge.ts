/**
 * The gable of `gableProject` framed with rafters: `ridgeProject` on a ridge beam B3 whose posts stand in the gable ends,
 * `tiedProject` on a ridge board with ties. For tests.
 */
import type { GableRoof, Project } from '../project/model.js';
import { change, gableProject } from './testing.js';

const first = gableProject.cover.beams[0]!;
const middle = (gableProject.cover.beams[0]!.from.x + gableProject.cover.beams[1]!.from.x) / 2;

export const ridgeProject: Project = change(gableProject, {
  cover: {
    beams: (old) => [
      ...old,
      {
        ...first,
        mark: 'B3',
        from: { ...first.from, x: middle },
        to: { ...first.to, x: middle },
        posts: first.posts.map((p, i) => ({
          ...p,
          mark: `P${i + 11}`,
          footingMark: `F${i + 11}`,
          path: `/cover/beams/2/posts/${i}`,
        })),
        path: '/cover/beams/2',
      },
    ],
    roofs: (old) =>
      old.map(
        (r): GableRoof => ({
          ...(r as GableRoof),
          ridgeBeam: 'B3',
          framing: { kind: 'rafter', spacing: 24, section: 'rafter' },
        }),
      ),
  },
  choices: {
    sections: (old) => ({
      ...old,
      rafter: {
        kind: 'solid',
        size: '2x10',
        species: 'Douglas Fir-Larch',
        grade: 'No. 2',
        treatment: 'none',
        incised: false,
        service: 'dry',
      },
    }),
  },
});

const board = {
  kind: 'solid',
  species: 'Douglas Fir-Larch',
  grade: 'No. 2',
  treatment: 'none',
  incised: false,
  service: 'dry',
} as const;

export const tiedProject: Project = change(ridgeProject, {
  cover: {
    beams: (old) => old.slice(0, 2),
    roofs: (old) =>
      old.map((r): GableRoof => {
        const { ridgeBeam: _, ...rest } = r as GableRoof;
        return {
          ...rest,
          framing: {
            kind: 'rafter',
            spacing: 24,
            section: 'rafter',
            ties: { section: 'tie', height: 4, ridgeBoard: 'ridge', nail: 'common-16d', nails: 6 },
          },
        };
      }),
  },
  choices: {
    sections: (old) => ({ ...old, tie: { ...board, size: '2x6' }, ridge: { ...board, size: '2x12' } }),
  },
});
