/**
 * Earthquake by the equivalent lateral force procedure (ASCE 7 11.1.2, 12.7.2, 12.8), where the cover is not exempt as part of a
 * dwelling: one horizontal force a roof in each direction, held at roof level like the wind. The case is ρ·QE, or Ω0·QE where
 * that is more and the system's footings ask for it; the vertical effect 0.2·SDS·D joins the dead load's factor in the
 * combinations.
 */
import type { Recorder } from '../base/trace.js';
import type { LateralSystem, Project, SeismicCategory } from '../project/model.js';
import type { RoofPlaced, Structure } from '../structure/model.js';
import { type Ledger, note } from './basis.js';
import {
  approximatePeriod,
  asce,
  baseShear,
  MEMORY_NOTE,
  num,
  redundancyRho,
  SEISMIC_SYSTEMS,
  type SeismicDesignCategory,
  seismicCs,
  seismicExempt,
  seismicSnow,
  timberCantileverHeightLimit,
} from './codes/asce7/index.js';
import { layersPsf } from './dead.js';
import type { LoadCase, SeismicAnswer } from './model.js';
import { DIRECTIONS, heading } from './wind-plan.js';

/** Design category of the standard for one of the residential code: its D0, D1 and D2 are one D. */
export const designCategory = (c: SeismicCategory): SeismicDesignCategory =>
  c === 'A' || c === 'B' || c === 'C' || c === 'E' ? c : 'D';

/** Largest SDS that a category of the residential code stands for (IRC 2018 Table R301.2.2.1.1), g; E has no upper end. */
export const SDS_OF_CATEGORY: Readonly<Record<SeismicCategory, number | undefined>> = {
  A: 0.17,
  B: 0.33,
  C: 0.5,
  D0: 0.67,
  D1: 0.83,
  D2: 1.25,
  E: undefined,
};

interface System {
  readonly R: number;
  /** Overstrength that its footings ask for (12.2.5.2); 1 where none does. It is used throughout where it exceeds ρ. */
  readonly Omega0: number;
  readonly why: string;
  /** False where the standard does not permit it in the category at that height (in). */
  allowed(category: SeismicDesignCategory, height: number): boolean;
}

const { R: timber, Omega0: over } = SEISMIC_SYSTEMS.timberCantileverColumns;
const columns = (category: SeismicDesignCategory, height: number): boolean =>
  height <= (timberCantileverHeightLimit(category) ?? 0);

/** R by what resists side load. What is not known yet takes the least. */
const SYSTEMS: Readonly<Record<LateralSystem, System>> = {
  'fixed-posts': { R: timber, Omega0: over, why: 'timber cantilever columns, Table 12.2-1', allowed: columns },
  'knee-braces': {
    R: timber,
    Omega0: over,
    why: 'knee-braced posts are no system of Table 12.2-1; taken as timber cantilever columns, the least R for timber',
    allowed: columns,
  },
  house: {
    R: SEISMIC_SYSTEMS.lightFrameOtherPanels.R,
    Omega0: 1,
    why: 'light-frame walls of the house with panels of any material, Table 12.2-1, since their sheathing is not known',
    allowed: (category) => category !== 'E' && category !== 'F',
  },
  none: { R: timber, Omega0: over, why: 'no system chosen: the least R for timber', allowed: () => true },
  unknown: { R: timber, Omega0: over, why: 'no system chosen: the least R for timber', allowed: () => true },
};

/** Weight of one roof that an earthquake moves, lb: its layers, edges, framing, beams and the upper half of its posts, and snow. */
export interface SeismicWeight {
  readonly dead: number;
  readonly snow: number;
}

function polygonArea(ring: readonly { readonly x: number; readonly y: number }[]): number {
  let twice = 0;
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    twice += p.x * q.y - q.x * p.y;
  });
  return Math.abs(twice) / 2;
}

export function seismicWeight(structure: Structure, roof: RoofPlaced, snowPsf: number): SeismicWeight {
  let dead = 0;
  let plan = 0;
  for (const s of structure.surfaces) {
    if (s.roof !== roof.mark) continue;
    const area = polygonArea(s.outline);
    plan += area * Math.cos(s.slope);
    dead += (area * layersPsf(s)) / 144;
    const us = s.outline.map((p) => p.x);
    for (const e of s.edges) dead += e.weight * (Math.max(...us) - Math.min(...us));
  }
  const members = new Map(structure.members.map((m) => [m.id, m]));
  /** Roofs that bear on a part, to share its weight. */
  const bears = new Map<string, Set<string>>();
  const bear = (part: string, mark: string): void => {
    const set = bears.get(part) ?? new Set<string>();
    set.add(mark);
    bears.set(part, set);
  };
  for (const j of structure.joints) {
    const upper = members.get(j.ties[0]?.part ?? '');
    const lower = members.get(j.ties.at(-1)?.part ?? '');
    if (upper?.roof !== undefined && lower?.role === 'beam') bear(lower.id, upper.roof);
  }
  for (const j of structure.joints) {
    const upper = j.ties[0]?.part ?? '';
    const lower = members.get(j.ties.at(-1)?.part ?? '');
    if (lower?.role === 'post') for (const mark of bears.get(upper) ?? []) bear(lower.id, mark);
  }
  const length = (m: {
    start: { x: number; y: number; z: number };
    end: { x: number; y: number; z: number };
  }): number => Math.hypot(m.end.x - m.start.x, m.end.y - m.start.y, m.end.z - m.start.z);
  for (const m of structure.members) {
    if (m.roof === roof.mark && m.strips.length > 0)
      dead += (m.truss?.weight ?? m.section.weight * length(m)) + (m.hung ?? 0) * length(m);
    const shared = bears.get(m.id);
    if (shared?.has(roof.mark)) dead += (m.section.weight * length(m) * (m.role === 'post' ? 0.5 : 1)) / shared.size;
  }
  return { dead, snow: (plan * snowPsf) / 144 };
}

