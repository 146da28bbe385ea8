import { describe, expect, it } from 'vitest';
import type { JointProduct } from '../../project/model.js';
import { place } from '../../structure/place.js';
import { change, houseEndsProject } from '../../structure/testing.js';
import type { CheckContext } from '../contract.js';
import { houseMisfit } from './house-side.js';

const row = (given: Partial<JointProduct> = {}): JointProduct => ({
  ...{ serves: ['beam-to-wall'], product: 'hanger', count: 1, down: 1, up: 1, along: 1, across: 1, duration: 1.6 },
  ...{ species: 'Douglas Fir-Larch', G: 0.5, service: 'dry' as const, concrete: undefined, source: '', path: '' },
  ...given,
});

/** What is wrong at the joint of this kind when the framing has this species and the foundation this strength. */
function at(kind: 'beam-to-wall' | 'post-to-house', product: JointProduct, species?: string, fc?: number) {
  const project = change(houseEndsProject, {
    cover: {
      beams: (old) =>
        old.map((b) => {
          const start = b.ends?.start;
          if (start?.kind === 'on-wall') return { ...b, ends: { start: { ...start, species } } };
          if (start?.kind !== 'post-in-wall' || start.foot.kind !== 'foundation') return b;
          return { ...b, ends: { start: { ...start, foot: { ...start.foot, fc } } } };
        }),
    },
  });
  const structure = place(project).value!;
  const joint = structure.joints.find((j) => j.kind === kind)!;
  return houseMisfit({ project, structure } as CheckContext, joint, joint.ties.at(-1)!.part, product);
}

describe('the side of the house at a beam end', () => {
  it('is known once the stamp of the framing was read, and must be as dense as the table says', () => {
    expect(at('beam-to-wall', row())?.status).toBe('not-evaluated');
    expect(at('beam-to-wall', row(), 'Douglas Fir-Larch')).toBeUndefined();
    expect(at('beam-to-wall', row(), 'Hem-Fir')?.status).toBe('outside-scope');
    expect(at('beam-to-wall', row({ G: 0.43 }), 'Hem-Fir')).toBeUndefined();
  });

  it('is known once the strength of the foundation is, and must reach that of the table', () => {
    const base = row({ concrete: 2500 });
    expect(at('post-to-house', base)?.status).toBe('not-evaluated');
    expect(at('post-to-house', base, undefined, 2500)).toBeUndefined();
    expect(at('post-to-house', base, undefined, 2000)?.status).toBe('outside-scope');
    expect(at('post-to-house', row(), undefined, 2500)?.status).toBe('not-evaluated');
  });
});
