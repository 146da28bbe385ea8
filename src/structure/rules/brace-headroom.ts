import type { Issue } from '../../base/issue.js';
import { surfaceAt } from '../ground.js';
import { warning } from '../issues.js';
import { feet, inches } from '../text.js';
import type { StructureRule } from './contract.js';

/** Nobody walks nearer to a post than this, inches. Common practice, no source. */
const BESIDE_POST = 12;

/** Clear height under knee braces and cross members, where someone walks. */
export const braceHeadroom: StructureRule = ({ project, structure }) => {
  const least = project.basis.zoning.headroom;
  const issues: Issue[] = [];
  const told = new Set<string>();
  for (const m of structure.members) {
    if (m.role !== 'brace' && m.role !== 'strut') continue;
    const run = Math.hypot(m.end.x - m.start.x, m.end.y - m.start.y);
    const slope = (m.end.z - m.start.z) / run;
    // A strut is walked under anywhere; a brace from a foot off its post on.
    const out = m.role === 'brace' ? Math.min(BESIDE_POST, run) : 0;
    const at = {
      x: m.start.x + ((m.end.x - m.start.x) * out) / run,
      y: m.start.y + ((m.end.y - m.start.y) * out) / run,
    };
    const under = m.start.z + slope * out - (m.section.depth / 2) * Math.hypot(1, slope);
    const clear = under - surfaceAt(structure, at);
    if (clear >= least - 1e-6 || told.has(m.mark)) continue;
    told.add(m.mark);
    const [code, what] =
      m.role === 'brace'
        ? ['brace-too-low', `Knee brace ${m.mark}, ${inches(BESIDE_POST)} off its post,`]
        : ['strut-too-low', `Cross member ${m.mark}`];
    issues.push(
      warning(code!, m.path, `${what} leaves less clear height than asked.`, {
        subject: m.mark,
        found: feet(clear),
        expected: `${feet(least)} or more: a higher bearing, or a shorter rise of the brace`,
      }),
    );
  }
  return issues;
};
