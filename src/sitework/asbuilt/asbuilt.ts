import type { Issue, Outcome } from '../../base/issue.js';
import { formatLength } from '../../base/quantity/index.js';
import type { Project } from '../../project/model.js';
import type { Structure } from '../../structure/model.js';
import { layoutOf } from '../layout/index.js';
import { measured } from './measure.js';
import type { AsBuilt, PostNow } from './model.js';
import { beamOffsets, postOffsets } from './offsets.js';
import type { FitContext } from './rules/contract.js';
import { FIT_RULES } from './rules/registry.js';

/** What was measured of the work and what still fits. No value, and no issue, when nothing was measured. */
export function asBuiltOf(project: Project, structure: Structure): Outcome<AsBuilt> {
  const layout = layoutOf(structure);
  const m = measured(project, layout);
  if (!m) return { value: undefined, issues: [] };
  const posts = postOffsets(structure, m.points);
  const unknown = (project.log.asBuilt?.cut ?? [])
    .filter((c) => layout.posts.every((p) => p.post !== c.post))
    .map(
      (c): Issue => ({
        code: 'cut-post-unknown',
        severity: 'error',
        path: `${c.path}/post`,
        message: 'No post of this mark stands on a footing.',
        found: c.post,
        expected: `one of ${layout.posts.map((p) => p.post).join(', ')}`,
      }),
    );
  const cuts = new Map(project.log.asBuilt?.cut.map((c) => [c.post, c.length]));
  const lengths = layout.posts.flatMap((p): PostNow[] => {
    const point = m.points.find((q) => q.name === p.footing);
    if (!point) return [];
    const change =
      point.height && point.designed.level !== undefined ? point.height.level - point.designed.level : undefined;
    return [
      {
        post: p.post,
        section: p.section,
        designed: p.length,
        now: change === undefined ? undefined : p.length - change,
        sigma: point.height?.sigma ?? 0,
        cut: cuts.get(p.post),
      },
    ];
  });
  const ctx: FitContext = {
    project,
    structure,
    layout,
    posts,
    beams: beamOffsets(project, posts),
    lengths,
    slot: project.log.asBuilt?.slot ?? 0,
    len: (inches) => formatLength(inches, { units: project.job.units }),
  };
  return {
    value: {
      readings: m.readings,
      bad: m.bad,
      plan: m.plan?.testAfter,
      heights: m.height?.testAfter,
      points: m.points,
      loose: m.loose,
      posts: lengths,
      findings: FIT_RULES.flatMap((rule) => rule.run(ctx).map((f) => ({ ...f, rule: rule.title }))),
    },
    issues: [...m.issues, ...unknown],
  };
}
