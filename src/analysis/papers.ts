/** Fills the load cases of the truss papers (loads/papers.ts): what each bearing of the framing hands down there. */
import type { Loads } from '../loads/model.js';
import { papersInUse } from '../loads/papers.js';
import type { Project, TrussPaper } from '../project/model.js';
import type { Bearing, StructureIndex } from './index-structure.js';
import { addRows, addTo, makeRows, type Rows } from './rows.js';

/** Greatest force down or up that our own combinations send through a bearing, lb; never negative. */
function ownMost(rows: Rows, loads: Loads, up: boolean): number {
  let most = 0;
  for (const { terms } of loads.combinations) {
    if (terms.some((t) => loads.cases[t.case]?.papers !== undefined)) continue;
    let z = 0;
    for (const t of terms) z += t.factor * rows[3 * t.case + 2]!;
    most = Math.max(most, up ? z : -z);
  }
  return most;
}

/** The sheet's largest row for one bearing; undefined where it has none of that kind. */
function rowOf(paper: TrussPaper | undefined, bearing: 'left' | 'right', kind: 'gravity' | 'uplift') {
  let best: TrussPaper['reactions'][number] | undefined;
  for (const r of paper?.reactions ?? []) {
    if (r.bearing === bearing && r.kind === kind && (!best || r.amount > best.amount)) best = r;
  }
  return best;
}

/** Unit vector from one bearing of a truss to the other, level. */
function acrossOf(a: Bearing, b: Bearing): { x: number; y: number } {
  const dx = b.joint.at.x - a.joint.at.x;
  const dy = b.joint.at.y - a.joint.at.y;
  const run = Math.hypot(dx, dy);
  return { x: dx / run, y: dy / run };
}

/**
 * Adds to the framing's joints the part of the papers' reactions beyond our own dead load; framing without papers is
 * given its own largest reaction. Returns what was put on, per case.
 */
export function applyTrussPapers(
  index: StructureIndex,
  project: Project,
  loads: Loads,
  joints: Map<string, Rows>,
): Rows {
  const applied = makeRows(loads.cases.length);
  const mine = loads.cases.flatMap((c, i) => (c.papers ? [{ kind: c.papers, at: i }] : []));
  if (mine.length === 0) return applied;
  const dead = loads.cases.findIndex((c) => c.kind === 'D');
  const papers = new Map(papersInUse(project, index.structure).map((p) => [p.mark, p]));
  for (const member of index.structure.members) {
    const bearings = (index.below.get(member.id) ?? []).filter((b) => joints.has(b.joint.id));
    if (member.strips.length === 0 || bearings.length !== 2) continue;
    const [first, second] = bearings as [Bearing, Bearing];
    for (const [bearing, side, sign] of [
      [first, 'left', -1],
      [second, 'right', 1],
    ] as const) {
      const rows = joints.get(bearing.joint.id)!;
      const down = -rows[3 * dead + 2]!;
      const put = makeRows(loads.cases.length);
      for (const { kind, at } of mine) {
        const row = rowOf(papers.get(member.mark), side, kind);
        const amount = row?.amount ?? ownMost(rows, loads, kind === 'uplift');
        const z = kind === 'gravity' ? down - amount : amount + 0.6 * down;
        const across = acrossOf(first, second);
        const out = sign * (row?.side ?? 0);
        addTo(put, at, out * across.x, out * across.y, z);
      }
      addRows(rows, put);
      addRows(applied, put);
    }
  }
  return applied;
}
