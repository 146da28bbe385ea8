/** Wind questions beyond the free-roof pressures of the main system. */
import { pendingCheck } from './pending.js';

export const windAttached = pendingCheck({
  id: 'wind-attached',
  title: 'Wind on a cover that touches the house',
  clause: 'ASCE 7-16 27.3.2, 30.11',
  reason: 'The free-roof pressures belong to open buildings; how the house wall changes them is not worked out yet.',
  needs: 'an envelope of the open-building and attached-canopy pressures',
  unless: (ctx) =>
    ctx.project.cover.attachment === 'free-standing' ? 'the cover stands free of the house' : undefined,
});
