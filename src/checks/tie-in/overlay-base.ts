/** What the overlay stands on, and where its water goes. */
import { oldAt } from '../../structure/tie-in/frame.js';
import type { Check, Finding } from '../contract.js';
import { failed, measured, notEvaluated } from '../finding.js';
import { overlayAt, overlaysOf } from './overlay-load.js';
import { oldRoofOf, overlayOf } from './overlay-loads.js';

const PRACTICE = 'common practice, no source';

export const overlayBase: Check = {
  id: 'overlay-base',
  title: 'Old roof under the valley plates',
  subjects: overlaysOf,
  run(subject, ctx): Finding {
    const o = overlayAt(ctx, subject.id);
    const spec = overlayOf(ctx, subject.id);
    if (!o || !spec) return notEvaluated(PRACTICE, 'the overlay was not placed');
    if (spec.oldCovering === 'kept')
      return failed(
        PRACTICE,
        'Valley plates stand on the old covering: they rock on it and their fasteners tear it. Take it off under the overlay and its valleys ("oldCovering": "removed").',
      );
    const old = oldRoofOf(ctx, o)?.framing;
    if (!old)
      return notEvaluated(
        PRACTICE,
        'Nobody has looked at the old roof. Needed: its rafters or trusses, their spacing, its sheathing ("framing" of the house roof).',
      );
    return {
      status: 'pass',
      demand: 0,
      capacity: 0,
      ratio: 0,
      unit: '',
      combination: '',
      clause: PRACTICE,
      note: `Old covering off; the old sheathing (${old.sheathing}) stays in one piece under the overlay, for it holds the old ${old.kind} (${old.size} at ${old.spacing} in) sideways.`,
    };
  },
};

/** Least slope of a valley for shingles. */
const LEAST = 2 / 12;

export const overlayWater: Check = {
  id: 'overlay-water',
  title: 'Valleys and where their water goes',
  subjects: overlaysOf,
  run(subject, ctx, rec): Finding {
    const clause = 'IRC 2018 R905.2.8.2, R905.2.2 (recalled)';
    const o = overlayAt(ctx, subject.id);
    if (!o) return notEvaluated(clause, 'the overlay was not placed');
    const roof = oldRoofOf(ctx, o);
    const drop = oldAt(o, o.start) - oldAt(o, 0);
    if (roof?.gutter === undefined)
      return notEvaluated(
        clause,
        `The valleys end ${Math.round(o.start)} in up the old slope and drain over its eave. Needed: whether that eave has a gutter ("gutter" of the house roof).`,
      );
    if (!roof.gutter)
      return failed(
        clause,
        `The valleys drain over the old eave, ${Math.round(drop)} in below their feet, which has no gutter: their water would fall beside the posts. Hang a gutter there on both sides of the new roof.`,
      );
    return measured(
      {
        demand: LEAST,
        capacity: o.shape.valleySlope,
        unit: '',
        clause,
        formula: '(2/12) / slope of the valley',
        note: `The valleys fall ${(12 * o.shape.valleySlope).toFixed(1)} in 12 onto the old slope, ${Math.round(o.start)} in above its eave and gutter on both sides of the new roof.`,
        remedy: `The valleys fall only ${(12 * o.shape.valleySlope).toFixed(1)} in 12, less than 2: a steeper new roof.`,
        prescriptive: true,
      },
      rec,
    );
  },
};
