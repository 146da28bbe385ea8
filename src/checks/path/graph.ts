/**
 * The load path as a graph: from each roof surface through framing, beams and posts to the soil or the house. Nodes are
 * placed parts; links are the joints between them, the sheathing on its framing, and the concrete on the soil.
 */
import type { Joint, Member, Structure } from '../../structure/model.js';
import { JOINT_TRAITS } from '../joints/kinds.js';

/** Where a path may end. */
export const SOIL = 'soil';

export type NodeKind = 'surface' | 'member' | 'footing' | 'wall' | 'soil';

export interface PathNode {
  readonly id: string;
  readonly mark: string;
  readonly kind: NodeKind;
  readonly path: string;
}

export interface PathLink {
  /** Part the load comes from, and the part it goes to. */
  readonly upper: string;
  readonly lower: string;
  readonly by: 'sheathing' | 'joint' | 'soil';
  /** The joint, when it is one. */
  readonly joint?: Joint;
}

export interface LoadPath {
  readonly nodes: ReadonlyMap<string, PathNode>;
  readonly links: readonly PathLink[];
  /** Links that leave a part downward, and those that come to it from above. */
  readonly below: ReadonlyMap<string, readonly PathLink[]>;
  readonly above: ReadonlyMap<string, readonly PathLink[]>;
}

/** Trim (fascia, gutter) is a load, not a way for one. */
export const isTrim = (m: Member): boolean => m.role === 'fascia' || m.role === 'gutter' || m.role === 'barge';

const push = (map: Map<string, PathLink[]>, key: string, link: PathLink): void => {
  const list = map.get(key);
  if (list) list.push(link);
  else map.set(key, [link]);
};

export function loadPath(structure: Structure): LoadPath {
  const nodes = new Map<string, PathNode>();
  const add = (id: string, mark: string, kind: NodeKind, path: string): void =>
    void nodes.set(id, { id, mark, kind, path });
  for (const s of structure.surfaces) add(s.id, s.mark, 'surface', s.path);
  for (const m of structure.members) if (!isTrim(m)) add(m.id, m.mark, 'member', m.path);
  for (const f of structure.footings) add(f.id, f.mark, 'footing', f.path);
  for (const w of structure.walls) add(w.id, w.name, 'wall', w.path);
  add(SOIL, SOIL, 'soil', '/basis/soil');

  const links: PathLink[] = [];
  for (const m of structure.members) {
    for (const surface of new Set(m.strips.map((s) => s.surface))) {
      links.push({ upper: surface, lower: m.id, by: 'sheathing' });
    }
  }
  for (const joint of structure.joints) {
    const upper = joint.ties[0];
    const lower = joint.ties.at(-1);
    // A splice ties two pieces that both stand on the post under it; nothing comes down through it.
    // A joint with a check of its own (ties on their rafters) holds its part as well as one that products serve.
    const { carries, own } = JOINT_TRAITS[joint.kind];
    if ((!carries && own === undefined) || joint.kind === 'beam-splice') continue;
    if (!upper || !lower || upper === lower) continue;
    links.push({ upper: upper.part, lower: lower.part, by: 'joint', joint });
  }
  for (const f of structure.footings) links.push({ upper: f.id, lower: SOIL, by: 'soil' });

  const below = new Map<string, PathLink[]>();
  const above = new Map<string, PathLink[]>();
  for (const link of links) {
    push(below, link.upper, link);
    push(above, link.lower, link);
  }
  return { nodes, links, below, above };
}
