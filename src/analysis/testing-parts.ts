/** Pieces that structures made by hand are put together from: sections, footings, beams on posts, joints. */
import type { Vec2, Vec3 } from '../base/vec.js';
import type { Office, Project } from '../project/model.js';
import type { Footing, Joint, Member, RoofPlaced, Section, Structure, Surface } from '../structure/model.js';

export const office = <T>(value: T, path: string): Office<T> => ({ value, state: 'given', from: 'test', path });

export interface Fixture {
  readonly project: Project;
  readonly structure: Structure;
}

export interface Site {
  readonly wind: number;
  readonly snow: number;
  readonly live: number;
  readonly exposure: 'B' | 'C' | 'D';
}
export const CALM: Site = { wind: 110, snow: 30, live: 20, exposure: 'C' };

export function makeProject(site: Site, cover: Project['cover']): Project {
  const at = '/basis';
  return {
    version: 1,
    job: {
      title: '',
      address: '',
      owner: '',
      parcel: '',
      preparedBy: '',
      date: '',
      units: 'us',
      sheetSize: 'ARCH D',
      scope: '',
    },
    basis: {
      codes: {
        id: '2018',
        residential: 'IRC 2018',
        building: 'IBC 2018',
        loads: '7-16',
        wood: 'NDS 2018',
        concrete: 'ACI 318-14',
      },
      riskCategory: 'II',
      wind: {
        speed: office(site.wind, `${at}/wind/speed`),
        exposure: office(site.exposure, `${at}/wind/exposure`),
        topographic: office(1, `${at}/wind/topographic`),
        elevation: 0,
        flow: 'both',
      },
      snow: { ground: office(site.snow, `${at}/snow/ground`), exposure: office('partially', `${at}/snow/exposure`) },
      roofLive: {
        minimum: office(site.live, `${at}/roofLive/minimum`),
        patioAppendix: office(false, `${at}/roofLive/patioAppendix`),
        reduce: false,
      },
      seismic: { category: office('B', `${at}/seismic/category`) },
      frost: office(12, `${at}/frost`),
      soil: { bearing: office(1500, ''), lateral: office(100, ''), density: 100, description: '' },
      zoning: {
        coverageLimit: office(0.4, ''),
        coverageOf: 'lot',
        setbacks: {
          front: office(0, ''),
          rear: office(0, ''),
          left: office(0, ''),
          right: office(0, ''),
          'street-side': office(0, ''),
        },
        referenceEdge: office('post', ''),
        heightLimit: office(200, ''),
        headroom: 80,
      },
      criteria: [],
    },
    lot: {
      courses: [],
      origin: { east: 0, north: 0 },
      outward: 0,
      easements: [],
      buildings: [],
      items: [],
      street: { name: '', course: 0 },
      paving: [],
      utilities: [],
      drainage: [],
      datum: '',
    },
    house: {
      walls: [
        {
          name: 'rear',
          start: { x: -600, y: 0 },
          end: { x: 600, y: 0 },
          plate: 97,
          stories: 1,
          build: {
            name: 'b',
            studSize: '2x4',
            studSpacing: 16,
            cladding: 'stucco',
            claddingThickness: 0.875,
            sheathing: '',
            verified: office(true, ''),
          },
          path: '/house/walls/0',
        },
      ],
      openings: [],
      roofs: [],
      stories: 1,
      rooms: [],
      equipment: [],
    },
    patio: { slabs: [], steps: [], existing: [], grade: { atHouse: -10, fall: 0 } },
    cover,
    choices: {
      sections: {},
      footings: {
        pad: { kind: 'pier-on-pad', diameter: 12, width: 24, thickness: 12, bottom: 36, top: 2, fc: 2500, steel: '' },
      },
      standoff: 1,
      joints: [],
      connections: [],
      deflection: { live: 360, total: 240 },
    },
    prices: [],
    log: { revisions: [], approvals: [] },
    assumptions: [],
    questions: [],
  };
}

export const GROUND = -10;
export const CONCRETE_TOP = GROUND + 2;
export const CONCRETE_BOTTOM = GROUND - 36;
export const POST_BOTTOM = CONCRETE_TOP + 1;

/** Solid section by its name, dressed size and weight at 35 pcf. */
export function solid(choice: string, b: number, d: number): Section {
  return {
    label: choice,
    choice,
    path: `/choices/sections/${choice}`,
    width: b,
    depth: d,
    b,
    d,
    plies: 1,
    plyWidth: b,
    family: 'sawn-dimension',
    nominal: { thickness: 2, width: 10 },
    species: 'Douglas Fir-Larch',
    grade: 'No. 2',
    sizeClass: 'dimension',
    sizeInTable: false,
    values: {
      Fb: 900,
      FbNeg: 900,
      FbY: 900,
      Ft: 575,
      Fv: 180,
      FcPerp: 625,
      Fc: 1350,
      E: 1.6e6,
      Emin: 580000,
      EminY: 580000,
      G: 0.5,
      source: 'test',
      provenance: 'memory',
    },
    treatment: 'none',
    incised: false,
    wet: false,
    weight: (b * d * 35) / 1728,
  };
}

