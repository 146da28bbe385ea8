/**
 * Wind on a roof that touches the house. No section of ASCE 7 is written for a sloping cover on posts that leans on a wall;
 * the load is an envelope of what the standard has for its neighbours:
 *  - the free roof, with the flow below it both clear and blocked, since the wall blocks it (27.3.2): wind.ts;
 *  - the attached canopy, net coefficients up and down by height on the wall (7-16 30.11, 7-22 30.9), at the house's qh;
 *  - where the cover stands near or above the eave and is no canopy, the roof overhang (27.3.3).
 * The canopy figure ends at a cover as high as the eave. Above it the figure's lifting rows are not read: the overhang rule
 * stands alone and always asks for more than they do at the eave. Its one pressing row, the same for every height, is kept
 * as a floor by our own choice. Both signs act on the whole roof at once.
 */
import { makeRecorder, type Recorder } from '../base/trace.js';
import type { Project } from '../project/model.js';
import type { HousePlane, RoofPlaced, Structure, WallPlaced } from '../structure/model.js';
import { type Ledger, note, noteSteps } from './basis.js';
import {
  asce,
  attachedCanopyPressure,
  CANOPY_MAX_SLOPE,
  CC_MIN,
  type CcSign,
  canopyNetGCp,
  degrees,
  elevationKe,
  exposureKz,
  G_RIGID,
  isOutOfScope,
  KD_BUILDINGS,
  type OutOfScope,
  outOfScope,
  overhangPressure,
  velocityPressure,
} from './codes/asce7/index.js';
import type { AreaLoad, AttachedWindAnswer, LoadCase, PlanLoad } from './model.js';
import { DIRECTIONS, heading, windwardEdge } from './wind-plan.js';

/** Steepest cover the envelope is used for: 7 in 12. Our own limit; above it the cover is a roof slope, not a canopy. */
const STEEPEST = Math.atan(7 / 12) + 1e-9;
/** A roof ending no farther than this from a wall line touches it, inches. */
const TOUCH = 12;
/** From this share of the eave height up, the cover lies in the flow that leaves the house's roof edge. */
const NEAR_EAVE = 0.9;
/** Up to 10 degrees the mean roof height is the eave height (ASCE 7 26.2). */
const LOW_SLOPE = (10 * Math.PI) / 180 + 1e-9;

/** Heights that the coefficients depend on, inches above the ground beside the cover. */
export interface HouseFacts {
  /** Mean height of the cover, eave height of the wall it touches, mean roof height of the house. */
  readonly hc: number;
  readonly he: number;
  readonly h: number;
  /** Least plan dimension of the house. */
  readonly least: number;
}

const touches = (roof: RoofPlaced, wall: WallPlaced): boolean =>
  DIRECTIONS.some((d) => {
    const q = heading(d);
    if (wall.out.x * q.x + wall.out.y * q.y < 1 - 1e-6) return false;
    const gap = windwardEdge(roof, d) - (wall.start.x * q.x + wall.start.y * q.y);
    const x = d.endsWith('x');
    const [low, high] = x ? [roof.min.y, roof.max.y] : [roof.min.x, roof.max.x];
    const [a, b] = x ? [wall.start.y, wall.end.y] : [wall.start.x, wall.end.x];
    return Math.abs(gap) <= TOUCH && Math.min(high, Math.max(a, b)) - Math.max(low, Math.min(a, b)) > 0;
  });

/** Mean height of a house plane, or its eave where it is nearly level. */
function meanHeight(plane: HousePlane): number {
  const zs = plane.outline.map((p) => p.z);
  const low = Math.min(...zs);
  const high = Math.max(...zs);
  const [a, b, c] = plane.outline;
  if (!a || !b || !c) return high;
  const nx = (b.y - a.y) * (c.z - a.z) - (b.z - a.z) * (c.y - a.y);
  const ny = (b.z - a.z) * (c.x - a.x) - (b.x - a.x) * (c.z - a.z);
  const nz = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
  return Math.atan2(Math.hypot(nx, ny), Math.abs(nz)) <= LOW_SLOPE ? low : (low + high) / 2;
}

/** The house beside an attached roof; undefined where it is not described well enough. */
export function houseFacts(structure: Structure, roof: RoofPlaced): HouseFacts | undefined {
  const planes = structure.housePlanes.filter((p) => p.state !== 'removed');
  if (planes.length === 0 || structure.walls.length === 0) return undefined;
  const mine = structure.walls.filter((w) => touches(roof, w));
  const walls = mine.length > 0 ? mine : structure.walls;
  const lower = Math.min(...walls.map((w) => w.plate));
  const { z0, gx, gy } = structure.grade;
  const ground = Math.min(...walls.flatMap((w) => [w.start, w.end].map((p) => z0 + gx * p.x + gy * p.y)));
  const xs = structure.walls.flatMap((w) => [w.start.x, w.end.x]);
  const ys = structure.walls.flatMap((w) => [w.start.y, w.end.y]);
  return {
    hc: roof.meanHeight,
    he: lower - ground,
    h: Math.max(...planes.map(meanHeight), lower) - ground,
    least: Math.min(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)),
  };
}

