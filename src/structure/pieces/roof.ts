import { prism } from '../../base/geometry/index.js';
import type { Vec3 } from '../../base/vec.js';
import type { Project } from '../../project/model.js';
import { GUTTER_SIZE } from '../constants.js';
import { findPanel } from '../layers.js';
import type { Piece, Solid, Structure, Surface } from '../model.js';
import { onSurface } from '../surfaces.js';

/** Slab over the whole surface from `low` to `high` square to the plane; its edges are plumb so that slopes meet at the ridge. */
function slab(s: Surface, low: number, high: number): Solid {
  const cos = Math.cos(s.slope);
  const origin: Vec3 = { ...s.origin, z: s.origin.z + low / cos };
  return prism(s.outline, origin, s.u, s.v, { x: 0, y: 0, z: (high - low) / cos });
}

/** Sheathing and covering of a surface, and its gutter. */
export function surfacePieces(s: Surface, structure: Structure, project: Project): Piece[] {
  const finish = project.cover.roofs.find((r) => r.mark === s.roof)?.finish;
  const sheathing = (finish && findPanel(finish.sheathing)?.thickness) ?? 0;
  const base = { part: s.id, mark: s.mark, role: 'roof-surface', state: 'new' } as const;
  const pieces: Piece[] = [];
  if (sheathing > 0) pieces.push({ ...base, material: 'sheathing', solid: slab(s, -sheathing, 0) });
  if (s.thickness > sheathing)
    pieces.push({ ...base, material: 'covering', solid: slab(s, 0, s.thickness - sheathing) });
  if (finish?.gutter) pieces.push(gutter(s, sheathing, structure));
  return pieces;
}

/** A box along the eave, in front of the fascia, its top at the underside of the sheathing. Drawing only. */
function gutter(s: Surface, sheathing: number, structure: Structure): Piece {
  const fascia = structure.members.find((m) => m.role === 'fascia' && m.roof === s.roof);
  const out = fascia?.section.b ?? 0;
  // Where the roof goes on over the house its gutter ends at the old eave.
  const past = structure.overlays?.find((o) => o.roof === s.roof)?.edge ?? 0;
  const width = Math.max(...s.outline.map((p) => p.x)) - past;
  const at = onSurface(s, s.onto === 0 ? past : 0, 0);
  const top = at.z - sheathing / Math.cos(s.slope);
  const origin = { x: at.x + s.downhill.x * out, y: at.y + s.downhill.y * out, z: top - GUTTER_SIZE };
  const profile = [
    { x: 0, y: 0 },
    { x: GUTTER_SIZE, y: 0 },
    { x: GUTTER_SIZE, y: GUTTER_SIZE },
    { x: 0, y: GUTTER_SIZE },
  ];
  const run = { x: s.u.x * width, y: s.u.y * width, z: 0 };
  const solid = prism(profile, origin, { ...s.downhill, z: 0 }, { x: 0, y: 0, z: 1 }, run);
  return { part: `${s.id}-gutter`, mark: 'gutter', role: 'gutter', state: 'new', material: 'metal', solid };
}
