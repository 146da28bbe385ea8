import type { Basis, CodeBundle, Office, Yard } from '../model.js';
import type { WrittenBasis } from '../schema/basis.js';
import type { WrittenOffice } from '../schema/office.js';
import { YARDS } from '../schema/words.js';
import type { Notebook, Placeholder } from './notebook.js';

/**
 * Stand-ins while the office has not answered: heavier than most places ask, so that what is drawn meanwhile rarely
 * grows. Chosen by us, no source; each is printed with its question and keeps the set preliminary.
 */
const ask = <T>(value: T, shown: string, question: string): Placeholder<T> => ({ value, shown, question });

export const PLACEHOLDERS = {
  speed: ask(115, '115 mph', 'What is the basic design wind speed here, for this risk category?'),
  windExposure: ask('C' as const, 'exposure C', 'Which wind exposure category applies at this address?'),
  topographic: ask(1.3, 'Kzt = 1.3', 'Does the site need a topographic factor Kzt above 1.0 (hill, ridge or bluff)?'),
  ground: ask(40, '40 psf', 'What is the ground snow load here?'),
  snowExposure: ask('sheltered' as const, 'sheltered', 'Which roof snow exposure may be used beside this house?'),
  minimum: ask(20, '20 psf', 'What is the least roof live load for a patio cover?'),
  patioAppendix: ask(false, 'not adopted', 'Is the patio-cover appendix of the residential code adopted here?'),
  seismic: ask('D2' as const, 'category D2', 'Which seismic design category applies here?'),
  existingHouse: ask(
    'existing-building' as const,
    'the existing-building code',
    'Which code applies to load added to the existing house?',
  ),
  rainfall: ask(6, '6 in/h', 'Which one-hour rainfall are gutters sized for here?'),
  frost: ask(48, '48 in', 'What is the frost depth here?'),
  bearing: ask(1500, '1500 psf', 'Which soil bearing pressure may be used without a soils report?'),
  lateral: ask(100, '100 psf/ft', 'Which lateral soil bearing may be used without a soils report?'),
  coverage: ask(0.3, '30 %', 'How much of the lot may be covered?'),
  edge: ask(
    'eave' as const,
    'measured to the eave',
    'Is the setback of a patio cover measured to its posts or its eave?',
  ),
  height: ask(180, '15 ft', 'How high may a patio cover be?'),
} satisfies Readonly<Record<string, Placeholder<unknown>>>;

/** An optional soil value: absent stays absent, so that nothing is counted on it. */
const given = <K extends string, T>(
  key: K,
  note: Notebook,
  written: WrittenOffice<T> | undefined,
  placeholder: Placeholder<T>,
): { readonly [P in K]?: Office<T> } =>
  written === undefined
    ? {}
    : ({ [key]: note.office(written, `/basis/soil/${key}`, placeholder) } as { readonly [P in K]?: Office<T> });

const SETBACKS: Readonly<Record<Yard, readonly [number, string]>> = {
  front: [360, '30 ft'],
  rear: [300, '25 ft'],
  left: [120, '10 ft'],
  right: [120, '10 ft'],
  'street-side': [180, '15 ft'],
};

/** Accelerations given beside the category; each is a question only when the file says it is not known. */
function completeSeismic(w: WrittenBasis['seismic'], note: Notebook): Basis['seismic'] {
  const at = (key: string) => `/basis/seismic/${key}`;
  const optional = <T>(key: string, written: Parameters<typeof note.office<T>>[0] | undefined, p: Placeholder<T>) =>
    written === undefined ? {} : { [key]: note.office(written, at(key), p) };
  return {
    category: note.office(w.category, at('category'), PLACEHOLDERS.seismic),
    ...optional('sds', w.sds, ask(1.25, 'SDS = 1.25 g', 'What is the design acceleration SDS at this address?')),
    ...optional('sd1', w.sd1, ask(1.25, 'SD1 = 1.25 g', 'What is the design acceleration SD1 at this address?')),
    ...optional('s1', w.s1, ask(0.6, 'S1 = 0.6 g', 'What is the mapped acceleration S1 at this address?')),
    ...optional('siteClass', w.siteClass, ask('D', 'site class D', 'Which site class applies at this address?')),
  };
}

