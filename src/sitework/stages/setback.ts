import type { DiagonalPair } from '../layout/index.js';
import type { Stage } from './contract.js';
import { NOT_AS_DRAWN, PAPERS } from './parts.js';

const outer = (all: readonly DiagonalPair[]): readonly DiagonalPair[] =>
  [...all].sort((a, b) => b.first.length - a.first.length).slice(0, 1);

/** Distances to the lot lines, while moving still costs nothing. */
export const setback: Stage = {
  title: 'Setback and layout',
  looks: 'inspector',
  applies: ({ structure }) => structure.footings.length > 0,
  body({ project, lot, layout, len }) {
    const edge = project.basis.zoning.referenceEdge;
    return {
      when: 'When pins are exposed and strings stand, before the pour; many offices look together with the footings.',
      tables: [
        ...(lot
          ? [
              {
                title: `Distance from the ${edge.state === 'unknown' ? 'eave (the office has not said which edge)' : edge.value} to each lot line`,
                heads: ['Line', 'Yard', 'Required', 'Drawn', 'Measured'],
                rows: lot.distances.map((d) => [
                  d.line,
                  d.yard.replaceAll('-', ' '),
                  len(d.required),
                  len(d.governing),
                  '',
                ]),
              },
            ]
          : []),
        {
          title: 'Diagonals of the largest rectangle; the others stand on the stake-out sheet',
          heads: ['First', 'Second', 'Both', 'May differ by'],
          rows: outer(layout.rectangles).map((r) => [
            `${r.first.from} – ${r.first.to}`,
            `${r.second.from} – ${r.second.to}`,
            len(r.first.length),
            len(r.mostDifference),
          ]),
        },
      ],
      atHand: [...PAPERS, 'Survey or plat with the lot corners', 'Stake-out sheet'],
      items: [
        { id: 'pins', text: 'Property pins found and exposed; they stay exposed to the final.' },
        { id: 'lines', text: 'String or stakes at the outline and at every lot line that is near.' },
        { id: 'distances', text: 'Distance to each line measured and written in the table.', measure: true },
        { id: 'overhang', text: 'Overhangs, steps and anything attached counted where the office counts them.' },
        { id: 'square', text: 'Diagonals agree within the table.', measure: true },
        { id: 'easement', text: 'Nothing stands in an easement.' },
      ],
      failures: [
        {
          text: 'Pins not found, so nothing can be measured.',
          source: 'Georgetown TX; Goochland County VA; Cookeville TN',
        },
        {
          text: 'Measured to the post where the office measures to the overhang.',
          source: 'Goochland County VA; Garland TX',
        },
        NOT_AS_DRAWN,
      ],
      cautions: [
        'A lot line from a fence is a guess: only pins and a survey say where the lot ends.',
        'Open holes are covered or fenced while you wait.',
      ],
    };
  },
};
