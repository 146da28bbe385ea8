/** Nails of the sheathing under net uplift: pulled out of the framing, or the panel pulled over their heads. */
import type { Recorder } from '../../base/trace.js';
import { type Fastener, NAILS, type SheathingPanel } from '../../catalog/index.js';
import { isOutOfScope } from '../../loads/codes/asce7/index.js';
import type { CoverRoof, Nailing } from '../../project/model.js';
import { findPanel } from '../../structure/layers.js';
import type { Member } from '../../structure/model.js';
import { CMConnection, headPullThrough, W } from '../codes/nds-2018/index.js';
import { say } from '../codes/say.js';
import type { Check, CheckContext, Finding } from '../contract.js';
import { measured, notApplicable, notEvaluated, outsideScope } from '../finding.js';
import { panelArea, roofOf, roofSubjects } from './roof.js';
import { beyond, componentId, componentPressure } from './zone-wind.js';

const CLAUSE = 'NDS 2018 12.2';
/** Load duration factor of wind (NDS 2018 Table 2.3.2). */
const CD = 1.6;
const LABEL = '0.6D + 0.6W';

/** Specific gravity of panels (NDS 2018 Table 12.3.3B, recalled): oriented strand board, and plywood of common grades. */
export const panelGravity = (id: string): number => (id.startsWith('osb') ? 0.5 : 0.42);

/** Framing the sheathing is nailed to, the least dense first. */
const framingOf = (ctx: CheckContext, roof: string): readonly Member[] =>
  ctx.structure.members
    .filter((m) => m.roof === roof && m.strips.length > 0)
    .sort((a, b) => a.section.values.G - b.section.values.G);

/** Width of roof one line of nails holds, inches: the spacing, or the strip of an end frame with its rake overhang. */
const nailedWidth = (roof: CoverRoof, framing: readonly Member[]): number =>
  framing.reduce((w, m) => m.strips.reduce((v, s) => Math.max(v, s.u1 - s.u0), w), roof.framing.spacing);

interface Nailed {
  readonly where: 'field' | 'edge';
  readonly spacing: number;
  readonly area: number;
}

/**
 * Roof area on one nail, in². Two panels that meet on a frame have an edge nail each; the whole width is kept on one,
 * which covers a rake frame with its single row.
 */
function worstNail(n: Nailing, width: number): Nailed {
  const field = { where: 'field', spacing: n.field, area: width * n.field } as const;
  const edge = { where: 'edge', spacing: n.edge, area: width * n.edge } as const;
  return edge.area > field.area ? edge : field;
}

function netUplift(
  ctx: CheckContext,
  roof: CoverRoof,
  panel: SheathingPanel,
  rec?: Recorder,
): { readonly psf: number } | Finding {
  const wind = componentPressure(ctx, roof.mark, 'minus', panelArea(roof.framing.spacing), rec);
  if (wind === undefined) return notEvaluated(CLAUSE, 'this roof was not placed');
  if (isOutOfScope(wind)) return outsideScope(wind.clause, beyond(wind));
  const covering = ctx.structure.surfaces.find((s) => s.roof === roof.mark)?.layers[0]?.psf ?? 0;
  const dead = (covering + panel.weight) * Math.cos(roof.pitch);
  const psf = Math.max(0, -0.6 * wind - 0.6 * dead);
  rec?.step({
    symbol: 'w',
    meaning: 'net uplift on the sheathing; of the dead load only covering and panel count',
    formula: '0.6·W − 0.6·D·cosθ',
    substituted: `0.6·${(-wind).toFixed(2)} − 0.6·${(covering + panel.weight).toFixed(2)}·${Math.cos(roof.pitch).toFixed(4)}`,
    value: psf,
    unit: 'psf',
    clause: 'ASCE 7-16 2.4.1',
  });
  return { psf };
}

