import type { z } from 'zod';
import type { ExistingKind } from '../model.js';
import { given, list, part } from './leaf.js';
import { outline } from './lot.js';
import { choice, number, text } from './plain.js';
import { length, slope } from './quantities.js';

const STATES = ['existing', 'new', 'removed'] as const;
const state = given(choice('Whether it stays, is built or goes.', STATES));

const EXISTING = [
  'cover',
  'wall',
  'fence',
  'planter',
  'paving',
  'post',
  'deck',
  'other',
] as const satisfies readonly ExistingKind[];

const fall = given(slope('Fall away from the house; negative drains toward it.', '1/4 in/ft', -0.25, 0.25));

export const patio = part(
  'Ground, slabs and steps beside the house. Heights from the finished floor, down is negative.',
  {
    grade: part('Finished ground.', {
      atHouse: given(length('Ground at the house wall.', '-10 in', -240, 24)),
      fall,
    }),
    slabs: list(
      'Concrete slabs; an empty list when there are none.',
      part('A slab.', {
        mark: given(text('Mark on the sheets.', 'S1')),
        state,
        outline: outline('the slab'),
        thickness: given(length('Thickness.', '4 in', 2, 24)),
        topAtHouse: given(length('Top of the slab at the house wall (y = 0).', '-5 in', -240, 24)),
        fall,
      }),
    ).max(100),
    steps: list(
      'Steps between levels.',
      part('A flight of steps.', {
        outline: outline('the steps'),
        risers: given(number('Number of risers.', 2, 1, 30, true)),
        top: given(length('Level of the top step.', '0 in', -240, 240)),
        state,
      }),
    )
      .max(100)
      .optional(),
    existing: list(
      'Other things that stand where the cover will be: an old cover, low walls, planters.',
      part('One thing.', {
        name: given(text('How the sheets name it.', 'old lattice cover')),
        kind: given(choice('What it is.', EXISTING)),
        outline: outline('the thing'),
        state: given(choice('Whether it stays or goes.', ['existing', 'removed'])),
      }),
    )
      .max(100)
      .optional(),
  },
);

export type WrittenPatio = z.output<typeof patio>;
