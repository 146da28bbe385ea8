/** What placing a roof asks of this folder: the part of it over the house, where it goes on there. */
import type { CoverRoof, GableRoof, Overlay } from '../../project/model.js';
import type { OverlayPlaced, Section, Surface } from '../model.js';
import type { Laying } from '../roofs/lay.js';
import type { OverlayInput } from './contract.js';
import { inOverlay } from './frame.js';
import { placeOverlay } from './place.js';

type Over = GableRoof & { readonly meetsHouse: Overlay };

const goesOver = (roof: CoverRoof): roof is Over => 'meetsHouse' in roof && roof.meetsHouse !== undefined;

export type WholeRoof = Laying & { readonly overlay?: OverlayPlaced };

/** The laid roof with the part of it over the house; as it was where it has none. */
export function overHouse(
  input: Omit<OverlayInput, 'roof' | 'framed' | 'planes' | 'fascia'> & {
    readonly roof: CoverRoof;
    readonly fascia: Section | undefined;
  },
  laid: Laying,
): WholeRoof {
  const { roof, fascia } = input;
  if (!goesOver(roof)) return laid;
  const mark = laid.trim?.members[0]?.mark;
  const overlay = placeOverlay({
    ...input,
    roof,
    framed: laid.framed,
    planes: laid.planes,
    fascia: fascia && mark !== undefined ? { section: fascia, mark } : undefined,
  });
  return overlay ? { ...laid, overlay, planes: laid.planes.map((s) => openAt(s, overlay)) } : laid;
}

/** A surface of the cover with the edge told at which it goes on. */
function openAt(s: Surface, o: OverlayPlaced): Surface {
  const us = s.outline.map((p) => p.x);
  const at = (u: number): number => inOverlay(o.frame, { x: s.origin.x + s.u.x * u, y: s.origin.y + s.u.y * u }).x;
  const [a, b] = [Math.min(...us), Math.max(...us)];
  return { ...s, onto: at(a) > at(b) ? a : b };
}
