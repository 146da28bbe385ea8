/** A nailer at the house wall in words: its pieces, the levels of their ends, slope, cut lengths and top edge. */
import { formatPitch } from '../../base/quantity/index.js';
import type { Nailer, NailerPiece } from '../../structure/nailers.js';

type Len = (inches: number) => string;

/** Slopes under this are level or square to what a square tells, radians. */
const FLAT = 0.005;

function pieceWords(p: NailerPiece, len: Len): string {
  const [low, high] = p.rise >= 0 ? [p.from.z, p.to.z] : [p.to.z, p.from.z];
  const at =
    Math.abs(p.rise) < FLAT
      ? `level at ${len(low)}`
      : `rising ${formatPitch(Math.abs(p.rise))} from ${len(low)} to ${len(high)}`;
  return `${len(p.length)} long, top edge ${at} above the floor`;
}

/** `2 pieces under the sheathing, each 9'-10" long, top edge rising 4/12 from ... to ... above the floor; ends plumb; ...`. */
export function nailerWords(n: Nailer, len: Len): string {
  const all = n.pieces.map((p) => pieceWords(p, len));
  const alike = all.every((w) => w === all[0]);
  const count = all.length === 1 ? 'one piece' : `${all.length} pieces`;
  const list = alike ? `${all.length > 1 ? 'each ' : ''}${all[0]}` : all.join('; ');
  const bevel = Math.max(...n.pieces.map((p) => Math.abs(p.bevel)));
  const edge =
    bevel < FLAT
      ? 'top edge tight to the underside of the sheathing all along'
      : `top edge bevelled ${formatPitch(bevel)} to lie flat under the sheathing`;
  return `${count} following the roof, ${list}; ends cut plumb${all.length > 1 ? ', meeting at the ridge' : ''}; ${edge}`;
}
