/** Where fasteners may sit in a piece of wood: what is too near, and what the geometry factor makes of the rest. */
import { formatLength } from '../../../base/quantity/index.js';
import {
  CdeltaEnd,
  CdeltaSpacing,
  MOST_ACROSS,
  minEdgeDistance,
  minRowSpacing,
  SMALL_DOWEL_DISTANCES,
} from '../../codes/nds-2018/index.js';
import type { Piece } from './pieces.js';

/** How the force lies in the piece: shares along and across the grain, 0 to 1. */
export interface Lie {
  readonly parallel: number;
  readonly perpendicular: number;
  /** Edge that the force runs to: the one facing the other member, the far one, or either as the force turns. */
  readonly toward: 'facing' | 'far' | 'either';
  /** The dowel enters the end of the piece, where there is no end distance to keep. */
  readonly inEnd: boolean;
}

/** A share under this does not make a direction of its own. */
const SLIGHT = 0.01;

export const runsAlong = (lie: Lie): boolean => lie.parallel > SLIGHT;
export const runsAcross = (lie: Lie): boolean => lie.perpendicular > SLIGHT;

const short = (p: Piece, what: string, found: number, least: number): string =>
  `${p.name}: ${what} ${formatLength(found)}, at least ${formatLength(Math.ceil(least * 16 - 1e-6) / 16)}`;

/** How a force lies in a piece whose grain makes `angle` radians with it; `inEnd`: the dowel enters the end grain. */
export const lieAt = (angle: number, toward: Lie['toward'], inEnd: boolean): Lie => ({
  toward,
  parallel: Math.cos(angle),
  perpendicular: Math.sin(angle),
  inEnd,
});

export interface Geometry {
  readonly Cdelta: number;
  /** What the factor comes from, as the trace prints it. */
  readonly because: string;
  readonly faults: readonly string[];
}

/** Fasteners of 1/4 in. and more. NDS 2018 12.5.1, Tables 12.5.1A to 12.5.1E. */
function large(p: Piece, D: number, lie: Lie): Geometry {
  const { pattern, thickness, depth } = p;
  const faults: string[] = [];
  const along = runsAlong(lie);
  const across = runsAcross(lie);
  let Cdelta = 1;
  let because = `${p.name}: full distances`;
  const lower = (factor: number, what: string, found: number): void => {
    if (factor >= Cdelta) return;
    Cdelta = factor;
    because = `${p.name}: ${what} ${formatLength(found)} of the full ${formatLength(found / factor)}`;
  };
  const end = lie.inEnd ? 1 : CdeltaEnd(pattern.end, D, along ? 'tension' : 'perpendicular');
  if (end === undefined) faults.push(short(p, 'end distance', pattern.end, (along ? 3.5 : 2) * D));
  else lower(end, 'end distance', pattern.end);
  for (const [n, s, own, square, rows] of [
    [pattern.alongGrain, pattern.spacingAlong, along, across, 'perpendicular'],
    [pattern.acrossGrain, pattern.spacingAcross, across, along, 'parallel'],
  ] as const) {
    if (n < 2) continue;
    // In the direction of the force the fasteners are a row; square to it the rows are apart by this much.
    if (own) {
      const factor = CdeltaSpacing(s, D);
      if (factor === undefined) faults.push(short(p, 'spacing in the row', s, 3 * D));
      else lower(factor, 'spacing', s);
    }
    if (square) {
      const least = minRowSpacing(rows, thickness, D);
      if (s < least - 1e-9) faults.push(short(p, 'spacing of rows', s, least));
    }
  }
  const spread = (pattern.acrossGrain - 1) * pattern.spacingAcross;
  if (spread > MOST_ACROSS + 1e-9)
    faults.push(
      `${p.name}: outer rows ${formatLength(spread)} apart across the grain, at most ${formatLength(MOST_ACROSS)}`,
    );
  const other = depth - pattern.edge - spread;
  const edge = (loaded: boolean): number => {
    const words = loaded ? 'perpendicular-loaded-edge' : 'perpendicular-unloaded-edge';
    return minEdgeDistance(across ? words : 'parallel', thickness, D, pattern.spacingAcross);
  };
  const least = edge(lie.toward !== 'far');
  const far = edge(lie.toward !== 'facing');
  if (pattern.edge < least - 1e-9) faults.push(short(p, 'edge distance', pattern.edge, least));
  if (other < far - 1e-9) faults.push(short(p, 'distance to the far edge', Math.max(0, other), far));
  return { Cdelta, because, faults };
}

/** Nails and wood screws: no factor, and the commentary's distances against splitting. NDS 2018 12.1.5.7, 12.1.6.5. */
function small(p: Piece, D: number, lie: Lie, steelSides: boolean): Geometry {
  const rule = SMALL_DOWEL_DISTANCES[steelSides ? 'steel' : 'wood'];
  const { pattern, depth } = p;
  const faults: string[] = [];
  const along = runsAlong(lie);
  const want = (what: string, found: number, least: number): void => {
    if (found < least * D - 1e-9) faults.push(short(p, what, found, least * D));
  };
  if (!lie.inEnd) want('end distance', pattern.end, along ? rule.endTension : rule.end);
  want('edge distance', pattern.edge, rule.edge);
  want('distance to the far edge', depth - pattern.edge - (pattern.acrossGrain - 1) * pattern.spacingAcross, rule.edge);
  if (pattern.alongGrain > 1)
    want('spacing along the grain', pattern.spacingAlong, along ? rule.spacingParallel : rule.spacingPerpendicular);
  if (pattern.acrossGrain > 1) want('spacing across the grain', pattern.spacingAcross, rule.rows);
  return { Cdelta: 1, because: '', faults };
}

export function geometryOf(p: Piece, D: number, lie: Lie, steelSides: boolean): Geometry {
  if (!p.wood) {
    // A steel piece tears at its end and edge; half as far again as the dowel is thick keeps it whole.
    const least = 1.5 * D;
    const faults: string[] = [];
    if (p.pattern.end < least - 1e-9) faults.push(short(p, 'end distance', p.pattern.end, least));
    if (p.pattern.edge < least - 1e-9) faults.push(short(p, 'edge distance', Math.max(0, p.pattern.edge), least));
    return { Cdelta: 1, because: '', faults };
  }
  return D < 0.25 ? small(p, D, lie, steelSides) : large(p, D, lie);
}
