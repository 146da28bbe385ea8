/** The part of each starter that differs: patio, cover and the sections and footings it names. */

const slab = (near: string, far: string, half: string): string =>
  `[["-${half}", "${near}"], ["${half}", "${near}"], ["${half}", "${far}"], ["-${half}", "${far}"]]`;

/** Ground, and one new slab under the cover. */
export const patio = (
  near: string,
  far: string,
  half: string,
): string => `  // Ground and slab beside the house; below the finished floor is negative. "fall" drains away from the house.
  "patio": {
    "grade": { "atHouse": "-10 in", "fall": "1/4 in/ft" },
    // "state" is "existing", "new" or "removed".
    "slabs": [
      { "mark": "S1", "state": "new", "outline": ${slab(near, far, half)}, "thickness": "4 in", "topAtHouse": "-6 in", "fall": "1/4 in/ft" }
    ],
    "steps": []
  }`;

interface Post {
  readonly at: string;
  readonly footing: string;
}

const KNEE = '"section": "brace", "run": "2 ft 6 in", "rise": "2 ft 4 in"';

/** Knee braces of the post at a place in its row: toward its neighbours. */
const braces = (i: number, count: number): string =>
  (['start', 'end'] as const)
    .filter((toward) => (toward === 'start' ? i > 0 : i + 1 < count))
    .map((toward) => `{ "toward": "${toward}", ${KNEE} }`)
    .join(', ');

/** A beam with its posts, numbered on from `first`; free-standing ones are braced to it. */
function beam(mark: string, from: string, to: string, posts: readonly Post[], first: number, braced = false): string {
  const rows = posts.map(({ at, footing }, i) => {
    const knees = braced ? `,\n            "braces": [${braces(i, posts.length)}]` : '';
    return `          { "mark": "P${first + i}", "at": "${at}", "section": "${braced ? 'braced-post' : 'post'}", "footing": "${footing}", "footingMark": "F${first + i}"${knees} }`;
  });
  return `      {
        "mark": "${mark}", "from": ${from}, "to": ${to}, "section": "beam",
        // "at" is from the start of the beam to the centre of the post.
        "posts": [
${rows.join(',\n')}
        ]
      }`;
}

const finish = (pitched: boolean): string => `        "finish": {
          "covering": "${pitched ? 'asphalt-shingle' : 'standing-seam-metal'}", "underlayment": "${pitched ? 'felt-30' : 'self-adhering'}", "sheathing": "${pitched ? 'osb-23/32' : 'osb-23/32'}", "ceiling": "",
          // Lights, fans and what may come later, per square foot.
          "allowance": "1 psf", "fascia": "${pitched ? '2x6' : '2x10'}", "gutter": true
        }`;

/** Cross members between facing posts, braced at both ends. */
const struts = (pairs: readonly (readonly [string, string])[]): string => {
  if (pairs.length === 0) return '';
  const rows = pairs.map(
    ([from, to], i) =>
      `      { "mark": "ST${i + 1}", "from": "${from}", "to": "${to}", "section": "strut", "braces": { ${KNEE} } }`,
  );
  return `    // Cross members under the beams, so that the posts are braced square to the beams too.
    "struts": [
${rows.join(',\n')}
    ],
`;
};

const cover = (
  attached: boolean,
  beams: readonly string[],
  ledger: string | undefined,
  roof: string,
  pairs: readonly (readonly [string, string])[] = [],
): string => `  "cover": {
    "attachment": "${attached ? 'attached' : 'free-standing'}",
    "use": "recreation",
    // What keeps the cover from swaying: "house", "knee-braces" or "fixed-posts".
    "lateral": { "x": "${attached ? 'house' : 'knee-braces'}", "y": "${attached ? 'house' : 'knee-braces'}" },
    "beams": [
${beams.join(',\n')}
    ],
    "ledgers": [${ledger ?? ''}],
${struts(pairs)}    "roofs": [
${roof}
    ]
  }`;

const gableRoof = (from: string, to: string, bearing = '8 ft 4 in'): string => `      {
        // The left beam first, looking along the ridge. "from" and "to" are the first and last truss.
        "mark": "R1", "kind": "gable", "beams": ["B1", "B2"], "ridge": "y", "from": "${from}", "to": "${to}",
        // "bearing" is the top of the beams above the finished floor.
        "pitch": "4/12", "bearing": "${bearing}", "eave": "16 in", "rake": "9 in",
        // The truss plant's own engineer designs and seals the trusses; this is what you order.
        "framing": {
          "kind": "common-truss", "spacing": "16 in", "chord": "2x4", "heel": "5 1/2 in", "weight": "6 plf",
          "wood": { "species": "Douglas Fir-Larch", "grade": "No. 2", "treatment": "none", "incised": false, "service": "dry" }
        },
${finish(true)}
      }`;

const shedRoof = (high: string, highOverhang: string, bearing = '9 ft 11 in'): string => `      {
        // Falls away from the house. "from" and "to" are the first and last rafter.
        "mark": "R1", "kind": "shed", "high": ${high}, "low": "B1", "from": "-9 ft 11-1/4 in", "to": "9 ft 11-1/4 in",
        // "bearing" is the top of the high side's bearing above the finished floor.
        "pitch": "2/12", "bearing": "${bearing}", "eave": "12 in", "rake": "8 in", "highOverhang": "${highOverhang}",
        "framing": { "kind": "rafter", "spacing": "12 in", "section": "rafter" },
${finish(false)}
      }`;

