/**
 * From the bearing up to the sheathing: side load on beams and framing reaches the diaphragm through blocks between the
 * frames, and so does the push and pull of a beam that is a chord. What each bearing line hands over is spread over its
 * length; the widest bay takes most and is held by the blocks' toe-nails (NDS 12.1.6, 12.5.4).
 */
import type { Recorder } from '../../base/trace.js';
import { NAILS } from '../../catalog/index.js';
import type { CoverRoof } from '../../project/model.js';
import type { Member } from '../../structure/model.js';
import {
  adjustedZ,
  CMConnection,
  Ctn,
  dowelBearing,
  lateralValue,
  penetrationFactor,
  toeNail,
} from '../codes/nds-2018/index.js';
import type { CheckContext, Finding } from '../contract.js';
import { failed, measured, notApplicable, notEvaluated, outsideScope, RATIO_CAP, ratioOf } from '../finding.js';
import { chordsOf } from './chords.js';
import { once } from './once.js';
import { caseSums, type RoofSide, type SidePoint, sideOf, under } from './side-loads.js';

const CLAUSE = 'NDS 2018 12.1.6';

interface BearingLine {
  readonly member: Member;
  /** Length of the bearing between its outermost frames, and its widest bay, inches. */
  readonly length: number;
  readonly bay: number;
  /** Axis the bearing runs along. */
  readonly along: 'x' | 'y';
  readonly points: readonly SidePoint[];
}

/** Beams under a roof, with the side load that passes between them and its sheathing. */
function bearingLines(ctx: CheckContext, roof: CoverRoof): readonly BearingLine[] {
  const members = new Map(ctx.structure.members.map((m) => [m.id, m]));
  const frames = new Map<string, { at: SidePoint['at']; force: SidePoint['force'] }[]>();
  for (const j of ctx.structure.joints) {
    const upper = members.get(j.ties[0]?.part ?? '');
    const force = ctx.effects.joints.get(j.id)?.force;
    if (upper?.roof !== roof.mark || upper.strips.length === 0 || !force) continue;
    const lower = j.ties.at(-1)!.part;
    const list = frames.get(lower) ?? [];
    list.push({ at: j.at, force });
    frames.set(lower, list);
  }
  return [...frames].flatMap(([id, points]) => {
    const member = members.get(id);
    // A ledger needs no blocks: the sheathing's edge is nailed to it or to blocks on it as at boundaries.
    if (!member || member.role === 'ledger' || points.length < 2) return [];
    const along = Math.abs(member.end.x - member.start.x) >= Math.abs(member.end.y - member.start.y) ? 'x' : 'y';
    const at = points.map((p) => p.at[along]).sort((a, b) => a - b);
    const length = at.at(-1)! - at[0]!;
    const bay = at.reduce((most, x, i) => (i > 0 ? Math.max(most, x - at[i - 1]!) : most), 0);
    return length > 0 ? [{ member, length, bay, along, points } as const] : [];
  });
}

interface Bay {
  readonly line: BearingLine;
  /** On one bay: the load along the bearing, and the flow it takes as a chord of the roof, lb. */
  readonly direct: number;
  readonly flow: number;
  readonly force: number;
  /** Load across, and distance of the chords, behind the flow; 0 when the bearing is no chord. */
  readonly across: number;
  readonly apart: number;
  readonly CD: number;
  readonly id: string;
}

/**
 * The bay with most to hand over. A bearing that is also a chord of the roof takes V/d along each foot, V the load across
 * it that bends the roof (all of it, which is the most at the house and more than any stretch between posts).
 */
function worstBay(ctx: CheckContext, roof: CoverRoof, side: RoofSide): Bay | undefined {
  const cases = ctx.loads.cases.length;
  const { lateral } = ctx.project.cover;
  let worst: Bay | undefined;
  for (const line of bearingLines(ctx, roof)) {
    const o = line.along === 'x' ? 'y' : 'x';
    const own = caseSums(line.points, cases, 0, 0);
    const values = line.along === 'x' ? own.along : own.square;
    const chords = chordsOf(ctx, side.roof, line.along);
    const isChord = chords !== undefined && [...chords.low.members, ...chords.high.members].includes(line.member);
    const whole = caseSums(lateral[o] === 'house' ? side.points : side.all, cases, 0, 0);
    const bending = o === 'x' ? whole.along : whole.square;
    // Load square to the wall goes straight into the house and bends no chord along it.
    const apart = isChord && !(o === 'y' && lateral.y === 'house') ? chords.apart : 0;
    for (const c of ctx.loads.combinations) {
      const direct = (Math.abs(under(c, values)) / line.length) * line.bay;
      const across = apart > 0 ? Math.abs(under(c, bending)) : 0;
      const flow = apart > 0 ? (across / apart) * line.bay : 0;
      const force = direct + flow;
      // The nails' value grows with CD, so bays are compared by force over CD.
      if (!worst || force / c.CD > worst.force / worst.CD)
        worst = { line, direct, flow, force, across, apart, CD: c.CD, id: c.id };
    }
  }
  return worst;
}

