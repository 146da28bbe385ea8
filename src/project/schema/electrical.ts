/** Devices of the electrical plan. */
import type { z } from 'zod';
import type { DeviceKind } from '../model.js';
import { given, list, maybe, part } from './leaf.js';
import { place } from './lot.js';
import { choice, text } from './plain.js';
import { length } from './quantities.js';

const KINDS = [
  'receptacle',
  'switch',
  'light',
  'fan',
  'junction',
  'panel',
  'disconnect',
] as const satisfies readonly DeviceKind[];

export const electrical = part(
  'Electrical work of the cover. Left out: the set has no electrical plan. An empty list says that none is proposed.',
  {
    devices: list(
      'Devices, new and existing.',
      part('One device.', {
        mark: given(text('Mark on the sheets.', 'E1')),
        kind: given(choice('What it is; fan is a box rated to carry one.', KINDS)),
        state: given(choice('Whether it stays, is built or goes.', ['new', 'existing', 'removed'])),
        at: given(place),
        height: given(length('Center above the patio surface.', '4 ft', -12, 360)),
        circuit: maybe(text('Circuit, as the panel names it.', 'C14, 20 A', true)),
        switchedBy: maybe(text('Mark of the switch that works it.', 'E3')),
        place: given(
          choice('Damp under the roof out of the rain; wet where rain or spray reaches.', ['damp', 'wet', 'dry']),
        ),
        note: maybe(text('Words beside it in the schedule.', 'weather-resistant', true)),
      }),
    ).max(200),
  },
);

export type WrittenElectrical = z.output<typeof electrical>;
