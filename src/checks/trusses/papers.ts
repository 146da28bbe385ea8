/**
 * The truss plant's sealed sheets against this set. Ours are preliminary; a set is complete when the sheets are entered,
 * sealed and agree, or when the building office has said that they may come later. What IRC R802.10.1 wants on a sheet is
 * what is compared: slope, span, spacing, bearing widths, each reaction, bracing.
 */
import { formatLength } from '../../base/quantity/index.js';
import type { Recorder } from '../../base/trace.js';
import type { TrussPaper } from '../../project/model.js';
import type { Member } from '../../structure/model.js';
import type { Check, CheckContext } from '../contract.js';
import { failed, measured, notApplicable, notEvaluated } from '../finding.js';
import { REACTION_TRACE, reactionPairs } from './reactions.js';

const CLAUSE = 'IRC 2018 R802.10';
/**
 * Spans and heights that agree to this are the same, inches: what a finished truss may differ from its design by ANSI/TPI 1
 * Table 3.5-1, as a trade association's answer page gives it (read there).
 */
const SAME_SPAN = 0.75;
const SAME_HEIGHT = 0.5;
/** Other lengths. Common practice, no source. */
const SAME_LENGTH = 0.5;
/** Slopes that agree to this are the same, rise over run. Common practice, no source. */
const SAME_SLOPE = 0.25 / 12;

interface Compared {
  /** Stops the set: the sheet is for another truss. */
  readonly wrong: string[];
  /** Worth a word; the larger number is used below. */
  readonly said: string[];
  /** Pushes that ours has and the sheet does not print. */
  readonly unsaid: string[];
}

function shapeFaults(ctx: CheckContext, m: Member, p: TrussPaper): string[] {
  const t = m.truss!;
  const roof = ctx.project.cover.roofs.find((r) => r.mark === m.roof);
  const out: string[] = [];
  const length = (what: string, theirs: number, mine: number, same = SAME_LENGTH): void => {
    if (Math.abs(theirs - mine) > same)
      out.push(`${what} ${formatLength(theirs)} on the sheet, ${formatLength(mine)} here`);
  };
  const slope = (what: string, theirs: number, mine: number): void => {
    const [a, b] = [Math.tan(theirs), Math.tan(mine)];
    if (Math.abs(a - b) > SAME_SLOPE)
      out.push(`${what} ${(12 * a).toFixed(2)}/12 on the sheet, ${(12 * b).toFixed(2)}/12 here`);
  };
  length('span', p.span, t.span, SAME_SPAN);
  slope('pitch', p.pitch, t.topPitch);
  slope('bottom chord', p.bottomPitch, t.bottomPitch);
  length('heel', p.heel, t.heel, SAME_HEIGHT);
  length('overhang', p.overhang, Math.max(...t.overhang));
  if (roof && p.spacing < roof.framing.spacing - SAME_LENGTH)
    out.push(`spacing ${formatLength(p.spacing)} on the sheet, ${formatLength(roof.framing.spacing)} here`);
  if (p.bearingWidth > t.bearing + 1e-6)
    out.push(`bearing ${formatLength(p.bearingWidth)} wide asked for, the beam is ${formatLength(t.bearing)}`);
  return out;
}

function compare(ctx: CheckContext, m: Member, p: TrussPaper, rec?: Recorder): Compared {
  const wrong = shapeFaults(ctx, m, p);
  const said: string[] = [];
  const unsaid: string[] = [];
  for (const r of reactionPairs(ctx, m.mark, p)) {
    const { bearing, way, ours, sealed } = r;
    const need = `${Math.ceil(ours - 1e-6)} lb ${way}`;
    if (sealed === undefined) {
      // Every sheet gives what stands on a bearing. A push is none of the truss’s own where its sheet lets a bearing move.
      if (way === 'down' || (way === 'up' && ours > REACTION_TRACE))
        wrong.push(
          `no reaction ${way} of the ${bearing} bearing is entered: enter it, or have the plant reseal ${m.mark} for at least ${need} there`,
        );
      else if (way === 'outward' && ours > REACTION_TRACE) unsaid.push(`${bearing} bearing, ${need}`);
      continue;
    }
    rec?.step({
      symbol: way === 'down' ? 'R' : way === 'up' ? 'U' : 'H',
      meaning: `reaction ${way} at the ${bearing} bearing of ${m.mark}: the sheet’s beside ours`,
      formula: 'sheet; ours from the governing combination',
      substituted: `${sealed.toFixed(0)} lb; ${ours.toFixed(0)} lb`,
      value: sealed,
      unit: 'lb',
      clause: CLAUSE,
      from: [p.path],
    });
    if (r.agreement === 'short')
      wrong.push(
        `${bearing} bearing sealed for ${sealed.toFixed(0)} lb ${way}, too small for this roof: have the plant reseal ${m.mark} for at least ${need} there`,
      );
    else if (r.agreement === 'larger')
      said.push(
        `${way} at the ${bearing} bearing ${sealed.toFixed(0)} lb on the sheet, ${ours.toFixed(0)} lb here${p.govern ? `, set aside: ${p.govern.why}` : ''}`,
      );
  }
  return { wrong, said, unsaid };
}

