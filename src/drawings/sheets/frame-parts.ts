/** What the beam plan and the framing plan share: bars in plan and joint tags. */
import type { Vec2 } from '../../base/vec.js';
import type { Member } from '../../structure/model.js';
import { tag } from '../annotate/index.js';
import type { LayerName, PenName, Primitive } from '../ir/index.js';
import type { SheetContext } from './contract.js';

/** Plan outline of a straight member: its axis widened by half its width each side. */
function outline(m: Member): Vec2[] {
  const dx = m.end.x - m.start.x;
  const dy = m.end.y - m.start.y;
  const size = Math.hypot(dx, dy);
  const k = m.section.width / 2 / size;
  const n = { x: -dy * k, y: dx * k };
  return [
    { x: m.start.x + n.x, y: m.start.y + n.y },
    { x: m.start.x - n.x, y: m.start.y - n.y },
    { x: m.end.x - n.x, y: m.end.y - n.y },
    { x: m.end.x + n.x, y: m.end.y + n.y },
  ];
}

export const bar = (m: Member, layer: LayerName, pen: PenName): Primitive => ({
  kind: 'polyline',
  layer,
  pen,
  closed: true,
  points: outline(m),
  mark: m.mark,
});

/** Joint tags: one tag per joint mark and place; beside the joint, alternating sides so that they do not pile up. */
export function jointTags(ctx: SheetContext, kinds: readonly string[], reach: Vec2): Primitive[] {
  const { roofs, joints } = ctx.input.structure;
  const done = new Set<string>();
  const out: Primitive[] = [];
  for (const j of joints) {
    if (!kinds.includes(j.kind) || done.has(j.mark)) continue;
    done.add(j.mark);
    // Toward the middle of the roof, away from the dimension strings round it.
    const roof =
      roofs.find(
        (r) => j.at.x >= r.min.x - 24 && j.at.x <= r.max.x + 24 && j.at.y >= r.min.y - 24 && j.at.y <= r.max.y + 24,
      ) ?? roofs[0]!;
    const sx = j.at.x <= (roof.min.x + roof.max.x) / 2 ? 1 : -1;
    const sy = j.at.y <= (roof.min.y + roof.max.y) / 2 ? 1 : -1;
    const n = out.length;
    out.push(
      tag({
        kind: 'joint',
        text: j.mark,
        at: { x: j.at.x, y: j.at.y },
        off: { x: sx * (reach.x + 3.4 * n * ctx.style.note), y: sy * reach.y },
        layer: 'S-ANNO-SYMB',
        style: ctx.style,
        path: j.path,
      }),
    );
  }
  return out;
}
