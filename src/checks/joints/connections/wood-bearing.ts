/** Wood pressing squarely on wood over a stated face, at whatever angle each member's grain makes. NDS 2018 3.10. */

import { formatLength } from '../../../base/quantity/index.js';
import type { Recorder } from '../../../base/trace.js';
import { dot, length, type Vec3 } from '../../../base/vec.js';
import type { WoodBearing } from '../../../project/connections.js';
import type { Member } from '../../../structure/model.js';
import { hankinson } from '../../codes/nds-2018/index.js';
import { say } from '../../codes/say.js';
import { designValue, WET_REFUSED } from '../../members/design.js';
import type { Held, Hold, PartKind } from './contract.js';
import { perDuration } from './durations.js';
import { grainOf } from './place.js';

export const woodBearing: PartKind<WoodBearing> = {
  words: (part) => `wood on wood, ${formatLength(part.length)} x ${formatLength(part.width)}`,
  layout: () => '',
  care: () => 'bearing faces cut square and tight',
  hold(part, place): Hold {
    const faces = [place.upper, place.lower].map((member) => ({
      member,
      grain: grainOf(member),
      strength: perDuration((CD, rec) => strengthOf(member, CD, rec)),
    }));
    return (force, CD, rec) => pressed(part, faces, force, CD, rec);
  },
};

/** Along and across the grain, psi; undefined where the material may not be used so. */
interface Strength {
  readonly Fc: number | undefined;
  readonly FcPerp: number | undefined;
}

const strengthOf = ({ section }: Member, CD: number, rec?: Recorder): Strength => ({
  Fc: designValue('Fc', section, { CD }, rec),
  FcPerp: designValue('FcPerp', section, {}, rec),
});

/** A member, the unit vector of its grain, and its strength by load duration. */
interface Face {
  readonly member: Member;
  readonly grain: Vec3;
  readonly strength: (CD: number, rec?: Recorder) => Strength;
}

function pressed(part: WoodBearing, faces: readonly Face[], force: Vec3, CD: number, rec?: Recorder): Held {
  const R = length(force);
  const stress = R / (part.length * part.width);
  rec?.step({
    symbol: 'fc',
    meaning: 'bearing stress on the face',
    formula: 'R / (l·w)',
    substituted: `${say(R)} / (${say(part.length)}·${say(part.width)})`,
    value: stress,
    unit: 'psi',
    clause: 'NDS 2018 3.10',
  });
  let ratio = 0;
  for (const { member: m, grain, strength } of faces) {
    const { Fc, FcPerp } = strength(CD, rec);
    if (Fc === undefined || FcPerp === undefined) return { ratio: 0, faults: [], what: '', outside: WET_REFUSED };
    const theta = Math.acos(Math.min(1, Math.abs(dot(force, grain)) / R));
    const F = hankinson(Fc, FcPerp, theta, rec);
    rec?.step({
      symbol: 'use',
      meaning: `bearing stress over the strength of ${m.id}`,
      formula: "fc / Fθ'",
      substituted: `${say(stress)} / ${say(F)}`,
      value: stress / F,
      unit: '',
      clause: 'NDS 2018 3.10.3',
    });
    ratio = Math.max(ratio, stress / F);
  }
  return { ratio, what: 'bearing: give it a larger face or harder wood', faults: [] };
}
