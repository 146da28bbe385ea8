/** A roof that goes on over a slope of the house roof. */
import type { Vec2, Vec3 } from '../../base/vec.js';
import type { OverlayShape } from '../tie-in/overlay-shape.js';
import type { Member } from './members.js';
import type { Surface } from './surfaces.js';

/**
 * Frame of a gable placed on top of an old roof slope: `x` up the old slope from the old eave edge under the new ridge, `y` level from the ridge to a side.
 */
export interface OverlayFrame {
  /** Old eave edge under the new ridge, at the top of the old sheathing. */
  readonly origin: Vec3;
  /** Level unit vectors: up the old slope, and from the ridge to the first side. */
  readonly into: Vec2;
  readonly side: Vec2;
}

export interface OverlayPlaced {
  readonly roof: string;
  /** Slope of the house roof it lies on. */
  readonly plane: string;
  readonly frame: OverlayFrame;
  /** Valleys and fill, from the line of the valleys' feet. */
  readonly shape: OverlayShape;
  /** Along x: the last frame of the cover, where its own roof surface ends, the valleys' feet, the end of the ridge. */
  readonly last: number;
  readonly edge: number;
  readonly start: number;
  readonly head: number;
  /** Heights of the new ridge, of the new eaves (top of sheathing), of the old roof's ridge. */
  readonly ridge: number;
  readonly eave: number;
  readonly oldRidge: number;
  /** Level distance from ridge to new eave. */
  readonly half: number;
  /** New sheathing, and with the covering, square to the slope. */
  readonly sheathing: number;
  readonly thickness: number;
  readonly layers: Surface['layers'];
  readonly faces: readonly OverlayFace[];
  readonly valleys: readonly Valley[];
  /** Valley plates, ridge board, fill rafters, fascia; none of them stands among the members of the structure. */
  readonly members: readonly Member[];
  readonly fills: readonly Fill[];
  readonly plates: PlateCut;
  readonly board: BoardCut;
  readonly path: string;
}

/** A piece of new roof surface cut by the valley; its outline lies at the top of the new sheathing. */
export interface OverlayFace {
  readonly id: string;
  readonly mark: string;
  /** +1 on the side that `frame.side` points to, −1 on the other. */
  readonly sign: 1 | -1;
  readonly outline: readonly Vec3[];
  /** On the slope, and on plan, square inches. */
  readonly area: number;
  readonly planArea: number;
  /** Out of the plane, upward. */
  readonly normal: Vec3;
  readonly slope: number;
}

export interface Valley {
  readonly mark: string;
  readonly sign: 1 | -1;
  readonly foot: Vec3;
  readonly head: Vec3;
  readonly length: number;
}

/** One pair of fill rafters, left hand and right hand. */
export interface Fill {
  readonly mark: string;
  readonly x: number;
  /** Plan area both carry, square inches. */
  readonly area: number;
  /** Level run from the centre of the ridge to the tip of its upper edge, at the rafter's centre. */
  readonly run: number;
  /** Upper edge to its longest point (downhill face); lower edge, 0 where the seat takes all of it. */
  readonly long: number;
  readonly short: number;
  /** Level length of its seat on the plate. */
  readonly seat: number;
}

export interface PlateCut {
  readonly mark: string;
  readonly long: number;
  readonly width: number;
  readonly thick: number;
  /** From the valley line, on the old slope and square to it: lower and upper outer edge. */
  readonly low: number;
  readonly high: number;
  /** Bevel of its outer edge from square, and angle of the cut at the ridge from square to its length. */
  readonly bevel: number;
  readonly ridgeCut: number;
}

export interface BoardCut {
  readonly mark: string;
  readonly long: number;
  readonly short: number;
  /** Cut along the old slope, from its edge. */
  readonly cut: number;
}