/** Allowable side load of one toe-nail from block into bearing, lb, load duration 1; undefined when it does not hold. */
function toeNailValue(
  nail: { D: number; length: number; Fyb: number },
  G: number,
  Gblock: number,
  wet: boolean,
  rec?: Recorder,
): number | undefined {
  const { ls, penetration } = toeNail(nail.length);
  const depth = penetrationFactor('nail', penetration, nail.D, rec);
  if (depth === undefined) return undefined;
  const { Z } = lateralValue(
    {
      D: nail.D,
      lm: penetration,
      ls,
      Fem: dowelBearing(G, nail.D, 0, false, rec),
      Fes: dowelBearing(Gblock, nail.D, 0, false, rec),
      Fyb: nail.Fyb,
      thetaMax: 0,
    },
    'single',
    rec,
  );
  const CM = CMConnection('dowel-lateral', { wetAtFabrication: false, wetInService: wet }, nail.D, true, rec);
  return depth * adjustedZ(Z, { CM, Ctn: Ctn('lateral') }, rec);
}

function recordBay(w: Bay, rec?: Recorder): void {
  const { line } = w;
  const step = (symbol: string, meaning: string, formula: string, substituted: string, value: number) =>
    rec?.step({
      symbol,
      meaning,
      formula,
      substituted,
      value,
      unit: 'lb',
      clause: 'statics',
      from: [line.member.path],
    });
  step(
    'F1',
    `side load along ${line.member.id} on its widest bay; all of it is taken to pass here, evenly over the bearing`,
    'Σ over the bearing / its length · bay',
    `${((w.direct * line.length) / line.bay).toFixed(0)} / ${line.length.toFixed(1)} · ${line.bay.toFixed(1)}`,
    w.direct,
  );
  if (w.apart > 0)
    step(
      'F2',
      `what ${line.member.id} takes as chord over its widest bay`,
      'V / d · bay, V the load across',
      `${w.across.toFixed(0)} / ${w.apart.toFixed(1)} · ${line.bay.toFixed(1)}`,
      w.flow,
    );
  step('F', 'on one block', 'F1 + F2', `${w.direct.toFixed(1)} + ${w.flow.toFixed(1)}`, w.force);
}

export const heelBlocking = once({
  id: 'heel-blocking',
  title: 'Blocks between frames at the bearings',
  subjects: (ctx) => ctx.project.cover.roofs.map((r) => ({ id: r.mark, path: `${r.path}/finish/nailing` })),
  run(subject, ctx, rec): Finding {
    const roof = ctx.project.cover.roofs.find((r) => r.mark === subject.id);
    const side = sideOf(ctx, subject.id);
    if (!roof || !side) return notEvaluated(CLAUSE, 'this roof was not placed');
    if (ctx.structure.surfaces.some((s) => s.roof === roof.mark && !s.sheathed))
      return notApplicable(CLAUSE, 'this roof has no sheathing to hand side load to');
    const worst = worstBay(ctx, roof, side);
    if (!worst || worst.force < 1) return notApplicable(CLAUSE, 'no side load runs along a bearing of this roof');
    const heel = roof.finish.nailing?.heel;
    const asks = `each bay over ${worst.line.member.id} hands ${Math.ceil(worst.force)} lb from bearing to sheathing`;
    if (!heel)
      return notEvaluated(
        CLAUSE,
        `Blocks between the frames of ${roof.mark} are not stated; ${asks}. Needed: the toe-nails of the blocks, under finish.nailing.heel.`,
      );
    const nail = NAILS.find((n) => n.id === heel.nail);
    if (nail?.length === undefined)
      return outsideScope(
        CLAUSE,
        `“${heel.nail}” is not a smooth nail of the catalogue: the blocks need their own report or a clip.`,
      );
    const { section } = worst.line.member;
    rec?.heading(
      `${roof.mark} over ${worst.line.member.id}: ${heel.count} toe-nails ${nail.name} a block, ${worst.id}`,
    );
    recordBay(worst, rec);
    // A block is of framing lumber; the lighter of it and the bearing counts on both sides.
    const block = ctx.structure.members
      .filter((m) => m.roof === roof.mark && m.strips.length > 0)
      .reduce((G, m) => Math.min(G, m.section.values.G), 1);
    const one = toeNailValue(
      { D: nail.D, length: nail.length, Fyb: nail.Fyb },
      section.values.G,
      block,
      section.wet,
      rec,
    );
    if (one === undefined)
      return failed(
        CLAUSE,
        `A ${nail.name} driven as toe-nail does not reach far enough into ${worst.line.member.id}: use a longer nail.`,
      );
    const allowed = one * worst.CD * heel.count;
    rec?.step({
      symbol: "F'",
      meaning: 'allowable side load of one block',
      formula: "Z' · CD · count",
      substituted: `${one.toFixed(1)} · ${worst.CD} · ${heel.count}`,
      value: allowed,
      unit: 'lb',
      clause: 'NDS 2018 12.5.4',
    });
    return measured(
      {
        demand: worst.force,
        capacity: allowed,
        unit: 'lb',
        combination: worst.id,
        clause: CLAUSE,
        formula: "F / F'",
        ratio: Math.min(ratioOf(worst.force, allowed), RATIO_CAP),
        note: `A block in every bay over each bearing, ${heel.count} toe-nails ${nail.name}, sheathing nailed to it as at boundaries.`,
        remedy: `The blocks of ${roof.mark} cannot hand over the side load, ${asks}: use more or thicker toe-nails, or clips.`,
      },
      rec,
    );
  },
});
