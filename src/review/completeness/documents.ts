/** Documents of a submittal, with how many of the lists read ask for each. */
import type { Found, OfficeRow, Submitted } from './contract.js';
import { ask, beside, missing, notNeeded, says, shownOr, titled } from './look.js';

const row = (name: string, asked: number, item: string, look: (s: Submitted) => Found): OfficeRow => ({
  name,
  group: 'Documents',
  item,
  asked,
  look,
});

/** The state of an approval whose body is called so, as the project's log has it. */
function approval(s: Submitted, body: RegExp, none: Found): Found {
  const a = s.project.log.approvals.find((x) => body.test(x.body));
  if (!a) return none;
  const note = [a.body, a.state, a.date].filter(Boolean).join(', ');
  return a.state === 'granted' ? beside(note) : a.state === 'refused' ? missing(note) : ask(note);
}

/** An engineer's seal when one of the conditions for it holds; the office decides. */
function seal(s: Submitted): Found {
  const triggers = s.results.filter((r) => r.check === 'engineer-triggers' && r.subject !== 'cover');
  const outside = s.results.filter((r) => r.status === 'outside-scope');
  if (outside.length > 0)
    return missing(`${outside.length} results are outside scope: a licensed professional is needed`);
  return triggers.length === 0
    ? notNeeded('none of the conditions that call for it holds')
    : ask(`conditions on the cover, ${triggers.length} of them: ask before paying for drawings`);
}

function trussPapers(s: Submitted): Found {
  if (!s.structure.members.some((m) => m.truss)) return notNeeded('no trusses');
  const papers = s.results.filter((r) => r.check === 'truss-papers');
  if (papers.length > 0 && papers.every((r) => r.status === 'pass'))
    return beside('sealed papers entered; hand the plant’s sheets in as a file of their own');
  const { deferred } = s.project.cover;
  return deferred?.state === 'given' && deferred.value.includes('trusses')
    ? beside(`deferred, accepted by ${deferred.from}`)
    : ask('May the sealed truss papers be handed in later?', '/cover/deferred');
}

export const DOCUMENTS: readonly OfficeRow[] = [
  row('site-plan', 30, 'Site or plot plan', (s) =>
    shownOr(titled(s, /\b(lot|site|plot) plan\b/i), missing('no such sheet')),
  ),
  row('foundation-plan', 19, 'Footing or foundation plan or detail', (s) =>
    shownOr(titled(s, /footing plan|foundation plan/i), missing('no such sheet')),
  ),
  row('elevations', 11, 'Elevations, all sides most often', (s) =>
    shownOr(titled(s, /^(rear|front|left side|right side) elevation|^elevations$/i), missing('no such view')),
  ),
  row('section', 9, 'Section; some ask for two in opposing directions', (s) =>
    shownOr(titled(s, /^section/i), missing('no such view')),
  ),
  row('framing-plan', 9, 'Framing plan of the roof', (s) =>
    shownOr(titled(s, /framing plan/i), missing('no such sheet')),
  ),
  row('floor-plan', 8, 'Floor plan: cover and the rooms beside it', (s) =>
    shownOr(
      titled(s, /floor plan/i),
      missing('no floor plan is drawn yet; the column and beam plan shows the house wall with its openings'),
    ),
  ),
  row('seal', 8, 'Engineer’s seal, where one is called for', seal),
  row('details', 6, 'Construction and connection details', (s) =>
    shownOr(titled(s, /detail/i), missing('no such sheet')),
  ),
  row('association', 6, 'Letter of the homeowners’ association', (s) =>
    approval(
      s,
      /association|committee|hoa/i,
      s.project.submittal?.association
        ? ask('packet prepared, no answer yet', '/log/approvals')
        : ask('Is there an association, and has it agreed?', '/log/approvals'),
    ),
  ),
  row('title-information', 6, 'Owner, contact and scope of work', (s) =>
    shownOr(says(s, /Owner\b[\s\S]*Prepared by/, /^G/), missing('no cover')),
  ),
  row('electrical', 4, 'Electrical plan, or a permit of its own', (s) =>
    shownOr(
      titled(s, /electrical plan/i),
      approval(s, /electric/i, ask('Is electrical work under a permit of its own?', '/log/approvals')),
    ),
  ),
  row('truss-papers', 4, 'Truss engineering and layout', trussPapers),
  row('index', 4, 'Sheet numbers and an index', (s) => shownOr(says(s, /Sheet index/, /^G/), missing('no index'))),
  row('criteria-block', 4, 'Design criteria and code edition on the sheets', (s) =>
    shownOr(says(s, /Design criteria/, /^G/), missing('no criteria block')),
  ),
  row('roof-plan', 3, 'Roof plan', (s) => shownOr(titled(s, /roof (framing )?plan/i), missing('no such sheet'))),
  row('calculations', 1, 'Calculations, a file of their own', (s) =>
    shownOr(
      s.sheets.filter((x) => x.file === 'calculations').map((x) => x.id),
      missing('no calculation sheets'),
    ),
  ),
  row('material-list', 1, 'Material list', (s) =>
    shownOr(titled(s, /material|take-off/i), beside('made from the same project with the take-off')),
  ),
  row('owner-builder', 3, 'Owner-builder’s declaration', (s) =>
    approval(
      s,
      /owner.?builder|declaration|affidavit/i,
      ask('Which form does the office want filled in?', '/log/approvals'),
    ),
  ),
];
