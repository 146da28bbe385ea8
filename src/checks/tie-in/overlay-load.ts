/**
 * Dead load and loads on single old rafters from a roof framed on top of the old one, beside what a named professional states
 * the old roof may be given. Without a statement the set stays preliminary unless the addition stays within the 5 percent of
 * the existing-building code.
 */
import type { Recorder } from '../../base/trace.js';
import type { OverlayPlaced } from '../../structure/model.js';
import { say } from '../codes/say.js';
import type { Check, CheckContext, Finding } from '../contract.js';
import { measured, notEvaluated, outsideScope } from '../finding.js';
import { GRAVITY_SHARE } from '../house/existing-building.js';
import { type OverlayLoads, oldRoofOf, overlayLoads, overlayOf } from './overlay-loads.js';

const CLAUSE = '2018 IEBC 502.4, 503.3';
const STATICS = 'statics';

export const overlaysOf = (ctx: CheckContext) =>
  (ctx.structure.overlays ?? []).map((o) => ({ id: o.roof, path: o.path }));

export const overlayAt = (ctx: CheckContext, roof: string): OverlayPlaced | undefined =>
  ctx.structure.overlays?.find((o) => o.roof === roof);

function steps(o: OverlayPlaced, q: OverlayLoads, rec?: Recorder): void {
  if (!rec) return;
  const at = [o.path];
  const feet2 = q.area / 144;
  rec.step({
    symbol: 'A',
    meaning:
      'plan area of the new roof on the old one, half a bay past the last frame of the cover to the end of the ridge',
    formula: 'both sides',
    substituted: o.faces.map((f) => say(f.planArea / 144)).join(' + '),
    value: feet2,
    unit: 'ft²',
    clause: STATICS,
    from: at,
  });
  rec.step({
    symbol: 'D',
    meaning:
      'dead load on plan: roof layers, and fill rafters, plates, ridge board and fascia spread over it; nothing is taken off for the old covering',
    formula: 'Σ layers / cos + W / A',
    substituted: `${say(q.layers)} + ${say(q.members)} / ${say(feet2)}`,
    value: q.dead,
    unit: 'psf',
    clause: STATICS,
    from: at,
  });
  rec.step({
    symbol: q.liveKind,
    meaning: 'on the same plan area; it lay on the old roof before and is moved, not added',
    formula: 'as on the cover',
    substituted: say(q.live),
    value: q.live,
    unit: 'psf',
    clause: STATICS,
  });
  rec.step({
    symbol: 'V',
    meaning: `load at the seat of ${q.worst.mark}, the heaviest fill rafter; a pair leans together at the ridge, so all of it comes to the plates`,
    formula: `(D + ${q.liveKind}) · tributary plan area`,
    substituted: `(${say(q.dead)} + ${say(q.live)}) · ${say(q.worst.down / (q.dead + q.live))}`,
    value: q.worst.down,
    unit: 'lb',
    clause: STATICS,
  });
  rec.step({
    symbol: 'H',
    meaning: 'push of that pair outward along the old roof, held by the plate’s fasteners and the sheathing',
    formula: 'V / (2 · slope)',
    substituted: `${say(q.worst.down)} / (2 · ${say(o.shape.slope)})`,
    value: q.worst.thrust,
    unit: 'lb',
    clause: STATICS,
  });
  rec.step({
    symbol: 'w',
    meaning: 'load along the valley plate on plan, where it is heaviest',
    formula: 'V over the plate between two seats',
    substituted: say(q.plate),
    value: q.plate,
    unit: 'lb/ft',
    clause: STATICS,
  });
}

const words = (q: OverlayLoads): string =>
  `${q.dead.toFixed(1)} psf of dead load on ${(q.area / 144).toFixed(0)} sq ft of old roof; up to ${Math.round(q.plate)} lb/ft along the valley plates, ${Math.round(q.point)} lb on one old rafter and ${Math.round(q.worst.thrust)} lb outward at a seat, with ${q.live.toFixed(0)} psf ${q.liveKind === 'S' ? 'snow' : 'roof live load'}`;

