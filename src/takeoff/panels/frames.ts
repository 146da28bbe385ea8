import type { Member, Structure, Surface } from '../../structure/model.js';

export interface FrameAt {
  readonly u: number;
  readonly member: Member;
}

/** Frames that run up a surface, by their place along its eave. Hips cross it and are left out. */
export function framesOn(structure: Structure, s: Surface): FrameAt[] {
  return structure.members
    .filter((m) => m.strips.some((k) => k.surface === s.id))
    .flatMap((m): FrameAt[] => {
      const run = Math.hypot(m.end.x - m.start.x, m.end.y - m.start.y);
      const lean = ((m.end.x - m.start.x) * s.u.x + (m.end.y - m.start.y) * s.u.y) / run;
      if (!(run > 0) || Math.abs(lean) > 1e-3) return [];
      const u = (m.start.x - s.origin.x) * s.u.x + (m.start.y - s.origin.y) * s.u.y;
      return [{ u, member: m }];
    })
    .sort((a, b) => a.u - b.u);
}
