/** What offices ask of the site plan. */
import type { Found, OfficeRow, Submitted } from './contract.js';
import { ask, both, inked, missing, notNeeded, says, shownOr } from './look.js';

const row = (name: string, asked: number, item: string, look: (s: Submitted) => Found): OfficeRow => ({
  name: `lot-${name}`,
  group: 'Site plan',
  item,
  asked,
  look,
});

const SITE = /^C/;
const site = (s: Submitted): readonly string[] => s.sheets.filter((x) => SITE.test(x.id)).map((x) => x.id);
const on = (s: Submitted, what: RegExp, otherwise: Found): Found => shownOr(says(s, what, SITE), otherwise);
const none = 'not on the site plan';

/** Things of the lot that the project file lists by kind. */
const lists = (s: Submitted, kinds: readonly string[]): boolean =>
  s.project.lot.items.some((i) => kinds.includes(i.kind));

export const SITE_PLAN: readonly OfficeRow[] = [
  row('distances', 20, 'Distance from the new work to every lot line, required beside proposed', (s) =>
    on(s, /Required[\s\S]*Proposed/, missing(none)),
  ),
  row('scale', 13, 'Drawn to a stated scale', (s) =>
    shownOr(both(site(s), says(s, /1" = \d+'|1 ?: ?\d+/)), missing(none)),
  ),
  row('structures', 11, 'Existing buildings and what separates them', (s) => on(s, /Existing house/, missing(none))),
  row('easements', 10, 'Easements, dashed, with their widths', (s) =>
    s.project.lot.easements.length === 0
      ? ask('Does the deed or plat show one? None is entered.', '/lot/easements')
      : shownOr(inked(s, /^C-PROP-ESMT$/), missing(none)),
  ),
  row('lines', 9, 'Lot lines with their dimensions', (s) =>
    shownOr(both(site(s), inked(s, /^C-PROP$/)), missing(none)),
  ),
  row('street', 7, 'Street names and right of way', (s) => {
    const { name } = s.project.lot.street;
    const found = s.sheets.filter((x) => site(s).includes(x.id)).map((x) => x.id);
    const named = says(s, new RegExp(name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'), 'i'), SITE);
    return shownOr(both(found, named), missing(`${name} is not lettered on the site plan`));
  }),
  row('north', 6, 'North arrow', (s) => on(s, /(^|\s)N(\s|$)/, missing(none))),
  row('paving', 6, 'Driveways and paving', (s) =>
    s.project.lot.paving.length === 0
      ? notNeeded('no paving entered')
      : shownOr(both(site(s), inked(s, /^C-PVMT$/)), missing(none)),
  ),
  row('parcel', 5, 'Parcel, tax or legal number', (s) =>
    s.project.job.parcel === ''
      ? missing('no parcel number entered', '/job/parcel')
      : { state: 'shown', sheets: [...site(s)] },
  ),
  row('septic', 4, 'Septic tank, field and well, with distances', (s) =>
    lists(s, ['septic-tank', 'leach-field', 'well'])
      ? on(s, /septic|leach|well/i, missing(none))
      : ask('Is there one? None is entered.', '/lot/items'),
  ),
  row('existing', 4, 'Existing and proposed shown differently', (s) =>
    shownOr(both(inked(s, /^C-BLDG$/), inked(s, /^C-BLDG-EXST$/)), missing(none)),
  ),
  row('coverage', 4, 'Coverage of the lot', (s) => on(s, /Coverage of the/, missing(none))),
  row('utilities', 3, 'Utility lines and where they come in', (s) =>
    s.project.lot.utilities.length > 0 || lists(s, ['meter', 'gas-meter', 'water-meter', 'service-drop'])
      ? shownOr(inked(s, /^C-UTIL$/), missing(none))
      : ask('Where do they come in? None is entered.', '/lot/items'),
  ),
  row('overhangs', 1, 'Overhangs counted in the distance', (s) => on(s, /To eave/, missing(none))),
  row('drainage', 1, 'Drainage pattern, corner elevations', (s) => {
    const ways = on(s, /water is led|drain|swale/i, missing(none));
    if (ways.state !== 'shown' || s.project.lot.courses.some((c) => c.elevation !== undefined)) return ways;
    return ask(
      `Does the office ask corner elevations? None are entered; how water is led is on ${ways.sheets.join(', ')}.`,
      '/lot/courses',
    );
  }),
  row('equipment', 1, 'Window wells, outdoor units', (s) =>
    lists(s, ['air-conditioner'])
      ? shownOr(inked(s, /^C-UTIL$/), missing(none))
      : ask('Are there any near the cover? None is entered.', '/lot/items'),
  ),
  row('trees', 1, 'Trees', (s) =>
    lists(s, ['tree'])
      ? shownOr(inked(s, /^C-UTIL$/), missing(none))
      : ask('Are trees to be shown? None is entered.', '/lot/items'),
  ),
];
