/**
 * Where the load path is broken. Every part must be held by as many joints as its kind needs and must have something to
 * hold; every way down must end in the soil or the house. A missing joint leaves two parts that say so.
 */

import type { Project } from '../../project/model.js';
import { jointsAt } from '../../structure/lookup.js';
import type { Member, MemberRole, Structure } from '../../structure/model.js';
import { isTrim, type LoadPath, loadPath, SOIL } from './graph.js';
import { unseated } from './seats.js';

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
  // They stand on the old roof, not on our beams.
  'fill-rafter': { below: 0, above: 0 },
  'valley-plate': { below: 0, above: 0 },
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

/** Fastener groups of a ledger further apart than they are spaced, or than the studs they stand at: one of them is missing. */
function ledgerGaps(project: Project, structure: Structure): PathBreak[] {
  return project.cover.ledgers.flatMap((ledger): PathBreak[] => {
    const member = structure.members.find((m) => m.id === ledger.mark);
    const wall = project.house.walls[ledger.wall];
    if (!member || !wall) return [];
    const at = structure.joints
      .filter((j) => j.kind === 'ledger-to-house' && j.ties[0]?.part === member.id)
      .map((j) => j.ties[0]!.along)
      .sort((a, b) => a - b);
    const most = 1.5 * (ledger.fastening?.spacing ?? wall.build.studSpacing);
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
    jointsAt(structure, a).some((j) => j.kind === 'beam-splice' && j.ties.some((t) => t.part === b));
  return [...lines.values()].flatMap((pieces) =>
    pieces.slice(1).flatMap((piece, i): PathBreak[] => {
      const before = pieces[i]!;
      if (tied(before.id, piece.id)) return [];
      const why = `${before.id} and ${piece.id} meet over a post and nothing ties them`;
      return [{ part: piece.id, mark: piece.mark, path: piece.path, why }];
    }),
  );
}

/** Beam ends that the house is stated to hold, with no joint there: the other posts would hide that one is missing. */
function looseEnds(project: Project, structure: Structure): PathBreak[] {
  return project.cover.beams.flatMap((line) =>
    (['start', 'end'] as const).flatMap((key): PathBreak[] => {
      const end = line.ends?.[key];
      if (!end) return [];
      const kind = end.kind === 'on-wall' ? 'beam-to-wall' : 'beam-to-wall-post';
      if (structure.joints.some((j) => j.kind === kind && j.path === end.path)) return [];
      const own = structure.members.filter((m) => m.role === 'beam' && m.mark === line.mark);
      const piece = key === 'start' ? own[0] : own.at(-1);
      if (!piece) return [];
      const what = end.kind === 'on-wall' ? 'the house wall' : `post ${end.mark} in the house wall`;
      const why = `${piece.id} is not tied to ${what} at its ${key}, where the file says the house holds it`;
      return [{ part: piece.id, mark: line.mark, path: end.path, why }];
    }),
  );
}

/** Stated posts under a beam, its own and shared ones, that a piece over them is not tied to: a brace may still hold them. */
function loosePosts(project: Project, structure: Structure): PathBreak[] {
  const posts = new Map(structure.members.filter((m) => m.role === 'post').map((m) => [m.mark, m]));
  const tied = new Set(
    structure.joints.filter((j) => j.kind === 'beam-to-post').map((j) => `${j.ties[0]?.part} ${j.ties[1]?.part}`),
  );
  return project.cover.beams.flatMap((line): PathBreak[] => {
    const stated = [...line.posts.map((p) => p.mark), ...(line.shared ?? []).map((s) => s.post)];
    return structure.members.flatMap((piece) =>
      piece.role !== 'beam' || piece.mark !== line.mark
        ? []
        : stated.flatMap((mark): PathBreak[] => {
            const post = posts.get(mark);
            if (!post || !over(piece, post) || tied.has(`${piece.id} ${post.id}`)) return [];
            const why = `${piece.id} is not tied to ${mark}, which stands under it`;
            return [{ part: piece.id, mark: line.mark, path: line.path, why }];
          }),
    );
  });
}

/** Cross members with an end that is not tied to its post: the braces under them would hide it. */
function looseStruts(project: Project, structure: Structure): PathBreak[] {
  const tied = new Set(
    structure.joints.filter((j) => j.kind === 'strut-to-post').map((j) => `${j.ties[0]?.part} ${j.ties.at(-1)?.part}`),
  );
  return structure.members.flatMap((m) => {
    const spec = m.role === 'strut' ? project.cover.struts?.find((s) => s.mark === m.mark) : undefined;
    return [spec?.from, spec?.to].flatMap((post): PathBreak[] =>
      post === undefined || tied.has(`${m.id} ${post}`)
        ? []
        : [{ part: m.id, mark: m.mark, path: m.path, why: `${m.id} is not tied to ${post}` }],
    );
  });
}

/** Whether the middle of a post's top lies between the ends of a beam piece. */
function over(piece: Member, post: Member): boolean {
  const { start, end } = piece;
  const [dx, dy] = [(end.x - start.x) / piece.length, (end.y - start.y) / piece.length];
  const along = (post.end.x - start.x) * dx + (post.end.y - start.y) * dy;
  return along >= -1e-6 && along <= piece.length + 1e-6;
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
  for (const { part, why } of unseated(structure)) say(part, why);
  // A ridge board hangs between rafters that lean on each other: it hands nothing down itself.
  const hung = new Set(structure.members.filter((m) => NEEDS[m.role].below === 0).map((m) => m.id));
  for (const id of strandedIn(path)) {
    if (hung.has(id)) continue;
    const n = path.nodes.get(id)!;
    if (n.kind === 'wall' || breaks.some((b) => b.part === id)) continue;
    say(id, `${id} has no way down to the soil or the house`);
  }
  return [
    ...breaks,
    ...untied(structure),
    ...ledgerGaps(project, structure),
    ...[...loosePosts(project, structure), ...looseStruts(project, structure), ...looseEnds(project, structure)].filter(
      (b) => !breaks.some((k) => k.part === b.part),
    ),
  ];
}
