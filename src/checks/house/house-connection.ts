/**
 * The house's own load path where the cover meets it. The program knows the forces; whether the wall can take them was
 * seen by somebody or it was not. A set is issuable only when each question was answered by a named somebody.
 */
import type { Recorder } from '../../base/trace.js';
import type { Check, CheckContext, Finding, Subject } from '../contract.js';
import { failed, measured, notApplicable, notEvaluated, outsideScope } from '../finding.js';
import { type FactState, factsAt, type HouseFact } from './facts.js';
import { type HousePlace, housePlaces, needsText } from './places.js';

const CLAUSE = 'IRC 2018 R301.1';

const COVER: Subject = { id: 'cover', path: '/cover' };

/** Nothing is fastened to the house, or the side load alone leans on it. */
function withoutPlaces(ctx: CheckContext): Finding {
  const { lateral } = ctx.project.cover;
  const axes = (['x', 'y'] as const).filter((a) => lateral[a] === 'house');
  if (axes.length === 0) return notApplicable(CLAUSE, 'the cover hands no load to the house');
  const ties = ctx.project.cover.houseTies ?? [];
  if (ctx.structure.roofs.every((r) => ties.some((t) => t.roof === r.mark))) {
    const marks = ties.map((t) => t.mark).join(', ');
    return notApplicable(CLAUSE, `side load alone meets the house, by ${marks}: see the tie and the house beyond it`);
  }
  const most = axes.map((a) => {
    let value = 0;
    for (const c of ctx.loads.combinations) {
      let sum = 0;
      for (const s of ctx.effects.sway) for (const t of c.terms) sum += t.factor * (s.force[t.case]?.[a] ?? 0);
      value = Math.max(value, Math.abs(sum));
    }
    return `${Math.ceil(value)} lb ${a === 'x' ? 'along the wall' : 'square to it'}`;
  });
  return notEvaluated(
    CLAUSE,
    `Side load of ${most.join(' and ')} is to be held by the house, and neither a ledger nor a beam end meets it. Needed: beam ends with "ends", a ledger, or another system against sway.`,
  );
}

const STATE_WORDS: Readonly<Record<FactState, string>> = {
  verified: 'verified',
  'worked-out': 'worked out',
  open: 'not verified yet',
  'on-site': 'to be seen on site',
  refused: 'may not be done',
  outside: 'needs a licensed professional',
};

function record(place: HousePlace, facts: readonly HouseFact[], rec?: Recorder): void {
  if (!rec) return;
  rec.heading(`${place.id} at the ${place.house.name} wall: ${needsText(place.needs)}`);
  const { needs } = place;
  if (needs)
    for (const [symbol, meaning, need] of [
      ['Pd', 'down on the house, one joint', needs.down],
      ['Pu', 'up', needs.up],
      ['Px', 'along the wall, side load with it', needs.along],
      ['Py', 'out from the wall, side load with it', needs.away],
    ] as const)
      rec.step({
        symbol,
        meaning,
        formula: 'largest over its joints',
        substituted: need.combination || 'none under any combination',
        value: need.value,
        unit: 'lb',
        clause: 'ASCE 7-16 2.4',
        from: [place.path],
      });
  for (const f of facts)
    rec.step({
      symbol: 'house',
      meaning: `${f.what}: ${STATE_WORDS[f.state]}`,
      formula: 'seen, not computed',
      substituted: [f.takes, f.note].filter(Boolean).join('; ') || 'no force',
      value: f.ratio,
      unit: '',
      clause: CLAUSE,
      from: [f.path],
    });
}

const join = (facts: readonly HouseFact[]): string =>
  facts.map((f) => `${f.what}${f.takes ? `, to take ${f.takes}` : ''}${f.note ? ` (${f.note})` : ''}`).join('; ');

function answer(ctx: CheckContext, place: HousePlace, rec?: Recorder): Finding {
  const facts = factsAt(ctx, place, rec);
  record(place, facts, rec);
  const of = (state: FactState) => facts.filter((f) => f.state === state);
  const most = place.needs ? Math.max(...Object.values(place.needs).map((n) => n.value)) : 0;
  const held = (f: Finding): Finding => ({ ...f, demand: most, unit: 'lb' });
  if (of('refused').length > 0) return failed(CLAUSE, `${place.id}: ${join(of('refused'))}.`);
  if (!place.needs) return notEvaluated(CLAUSE, 'Forces at the house are not all known, see the frame check.');
  if (of('outside').length > 0) return held(outsideScope(CLAUSE, `${place.id}: ${join(of('outside'))}.`));
  if (of('open').length > 0) return held(notEvaluated(CLAUSE, `${place.id}: nobody has verified ${join(of('open'))}.`));
  const seen = facts.filter((f) => f.state === 'verified' || f.state === 'worked-out');
  const worked = facts.reduce<HouseFact | undefined>(
    (w, f) => (f.governs && f.ratio > (w?.ratio ?? -1) ? f : w),
    undefined,
  );
  return measured(
    {
      // Where a header was worked out, the stress in it that is nearest its limit; else the greatest force, seen not computed.
      ...(worked?.governs ?? {
        demand: most,
        capacity: 0,
        unit: 'lb',
        clause: CLAUSE,
        formula: 'every question answered by somebody, nothing computed',
      }),
      ratio: worked?.ratio ?? 0,
      note: `House: verified as stated, not computed: ${join(seen)}. On site: ${join(of('on-site'))}.`,
      remedy: `${place.id}: the house is overloaded there.`,
    },
    rec,
  );
}

export const houseConnection: Check = {
  id: 'house-connection',
  title: 'What the house must take',
  subjects(ctx) {
    const places = housePlaces(ctx);
    return places.length > 0 ? places.map((p) => ({ id: p.id, path: p.path })) : [COVER];
  },
  run(subject, ctx, rec): Finding {
    const place = housePlaces(ctx).find((p) => p.id === subject.id);
    return place ? answer(ctx, place, rec) : withoutPlaces(ctx);
  },
};
