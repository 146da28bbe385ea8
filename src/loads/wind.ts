/**
 * Wind on the roof as a free roof (ASCE 7 27.3.2): net pressure square to the surface, both load cases, every flow that
 * can occur, each of the four house directions. Each case loads all roofs at once.
 */
import type { Project } from '../project/model.js';
import type { RoofPlaced, Structure, Surface } from '../structure/model.js';
import { gableSide } from './along-gable.js';
import { type Ledger, note } from './basis.js';
import {
  alongRidgeFigure,
  alongRidgeZones,
  asce,
  elevationKe,
  exposureKz,
  type FlowCondition,
  type FreeRoofShape,
  freeRoofCN,
  freeRoofFigure,
  freeRoofPressure,
  G_RIGID,
  isOutOfScope,
  KD_BUILDINGS,
  type LoadCaseAB,
  tableDegrees,
  velocityPressure,
} from './codes/asce7/index.js';
import { fasciaForce } from './fascia.js';
import { type Below, supportsBelow } from './minimum-wind.js';
import type { AreaLoad, LoadCase, PlanLoad, WindDirection } from './model.js';
import { DIRECTIONS, downWind, heading, isAcross, lengthAlong, type Part, zoneOn } from './wind-plan.js';

/** Velocity pressure of each roof, psf; a roof the provisions cannot serve is missing and listed in `outside`. */
function velocityPressures(project: Project, structure: Structure, ledger: Ledger): ReadonlyMap<string, number> {
  const { wind, codes } = project.basis;
  const edition = codes.loads;
  const V = wind.speed.value;
  const Kzt = wind.topographic.value;
  const Ke = elevationKe(wind.elevation, edition);
  note(ledger, 'V', 'basic wind speed', V, 'mph', wind.speed.from || asce(edition, '26.5'), [
    wind.speed.path,
    '/basis/riskCategory',
  ]);
  note(ledger, 'Kzt', 'topographic factor', Kzt, '', wind.topographic.from || asce(edition, '26.8'), [
    wind.topographic.path,
  ]);
  note(ledger, 'Ke', 'ground elevation factor', Ke, '', asce(edition, 'Table 26.9-1'), ['/basis/wind/elevation']);
  note(ledger, 'Kd', 'directionality factor', KD_BUILDINGS, '', asce(edition, 'Table 26.6-1'), []);
  note(ledger, 'G', 'gust-effect factor, rigid', G_RIGID, '', asce(edition, '26.11.1'), []);
  const out = new Map<string, number>();
  for (const roof of structure.roofs) {
    const valley = roof.neighbours?.find((n) => n.how === 'valley');
    if (valley) {
      const why = `it meets ${valley.roof} in a valley; the free-roof figures are of roofs that stand alone (${asce(edition, '27.3.2')})`;
      ledger.outside.push({ about: `wind on ${roof.mark}`, why });
    }
    const Kz = exposureKz(roof.meanHeight, wind.exposure.value, edition);
    if (isOutOfScope(Kz)) {
      ledger.outside.push({ about: `wind on ${roof.mark}`, why: `${Kz.reason} (${Kz.clause})` });
      continue;
    }
    const qh = velocityPressure({ Kz, Kzt, Kd: KD_BUILDINGS, Ke, V }, edition);
    const from = [wind.speed.path, wind.exposure.path, wind.topographic.path, '/basis/wind/elevation', roof.path];
    note(ledger, 'h', `${roof.mark}: mean roof height`, roof.meanHeight / 12, 'ft', asce(edition, '26.2'), [roof.path]);
    note(
      ledger,
      'Kz',
      `${roof.mark}: exposure coefficient at h, by the equation`,
      Kz,
      '',
      asce(edition, 'Table 26.10-1 Note 1'),
      [wind.exposure.path, roof.path],
    );
    note(ledger, 'qh', `${roof.mark}: velocity pressure at h`, qh, 'psf', asce(edition, 'Eq. 26.10-1'), from);
    out.set(roof.mark, qh);
  }
  return out;
}

/** One coefficient on one part of a roof: the surfaces' parts that take it and the same zone on the plan. */
interface Zone {
  readonly name: string;
  /** Distances from the windward edge, inches. */
  readonly from: number;
  readonly to: number;
  readonly parts: readonly { readonly surface: string; readonly part: NonNullable<Part> }[];
}

const zone = (
  roof: RoofPlaced,
  surfaces: readonly Surface[],
  d: WindDirection,
  name: string,
  from: number,
  to: number,
): Zone => ({
  name,
  from,
  to,
  parts: surfaces.flatMap((s) => {
    const part = zoneOn(s, roof, d, from, to);
    return part ? [{ surface: s.id, part }] : [];
  }),
});

