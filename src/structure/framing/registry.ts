import type { FramingKind } from '../../project/model.js';
import type { Framed, FrameInput, Framing } from './contract.js';
import { rafter } from './rafter.js';
import { truss } from './truss.js';

const FRAMINGS: { readonly [K in FramingKind]: Framing<K> } = {
  'common-truss': truss as Framing<'common-truss'>,
  'scissor-truss': truss as Framing<'scissor-truss'>,
  rafter,
};

export const frameRoof = (input: FrameInput<FramingKind>): Framed | undefined =>
  (FRAMINGS[input.choice.kind] as Framing<FramingKind>).frame(input);
