/** Uplift of an overlay and the side load that its sheathing hands over, beside what a named professional states. */
import { say } from '../codes/say.js';
import type { Check, CheckContext, Finding } from '../contract.js';
import { measured, notEvaluated, outsideScope } from '../finding.js';
import { overlayAt, overlaysOf } from './overlay-load.js';
import { overlayLoads, overlayOf } from './overlay-loads.js';

export const overlayUplift: Check = {
  id: 'overlay-uplift',
  title: 'Uplift of the overlay on the existing roof',
  subjects: overlaysOf,
  run(subject, ctx, rec): Finding {
    const edition = ctx.project.basis.codes.loads;
    const clause = `ASCE ${edition} 2.4.1, 27.3.3`;
    const o = overlayAt(ctx, subject.id);
    const wind = ctx.loads.attachedWind?.find((a) => a.roof === subject.id);
    if (!o || wind?.outcome !== 'included')
      return notEvaluated(clause, 'the wind beside the house was not worked out, see the wind check');
    const q = overlayLoads(ctx, o);
    const net = Math.max(0, 0.6 * -wind.up - 0.6 * q.dead);
    rec?.step({
      symbol: 'u',
      meaning: 'net uplift on plan: the pressure this set carries beside the house, less dead load',
      formula: '0.6 W − 0.6 D',
      substituted: `0.6 · ${say(-wind.up)} − 0.6 · ${say(q.dead)}`,
      value: net,
      unit: 'psf',
      clause,
      from: [o.path],
    });
    const { up } = overlayOf(ctx, o.roof)?.statement ?? {};
    if (up?.state !== 'given' || up.from === '')
      return outsideScope(
        clause,
        `The old roof has to hold ${net.toFixed(1)} psf of uplift, more at the ridge and the edges, where this program reads no figure for a closed roof. A licensed professional has to state what it may be given.`,
      );
    return measured(
      {
        demand: net,
        capacity: up.value,
        unit: 'psf',
        clause: `${clause}; stated: ${up.from}`,
        formula: 'u / u stated',
        note: `Taken as stated (${up.from}), which also covers the greater pressures at ridge and edges of a closed roof: this program reads no figure for them.`,
        remedy: `The overlay lifts more than ${up.from} allows: more fasteners by a new statement.`,
      },
      rec,
    );
  },
};

/** Largest side load put on the whole cover in any direction and combination, lb. */
function sideLoad(ctx: CheckContext): number {
  const applied = new Map(ctx.effects.balance.map((b) => [b.case, b.applied]));
  let most = 0;
  for (const axis of ['x', 'y'] as const)
    for (const combo of ctx.loads.combinations) {
      const sum = combo.terms.reduce((t, { case: c, factor }) => {
        const force = applied.get(ctx.loads.cases[c]!.id);
        return t + factor * (force?.[axis] ?? 0);
      }, 0);
      most = Math.max(most, Math.abs(sum));
    }
  return most;
}

export const overlaySide: Check = {
  id: 'overlay-side',
  title: 'Side load through the joined sheathing',
  subjects: overlaysOf,
  run(subject, ctx, rec): Finding {
    const clause = '2018 IEBC 502.5, 503.4';
    const V = sideLoad(ctx);
    rec?.step({
      symbol: 'V',
      meaning:
        'side load of the whole cover, which posts and braces carry by themselves; the joined sheathing can hand part of it to the house',
      formula: 'sum of all side load on the cover, worst combination',
      substituted: say(V),
      value: V,
      unit: 'lb',
      clause,
      from: [subject.path],
    });
    const { side } = overlayOf(ctx, subject.id)?.statement ?? {};
    if (side?.state !== 'given' || side.from === '' || !side.value)
      return outsideScope(
        clause,
        `The sheathing joins the cover to the house: up to ${Math.round(V)} lb of side load may go into the old roof. A licensed professional has to state that it may.`,
      );
    return {
      status: 'pass',
      demand: V,
      capacity: 0,
      ratio: 0,
      unit: 'lb',
      combination: '',
      clause,
      note: `Stated (${side.from}): the house may take the side load that the joined sheathing hands it, up to ${Math.round(V)} lb. The cover’s own posts are checked for all of it.`,
    };
  },
};
