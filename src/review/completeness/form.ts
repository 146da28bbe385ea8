/** Criteria block, paper and form. */
import { SHEET_SIZES } from '../../drawings/ir/index.js';
import type { SheetCheckId } from '../sheets/contract.js';
import type { Found, OfficeRow, Submitted } from './contract.js';
import { ask, both, inked, missing, says, shownOr } from './look.js';

const criteria = (name: string, asked: number, item: string, words: RegExp): OfficeRow => ({
  name: `criteria-${name}`,
  group: 'Design criteria',
  item,
  asked,
  look: (s) => shownOr(says(s, words, /^G/), ask('What does this office list?', '/basis/criteria')),
});

const form = (name: string, asked: number, item: string, look: (s: Submitted) => Found): OfficeRow => ({
  name: `form-${name}`,
  group: 'Paper and form',
  item,
  asked,
  look,
});

/** Every sheet, unless a sheet check found a fault; a set with one is not issuable and says so on its cover. */
const holds = (s: Submitted, id: SheetCheckId): Found => {
  const faults = (s.findings ?? []).filter((f) => f.check === id);
  return faults.length === 0
    ? { state: 'shown', sheets: s.sheets.map((x) => x.id) }
    : missing(`not so on ${[...new Set(faults.map((f) => f.sheet))].join(', ')}`);
};

const scales = (s: Submitted, plans: RegExp, least: number): string[] =>
  s.sheets.filter((x) => plans.test(x.id) && x.viewports.every((v) => v.scale >= least - 1e-9)).map((x) => x.id);

export const CRITERIA: readonly OfficeRow[] = [
  criteria('live', 2, 'Roof live load', /Roof live load/),
  criteria('snow', 2, 'Ground snow load and the roof snow load used', /Ground snow load/),
  criteria('wind', 2, 'Wind speed and exposure', /Wind speed[\s\S]*Exposure/),
  criteria('seismic', 2, 'Seismic design category', /Seismic design category/),
  criteria('frost', 2, 'Frost depth', /Frost depth/),
  criteria('weathering', 2, 'Weathering', /Weathering/i),
  criteria('termite', 2, 'Termite', /Termite/i),
  criteria('decay', 2, 'Decay', /Decay/i),
  criteria('winter', 2, 'Winter design temperature', /Winter design/i),
  criteria('ice', 2, 'Ice barrier, yes or no', /Ice barrier/i),
  criteria('flood', 2, 'Flood data', /Flood/i),
  criteria('edition', 2, 'Code edition', /Codes[\s\S]*IRC/),
  criteria('occupancy', 1, 'Occupancy and area', /Occupancy/),
];

export const FORM: readonly OfficeRow[] = [
  form('plan-scale', 4, 'Plans at 1/4 in to the foot; nowhere under 1/8', (s) =>
    shownOr(scales(s, /^S-10/, 1 / 96), missing('a plan is smaller than 1/8 in to the foot')),
  ),
  form('size', 3, 'A sheet size this office takes, 11 by 17 in or larger', (s) => {
    const size = s.sheets[0]?.size ?? 'ARCH D';
    return SHEET_SIZES[size].h >= 11
      ? { state: 'shown', sheets: s.sheets.map((x) => x.id) }
      : ask(`Does the office take ${size}?`);
  }),
  form('one-size', 1, 'One size and one orientation for the whole set', (s) => holds(s, 'one-size')),
  form('site-file', 2, 'The site plan as a file or sheet of its own', (s) =>
    shownOr(
      s.sheets.filter((x) => x.file === 'site-plan').map((x) => x.id),
      missing('no site plan'),
    ),
  ),
  form('bars', 1, 'A graphic bar scale on each sheet that has a scale', (s) => holds(s, 'scale-bars')),
  form('stamp', 1, 'Space of 3 3/4 by 5 3/4 in for the stamp at the top right', (s) =>
    SHEET_SIZES[s.sheets[0]?.size ?? 'ARCH D'].h >= 16
      ? holds(s, 'stamp-clear')
      : ask('half of it is kept clear on sheets this small: is that enough?'),
  ),
  form('index', 1, 'The index equals the sheets', (s) => holds(s, 'index')),
  form('lettering', 1, 'Lettering legible at half size', (s) => holds(s, 'text-height')),
  form('black', 2, 'Black line work, no red', (s) =>
    shownOr(
      both(
        s.sheets.map((x) => x.id),
        inked(s, /./),
      ),
      missing('nothing drawn'),
    ),
  ),
];
