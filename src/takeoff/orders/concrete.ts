/** What is asked of a concrete plant, pour by pour. */
import { USUAL_BUYING } from '../../project/complete/buying.js';
import type { Project } from '../../project/model.js';
import type { Structure } from '../../structure/model.js';
import { type BagCount, bagsFor, poursOf, yardsFor } from '../items/concrete.js';
import { wasteOf } from '../waste.js';

export interface PourOrder {
  readonly what: string;
  /** Each part and its volume, cubic feet. */
  readonly parts: readonly { readonly mark: string; readonly volume: number }[];
  readonly net: number;
  readonly waste: string;
  readonly gross: number;
  readonly bags: readonly BagCount[];
  /** Ready-mix to order, cubic yards, and what the plant's least and short loads make of it. */
  readonly yards: number;
  readonly load: string;
  readonly strength: string;
}

function loadWords(yards: number, least: number | undefined, short: number | undefined): string {
  if (least === undefined)
    return 'Ask the plant for its least load and what a short load costs; neither is in the project.';
  if (yards < least) return `Less than the plant’s least load of ${least} cu yd: you pay for ${least}, or mix bags.`;
  if (short !== undefined && yards < short) return `A short load: the plant asks more below ${short} cu yd.`;
  return 'No short load at this plant.';
}

export function pourOrders(project: Project, structure: Structure): PourOrder[] {
  const buying = project.buying ?? USUAL_BUYING;
  const waste = wasteOf(buying, 'concrete');
  return poursOf(structure).map((p) => {
    const gross = p.net * (1 + waste.fraction);
    const yards = yardsFor(gross);
    return {
      what: p.what,
      parts: p.parts,
      net: p.net,
      waste: `${waste.rule} (${waste.source})`,
      gross,
      bags: bagsFor(gross),
      yards,
      load: loadWords(yards, buying.concrete.leastLoad, buying.concrete.shortLoad),
      strength:
        p.fc > 0 ? `${p.fc} psi or more at 28 days` : 'as the office asks for patio slabs; not stated in the project',
    };
  });
}
