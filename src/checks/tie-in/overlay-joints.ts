/** What holds the pieces of an overlay together, and the push of its rafters at their seats: by a named professional's statement. */
import { say } from '../codes/say.js';
import type { Check, Finding } from '../contract.js';
import { measured, notEvaluated } from '../finding.js';
import { overlayJointsOf } from './overlay-fastening.js';
import { overlayAt, overlaysOf } from './overlay-load.js';
import { overlayLoads, overlayOf } from './overlay-loads.js';

const STATICS = 'statics';

export const overlayThrust: Check = {
  id: 'overlay-thrust',
  title: 'Outward push of a fill rafter at its seat',
  subjects: overlaysOf,
  run(subject, ctx, rec): Finding {
    const o = overlayAt(ctx, subject.id);
    if (!o) return notEvaluated(STATICS, 'the overlay was not placed');
    const { worst } = overlayLoads(ctx, o);
    rec?.step({
      symbol: 'H',
      meaning: `outward push at the seat of ${worst.mark}: the pair leans on itself at the ridge, no tie crosses the old roof`,
      formula: 'even load on a pair of rafters hinged at ridge and seats',
      substituted: say(worst.thrust),
      value: worst.thrust,
      unit: 'lb',
      clause: STATICS,
      from: [o.path],
    });
    const { thrust } = overlayOf(ctx, o.roof)?.statement ?? {};
    if (thrust?.state !== 'given' || thrust.from === '')
      return notEvaluated(
        STATICS,
        `Each fill rafter pushes its valley plate outward by up to ${Math.ceil(worst.thrust)} lb (${worst.mark}), and nothing in the file says what takes it. Needed: the push that plate, fasteners and old framing may be given, stated by a licensed professional ("thrust" of the statement).`,
      );
    return measured(
      {
        demand: worst.thrust,
        capacity: thrust.value,
        unit: 'lb',
        clause: `stated: ${thrust.from}`,
        formula: 'H / H stated',
        note: `Taken as stated (${thrust.from}); the program has not checked plate, fasteners and old framing for it.`,
        remedy: `A fill rafter pushes its seat by more than ${thrust.from} allows: closer fill rafters, a lighter or steeper roof, or a new statement.`,
      },
      rec,
    );
  },
};

export const overlayJoints: Check = {
  id: 'overlay-joints',
  title: 'Joints of the roof over the house',
  subjects: overlaysOf,
  run(subject, ctx, rec): Finding {
    const clause = 'stated by a professional';
    const o = overlayAt(ctx, subject.id);
    if (!o) return notEvaluated(clause, 'the overlay was not placed');
    const joints = overlayJointsOf(ctx, o);
    const open = joints.filter((j) => j.how === '' || j.from === '');
    if (open.length > 0)
      return notEvaluated(
        clause,
        `Fastening not stated: ${open.map((j) => j.what).join('; ')}. Needed: a licensed professional's words for each ("rafterToPlate", "rafterToRidge", "ridgeToFrame", "fastening" of the statement).`,
      );
    return measured(
      {
        demand: 0,
        capacity: joints.length,
        unit: 'joints without fastening',
        clause: `stated: ${joints[0]!.from}`,
        formula: 'joints without a stated fastening ≤ 0',
        note: `Taken as stated (${joints[0]!.from}): ${joints.map((j) => `${j.what}: ${j.how}`).join('; ')}.`,
        remedy: '',
      },
      rec,
    );
  },
};
