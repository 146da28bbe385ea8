/** Emergency escape openings under the cover: they open fully and a path leads from them to the yard. IRC 2018 R310.1, R310.2.4. */
import { contains } from '../../base/plane.js';
import { ESCAPE_PATH } from '../codes/irc-2018/index.js';
import type { Check } from '../contract.js';
import { failed, measured, notApplicable, notEvaluated } from '../finding.js';
import { lowestClear } from '../roof/headroom.js';
import { floorsOf, underCover } from './facts.js';

const CLAUSE = 'IRC 2018 R310.1, R310.2.4';

export const escapePath: Check = {
  id: 'escape-path',
  title: 'Way out of escape openings under the cover',
  subjects: ({ structure }) => {
    const found = underCover(structure).filter((p) => p.opening.escape);
    return found.length === 0
      ? [{ id: 'house', path: '/house/openings' }]
      : found.map((p) => ({ id: p.opening.mark, path: p.opening.path }));
  },
  run(subject, { structure }, rec) {
    const placed = underCover(structure).find((p) => p.opening.mark === subject.id);
    if (!placed) return notApplicable(CLAUSE, 'no escape opening lies under the cover');
    const blocking = structure.members.filter(
      (m) => m.role === 'post' && m.state !== 'removed' && contains(placed.ground, m.start),
    );
    if (blocking.length > 0)
      return failed(
        CLAUSE,
        `${blocking.map((m) => m.mark).join(', ')} stands within 36 in before escape opening ${subject.id}: move the post so that the opening can be used in full.`,
      );
    const low = lowestClear({ ...structure, slabs: floorsOf(structure) });
    if (!low) return notEvaluated(CLAUSE, 'no clear height could be measured under the cover');
    rec?.step({
      symbol: 'path',
      meaning: `least clear height under the cover, at ${low.member}; its sides are open to the yard`,
      formula: 'z(underside) − z(floor)',
      substituted: `${low.at.z.toFixed(2)} − ${(low.at.z - low.clear).toFixed(2)}`,
      value: low.clear,
      unit: 'in',
      clause: CLAUSE,
      from: [placed.opening.path],
    });
    return measured(
      {
        demand: ESCAPE_PATH,
        capacity: low.clear,
        unit: 'in',
        clause: CLAUSE,
        formula: '36 in / clear height of the path',
        prescriptive: true,
        note: 'the cover has no walls: the path from the opening to the yard stays open; keep it so',
        remedy: `The path from escape opening ${subject.id} is ${low.clear.toFixed(0)} in high where 36 in is needed: raise the cover.`,
      },
      rec,
    );
  },
};
