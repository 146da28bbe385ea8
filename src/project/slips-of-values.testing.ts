/** Slips in single values: missing, misspelt, of the wrong type, quantity, range or choice. */
/** One slip in a whole file: its code, its path, and the text it must point at. */
export interface Slip {
  readonly code: string;
  readonly path: string;
  readonly from: string;
  readonly to: string;
  /** Text in the damaged file where line and column must point. */
  readonly at: string;
  readonly nth?: number;
  readonly expected: string | RegExp;
  readonly found?: string;
}

export const VALUE_SLIPS: readonly Slip[] = [
  {
    code: 'missing',
    path: '/basis/frost',
    from: '    "frost": "unknown",\n',
    to: '',
    at: '"basis": {',
    expected: /frost|value/,
  },
  { code: 'missing', path: '/choices', from: '"choices": {', to: '"choises": {', at: '{', expected: /"choices"/ },
  {
    code: 'unknown-key',
    path: '/basis/wind/exposre',
    from: '"exposure": "unknown"',
    to: '"exposre": "unknown"',
    at: '"exposre"',
    expected: /did you mean "exposure"/,
  },
  {
    code: 'unknown-key',
    path: '/cover/roofs/0/framing/spacign',
    from: '"kind": "rafter", "spacing"',
    to: '"kind": "rafter", "spacign"',
    at: '"spacign"',
    expected: /did you mean "spacing"/,
  },
  {
    code: 'unknown-key',
    path: '/cover/beams/0/posts/0/footings',
    from: '"footing": "pier"',
    to: '"footings": "pier"',
    at: '"footings": "pier"',
    expected: /did you mean "footing"/,
  },
  {
    code: 'unknown-key',
    path: '/choises',
    from: '"choices": {',
    to: '"choises": {',
    at: '"choises"',
    expected: /did you mean "choices"/,
  },
  {
    code: 'unknown-key',
    path: '/basis/frost/source',
    from: '"frost": "unknown"',
    to: '"frost": { "value": "12 in", "source": "x" }',
    at: '"source"',
    expected: /"from"/,
  },
  {
    code: 'wrong-type',
    path: '/basis/frost',
    from: '"frost": "unknown"',
    to: '"frost": 12',
    at: '12,\n    "soil"',
    expected: /from 0" to 10'-0"/,
    found: '12',
  },
  {
    code: 'wrong-type',
    path: '/lot/easements',
    from: '"easements": []',
    to: '"easements": {}',
    at: '{},\n',
    expected: /\[/,
  },
  {
    code: 'wrong-type',
    path: '/house/walls/0/start',
    from: '["-22 ft", "0 ft"], "plate"',
    to: '["-22 ft"], "plate"',
    at: '["-22 ft"], "plate"',
    expected: /\[/,
  },
  {
    code: 'wrong-type',
    path: '/job/date',
    from: '2026-01-01',
    to: '2026-02-30',
    at: '"2026-02-30"',
    expected: /year-month-day/,
  },
  {
    code: 'bad-quantity',
    path: '/cover/roofs/0/bearing',
    from: '"9 ft 11 in"',
    to: '"9 foots"',
    at: '"9 foots"',
    expected: /e\.g\./,
    found: '"9 foots"',
  },
  {
    code: 'bad-quantity',
    path: '/house/walls/0/start/1',
    from: '"-22 ft", "0 ft"',
    to: '"-22 ft", "0"',
    at: '"0"], "plate"',
    expected: /unit/,
  },
  {
    code: 'bad-quantity',
    path: '/lot/outward',
    from: '"outward": "N 00°00\'00\\" E"',
    to: '"outward": "N 91° E"',
    at: '"N 91° E"',
    expected: /bearing/,
  },
  {
    code: 'out-of-range',
    path: '/basis/wind/speed/value',
    from: '"speed": "unknown"',
    to: '"speed": { "value": "250 mph", "from": "me" }',
    at: '"250 mph"',
    expected: /85 mph to 200 mph/,
  },
  {
    code: 'out-of-range',
    path: '/cover/roofs/0/pitch',
    from: '"pitch": "2/12"',
    to: '"pitch": "13/12"',
    at: '"13/12"',
    expected: /0\/12 to 12\/12/,
  },
  {
    code: 'out-of-range',
    path: '/cover/roofs/0/framing/spacing',
    from: '"rafter", "spacing": "12 in"',
    to: '"rafter", "spacing": "49 in"',
    at: '"49 in"',
    expected: /6" to 4'-0"/,
  },
  {
    code: 'out-of-range',
    path: '/patio/slabs/0/outline',
    from: '[["-11 ft", "0 ft"], ["11 ft", "0 ft"], ["11 ft", "12 ft"], ["-11 ft", "12 ft"]]',
    to: '[["-11 ft", "0 ft"], ["11 ft", "0 ft"]]',
    at: '[["-11 ft", "0 ft"], ["11 ft", "0 ft"]]',
    expected: /at least 3/,
  },
  {
    code: 'not-one-of',
    path: '/cover/roofs/0/finish/covering',
    from: '"covering": "standing-seam-metal"',
    to: '"covering": "standing-seem-metal"',
    at: '"standing-seem-metal"',
    expected: /did you mean "standing-seam-metal"/,
  },
  {
    code: 'not-one-of',
    path: '/cover/roofs/0/framing/kind',
    from: '"kind": "rafter"',
    to: '"kind": "rafters"',
    at: '"rafters"',
    expected: /did you mean "rafter"/,
  },
  {
    code: 'not-one-of',
    path: '/choices/sections/post/grade',
    from: '"size": "6x6", "species": "Douglas Fir-Larch", "grade": "No. 1"',
    to: '"size": "6x6", "species": "Douglas Fir-Larch", "grade": "No 1"',
    at: '"No 1"',
    expected: /did you mean "No. 1"/,
  },
  {
    code: 'not-one-of',
    path: '/choices/sections/post/size',
    from: '"size": "6x6"',
    to: '"size": "7x7"',
    at: '"7x7"',
    expected: /"6x6"/,
  },
];
