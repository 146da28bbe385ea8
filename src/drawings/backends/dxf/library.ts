import type { Primitive } from '../../ir/index.js';
import type { DimStyle } from './dimension.js';
import type { Entity } from './entity.js';

export interface Block {
  readonly name: string;
  readonly entities: readonly Entity[];
}

/** Blocks and dimension styles that the entities of one file name. */
export interface Library {
  /** Block of a symbol; equal symbols share one. Returns its name. */
  symbolBlock(items: readonly Primitive[], make: (items: readonly Primitive[]) => readonly Entity[]): string;
  /** Anonymous block of one dimension. */
  dimensionBlock(entities: readonly Entity[]): string;
  dimStyle(style: DimStyle): string;
  blocks(): readonly Block[];
  dimStyles(): readonly DimStyle[];
}

export function library(): Library {
  const blocks: Block[] = [];
  const styles = new Map<string, DimStyle>();
  const symbols = new Map<string, string>();
  let dimensions = 0;
  return {
    symbolBlock(items, make) {
      // By what is drawn, layers included: the same tag in two sheets' layers is two blocks.
      const entities = make(items);
      const key = JSON.stringify(entities);
      let name = symbols.get(key);
      if (name === undefined) {
        name = `EW-SYMBOL-${String(symbols.size + 1).padStart(3, '0')}`;
        symbols.set(key, name);
        blocks.push({ name, entities });
      }
      return name;
    },
    dimensionBlock(entities) {
      const name = `*D${++dimensions}`;
      blocks.push({ name, entities });
      return name;
    },
    dimStyle(style) {
      styles.set(style.name, style);
      return style.name;
    },
    blocks: () => blocks,
    dimStyles: () => [...styles.values()],
  };
}
