/**
 * The patio-cover appendix of the residential code (IRC 2018 Appendix H, AH101 to AH105): its lighter roof live load may be
 * used only where the appendix is adopted by name and the cover is what the appendix means by a patio cover.
 */
import type { Project } from '../project/model.js';
import type { RoofPlaced, Structure } from '../structure/model.js';
import { DIRECTIONS, heading, windwardEdge } from './wind-plan.js';

/** Highest patio cover of the definition (AH102), inches. */
export const PATIO_MAX_HEIGHT = 144;
/** Least open share of the longer wall and one more wall, below 6 ft 8 in (AH102). */
export const PATIO_OPEN_SHARE = 0.65;
/** A roof side within this of a house wall is closed by it, inches. */
const CLOSED = 12;

export interface AppendixCondition {
  readonly what: string;
  readonly clause: string;
  /** What the model shows, and what the appendix asks for; `unit` empty for plain yes and no (1 and 0). */
  readonly value: number;
  readonly limit: number;
  readonly unit: string;
  readonly holds: boolean;
  /** As printed when it does not hold. */
  readonly otherwise: string;
  readonly from: readonly string[];
}

/** Share of each side's length that a house wall closes, in the order of DIRECTIONS (the side facing that way). */
function closedShare(structure: Structure, roof: RoofPlaced): readonly number[] {
  return DIRECTIONS.map((d) => {
    const q = heading(d);
    const opposite = ({ '+x': '-x', '-x': '+x', '+y': '-y', '-y': '+y' } as const)[d];
    const length = d.endsWith('x') ? roof.max.y - roof.min.y : roof.max.x - roof.min.x;
    let closed = 0;
    for (const w of structure.walls) {
      // The side that faces d is closed by a wall whose outside faces back.
      if (w.out.x * q.x + w.out.y * q.y > -1 + 1e-6) continue;
      const back = heading(opposite);
      const gap = windwardEdge(roof, opposite) - (w.start.x * back.x + w.start.y * back.y);
      if (Math.abs(gap) > CLOSED) continue;
      const [low, high] = d.endsWith('x') ? [roof.min.y, roof.max.y] : [roof.min.x, roof.max.x];
      const [a, b] = d.endsWith('x') ? [w.start.y, w.end.y] : [w.start.x, w.end.x];
      closed += Math.max(0, Math.min(high, Math.max(a, b)) - Math.max(low, Math.min(a, b)));
    }
    return length > 0 ? Math.min(1, closed / length) : 1;
  });
}

/** Open share of the more open of the two longer sides, and of the most open of the other three. */
function openShares(structure: Structure, roof: RoofPlaced): readonly [number, number] {
  const open = closedShare(structure, roof).map((c) => 1 - c);
  // Sides facing ±y run along x.
  const alongX = roof.max.x - roof.min.x >= roof.max.y - roof.min.y;
  const longer = alongX ? [2, 3] : [0, 1];
  const best = longer.reduce((a, b) => (open[b]! > open[a]! ? b : a));
  return [open[best]!, Math.max(...open.filter((_, i) => i !== best))];
}

/** Every condition of the appendix, tested on the model. The cover carries no walls of its own. */
export function appendixConditions(project: Project, structure: Structure): readonly AppendixCondition[] {
  const { patioAppendix } = project.basis.roofLive;
  const yes = (
    what: string,
    clause: string,
    holds: boolean,
    otherwise: string,
    from: readonly string[],
  ): AppendixCondition => ({ what, clause, value: holds ? 1 : 0, limit: 1, unit: '', holds, otherwise, from });
  const { z0, gx, gy } = structure.grade;
  const out: AppendixCondition[] = [
    yes('adopted here by name', 'IRC 2018 R102.5', patioAppendix.value, 'the appendix is not adopted', [
      patioAppendix.path,
    ]),
    yes(
      'used for recreation and outdoor living only',
      'IRC 2018 AH101.1',
      project.cover.use === 'recreation',
      `its use is ${project.cover.use}`,
      ['/cover/use'],
    ),
  ];
  for (const roof of structure.roofs) {
    const grades = [roof.min, roof.max].flatMap((p) => [roof.min, roof.max].map((q) => z0 + gx * p.x + gy * q.y));
    const height = roof.highestPoint - Math.min(...grades);
    out.push({
      what: `${roof.mark}: one storey, highest point above the lowest ground beside it`,
      clause: 'IRC 2018 AH102.1',
      value: height / 12,
      limit: PATIO_MAX_HEIGHT / 12,
      unit: 'ft',
      holds: height <= PATIO_MAX_HEIGHT + 1e-6,
      otherwise: `${roof.mark} is ${(height / 12).toFixed(1)} ft high, over 12 ft`,
      from: [roof.path],
    });
    const [longer, other] = openShares(structure, roof);
    const least = Math.min(longer, other);
    out.push({
      what: `${roof.mark}: open share of the longer side and of one more side`,
      clause: 'IRC 2018 AH102.1',
      value: 100 * least,
      limit: 100 * PATIO_OPEN_SHARE,
      unit: '%',
      holds: least >= PATIO_OPEN_SHARE - 1e-9,
      otherwise: `house walls close ${roof.mark} too far: ${(100 * least).toFixed(0)} % open where 65 % is asked`,
      from: [roof.path, '/house/walls'],
    });
  }
  return out;
}

/** True where the appendix's lighter live load may be used. */
export const appendixApplies = (project: Project, structure: Structure): boolean =>
  structure.roofs.length > 0 && appendixConditions(project, structure).every((c) => c.holds);
