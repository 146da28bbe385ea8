import type { z } from 'zod';
import { BUNDLES, EDITION_KEYS, type WrittenCodes } from '../editions.js';
import { given, type Leaf, list, maybe, part, refuse, value, wrongType } from './leaf.js';
import { office } from './office.js';
import { choice, flag, number, text } from './plain.js';
import { areaLoad, density, gradient, length, percent, speed } from './quantities.js';

/** A bundle by its year, or an object naming each edition; which of them go together is judged in `editions.ts`. */
const codes: Leaf<WrittenCodes> = {
  example: '"2018"',
  json: {
    description:
      'Code editions adopted here: the year of a consistent set, or each edition by name. Ask the office which code year it enforces.',
    examples: ['2018', '2021'],
    anyOf: [
      { type: 'string', enum: ['2018', '2021'] },
      {
        type: 'object',
        properties: Object.fromEntries(
          EDITION_KEYS.map((k) => [
            k,
            { type: 'string', description: `Edition of the ${k} code.`, examples: [BUNDLES['2018'][k]] },
          ]),
        ),
        required: [...EDITION_KEYS],
        additionalProperties: false,
      },
    ],
  },
  read: (raw) => {
    if (typeof raw === 'string') return value(raw.trim());
    if (typeof raw !== 'object' || raw === null || Array.isArray(raw))
      return wrongType(raw, 'a code year', '"2018" or "2021"');
    const written = raw as Readonly<Record<string, unknown>>;
    const keys: readonly string[] = EDITION_KEYS;
    const strange = Object.keys(written).find((k) => !keys.includes(k));
    if (strange !== undefined)
      return refuse('unknown-key', `the key "${strange}" is not a code here`, `one of ${keys.join(', ')}`);
    const faults = EDITION_KEYS.flatMap((key) => {
      const v = written[key];
      if (typeof v === 'string') return [];
      const code = v === undefined ? 'missing' : 'wrong-type';
      return [
        {
          code,
          path: [key],
          message: `the edition of "${key}" is ${v === undefined ? 'missing' : 'not a text'}`,
          expected: 'e.g. "2018"',
        },
      ];
    });
    if (faults.length > 0) return { ok: false, faults };
    return value(Object.fromEntries(EDITION_KEYS.map((k) => [k, String(written[k])])) as WrittenCodes);
  },
};

const setback = (side: string) =>
  office(length(`Least distance from the ${side} lot line. Zoning counter or zoning map.`, '15 ft', 0, 2400));

const wind = part('Wind, as the office states it.', {
  speed: given(
    office(speed('Basic design wind speed V (3-second gust, ASCE 7) for this risk category.', '105 mph', 85, 200)),
  ),
  exposure: given(
    office(
      choice('Wind exposure: B among houses and trees, C open country, D along open water (ASCE 7 26.7).', [
        'B',
        'C',
        'D',
      ]),
    ),
  ),
  topographic: given(
    office(
      number(
        'Topographic factor Kzt: 1.0 unless the house is on or near a hill, ridge or bluff (ASCE 7 26.8).',
        1,
        1,
        4,
      ),
    ),
  ),
  elevation: maybe(
    length(
      'Ground elevation above sea level. Any topographic map. Left out: sea level, which is on the safe side.',
      '1150 ft',
      -3600,
      180000,
    ),
  ),
  flow: maybe(
    choice('Whether goods or walls may block the wind below the roof: "both" designs for either.', [
      'both',
      'clear',
      'obstructed',
    ]),
  ),
});

const zoning = part('Zoning limits. The planning or zoning counter answers these.', {
  coverageLimit: given(office(percent('Most of the lot (or rear yard) that roofs may cover.', '40 %', 0.01, 1))),
  coverageOf: given(choice('What the coverage limit is a share of.', ['lot', 'rear-yard'])),
  setbacks: part('Required yards.', {
    front: given(setback('front')),
    rear: given(setback('rear')),
    left: given(setback('left')),
    right: given(setback('right')),
    'street-side': maybe(setback('side street')),
  }),
  referenceEdge: given(office(choice('Part of the cover from which the office measures a setback.', ['eave', 'post']))),
  heightLimit: given(office(length('Highest point allowed above the ground.', '16 ft', 72, 720))),
  headroom: maybe(length('Least clear height under beams and framing. Left out: 6 ft 8 in.', '6 ft 8 in', 72, 180)),
});

