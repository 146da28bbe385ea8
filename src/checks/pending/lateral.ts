/** Earthquake, the connection to the house, and the truss plant's papers. */
import { pendingCheck } from './pending.js';

export const houseConnection = pendingCheck({
  id: 'house-connection',
  title: 'Connection to the house',
  clause: 'NDS 2018 chapter 12',
  reason: 'What fastens the cover to the house, and whether the house can take it, is not worked out yet.',
  needs: 'fasteners, what they go into, flashing, and the house’s own load path',
  unless(ctx) {
    const { cover } = ctx.project;
    const leans = cover.ledgers.length > 0 || cover.lateral.x === 'house' || cover.lateral.y === 'house';
    return leans ? undefined : 'the cover hands no load to the house';
  },
});
