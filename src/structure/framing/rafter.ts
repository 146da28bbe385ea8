/**
 * Rafters of one slope, each on a level seat over a beam and, at the high end, on a second seat or in a hanger.
 *
 * Seat rule: the bottom edge meets the beam's top corner on the uphill side; from there the seat runs level over the whole
 * beam and ends in a plumb heel cut at the downhill face. The notch, square to the axis, is beam width × sin(slope); it may
 * be a quarter of the depth (NDS 2018 4.4.3, end notches).
 *
 *        ___----
 *   ___--    __--      |  uphill face of the beam: notch starts at nothing
 *  |      _-|_____     |
 *  |___---   [beam]    heel: plumb, at the downhill face
 *
 * A ledger's top is flush with the rafter's top edge where they meet.
 */
import { toHouse } from '../axes.js';
import { LEAST_BEARING, SLACK } from '../constants.js';
import { error, warning } from '../issues.js';
import type { Member } from '../model.js';
import type { Bearing } from '../roofs/contract.js';
import { degrees, inches, serial } from '../text.js';
import type { Framed, FrameInput, Framing, Seat } from './contract.js';

export const rafter: Framing<'rafter'> = {
  frame({ roof, choice, profile, number, strips, kit }: FrameInput<'rafter'>): Framed | undefined {
    const section = kit.section(choice.section, `${roof.path}/framing/section`);
    const leg = profile.legs[0];
    if (leg === undefined || profile.legs.length > 1) {
      kit.issues.push(
        error(
          'framing-unsupported',
          `${roof.path}/framing/kind`,
          'Rafters meeting at a ridge need a ridge beam or ties, which the program does not place.',
          {
            subject: roof.mark,
            found: choice.kind,
            expected: '"common-truss" or "scissor-truss", or a licensed professional',
          },
        ),
      );
      return undefined;
    }
    if (section === undefined) return undefined;

    const [low, high] = profile.bearings;
    const tan = Math.tan(roof.pitch);
    const cos = Math.cos(roof.pitch);
    const sin = Math.sin(roof.pitch);
    const plumb = section.d / cos;
    const uphill = (b: Bearing): number => b.seat.at + b.seat.width / 2;

    // Top edge at the high bearing, then down the slope from there.
    const fixed =
      high.kind === 'ledger' ? { a: high.at, z: roof.bearing } : { a: uphill(high), z: roof.bearing + plumb };
    const topEdge = (a: number): number => fixed.z - (fixed.a - a) * tan;
    const lowTop = topEdge(uphill(low)) - plumb;

    const seats = profile.bearings.filter((b) => b.kind === 'beam');
    for (const b of seats) {
      const notch = b.seat.width * sin;
      if (notch <= section.d / 4 + SLACK) continue;
      kit.issues.push(
        error(
          'seat-too-deep',
          `${roof.path}/framing/section`,
          `The seat over ${b.part} would notch the rafter ${inches(notch)} deep: more than a quarter of its depth (NDS 2018 4.4.3).`,
          {
            subject: roof.mark,
            found: inches(notch),
            expected: `at most ${inches(section.d / 4)}: a deeper rafter, a narrower beam or a lower pitch`,
          },
        ),
      );
      return undefined;
    }
    if (high.kind === 'ledger' && high.section.depth < plumb - SLACK)
      kit.issues.push(
        warning(
          'ledger-too-shallow',
          `${roof.path}/framing/section`,
          `The plumb end of the rafter (${inches(plumb)}) is deeper than ledger ${high.part} (${inches(high.section.depth)}).`,
          {
            subject: high.part,
            expected: 'a ledger at least as deep as the rafter end',
          },
        ),
      );
    for (const b of seats)
      if (b.seat.width < LEAST_BEARING)
        kit.issues.push(
          error(
            'bearing-too-short',
            b === low ? `${roof.path}/low` : `${roof.path}/high`,
            `The rafters bear on ${inches(b.seat.width)} of beam.`,
            {
              subject: b.part,
              expected: '1 1/2" or more (IRC 2018 R802.6)',
            },
          ),
        );

    const mark = `RF${number('RF')}`;
    const notch = Math.max(...seats.map((b) => b.seat.width * sin));
    const cuts = [
      `plumb cut ${degrees(roof.pitch)} both ends`,
      ...seats.map(
        (b) => `seat ${inches(b.seat.width)} level, heel ${inches(b.seat.width * tan)} plumb, over ${b.part}`,
      ),
    ];
    const bearingRun = high.seat.at - low.seat.at;
    const sheathed = roof.finish.sheathing !== '';
    const up = toHouse(profile.axes, -sin, 0, cos);
    const members: Member[] = [];
    const joints: Seat[] = [];
    for (const [i, l] of profile.stations.entries()) {
      const id = `${mark}-${serial(i + 1)}`;
      members.push({
        id,
        mark,
        role: 'rafter',
        section,
        start: toHouse(profile.axes, leg.eave, l, topEdge(leg.eave) - plumb / 2),
        end: toHouse(profile.axes, leg.top, l, topEdge(leg.top) - plumb / 2),
        up,
        length: (leg.top - leg.eave) / cos + section.d * tan,
        state: 'new',
        strips: strips[i]!,
        roof: roof.mark,
        notch,
        cuts,
        unbraced: { top: sheathed ? 0 : bearingRun / cos, bottom: bearingRun / cos },
        path: `${roof.path}/framing`,
      });
      for (const b of profile.bearings) {
        const hung = b.kind === 'ledger';
        joints.push({
          kind: hung ? 'rafter-to-ledger' : 'rafter-to-beam',
          member: id,
          support: b.part,
          at: toHouse(profile.axes, b.seat.at, l, hung ? topEdge(b.at) - plumb / 2 : topEdge(uphill(b)) - plumb),
          contact: hung ? { length: 0, width: 0 } : { length: b.seat.width, width: section.b },
        });
      }
    }
    return {
      members,
      seats: joints,
      tops: new Map([
        [low.part, lowTop],
        [high.part, roof.bearing],
      ]),
      eaves: [topEdge(leg.eave)],
      plumb,
    };
  },
};