/** Effective wind area (in²) of the smallest framing member of a roof, and its numbers for printing. */
interface LeastFraming {
  readonly area: number;
  readonly text: string;
}

/** Span times the larger of width and span/3, of the smallest framing member (ASCE 7 26.2); 10 ft² where there is none. */
function leastFraming(structure: Structure, roof: RoofPlaced): LeastFraming {
  let least: LeastFraming | undefined;
  const depth = new Map(
    structure.surfaces.map((s) => {
      const vs = s.outline.map((p) => p.y);
      return [s.id, (Math.max(...vs) - Math.min(...vs)) * Math.cos(s.slope)];
    }),
  );
  for (const m of structure.members) {
    if (m.roof !== roof.mark || m.strips.length === 0) continue;
    const span = [...new Set(m.strips.map((s) => s.surface))].reduce((sum, s) => sum + (depth.get(s) ?? 0), 0);
    const width = Math.max(...m.strips.map((s) => s.u1 - s.u0));
    const area = span * Math.max(width, span / 3);
    if (!(span > 0) || (least && area >= least.area)) continue;
    const feet = (x: number): string => num(x / 12, 2);
    least = { area, text: `${m.mark}: ${feet(span)} · max(${feet(width)}, ${feet(span / 3)}) ft` };
  }
  return least ?? { area: 10 * 144, text: 'no framing member: the figure’s least' };
}

/** Velocity pressure at the house's mean roof height, psf. */
function houseQh(project: Project, h: number, rec?: Recorder): number | OutOfScope {
  const { wind, codes } = project.basis;
  const Kz = exposureKz(h, wind.exposure.value, codes.loads, rec);
  if (isOutOfScope(Kz)) return Kz;
  const Ke = elevationKe(wind.elevation, codes.loads, rec);
  const input = { Kz, Kzt: wind.topographic.value, Kd: KD_BUILDINGS, Ke, V: wind.speed.value };
  return velocityPressure(input, codes.loads, rec);
}

const isCanopy = (roof: RoofPlaced, x: HouseFacts): boolean =>
  Math.tan(roof.slope) <= CANOPY_MAX_SLOPE + 1e-12 && x.hc <= x.he;

const num = (value: number, digits: number): string => Number(value.toFixed(digits)).toString();

/**
 * Net pressure of the wall's influence on an attached roof, psf, plus pushing onto the top face, for a part of it of
 * effective area `area` (in²). Undefined for a roof that does not touch the house or whose house is not described.
 */
export function attachedPressure(
  project: Project,
  structure: Structure,
  roof: RoofPlaced,
  sign: CcSign,
  area: number,
  rec?: Recorder,
): number | OutOfScope | undefined {
  if (!roof.attached) return undefined;
  const x = houseFacts(structure, roof);
  if (!x) return undefined;
  const edition = project.basis.codes.loads;
  const section = edition === '7-16' ? '30.11' : '30.9';
  if (x.h > 60 * 12) return outOfScope(asce(edition, section), 'the house is over 60 ft high');
  if (roof.slope > STEEPEST)
    return outOfScope(
      asce(edition, section),
      `a cover of ${num(degrees(roof.slope), 1)}° on a wall is steeper than 7 in 12, the limit of this envelope`,
    );
  const qh = houseQh(project, x.h, rec);
  if (isOutOfScope(qh)) return qh;
  const ratio = x.hc / x.he;
  heightSteps(roof, x, asce(edition, section), rec);
  const canopy = (): number =>
    attachedCanopyPressure(qh, canopyNetGCp(ratio, sign, area, edition, rec), KD_BUILDINGS, edition, rec);
  if (sign === 'plus' || ratio < NEAR_EAVE || isCanopy(roof, x)) return canopy();
  const figure = x.hc > x.he ? 0 : canopy();
  rec?.step({
    symbol: 'h/L',
    meaning: 'mean roof height of the house over its least plan dimension',
    formula: 'hr / L',
    substituted: `${num(x.h / 12, 2)} ft / ${num(x.least / 12, 2)} ft`,
    value: x.h / x.least,
    unit: '',
    clause: asce(edition, 'Fig. 27.3-1'),
    from: [roof.path],
  });
  const overhang = overhangPressure(qh, G_RIGID, x.h / x.least, KD_BUILDINGS, edition, rec);
  const p = Math.min(figure, overhang, -CC_MIN);
  rec?.step({
    symbol: 'p',
    meaning: 'net pressure carried: the most upward',
    formula: figure === 0 ? 'min(overhang, −16)' : 'min(canopy, overhang, −16)',
    substituted: `min(${figure === 0 ? '' : `${num(figure, 2)}, `}${num(overhang, 2)}, −16)`,
    value: p,
    unit: 'psf',
    clause: asce(edition, `27.3.3, 30.2.2`),
  });
  return p;
}

