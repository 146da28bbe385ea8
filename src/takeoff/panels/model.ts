/** Roof sheathing as it is laid: panels on each surface, and the sheets they are cut from. Inches on the slope. */
import type { Vec2 } from '../../base/vec.js';

export interface PanelPiece {
  /** `R1-left 2.3`: surface, row from the eave, panel from the row's start. */
  readonly id: string;
  readonly surface: string;
  readonly row: number;
  /** In the surface's (u, v). */
  readonly u0: number;
  readonly u1: number;
  readonly v0: number;
  readonly v1: number;
  /** What of it lies on the roof. */
  readonly parts: readonly (readonly Vec2[])[];
  readonly whole: boolean;
}

export interface PanelRow {
  readonly surface: string;
  readonly row: number;
  readonly v0: number;
  readonly v1: number;
  readonly u0: number;
  readonly u1: number;
}

/** A sheet that is cut up: where each piece lies in it, strength axis along its length. */
export interface CutSheet {
  readonly pieces: readonly { readonly piece: PanelPiece; readonly x: number; readonly y: number }[];
}

export interface PanelLayout {
  readonly roof: string;
  /** As named by the project, and as bought. */
  readonly sheathing: string;
  readonly item: string;
  readonly surfaces: readonly string[];
  readonly rows: readonly PanelRow[];
  readonly pieces: readonly PanelPiece[];
  readonly whole: number;
  readonly cut: readonly CutSheet[];
  /** Sheets to buy: whole ones and those cut up. */
  readonly sheets: number;
  /** Roof covered, square inches on the slope. */
  readonly area: number;
}
