import { inches } from '../../structure/text.js';
import type { FastenerSource } from './model.js';
import { diameter } from './names.js';

/** Fasteners of the lines that hand side load to the house: whole spacings between first and last, and one more. */
export const houseTies: FastenerSource = {
  count: ({ project }) =>
    (project.cover.houseTies ?? []).map((t) => {
      const places = Math.floor((t.to - t.from) / t.fastener.spacing + 1e-6) + 1;
      const word = t.fastener.kind === 'lag' ? 'lag screw' : 'structural screw';
      return {
        item: `${word} ${diameter(t.fastener.diameter)} x ${inches(t.fastener.length)}`,
        count: places * t.fastener.rows,
        phase: 'framing',
        serves: [t.mark],
      };
    }),
};
