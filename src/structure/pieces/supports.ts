import { barBetween, box, prism } from '../../base/geometry/index.js';
import type { Vec2 } from '../../base/vec.js';
import type { Footing, MaterialClass, Member, Piece, Solid } from '../model.js';

/** Sides of the prism drawn for a round pier. */
const PIER_SIDES = 16;

export const woodOf = (m: Member): MaterialClass =>
  m.section.family === 'glulam' || m.section.family === 'lvl' ? 'engineered-wood' : 'wood';

export const memberPiece = (m: Member, solid: Solid, material = woodOf(m)): Piece => ({
  part: m.id,
  mark: m.mark,
  role: m.role,
  state: m.state,
  material,
  solid,
});

function pier(f: Footing, diameter: number, bottom: number): Solid {
  const ring: Vec2[] = Array.from({ length: PIER_SIDES }, (_, i) => {
    // Half a step of turn puts flats, not corners, on the axes.
    const t = ((i + 0.5) * 2 * Math.PI) / PIER_SIDES;
    return { x: (Math.cos(t) * diameter) / 2, y: (Math.sin(t) * diameter) / 2 };
  });
  return prism(
    ring,
    { ...f.at, z: bottom },
    { x: 1, y: 0, z: 0 },
    { x: 0, y: 1, z: 0 },
    { x: 0, y: 0, z: f.top - bottom },
  );
}

export function footingPieces(f: Footing): Piece[] {
  // The slab is drawn already.
  if (f.onSlab) return [];
  const solids: Solid[] = [];
  const padTop = f.bottom + f.padThickness;
  if (!f.round) {
    const h = f.size / 2;
    solids.push(box({ x: f.at.x - h, y: f.at.y - h, z: f.bottom }, { x: f.at.x + h, y: f.at.y + h, z: padTop }));
  }
  if (f.pierDiameter > 0 && f.concrete > 0) solids.push(pier(f, f.pierDiameter, f.round ? f.bottom : padTop));
  return solids.map((solid) => ({
    part: f.id,
    mark: f.mark,
    role: 'footing',
    state: 'new',
    material: 'concrete',
    solid,
  }));
}

/** A bar for each ply, with plywood strips in the gaps between. */
export function barPieces(m: Member): Piece[] {
  const { plies, plyWidth, width, b, depth } = m.section;
  if (plies < 2) return [memberPiece(m, barBetween(m.start, m.end, m.up, width, depth))];
  const gap = (width - b) / (plies - 1);
  const pieces: Piece[] = [];
  for (let i = 0; i < plies; i++) {
    const aside = -width / 2 + plyWidth / 2 + i * (plyWidth + gap);
    pieces.push(memberPiece(m, barBetween(m.start, m.end, m.up, plyWidth, depth, { aside })));
    if (gap > 1e-6 && i + 1 < plies)
      pieces.push(
        memberPiece(
          m,
          barBetween(m.start, m.end, m.up, gap, depth, { aside: aside + (plyWidth + gap) / 2 }),
          'sheathing',
        ),
      );
  }
  return pieces;
}
