/** Nails of the sheathing, panel by panel as laid: along frames at panel ends and within, along blocked edges, in the heel blocks. */
import type { Vec2 } from '../../base/vec.js';
import type { CoverRoof, Nailing } from '../../project/model.js';
import type { TakeoffContext } from '../model.js';
import { framesOn } from '../panels/frames.js';
import type { PanelLayout, PanelPiece } from '../panels/model.js';
import type { Counted, FastenerSource } from './model.js';
import { named } from './names.js';

const SAME = 1 / 8;

/** Nails in a row of a length: one at each end and none farther apart than the spacing. */
export const inRow = (length: number, spacing: number): number =>
  length > 1 ? Math.ceil(length / spacing - 1e-6) + 1 : 0;

/** Length of a panel along the slope at a place across it. */
function heightAt(parts: readonly (readonly Vec2[])[], u: number): number {
  let sum = 0;
  for (const p of parts) {
    const vs: number[] = [];
    p.forEach((a, i) => {
      const b = p[(i + 1) % p.length]!;
      if (a.x > u !== b.x > u) vs.push(a.y + ((u - a.x) / (b.x - a.x)) * (b.y - a.y));
    });
    if (vs.length === 2) sum += Math.abs(vs[0]! - vs[1]!);
  }
  return sum;
}

/** Nails of one panel: `frames` by their place along the eave, `outer` the roof's two ends. */
export function nailsOn(
  p: PanelPiece,
  n: Nailing,
  frames: readonly number[],
  outer: readonly [number, number],
): number {
  let count = 0;
  for (const f of frames) {
    if (f < p.u0 - SAME || f > p.u1 + SAME) continue;
    const end = Math.abs(f - p.u0) < SAME || Math.abs(f - p.u1) < SAME;
    const at = Math.min(p.u1 - SAME / 2, Math.max(p.u0 + SAME / 2, f));
    count += inRow(heightAt(p.parts, at), end ? n.edge : n.field);
  }
  // Past the end frame the panel is nailed to the barge or end frame at the roof's edge, at the boundary's spacing.
  const boundary = n.boundary ?? n.edge;
  for (const edge of [p.u0, p.u1]) {
    const roofEdge = Math.abs(edge - outer[0]) < SAME || Math.abs(edge - outer[1]) < SAME;
    if (roofEdge && !frames.some((f) => Math.abs(f - edge) < SAME)) count += inRow(p.v1 - p.v0, boundary);
  }
  // Blocks take nails between the frames, along both long edges; the frames' own nails are counted above.
  if (n.blocked) {
    const crossed = frames.filter((f) => f >= p.u0 - SAME && f <= p.u1 + SAME).length;
    count += 2 * Math.max(0, inRow(p.u1 - p.u0, n.edge) - crossed);
  }
  return count;
}

function ofLayout(ctx: TakeoffContext, roof: CoverRoof, n: Nailing, layout: PanelLayout): number {
  let count = 0;
  for (const id of layout.surfaces) {
    const s = ctx.structure.surfaces.find((x) => x.id === id)!;
    const frames = framesOn(ctx.structure, s).map((f) => f.u);
    const us = s.outline.map((p) => p.x);
    // Without a barge there is nothing past the end frame to nail to.
    const barge = ctx.structure.members.some((m) => m.role === 'barge' && m.roof === roof.mark);
    const outer = barge ? ([Math.min(...us), Math.max(...us)] as const) : ([-1e9, -1e9] as const);
    for (const p of layout.pieces) if (p.surface === id) count += nailsOn(p, n, frames, outer);
  }
  return count;
}

/** Where the project does not say, the usual nailing of roof sheathing (IRC Table R602.3(1), recalled). */
export const USUAL: Nailing = { nail: 'common-8d', edge: 6, field: 12 };

export const sheathingNails: FastenerSource = {
  count: (ctx) =>
    ctx.panels.flatMap((layout): Counted[] => {
      const roof = ctx.project.cover.roofs.find((r) => r.mark === layout.roof)!;
      const n = roof.finish.nailing ?? USUAL;
      const note = roof.finish.nailing ? '' : 'The project names no nailing: 8d at 6 and 12 in taken.';
      const list: Counted[] = [
        { ...named(n.nail), count: ofLayout(ctx, roof, n, layout), phase: 'sheathing', serves: [roof.mark], note },
      ];
      if (n.heel) {
        const blocks = ctx.cuts.flatMap((g) => g.cuts).filter((c) => c.part === roof.mark && c.use === 'heel').length;
        list.push({ ...named(n.heel.nail), count: blocks * n.heel.count, phase: 'framing', serves: [roof.mark] });
      }
      return list;
    }),
};
