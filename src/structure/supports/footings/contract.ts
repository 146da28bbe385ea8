import type { FootingChoice, FootingKind } from '../../../project/model.js';
import type { Footing } from '../../model.js';

export type FootingShape = Pick<
  Footing,
  | 'top'
  | 'bottom'
  | 'bearingArea'
  | 'size'
  | 'round'
  | 'pierDiameter'
  | 'padThickness'
  | 'concrete'
  | 'soilOver'
  | 'embedded'
  | 'onSlab'
>;

/** What stands on the footing and what lies there already. */
export interface FootingPlace {
  /** Width and depth of the post, inches. */
  readonly post: { readonly width: number; readonly depth: number };
  readonly slab: { readonly mark: string; readonly thickness: number } | undefined;
}

export type FootingFault = {
  readonly code: string;
  readonly key: string;
  readonly message: string;
  readonly found: number;
  readonly expected: string;
};

export interface FootingForm<K extends FootingKind> {
  /** Concrete under a post base, for the height of the walking surface or grade there. */
  shape(choice: Extract<FootingChoice, { kind: K }>, surface: number, place: FootingPlace): FootingShape | FootingFault;
}
