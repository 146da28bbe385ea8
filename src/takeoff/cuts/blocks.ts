/**
 * Blocks between frames, as the sheathing's nailing asks for them: over each bearing, and under panel edges. They are cut from
 * the frames' own lumber, so that what the frames leave over serves them.
 */
import type { Member, Surface } from '../../structure/model.js';
import { framesOn } from '../panels/frames.js';
import type { PanelLayout } from '../panels/model.js';
import type { TakeoffInput } from './input.js';
import type { LooseCut } from './model.js';
import { specOf } from './stock.js';

/** A bay too narrow for a block to be nailed, inches. */
const NARROW = 3;

interface Bay {
  readonly frame: Member;
  readonly length: number;
}

function baysBetween(frames: readonly { readonly u: number; readonly member: Member }[]): Bay[] {
  return frames.slice(1).flatMap((f, i) => {
    const before = frames[i]!;
    const length = f.u - before.u - (f.member.section.b + before.member.section.b) / 2;
    return length > NARROW ? [{ frame: f.member, length }] : [];
  });
}

/** Frames over one bearing, in order along it. */
function overBearings(
  input: TakeoffInput,
  roof: string,
): { bearing: string; frames: { u: number; member: Member }[] }[] {
  const members = new Map(input.structure.members.map((m) => [m.id, m]));
  const lines = new Map<string, { u: number; member: Member }[]>();
  for (const j of input.structure.joints) {
    const upper = members.get(j.ties[0]?.part ?? '');
    const lower = members.get(j.ties.at(-1)?.part ?? '');
    if (upper?.roof !== roof || upper.strips.length === 0 || lower?.role !== 'beam') continue;
    lines.set(lower.id, [...(lines.get(lower.id) ?? []), { u: j.ties.at(-1)!.along, member: upper }]);
  }
  return [...lines].map(([bearing, frames]) => ({ bearing, frames: frames.sort((a, b) => a.u - b.u) }));
}

export function blockCuts(input: TakeoffInput, panels: readonly PanelLayout[]): LooseCut[] {
  const out: LooseCut[] = [];
  const add = (bay: Bay, use: 'heel' | 'edge', what: string, part: string): void => {
    const n = out.length + 1;
    out.push({
      spec: specOf(bay.frame.section, input.buying, bay.length),
      phase: 'framing',
      cut: { id: `BL-${String(n).padStart(3, '0')}`, part, mark: 'BL', use, what, length: bay.length },
    });
  };
  for (const roof of input.project.cover.roofs) {
    const { nailing } = roof.finish;
    if (nailing?.heel) {
      for (const { bearing, frames } of overBearings(input, roof.mark))
        for (const bay of baysBetween(frames)) add(bay, 'heel', `block between frames over ${bearing}`, roof.mark);
    }
    if (nailing?.blocked) {
      const layout = panels.find((p) => p.roof === roof.mark);
      const surfaces = input.structure.surfaces.filter((s) => s.roof === roof.mark);
      for (const s of surfaces)
        for (const bay of edgeBays(input, s, layout))
          add(bay, 'edge', `block under a panel edge, ${s.mark}`, roof.mark);
    }
  }
  return out;
}

/** Bays crossed by the edge between two rows of panels. */
function edgeBays(input: TakeoffInput, s: Surface, layout: PanelLayout | undefined): Bay[] {
  const frames = framesOn(input.structure, s);
  const rows = layout?.rows.filter((r) => r.surface === s.id) ?? [];
  return rows
    .slice(1)
    .flatMap((row) => baysBetween(frames.filter((f) => f.u >= row.u0 - 1e-6 && f.u <= row.u1 + 1e-6)));
}
