/** Written → complete: every value spelled out, given kept apart from assumed, open answers turned into questions. */
import type { Choices, CodeBundle, JointProduct, Lot, Patio, Project } from '../model.js';
import type { Written } from '../schema/index.js';
import { completeBasis, PLACEHOLDERS } from './basis.js';
import { completeBuying } from './buying.js';
import { completeConnection } from './connections.js';
import { completeCover } from './cover.js';
import { completeHouse } from './house.js';
import { completeLog } from './log.js';
import { Notebook } from './notebook.js';
import { completeSubmittal } from './submittal.js';

function completeLot(w: Written['lot']): Lot {
  return {
    courses: w.courses.map((c, i) => ({
      azimuth: c.bearing,
      distance: c.distance,
      yard: c.yard,
      name: c.name,
      elevation: c.elevation,
      path: `/lot/courses/${i}`,
    })),
    origin: w.origin,
    outward: w.outward,
    easements: w.easements,
    buildings: w.buildings,
    items: w.items,
    street: w.street,
    paving: w.paving ?? [],
    utilities: w.utilities ?? [],
    drainage: w.drainage ?? [],
    datum: w.datum ?? '',
  };
}

const completePatio = (w: Written['patio']): Patio => ({
  slabs: w.slabs.map((s, i) => ({ ...s, path: `/patio/slabs/${i}` })),
  steps: (w.steps ?? []).map((s, i) => ({ ...s, path: `/patio/steps/${i}` })),
  existing: (w.existing ?? []).map((s, i) => ({ ...s, path: `/patio/existing/${i}` })),
  grade: w.grade,
});

const rating = (w: number | 'none'): number | undefined => (w === 'none' ? undefined : w);

/** Ratings of dry wood unless the table is said to hold for wet. */
const completeProduct = (w: NonNullable<Written['choices']['joints']>[number], i: number): JointProduct => ({
  ...w,
  down: rating(w.down),
  up: rating(w.up),
  along: rating(w.along),
  across: rating(w.across),
  moment: w.moment === undefined ? undefined : 12 * w.moment,
  service: w.service ?? 'dry',
  seat: w.seat,
  concrete: w.concrete,
  path: `/choices/joints/${i}`,
});

function completeChoices(w: Written['choices'], note: Notebook): Choices {
  const why = 'Not given; the usual limit for roofs and beams, stricter than the least the code allows.';
  const limit = (key: 'live' | 'total', value: number) =>
    note.default(
      w.deflection?.[key],
      w.deflection === undefined ? '/choices/deflection' : `/choices/deflection/${key}`,
      value,
      `Deflection under ${key} load at most L/${value}`,
      why,
    );
  return {
    sections: w.sections,
    footings: w.footings,
    ...(w.anchors === undefined ? {} : { anchors: w.anchors }),
    standoff: note.default(
      w.standoff,
      '/choices/standoff',
      1,
      'Post base standoff 1"',
      'Not given; the least that keeps a post end off the concrete (IRC R317.1.4, recalled).',
    ),
    deflection: {
      live: limit('live', 360),
      total: limit('total', 240),
      ...(w.deflection?.drift === undefined ? {} : { drift: w.deflection.drift }),
    },
    joints: (w.joints ?? []).map(completeProduct),
    connections: (w.connections ?? []).map(completeConnection),
  };
}

/** A fascia whose size no section describes is drawn and weighed as plain lumber, which is listed. */
function fasciaAssumption(w: Written, note: Notebook): void {
  const described = w.choices.sections.fascia;
  const size = w.cover.roofs
    .map((r) => r.finish.fascia)
    .find((f) => f !== '' && !(described?.kind === 'solid' && described.size === f));
  if (size === undefined) return;
  note.assumptions.push({
    path: '/choices/sections/fascia',
    text: `Fascia ${size} of untreated Douglas Fir-Larch No. 2`,
    why: 'No section "fascia" of this size is given; only its weight and size count, it carries nothing.',
  });
}

/** Gutters are sized for more rain than any place has, where none is given; that is listed. */
function rainfallAssumption(w: Written, note: Notebook): void {
  if (w.basis.rainfall !== undefined || !w.cover.roofs.some((r) => r.finish.gutter)) return;
  note.assumptions.push({
    path: '/basis/rainfall',
    text: `Gutters sized for a one-hour rainfall of ${PLACEHOLDERS.rainfall.shown}`,
    why: 'Not given; more than any place in the codes’ lists, as recalled.',
  });
}

export function complete(w: Written, codes: CodeBundle): { readonly project: Project; readonly note: Notebook } {
  const note = new Notebook();
  fasciaAssumption(w, note);
  rainfallAssumption(w, note);
  const project: Project = {
    version: 1,
    job: w.job,
    basis: completeBasis(w.basis, codes, note),
    lot: completeLot(w.lot),
    house: completeHouse(w.house, note),
    patio: completePatio(w.patio),
    cover: completeCover(
      w.cover,
      w.house.walls.map((wall) => wall.name),
      note,
    ),
    choices: completeChoices(w.choices, note),
    prices: w.prices,
    buying: completeBuying(w.buying),
    log: completeLog(w.log),
    submittal: completeSubmittal(w.submittal),
    assumptions: note.assumptions,
    questions: note.questions,
  };
  return { project, note };
}
