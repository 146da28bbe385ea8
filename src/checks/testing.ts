/** Small hand-made contexts for the tests of checks: one part, few load cases, forces typed in. */
import type { Effects, MemberEffects, Span } from '../analysis/model.js';
import type { Vec3 } from '../base/vec.js';
import type { Combination, LoadKind, Loads } from '../loads/model.js';
import type { LotResult } from '../lot/model.js';
import type { DesignValues, Footing, Joint, Member, Section, Structure } from '../structure/model.js';
import { gableProject } from '../structure/testing.js';
import type { Check, CheckContext, Finding } from './contract.js';

/** Douglas Fir-Larch No. 1, 6x10, beams and stringers: NDS Supplement 2018 Table 4D. */
export const VALUES: DesignValues = {
  Fb: 1350,
  FbNeg: 1350,
  FbY: 1350,
  Ft: 675,
  Fv: 170,
  FcPerp: 625,
  Fc: 925,
  E: 1.6e6,
  Emin: 0.58e6,
  EminY: 0.58e6,
  G: 0.5,
  source: 'NDS Supplement 2018 Table 4D',
  provenance: 'read',
};

export const timber = (change: Partial<Section> = {}): Section => ({
  label: '6x10 DF-L No. 1',
  choice: 'beam',
  path: '/choices/sections/beam',
  width: 5.5,
  depth: 9.5,
  b: 5.5,
  d: 9.5,
  plies: 1,
  plyWidth: 5.5,
  family: 'sawn-timber',
  nominal: { thickness: 6, width: 10 },
  species: 'Douglas Fir-Larch',
  grade: 'No. 1',
  sizeClass: 'beams-stringers',
  sizeInTable: false,
  values: VALUES,
  treatment: 'none',
  incised: false,
  wet: false,
  weight: 1,
  ...change,
});

/** Douglas Fir-Larch No. 2, 2x10: NDS Supplement 2018 Table 4A. */
export const joist = (change: Partial<Section> = {}): Section =>
  timber({
    label: '2x10 DF-L No. 2',
    width: 1.5,
    depth: 9.25,
    b: 1.5,
    d: 9.25,
    plyWidth: 1.5,
    family: 'sawn-dimension',
    nominal: { thickness: 2, width: 10 },
    grade: 'No. 2',
    sizeClass: 'dimension',
    values: { ...VALUES, Fb: 900, FbNeg: 900, FbY: 900, Ft: 575, Fv: 180, FcPerp: 625, Fc: 1350 },
    ...change,
  });

export const bar = (change: Partial<Member> = {}): Member => ({
  id: 'B1',
  mark: 'B1',
  role: 'beam',
  section: timber(),
  start: { x: 0, y: 0, z: 100 },
  end: { x: 144, y: 0, z: 100 },
  up: { x: 0, y: 0, z: 1 },
  length: 144,
  state: 'new',
  strips: [],
  notch: 0,
  cuts: [],
  unbraced: { top: 24, bottom: 144 },
  path: '/cover/beams/0',
  ...change,
});

/** Curves given as one list a case, at the same stations. */
export interface Forces {
  readonly stations: readonly number[];
  readonly spans?: readonly Span[];
  readonly spanOf?: readonly number[];
  readonly m?: readonly (readonly number[])[];
  readonly v?: readonly (readonly number[])[];
  readonly mWeak?: readonly (readonly number[])[];
  readonly n?: readonly (readonly number[])[];
  readonly sag?: readonly (readonly number[])[];
}

export function forcesOf(member: string, cases: number, f: Forces): MemberEffects {
  const rows = (given: readonly (readonly number[])[] | undefined): Float64Array[] =>
    Array.from({ length: cases }, (_, c) => Float64Array.from(f.stations, (_x, i) => given?.[c]?.[i] ?? 0));
  const last = f.stations.at(-1)!;
  return {
    member,
    stations: Float64Array.from(f.stations),
    spanOf: Int32Array.from(f.spanOf ?? f.stations.map(() => 0)),
    spans: f.spans ?? [{ from: 0, to: last, length: last, kind: 'span' }],
    m: rows(f.m),
    v: rows(f.v),
    n: rows(f.n),
    mWeak: rows(f.mWeak),
    vWeak: rows(undefined),
    sag: rows(f.sag),
  };
}

const CD: Readonly<Record<LoadKind, number>> = { D: 0.9, Lr: 1.25, S: 1.15, W: 1.6, E: 1.6 };

/** Cases D, S, W and the combinations D, D+S, D+0.6W, 0.6D+0.6W; strength 1.4D, 1.2D+1.6S. */
export const KINDS: readonly LoadKind[] = ['D', 'S', 'W'];

const combination = (id: string, terms: readonly [number, number][], uplift = false): Combination => ({
  id,
  label: id,
  terms: terms.map(([c, factor]) => ({ case: c, factor })),
  CD: Math.max(...terms.map(([c]) => CD[KINDS[c]!])),
  clause: 'ASCE 7-16 2.4.1',
  uplift,
});

