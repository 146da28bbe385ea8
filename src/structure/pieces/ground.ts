import { box, prism } from '../../base/geometry/index.js';
import { clipHalfPlane } from '../../base/plane.js';
import type { Vec2 } from '../../base/vec.js';
import type { Project, Step } from '../../project/model.js';
import { heightAt, surfaceAt } from '../ground.js';
import type { Incline, Piece, Solid, Structure } from '../model.js';
import { convexParts } from './convex.js';

/** How far the ground is drawn past house and roof, and its thickness. Drawing only. */
const MARGIN = 120;
const CRUST = 2;

/** Part of a sloping plate of even plumb thickness. */
const plate = (top: Incline, outline: readonly Vec2[], thickness: number): Solid =>
  prism(
    outline,
    { x: 0, y: 0, z: top.z0 },
    { x: 1, y: 0, z: top.gx },
    { x: 0, y: 1, z: top.gy },
    { x: 0, y: 0, z: -thickness },
  );

/** Treads fall away along +y, as many as risers. */
function stepPieces(step: Step, index: number, structure: Structure): Piece[] {
  const ys = step.outline.map((p) => p.y);
  const [y0, y1] = [Math.min(...ys), Math.max(...ys)];
  const n = Math.max(1, step.risers);
  const low = Math.min(...step.outline.map((p) => surfaceAt(structure, p)));
  const rise = (step.top - low) / n;
  if (!(rise > 0 && y1 > y0)) return [];
  const pieces: Piece[] = [];
  for (let k = 0; k < n; k++) {
    const from = y0 + ((y1 - y0) * k) / n;
    const to = y0 + ((y1 - y0) * (k + 1)) / n;
    for (const part of convexParts(step.outline)) {
      const tread = clipHalfPlane(
        clipHalfPlane(part, (q) => q.y - from),
        (q) => to - q.y,
      );
      if (tread.length < 3) continue;
      const height = step.top - k * rise - low;
      const solid = prism(
        tread,
        { x: 0, y: 0, z: low },
        { x: 1, y: 0, z: 0 },
        { x: 0, y: 1, z: 0 },
        { x: 0, y: 0, z: height },
      );
      pieces.push({
        part: `ST${index + 1}`,
        mark: `ST${index + 1}`,
        role: 'step',
        state: step.state,
        material: 'concrete',
        solid,
      });
    }
  }
  return pieces;
}

/** Ground: falling away in front of the house line (y ≥ 0), level beside and behind it. */
function gradePieces(structure: Structure): Piece[] {
  const corners = [
    ...structure.walls.map((w) => w.start),
    ...structure.roofs.flatMap((r) => [r.min, r.max]),
    ...structure.slabs.flatMap((s) => s.outline),
  ];
  if (corners.length === 0) return [];
  const xs = corners.map((c) => c.x);
  const ys = corners.map((c) => c.y);
  const [x0, x1] = [Math.min(...xs) - MARGIN, Math.max(...xs) + MARGIN];
  const [y0, y1] = [Math.min(...ys, 0) - MARGIN, Math.max(...ys, 0) + MARGIN];
  const z = heightAt(structure.grade, { x: 0, y: 0 });
  const piece = (solid: Solid): Piece => ({
    part: 'grade',
    mark: 'grade',
    role: 'grade',
    state: 'existing',
    material: 'earth',
    solid,
  });
  const front = [
    { x: x0, y: 0 },
    { x: x1, y: 0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
  return [piece(plate(structure.grade, front, CRUST)), piece(box({ x: x0, y: y0, z: z - CRUST }, { x: x1, y: 0, z }))];
}

export const groundPieces = (structure: Structure, project: Project): Piece[] => [
  ...gradePieces(structure),
  ...structure.slabs.flatMap((s) =>
    convexParts(s.outline).map(
      (part): Piece => ({
        part: s.mark,
        mark: s.mark,
        role: 'slab',
        state: s.state,
        material: 'concrete',
        solid: plate(s.top, part, s.thickness),
      }),
    ),
  ),
  ...project.patio.steps.flatMap((s, i) => stepPieces(s, i, structure)),
];
