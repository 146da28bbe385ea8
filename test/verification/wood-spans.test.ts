import { expect, it } from 'vitest';
import { requiredBearingArea } from '../../src/checks/codes/ibc-2018/index.js';
import { GRADE_OF, lineLoad, longestSpan, SPECIES_OF, type SpanCase, weakestSpan } from './helpers/spans.js';
import { against, forgotten, leaveOut, type Published, published, topic } from './helpers/wood-published.js';
import { verificationSuite } from './record.js';

const suite = verificationSuite('wood-spans');
const CLAUSE = 'NDS 2018 3.3, 3.5 by first principles';
const INCH = { clause: CLAUSE, unit: 'in', reason: 'table prints whole inches', tolerance: { abs: 0.51 } };

const sizeOf = (text: string): readonly [number, number] => text.split('x').map(Number) as [number, number];

it('floor joist', () => {
  const p = published('joist-irc-15-5');
  const x = p.inputs;
  const s = longestSpan({
    species: x.species,
    grade: x.grade,
    nominal: sizeOf(x.size),
    dead: lineLoad(x.D_psf, x.spacing_in),
    live: lineLoad(x.L_psf, x.spacing_in),
    duration: 'ten-years',
    Cr: 1.15,
    limit: 360,
  });
  against(suite, p, 'span.inches', s.span, INCH);
});

/** Cap of the published rafter table: 26 ft, printed for every longer span. */
const RAFTER_CAP = 26 * 12;
/** Fb the published rafter table still follows where the catalogue has a newer value; stated in its assumptions. */
const OLDER_FB: Readonly<Record<string, number>> = { 'DF-L SS': 1450, 'DF-L No.2': 875, 'HF No.1': 950 };

it.each(topic('rafter span'))('$id', (p) => {
  const x = p.inputs;
  for (const size of Object.keys(p.expected.max_span)) {
    const c: SpanCase = {
      species: SPECIES_OF[x.species]!,
      grade: GRADE_OF[x.grade]!,
      nominal: sizeOf(size),
      dead: lineLoad(x.D_psf, x.spacing_in),
      live: lineLoad(x.Lr_psf, x.spacing_in),
      duration: 'seven-days',
      Cr: 1.15,
      limit: 240,
    };
    const older = OLDER_FB[`${x.species} ${x.grade}`];
    const ours = longestSpan(older === undefined ? c : { ...c, Fb: older });
    against(suite, p, `max_span.${size}.inches`, Math.min(RAFTER_CAP, ours.span), {
      ...INCH,
      ...(older === undefined ? {} : { note: `table follows the older Fb ${older}, used here` }),
    });
    // With the catalogue's own Fb the span is the same or a little longer, never shorter.
    const now = longestSpan(c).span;
    expect(now / ours.span).toBeGreaterThanOrEqual(1);
    expect(now / ours.span).toBeLessThan(1.018);
  }
});

it.each(topic('ceiling joist span'))('$id', (p) => {
  const x = p.inputs;
  for (const size of Object.keys(p.expected.max_span)) {
    const s = longestSpan({
      species: SPECIES_OF[x.species]!,
      grade: GRADE_OF[x.grade]!,
      nominal: sizeOf(size),
      dead: lineLoad(x.D_psf, x.spacing_in),
      live: lineLoad(x.L_psf, x.spacing_in),
      duration: 'ten-years',
      Cr: 1.15,
      limit: 240,
    });
    against(suite, p, `max_span.${size}.inches`, s.span, INCH);
  }
});

/** Species the tables take as incised for treatment, and the group they take as it grows (Southern Pine apart). */
const INCISED = ['Douglas Fir-Larch', 'Hem-Fir', 'Spruce-Pine-Fir'];
const UNINCISED = ['Redwood', 'Western Cedars', 'Northern Species'];
const JOIST_CAP = 18 * 12;

function deckJoist(group: string, size: string, spacing: number): number {
  const c = {
    grade: 'No. 2',
    nominal: sizeOf(size),
    dead: lineLoad(10, spacing),
    live: lineLoad(40, spacing),
    duration: 'ten-years',
    Cr: 1.15,
    wet: true,
    limit: 360,
  } as const;
  const span = group.startsWith('Southern')
    ? longestSpan({ ...c, species: 'Southern Pine' })
    : group.startsWith('DF-L')
      ? weakestSpan(INCISED, { ...c, incised: true })
      : weakestSpan(UNINCISED, c);
  return Math.min(JOIST_CAP, span.span);
}

it.each(topic('deck joist span'))('$id', (p) => {
  for (const column of Object.keys(p.expected.max_span)) {
    const spacing = Number(column.split(' ')[0]);
    const ours = deckJoist(p.inputs.species_group, p.inputs.size, spacing);
    against(suite, p, `max_span.${column}.inches`, ours, INCH);
  }
});

it.each(topic('deck joist overhang'))('$id', (p) => {
  const left: string[] = [];
  for (const column of Object.keys(p.expected.max_overhang)) {
    const quarter = deckJoist(p.inputs.species_group, p.inputs.size, Number(column.split(' ')[0])) / 4;
    const printed = p.expected.max_overhang[column].inches as number;
    // A quarter of the span is a rule of the table itself; the cells below it follow a stiffness basis not printed.
    if (printed > quarter - 1.01) {
      against(suite, p, `max_overhang.${column}.inches`, quarter, {
        ...INCH,
        reason: 'table prints whole inches; a quarter of the span governs',
      });
    } else left.push(column);
  }
  if (left.length > 0) {
    const reason = `columns ${left.join(', ')}: tip deflection under the 220 lb load governs, on a stiffness basis the table does not print; the plain overhang formula gives 1 to 3 in. more`;
    leaveOut(suite, p, CLAUSE, reason);
  }
});

