import { type Fastener, findFastener } from '../../catalog/index.js';
import { inches } from '../../structure/text.js';

/** Steel, lb per cubic inch (490 pcf). */
const STEEL = 490 / 1728;

/** Nails in a pound by the weight of their shanks; the head adds a few hundredths, which lists of the trade round away. */
export const perPound = (f: Pick<Fastener, 'D'> & { readonly length: number }): number =>
  1 / (((STEEL * Math.PI) / 4) * f.D * f.D * f.length);

/** A catalogue nail or bolt as bought; an id the catalogue does not know is kept as written. */
export function named(id: string, length?: number): { item: string; perPound?: number } {
  const f = findFastener(id);
  if (!f) return { item: id };
  if (f.length !== undefined)
    return { item: `${f.name}, ${inches(f.length)}`, perPound: perPound({ D: f.D, length: f.length }) };
  return { item: length === undefined ? f.name : `${f.name} x ${inches(length)}` };
}

/** A diameter as the trade writes it: a fraction of a sixteenth, else decimals. */
export const diameter = (x: number): string => (Math.abs(x * 16 - Math.round(x * 16)) < 1e-6 ? inches(x) : `${x} in`);
