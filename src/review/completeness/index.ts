/** The completeness list: the union of what offices ask, as the project file changes it, against the set. */
import { NO_SUBMITTAL } from '../../project/index.js';
import { type CompletenessRow, OFFICES_READ, type OfficeRow, type Submitted } from './contract.js';
import { DOCUMENTS } from './documents.js';
import { CRITERIA, FORM } from './form.js';
import { beside, missing, says, shownOr } from './look.js';
import { PLANS_AND_SECTIONS } from './plans.js';
import { SITE_PLAN } from './site.js';

export * from './contract.js';

/** Every row, the most asked for first within its group. */
export const OFFICE_ROWS: readonly OfficeRow[] = [DOCUMENTS, SITE_PLAN, PLANS_AND_SECTIONS, CRITERIA, FORM].flatMap(
  (rows) => [...rows].sort((a, b) => b.asked - a.asked),
);

const literal = (words: string): RegExp =>
  new RegExp(
    words
      .trim()
      .replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
      .replace(/\s+/g, '\\s+'),
    'i',
  );

/** The list of this project's office against its set. */
export function completeness(s: Submitted): CompletenessRow[] {
  const { remove, add } = (s.project.submittal ?? NO_SUBMITTAL).officeChecklist;
  const own = add.map(
    (a, i): CompletenessRow => ({
      name: `own-${i + 1}`,
      group: 'This office',
      item: a.item,
      found: shownOr(
        a.words === undefined ? [] : says(s, literal(a.words)),
        a.answer === undefined
          ? missing(a.words === undefined ? 'not answered' : `no sheet carries “${a.words}”`)
          : beside(a.answer),
      ),
    }),
  );
  return [
    ...OFFICE_ROWS.filter((r) => !remove.includes(r.name)).map(
      (r): CompletenessRow => ({ name: r.name, group: r.group, item: r.item, asked: r.asked, found: r.look(s) }),
    ),
    ...own,
  ];
}

/** Names in `remove` that no row has. */
export const unknownRows = (remove: readonly string[]): string[] =>
  remove.filter((name) => !OFFICE_ROWS.some((r) => r.name === name));

const STATES = {
  beside: 'beside the sheets',
  'not-needed': 'not needed',
  ask: 'question for the office',
  missing: 'NOT SHOWN',
};

/** Ids in the order given, runs of three or more that count up closed: `G-001, S-701–S-706`. */
function closedUp(ids: readonly string[]): string {
  const runs: string[][] = [];
  for (const id of ids) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    const follows = last !== undefined && last[0] === id[0] && Number(last.slice(2)) + 1 === Number(id.slice(2));
    if (follows) run!.push(id);
    else runs.push([id]);
  }
  return runs.map((r) => (r.length > 2 ? `${r[0]}–${r.at(-1)}` : r.join(', '))).join(', ');
}

/** `S-101, S-601`, or why it is on no sheet; `of` is how many sheets there are to be on. */
export function foundText(r: CompletenessRow, of = Number.POSITIVE_INFINITY): string {
  if (r.found.state !== 'shown') return `${STATES[r.found.state]}: ${r.found.why}`;
  return r.found.sheets.length >= of ? 'every sheet' : closedUp(r.found.sheets);
}

export const askedText = (r: CompletenessRow): string =>
  r.asked === undefined ? 'this office' : `${r.asked} of ${OFFICES_READ}`;
