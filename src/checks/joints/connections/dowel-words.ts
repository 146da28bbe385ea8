/** Bolts, screws and nails in words: what they are, where they sit, what the builder must keep to. */
import { formatLength } from '../../../base/quantity/index.js';
import { findFastener } from '../../../catalog/index.js';
import type { Bolts, DrivenDowels, FastenerPattern } from '../../../project/connections.js';

export type Dowels = Bolts | DrivenDowels;

export const counted = (p: FastenerPattern): number => p.alongGrain * p.acrossGrain;
export const driven = (part: Dowels): part is DrivenDowels => part.kind !== 'bolts';

export function dowelWords(part: Dowels): string {
  const f = findFastener(part.size);
  const name = `${f?.name ?? part.size}${driven(part) ? ` ${formatLength(part.length)}` : ''}`;
  const { plates } = part;
  if (!plates) return `(${counted(part.upper)}) ${name}`;
  const each = `(${counted(part.upper)}) ${name} above, (${counted(part.lower)}) below`;
  const size =
    plates.material === 'wood'
      ? plates.section
      : `${formatLength(plates.thickness)} x ${formatLength(plates.width)} steel`;
  return `${each}${driven(part) ? ', each' : ''} through (${plates.count}) ${size} plate${plates.count > 1 ? 's' : ''}`;
}

function laidOut(p: FastenerPattern): string {
  const run = (n: number, spacing: number, way: string): string =>
    n > 1 ? `${n} ${way} the grain at ${formatLength(spacing)}` : `1 ${way}`;
  const grid = `${run(p.alongGrain, p.spacingAlong, 'along')}, ${run(p.acrossGrain, p.spacingAcross, 'across')}`;
  return `${grid}, ${formatLength(p.end)} from the end, ${formatLength(p.edge)} from the edge`;
}

export function dowelLayout(part: Dowels): string {
  const level = part.axis === 'plumb' ? 'plumb' : `level, ${part.axis} to the upper part`;
  const washers = !driven(part) && part.washer > 0 ? `; ${formatLength(part.washer)} round washers` : '';
  const steel =
    part.plates?.material === 'steel' ? `, steel of Fy ${part.plates.Fy} psi and Fu ${part.plates.Fu} psi or more` : '';
  const plates = part.plates ? `; plates ${formatLength(part.plates.end)} past the last one${steel}` : '';
  return `${level}; upper part: ${laidOut(part.upper)}; lower part: ${laidOut(part.lower)}${plates}${washers}`;
}

/** NDS 2018 12.1.3, 12.1.4, 12.1.5, 12.3.7 (section numbers recalled). */
const CARE: Readonly<Record<Dowels['kind'], string>> = {
  bolts:
    'bolt holes 1/32 to 1/16 in over size, washers under head and nut, threads in at most a quarter of any bearing length',
  'lag-screws': 'lag screws turned, not driven, into lead holes, washers under their heads',
  'wood-screws': 'wood screws turned into lead holes',
  nails: 'nails prebored where the wood would split',
};

export const dowelCare = (part: Dowels): string => CARE[part.kind];
