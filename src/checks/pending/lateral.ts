/** What keeps the cover from swaying, and what it hands to the house. */
import { notEvaluated } from '../finding.js';
import { pendingCheck, roofSubjects } from './pending.js';

export const diaphragm = pendingCheck({
  id: 'diaphragm',
  title: 'Roof as a diaphragm',
  clause: 'SDPWS 2015 4.2',
  reason: 'Whether the roof can carry side load to what resists it is not worked out yet.',
  needs: 'the sheathing’s nailing, its unit shear and the chords',
  subjects: roofSubjects,
  wrong(ctx, subject) {
    const bare = ctx.structure.surfaces.some((s) => s.roof === subject.id && !s.sheathed);
    if (!bare) return undefined;
    return notEvaluated(
      'SDPWS 2015 4.2',
      'This roof has no sheathing and is no diaphragm; another way to carry side load must be shown. Needed: bracing in the roof plane.',
    );
  },
});

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
