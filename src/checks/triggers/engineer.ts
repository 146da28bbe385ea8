/** One result for each condition that calls for a licensed professional or may do so at this office. */
import type { Check } from '../contract.js';
import { notApplicable, outsideScope } from '../finding.js';
import { TRIGGERS } from './registry.js';

export const engineerTriggers: Check = {
  id: 'engineer-triggers',
  title: 'Licensed professional',
  subjects: (ctx) => [
    { id: 'cover', path: '/cover' },
    ...TRIGGERS.filter((t) => t.found(ctx) !== undefined).map((t) => ({ id: t.id, path: '/cover' })),
  ],
  run(subject, ctx) {
    const trigger = TRIGGERS.find((t) => t.id === subject.id);
    if (!trigger) return notApplicable('', 'conditions that call for a licensed professional are listed one by one');
    const said = trigger.found(ctx);
    if (said === undefined) return notApplicable(trigger.source, 'does not arise');
    return trigger.level === 'needs'
      ? outsideScope(trigger.source, said)
      : notApplicable(trigger.source, `${said} Ask the office before paying for drawings.`);
  },
};