/** How one direction meets one roof: its zones are made once and shared by every case of that direction. */
interface Meeting {
  readonly roof: RoofPlaced;
  readonly qh: number;
  readonly clause: string;
  /** Push on the fascia, or on a gable's end and frames along the ridge; the same in every case of the direction. */
  readonly side: LoadCase['side'];
  readonly zones: readonly Zone[];
  /** True when the figure's two wind senses give different numbers, so that both are run. */
  readonly twoSenses: boolean;
  /** CN zone by zone. `swapped` takes the monoslope table of the other sense. */
  cn(ab: LoadCaseAB, flow: FlowCondition, swapped: boolean): readonly number[];
}

const LOW_SLOPE_DEG = 7.5;

function acrossMeeting(
  project: Project,
  roof: RoofPlaced,
  surfaces: readonly Surface[],
  shape: FreeRoofShape,
  qh: number,
  d: WindDirection,
): Omit<Meeting, 'side'> {
  const edition = project.basis.codes.loads;
  const L = lengthAlong(roof, d);
  // One plane splits at half its length; two planes meet at the ridge, which is where windward ends.
  let split = L / 2;
  if (shape !== 'monoslope') {
    const h = heading(d);
    const windward =
      surfaces.find((s) => (shape === 'pitched' ? downWind(s, h) < 0 : downWind(s, h) > 0)) ?? surfaces[0]!;
    split = planDepth(windward);
  }
  // Wind that runs down a monoslope meets its high edge: gamma 0 by the logic of the signs.
  const gamma = shape === 'monoslope' && downWind(surfaces[0]!, heading(d)) < 0 ? 180 : 0;
  const other = gamma === 0 ? 180 : 0;
  return {
    roof,
    qh,
    clause: asce(
      edition,
      shape === 'monoslope' || tableDegrees(roof.slope) < LOW_SLOPE_DEG
        ? 'Fig. 27.3-4'
        : shape === 'pitched'
          ? 'Fig. 27.3-5'
          : 'Fig. 27.3-6',
    ),
    zones: [zone(roof, surfaces, d, 'windward half', 0, split), zone(roof, surfaces, d, 'leeward half', split, L)],
    twoSenses: shape === 'monoslope' && tableDegrees(roof.slope) >= LOW_SLOPE_DEG,
    cn: (ab, flow, swapped) => {
      const pair = freeRoofCN(shape, roof.slope, swapped ? other : gamma, ab, flow, edition);
      return [pair.CNW, pair.CNL];
    },
  };
}

/** Plan depth of a surface down its slope, inches. */
function planDepth(surface: Surface): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const p of surface.outline) {
    low = Math.min(low, p.y);
    high = Math.max(high, p.y);
  }
  return (high - low) * Math.cos(surface.slope);
}

function alongMeeting(
  project: Project,
  roof: RoofPlaced,
  surfaces: readonly Surface[],
  qh: number,
  d: WindDirection,
): Omit<Meeting, 'side'> {
  const edition = project.basis.codes.loads;
  const L = lengthAlong(roof, d);
  const strips = alongRidgeZones(L, roof.meanHeight, 'A', 'clear', edition);
  const zones = strips.map((z, i) => zone(roof, surfaces, d, ['to h', 'h to 2h', 'beyond 2h'][i]!, z.from, z.to));
  return {
    roof,
    qh,
    clause: asce(edition, 'Fig. 27.3-7'),
    zones,
    twoSenses: false,
    cn: (ab, flow) => alongRidgeZones(L, roof.meanHeight, ab, flow, edition).map((z) => z.CN),
  };
}

/** How direction `d` meets a roof, or undefined with an entry in `outside` where the figures do not reach. */
function meet(
  project: Project,
  structure: Structure,
  roof: RoofPlaced,
  below: Below,
  qh: number,
  d: WindDirection,
  ledger: Ledger,
): Meeting | undefined {
  const edition = project.basis.codes.loads;
  const surfaces = structure.surfaces.filter((s) => s.roof === roof.mark);
  const first = surfaces[0];
  if (!first) return undefined;
  const h = roof.meanHeight;
  const L = lengthAlong(roof, d);
  const { shape } = first;
  if (shape === 'hipped') {
    const about = `wind on ${roof.mark}`;
    const why = `the free-roof figures are of one and of two slopes, none of a hip (${asce(edition, 'Figs. 27.3-4 to 27.3-7')})`;
    if (!ledger.outside.some((o) => o.about === about)) ledger.outside.push({ about, why });
    return undefined;
  }
  const figure = isAcross(roof, d)
    ? freeRoofFigure(shape, roof.slope, h, L, edition)
    : (alongRidgeFigure(shape, roof.slope, h, L, edition) ?? 'along-ridge-values');
  if (isOutOfScope(figure)) {
    const about = `wind on ${roof.mark} ${isAcross(roof, d) ? 'across' : 'along'} its ridge`;
    if (!ledger.outside.some((o) => o.about === about)) {
      ledger.outside.push({ about, why: `${figure.reason} (${figure.clause}): needs a licensed professional` });
    }
    return undefined;
  }
  const meeting =
    figure === 'across-ridge'
      ? acrossMeeting(project, roof, surfaces, shape, qh, d)
      : alongMeeting(project, roof, surfaces, qh, d);
  // The clause for wind along the ridge covers the fascia too.
  const side =
    shape === 'pitched' && !isAcross(roof, d)
      ? gableSide(project, structure, roof, below, d, ledger)
      : fasciaForce(structure, roof, qh, d, edition);
  return { ...meeting, side };
}

