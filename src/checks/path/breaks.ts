/**
 * Where the load path is broken. Every part must be held by as many joints as its kind needs and must have something to
 * hold; every way down must end in the soil or the house. A missing joint leaves two parts that say so.
 */
import type { Project } from '../../project/model.js';
import type { Member, MemberRole, Structure } from '../../structure/model.js';
import { isTrim, type LoadPath, loadPath, SOIL } from './graph.js';

export interface PathBreak {
  /** Id and mark of the part that is left hanging. */
  readonly part: string;
  readonly mark: string;
  readonly path: string;
  /** One sentence: what is missing and where. */
  readonly why: string;
}

interface Needs {
  /** Fewest joints that hold it, and fewest that it holds. */
  readonly below: number;
  readonly above: number;
}

/** What each kind of member needs to be part of a path; trim needs nothing. */
const NEEDS: Readonly<Record<MemberRole, Needs>> = {
  rafter: { below: 2, above: 1 },
  truss: { below: 2, above: 1 },
  'gable-truss': { below: 2, above: 1 },
  ledger: { below: 2, above: 1 },
  beam: { below: 2, above: 1 },
  post: { below: 1, above: 1 },
  tie: { below: 2, above: 0 },
  ridge: { below: 0, above: 1 },
  strut: { below: 2, above: 0 },
  // A brace stands on its post and takes its beam, or cross member, above.
  brace: { below: 1, above: 1 },
  fascia: { below: 0, above: 0 },
  gutter: { below: 0, above: 0 },
  blocking: { below: 0, above: 0 },
  hip: { below: 2, above: 1 },
  outlooker: { below: 2, above: 0 },
  barge: { below: 0, above: 0 },
};

const plural = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

/** Parts from which no way leads to the soil or the house. */
function strandedIn(path: LoadPath): ReadonlySet<string> {
  const reached = new Set<string>();
  const open: string[] = [SOIL];
  for (const n of path.nodes.values()) if (n.kind === 'wall') open.push(n.id);
  while (open.length > 0) {
    const id = open.pop()!;
    if (reached.has(id)) continue;
    reached.add(id);
    for (const link of path.above.get(id) ?? []) open.push(link.upper);
  }
  const stranded = new Set<string>();
  for (const id of path.nodes.keys()) if (!reached.has(id)) stranded.add(id);
  return stranded;
}

/** Fastener groups of a ledger further apart than the studs they stand at: one of them is missing. */
function ledgerGaps(project: Project, structure: Structure): PathBreak[] {
  return project.cover.ledgers.flatMap((ledger): PathBreak[] => {
    const member = structure.members.find((m) => m.id === ledger.mark);
    const wall = project.house.walls[ledger.wall];
    if (!member || !wall) return [];
    const at = structure.joints
      .filter((j) => j.kind === 'ledger-to-house' && j.ties[0]?.part === member.id)
      .map((j) => j.ties[0]!.along)
      .sort((a, b) => a - b);
    const most = 1.5 * wall.build.studSpacing;
    const places = [-most / 2, ...at, member.length + most / 2];
    for (let i = 0; i + 1 < places.length; i++) {
      if (places[i + 1]! - places[i]! <= most + 1e-6) continue;
      const middle = Math.min(Math.max((places[i]! + places[i + 1]!) / 2, 0), member.length);
      const why = `${ledger.mark} is not fastened to the house near ${middle.toFixed(0)} in from its start`;
      return [{ part: member.id, mark: ledger.mark, path: ledger.path, why }];
    }
    return [];
  });
}

/** Pieces of one beam line that meet over a post with nothing to tie them. */
function untied(structure: Structure): PathBreak[] {
  const lines = new Map<string, Member[]>();
  for (const m of structure.members) {
    if (m.role !== 'beam') continue;
    const pieces = lines.get(m.mark);
    if (pieces) pieces.push(m);
    else lines.set(m.mark, [m]);
  }
  const tied = (a: string, b: string): boolean =>
    structure.joints.some((j) => j.kind === 'beam-splice' && [a, b].every((id) => j.ties.some((t) => t.part === id)));
  return [...lines.values()].flatMap((pieces) =>
    pieces.slice(1).flatMap((piece, i): PathBreak[] => {
      const before = pieces[i]!;
      if (tied(before.id, piece.id)) return [];
      const why = `${before.id} and ${piece.id} meet over a post and nothing ties them`;
      return [{ part: piece.id, mark: piece.mark, path: piece.path, why }];
    }),
  );
}

/** All breaks; empty when every roof surface has a closed way to the soil or the house. */
export function pathBreaks(project: Project, structure: Structure, path: LoadPath = loadPath(structure)): PathBreak[] {
  const breaks: PathBreak[] = [];
  const say = (id: string, why: string): void => {
    const n = path.nodes.get(id);
    if (n) breaks.push({ part: id, mark: n.mark, path: n.path, why });
  };
  for (const s of structure.surfaces) {
    if (!path.below.has(s.id)) say(s.id, `${s.mark} lies on no framing`);
  }
  for (const m of structure.members) {
    if (isTrim(m)) continue;
    const needs = NEEDS[m.role];
    const held = path.below.get(m.id)?.length ?? 0;
    const holds = path.above.get(m.id)?.length ?? 0;
    if (held < needs.below) {
      say(m.id, `${m.id} is held by ${plural(held, 'joint')} where its kind needs ${needs.below}`);
    } else if (holds < needs.above) say(m.id, `${m.id} carries nothing: no joint ties it to the part above`);
  }
  for (const f of structure.footings) {
    if (!path.above.has(f.id)) say(f.id, `${f.id} carries nothing: no joint ties a post to it`);
  }
  for (const id of strandedIn(path)) {
    const n = path.nodes.get(id)!;
    if (n.kind === 'wall' || breaks.some((b) => b.part === id)) continue;
    say(id, `${id} has no way down to the soil or the house`);
  }
  return [...breaks, ...untied(structure), ...ledgerGaps(project, structure)];
}