/** Allowable pull on one nail, lb; undefined when it does not reach the framing. */
function nailCapacity(
  nail: Fastener & { readonly length: number; readonly head: number },
  panel: SheathingPanel,
  sheathing: string,
  member: Member,
  rec?: Recorder,
): number | undefined {
  const { section } = member;
  const p = Math.min(nail.length - panel.thickness, section.d);
  if (p <= 0) return undefined;
  rec?.step({
    symbol: 'p',
    meaning: `length of the ${nail.name} in the framing`,
    formula: 'nail length − panel thickness',
    substituted: `${say(nail.length)} − ${say(panel.thickness)}`,
    value: p,
    unit: 'in',
    clause: nail.source,
    ...(nail.provenance === 'memory' ? { note: 'nail sizes recalled from memory: confirm' } : {}),
  });
  const perInch = W('smooth-nail', section.values.G, nail.D, rec);
  const CM = CMConnection('nail-withdrawal', { wetAtFabrication: false, wetInService: section.wet }, nail.D, true, rec);
  const withdrawal = perInch * p * CD * CM;
  rec?.step({
    symbol: "W'",
    meaning: `allowable withdrawal from ${section.species}, driven square into side grain`,
    formula: 'W · p · CD · CM',
    substituted: `${perInch.toFixed(2)} · ${p.toFixed(3)} · ${CD} · ${CM}`,
    value: withdrawal,
    unit: 'lb',
    clause: 'NDS 2018 Table 11.3.1',
    from: [section.path],
    ...(member.truss ? { note: 'the species of the trusses is the plant’s: compare it with the sealed drawings' } : {}),
  });
  const G = panelGravity(sheathing);
  const head = headPullThrough(G, nail.head, panel.thickness, rec) * CD;
  rec?.step({
    symbol: "WH'",
    meaning: `allowable head pull-through of the panel, G = ${G}, dry`,
    formula: 'WH · CD',
    substituted: `${(head / CD).toFixed(2)} · ${CD}`,
    value: head,
    unit: 'lb',
    clause: 'NDS 2018 12.2.5, Table 12.3.3B',
    note: 'head diameter and panel gravity recalled from memory: confirm',
  });
  return Math.min(withdrawal, head);
}

export const sheathingNails: Check = {
  id: 'sheathing-nails',
  title: 'Sheathing nails under uplift',
  subjects: (ctx) => roofSubjects(ctx, 'finish/nailing'),
  run(subject, ctx, rec) {
    const roof = roofOf(ctx, subject.id);
    if (!roof) return notEvaluated(CLAUSE, 'this roof is not in the project');
    const { nailing, sheathing } = roof.finish;
    const panel = findPanel(sheathing);
    if (!panel) return notApplicable(CLAUSE, 'no sheathing lies on this roof');
    if (!nailing) {
      return notEvaluated(
        CLAUSE,
        'How the sheathing is nailed is not stated. Needed: the nail and its spacing at panel edges and elsewhere, under finish.nailing.',
      );
    }
    const nail = NAILS.find((n) => n.id === nailing.nail);
    if (nail?.length === undefined || nail.head === undefined) {
      return outsideScope(
        CLAUSE,
        `“${nailing.nail}” is not a smooth nail of the catalogue (${NAILS.map((n) => n.id).join(', ')}): its withdrawal needs its own report and a licensed professional.`,
      );
    }
    const framing = framingOf(ctx, roof.mark);
    const member = framing[0];
    if (!member) return notEvaluated(CLAUSE, 'no framing was placed under this sheathing');
    rec?.heading(`${roof.mark}: ${nail.name}, ${nailing.edge} in at edges, ${nailing.field} in elsewhere`);
    const net = netUplift(ctx, roof, panel, rec);
    if ('status' in net) return net;
    const worst = worstNail(nailing, nailedWidth(roof, framing));
    const pull = (net.psf * worst.area) / 144;
    rec?.step({
      symbol: 'P',
      meaning: `pull on one ${worst.where} nail, by its tributary area`,
      formula: 'w · width · nail spacing',
      substituted: `${net.psf.toFixed(2)} · ${(worst.area / worst.spacing).toFixed(2)} · ${say(worst.spacing)} / 144`,
      value: pull,
      unit: 'lb',
      clause: 'statics',
      from: [subject.path],
      note: 'tributary area; no increase for the panel running on over several frames (common practice, no source)',
    });
    const capacity = nailCapacity({ ...nail, length: nail.length, head: nail.head }, panel, sheathing, member, rec);
    return measured(
      {
        demand: pull,
        capacity: capacity ?? 0,
        unit: 'lb',
        combination: componentId(LABEL),
        clause: CLAUSE,
        formula: "P / min(W', WH')",
        mustFail: capacity === undefined,
        remedy: `Wind would pull the sheathing of ${roof.mark} off its ${worst.where} nails: use a longer or thicker nail, or nail closer than ${worst.spacing} in.`,
      },
      rec,
    );
  },
};