/** Everything the force of one roof in one direction follows from; with a recorder, said step by step. */
export interface SeismicForce {
  readonly W: number;
  readonly Cs: number;
  /** The larger of redundancy ρ and the overstrength of the system. */
  readonly factor: number;
  /** Eh, lb. */
  readonly E: number;
}

export function seismicForce(
  project: Project,
  structure: Structure,
  roof: RoofPlaced,
  axis: 'x' | 'y',
  pf: number,
  rec?: Recorder,
): SeismicForce | undefined {
  const { seismic, codes } = project.basis;
  const edition = codes.loads;
  const SDS = seismic.sds?.value ?? SDS_OF_CATEGORY[seismic.category.value];
  if (SDS === undefined) return undefined;
  const category = designCategory(seismic.category.value);
  const system = SYSTEMS[project.cover.lateral[axis]];
  const grade = structure.grade;
  const hn = roof.highestPoint - (grade.z0 + grade.gy * roof.max.y);
  const weight = seismicWeight(structure, roof, seismicSnow(pf, edition));
  const W = weight.dead + weight.snow;
  rec?.step({
    symbol: 'W',
    meaning: 'effective seismic weight: roof, beams, upper half of the posts, and the snow that counts',
    formula: 'dead + snow',
    substituted: `${num(weight.dead)} + ${num(weight.snow)}`,
    value: W,
    unit: 'lb',
    clause: asce(edition, '12.7.2'),
    from: [roof.path],
  });
  rec?.step({
    symbol: 'SDS',
    meaning: seismic.sds ? 'design spectral acceleration' : `largest SDS of category ${seismic.category.value}`,
    formula: seismic.sds ? 'given' : 'upper end of the category',
    substituted: seismic.sds ? seismic.sds.from : seismic.category.value,
    value: SDS,
    unit: 'g',
    clause: seismic.sds ? asce(edition, '11.4.5') : 'IRC 2018 Table R301.2.2.1.1',
    from: [seismic.sds?.path ?? seismic.category.path],
    ...(seismic.sds ? {} : { note: MEMORY_NOTE }),
  });
  rec?.step({
    symbol: 'R',
    meaning: system.why,
    formula: 'table by system',
    substituted: project.cover.lateral[axis],
    value: system.R,
    unit: '',
    clause: asce(edition, 'Table 12.2-1'),
    from: [`/cover/lateral/${axis}`],
  });
  const T = approximatePeriod(hn, edition, rec);
  // Without SD1 the plateau is not left: the upper limit is set to it.
  const SD1 = seismic.sd1?.value ?? SDS * T;
  const { Cs } = seismicCs(
    { SDS, SD1, S1: seismic.s1?.value ?? 0, R: system.R, Ie: IMPORTANCE[project.basis.riskCategory], T, TL: 4 },
    edition,
    rec,
  );
  const V = baseShear(Cs, W, edition, rec);
  const rho = redundancyRho(category);
  const factor = Math.max(rho, system.Omega0);
  rec?.step({
    symbol: 'Eh',
    meaning: 'horizontal seismic load effect, the force of this case',
    formula: 'max(ρ, Ω0) · V',
    substituted: `max(${num(rho)}, ${num(system.Omega0)}) · ${num(V)}`,
    value: factor * V,
    unit: 'lb',
    clause: asce(edition, '12.3.4, 12.4.2.1, 12.2.5.2'),
    ...(system.Omega0 > 1
      ? { note: 'the footings of cantilever columns take the overstrength Ω0; it is used for every part (recalled)' }
      : {}),
  });
  return { W, Cs, factor, E: factor * V };
}

/** Seismic importance factor (ASCE 7 Table 1.5-2). */
const IMPORTANCE = { I: 1, II: 1, III: 1.25, IV: 1.5 } as const;

const answer = (
  outcome: SeismicAnswer['outcome'],
  clause: string,
  text: string,
  cases: readonly string[] = [],
  force = 0,
): SeismicAnswer => ({ outcome, clause, note: text, cases, force });

