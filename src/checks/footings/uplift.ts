/** Wind lifting a footing out of the ground: net uplift against 0.6 of the concrete and of the soil standing on the pad. */
import { footingEnvelope } from '../../analysis/index.js';
import type { Recorder } from '../../base/trace.js';
import type { Footing } from '../../structure/model.js';
import { say } from '../codes/say.js';
import { UPLIFT_DEAD_FACTOR, upliftResistance } from '../codes/statics/index.js';
import type { Check, CheckContext } from '../contract.js';
import { measured, notApplicable, ratioOf } from '../finding.js';
import { sumText } from '../members/scan.js';
import { noForces } from '../members/subjects.js';
import { groundBeside, sourced } from './actions.js';
import { footingSubjects, footingWeights, type LoadedFooting, loadedFootings, recordWeights } from './footing.js';

const CLAUSE = 'ASCE 7-16 2.4.1 (7)';

/** Depth at the surface where friction is not counted, in: loosened by frost and digging (common practice, no source). */
const LOOSE_TOP = 12;

/** Friction of undisturbed soil on concrete cast straight against it, where the user gave it with a source. */
function skinFriction(ctx: CheckContext, f: Footing, rec?: Recorder): number {
  const value = sourced(ctx.project.basis.soil.skinFriction);
  const cast = f.padThickness === 0 && f.pierDiameter > 0 && f.embedded?.cast !== false;
  const length = groundBeside(ctx, f) - f.bottom - LOOSE_TOP;
  if (value === undefined || !cast || length <= 0) return 0;
  const R = (value * Math.PI * f.pierDiameter * length) / 144;
  rec?.step({
    symbol: 'Rf',
    meaning: 'friction of the soil on the shaft, its top 12 in left out',
    formula: 'f·π·D·(d − 12)/144',
    substituted: `${say(value)} · π · ${say(f.pierDiameter)} · ${length.toFixed(1)}/144`,
    value: R,
    unit: 'lb',
    clause: 'IBC 2018 1810.3.3.1.5',
    from: ['/basis/soil/skinFriction'],
    note: 'allowable value as given; clause recalled',
  });
  return R;
}

/** What holds a footing down: 0.6 of concrete and soil over it, and friction. Tamped backfill round a post holds nothing. */
function resistance(ctx: CheckContext, f: Footing, rec?: Recorder): number {
  const w = footingWeights(ctx, f);
  const hangs = f.embedded?.cast !== false;
  const weight = upliftResistance(0, hangs ? w.concrete : 0, hangs ? w.soilOver : 0, UPLIFT_DEAD_FACTOR.ASD, rec);
  const rubs = skinFriction(ctx, f, rec);
  if (rubs > 0)
    rec?.step({
      symbol: 'Rt',
      meaning: 'weight and friction together',
      formula: 'R + Rf',
      substituted: `${weight.toFixed(1)} + ${rubs.toFixed(1)}`,
      value: weight + rubs,
      unit: 'lb',
      clause: 'statics',
    });
  return weight + rubs;
}

/** Uplift of a combination by load case with its factor; up is positive here. */
function upParts(ctx: CheckContext, on: LoadedFooting, id: string): string {
  const combination = ctx.loads.combinations.find((c) => c.id === id);
  return combination ? sumText(ctx, combination, (c) => -on.forces.force[c]!.z) : id;
}

/** What would cure a footing that is lifted. */
function remedyFor(f: Footing): string {
  if (f.onSlab) return 'nothing that may be counted holds a post on a slab down: give it a footing.';
  if (f.embedded && !f.embedded.cast)
    return 'backfill tamped round a post holds nothing down that may be counted: fill the hole with concrete, tied to the post.';
  return 'make it heavier, or its pad wider and deeper so that more soil stands on it.';
}

export const footingUplift: Check = {
  id: 'footing-uplift',
  title: 'Footing uplift',
  subjects: footingSubjects,
  run(subject, ctx, rec) {
    const loaded = loadedFootings(ctx, subject.id);
    if (!loaded) return noForces(CLAUSE);
    let worst: { on: LoadedFooting; up: number; combination: string; ratio: number } | undefined;
    for (const on of loaded) {
      const e = footingEnvelope(ctx.effects, on.footing.id, ctx.loads.combinations);
      if (!e || e.up.value <= 0) continue;
      const ratio = ratioOf(e.up.value, resistance(ctx, on.footing));
      if (worst && ratio <= worst.ratio) continue;
      worst = { on, up: e.up.value, combination: ctx.loads.combinations[e.up.combination]?.id ?? '', ratio };
    }
    if (!worst) return notApplicable(CLAUSE, 'no combination lifts this footing');
    const { footing } = worst.on;
    rec?.heading(`${footing.id}: ${footing.size} in ${footing.round ? 'round' : 'square'}, ${worst.combination}`);
    rec?.step({
      symbol: 'U',
      meaning: 'net uplift from the post, from the frame; 0.6 of the dead load above already taken off',
      formula: `largest of the combinations, ${worst.combination}`,
      substituted: upParts(ctx, worst.on, worst.combination),
      value: worst.up,
      unit: 'lb',
      clause: CLAUSE,
      from: [footing.path],
    });
    if (!footing.onSlab) recordWeights(ctx, footing, rec);
    return measured(
      {
        demand: worst.up,
        capacity: resistance(ctx, footing, rec),
        unit: 'lb',
        combination: worst.combination,
        clause: CLAUSE,
        formula: 'U / R',
        remedy: `Wind would lift ${footing.id}: ${remedyFor(footing)}`,
      },
      rec,
    );
  },
};
