/** What runs through the columns of a notes sheet, as data, and the measured pieces it becomes. */
import type { Vec2 } from '../../base/vec.js';
import type { FaceName, LayerName, Primitive } from '../ir/index.js';
import type { Style } from './style.js';
import type { TableColumn, TableRow } from './table.js';

/** Running text of a notes sheet, as data. */
export type Block =
  | { readonly kind: 'heading'; readonly text: string }
  | {
      readonly kind: 'para';
      readonly text: string;
      readonly face?: FaceName;
      readonly path?: string;
      /** Must stand in the same column as what follows it. */
      readonly keep?: boolean;
    }
  | { readonly kind: 'bullets'; readonly items: readonly string[] }
  | { readonly kind: 'numbered'; readonly items: readonly string[]; readonly start?: number }
  | {
      readonly kind: 'pairs';
      readonly rows: readonly { readonly name: string; readonly value: string; readonly path?: string }[];
    }
  | {
      readonly kind: 'table';
      readonly title?: string;
      readonly columns: readonly TableColumn[];
      readonly rows: readonly TableRow[];
      /** Never split between columns: for short tables. */
      readonly whole?: boolean;
    }
  | {
      readonly kind: 'drawing';
      readonly height: number;
      readonly draw: (at: Vec2, width: number) => readonly Primitive[];
    }
  /** One step of a calculation: what it is and by which clause, then the formula with numbers and result. */
  | {
      readonly kind: 'step';
      readonly symbol: string;
      readonly meaning: string;
      readonly expression: string;
      readonly clause: string;
    }
  | { readonly kind: 'gap'; readonly height?: number };
export type BlockOf<K extends Block['kind']> = Extract<Block, { kind: K }>;

/** A piece that is never split: measured, and drawn with its top left corner anywhere. */
export interface Slug {
  readonly height: number;
  /** Space above it, dropped at the top of a column. */
  readonly before: number;
  /** Must stand in the same column as the piece after it. */
  readonly keep: boolean;
  readonly draw: (at: Vec2) => readonly Primitive[];
  /** Drawn first when this piece starts a column (a table's heading row). */
  readonly repeat?: { readonly height: number; readonly draw: (at: Vec2) => readonly Primitive[] };
}

export interface Setting {
  readonly width: number;
  readonly style: Style;
  readonly layer: LayerName;
}
