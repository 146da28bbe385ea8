import type { FootingChoice, FootingKind } from '../../../project/model.js';
import type { FootingFault, FootingForm, FootingShape } from './contract.js';
import { pierOnPad } from './pier-on-pad.js';
import { roundPier } from './round-pier.js';
import { squarePad } from './square-pad.js';

const FORMS: { readonly [K in FootingKind]: FootingForm<K> } = {
  'round-pier': roundPier,
  'square-pad': squarePad,
  'pier-on-pad': pierOnPad,
};

export const footingShape = (choice: FootingChoice, surface: number): FootingShape | FootingFault =>
  (FORMS[choice.kind] as FootingForm<FootingKind>).shape(choice, surface);
