/** The cast-in anchor bolt of a post base, where the choices name one. ACI 318-14 chapter 17, strength combinations. */
import type { Recorder } from '../../base/trace.js';
import type { AnchorChoice } from '../../project/model.js';
import {
  anchorInteraction,
  BOLTS,
  breakoutShear,
  breakoutTension,
  countedEmbedment,
  countedTensile,
  pryout,
  pullout,
  steelShear,
  steelTension,
} from '../codes/aci-318-14/index.js';
import type { Check, CheckContext } from '../contract.js';
import { failed, measured, notApplicable, notEvaluated, outsideScope } from '../finding.js';
import { noForces } from '../members/subjects.js';
import { type Actions, actionsUnder, momentAt, NO_MOMENT, recordActions } from './actions.js';
import { footingSubjects, type LoadedFooting, loadedFootings } from './footing.js';

const CLAUSE = 'ACI 318-14 17';
/** Concrete kept under the head of the bolt, in (cover cast against earth, 20.6.1.3, recalled). */
const COVER = 3;

/** Half side of the square that fits on the top of the footing round the bolt: every edge is taken that near. */
const edgeOf = ({ footing }: LoadedFooting): number =>
  footing.pierDiameter > 0 ? footing.pierDiameter / (2 * Math.SQRT2) : footing.size / 2;

interface Strength {
  readonly tension: number;
  readonly shear: number;
}

function strengthOf(on: LoadedFooting, x: AnchorChoice, rec?: Recorder): Strength | undefined {
  const bolt = BOLTS.find((b) => Math.abs(b.d - x.bolt) < 1e-3);
  if (!bolt) return undefined;
  const { fc } = on.footing;
  const futa = countedTensile(x.fu, x.fy);
  const c = edgeOf(on);
  rec?.step({
    symbol: 'c',
    meaning: 'from the bolt to the edges of the square that fits on the concrete',
    formula: on.footing.pierDiameter > 0 ? 'D/(2·√2)' : 'B/2',
    substituted: `${on.footing.pierDiameter > 0 ? on.footing.pierDiameter : on.footing.size}`,
    value: c,
    unit: 'in',
    clause: 'statics',
    from: [on.footing.path],
  });
  const Ncb = breakoutTension(fc, x.embedment, c, rec);
  const tension = Math.min(steelTension(bolt.Ase, futa, rec), Ncb, pullout(fc, bolt.head, rec));
  // Where the concrete is shallow for its edge, a nearer edge is assumed, which errs to the safe side.
  const deep = Math.min(c, (on.footing.top - on.footing.bottom) / 1.5);
  const shear = Math.min(
    steelShear(bolt.Ase, futa, rec),
    breakoutShear(fc, bolt.d, x.embedment, deep, rec),
    pryout(Ncb, countedEmbedment(x.embedment, c), rec),
  );
  return { tension, shear };
}

export const anchor: Check = {
  id: 'anchor',
  title: 'Anchor bolt of the post base',
  subjects: footingSubjects,
  run(subject, ctx: CheckContext, rec) {
    const loaded = loadedFootings(ctx, subject.id);
    if (!loaded) return noForces(CLAUSE);
    const first = loaded[0]!;
    const x = ctx.project.choices.anchors?.[first.footing.choice];
    if (!x)
      return notApplicable(CLAUSE, 'no anchor is named for this footing: the post base answers for its fastening');
    const { footing } = first;
    if (footing.embedded || footing.onSlab)
      return notApplicable(CLAUSE, 'no pier or pad stands here to cast a bolt in');
    const height = footing.top - footing.bottom;
    if (x.embedment + COVER > height)
      return failed(
        CLAUSE,
        `The bolt of ${footing.id} reaches ${x.embedment} in into concrete ${height.toFixed(0)} in thick: shorten it, ${COVER} in must stay under its head.`,
      );
    const strength = strengthOf(first, x);
    if (!strength) return notEvaluated(CLAUSE, `No values for a bolt of ${x.bolt} in: use 1/2, 5/8, 3/4, 7/8 or 1 in.`);
    let worst: { on: LoadedFooting; a: Actions; ratio: number } | undefined;
    for (const on of loaded) {
      for (const a of actionsUnder(ctx, on, ctx.loads.strength)) {
        if (momentAt(a, height) >= NO_MOMENT)
          return outsideScope(
            CLAUSE,
            `A single bolt holds no moment, and ${footing.id} has one at its top: a licensed professional must design the base.`,
          );
        const ratio = anchorInteraction(Math.max(0, -a.P) / strength.tension, a.V / strength.shear);
        if (!worst || ratio > worst.ratio) worst = { on, a, ratio };
      }
    }
    if (!worst || worst.ratio <= 0) return notApplicable(CLAUSE, 'nothing pulls or pushes at this post base');
    const { on, a } = worst;
    rec?.heading(`${on.footing.id}: ${x.bolt} in headed bolt, ${x.embedment} in deep, ${a.combination.id}`);
    recordActions(ctx, on, a, rec);
    strengthOf(on, x, rec);
    rec?.step({
      symbol: 'N, V',
      meaning: `pull and side force on the bolt over their least strengths ${strength.tension.toFixed(0)} and ${strength.shear.toFixed(0)} lb`,
      formula: 'max(0, −P)/φNn, √(Vx² + Vy²)/φVn',
      substituted: `${Math.max(0, -a.P).toFixed(0)}/${strength.tension.toFixed(0)}, ${a.V.toFixed(0)}/${strength.shear.toFixed(0)}`,
      value: Math.max(0, -a.P) / strength.tension,
      unit: '',
      clause: CLAUSE,
    });
    anchorInteraction(Math.max(0, -a.P) / strength.tension, a.V / strength.shear, rec);
    return measured(
      {
        demand: Math.max(0, -a.P),
        capacity: strength.tension,
        unit: 'lb',
        ratio: worst.ratio,
        combination: a.combination.id,
        clause: 'ACI 318-14 17.6',
        formula: 'tension and shear together',
        note: 'Bolt only; the post base keeps its own allowable load. No earthquake load is in it.',
        remedy: `The anchor bolt of ${on.footing.id} is too weak: a thicker or deeper bolt, or a wider pier.`,
      },
      rec,
    );
  },
};
