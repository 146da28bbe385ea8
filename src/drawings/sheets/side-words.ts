/** What holds the side load, in words, for the sheets that say it. */
import type { SheetContext } from './contract.js';

const SYSTEM: Readonly<Record<string, string>> = {
  house: 'through the roof diaphragm into the house',
  'knee-braces': 'by knee braces into posts and footings',
  'fixed-posts': 'by posts fixed at their feet',
  none: 'by nothing: this must be mended',
  unknown: 'by a system not chosen yet',
};

/** One sentence for both directions. */
export function sideWords({ input }: SheetContext): string {
  const { x, y } = input.project.cover.lateral;
  return x === y
    ? `Side load is held ${SYSTEM[x]}, along the house wall and square to it.`
    : `Side load along the house wall is held ${SYSTEM[x]}; square to it ${SYSTEM[y]}.`;
}
