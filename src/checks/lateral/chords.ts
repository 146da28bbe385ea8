/** Edge members of a roof that take the push and pull of its diaphragm's bending. */
import type { Member, RoofPlaced } from '../../structure/model.js';
import type { CheckContext } from '../contract.js';
import type { Axis } from './system.js';

/** Members of one line; `off` is where the line stands on the other axis, inches. */
export interface ChordLine {
  readonly off: number;
  readonly members: readonly Member[];
}

export interface Chords {
  /** Direction the chords run. */
  readonly along: Axis;
  readonly low: ChordLine;
  readonly high: ChordLine;
  /** Distance between the two lines, inches. */
  readonly apart: number;
}

const across = (axis: Axis): Axis => (axis === 'x' ? 'y' : 'x');
/** Members turned less than this out of an axis run along it, inches over their length. */
const STRAIGHT = 0.25;

function lines(members: readonly Member[], axis: Axis): readonly ChordLine[] {
  const o = across(axis);
  const found: { off: number; members: Member[] }[] = [];
  for (const m of members) {
    if (Math.abs(m.end[o] - m.start[o]) > STRAIGHT || Math.abs(m.end[axis] - m.start[axis]) < STRAIGHT) continue;
    const off = (m.start[o] + m.end[o]) / 2;
    const line = found.find((l) => Math.abs(l.off - off) < 1);
    if (line) line.members.push(m);
    else found.push({ off, members: [m] });
  }
  return found.sort((a, b) => a.off - b.off);
}

/**
 * The outermost beams under the roof that run along `along`, else its outermost framing members. Undefined when it has
 * no two such lines.
 */
export function chordsOf(ctx: CheckContext, roof: RoofPlaced, along: Axis): Chords | undefined {
  const { members, joints } = ctx.structure;
  const byId = new Map(members.map((m) => [m.id, m]));
  const framing = members.filter((m) => m.roof === roof.mark && m.strips.length > 0);
  const own = new Set(framing.map((m) => m.id));
  const beams = new Set<Member>();
  for (const j of joints) {
    const lower = byId.get(j.ties.at(-1)?.part ?? '');
    if (own.has(j.ties[0]?.part ?? '') && lower?.role === 'beam') beams.add(lower);
  }
  for (const candidates of [[...beams], framing]) {
    const found = lines(candidates, along);
    const low = found[0];
    const high = found.at(-1);
    if (low && high && low !== high) return { along, low, high, apart: high.off - low.off };
  }
  return undefined;
}
