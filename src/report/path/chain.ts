/** The chain through one part: everything above it up to the roof, everything below it down to the soil or the house. */

import type { CheckContext, CheckResult } from '../../checks/contract.js';
import { pathBreaks } from '../../checks/path/breaks.js';
import { type LoadPath, loadPath, type NodeKind, type PathLink, SOIL } from '../../checks/path/graph.js';
import { JOINT_WORDS, roleWords } from '../../structure/joint-words.js';
import { contextOf, type Derived } from '../derived.js';
import type { PathAnswer, PathStation, PathStep } from './model.js';
import { sharesOf, togetherOf } from './shares.js';

const WHAT: Readonly<Record<NodeKind, (role: string) => string>> = {
  surface: () => 'roof surface',
  member: roleWords,
  footing: () => 'footing',
  wall: () => 'house wall: verify',
  soil: () => 'soil',
};

/** Every node reached from some of them over the links given, themselves included. */
function reach(from: readonly string[], links: LoadPath['below'], next: (l: PathLink) => string): ReadonlySet<string> {
  const seen = new Set<string>(from);
  const open = [...from];
  while (open.length > 0) {
    for (const link of links.get(open.pop()!) ?? []) {
      const id = next(link);
      if (seen.has(id)) continue;
      seen.add(id);
      open.push(id);
    }
  }
  return seen;
}

/** Longest way from a roof surface, so that stations come in the order the load does. */
function depths(path: LoadPath, within: ReadonlySet<string>): ReadonlyMap<string, number> {
  const depth = new Map<string, number>();
  const visiting = new Set<string>();
  const of = (id: string): number => {
    const known = depth.get(id);
    if (known !== undefined) return known;
    if (visiting.has(id)) return 0;
    visiting.add(id);
    let most = 0;
    for (const link of path.above.get(id) ?? []) if (within.has(link.upper)) most = Math.max(most, of(link.upper) + 1);
    visiting.delete(id);
    depth.set(id, most);
    return most;
  };
  for (const id of within) of(id);
  return depth;
}

function stationOf(
  mark: string,
  ids: readonly string[],
  path: LoadPath,
  ctx: CheckContext,
  results: readonly CheckResult[],
): PathStation {
  const node = path.nodes.get(ids[0]!)!;
  const role = ctx.structure.members.find((m) => m.id === node.id)?.role ?? '';
  const worst = results
    .filter(
      (r) => r.subject === mark && r.ratio > 0 && ((r.status === 'pass' && !r.prescriptive) || r.status === 'fail'),
    )
    .sort((a, b) => b.ratio - a.ratio)[0];
  return {
    mark,
    what: WHAT[node.kind](role),
    count: ids.length,
    worst: worst && { title: worst.title, ratio: worst.ratio, status: worst.status, result: worst.id },
  };
}

/** The chain of a mark (or id); undefined when nothing bears it. */
export function pathChain(ctx: CheckContext, results: readonly CheckResult[], mark: string): PathAnswer | undefined {
  const path = loadPath(ctx.structure);
  const asked = [...path.nodes.values()].filter((n) => n.mark === mark || n.id === mark).map((n) => n.id);
  const joints = ctx.structure.joints.filter((j) => j.mark === mark || j.id === mark);
  const start =
    asked.length > 0 ? asked : joints.flatMap((j) => j.ties.map((t) => t.part)).filter((id) => path.nodes.has(id));
  if (start.length === 0) return undefined;
  const within = new Set([...reach(start, path.below, (l) => l.lower), ...reach(start, path.above, (l) => l.upper)]);
  const depth = depths(path, within);

  const groups = new Map<string, string[]>();
  for (const id of [...path.nodes.keys()].filter((k) => within.has(k)).sort((a, b) => depth.get(a)! - depth.get(b)!)) {
    const name = path.nodes.get(id)!.mark;
    const ids = groups.get(name);
    if (ids) ids.push(id);
    else groups.set(name, [id]);
  }
  const stations = [...groups].map(([name, ids]) => stationOf(name, ids, path, ctx, results));

  const steps = new Map<string, { link: PathLink; count: number; from: string; to: string }>();
  for (const link of path.links) {
    if (!within.has(link.upper) || !within.has(link.lower)) continue;
    const from = path.nodes.get(link.upper)!.mark;
    const to = path.nodes.get(link.lower)!.mark;
    const key = `${from}|${to}|${link.joint?.mark ?? link.by}`;
    const known = steps.get(key);
    if (known) known.count++;
    else steps.set(key, { link, count: 1, from, to });
  }
  const order = new Map(stations.map((s, i) => [s.mark, i]));
  const sorted = [...steps.values()].sort(
    (a, b) => order.get(a.from)! - order.get(b.from)! || order.get(a.to)! - order.get(b.to)!,
  );
  return {
    mark,
    stations,
    steps: sorted.map(
      ({ link, count, from, to }): PathStep => ({
        from,
        to,
        mark: link.joint?.mark ?? '',
        what: link.joint
          ? JOINT_WORDS[link.joint.kind]
          : link.by === 'soil'
            ? 'concrete on soil'
            : 'sheathing on framing',
        count,
        shares: sharesOf(link, ctx, results),
        together: togetherOf(link, results),
      }),
    ),
    breaks: pathBreaks(ctx.project, ctx.structure, path)
      .filter((b) => within.has(b.part))
      .map((b) => b.why),
    ends: stations.filter((s) => s.mark === SOIL || s.what === WHAT.wall('')).map((s) => s.mark),
  };
}

/** The same from a whole run; undefined when nothing bears the mark or nothing could be worked out. */
export function pathOf(d: Derived, mark: string): PathAnswer | undefined {
  const ctx = contextOf(d);
  return ctx && pathChain(ctx, d.results, mark);
}
