import type { Vec3 } from '../base/vec.js';
import type { Project } from '../project/model.js';
import type { Piece, Solid, Structure } from '../structure/model.js';
import { piecesOf } from '../structure/pieces/index.js';
import type { Scene, SceneMesh } from './model.js';

const sub = (a: Vec3, b: Vec3): Vec3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
const cross = (a: Vec3, b: Vec3): Vec3 => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});

/** Unit normal of a face by Newell's sum, which three corners in a line do not upset. */
function normal(s: Solid, face: readonly number[]): Vec3 {
  let n: Vec3 = { x: 0, y: 0, z: 0 };
  const o = s.vertices[face[0]!]!;
  for (let i = 1; i + 1 < face.length; i++) {
    const c = cross(sub(s.vertices[face[i]!]!, o), sub(s.vertices[face[i + 1]!]!, o));
    n = { x: n.x + c.x, y: n.y + c.y, z: n.z + c.z };
  }
  const d = Math.hypot(n.x, n.y, n.z);
  return d === 0 ? n : { x: n.x / d, y: n.y / d, z: n.z / d };
}

/** Cosine of the angle under which two faces count as one plane. */
const FLAT = 0.9999;

function addSolid(s: Solid, triangles: number[], edges: number[]): void {
  const sides = new Map<string, Vec3>();
  const put = (list: number[], ...points: readonly Vec3[]): void => {
    for (const p of points) list.push(p.x, p.y, p.z);
  };
  for (const face of s.faces) {
    const n = normal(s, face);
    const o = s.vertices[face[0]!]!;
    for (let i = 1; i + 1 < face.length; i++) put(triangles, o, s.vertices[face[i]!]!, s.vertices[face[i + 1]!]!);
    for (let i = 0; i < face.length; i++) {
      const a = face[i]!;
      const b = face[(i + 1) % face.length]!;
      const other = sides.get(`${b} ${a}`);
      if (other === undefined) {
        sides.set(`${a} ${b}`, n);
        continue;
      }
      if (n.x * other.x + n.y * other.y + n.z * other.z < FLAT) put(edges, s.vertices[a]!, s.vertices[b]!);
    }
  }
}

/** Meshes of everything placed, one a part and role, in the order of the pieces. */
export function sceneOf(project: Project, structure: Structure): Scene {
  interface Draft {
    readonly piece: Piece;
    readonly triangles: number[];
    readonly edges: number[];
  }
  const drafts = new Map<string, Draft>();
  for (const piece of piecesOf(structure, project)) {
    const key = `${piece.part}\n${piece.role}\n${piece.state}\n${piece.material}`;
    const draft = drafts.get(key) ?? { piece, triangles: [], edges: [] };
    drafts.set(key, draft);
    addSolid(piece.solid, draft.triangles, draft.edges);
  }
  const meshes = [...drafts.values()].map(
    ({ piece, triangles, edges }): SceneMesh => ({
      part: piece.part,
      mark: piece.mark,
      role: piece.role,
      state: piece.state,
      material: piece.material,
      triangles: Float32Array.from(triangles),
      edges: Float32Array.from(edges),
    }),
  );
  const xs = structure.roofs.flatMap((r) => [r.min.x, r.max.x]);
  const ys = structure.roofs.flatMap((r) => [r.min.y, r.max.y]);
  const bottoms = structure.footings.map((f) => f.bottom);
  return {
    meshes,
    min: [Math.min(...xs), Math.min(...ys), Math.min(0, ...bottoms)],
    max: [Math.max(...xs), Math.max(...ys), Math.max(...structure.roofs.map((r) => r.highestPoint))],
  };
}