function windCase(
  project: Project,
  meetings: readonly Meeting[],
  d: WindDirection,
  ab: LoadCaseAB,
  flow: FlowCondition,
  swapped: boolean,
  ledger: Ledger,
): LoadCase {
  const edition = project.basis.codes.loads;
  const id = `W${d}·${ab}·${flow}${swapped ? '·swapped' : ''}`;
  const areas: AreaLoad[] = [];
  const plan: PlanLoad[] = [];
  for (const m of meetings) {
    const cns = m.cn(ab, flow, swapped && m.twoSenses);
    m.zones.forEach((z, i) => {
      const CN = cns[i]!;
      const psf = freeRoofPressure(m.qh, G_RIGID, CN, KD_BUILDINGS, edition);
      note(ledger, 'CN', `${m.roof.mark}, ${id}: net coefficient, ${z.name}`, CN, '', m.clause, [m.roof.path]);
      note(ledger, 'p', `${m.roof.mark}, ${id}: net pressure, ${z.name}`, psf, 'psf', asce(edition, 'Eq. 27.3-2'), [
        project.basis.wind.speed.path,
        m.roof.path,
      ]);
      if (psf === 0) return;
      plan.push({ roof: m.roof.mark, psf, acts: 'normal', zone: { toward: d, from: z.from, to: z.to } });
      for (const { surface, part } of z.parts) {
        areas.push(
          part.whole ? { surface, psf, acts: 'normal' } : { surface, region: part.region, psf, acts: 'normal' },
        );
      }
    });
  }
  return {
    id,
    kind: 'W',
    title: `Wind toward ${d}, load case ${ab}, ${flow} flow${swapped ? ', figure read in the other sense' : ''}`,
    areas,
    edges: [],
    plan,
    selfWeight: false,
    side: meetings.flatMap((m) => m.side),
    clause: asce(edition, '27.3.2'),
  };
}

const sameLoads = (a: LoadCase, b: LoadCase): boolean =>
  a.areas.length === b.areas.length &&
  JSON.stringify(a.side) === JSON.stringify(b.side) &&
  a.areas.every((x, i) => {
    const y = b.areas[i]!;
    return (
      x.surface === y.surface &&
      x.psf === y.psf &&
      (x.region === y.region || JSON.stringify(x.region) === JSON.stringify(y.region))
    );
  });

/** Flows below the roofs that can occur: a house wall that a roof touches always blocks the wind on that side. */
export function flowsUnder(project: Project, structure: Pick<Structure, 'roofs'>): readonly FlowCondition[] {
  const { flow } = project.basis.wind;
  const both = flow === 'both' || (flow === 'clear' && structure.roofs.some((r) => r.attached));
  return both ? ['clear', 'obstructed'] : [flow];
}

/**
 * All net-pressure cases. A monoslope takes both tables of Fig. 27.3-4 in each direction: which of them belongs to wind
 * on the high edge was reasoned from the signs, not read off the figure, so both are run and the worse governs.
 */
export function windCases(project: Project, structure: Structure, ledger: Ledger): readonly LoadCase[] {
  const pressures = velocityPressures(project, structure, ledger);
  const flows = flowsUnder(project, structure);
  const cases: LoadCase[] = [];
  const counted = new Set<string>();
  const below = structure.roofs.map((roof) => supportsBelow(structure, roof, counted));
  for (const d of DIRECTIONS) {
    const meetings = structure.roofs.flatMap((roof, i) => {
      const qh = pressures.get(roof.mark);
      const m = qh === undefined ? undefined : meet(project, structure, roof, below[i]!, qh, d, ledger);
      return m ? [m] : [];
    });
    if (meetings.length === 0) continue;
    const senses = meetings.some((m) => m.twoSenses) ? [false, true] : [false];
    for (const swapped of senses) {
      for (const ab of ['A', 'B'] as const) {
        for (const f of flows) {
          const c = windCase(project, meetings, d, ab, f, swapped, ledger);
          if (c.areas.length > 0 && !cases.some((other) => sameLoads(other, c))) cases.push(c);
        }
      }
    }
  }
  return cases;
}
