/** What offices ask of plans, framing, sections and elevations. */
import type { Found, OfficeRow, Submitted } from './contract.js';
import { ask, beside, both, inked, missing, notNeeded, says, shownOr, titled } from './look.js';

const row = (name: string, asked: number, item: string, look: (s: Submitted) => Found): OfficeRow => ({
  name,
  group: 'Plans, sections and elevations',
  item,
  asked,
  look,
});

const SCHEDULES = /^S-6/;
const PLANS = /^S-10/;
const attached = (s: Submitted): boolean => s.structure.attachment === 'attached';

export const PLANS_AND_SECTIONS: readonly OfficeRow[] = [
  row('footing-size', 11, 'Footing size, depth and spacing', (s) =>
    shownOr(
      [...says(s, /Size[\s\S]*Bottom/, PLANS), ...says(s, /footing/i, SCHEDULES)],
      missing('no footing schedule'),
    ),
  ),
  row('member-sizes', 9, 'Sizes and spacing of ledger, beam, rafter or truss, post', (s) =>
    shownOr(
      [...says(s, /Section/, PLANS), ...says(s, /o\.c\./, PLANS), ...says(s, /section/i, SCHEDULES)],
      missing('no sizes on the plans'),
    ),
  ),
  row('height', 9, 'Height above grade, and of beams', (s) =>
    shownOr(says(s, /Top of new roof|Top of roof/, /^A/), missing('no level marks')),
  ),
  row('posts', 7, 'Post size, spacing and height', (s) =>
    shownOr(says(s, /P1\b/, /^S-(10|6)/), missing('no post on plan or schedule')),
  ),
  row('attachment', 7, 'How the cover meets the house: what, with which fastener, into which member', (s) =>
    attached(s)
      ? shownOr(
          [
            ...titled(s, /at the house|ledger/i),
            ...says(s, /House, as stated|into the (house|studs|band)|nailer|lag screw/i, /^S/),
          ],
          missing('no such detail'),
        )
      : notNeeded('free-standing: nothing is fastened to the house'),
  ),
  row('covering', 5, 'Roof covering and slope', (s) =>
    shownOr(
      both(says(s, /\b\d+(\.\d+)?\/12\b|\b12\b/), says(s, /shingle|metal|membrane|tile|Roof, from top/i)),
      missing('not lettered'),
    ),
  ),
  row('grade', 4, 'Species and grade of the lumber', (s) =>
    shownOr(says(s, /No\. ?[123]|24F|Select|Stud/, /^S/), missing('not lettered')),
  ),
  row('connectors', 4, 'Other connectors: post to footing, beam to post, framing to beam', (s) =>
    shownOr(says(s, /J1\b/, SCHEDULES), missing('no joint schedule')),
  ),
  row('spans', 3, 'Spans: beams, posts, cantilevers', (s) =>
    shownOr(both(inked(s, /^S-ANNO-DIMS$/), says(s, /./, PLANS)), missing('no dimensions on the plans')),
  ),
  row('tie-in', 1, 'How the new roof ties into the old', (s) =>
    attached(s)
      ? shownOr(
          [...titled(s, /valley|tie-in|where the roofs meet/i), ...says(s, /step and kick-out|kick-out|valley/i)],
          missing('no flashing or tie-in detail'),
        )
      : notNeeded('free-standing'),
  ),
  row('rooms', 3, 'Rooms beside the cover, their use, windows and doors', (s) =>
    shownOr(titled(s, /floor plan/i), missing('no floor plan is drawn yet')),
  ),
  row('alarms', 3, 'Smoke and carbon-monoxide alarms in the house', (s) =>
    shownOr(says(s, /smoke/i), ask('Are alarms in the whole house looked at with this permit?')),
  ),
  row('uplift', 1, 'Uplift', (s) => shownOr(says(s, /\bUp\b|uplift/i, /^S/), missing('not lettered'))),
  row('veneer', 1, 'No fastening to brick or siding', (s) =>
    attached(s)
      ? shownOr(
          says(s, /siding removed|brick|veneer|framing with/i, /^S/),
          beside('nothing is fastened through siding in this cover: see the joint at the house'),
        )
      : notNeeded('free-standing'),
  ),
];
