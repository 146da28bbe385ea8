/** Every check reads the flat picture of a sheet and the boxes of its lettering: both are made once a sheet. */
import { type TextBox, textBoxes } from '../../drawings/annotate/layout.js';
import { type Flat, flatten, type Sheet } from '../../drawings/ir/index.js';

const once = <T>(make: (s: Sheet) => T): ((s: Sheet) => T) => {
  const known = new WeakMap<Sheet, { readonly value: T }>();
  return (s) => {
    const k = known.get(s) ?? { value: make(s) };
    known.set(s, k);
    return k.value;
  };
};

export const flatOf: (s: Sheet) => readonly Flat[] = once(flatten);
export const boxesOf: (s: Sheet) => readonly TextBox[] = once((s) => textBoxes(flatOf(s)));