export const basis = part(
  'What the jurisdiction and the site require. Give each value its source; "unknown" is a valid answer.',
  {
    codes: given(codes),
    riskCategory: given(
      choice('Risk category (IBC Table 1604.5): a house and its patio cover are II.', ['I', 'II', 'III', 'IV'], 'II'),
    ),
    wind,
    snow: part('Snow, as the office states it.', {
      ground: given(office(areaLoad('Ground snow load pg.', '30 psf', 0, 300))),
      exposure: given(
        office(
          choice(
            'Exposure of the roof to wind that clears snow (ASCE 7 Table 7.3-1): beside a house it is mostly "partially".',
            ['partially', 'fully', 'sheltered'],
          ),
        ),
      ),
    }),
    roofLive: part('Roof live load.', {
      minimum: given(office(areaLoad('Least roof live load the office accepts: mostly 20 psf.', '20 psf', 10, 100))),
      patioAppendix: given(
        office(flag('Whether the patio-cover appendix of the residential code is adopted here by name.')),
      ),
      reduce: maybe(
        flag('Whether the reductions for area and slope may be used. Left out: no, which is on the safe side.'),
      ),
    }),
    seismic: part('Earthquake.', {
      category: given(
        office(
          choice('Seismic design category of the residential code map.', ['A', 'B', 'C', 'D0', 'D1', 'D2', 'E'], 'B'),
        ),
      ),
      sds: maybe(
        office(
          number(
            'Design spectral acceleration SDS in g. Only categories D0 to E use it; left out, the largest of the category is taken.',
            0.85,
            0.01,
            4,
          ),
        ),
      ),
      sd1: maybe(
        office(
          number('Design spectral acceleration SD1 in g. Left out, it takes nothing off the force.', 0.5, 0.01, 4),
        ),
      ),
      s1: maybe(office(number('Mapped one-second acceleration S1 in g.', 0.4, 0, 4))),
      siteClass: maybe(office(text('Site class of the soil, printed with the accelerations.', 'D (default)'))),
    }),
    existingHouse: maybe(
      office(
        choice(
          'Which code the office applies to load added to the existing house: "residential" for a one- or two-family house kept under that code, "existing-building" where its 5 and 10 percent rules are asked for.',
          ['residential', 'existing-building'],
        ),
      ),
    ),
    rainfall: maybe(
      office(
        number(
          'Rainfall of one hour that gutters are sized for, inches an hour. Plumbing code map or office.',
          3,
          0.5,
          12,
        ),
      ),
    ),
    frost: given(office(length('Frost depth below grade.', '42 in', 0, 120))),
    soil: part('Soil under the footings.', {
      bearing: given(
        office(areaLoad('Allowable soil bearing pressure. Office default or a soils report.', '1500 psf', 500, 12000)),
      ),
      lateral: given(office(gradient('Lateral bearing of the soil (IBC Table 1806.2).', '100 psf/ft', 25, 1200))),
      friction: maybe(
        office(
          number(
            'Coefficient of friction between concrete and soil (IBC Table 1806.2, sands and gravels). Left out: none is counted against sliding.',
            0.25,
            0.05,
            0.6,
          ),
        ),
      ),
      cohesion: maybe(
        office(areaLoad('Cohesion of clay (IBC Table 1806.2). Left out: none is counted.', '130 psf', 10, 1000)),
      ),
      skinFriction: maybe(
        office(
          areaLoad(
            'Allowable friction of the soil on concrete cast against it. Left out: none is counted against uplift.',
            '100 psf',
            10,
            500,
          ),
        ),
      ),
      halfInchMotion: maybe(
        office(
          flag(
            'Whether 1/2 in of motion at the ground surface does this cover no harm, so that the lateral bearing may be doubled (IBC 1806.3.4). Left out: no.',
          ),
        ),
      ),
      density: given(density('Weight of the soil, which holds a footing down against uplift.', '100 pcf', 80, 140)),
      description: given(text('Soil in words.', 'stiff sandy clay')),
    }),
    zoning,
    criteria: list(
      'Other rows of the design-criteria block, printed as given.',
      part('One row.', {
        label: given(text('Name of the row.', 'Termite')),
        value: given(office(text('What the office lists.', 'moderate to heavy'))),
      }),
    ).optional(),
  },
);

export type WrittenBasis = z.output<typeof basis>;
