/** Frame on its bearing: seat, uplift tie, blocks between the frames; each joint mark once at its low and high side. */
import { findFastener } from '../../../catalog/index.js';
import { findPanel } from '../../../structure/layers.js';
import type { Joint, Member, Structure } from '../../../structure/model.js';
import type { SheetContext } from '../contract.js';
import { briefly, needText } from '../joint-text.js';
import { alongBearing, alongFrame, BLOCK, bought, placeOf, type Seat, type SeatNotes } from './bearing-views.js';
import type { Detail } from './contract.js';

const KINDS = new Set<Joint['kind']>(['truss-to-beam', 'rafter-to-beam']);

function seats(ctx: SheetContext): Seat[] {
  const { structure, project } = ctx.input;
  const found = new Map<string, Seat>();
  const ends: Joint[] = [];
  const often = (mark: string): number => structure.joints.filter((j) => j.mark === mark).length;
  for (const joint of structure.joints) {
    if (!KINDS.has(joint.kind)) continue;
    const frame = structure.members.find((m) => m.id === joint.ties[0]?.part);
    const beam = structure.members.find((m) => m.id === joint.ties.at(-1)?.part);
    const roof = project.cover.roofs.find((r) => r.mark === frame?.roof);
    if (!frame || !beam || !roof) continue;
    if (frame.role === 'gable-truss') {
      ends.push(joint);
      continue;
    }
    const high = isHigh(ctx, joint);
    const key = [roof.mark, frame.truss !== undefined, frame.section.label, beam.section.label, high].join('|');
    const before = found.get(key);
    if (!before) found.set(key, { joint, frame, beam, roof, high, alike: [] });
    else {
      const marks = [...before.alike, before.joint.mark];
      // A frame away from the ends, of the mark that occurs most, shows what is typical.
      const next = often(joint.mark) > often(before.joint.mark) || isInner(structure, frame, before.frame);
      const shown = next ? { ...before, joint, frame, beam } : before;
      const alike = [...new Set([...marks, joint.mark])].filter((m) => m !== shown.joint.mark);
      found.set(key, { ...shown, alike });
    }
  }
  return [...found.values()].map((s) => ({
    ...s,
    alike: [...s.alike, ...new Set(ends.filter((j) => j.ties.at(-1)?.part === s.beam.id).map((j) => j.mark))],
  }));
}

/** Whether a frame is the second of its roof, which the first one found is not. */
const isInner = (structure: Structure, frame: Member, before: Member): boolean => {
  const row = structure.members.filter((m) => m.mark === frame.mark);
  return row.indexOf(frame) === 1 && row.indexOf(before) === 0;
};

/** Whether a frame has another bearing below this one. */
const isHigh = (ctx: SheetContext, j: Joint): boolean => {
  const { part, along } = j.ties[0]!;
  const rafter = ctx.input.structure.members.find((x) => x.id === part)?.truss === undefined;
  return (
    rafter &&
    ctx.input.structure.joints.some((o) => KINDS.has(o.kind) && o.ties[0]?.part === part && o.ties[0].along < along - 1)
  );
};

function detailOf(ctx: SheetContext, s: Seat): Detail {
  const { joint, frame, beam, roof, high, alike } = s;
  const { len } = ctx;
  const p = placeOf(ctx, s);
  const { nailing } = roof.finish;
  const nail = (id: string): string => findFastener(id)?.name ?? id;
  const heel = nailing?.heel;
  const notes: SeatNotes = {
    beam: `${beam.mark}: ${beam.section.label}.`,
    frame: frame.truss
      ? `${frame.mark}: ${frame.truss.kind.replace('-', ' ')} by the plant, heel ${len(frame.truss.heel)}; bears ${len(joint.contact.length)} on the beam. No cut, notch or hole in it.`
      : `${frame.mark}: ${frame.section.label}; bears ${len(joint.contact.length)}${frame.notch > 0 ? `, seat cut ${len(frame.notch)} deep square to the rafter` : ', no seat cut'}.`,
    tie: `${joint.mark} at every frame ${needText(ctx, joint.mark)}: ${briefly(ctx, joint.mark)}.${bought(ctx, s) ? ' Dashed: its place; its shape is its maker’s.' : ''}${alike.length > 0 ? ` ${frame.truss ? 'End frames' : 'Others alike'}: ${alike.map((a) => `${a} ${needText(ctx, a)}`).join('; ')}.` : ''}`,
    block: heel
      ? `Block in every bay, ${len(BLOCK)} thick (common practice, no source), full height from bearing to sheathing, ${heel.count} toe-nails ${nail(heel.nail)} into the bearing; sheathing nailed to it as at boundaries.`
      : '',
    deck: nailing
      ? `Sheathing ${findPanel(roof.finish.sheathing)?.name ?? roof.finish.sheathing}, ${nail(nailing.nail)} at ${len(nailing.edge)} on panel edges, ${len(nailing.field)} elsewhere, ${len(nailing.boundary ?? nailing.edge)} along outer edges and blocks.`
      : 'Sheathing: its nails are still to be named.',
  };
  return {
    id: `bearing ${roof.mark} ${joint.mark} ${frame.section.label} ${high ? 'high' : 'low'}`,
    title: `${frame.mark} on ${beam.mark}${high ? ', high side' : ''}`,
    views: [alongFrame(ctx, s, p, notes), alongBearing(ctx, s, p, notes)],
    scales: ['3', '1-1/2', '1', '3/4'],
    call: {
      at: joint.at,
      alike: ctx.input.structure.joints
        .filter((j) => (j.mark === joint.mark || alike.includes(j.mark)) && isHigh(ctx, j) === high)
        .map((j) => j.at),
      radius: 12,
    },
  };
}

export const bearingDetails = (ctx: SheetContext): readonly Detail[] => seats(ctx).map((s) => detailOf(ctx, s));
