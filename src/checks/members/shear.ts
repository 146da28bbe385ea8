/**
 * Horizontal shear of beams and rafters, and at the seat cut of a rafter. The whole shear at the face is taken: the load
 * within a depth of the support is not left out as 3.4.3.1 would allow. NDS 2018 3.4.
 */
import { distinctCombinations, mostOf } from '../../analysis/index.js';
import type { Recorder } from '../../base/trace.js';
import type { Combination } from '../../loads/model.js';
import type { MemberRole } from '../../structure/model.js';
import { fv, VrNotchTension } from '../codes/nds-2018/index.js';
import { say } from '../codes/say.js';
import type { Check, CheckContext } from '../contract.js';
import { measured, notApplicable, outsideScope } from '../finding.js';
import { raised, raiseToStatics } from '../hand.js';
import { designValue, WET_REFUSED } from './design.js';
import { place, source } from './ends.js';
import { combineInto, sizeText } from './scan.js';
import { type Loaded, loadedMembers, memberSubjects, noForces } from './subjects.js';

const CLAUSE = 'NDS 2018 3.4.2';

interface Worst {
  readonly on: Loaded;
  readonly combination: Combination;
  readonly station: number;
  readonly V: number;
}

/** Largest |V|/CD over members and combinations: strength is in proportion to CD and to nothing else that changes. */
function worstShear(ctx: CheckContext, loaded: readonly Loaded[]): Worst | undefined {
  let worst: Worst | undefined;
  let most = 0;
  for (const on of loaded) {
    const { effects } = on;
    const values = new Float64Array(effects.stations.length);
    for (const combination of distinctCombinations(effects, ctx.loads.combinations)) {
      if (mostOf(effects.v, combination) / combination.CD <= most) continue;
      combineInto(values, effects.v, combination);
      for (let i = 0; i < values.length; i++) {
        const x = Math.abs(values[i]!) / combination.CD;
        if (x > most) {
          most = x;
          worst = { on, combination, station: i, V: values[i]! };
        }
      }
    }
  }
  return worst;
}

function recordShear(ctx: CheckContext, { on, combination, station, V }: Worst, rec?: Recorder): void {
  rec?.heading(`${on.member.id}: ${on.member.section.label}, ${combination.id}`);
  rec?.step({
    symbol: 'V',
    meaning: `shear ${place(on.member, on.effects.stations[station]!)}, ${source(on.member)}`,
    formula: combination.label,
    substituted: sizeText(ctx, combination, (c) => on.effects.v[c]![station]!),
    value: Math.abs(V),
    unit: 'lb',
    clause: combination.clause,
    from: [on.member.path],
    note: 'taken at the support; the load within a depth of it is not left out',
  });
}

export const shearCheck = (role: MemberRole, title: string): Check => ({
  id: `${role}-shear`,
  title,
  subjects: (ctx) => memberSubjects(ctx, role),
  run(subject, ctx, rec) {
    const loaded = loadedMembers(ctx, subject.id);
    if (!loaded) return noForces(CLAUSE);
    const worst = worstShear(ctx, loaded);
    if (!worst) return notApplicable(CLAUSE, 'no combination shears this member');
    const { member } = worst.on;
    recordShear(ctx, worst, rec);
    const raise = raiseToStatics(ctx, (about) => about.startsWith(`${member.id} on `));
    const stress = fv(raised(Math.abs(worst.V), 'V', 'lb', raise, rec), member.section.b, member.section.d, rec);
    const Fv = designValue('Fv', member.section, { CD: worst.combination.CD }, rec);
    if (Fv === undefined) return outsideScope('NDS 2018 8.1.4', WET_REFUSED);
    return measured(
      {
        demand: stress,
        capacity: Fv,
        unit: 'psi',
        combination: worst.combination.id,
        clause: CLAUSE,
        formula: "fv / Fv'",
        remedy: `${member.id} is overstressed in shear: use a deeper, wider or stronger section.`,
      },
      rec,
    );
  },
});

/** Deepest cut allowed at an end, as a share of the depth (NDS 2018 4.4.3). */
const END_NOTCH = 1 / 4;

export const notchCheck = (role: MemberRole, title: string): Check => ({
  id: `${role}-notch`,
  title,
  subjects: (ctx) => memberSubjects(ctx, role),
  run(subject, ctx, rec) {
    const clause = 'NDS 2018 3.4.3.2, 4.4.3';
    const loaded = loadedMembers(ctx, subject.id);
    if (!loaded) return noForces(clause);
    if (loaded.every(({ member }) => member.notch <= 0))
      return notApplicable(clause, 'no seat is cut into this member');
    // The seat is at a bearing, and shear is greatest at one: the largest shear anywhere is taken at the cut.
    const worst = worstShear(ctx, loaded);
    if (!worst) return notApplicable(clause, 'no combination shears this member');
    const { member } = worst.on;
    const { section } = member;
    const left = section.d - member.notch;
    recordShear(ctx, worst, rec);
    rec?.step({
      symbol: 'dn',
      meaning: 'depth left over the seat',
      formula: 'd − notch',
      substituted: `${say(section.d)} − ${say(member.notch)}`,
      value: left,
      unit: 'in',
      clause,
      from: [member.path],
    });
    const Fv = designValue('Fv', section, { CD: worst.combination.CD }, rec);
    if (Fv === undefined) return outsideScope('NDS 2018 8.1.4', WET_REFUSED);
    const tooDeep = member.notch > section.d * END_NOTCH + 1e-6;
    return measured(
      {
        demand: Math.abs(worst.V),
        capacity: VrNotchTension(Fv, section.b, section.d, left, rec),
        unit: 'lb',
        combination: worst.combination.id,
        clause,
        formula: "V / Vr'",
        mustFail: tooDeep,
        remedy: tooDeep
          ? `The seat cut of ${member.id} is ${member.notch.toFixed(2)} in deep, over a quarter of its depth: use a narrower beam, a lower pitch or a deeper rafter.`
          : `${member.id} is too weak in shear at its seat cut: cut less deep or use a deeper rafter.`,
      },
      rec,
    );
  },
});
