/** What the beam plan and the framing plan share: bars in plan and joint tags. */
import type { Vec2 } from '../../base/vec.js';
import type { Joint, JointKind, Member } from '../../structure/model.js';
import type { TagWish } from '../annotate/index.js';
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

/** A plan's joint tags ask for places one after another, so that marks found at many joints spread over the plan. */
export interface JointTags {
  /** One tag a joint mark, toward the middle of its roof and away from the dimension strings round it. */
  wish(kinds: readonly JointKind[], reach: Vec2): TagWish[];
}

/** Joints within this distance, inches, crowd each other's tags. */
const CROWD = 48;

export function jointTags(ctx: SheetContext): JointTags {
  const { roofs, joints } = ctx.input.structure;
  const used: Vec2[] = [];
  const crowd = (j: Joint): number => used.filter((u) => Math.hypot(u.x - j.at.x, u.y - j.at.y) < CROWD).length;
  return {
    wish(kinds, reach) {
      const marks = new Set(joints.filter((j) => kinds.includes(j.kind)).map((j) => j.mark));
      return [...marks].map((mark) => {
        // Of joints alike the one with fewest tags about it.
        const j = joints.filter((o) => o.mark === mark).reduce((best, o) => (crowd(o) < crowd(best) ? o : best));
        used.push(j.at);
        const roof =
          roofs.find(
            (r) => j.at.x >= r.min.x - 24 && j.at.x <= r.max.x + 24 && j.at.y >= r.min.y - 24 && j.at.y <= r.max.y + 24,
          ) ?? roofs[0]!;
        const sx = j.at.x <= (roof.min.x + roof.max.x) / 2 ? 1 : -1;
        const sy = j.at.y <= (roof.min.y + roof.max.y) / 2 ? 1 : -1;
        return {
          kind: 'joint',
          text: mark,
          at: { x: j.at.x, y: j.at.y },
          off: { x: sx * reach.x, y: sy * reach.y },
          layer: 'S-ANNO-SYMB',
          style: ctx.style,
          path: j.path,
        };
      });
    },
  };
}
