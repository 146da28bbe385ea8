/** Marks of knee braces on the beam plan: one for each mark on each beam and cross member. */
import type { Vec2 } from '../../base/vec.js';
import type { Member } from '../../structure/model.js';
import { tag } from '../annotate/index.js';
import type { Primitive } from '../ir/index.js';
import type { SheetContext } from './contract.js';

/** `mid` is the middle of the plan: tags stand on its side of a beam, and past a cross member away from its own tag. */
export function braceTags(ctx: SheetContext, mid: Vec2): Primitive[] {
  const { members, joints } = ctx.input.structure;
  const h = ctx.style.note;
  const rows = new Map<string, Member[]>();
  for (const m of members) {
    if (m.role !== 'brace') continue;
    const top = joints.find((j) => j.kind === 'brace-to-beam' && j.ties.some((t) => t.part === m.id));
    const key = `${m.mark} ${top?.ties.find((t) => t.part !== m.id)?.part ?? m.id}`;
    rows.set(key, [...(rows.get(key) ?? []), m]);
  }
  // Past the middle of its row: tags of joints stand at the first.
  const shown = [...rows.values()].map((row) => row[Math.floor(row.length / 2)]!);
  return shown.map((m) => {
    const at = { x: (m.start.x + m.end.x) / 2, y: (m.start.y + m.end.y) / 2 };
    const runsAlongY = Math.abs(m.end.y - m.start.y) > Math.abs(m.end.x - m.start.x);
    const off = runsAlongY
      ? { x: at.x < mid.x ? h * 5 : -h * 5, y: 0 }
      : { x: 0, y: at.y < mid.y ? -h * 3.5 : h * 3.5 };
    return tag({ kind: 'beam', text: m.mark, at, off, layer: 'S-ANNO-SYMB', style: ctx.style, path: m.path });
  });
}
