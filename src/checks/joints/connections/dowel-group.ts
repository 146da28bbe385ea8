/**
 * Fasteners that join a main piece to the pieces beside it: the most strained one against its adjusted lateral value at
 * the angle its force makes with the grain of both. NDS 2018 chapters 11 and 12.
 */
import type { Recorder } from '../../../base/trace.js';
import { cross, dot, length, scale, type Vec3 } from '../../../base/vec.js';
import type { Fastener } from '../../../catalog/index.js';
import { adjustedZ, Ceg, Cg, CMConnection, lateralValue, slipModulus } from '../../codes/nds-2018/index.js';
import { say } from '../../codes/say.js';
import { TRACE } from '../demands.js';
import type { Place } from './contract.js';
import { geometryOf, type Lie, lieAt, runsAcross, runsAlong } from './geometry.js';
import { angleTo, bearingIn, endGrain, type Piece } from './pieces.js';

export interface Group {
  readonly fastener: Fastener;
  readonly axis: Vec3;
  readonly main: Piece;
  /** One of the pieces beside it. */
  readonly side: Piece;
  readonly sides: 1 | 2;
  readonly shear: 'single' | 'double';
  /** Dowel that bears in the main piece, inches. */
  readonly lm: number;
  /** Fasteners that share the force. */
  readonly n: number;
}

export interface Strained {
  readonly ratio: number;
  /** Adjusted lateral value of the governing fastener, lb. */
  readonly Z: number;
  readonly faults: readonly string[];
}

const wet = (p: Piece): boolean => p.wood?.section.wet ?? false;
const steel = (g: Group): boolean => !g.side.wood;

/** Only a level piece knows its upper and lower edge, and only a force that does not turn runs to one of them. */
function lieOf(p: Piece, g: Group, dir: Vec3, turns: boolean): Lie {
  const level = p.wood !== undefined && Math.abs(p.wood.grain.z) < 0.7;
  const toward = turns || !level ? 'either' : dir.z > 0 ? 'facing' : 'far';
  return lieAt(angleTo(p, g.axis, dir), toward, endGrain(p, g.axis));
}

/** Group action over the rows the force makes in one piece: the least of those along and across its grain. */
function groupAction(g: Group, p: Piece, lie: Lie, rec?: Recorder): number {
  const D = g.fastener.D;
  let value = 1;
  const { pattern } = p;
  const gamma = slipModulus(D, steel(g));
  const rows = [
    [runsAlong(lie), pattern.alongGrain, pattern.spacingAlong, p.thickness * p.depth],
    [
      runsAcross(lie),
      pattern.acrossGrain,
      pattern.spacingAcross,
      p.thickness * Math.max((pattern.alongGrain - 1) * pattern.spacingAlong, 3 * D),
    ],
  ] as const;
  for (const [there, n, s, area] of rows) {
    if (!there || n < 2 || D < 0.25) continue;
    const EmAm = g.main.E * (p === g.main ? area : g.main.thickness * g.main.depth);
    const EsAs = g.side.E * g.sides * (p === g.side ? area : g.side.thickness * g.side.depth);
    value = Math.min(value, Cg(n, s, D, EmAm, EsAs, gamma, rec));
  }
  return value;
}

/** Z' of one fastener for a force of direction `dir`, lb, with what its layout breaks. */
export function lateral(g: Group, dir: Vec3, CD: number, madeDry: boolean, turns: boolean, rec?: Recorder): Strained {
  const f = g.fastener;
  const D = f.D;
  const thetaMax = Math.max(angleTo(g.main, g.axis, dir), angleTo(g.side, g.axis, dir));
  const { Z } = lateralValue(
    {
      D: f.Dr ?? D,
      nominalD: D,
      lm: g.lm,
      ls: g.side.thickness,
      Fem: bearingIn(g.main, D, g.axis, dir, rec),
      Fes: bearingIn(g.side, D, g.axis, dir, rec),
      Fyb: f.Fyb,
      thetaMax,
    },
    g.shear,
    rec,
  );
  const faults: string[] = [];
  let Cdelta = 1;
  let because = '';
  let cg = 1;
  let freeToShrink = true;
  for (const p of [g.main, g.side]) {
    const lie = lieOf(p, g, dir, turns);
    const geometry = geometryOf(p, D, lie, steel(g));
    if (because === '' || geometry.Cdelta < Cdelta) because = geometry.because;
    Cdelta = Math.min(Cdelta, geometry.Cdelta);
    faults.push(...geometry.faults);
    if (!p.wood) continue;
    cg = Math.min(cg, groupAction(g, p, lie, rec));
    if (p.pattern.acrossGrain > 1) freeToShrink = false;
  }
  if (D >= 0.25) {
    rec?.step({
      symbol: 'CΔ',
      meaning: 'geometry factor: least share of a full end distance or spacing',
      formula: 'distance / full distance ≤ 1',
      substituted: because,
      value: Cdelta,
      unit: '',
      clause: 'NDS 2018 12.5.1',
    });
  }
  const moisture = { wetAtFabrication: !madeDry, wetInService: wet(g.main) || wet(g.side) };
  const inEnd = endGrain(g.main, g.axis) || endGrain(g.side, g.axis);
  const value = adjustedZ(
    Z,
    {
      CD,
      CM: CMConnection('dowel-lateral', moisture, D, freeToShrink, rec),
      Cg: cg,
      Cdelta,
      ...(inEnd ? { Ceg: Ceg('lag', 'lateral')! } : {}),
    },
    rec,
  );
  return { ratio: 0, Z: value, faults };
}

