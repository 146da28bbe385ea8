import type { FootingChoice, FootingKind } from '../../../project/model.js';
import type { FootingFault, FootingForm, FootingPlace, FootingShape } from './contract.js';
import { embeddedPost } from './embedded-post.js';
import { pierOnPad } from './pier-on-pad.js';
import { roundPier } from './round-pier.js';
import { slab } from './slab.js';
import { squarePad } from './square-pad.js';

const FORMS: { readonly [K in FootingKind]: FootingForm<K> } = {
  'round-pier': roundPier,
  'square-pad': squarePad,
  'pier-on-pad': pierOnPad,
  'embedded-post': embeddedPost,
  slab,
};

export const footingShape = (
  choice: FootingChoice,
  surface: number,
  place: FootingPlace,
): FootingShape | FootingFault => (FORMS[choice.kind] as FootingForm<FootingKind>).shape(choice, surface, place);