const WOOD = '"species": "Douglas Fir-Larch"';
const SECTIONS: Readonly<Record<string, string>> = {
  beam: '{ "kind": "glulam", "combination": "24F-V4", "width": "5-1/2 in", "depth": "12 in", "treatment": "none", "service": "dry" }',
  post: `{ "kind": "solid", "size": "6x6", ${WOOD}, "grade": "No. 1", "treatment": "above-ground", "incised": true, "service": "dry" }`,
  // Posts that hold a free-standing cover sideways bend.
  'braced-post': `{ "kind": "solid", "size": "8x8", ${WOOD}, "grade": "No. 1", "treatment": "above-ground", "incised": true, "service": "dry" }`,
  rafter: `{ "kind": "solid", "size": "2x10", ${WOOD}, "grade": "No. 2", "treatment": "none", "incised": false, "service": "dry" }`,
  brace: `{ "kind": "solid", "size": "4x4", ${WOOD}, "grade": "No. 1", "treatment": "none", "incised": false, "service": "dry" }`,
  strut: `{ "kind": "solid", "size": "6x8", ${WOOD}, "grade": "No. 1", "treatment": "none", "incised": false, "service": "dry" }`,
  ledger: `{ "kind": "solid", "size": "2x12", ${WOOD}, "grade": "No. 2", "treatment": "above-ground", "incised": true, "service": "dry" }`,
};

const PIER_ON_PAD = { diameter: '16 in', width: '36 in', thickness: '12 in', bars: '(4) #5' };
/** Under a free-standing cover the footing also keeps its post from tipping over. */
const WIDE_PAD = { diameter: '24 in', width: '58 in', thickness: '17 in', bars: '(8) #5' };

const choices = (sections: readonly string[], fascia: string, pad = PIER_ON_PAD): string => {
  const rows = sections.map((name) => `      "${name}": ${SECTIONS[name]}`);
  rows.push(
    `      "fascia": { "kind": "solid", "size": "${fascia}", ${WOOD}, "grade": "No. 2", "treatment": "none", "incised": false, "service": "dry" }`,
  );
  return `  // What you mean to buy. "service" is "wet" where rain reaches the wood often; "treatment" and "incised" are on the tag.
  "choices": {
    // Gap between post end and concrete, from the post base you buy.
    "standoff": "1 in",
    "deflection": { "live": 360, "total": 240 },
    // What holds each joint of the schedule comes here: under "joints" a product, with the loads copied from its maker's
    // table, or under "connections" bolts, screws, nails or plates, which the program works out. Until then joints stay open.
    "sections": {
${rows.join(',\n')}
    },
    "footings": {
      // "bottom" is the depth of its underside below the ground or slab beside it, "top" what stands above. Other kinds:
      // "round-pier", "square-pad", "embedded-post" (set in the ground), "slab" (only where the office has adopted that rule).
      "pier": { "kind": "pier-on-pad", "diameter": "${pad.diameter}", "width": "${pad.width}", "thickness": "${pad.thickness}", "bottom": "54 in", "top": "0 in", "fc": "3000 psi", "steel": "(4) #4 each way in pad; ${pad.bars} vertical with #3 ties at 10 in in pier" }
    }
  }`;
};

const PIER = (at: string): Post => ({ at, footing: 'pier' });
const TWO = [PIER('2 ft 6 in'), PIER('13 ft 6 in')];
const THREE = [PIER('6 in'), PIER('10 ft'), PIER('19 ft 6 in')];
const SHORT_THREE = [PIER('6 in'), PIER('7 ft'), PIER('13 ft 6 in')];
const FACING = [
  ['P1', 'P4'],
  ['P2', 'P5'],
  ['P3', 'P6'],
] as const;
const along = (y: string) => [`["-10 ft", "${y}"]`, `["10 ft", "${y}"]`] as const;

export const gableAttached = [
  patio('0 ft', '16 ft', '11 ft'),
  cover(
    true,
    [
      beam('B1', '["-9 ft", "0 ft 6 in"]', '["-9 ft", "14 ft 6 in"]', TWO, 1),
      beam('B2', '["9 ft", "0 ft 6 in"]', '["9 ft", "14 ft 6 in"]', TWO, 3),
    ],
    undefined,
    gableRoof('0 ft 9 in', '14 ft 3 in'),
  ),
  choices(['beam', 'post'], '2x6'),
];

export const gableFree = [
  patio('10 ft', '26 ft', '11 ft'),
  cover(
    false,
    [
      beam('B1', '["-8 ft", "11 ft"]', '["-8 ft", "25 ft"]', SHORT_THREE, 1, true),
      beam('B2', '["8 ft", "11 ft"]', '["8 ft", "25 ft"]', SHORT_THREE, 4, true),
    ],
    undefined,
    gableRoof('11 ft 3 in', '24 ft 9 in', '9 ft'),
    FACING,
  ),
  choices(['beam', 'braced-post', 'brace', 'strut'], '2x6', WIDE_PAD),
];

export const shedAttached = [
  patio('0 ft', '12 ft', '11 ft'),
  cover(
    true,
    [beam('B1', ...along('10 ft 6 in'), THREE, 1)],
    '{ "mark": "L1", "wall": "rear", "from": "-10 ft", "to": "10 ft", "section": "ledger" }',
    shedRoof('{ "ledger": "L1" }', '0 in'),
  ),
  choices(['beam', 'post', 'rafter', 'ledger'], '2x10'),
];

export const shedFree = [
  patio('10 ft', '24 ft', '11 ft'),
  cover(
    false,
    [beam('B1', ...along('22 ft'), THREE, 1, true), beam('B2', ...along('12 ft'), THREE, 4, true)],
    undefined,
    shedRoof('{ "beam": "B2" }', '12 in', '10 ft 8 in'),
    FACING,
  ),
  choices(['beam', 'braced-post', 'brace', 'strut', 'rafter'], '2x10', WIDE_PAD),
];