export const overlayLoad: Check = {
  id: 'overlay-load',
  title: 'Dead load of the overlay on the existing roof',
  subjects: overlaysOf,
  run(subject, ctx, rec): Finding {
    const o = overlayAt(ctx, subject.id);
    if (!o) return notEvaluated(CLAUSE, 'the overlay was not placed');
    const q = overlayLoads(ctx, o);
    steps(o, q, rec);
    const old = oldRoofOf(ctx, o)?.framing;
    const share = old && q.dead / (old.dead + q.live);
    if (old && share !== undefined)
      rec?.step({
        symbol: 'share',
        meaning: 'dead load added over the gravity load the old roof carries today, to be held against 5 percent',
        formula: `D / (D today + ${q.liveKind})`,
        substituted: `${say(q.dead)} / (${say(old.dead)} + ${say(q.live)})`,
        value: share,
        unit: '',
        clause: CLAUSE,
        from: ['/house/roofs'],
      });
    const statement = overlayOf(ctx, o.roof)?.statement;
    if (statement?.down.state === 'given' && statement.down.from !== '')
      return measured(
        {
          demand: q.dead,
          capacity: statement.down.value,
          unit: 'psf',
          clause: `stated: ${statement.down.from}`,
          formula: 'D / D stated',
          note: `Existing roof: ${words(q)}. Taken as stated (${statement.down.from}); the program has not checked the old rafters.`,
          remedy: `The old roof gets more than ${statement.down.from} allows: ${words(q)}. A lighter roof, strengthening, or a new statement.`,
        },
        rec,
      );
    if (share !== undefined && share <= GRAVITY_SHARE)
      return measured(
        {
          demand: share,
          capacity: GRAVITY_SHARE,
          unit: '',
          clause: CLAUSE,
          formula: 'share / 0.05',
          note: `Existing roof: ${words(q)}; within 5 percent of what it carries today.`,
          remedy: '',
        },
        rec,
      );
    const by =
      share === undefined
        ? 'what the old roof carries today is not known'
        : `${(100 * share).toFixed(0)} percent of what it carries today, over 5`;
    return outsideScope(
      CLAUSE,
      `Existing roof: ${words(q)} (${by}). A licensed professional has to state what the old roof may be given.`,
    );
  },
};

export const overlayPoint: Check = {
  id: 'overlay-point',
  title: 'Valley plate on one old rafter or truss',
  subjects: overlaysOf,
  run(subject, ctx, rec): Finding {
    const o = overlayAt(ctx, subject.id);
    if (!o) return notEvaluated(STATICS, 'the overlay was not placed');
    const q = overlayLoads(ctx, o);
    const { point } = overlayOf(ctx, o.roof)?.statement ?? {};
    if (point?.state !== 'given' || point.from === '')
      return outsideScope(
        CLAUSE,
        `${Math.round(q.point)} lb come to one old rafter where a valley plate crosses it. A licensed professional has to state what it may be given there.`,
      );
    rec?.step({
      symbol: 'P',
      meaning: `load on one old rafter at the seat of ${q.worst.mark}: the whole of it, and more where old rafters stand farther apart than the seats`,
      formula: 'V · max(1, old spacing / step of the seats)',
      substituted: `${say(q.worst.down)} · ${say(q.point / q.worst.down)}`,
      value: q.point,
      unit: 'lb',
      clause: STATICS,
      from: [o.path],
    });
    return measured(
      {
        demand: q.point,
        capacity: point.value,
        unit: 'lb',
        clause: `stated: ${point.from}`,
        formula: 'P / P stated',
        note: `Taken as stated (${point.from}).`,
        remedy: `One old rafter gets more than ${point.from} allows: closer fill rafters, a lighter roof, or a new statement.`,
      },
      rec,
    );
  },
};
