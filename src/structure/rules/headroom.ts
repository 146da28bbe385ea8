import type { Issue } from '../../base/issue.js';
import { type Ground, surfaceAt } from '../ground.js';
import { warning } from '../issues.js';
import { feet } from '../text.js';
import type { StructureRule } from './contract.js';

/** Clear height under beams and under the tails of the framing, over the walking surface below each. */
export const headroom: StructureRule = ({ project, structure, roofs }) => {
  const least = project.basis.zoning.headroom;
  const ground: Ground = structure;
  const issues: Issue[] = [];
  const low = (code: string, mark: string, path: string, clear: number, what: string): void => {
    if (clear >= least - 1e-6) return;
    issues.push(
      warning(code, path, `${what} leaves less clear height than asked.`, {
        subject: mark,
        found: feet(clear),
        expected: `${feet(least)} or more: a higher bearing or a shorter run`,
      }),
    );
  };
  for (const { framed, roof } of roofs) {
    let clear = Number.POSITIVE_INFINITY;
    for (const m of framed.members) {
      // Ties and ridge boards have no tail.
      if (m.strips.length === 0) continue;
      const half = m.truss ? 0 : framed.plumb / 2;
      const under = m.truss ? m.truss.heel - m.truss.overhang[0] * Math.tan(m.truss.topPitch) - framed.plumb : 0;
      // A truss has a tail at either end, over ground that may differ; a rafter has one, at its start.
      for (const tail of m.truss ? [m.start, m.end] : [m.start]) {
        clear = Math.min(clear, tail.z + under - half - surfaceAt(ground, tail));
      }
    }
    if (Number.isFinite(clear))
      low('rafter-too-low', roof.mark, `${roof.path}/bearing`, clear, 'The framing at the eave');
  }
  for (const m of structure.members) {
    if (m.role !== 'beam') continue;
    const underside = m.start.z - m.section.depth / 2;
    const clear = Math.min(underside - surfaceAt(ground, m.start), underside - surfaceAt(ground, m.end));
    low('beam-too-low', m.mark, m.path, clear, `Beam ${m.mark}`);
  }
  return issues;
};
