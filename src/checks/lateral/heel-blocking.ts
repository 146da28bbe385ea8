/**
 * From the bearing up to the sheathing: side load on beams and framing reaches the diaphragm through blocks between the
 * frames. What each bearing line hands over is spread over its bays and held by the blocks' toe-nails (NDS 12.1.6, 12.5.4).
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
import { once } from './once.js';
import { caseSums, type SidePoint, sideOf, under } from './side-loads.js';

const CLAUSE = 'NDS 2018 12.1.6';

interface BearingLine {
  readonly member: Member;
  readonly bays: number;
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
    return [{ member, bays: points.length - 1, along, points } as const];
  });
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
    let worst: { line: BearingLine; force: number; ratio: number; CD: number; id: string } | undefined;
    for (const line of bearingLines(ctx, roof)) {
      const sums = caseSums(line.points, ctx.loads.cases.length, 0, 0);
      const values = line.along === 'x' ? sums.along : sums.square;
      for (const c of ctx.loads.combinations) {
        const force = Math.abs(under(c, values)) / line.bays;
        // The nails' value grows with CD, so bays are compared by force over CD.
        if (!worst || force / c.CD > worst.ratio) worst = { line, force, ratio: force / c.CD, CD: c.CD, id: c.id };
      }
    }
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
    rec?.step({
      symbol: 'F',
      meaning: `side load along ${worst.line.member.id} over each of its ${worst.line.bays} bays`,
      formula: 'Σ over the bearing / bays',
      substituted: `${(worst.force * worst.line.bays).toFixed(0)} / ${worst.line.bays}`,
      value: worst.force,
      unit: 'lb',
      clause: 'statics',
      from: [worst.line.member.path],
      note: 'all of the side load along the bearing is taken to pass here',
    });
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
