/** Every link of the load path in one table, links alike on one row: what the load-path sheet prints and draws. */

import type { Vec3 } from '../../base/vec.js';
import type { CheckContext, CheckResult } from '../../checks/contract.js';
import { loadPath, type PathLink } from '../../checks/path/graph.js';
import { JOINT_WORDS } from '../../structure/joint-words.js';
import type { PathShare, PathWay } from './model.js';
import { sharesOf, togetherOf } from './shares.js';

export interface PathRow {
  /** Number of the bubble on the picture, from 1 at the roof. */
  readonly number: number;
  /** `J3`, or `` where the link is no joint. */
  readonly joint: string;
  /** `beam to post`. */
  readonly what: string;
  /** `B1, B2 on P1–P4`. */
  readonly parts: string;
  readonly count: number;
  /** Worst of all links of the row, one for each way. */
  readonly shares: readonly PathShare[];
  /** Ratio of all ways together; undefined where the link is no joint or open. */
  readonly together: number | undefined;
  /** Where the links are. */
  readonly at: readonly Vec3[];
}

/** Marks in order, runs of numbers closed up: `P1–P4`, `F1, F3`. */
export function markList(marks: readonly string[]): string {
  const unique = [...new Set(marks)];
  const out: string[] = [];
  for (let i = 0; i < unique.length; ) {
    const m = /^(\D+)(\d+)$/.exec(unique[i]!);
    let k = i;
    while (m && k + 1 < unique.length && unique[k + 1] === `${m[1]}${Number(m[2]) + (k + 1 - i)}`) k++;
    if (k - i >= 2) out.push(`${unique[i]}–${unique[k]}`);
    else out.push(...unique.slice(i, k + 1));
    i = k + 1;
  }
  return out.join(', ');
}

/** Sorts marks by letters, then number, so that runs close up. */
export const byMark = (a: string, b: string): number =>
  a.replace(/\d+$/, '').localeCompare(b.replace(/\d+$/, ''), 'en') ||
  Number(/\d+$/.exec(a)?.[0] ?? 0) - Number(/\d+$/.exec(b)?.[0] ?? 0);

const nearness = (s: PathShare): number => (s.ratio === undefined ? Number.MAX_VALUE : s.ratio);

function worstOf(all: readonly (readonly PathShare[])[]): PathShare[] {
  const best = new Map<PathWay, PathShare>();
  for (const shares of all) {
    for (const s of shares) {
      const known = best.get(s.way);
      if (!known || nearness(s) > nearness(known)) best.set(s.way, s);
    }
  }
  return (['down', 'up', 'side'] as const).flatMap((w) => best.get(w) ?? []);
}

const ORDER: Readonly<Record<PathLink['by'], number>> = { sheathing: 0, joint: 1, soil: 2 };

/** Links that belong on one row share this key: a roof's sheathing, a joint mark, a kind of footing. */
function keyOf(link: PathLink, ctx: CheckContext): string {
  if (link.by === 'joint') return link.joint!.mark;
  if (link.by === 'sheathing') return ctx.structure.surfaces.find((s) => s.id === link.upper)?.roof ?? link.upper;
  return ctx.structure.footings.find((f) => f.id === link.upper)?.choice ?? link.upper;
}

function placesOf(link: PathLink, ctx: CheckContext): readonly Vec3[] {
  if (link.joint) return [link.joint.at];
  if (link.by === 'soil') {
    const f = ctx.structure.footings.find((q) => q.id === link.upper);
    return f ? [{ x: f.at.x, y: f.at.y, z: f.bottom }] : [];
  }
  const s = ctx.structure.surfaces.find((q) => q.id === link.upper);
  if (!s) return [];
  const n = s.outline.length;
  const u = s.outline.reduce((sum, p) => sum + p.x, 0) / n;
  const v = s.outline.reduce((sum, p) => sum + p.y, 0) / n;
  return [
    {
      x: s.origin.x + u * s.u.x + v * s.v.x,
      y: s.origin.y + u * s.u.y + v * s.v.y,
      z: s.origin.z + u * s.u.z + v * s.v.z,
    },
  ];
}

export function pathTable(ctx: CheckContext, results: readonly CheckResult[]): readonly PathRow[] {
  const path = loadPath(ctx.structure);
  const groups = new Map<string, PathLink[]>();
  for (const link of [...path.links].sort((a, b) => ORDER[a.by] - ORDER[b.by])) {
    const key = `${link.by}|${keyOf(link, ctx)}`;
    const known = groups.get(key);
    if (known) known.push(link);
    else groups.set(key, [link]);
  }
  const mark = (id: string): string => path.nodes.get(id)?.mark ?? id;
  return [...groups.values()].map((links, i): PathRow => {
    const first = links[0]!;
    const uppers = [...new Set(links.map((l) => mark(l.upper)))].sort(byMark);
    const lowers = [...new Set(links.map((l) => mark(l.lower)))].sort(byMark);
    // Joints of one mark are judged together; sheathing and soil part by part.
    const judged = first.by === 'joint' ? [first] : [...new Map(links.map((l) => [l.upper, l])).values()];
    return {
      number: i + 1,
      joint: first.joint?.mark ?? '',
      what: first.joint
        ? JOINT_WORDS[first.joint.kind]
        : first.by === 'soil'
          ? 'footing on soil'
          : 'sheathing on framing',
      parts: `${markList(uppers)} on ${markList(lowers)}`,
      count: links.length,
      shares: worstOf(judged.map((l) => sharesOf(l, ctx, results))),
      together: togetherOf(first, results),
      at: links.flatMap((l) => placesOf(l, ctx)),
    };
  });
}
