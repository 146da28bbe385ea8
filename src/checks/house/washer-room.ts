/** Whether the washers (heads, for screws) of a ledger's fasteners have room on the wood they press. */
import { headAcross } from '../heads.js';
import type { Shank } from './fastener.js';
import type { HousePlace } from './places.js';

export const ROOM = 'geometry of washers; NDS 2018 3.10.2 counts their whole area';

/** A distance from middle to middle or from a middle to an edge, inches, and what the washer needs there. */
export interface Room {
  readonly what: string;
  readonly have: number;
  readonly need: number;
  readonly remedy: string;
}

/** Width of a stud's edge, on which the washer of a through bolt bears, inches. */
const STUD = 1.5;

/** Least distance from one place to the next along the ledger, inches; undefined with one place. */
function leastBay(place: HousePlace): number | undefined {
  const at = place.joints.map((j) => j.ties[0]?.along ?? 0).sort((a, b) => a - b);
  const bays = at.slice(1).map((x, i) => x - at[i]!);
  return bays.length > 0 ? Math.min(...bays) : undefined;
}

/**
 * Washers may touch but not overlap, nor run past an edge: the pull they hold is counted over their whole area, and one that
 * lies over its neighbour cannot be drawn tight. `first` is from the ledger's end to the first place, inches.
 */
export function roomsOf(s: Shank, place: HousePlace, first: number): readonly Room[] {
  const { f, ledger } = s;
  const across = f.kind === 'screw' ? f.washer : Math.max(f.washer, headAcross(s.fastener.D));
  const half = across / 2;
  const [high, low] = [f.rows[0]!, f.rows.at(-1)!];
  const smaller = 'use smaller washers';
  const off = `${smaller} or move the rows`;
  const rooms: Room[] = f.rows.slice(1).map((r, i) => ({
    what: `between the rows at ${f.rows[i]!.toFixed(2)} and ${r.toFixed(2)} in`,
    have: r - f.rows[i]!,
    need: across,
    remedy: `${smaller}, or fewer rows farther apart`,
  }));
  const bay = leastBay(place);
  if (bay !== undefined)
    rooms.push({ what: 'between places', have: bay, need: across, remedy: `${smaller} or a wider spacing` });
  rooms.push(
    { what: "to the ledger's top edge", have: high, need: half, remedy: off },
    { what: "to the ledger's bottom edge", have: ledger.section.depth - low, need: half, remedy: off },
    { what: "to the ledger's end", have: first, need: half, remedy: `${smaller} or a larger "end"` },
  );
  if (f.kind !== 'bolt') return rooms;
  // The nut's washer bears on the wood of the house.
  if (f.into === 'studs')
    rooms.push({ what: 'from the middle of a stud to its edge', have: STUD / 2, need: half, remedy: smaller });
  const top = ledger.start.z + ledger.section.depth / 2;
  if (f.into === 'band' && f.framing.bottom !== undefined)
    rooms.push({ what: "to the band's bottom edge", have: top - low - f.framing.bottom, need: half, remedy: off });
  if (f.into === 'band' && f.framing.top !== undefined)
    rooms.push({ what: "to the band's top edge", have: f.framing.top - (top - high), need: half, remedy: off });
  return rooms;
}
