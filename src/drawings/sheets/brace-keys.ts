/** Keyed notes of the cross member and the knee brace at a post, for the footing-to-ridge detail. */
import type { Vec3 } from '../../base/vec.js';
import type { Member } from '../../structure/model.js';
import { SHEET_IDS, type SheetContext } from './contract.js';

interface Key {
  readonly at: Vec3;
  readonly text: string;
  readonly mark: string;
}

/** `across` is where a point stands in the picture, so that only what lies in its plane is named. */
export function braceKeys({ input }: SheetContext, post: Member, across: (p: Vec3) => number): readonly Key[] {
  const { members, joints } = input.structure;
  const keys: Key[] = [];
  for (const j of joints) {
    if (j.kind !== 'strut-to-post' && j.kind !== 'brace-to-post') continue;
    if (!j.ties.some((t) => t.part === post.id)) continue;
    const m = members.find((q) => q.id === j.ties[0]!.part);
    if (!m || Math.abs(across(m.end) - across(m.start)) < 1) continue;
    const far =
      Math.abs(across(m.end) - across(post.start)) > Math.abs(across(m.start) - across(post.start)) ? m.end : m.start;
    const near = far === m.end ? m.start : m.end;
    // A cross member is named near its post, a brace in its middle.
    const part = m.role === 'strut' ? Math.min(1, 24 / m.length) : 0.5;
    const at = {
      x: near.x + part * (far.x - near.x),
      y: near.y + part * (far.y - near.y),
      z: near.z + part * (far.z - near.z),
    };
    const what = m.role === 'strut' ? 'cross member' : `knee brace, see ${SHEET_IDS['brace-details']}`;
    keys.push({ at, mark: m.mark, text: `${m.mark}: ${what}, ${m.section.label}; ${j.mark} to ${post.mark}.` });
  }
  return keys;
}
