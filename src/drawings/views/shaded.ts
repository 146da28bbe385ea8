/** A shaded perspective: faces painted in greys from far to near, visible edges drawn over them. */
import { faceNormal } from '../../base/geometry/index.js';
import { cross, dot, unit, type Vec2, type Vec3 } from '../../base/vec.js';
import type { MaterialClass, Piece } from '../../structure/model.js';
import { type LayerName, type Primitive, type Rect, SHADES, type ShadeName } from '../ir/index.js';
import { CAMERAS } from './camera.js';
import { removeHidden, subtract } from './hidden.js';
import { type Facet, paintOrder } from './paint.js';
import { ahead, type Eye, inPerspective } from './perspective.js';
import { seamsOf } from './seams.js';

/** Grey of each material in full light; a matter of the eye, no source. */
const GREY: Readonly<Record<MaterialClass, number>> = {
  wood: 0.9,
  'engineered-wood': 0.9,
  concrete: 0.96,
  covering: 0.66,
  sheathing: 0.84,
  metal: 0.88,
  earth: 0.98,
  'house-wall': 0.98,
  'house-roof': 0.8,
  glass: 0.55,
};

/** Light in the shade, as a share of full light. */
const AMBIENT = 0.62;

/** Sun over the left shoulder of the viewer: direction to it from the picture's right, the viewer and straight up. */
const SUN = { right: -0.5, toward: 0.62, up: 0.85 } as const;

/** The ground is painted for what stands on it to hide; its edges are no edges of anything built. */
const GROUND = new Set<Piece['role']>(['grade']);
/** How far the ground is painted on past what the model draws of it, along its own slopes, inches. */
const HORIZON = 3600;

/** Picture inches within which an edge lies along a seam. */
const ON = 0.05;

/**
 * Picture inches by which painted faces reach past their edges, so that no paper shines through between neighbors. What is
 * nearer is painted over it, and the edges themselves are drawn last.
 */
const SWELL = 0.2;

function swollen(points: readonly Vec2[]): Vec2[] {
  const n = points.length;
  const mid = { x: points.reduce((s, p) => s + p.x, 0) / n, y: points.reduce((s, p) => s + p.y, 0) / n };
  return points.map((p) => {
    const d = Math.hypot(p.x - mid.x, p.y - mid.y);
    const k = d > 1e-9 ? 1 + SWELL / d : 1;
    return { x: mid.x + k * (p.x - mid.x), y: mid.y + k * (p.y - mid.y) };
  });
}

function shadeOf(grey: number): ShadeName {
  const names = Object.keys(SHADES) as ShadeName[];
  return names.reduce((best, n) => (Math.abs(SHADES[n] - grey) < Math.abs(SHADES[best] - grey) ? n : best));
}

export interface Shaded {
  readonly items: readonly Primitive[];
  /** Picture of the new work. */
  readonly fresh: Rect;
}

/** Picture coordinates are inches at the distance of what is looked at. */
export function shaded(
  pieces: readonly Piece[],
  eye: Eye,
  layers: { readonly fresh: LayerName; readonly existing: LayerName; readonly shade: LayerName },
): Shaded {
  const shown = ahead(
    pieces.filter((p) => p.state !== 'removed').map((p) => (GROUND.has(p.role) ? spread(p) : p)),
    eye,
  );
  const forward = unit({ x: eye.target.x - eye.at.x, y: eye.target.y - eye.at.y, z: 0 });
  const right = cross(forward, { x: 0, y: 0, z: 1 });
  const sun = unit({
    x: SUN.right * right.x - SUN.toward * forward.x,
    y: SUN.right * right.y - SUN.toward * forward.y,
    z: SUN.up,
  });
  const lit = (p: Piece, n: Vec3): ShadeName =>
    shadeOf(GREY[p.material] * (AMBIENT + (1 - AMBIENT) * Math.max(0, dot(n, sun))));
  const seen = shown.map((piece) => ({ piece, part: piece.part, solid: inPerspective(piece.solid, eye) }));
  const facets = seen.flatMap((s): Facet<{ readonly shade: ShadeName; readonly piece: Piece }>[] =>
    s.solid.faces.map((f) => ({
      points: f.map((k) => s.solid.vertices[k]!),
      of: { shade: lit(s.piece, faceNormal(s.piece.solid, f)), piece: s.piece },
    })),
  );
  const fills = paintOrder(facets).map(
    (f): Primitive => ({
      kind: 'polyline',
      layer: layers.shade,
      closed: true,
      points: swollen(f.points),
      fill: f.of.shade,
      mark: f.of.piece.mark,
    }),
  );
  const seams = seamsOf(shown)
    .map(([a, b]) => inPerspective({ vertices: [a, b], faces: [] }, eye).vertices)
    .map(([a, b]) => [a!, b!] as const);
  const lines = removeHidden(seen, CAMERAS.plan).flatMap((e): Primitive[] => {
    const { piece } = seen[e.piece]!;
    if (GROUND.has(piece.role)) return [];
    const fresh = piece.state === 'new';
    const span = (t: number): Vec2 => ({ x: e.a.x + t * (e.b.x - e.a.x), y: e.a.y + t * (e.b.y - e.a.y) });
    return subtract([[0, 1]], covered(e, seams)).map(
      ([t0, t1]): Primitive => ({
        kind: 'line',
        layer: fresh ? layers.fresh : layers.existing,
        pen: fresh && e.outline ? 'new-fine' : 'hatch',
        a: span(t0),
        b: span(t1),
        mark: piece.mark,
      }),
    );
  });
  const points = seen.filter((s) => s.piece.state === 'new').flatMap((s) => s.solid.vertices);
  const [x, y] = [Math.min(...points.map((p) => p.x)), Math.min(...points.map((p) => p.y))];
  const fresh = { x, y, w: Math.max(...points.map((p) => p.x)) - x, h: Math.max(...points.map((p) => p.y)) - y };
  return { items: [...fills, ...lines], fresh };
}

/** Ground run on to the horizon; the line along the house where it folds stays. */
function spread(p: Piece): Piece {
  const v = p.solid.vertices;
  const top = p.solid.faces.map((f) => faceNormal(p.solid, f)).find((n) => n.z > 0.5);
  if (!top) return p;
  const mid = (Math.min(...v.map((q) => q.x)) + Math.max(...v.map((q) => q.x))) / 2;
  const vertices = v.map((q) => {
    const dx = q.x < mid ? -HORIZON : HORIZON;
    const dy = Math.abs(q.y) < 1e-6 ? 0 : Math.sign(q.y) * HORIZON;
    return { x: q.x + dx, y: q.y + dy, z: q.z - (top.x * dx + top.y * dy) / top.z };
  });
  return { ...p, solid: { ...p.solid, vertices } };
}

/** Stretches of an edge, as shares of it, that lie along a seam. */
function covered(
  e: { readonly a: Vec2; readonly b: Vec2 },
  seams: readonly (readonly [Vec2, Vec2])[],
): [number, number][] {
  const [dx, dy] = [e.b.x - e.a.x, e.b.y - e.a.y];
  const size = Math.hypot(dx, dy);
  const off = (p: Vec2): number => Math.abs(dx * (p.y - e.a.y) - dy * (p.x - e.a.x)) / size;
  const at = (p: Vec2): number => ((p.x - e.a.x) * dx + (p.y - e.a.y) * dy) / (size * size);
  return seams
    .filter(([p, q]) => off(p) < ON && off(q) < ON)
    .map(([p, q]): [number, number] => [Math.min(at(p), at(q)), Math.max(at(p), at(q))])
    .filter(([t0, t1]) => t1 > 0 && t0 < 1);
}
