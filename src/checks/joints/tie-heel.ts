/**
 * Nails between a rafter tie and the rafter: single shear, driven square through the tie. They pass the whole tension of
 * the tie, and its compression under uplift. NDS 2018 12.3; the tie itself is checked as a member.
 */
import type { Recorder } from '../../base/trace.js';
import { type Fastener, NAILS } from '../../catalog/index.js';
import type { Combination } from '../../loads/model.js';
import type { Member } from '../../structure/model.js';
import { CMConnection, dowelBearing, lateralValue } from '../codes/nds-2018/index.js';
import { say } from '../codes/say.js';
import type { Check, CheckContext } from '../contract.js';
import { measured, notEvaluated, outsideScope } from '../finding.js';
import { combineInto, sumText } from '../members/scan.js';
import { type Loaded, loadedMembers, memberSubjects, noForces } from '../members/subjects.js';

const CLAUSE = 'NDS 2018 12.3';
/** Least penetration of a nail into the rafter, diameters; from 10 on its tip counts too (NDS 2018 12.1.6.4, 12.3.5.3, recalled). */
const LEAST = 6;
const FULL = 10;

const rafterOf = (ctx: CheckContext, tie: Member): Member | undefined => {
  const joint = ctx.structure.joints.find((j) => j.kind === 'tie-to-rafter' && j.ties[0]!.part === tie.id);
  return joint && ctx.structure.members.find((m) => m.id === joint.ties[1]!.part);
};

/** Allowable shear of one nail for a load duration of 1, lb; undefined where it reaches too little of the rafter. */
function nailShear(nail: Fastener, tie: Member, rafter: Member, rec?: Recorder): number | undefined {
  const [ls, tm] = [tie.section.b, rafter.section.b];
  const reach = (nail.length ?? 0) - ls;
  const p = Math.min(reach, tm);
  if (p < LEAST * nail.D - 1e-9) return undefined;
  // A tip of 2D that stays in the rafter and ends short of 10D counts half (lm = p − D).
  const through = reach >= tm + 2 * nail.D;
  const lm = through || p >= FULL * nail.D ? p : p - nail.D;
  rec?.step({
    symbol: 'p',
    meaning: `length of the ${nail.name} in the rafter; bearing length lm ${lm.toFixed(3)} in`,
    formula: 'nail length − tie thickness, at most the rafter',
    substituted: `${say(nail.length ?? 0)} − ${say(ls)}, at most ${say(tm)}`,
    value: p,
    unit: 'in',
    clause: 'NDS 2018 12.3.5.3',
    note: 'nail sizes and this clause recalled from memory: confirm',
  });
  const Fem = dowelBearing(rafter.section.values.G, nail.D, 0, true, rec);
  const Fes = dowelBearing(tie.section.values.G, nail.D, 0, true, rec);
  const { Z } = lateralValue({ D: nail.D, lm, ls, Fem, Fes, Fyb: nail.Fyb, thetaMax: 0 }, 'single', rec);
  const wet = tie.section.wet || rafter.section.wet;
  return Z * CMConnection('dowel-lateral', { wetAtFabrication: false, wetInService: wet }, nail.D, true, rec);
}

interface Worst {
  readonly on: Loaded;
  readonly combination: Combination;
  readonly station: number;
  readonly N: number;
}

/** The tie and combination that ask most of the nails, each force weighed by its load duration. */
function findWorst(ctx: CheckContext, loaded: readonly Loaded[]): Worst | undefined {
  let worst: Worst | undefined;
  let most = 0;
  for (const on of loaded) {
    const n = new Float64Array(on.effects.stations.length);
    for (const combination of ctx.loads.combinations) {
      combineInto(n, on.effects.n, combination);
      for (let i = 0; i < n.length; i++) {
        const asked = Math.abs(n[i]!) / combination.CD;
        if (asked <= most) continue;
        most = asked;
        worst = { on, combination, station: i, N: n[i]! };
      }
    }
  }
  return worst;
}

export const tieHeel: Check = {
  id: 'tie-heel',
  title: 'Nails between rafter tie and rafter',
  subjects: (ctx) => memberSubjects(ctx, 'tie'),
  run(subject, ctx, rec) {
    const loaded = loadedMembers(ctx, subject.id);
    if (!loaded) return noForces(CLAUSE);
    const worst = findWorst(ctx, loaded);
    const tie = (worst?.on ?? loaded[0]!).member;
    const { nails } = tie;
    const rafter = rafterOf(ctx, tie);
    if (!worst || !nails || !rafter) return notEvaluated(CLAUSE, 'no force was worked out in this tie');
    const nail = NAILS.find((f) => f.id === nails.nail);
    if (!nail)
      return outsideScope(
        CLAUSE,
        `“${nails.nail}” is not a smooth nail of the catalogue (${NAILS.map((f) => f.id).join(', ')}): a licensed professional has to judge it.`,
      );
    const { combination, station, N, on } = worst;
    rec?.heading(`${tie.id}: ${nails.count} ${nail.name}s at each end, ${combination.id}`);
    rec?.step({
      symbol: N < 0 ? 'C' : 'T',
      meaning: N < 0 ? 'compression in the tie' : 'tension in the tie: the thrust of the rafters',
      formula: combination.label,
      substituted: sumText(ctx, combination, (c) => on.effects.n[c]![station]!),
      value: Math.abs(N),
      unit: 'lb',
      clause: combination.clause,
      from: [tie.path],
    });
    const one = nailShear(nail, tie, rafter, rec);
    if (one === undefined)
      return measured(
        {
          demand: Math.abs(N),
          capacity: 0,
          unit: 'lb',
          combination: combination.id,
          clause: 'NDS 2018 12.1.6.4',
          formula: 'T / 0',
          remedy: `${nail.name}s reach less than ${LEAST} diameters into the rafter: use longer nails.`,
        },
        rec,
      );
    const capacity = nails.count * one * combination.CD;
    rec?.step({
      symbol: "n·Z'",
      meaning: 'allowable shear of the nails at one end',
      formula: 'n · Z · CM · CD',
      substituted: `${nails.count} · ${one.toFixed(1)} · ${combination.CD}`,
      value: capacity,
      unit: 'lb',
      clause: 'NDS 2018 11.3',
      from: [`${tie.path}/nails`],
    });
    return measured(
      {
        demand: Math.abs(N),
        capacity,
        unit: 'lb',
        combination: combination.id,
        clause: CLAUSE,
        formula: "T / (n·Z')",
        note: 'Space the nails so that the wood does not split; the code table of heel joint nails (IRC 2018 Table R802.5.2) may ask for more.',
        remedy: `The nails of ${tie.mark} hold less than the thrust: ${Math.ceil(Math.abs(N) / (one * combination.CD))} ${nail.name}s at each end, or a structural ridge beam.`,
      },
      rec,
    );
  },
};