export const LOADS: Loads = {
  cases: KINDS.map((kind) => ({
    id: kind,
    kind,
    title: kind,
    areas: [],
    plan: [],
    edges: [],
    selfWeight: kind === 'D',
    side: [],
    clause: '',
  })),
  combinations: [
    combination('D', [[0, 1]]),
    combination('D+S', [
      [0, 1],
      [1, 1],
    ]),
    combination('D+0.6W', [
      [0, 1],
      [2, 0.6],
    ]),
    combination(
      '0.6D+0.6W',
      [
        [0, 0.6],
        [2, 0.6],
      ],
      true,
    ),
  ],
  strength: [
    combination('1.4D', [[0, 1.4]]),
    combination('1.2D+1.6S', [
      [0, 1.2],
      [1, 1.6],
    ]),
  ],
  basis: { rows: [] },
  outside: [],
};

export const LOT: LotResult = {
  corners: [],
  lines: [],
  setbacks: [],
  north: 0,
  closure: { error: 0, perimeter: 5000, ratio: 0, azimuth: 0 },
  area: 0,
  coverage: { basis: 0, existing: 0, proposed: 0, limit: 0, rows: [] },
  distances: [],
  separations: [],
  easements: [],
};

const EMPTY: Structure = {
  attachment: 'free-standing',
  roofs: [],
  members: [],
  joints: [],
  surfaces: [],
  footings: [],
  slabs: [],
  walls: [],
  housePlanes: [],
  grade: { z0: -12, gx: 0, gy: 0 },
};

export interface Given {
  readonly project?: CheckContext['project'];
  readonly structure?: Partial<Structure>;
  readonly loads?: Partial<Loads>;
  readonly lot?: Partial<LotResult>;
  readonly members?: readonly MemberEffects[];
  readonly joints?: Readonly<Record<string, readonly Vec3[]>>;
  readonly footings?: Readonly<Record<string, { readonly force: readonly Vec3[]; readonly moment: readonly Vec3[] }>>;
  readonly effects?: Partial<Effects>;
}

export const contextFor = (g: Given): CheckContext => ({
  project: g.project ?? gableProject,
  lot: { ...LOT, ...g.lot },
  structure: { ...EMPTY, ...g.structure },
  loads: { ...LOADS, ...g.loads },
  effects: {
    cases: KINDS,
    members: new Map((g.members ?? []).map((m) => [m.member, m])),
    joints: new Map(Object.entries(g.joints ?? {}).map(([joint, force]) => [joint, { joint, force }])),
    footings: new Map(Object.entries(g.footings ?? {}).map(([footing, f]) => [footing, { footing, ...f }])),
    sway: [],
    restraints: [],
    hand: [],
    balance: [],
    size: { freedoms: 0, cases: KINDS.length },
    ...g.effects,
  },
});

/** Runs a check on its first subject. */
export function runFirst(check: Check, ctx: CheckContext): Finding {
  const subject = check.subjects(ctx)[0];
  if (!subject) throw new Error(`${check.id} finds no subject`);
  return check.run(subject, ctx);
}

export const v = (x: number, y: number, z: number): Vec3 => ({ x, y, z });
export const NONE: Vec3 = { x: 0, y: 0, z: 0 };

export const pad = (change: Partial<Footing> = {}): Footing => ({
  id: 'F1',
  mark: 'F1',
  kind: 'square-pad',
  at: { x: 0, y: 0 },
  top: -24,
  bottom: -36,
  surface: -12,
  bearingArea: 576,
  size: 24,
  round: false,
  pierDiameter: 0,
  padThickness: 12,
  concrete: 6912,
  soilOver: 6912,
  fc: 2500,
  steel: '',
  choice: 'pad',
  path: '/cover/beams/0/posts/0/footing',
  ...change,
});

export const joint = (change: Partial<Joint> = {}): Joint => ({
  id: 'J1',
  mark: 'J1',
  kind: 'beam-to-post',
  at: NONE,
  ties: [
    { part: 'B1', along: 72 },
    { part: 'P1', along: 0 },
  ],
  contact: { length: 5.5, width: 5.5 },
  path: '/cover/beams/0',
  ...change,
});

export const postBar = (change: Partial<Member> = {}): Member =>
  bar({
    id: 'P1',
    mark: 'P1',
    role: 'post',
    section: timber({
      label: '6x6 DF-L No. 1',
      depth: 5.5,
      d: 5.5,
      nominal: { thickness: 6, width: 6 },
      sizeClass: 'posts-timbers',
      values: { ...VALUES, Fb: 1200, FbNeg: 1200, FbY: 1200, Ft: 825, Fc: 1000 },
    }),
    start: { x: 72, y: 0, z: 0 },
    end: { x: 72, y: 0, z: 96 },
    up: { x: 1, y: 0, z: 0 },
    length: 96,
    path: '/cover/beams/0/posts/0',
    ...change,
  });
