/**
 * A truss at the edge of a roof whose top chord takes roof bending. The plant's engineer designs the chord, so the force is
 * a line of the order, and what the sealed sheet says it is designed for is the capacity. Without it there is no answer here.
 */
import type { Recorder } from '../../base/trace.js';
import type { Member } from '../../structure/model.js';
import type { CheckContext, Finding } from '../contract.js';
import { measured, notApplicable, notEvaluated, outsideScope } from '../finding.js';
import { chordings, type Greatest, greatest } from './chord-force.js';
import { roofSides } from './side-loads.js';

const CLAUSE = 'IRC 2018 R802.10';
export const NO_SIDE_LOAD = 'no side load bends this roof';
/** Forces under this are rounding, lb. */
const SMALL = 1;

/** Greatest push or pull along the top chord of trusses of one mark by the bending of their roof, lb; allowable-stress level. */
export function trussChordForce(ctx: CheckContext, mark: string): Greatest {
  let worst: Greatest = { value: 0, at: 0, combination: undefined };
  for (const side of roofSides(ctx)) {
    for (const c of chordings(ctx, side)) {
      if (typeof c === 'string') continue;
      for (const which of ['low', 'high'] as const) {
        if (!c.chords[which].members.some((m) => m.truss && m.mark === mark)) continue;
        const most = greatest(ctx, c, which, [c.inner]);
        if (most.value > worst.value) worst = most;
      }
    }
  }
  return worst;
}

export function trussChordFinding(ctx: CheckContext, m: Member, most: Greatest, rec?: Recorder): Finding {
  const T = most.value;
  if (T < SMALL || !most.combination) return notApplicable(CLAUSE, NO_SIDE_LOAD);
  const asks = `the top chord of ${m.mark} takes ${Math.ceil(T)} lb of roof bending, pull or push`;
  const paper = ctx.project.cover.trussPapers?.find((p) => p.mark === m.mark);
  if (!paper || paper.sealedBy === '') {
    const { deferred } = ctx.project.cover;
    if (deferred?.state === 'given' && deferred.from !== '' && deferred.value.includes('trusses'))
      return notApplicable(CLAUSE, `deferred with the truss papers: they must state that ${asks}`);
    return notEvaluated(
      CLAUSE,
      `Tell the truss plant: ${asks} (it is on the order). Needed: the sealed sheet with the force it is designed for, under cover/trussPapers/chordForce.`,
    );
  }
  if (paper.chordForce <= 0) {
    return outsideScope(
      CLAUSE,
      `${asks}, and the sealed sheet of ${m.mark} does not say so: have the truss engineer state the force on the sheet and enter it under cover/trussPapers/chordForce.`,
    );
  }
  rec?.step({
    symbol: 'Ta',
    meaning: `side load along the top chord that the sealed sheet of ${m.mark} is designed for`,
    formula: 'as entered from the sheet',
    substituted: paper.from,
    value: paper.chordForce,
    unit: 'lb',
    clause: CLAUSE,
    from: [`${paper.path}/chordForce`],
  });
  return measured(
    {
      demand: T,
      capacity: paper.chordForce,
      unit: 'lb',
      combination: most.combination.id,
      clause: CLAUSE,
      formula: 'T / Ta',
      remedy: `The sealed sheet of ${m.mark} is for less: ${asks}. Have the plant revise it.`,
    },
    rec,
  );
}
