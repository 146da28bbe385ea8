/** Knee braces and struts: slenderness. Their forces are checked by `combinedCheck`, struts' shear by `shearCheck`. */
import type { MemberRole } from '../../structure/model.js';
import { columnSlenderness, SLENDERNESS_LIMIT } from '../codes/nds-2018/index.js';
import type { Check } from '../contract.js';
import { measured, notApplicable } from '../finding.js';
import { type BarLength, barLength, recordBarLength } from './bar-length.js';
import { memberSubjects } from './subjects.js';

export const slendernessCheck = (role: MemberRole, title: string): Check => ({
  id: `${role}-slenderness`,
  title,
  subjects: (ctx) => memberSubjects(ctx, role),
  run(subject, ctx, rec) {
    const clause = 'NDS 2018 3.7.1.4';
    let worst: { bar: BarLength; least: number } | undefined;
    for (const m of ctx.structure.members) {
      if (m.mark !== subject.id || m.role !== role) continue;
      const bar = barLength(ctx, m);
      if (!bar) continue;
      // Plies count each for itself.
      const least = Math.min(m.section.b / m.section.plies, m.section.d);
      if (!worst || bar.l / least > worst.bar.l / worst.least) worst = { bar, least };
    }
    if (!worst) return notApplicable(clause, 'no such part');
    recordBarLength(worst.bar, rec);
    return measured(
      {
        demand: columnSlenderness(1, worst.bar.l, worst.least, rec),
        capacity: SLENDERNESS_LIMIT,
        unit: '',
        clause,
        formula: 'le/d / 50',
        remedy: `${worst.bar.id} is too slender to be pushed: use a thicker section.`,
      },
      rec,
    );
  },
});