/** The four cases where the cover is not exempt, SDS for the combinations, and what became of the question. */
export function seismicCases(
  project: Project,
  structure: Structure,
  pf: number,
  ledger: Ledger,
): { readonly cases: readonly LoadCase[]; readonly SDS: number; readonly answer: SeismicAnswer } {
  const { seismic, codes, riskCategory } = project.basis;
  const edition = codes.loads;
  const given = seismic.category.value;
  const category = designCategory(given);
  const exemption = asce(edition, '11.1.2');
  const dwelling = riskCategory === 'I' || riskCategory === 'II';
  if (dwelling && seismicExempt(true, category, Number.POSITIVE_INFINITY)) {
    const text = `a cover that belongs to a detached one- or two-family dwelling is exempt in category ${given} (A, B or C); one that serves a townhouse or another building is not`;
    note(
      ledger,
      'E',
      `earthquake load: none, by seismic design category ${given} (${seismic.category.from}): ${text}`,
      0,
      'lb',
      exemption,
      [seismic.category.path],
    );
    return { cases: [], SDS: 0, answer: answer('exempt', exemption, text) };
  }
  const clause = asce(edition, '12.8');
  const none = (outcome: SeismicAnswer['outcome'], text: string) => ({
    cases: [],
    SDS: 0,
    answer: answer(outcome, clause, text),
  });
  if (structure.roofs.length === 0) return none('unknown', 'No roof was placed. Needed: its weight.');
  const SDS = seismic.sds?.value ?? SDS_OF_CATEGORY[given];
  if (SDS === undefined)
    return none(
      'unknown',
      `Category ${given} has no largest SDS. Needed: SDS of the site, from the office or the hazard map.`,
    );
  for (const roof of structure.roofs)
    for (const axis of ['x', 'y'] as const) {
      const system = project.cover.lateral[axis];
      const height = roof.highestPoint - structure.grade.z0;
      if (!SYSTEMS[system].allowed(category, height))
        return none(
          'outside',
          `${system} may not resist side load at this height in category ${given} (Table 12.2-1). A licensed professional has to design another system.`,
        );
    }
  const from = [seismic.category.path];
  const soil = seismic.siteClass ? `, site class ${seismic.siteClass.value}` : '';
  note(
    ledger,
    'SDS',
    seismic.sds ? `design spectral acceleration${soil}` : `largest SDS of category ${given}`,
    SDS,
    'g',
    seismic.sds ? seismic.sds.from || asce(edition, '11.4.5') : 'IRC 2018 Table R301.2.2.1.1',
    [seismic.sds?.path ?? seismic.category.path],
    seismic.sds ? 'read' : 'memory',
  );
  note(
    ledger,
    'Ev/D',
    'vertical seismic effect as a share of dead load, 0.2·SDS',
    0.2 * SDS,
    '',
    asce(edition, '12.4.2.2'),
    from,
    'memory',
  );
  let most = 0;
  const cases = DIRECTIONS.map((d): LoadCase => {
    const axis = d.endsWith('x') ? 'x' : 'y';
    const h = heading(d);
    const side = structure.roofs.map((roof) => {
      const f = seismicForce(project, structure, roof, axis, pf)!;
      most = Math.max(most, f.E);
      if (d.startsWith('+')) {
        note(ledger, 'W', `${roof.mark}: effective seismic weight`, f.W, 'lb', asce(edition, '12.7.2'), from);
        note(
          ledger,
          'Cs',
          `${roof.mark}: seismic response coefficient along ${axis}`,
          f.Cs,
          '',
          asce(edition, '12.8.1.1'),
          from,
        );
        note(
          ledger,
          'Eh',
          `${roof.mark}: earthquake force along ${axis}, factor ${Number(f.factor.toPrecision(4))}`,
          f.E,
          'lb',
          asce(edition, '12.4.2.1'),
          from,
        );
      }
      return {
        roof: roof.mark,
        at: {
          x: (roof.min.x + roof.max.x) / 2,
          y: (roof.min.y + roof.max.y) / 2,
          z: (roof.lowestEave + roof.highestPoint) / 2,
        },
        force: { x: f.E * h.x, y: f.E * h.y, z: 0 },
        why: 'earthquake on the weight of the roof',
      };
    });
    return {
      id: `E${d}`,
      kind: 'E',
      title: `Earthquake toward ${d}`,
      areas: [],
      edges: [],
      plan: [],
      selfWeight: false,
      side,
      clause,
    };
  });
  const ids = cases.map((c) => c.id);
  const held = (['x', 'y'] as const).map((axis) => `along ${axis} ${SYSTEMS[project.cover.lateral[axis]].why}`);
  return {
    cases,
    SDS,
    answer: answer(
      'included',
      clause,
      `Carried as ${ids.join(', ')}, at most ${Math.round(most)} lb on one roof, with 0.2·SDS = ${num(0.2 * SDS)} of the dead load up and down. Held by: ${held.join('; ')}.`,
      ids,
      most,
    ),
  };
}
