import type { FootingChoice, FootingKind } from '../../../project/model.js';
import type { Footing } from '../../model.js';

export type FootingShape = Pick<
  Footing,
  'top' | 'bottom' | 'bearingArea' | 'size' | 'round' | 'pierDiameter' | 'padThickness' | 'concrete' | 'soilOver'
>;

export type FootingFault = {
  readonly code: string;
  readonly key: string;
  readonly message: string;
  readonly found: number;
  readonly expected: string;
};

export interface FootingForm<K extends FootingKind> {
  /** Concrete under a post base, for the height of the walking surface or grade there. */
  shape(choice: Extract<FootingChoice, { kind: K }>, surface: number): FootingShape | FootingFault;
}
