/** Knee braces and struts: slenderness. Their forces are checked by `combinedCheck`, struts' shear by `shearCheck`. */
import type { MemberRole } from '../../structure/model.js';
import { columnSlenderness, SLENDERNESS_LIMIT } from '../codes/nds-2018/index.js';
import type { Check } from '../contract.js';
import { measured, notApplicable } from '../finding.js';
import { memberSubjects } from './subjects.js';

export const slendernessCheck = (role: MemberRole, title: string): Check => ({
  id: `${role}-slenderness`,
  title,
  subjects: (ctx) => memberSubjects(ctx, role),
  run(subject, ctx, rec) {
    const clause = 'NDS 2018 3.7.1.4';
    let worst: { id: string; l: number; least: number } | undefined;
    for (const m of ctx.structure.members) {
      if (m.mark !== subject.id || m.role !== role) continue;
      // Between the working points; pinned ends, so Ke = 1. Plies count each for itself.
      const span = ctx.effects.members.get(m.id)?.spans[0]?.length ?? 0;
      const l = Math.max(span, m.unbraced.top, m.unbraced.bottom);
      const least = Math.min(m.section.b / m.section.plies, m.section.d);
      if (!worst || l / least > worst.l / worst.least) worst = { id: m.id, l, least };
    }
    if (!worst) return notApplicable(clause, 'no such part');
    return measured(
      {
        demand: columnSlenderness(1, worst.l, worst.least, rec),
        capacity: SLENDERNESS_LIMIT,
        unit: '',
        clause,
        formula: 'le/d / 50',
        remedy: `${worst.id} is too slender to be pushed: use a thicker section.`,
      },
      rec,
    );
  },
});
