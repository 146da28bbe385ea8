/**
 * Trusses on two beams. The outside shape is placed here; what is inside is designed and sealed by the truss plant's
 * engineer. The axis of a truss is the level line at bearing height from tail to tail.
 */
import type { FramingKind } from '../../project/model.js';
import { toHouse } from '../axes.js';
import { error } from '../issues.js';
import type { Member, Section } from '../model.js';
import { makeSection } from '../sections.js';
import { inches, serial } from '../text.js';
import type { Framed, FrameInput, Framing, Seat } from './contract.js';

type TrussKind = Extract<FramingKind, 'common-truss' | 'scissor-truss'>;

export const truss: Framing<TrussKind> = {
  frame({ roof, choice, profile, number, strips, kit }: FrameInput<TrussKind>): Framed | undefined {
    const [leftLeg, rightLeg] = profile.legs;
    const [left, right] = profile.bearings;
    if (leftLeg === undefined || rightLeg === undefined || right.kind !== 'beam' || left.kind !== 'beam') {
      kit.issues.push(
        error(
          'framing-unsupported',
          `${roof.path}/framing/kind`,
          "Trusses of one slope are outside the program's range.",
          {
            subject: roof.mark,
            found: choice.kind,
            expected: '"rafter" on a shed roof',
          },
        ),
      );
      return undefined;
    }
    if (profile.ridge !== undefined) {
      kit.issues.push(
        error(
          'ridge-beam-under-trusses',
          `${roof.path}/ridgeBeam`,
          'Trusses span from eave to eave and bear on no ridge beam.',
          {
            subject: roof.mark,
            found: profile.ridge[0].part,
            expected: 'no "ridgeBeam", or rafters',
          },
        ),
      );
      return undefined;
    }
    const made = makeSection<'solid'>(
      { kind: 'solid', size: choice.chord, ...choice.wood },
      { choice: choice.chord, path: `${roof.path}/framing/chord` },
    );
    if (!made.ok) {
      kit.issues.push(
        error('section-unknown', `${roof.path}/framing/chord`, made.message, {
          found: made.found,
          expected: made.expected,
        }),
      );
      return undefined;
    }
    const chord = made.section;
    const tan = Math.tan(roof.pitch);
    const plumb = chord.d / Math.cos(roof.pitch);
    const outer = [left.seat.at - left.seat.width / 2, right.seat.at + right.seat.width / 2] as const;
    const width = Math.max(left.seat.width, right.seat.width);
    const span = outer[1] - outer[0];
    const height = choice.heel + (span / 2) * tan;
    if (choice.heel < plumb - 1e-6) {
      kit.issues.push(
        error(
          'heel-too-low',
          `${roof.path}/framing/heel`,
          'The top chord would cut into the beam: the heel is lower than the chord is deep.',
          {
            subject: roof.mark,
            found: inches(choice.heel),
            expected: `${inches(plumb)} or more`,
          },
        ),
      );
      return undefined;
    }
    const crown = (span / 2 - width) * Math.tan(choice.bottomPitch);
    const chords = plumb + chord.d / Math.cos(choice.bottomPitch);
    if (choice.bottomPitch < 0 || choice.bottomPitch >= roof.pitch || height - crown < chords + chord.d) {
      kit.issues.push(
        error(
          'bottom-chord-too-steep',
          `${roof.path}/framing/bottomPitch`,
          'Top and bottom chords leave no depth for a truss at the middle.',
          {
            subject: roof.mark,
            expected: 'about half the roof pitch, e.g. "2/12" under "4/12"',
          },
        ),
      );
      return undefined;
    }

    const overall = rightLeg.eave - leftLeg.eave;
    const weight = (choice.weight * span) / 12;
    // Spread over the whole axis so that weight × length is the truss's weight.
    const section: Section = { ...chord, label: `${chord.label} chords`, weight: weight / overall };
    const overhang: readonly [number, number] = [outer[0] - leftLeg.eave, rightLeg.eave - outer[1]];
    const inner = `T${number('T')}`;
    const gable = `T${number('T')}`;
    const sheathed = roof.finish.sheathing !== '';
    const members: Member[] = [];
    const seats: Seat[] = [];
    const count = new Map<string, number>();
    for (const [i, l] of profile.stations.entries()) {
      const atEnd = i === 0 || i === profile.stations.length - 1;
      const mark = atEnd ? gable : inner;
      const n = (count.get(mark) ?? 0) + 1;
      count.set(mark, n);
      const id = `${mark}-${serial(n)}`;
      members.push({
        id,
        mark,
        role: atEnd ? 'gable-truss' : 'truss',
        section,
        start: toHouse(profile.axes, leftLeg.eave, l, roof.bearing),
        end: toHouse(profile.axes, rightLeg.eave, l, roof.bearing),
        up: { x: 0, y: 0, z: 1 },
        length: overall,
        state: 'new',
        strips: strips[i]!,
        truss: {
          kind: choice.kind,
          span,
          topPitch: roof.pitch,
          bottomPitch: choice.bottomPitch,
          heel: choice.heel,
          overhang,
          chordDepth: chord.d,
          bearing: width,
          ...(choice.slides === undefined ? {} : { slides: choice.slides === 'left' ? 0 : 1 }),
          weight,
          height,
        },
        roof: roof.mark,
        notch: 0,
        cuts: ['by the truss plant', 'plumb cut tails'],
        unbraced: { top: sheathed ? 0 : choice.spacing, bottom: span },
        path: `${roof.path}/framing`,
      });
      for (const b of [left, right]) {
        seats.push({
          kind: 'truss-to-beam',
          member: id,
          support: b.part,
          at: toHouse(profile.axes, b.seat.at, l, roof.bearing),
          contact: { length: b.seat.width, width: chord.b },
        });
      }
    }
    const eave = (out: number): number => roof.bearing + choice.heel - out * tan;
    return {
      members,
      seats,
      tails: [members, members],
      tops: new Map([
        [left.part, roof.bearing],
        [right.part, roof.bearing],
      ]),
      eaves: [eave(overhang[0]), eave(overhang[1])],
      plumb,
    };
  },
};