/** Places of the fasteners about their middle, by the grain of the member they are laid out in. */
function spots(p: Piece, axis: Vec3): readonly Vec3[] {
  const grain = p.wood?.grain ?? { x: 0, y: 0, z: 1 };
  const square = cross(axis, grain);
  const { alongGrain, acrossGrain, spacingAlong, spacingAcross } = p.pattern;
  const out: Vec3[] = [];
  for (let i = 0; i < alongGrain; i++) {
    for (let j = 0; j < acrossGrain; j++) {
      const u = (i - (alongGrain - 1) / 2) * spacingAlong;
      const v = (j - (acrossGrain - 1) / 2) * spacingAcross;
      out.push({ x: grain.x * u + square.x * v, y: grain.y * u + square.y * v, z: grain.z * u + square.z * v });
    }
  }
  return out;
}

/**
 * The most strained fastener under shear `V` (lb, square to the axis) with `M` lb·in turning the group about its middle:
 * force shared equally, the turning by distance from the middle (elastic group).
 */
export function strain(g: Group, V: Vec3, M: number, CD: number, place: Place, rec?: Recorder): Strained {
  const size = length(V);
  if (size < TRACE) return { ratio: 0, Z: 0, faults: [] };
  if (M < TRACE) {
    const held = lateral(g, scale(V, 1 / size), CD, place.madeDry, false, rec);
    rec?.step({
      symbol: 'V/n',
      meaning: `shear on one fastener of ${g.main.name}`,
      formula: 'V / n',
      substituted: `${say(size)} / ${g.n}`,
      value: size / g.n,
      unit: 'lb',
      clause: 'statics',
    });
    return { ...held, ratio: size / g.n / held.Z };
  }
  const at = spots(g.main, g.axis);
  const polar = at.reduce((sum, r) => sum + dot(r, r), 0) * (g.n / at.length);
  if (polar < 1e-6) {
    const fault = `${g.main.name}: one fastener cannot keep the plate from turning; give it two or more`;
    return { ratio: 0, Z: 0, faults: [fault] };
  }
  let worst: { ratio: number; F: Vec3; held: Strained } | undefined;
  for (const r of at) {
    const turn = scale(cross(g.axis, r), M / polar);
    for (const sense of [1, -1]) {
      const F = {
        x: V.x / g.n + sense * turn.x,
        y: V.y / g.n + sense * turn.y,
        z: V.z / g.n + sense * turn.z,
      };
      const f = length(F);
      if (f < 1e-9) continue;
      const held = lateral(g, scale(F, 1 / f), CD, place.madeDry, true);
      if (!worst || f / held.Z > worst.ratio) worst = { ratio: f / held.Z, F, held };
    }
  }
  const { ratio, F, held } = worst!;
  if (rec) {
    rec.step({
      symbol: 'F1',
      meaning: `force on the most strained fastener of ${g.main.name}: its share and the turning about the group's middle`,
      formula: 'V/n + M·r / Σr², as vectors',
      substituted: `V = ${say(size)} lb, n = ${g.n}, M = ${say(M)} lb·in, Σr² = ${say(polar)} in²`,
      value: length(F),
      unit: 'lb',
      clause: 'statics',
    });
    lateral(g, scale(F, 1 / length(F)), CD, place.madeDry, true, rec);
  }
  return { ratio, Z: held.Z, faults: held.faults };
}

/** Distance from the face where the members meet to the middle of a member's fasteners, inches, measured plumb. */
export function reach(p: Piece): number {
  const { pattern } = p;
  const plumb = p.wood !== undefined && Math.abs(p.wood.grain.z) > 0.7;
  return plumb
    ? pattern.end + ((pattern.alongGrain - 1) * pattern.spacingAlong) / 2
    : pattern.edge + ((pattern.acrossGrain - 1) * pattern.spacingAcross) / 2;
}