export function completeBasis(w: WrittenBasis, codes: CodeBundle, note: Notebook): Basis {
  const at = (path: string) => `/basis/${path}`;
  const p = PLACEHOLDERS;
  const setback = (yard: Yard) => {
    const [value, shown] = SETBACKS[yard];
    const written = w.zoning.setbacks[yard];
    const path = at(`zoning/setbacks/${yard}`);
    // Only a yard that no course has may be left out, so nothing is measured against it.
    if (written === undefined) return { value, state: 'assumed' as const, from: '', path };
    return note.office(written, path, ask(value, shown, `What is the required ${yard} setback for a patio cover?`));
  };
  return {
    codes,
    riskCategory: w.riskCategory,
    wind: {
      speed: note.office(w.wind.speed, at('wind/speed'), p.speed),
      exposure: note.office(w.wind.exposure, at('wind/exposure'), p.windExposure),
      topographic: note.office(w.wind.topographic, at('wind/topographic'), p.topographic),
      elevation: note.default(
        w.wind.elevation,
        at('wind/elevation'),
        0,
        'Ground elevation: sea level',
        'Not given; air is heaviest at sea level, so the wind pressure is on the safe side.',
      ),
      flow: note.default(
        w.wind.flow,
        at('wind/flow'),
        'both',
        'Wind flow under the roof: clear and obstructed both',
        'Not given; the worse of the two is designed for.',
      ),
    },
    snow: {
      ground: note.office(w.snow.ground, at('snow/ground'), p.ground),
      exposure: note.office(w.snow.exposure, at('snow/exposure'), p.snowExposure),
    },
    roofLive: {
      minimum: note.office(w.roofLive.minimum, at('roofLive/minimum'), p.minimum),
      patioAppendix: note.office(w.roofLive.patioAppendix, at('roofLive/patioAppendix'), p.patioAppendix),
      reduce: note.default(
        w.roofLive.reduce,
        at('roofLive/reduce'),
        false,
        'Roof live load not reduced for area or slope',
        'Not given; the unreduced load is on the safe side.',
      ),
    },
    seismic: completeSeismic(w.seismic, note),

    ...(w.existingHouse === undefined
      ? {}
      : { existingHouse: note.office(w.existingHouse, at('existingHouse'), p.existingHouse) }),
    ...(w.rainfall === undefined ? {} : { rainfall: note.office(w.rainfall, at('rainfall'), p.rainfall) }),
    frost: note.office(w.frost, at('frost'), p.frost),
    soil: {
      bearing: note.office(w.soil.bearing, at('soil/bearing'), p.bearing),
      lateral: note.office(w.soil.lateral, at('soil/lateral'), p.lateral),
      ...given('friction', note, w.soil.friction, {
        value: 0,
        shown: 'none',
        question: 'Which friction between footing and soil may be counted against sliding?',
      }),
      ...given('cohesion', note, w.soil.cohesion, {
        value: 0,
        shown: 'none',
        question: 'Which cohesion may be counted against sliding?',
      }),
      ...given('skinFriction', note, w.soil.skinFriction, {
        value: 0,
        shown: 'none',
        question: 'Which skin friction may be counted against uplift?',
      }),
      ...given('halfInchMotion', note, w.soil.halfInchMotion, {
        value: false,
        shown: 'no',
        question: 'Is 1/2 in of motion at the ground surface acceptable here (IBC 1806.3.4)?',
      }),
      density: w.soil.density,
      description: w.soil.description,
    },
    zoning: {
      coverageLimit: note.office(w.zoning.coverageLimit, at('zoning/coverageLimit'), p.coverage),
      coverageOf: w.zoning.coverageOf,
      setbacks: Object.fromEntries(YARDS.map((y) => [y, setback(y)])) as Basis['zoning']['setbacks'],
      referenceEdge: note.office(w.zoning.referenceEdge, at('zoning/referenceEdge'), p.edge),
      heightLimit: note.office(w.zoning.heightLimit, at('zoning/heightLimit'), p.height),
      headroom: note.default(
        w.zoning.headroom,
        at('zoning/headroom'),
        80,
        'Clear height under beams at least 6\'-8"',
        'Not given; the height of a usual door, common practice.',
      ),
    },
    criteria: (w.criteria ?? []).map((row, i) => ({
      label: row.label,
      value: note.office(
        row.value,
        at(`criteria/${i}/value`),
        ask('to be confirmed', 'to be confirmed', `What does the office list for "${row.label}"?`),
      ),
    })),
  };
}
