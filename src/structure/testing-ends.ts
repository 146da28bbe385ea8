/** The gable with beams held by the house. */
import type { Project } from '../project/model.js';
import { gableHouse, gableProject } from './testing-gable.js';
import { beam, DFL, DRY, FT, given } from './testing-parts.js';

/**
 * The gable with its two beams held by the house instead of a second pair of posts: B1 runs into the wall over a new post
 * inside it, B2 is fixed to the wall's face. Built-up beams, three 2x with two 1/2 in strips: 5-1/2 in wide.
 */
export const houseEndsProject: Project = {
  ...gableProject,
  house: { ...gableHouse, openings: gableHouse.openings.filter((o) => o.mark !== 'W1') },
  cover: {
    ...gableProject.cover,
    beams: [
      {
        ...beam(0, 'B1', [-9 * FT, -3.5], [-9 * FT, 15 * FT], [['P1', 177.5, 'pier', 'F1']]),
        ends: {
          start: {
            kind: 'post-in-wall',
            wall: 0,
            mark: 'P3',
            section: 'wall-post',
            foot: {
              kind: 'foundation',
              top: -1.5,
              verified: given(true, 'footing dug up beside the wall, 12 in wide'),
            },
            verified: given(true, 'drywall opened in the family room, no wires'),
            path: '/cover/beams/0/ends/start',
          },
        },
      },
      {
        ...beam(1, 'B2', [9 * FT, 0], [9 * FT, 15 * FT], [['P2', 174, 'pier', 'F2']]),
        ends: {
          start: {
            kind: 'on-wall',
            wall: 0,
            into: 'post',
            verified: given(true, 'two studs and a 4x4 seen through the opened wall'),
            path: '/cover/beams/1/ends/start',
          },
        },
      },
    ],
    roofs: gableProject.cover.roofs.map((r) => ({ ...r, bearing: 93, from: 9, to: 177 })),
  },
  choices: {
    ...gableProject.choices,
    sections: {
      ...gableProject.choices.sections,
      beam: {
        kind: 'built-up',
        plies: 3,
        ply: '2x12',
        spacers: 2,
        spacerThickness: 0.5,
        fastening: 'two rows 16d at 12 in each face',
        species: DFL,
        grade: 'No. 1',
        ...DRY,
      },
      'wall-post': { kind: 'solid', size: '4x6', species: DFL, grade: 'No. 1', ...DRY },
    },
  },
};
