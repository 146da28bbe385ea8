import type { Issue } from '../../base/issue.js';
import { error } from '../issues.js';
import type { ProjectRule } from './contract.js';

/** Every mark names one part. */
export const marks: ProjectRule = ({ cover }) => {
  const seen = new Set<string>();
  const issues: Issue[] = [];
  const add = (mark: string, path: string): void => {
    if (seen.has(mark))
      issues.push(
        error('mark-repeated', path, 'Another part has this mark.', {
          found: mark,
          subject: mark,
          expected: 'a mark of its own',
        }),
      );
    seen.add(mark);
  };
  for (const r of cover.roofs) add(r.mark, `${r.path}/mark`);
  for (const l of cover.ledgers) add(l.mark, `${l.path}/mark`);
  for (const t of cover.houseTies ?? []) add(t.mark, `${t.path}/mark`);
  for (const b of cover.beams) {
    add(b.mark, `${b.path}/mark`);
    for (const p of b.posts) {
      add(p.mark, `${p.path}/mark`);
      add(p.footingMark, `${p.path}/footingMark`);
    }
    for (const e of [b.ends?.start, b.ends?.end]) {
      if (e?.kind !== 'post-in-wall') continue;
      add(e.mark, `${e.path}/mark`);
      if (e.foot.kind === 'footing') add(e.foot.footingMark, `${e.path}/foot/footingMark`);
    }
  }
  return issues;
};