export const BASE = { state: 'new', notch: 0, cuts: [], unbraced: { top: 0, bottom: 0 }, path: '/cover' } as const;
export const joint = (
  id: string,
  kind: Joint['kind'],
  at: Vec3,
  upper: [string, number],
  lower: [string, number],
): Joint => ({
  id,
  mark: id.split('-')[0]!,
  kind,
  at,
  ties: [
    { part: upper[0], along: upper[1] },
    { part: lower[0], along: lower[1] },
  ],
  contact: { length: 0, width: 0 },
  path: '/cover',
});

/** Frame centres: from, every spacing, to. */
export function stations(from: number, to: number, spacing: number): number[] {
  const out: number[] = [];
  for (let k = 0; from + k * spacing < to - 1e-6; k++) out.push(from + k * spacing);
  out.push(to);
  return out;
}

export const halfway = (at: readonly number[], low: number, high: number): [number, number][] =>
  at.map((x, i) => [i === 0 ? low : (at[i - 1]! + x) / 2, i === at.length - 1 ? high : (x + at[i + 1]!) / 2]);

export const LAYERS: Surface['layers'] = [
  { name: 'covering', psf: 2, source: 'test' },
  { name: 'sheathing', psf: 1.5, source: 'test' },
];
export const EDGES = (eave: number): Surface['edges'] => [{ name: 'fascia', v: eave, weight: 0.25 }];

export function footing(id: string, at: Vec2): Footing {
  return {
    id,
    mark: id,
    kind: 'pier-on-pad',
    at,
    top: CONCRETE_TOP,
    bottom: CONCRETE_BOTTOM,
    surface: GROUND,
    bearingArea: 576,
    size: 24,
    round: false,
    pierDiameter: 12,
    padThickness: 12,
    concrete: 1,
    soilOver: 0,
    fc: 2500,
    steel: '',
    choice: 'pad',
    path: '/cover',
  };
}

export interface Parts {
  readonly members: Member[];
  readonly joints: Joint[];
  readonly footings: Footing[];
}

/** A beam with its posts and footings below. */
export function placeBeam(
  parts: Parts,
  mark: string,
  from: Vec2,
  to: Vec2,
  top: number,
  beam: Section,
  post: Section,
  at: readonly number[],
): void {
  const z = top - beam.depth / 2;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const up = { x: 0, y: 0, z: 1 };
  parts.members.push({
    ...BASE,
    id: mark,
    mark,
    role: 'beam',
    section: beam,
    start: { ...from, z },
    end: { ...to, z },
    up,
    length,
    strips: [],
  });
  at.forEach((along, i) => {
    const p = { x: from.x + ((to.x - from.x) * along) / length, y: from.y + ((to.y - from.y) * along) / length };
    const id = `P${mark}${i + 1}`;
    const foot = `F${mark}${i + 1}`;
    const underside = top - beam.depth;
    const h = underside - POST_BOTTOM;
    const side = { x: 1, y: 0, z: 0 };
    parts.members.push({
      ...BASE,
      id,
      mark: id,
      role: 'post',
      section: post,
      start: { ...p, z: POST_BOTTOM },
      end: { ...p, z: underside },
      up: side,
      length: h,
      strips: [],
    });
    parts.footings.push(footing(foot, p));
    parts.joints.push(joint(`JP-${id}`, 'beam-to-post', { ...p, z: underside }, [mark, along], [id, h]));
    parts.joints.push(joint(`JF-${id}`, 'post-to-footing', { ...p, z: POST_BOTTOM }, [id, 0], [foot, 0]));
  });
}

export const postSpecs = (at: readonly number[], mark: string) =>
  at.map((x, i) => ({
    mark: `P${mark}${i + 1}`,
    at: x,
    section: 'post',
    footing: 'pad',
    footingMark: `F${mark}${i + 1}`,
    path: '/cover',
  }));

export function finish(roof: RoofPlaced, surfaces: readonly Surface[], parts: Parts, attached: boolean): Structure {
  return {
    attachment: attached ? 'attached' : 'free-standing',
    roofs: [roof],
    surfaces,
    ...parts,
    slabs: [],
    walls: [
      {
        id: 'wall-1',
        name: 'rear',
        start: { x: -600, y: 0 },
        end: { x: 600, y: 0 },
        out: { x: 0, y: 1 },
        base: 0,
        plate: 97,
        openings: [],
        path: '/house/walls/0',
      },
    ],
    housePlanes: [],
    grade: { z0: GROUND, gx: 0, gy: 0 },
  };
}

export const FINISH = {
  covering: '',
  underlayment: '',
  sheathing: '',
  ceiling: '',
  allowance: 0,
  fascia: '',
  gutter: false,
};