export const trussPapers: Check = {
  id: 'truss-papers',
  title: 'Sealed truss design',
  subjects: (ctx) =>
    ctx.project.cover.roofs
      .filter((r) => ctx.structure.members.some((m) => m.roof === r.mark && m.truss !== undefined))
      .map((r) => ({ id: r.mark, path: `${r.path}/framing` })),
  run(subject, ctx, rec) {
    const marks = new Map<string, Member>();
    for (const m of ctx.structure.members)
      if (m.roof === subject.id && m.truss && !marks.has(m.mark)) marks.set(m.mark, m);
    const papers = ctx.project.cover.trussPapers ?? [];
    const missing = [...marks.keys()].filter((mark) => !papers.some((p) => p.mark === mark));
    const open = papers.filter((p) => marks.has(p.mark) && p.sealedBy === '').map((p) => p.mark);
    const wrong: string[] = [];
    const said: string[] = [];
    const unsaid: string[] = [];
    let count = 0;
    const seen = new Set<string>();
    for (const p of papers) {
      const m = marks.get(p.mark);
      if (!ctx.structure.members.some((x) => x.truss && x.mark === p.mark))
        wrong.push(`a sheet is entered for ${p.mark}, and no truss has that mark`);
      if (!m) continue;
      if (seen.has(p.mark)) wrong.push(`${p.mark} has more than one sheet`);
      seen.add(p.mark);
      count++;
      rec?.heading(`${p.mark}: ${p.from}${p.sealedBy ? `, sealed by ${p.sealedBy}` : ', not sealed'}`);
      const c = compare(ctx, m, p, rec);
      wrong.push(...c.wrong.map((w) => `${p.mark}: ${w}`));
      said.push(...c.said.map((w) => `${p.mark}: ${w}`));
      unsaid.push(...c.unsaid.map((w) => `${p.mark}: ${w}`));
    }
    if (wrong.length > 0) {
      return failed(
        CLAUSE,
        `The truss papers do not fit this set: ${wrong.join('; ')}. Have the plant correct and reseal its sheets, or correct this file to them.`,
      );
    }
    if (missing.length > 0 || open.length > 0) {
      const { deferred } = ctx.project.cover;
      // Only a named source counts: a deferral is the office's to give.
      const what = missing.length > 0 ? `${missing.join(', ')} not entered` : `${open.join(', ')} not sealed`;
      if (deferred?.state === 'given' && deferred.from !== '' && deferred.value.includes('trusses')) {
        return notApplicable(
          CLAUSE,
          `${what}: deferred submittal accepted by ${deferred.from}; trusses may not be set before the sealed papers are entered`,
        );
      }
      return notEvaluated(
        CLAUSE,
        `Trusses are designed and sealed by the truss plant’s engineer; sheets of ${what} yet. Needed: the sealed sheets under cover/trussPapers, or the office’s word under cover/deferred that they may come later.`,
      );
    }
    return measured(
      {
        demand: 0,
        capacity: count,
        unit: 'sheets that disagree',
        clause: CLAUSE,
        formula: 'sheets that disagree with this set ≤ 0',
        note: [
          said.length > 0 ? `Larger on the sheet and used below: ${said.join('; ')}.` : '',
          unsaid.length > 0
            ? `Not printed on the sheets, and carried by beams and joints as worked out here: ${unsaid.join('; ')}.`
            : '',
        ]
          .filter((t) => t !== '')
          .join(' '),
        remedy: '',
      },
      rec,
    );
  },
};
