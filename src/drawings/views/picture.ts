/** A picture of the placed structure through a camera: pens by state of work, cut faces by material. */
import type { Vec2 } from '../../base/vec.js';
import type { MaterialClass, Piece } from '../../structure/model.js';
import type { LayerName, PatternName, PenName, Primitive, Rect } from '../ir/index.js';
import type { Camera } from './camera.js';
import { cutPiece } from './cut.js';
import { removeHidden } from './hidden.js';

export interface PictureOptions {
  readonly layers: {
    readonly fresh: LayerName;
    readonly existing: LayerName;
    readonly cut?: LayerName;
    readonly pattern?: LayerName;
  };
  /** Plane of a section: everything nearer the viewer is taken away. */
  readonly cutAt?: number;
  /** Pieces whose hidden edges are wanted, dashed. */
  readonly hidden?: (piece: Piece) => boolean;
}

export interface Picture {
  readonly items: readonly Primitive[];
  /** Extent of all drawn edges. */
  readonly bounds: Rect;
}

/** Pattern of each material's cut face; existing house walls are filled instead of hatched. */
const CUT_PATTERN: Readonly<Record<MaterialClass, PatternName | 'poche' | undefined>> = {
  wood: 'wood-cross',
  'engineered-wood': 'wood-cross',
  concrete: 'concrete',
  covering: undefined,
  sheathing: 'plywood',
  metal: 'steel',
  earth: 'earth',
  'house-wall': 'poche',
  'house-roof': 'existing',
  glass: undefined,
};

/** Parts below ground are seen as hidden work in every upright view. */
const BELOW_GROUND = new Set<Piece['role']>(['footing']);

function penOf(piece: Piece, outline: boolean, hidden: boolean): PenName {
  if (hidden || BELOW_GROUND.has(piece.role)) return 'hidden';
  if (piece.state === 'removed') return 'demolition';
  if (piece.state === 'existing') return 'existing';
  return outline ? 'new' : 'new-fine';
}

export function picture(pieces: readonly Piece[], camera: Camera, o: PictureOptions): Picture {
  const shown: { solid: Piece['solid']; part: string; piece: Piece }[] = [];
  const cuts: { face: readonly Vec2[]; piece: Piece }[] = [];
  for (const piece of pieces) {
    if (piece.role === 'grade') continue;
    if (o.cutAt === undefined) {
      shown.push({ solid: piece.solid, part: piece.part, piece });
      continue;
    }
    const { behind, face } = cutPiece(piece.solid, camera, o.cutAt);
    if (behind) shown.push({ solid: behind, part: piece.part, piece });
    if (face) cuts.push({ face, piece });
  }
  const want = o.hidden;
  const edges = removeHidden(shown, camera, want ? { hidden: (i) => want(shown[i]!.piece) } : {});
  const items: Primitive[] = [];
  const b = {
    x0: Number.POSITIVE_INFINITY,
    y0: Number.POSITIVE_INFINITY,
    x1: Number.NEGATIVE_INFINITY,
    y1: Number.NEGATIVE_INFINITY,
  };
  const grow = (p: Vec2) => {
    b.x0 = Math.min(b.x0, p.x);
    b.y0 = Math.min(b.y0, p.y);
    b.x1 = Math.max(b.x1, p.x);
    b.y1 = Math.max(b.y1, p.y);
  };
  for (const e of edges) {
    const { piece } = shown[e.piece]!;
    grow(e.a);
    grow(e.b);
    items.push({
      kind: 'line',
      layer: piece.state === 'new' ? o.layers.fresh : o.layers.existing,
      pen: penOf(piece, e.outline, e.hidden),
      a: e.a,
      b: e.b,
      mark: piece.mark,
    });
  }
  for (const { face, piece } of cuts) {
    face.forEach(grow);
    const pattern = CUT_PATTERN[piece.material];
    const layer = o.layers.cut ?? o.layers.fresh;
    // A cut face covers what is drawn before it: ground lines and earth do not run through a pier.
    items.push({ kind: 'polyline', layer, points: face, closed: true, fill: 'paper', mark: piece.mark });
    if (pattern !== undefined && pattern !== 'poche' && piece.role !== 'gutter') {
      items.push({ kind: 'hatch', layer: o.layers.pattern ?? layer, pattern, loops: [face], mark: piece.mark });
    }
    items.push({
      kind: 'polyline',
      layer,
      points: face,
      closed: true,
      pen: piece.state === 'new' ? 'cut' : 'existing-cut',
      mark: piece.mark,
      ...(pattern === 'poche' && { fill: 'poche' as const }),
    });
  }
  const empty = b.x1 < b.x0;
  return { items, bounds: empty ? { x: 0, y: 0, w: 1, h: 1 } : { x: b.x0, y: b.y0, w: b.x1 - b.x0, h: b.y1 - b.y0 } };
}