/** Says the heights and what the canopy figure is worth at them. */
function heightSteps(roof: RoofPlaced, x: HouseFacts, clause: string, rec?: Recorder): void {
  rec?.step({
    symbol: 'hc/he',
    meaning: 'mean height of the cover over the eave height of the wall it touches (wall plate above the ground there)',
    formula: 'hc / he',
    substituted: `${num(x.hc / 12, 2)} ft / ${num(x.he / 12, 2)} ft`,
    value: x.hc / x.he,
    unit: '',
    clause,
    from: [roof.path],
    note: isCanopy(roof, x)
      ? 'level cover below the eave: the canopy section applies as written'
      : x.hc > x.he
        ? 'above 1, outside the canopy figure: lifting by the overhang rule 27.3.3 instead; pressing by the figure’s one row for all heights, kept as a floor (own choice, no source); the free-roof cases with clear and obstructed flow stand beside both'
        : 'steeper than 2 percent: the canopy section is carried beyond its words, beside the free-roof cases',
  });
}

const SIGNS = [
  { sign: 'minus', id: 'W·house·up', way: 'lifting' },
  { sign: 'plus', id: 'W·house·down', way: 'pressing' },
] as const;

/** The two cases of all attached roofs, and what became of the question for each roof that touches the house. */
export function attachedWind(
  project: Project,
  structure: Structure,
  ledger: Ledger,
): { readonly cases: readonly LoadCase[]; readonly answers: readonly AttachedWindAnswer[] } {
  const edition = project.basis.codes.loads;
  const clause = asce(edition, edition === '7-16' ? '27.3.2, 30.11' : '27.3.2, 30.9');
  const answers: AttachedWindAnswer[] = [];
  const areas: AreaLoad[][] = [[], []];
  const plan: PlanLoad[][] = [[], []];
  for (const roof of structure.roofs) {
    if (!roof.attached) continue;
    const { area, text } = leastFraming(structure, roof);
    const p = SIGNS.map(({ sign }) => attachedPressure(project, structure, roof, sign, area));
    const [up, down] = p;
    if (isOutOfScope(up) || isOutOfScope(down) || up === undefined || down === undefined) {
      const bad = p.find(isOutOfScope);
      answers.push({
        roof: roof.mark,
        outcome: bad ? 'outside' : 'unknown',
        cases: [],
        area,
        up: 0,
        down: 0,
        clause: bad ? bad.clause : clause,
        note: bad
          ? `${bad.reason}. A licensed professional has to state this load.`
          : 'The roof of the house beside the cover is not described. Needed: its roof.',
      });
      continue;
    }
    const x = houseFacts(structure, roof)!;
    const from = [project.basis.wind.speed.path, roof.path];
    note(ledger, 'hr', `${roof.mark}: mean roof height of the house`, x.h / 12, 'ft', asce(edition, '26.2'), from);
    note(
      ledger,
      'A',
      `${roof.mark}, wind beside the house: effective area of its smallest framing member, span on plan, eave to eave, by max(width, span/3): ${text}`,
      area / 144,
      'ft²',
      asce(edition, '26.2'),
      from,
    );
    p.forEach((psf, i) => {
      const rec = makeRecorder();
      attachedPressure(project, structure, roof, SIGNS[i]!.sign, area, rec);
      // The velocity pressure and the heights are the same for both signs.
      const lines = i === 0 ? rec.lines : rec.lines.filter((l) => l.kind === 'step' && /^(GCp|p)$/.test(l.symbol));
      noteSteps(ledger, lines, `${roof.mark}, ${SIGNS[i]!.id}`, from);
      plan[i]!.push({ roof: roof.mark, psf: psf as number, acts: 'normal' });
      for (const s of structure.surfaces)
        if (s.roof === roof.mark) areas[i]!.push({ surface: s.id, psf: psf as number, acts: 'normal' });
    });
    answers.push({
      roof: roof.mark,
      outcome: 'included',
      cases: SIGNS.map((s) => s.id),
      area,
      up,
      down,
      clause,
      note: `Carried as ${SIGNS.map((s) => s.id).join(', ')}: ${num(-up, 1)} psf up and ${num(down, 1)} psf down over the whole roof, beside the free-roof cases with clear and obstructed flow.`,
    });
  }
  const cases = SIGNS.flatMap(({ id, way }, i) =>
    areas[i]!.length === 0
      ? []
      : [
          {
            id,
            kind: 'W' as const,
            title: `Wind beside the house, ${way}`,
            areas: areas[i]!,
            edges: [],
            plan: plan[i]!,
            selfWeight: false,
            side: [],
            clause,
          },
        ],
  );
  return { cases, answers };
}
