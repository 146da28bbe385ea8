/** Products at joints: what a published table says, entered by whoever holds the table. */
import { listing } from '../nearest.js';
import { given, type Leaf, list, maybe, part, refuse, value, wrongType } from './leaf.js';
import { choice, flag, number, text } from './plain.js';
import { force, stress } from './quantities.js';
import { JOINT_KINDS } from './words.js';

const MARK = /^J[1-9]\d{0,3}$/;

/** A joint mark of the schedule or a kind of joint. Whether the mark exists is known only once the parts are placed. */
export const served: Leaf<string> = {
  example: '"J3"',
  json: {
    type: 'string',
    description: 'Mark in the joint schedule, "J3", or a kind of joint for every mark of that kind.',
    examples: ['J3', 'truss-to-beam'],
    anyOf: [{ pattern: MARK.source }, { enum: [...JOINT_KINDS] }],
  },
  read: (raw) => {
    const expected = (found: string) => `a mark like "J3", or ${listing(found, JOINT_KINDS)}`;
    if (typeof raw !== 'string') return wrongType(raw, 'a joint mark or kind in quotes', expected(''));
    const s = raw.trim();
    if (MARK.test(s) || (JOINT_KINDS as readonly string[]).includes(s)) return value(s);
    return refuse(
      'not-one-of',
      `${JSON.stringify(s.slice(0, 60))} is neither a joint mark nor a kind of joint`,
      expected(raw),
    );
  },
};

const PIECE = 'Allowable load of one piece, from the table, before any adjustment; "none" when the table rates it not.';

/** A force, or "none" for a direction without a rating. A blank in a table is "none", never zero. */
function rating(way: string, example: string): Leaf<number | 'none'> {
  const one = force(`${way} ${PIECE}`, example, 1, 100000);
  return {
    ...one,
    json: { ...one.json, examples: [example, 'none'] },
    read: (raw) => (typeof raw === 'string' && raw.trim() === 'none' ? value('none' as const) : one.read(raw)),
  };
}

export const jointProduct = part(
  'A product at a joint. Reading its table: 1. Find the row of the product with the very fasteners (kind, size, number) you will use; fewer or smaller ones have a row of their own or none. 2. Take the columns of your wood: tables group species by specific gravity G, the softest wood at the joint decides. 3. Take one load duration: columns are headed 100, 115, 125, 160 or the like, percent of CD 1.0; uplift is mostly printed at 160 only. 4. Copy each direction as printed: uplift is up, bearing or download is down, and F1, F2 or lateral are sideways, which way the small picture beside the table shows. 5. See whether the table speaks of one piece or of a pair. Do not multiply by the duration factor, the count or a safety factor: the program does, and never upward.',
  {
    serves: list('Joint marks or kinds it serves. A row naming a mark outranks one naming its kind.', given(served))
      .min(1)
      .max(100),
    product: given(
      text('What you call it, with its fasteners, as the schedule prints it.', 'steel strap tie, ten 8d nails'),
    ),
    count: given(
      number(
        'Pieces used at each joint. When the table rates a pair, count pairs. More than one only where the table lets their loads add.',
        2,
        1,
        20,
        true,
      ),
    ),
    down: given(rating('Down (bearing, gravity).', '800 lb')),
    up: given(rating('Up (uplift).', '600 lb')),
    along: given(
      rating(
        'Sideways, level, along the house wall. Tables speak of the plate, beam or truss (F1 is mostly along the plate or beam, F2 square to it): turn their direction into this one by how the joint lies on your plan.',
        '115 lb',
      ),
    ),
    across: given(rating('Sideways, level, square to the house wall (out from it or toward it).', '200 lb')),
    moment: maybe(
      number(
        'For a post base: allowable moment of one piece, lb·ft, from its published table. Left out: none.',
        500,
        1,
        100000,
      ),
    ),
    duration: given(
      number(
        'Load duration factor CD printed over the column: 1.6 wind or earthquake, 1.25 roof live, 1.15 snow, 1.0 floor, 0.9 permanent. When the columns you copied differ, the greatest of them.',
        1.6,
        0.9,
        1.6,
      ),
    ),
    species: given(text('Wood the column is for, as printed.', 'Douglas Fir-Larch and Southern Pine')),
    G: given(number('Specific gravity of that wood, as printed; the least when it names several.', 0.5, 0.3, 0.75)),
    service: maybe(choice('Moisture in service the table is for. Left out: dry.', ['dry', 'wet'])),
    seat: maybe(
      flag(
        'For a hanger of a beam built up of plies: whether the beam sits on a seat as wide as itself and is fastened through both faces, so that every ply bears. Left out: no.',
      ),
    ),
    concrete: maybe(
      stress(
        'For a product on a footing: concrete strength the table is for. Its anchor, edge distance and cover stay yours to follow.',
        '2500 psi',
        2000,
        10000,
      ),
    ),
    source: given(
      text('Where the numbers stand: catalogue or evaluation report, page, table, date.', 'evaluation report, Table 3'),
    ),
  },
);