/** Beam name of a table: `3-2x10`, `4x10`, `3x6 or 2-2x6`; of two, the first and weaker one counts. */
function beamOf(name: string): { plies: number; nominal: readonly [number, number] } {
  const first = name.split(' or ')[0]!;
  const built = /^(\d)-(\d+x\d+)$/.exec(first);
  return built === null
    ? { plies: 1, nominal: sizeOf(first) }
    : { plies: Number(built[1]), nominal: sizeOf(built[2]!) };
}

/** Beams whose cells do not follow from the inferred load model, and by how much. */
const TWO_PLY = 'two-ply Southern Pine cells imply about 0.70 to 0.71 of the joist span, not 0.78: a loose bound';
const FOUR_IN = '4x10 and 4x12 cells are 4 to 8 % shorter than any species of the group gives: a loose bound';
const LOOSE_DECK_BEAMS: Readonly<Record<string, string>> = {
  '2-2x6': TWO_PLY,
  '2-2x8': TWO_PLY,
  '2-2x10': TWO_PLY,
  '2-2x12': TWO_PLY,
  '4x10': FOUR_IN,
  '4x12': FOUR_IN,
  '3-2x8 at 6': 'this one cell is 1.7 % shorter than its neighbours follow: rounding or another limit of the table',
};

it.each(topic('deck beam span'))('$id', (p) => {
  const { plies, nominal } = beamOf(p.inputs.beam);
  const southern = p.inputs.species_group === 'Southern Pine';
  for (const joist of Object.keys(p.expected.max_span_by_joist_span_ft)) {
    // One overhang of a quarter span brings (L + a)² / (2L) = 0.78125 L of load to the beam: see formula-overhang.
    const tributary = 0.78125 * Number(joist) * 12;
    const c = {
      grade: 'No. 2',
      plies,
      nominal,
      dead: lineLoad(10, tributary),
      live: lineLoad(40, tributary),
      duration: 'ten-years',
      Cr: plies >= 3 ? 1.15 : 1,
      wet: true,
      limit: 360,
      shear: true,
    } as const;
    const span = southern
      ? longestSpan({ ...c, species: 'Southern Pine' }).span
      : Math.min(weakestSpan(INCISED, { ...c, incised: true }).span, weakestSpan(UNINCISED, c).span);
    const loose =
      LOOSE_DECK_BEAMS[p.inputs.beam] ?? (southern ? undefined : LOOSE_DECK_BEAMS[`${p.inputs.beam} at ${joist}`]);
    const name = `max_span_by_joist_span_ft.${joist}.inches`;
    against(suite, p, name, span, {
      ...INCH,
      reason: loose ?? 'table prints whole inches; its load model is inferred, not printed',
      tolerance: loose === undefined ? { abs: 1.2 } : { rel: 0.1 },
    });
  }
});

it.each(topic('open porch header/girder'))('$id', (p) => {
  const { plies, nominal } = beamOf(p.inputs.header);
  for (const key of Object.keys(p.expected)) {
    const roof = /^roof_(\d+)psf_depth(\d+)$/.exec(key);
    const depth = Number(roof === null ? /depth(\d+)$/.exec(key)![1] : roof[2]) * 12;
    const c = {
      grade: 'No. 2',
      plies,
      nominal,
      dead: lineLoad(10, depth / 2),
      live: lineLoad(roof === null ? 40 : Number(roof[1]), depth / 2),
      duration: roof === null ? 'ten-years' : 'two-months',
      Cr: 1,
      wet: true,
    } as const;
    const southern = longestSpan({ ...c, species: 'Southern Pine' }).span;
    const span = Math.min(southern, weakestSpan(INCISED, { ...c, incised: true }).span);
    against(suite, p, `${key}.inches`, span, {
      ...INCH,
      reason: 'table cuts to the whole inch; load model inferred',
      tolerance: { abs: 1.2 },
    });
  }
});

it('headers whose load basis is not printed are left out', () => {
  for (const p of topic('exterior header span', 'single-ply exterior header')) {
    leaveOut(
      suite,
      p,
      CLAUSE,
      'the load behind the table is not printed; fitting it to the same cells would be a circle, not a check',
    );
  }
});

it.each(topic('deck footing size'))('$id', (p: Published) => {
  const { soil_psf, load_psf } = p.inputs;
  for (const tributary of Object.keys(p.expected.by_tributary_ft2)) {
    const area = requiredBearingArea(load_psf * Number(tributary), soil_psf);
    const asked = {
      clause: 'IBC 2018 1806 (bearing area)',
      unit: 'in',
      reason: 'table prints whole inches and knows neither footing weight nor uplift',
      tolerance: { abs: 0.51 },
    };
    const key = `by_tributary_ft2.${tributary}`;
    against(suite, p, `${key}.square_in`, Math.max(12, Math.sqrt(area)), asked);
    against(suite, p, `${key}.round_in`, Math.max(12 * Math.sqrt(4 / Math.PI), Math.sqrt((4 * area) / Math.PI)), asked);
  }
});

it('post heights are left out', () => {
  leaveOut(
    suite,
    published('post-height-irc2018'),
    'NDS 2018 3.7.1',
    'prescriptive limits over a whole family of decks, not buckling capacities: nothing of ours computes them',
  );
});

it('leaves no span check unanswered', () => {
  expect(forgotten(suite, 'wood-spans')).toEqual([]);
});
