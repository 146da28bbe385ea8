import type { CoverRoof } from '../project/model.js';
import { toHouse } from './axes.js';
import type { Framed, FrameNumbers, Seat } from './framing/contract.js';
import { error } from './issues.js';
import type { Kit } from './kit.js';
import type { Member, Section } from './model.js';
import type { Profile } from './roofs/contract.js';
import { makeSection } from './sections.js';
import { serial } from './text.js';

/**
 * Section of a roof's fascia: a section named in choices, or the chosen section of that size, or else that size in
 * Douglas Fir-Larch No. 2 (only its weight and size matter: it carries nothing). Undefined when the roof has none.
 */
export function fasciaSection(roof: CoverRoof, kit: Kit): Section | undefined {
  const name = roof.finish.fascia;
  if (name === '' || name === 'none') return undefined;
  const { sections } = kit.project.choices;
  if (Object.hasOwn(sections, name)) return kit.section(name, `${roof.path}/finish/fascia`);
  const named = sections.fascia;
  if (named?.kind === 'solid' && named.size === name) return kit.section('fascia', `${roof.path}/finish/fascia`);
  const path = `${roof.path}/finish/fascia`;
  const made = makeSection<'solid'>(
    {
      kind: 'solid',
      size: name,
      species: 'Douglas Fir-Larch',
      grade: 'No. 2',
      treatment: 'none',
      incised: false,
      service: 'dry',
    },
    { choice: name, path },
  );
  if (made.ok) return made.section;
  kit.issues.push(
    error('section-unknown', path, made.message, { found: made.found, expected: made.expected, subject: roof.mark }),
  );
  return undefined;
}

/** One fascia along every eave, nailed to the plumb-cut tails, its top edge level with the framing's. */
export function placeFascia(
  roof: CoverRoof,
  profile: Profile,
  framed: Framed,
  section: Section,
  number: FrameNumbers,
): { members: Member[]; seats: Seat[] } {
  const mark = `FA${number('FA')}`;
  const members: Member[] = [];
  const seats: Seat[] = [];
  for (const [i, leg] of profile.legs.entries()) {
    const outward = leg.top > leg.eave ? -1 : 1;
    const a = leg.eave + (outward * section.b) / 2;
    const z = framed.eaves[i]! - section.d / 2;
    const [l0, l1] = profile.extent;
    // Nailed to the middle of the tail, or of the fascia when that is the shallower.
    const nail = framed.eaves[i]! - Math.min(section.d, framed.plumb) / 2;
    const id = `${mark}-${serial(i + 1)}`;
    members.push({
      id,
      mark,
      role: 'fascia',
      section,
      start: toHouse(profile.axes, a, l0, z),
      end: toHouse(profile.axes, a, l1, z),
      up: { x: 0, y: 0, z: 1 },
      length: l1 - l0,
      state: 'new',
      strips: [],
      roof: roof.mark,
      notch: 0,
      cuts: ['square both ends'],
      unbraced: { top: 0, bottom: 0 },
      path: `${roof.path}/finish/fascia`,
    });
    for (const [k, l] of profile.stations.entries()) {
      seats.push({
        kind: 'fascia-to-framing',
        member: id,
        support: framed.tails[i]![k]!.id,
        at: toHouse(profile.axes, leg.eave, l, nail),
        contact: { length: section.d, width: framed.tails[i]![k]!.section.b },
      });
    }
  }
  return { members, seats };
}
