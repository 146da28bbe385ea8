/**
 * Concrete by pour, from the solids' own volumes. Bags are whole for each pour, because a pour that stops for want of a bag
 * leaves a cold joint; each size of bag is worked out, the one chosen is ordered.
 */

import { area } from '../../base/plane.js';
import { CONCRETE_BAGS, CUBIC_FEET_PER_CUBIC_YARD } from '../../catalog/index.js';
import type { Structure } from '../../structure/model.js';
import { byMark, line, marks, wholeUp } from '../line.js';
import type { ItemKind, Line, TakeoffContext } from '../model.js';
import { wasteOf } from '../waste.js';

const CUBIC_INCHES = 1728;
/** Plants batch to quarter yards. Common practice, no source. */
const YARD_STEP = 0.25;

export interface Pour {
  readonly id: 'footings' | 'slab';
  readonly what: string;
  readonly phase: 'footings' | 'slab';
  /** Volume of each part, cubic feet. */
  readonly parts: readonly { readonly mark: string; readonly volume: number }[];
  readonly net: number;
  readonly fc: number;
}

/** What is poured: all footings together, each new slab's concrete together. */
export function poursOf(structure: Structure): Pour[] {
  const pours: Pour[] = [];
  const footings = structure.footings
    .filter((f) => f.concrete > 0 && !f.onSlab)
    .map((f) => ({ mark: f.mark, volume: f.concrete / CUBIC_INCHES }))
    .sort((a, b) => byMark(a.mark, b.mark));
  const slabs = structure.slabs
    .filter((s) => s.state === 'new')
    .map((s) => ({ mark: s.mark, volume: (area(s.outline) * s.thickness) / CUBIC_INCHES }));
  const sum = (list: readonly { volume: number }[]): number => list.reduce((n, p) => n + p.volume, 0);
  if (footings.length > 0) {
    const fc = Math.max(...structure.footings.map((f) => f.fc));
    pours.push({ id: 'footings', what: 'footings', phase: 'footings', parts: footings, net: sum(footings), fc });
  }
  if (slabs.length > 0)
    pours.push({ id: 'slab', what: 'new slab', phase: 'slab', parts: slabs, net: sum(slabs), fc: 0 });
  return pours;
}

export interface BagCount {
  readonly weight: number;
  readonly holds: number;
  readonly bags: number;
}

/** Whole bags of each size for a gross volume, cubic feet. */
export const bagsFor = (gross: number): BagCount[] =>
  CONCRETE_BAGS.map((b) => ({ weight: b.weight, holds: b.yield, bags: wholeUp(gross / b.yield) }));

/** Ready-mix to order for a gross volume in cubic feet: cubic yards, up to the next quarter. */
export const yardsFor = (gross: number): number => wholeUp(gross / CUBIC_FEET_PER_CUBIC_YARD / YARD_STEP) * YARD_STEP;

function pourLine(pour: Pour, { buying, structure }: TakeoffContext): Line {
  const waste = wasteOf(buying, 'concrete');
  const gross = pour.net * (1 + waste.fraction);
  const strength = pour.fc > 0 ? `, ${pour.fc} psi or more` : '';
  const others = bagsFor(gross).map((b) => `${b.bags} of ${b.weight} lb`);
  const bagged = buying.concrete.by === 'bags';
  const yards = yardsFor(gross);
  const least = buying.concrete.leastLoad;
  const short = buying.concrete.shortLoad;
  const load =
    least === undefined
      ? 'ask the plant for its least load and what a short load costs'
      : yards < least
        ? `less than the plant’s least load of ${least} cu yd`
        : short !== undefined && yards < short
          ? `a short load: the plant asks more below ${short} cu yd`
          : 'no short load';
  const overlap = pour.id === 'slab' ? pierTops(structure) : 0;
  const notes = [
    `Whole pour in bags: ${others.join(', ')}; ready-mix ${yards} cu yd (${load}).`,
    ...(overlap > 0.05 ? [`Pier tops stand in the slab: up to ${overlap.toFixed(1)} cu ft are in both pours.`] : []),
  ];
  const bag = CONCRETE_BAGS.find((b) => b.weight === buying.concrete.bag) ?? CONCRETE_BAGS.at(-1)!;
  return line({
    group: 'concrete',
    phase: pour.phase,
    item: bagged ? `concrete mix${strength}, ${bag.weight} lb bag` : `ready-mix concrete${strength}`,
    net: pour.net,
    unit: 'cu ft',
    waste,
    sold: bagged
      ? { unit: 'bag', holds: bag.yield, rule: `${bag.yield} cu ft a bag, whole bags for the pour` }
      : { unit: 'cu yd', holds: CUBIC_FEET_PER_CUBIC_YARD, step: YARD_STEP, rule: 'to the next quarter yard' },
    serves: marks(pour.parts.map((p) => p.mark)),
    note: notes.join(' '),
  });
}

/** Concrete of piers that reaches into a new slab, cubic feet: in both volumes, since both solids are drawn whole. */
function pierTops(structure: Structure): number {
  const slab = structure.slabs.find((s) => s.state === 'new');
  if (!slab) return 0;
  return structure.footings.reduce((sum, f) => {
    if (f.pierDiameter <= 0 || f.onSlab) return sum;
    const depth = Math.max(0, Math.min(slab.thickness, f.top - (f.surface - slab.thickness)));
    return sum + (Math.PI * (f.pierDiameter / 2) ** 2 * depth) / CUBIC_INCHES;
  }, 0);
}

export const concrete: ItemKind = { count: (ctx) => poursOf(ctx.structure).map((p) => pourLine(p, ctx)) };
