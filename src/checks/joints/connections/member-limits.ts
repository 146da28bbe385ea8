/** What the fasteners do to the pieces they hold: splitting, holes, tearing out, plates. */
import type { Recorder } from '../../../base/trace.js';
import { dot, type Vec3 } from '../../../base/vec.js';
import type { ConnectionPlates } from '../../../project/connections.js';
import type { Section } from '../../../structure/model.js';
import { flatTension, holeWidth } from '../../codes/aisc-360-16/index.js';
import { groupTearOut, netSection, rowTearOut, VrConnection } from '../../codes/nds-2018/index.js';
import { say } from '../../codes/say.js';
import { ratioOf } from '../../finding.js';
import { designValue } from '../../members/design.js';
import { TRACE } from '../demands.js';
import type { Piece } from './pieces.js';

/** Demand over capacity, both shown. */
function compared(
  symbol: string,
  meaning: string,
  P: number,
  capacity: number,
  clause: string,
  rec?: Recorder,
): number {
  const value = ratioOf(P, capacity);
  rec?.step({
    symbol: `${symbol}/cap`,
    meaning,
    formula: 'force / capacity, lb',
    substituted: `${say(P)} / ${say(capacity)}`,
    value,
    unit: '',
    clause,
  });
  return value;
}

/** Shear in a member that hangs on its fasteners, for dowels of 1/4 in. and more. NDS 2018 3.4.3.3. */
function splitting(p: Piece, V: Vec3, CD: number, rec?: Recorder): number | undefined {
  const { section, grain } = p.wood!;
  const along = dot(V, grain);
  const across = Math.sqrt(Math.max(0, dot(V, V) - along * along));
  if (across < TRACE) return 0;
  const Fv = designValue('Fv', section, { CD }, rec);
  if (Fv === undefined) return undefined;
  const spread = (p.pattern.acrossGrain - 1) * p.pattern.spacingAcross;
  // Depth from the edge the fasteners press toward to the farthest of them. A member pulled away from the other one is
  // pressed toward the edge that faces it; level forces press either way.
  const facing = p.pattern.edge + spread;
  const far = p.depth - p.pattern.edge;
  const level = Math.abs(grain.z) > 0.7;
  const de = Math.min(p.depth, level ? Math.min(facing, far) : V.z > 0 ? facing : far);
  const Vr = VrConnection(Fv, p.thickness, p.depth, de, p.pattern.end, rec);
  return compared(
    'V⊥',
    `force across the grain of ${p.name} against its shear at the fasteners`,
    across,
    Vr,
    'NDS 2018 3.4.3.3',
    rec,
  );
}

/** Tension at the holes, and rows or the group tearing out of the end, where the force runs along the grain. */
function tearing(p: Piece, V: Vec3, D: number, CD: number, rec?: Recorder): number | undefined {
  const { section, grain } = p.wood!;
  const P = Math.abs(dot(V, grain));
  if (P < TRACE) return 0;
  const Ft = designValue('Ft', section, { CD }, rec);
  const Fv = designValue('Fv', section, { CD }, rec);
  if (Ft === undefined || Fv === undefined) return undefined;
  const { alongGrain, acrossGrain, spacingAlong, spacingAcross, end } = p.pattern;
  const net = Ft * netSection(p.thickness, p.depth, acrossGrain, D, rec);
  const words = `force along the grain of ${p.name} against its net section${D < 0.25 ? '' : ' and tearing out'}`;
  if (D < 0.25) return compared('P0', words, P, net, 'NDS 2018 3.8.1', rec);
  const least = alongGrain > 1 ? Math.min(end, spacingAlong) : end;
  const row = rowTearOut(alongGrain, Fv, p.thickness, least, rec);
  let capacity = Math.min(net, row * acrossGrain);
  if (acrossGrain > 1) {
    const between = p.thickness * (acrossGrain - 1) * Math.max(0, spacingAcross - (D + 1 / 16));
    capacity = Math.min(capacity, groupTearOut(row, row, Ft, between, rec));
  }
  return compared('P0', words, P, capacity, 'NDS 2018 3.8.1, E.3, E.4', rec);
}

/** Greatest use of a wood piece's own strength at its fasteners; undefined where its material may not be used so. */
export function memberUse(p: Piece, axis: Vec3, V: Vec3, D: number, CD: number, rec?: Recorder): number | undefined {
  if (!p.wood || Math.abs(dot(p.wood.grain, axis)) > 0.7) return 0;
  const shear = D < 0.25 ? 0 : splitting(p, V, CD, rec);
  const tear = tearing(p, V, D, CD, rec);
  return shear === undefined || tear === undefined ? undefined : Math.max(shear, tear);
}

/** Force and turning the plates carry together from one member to the other. */
export interface PlateLoad {
  /** Plumb force, tension positive, lb. */
  readonly T: number;
  /** Level force in the plane of the plates, and square to it, lb. */
  readonly inPlane: number;
  readonly square: number;
  /** Plumb distance between the middles of the two groups, inches. */
  readonly reach: number;
  readonly holes: number;
  readonly D: number;
}

/** Strength of the section against bending about each axis and tension, added. */
export function plateUse(
  plates: ConnectionPlates,
  wood: Section | undefined,
  q: PlateLoad,
  CD: number,
  rec?: Recorder,
): number | undefined {
  const t = plates.material === 'steel' ? plates.thickness : wood!.b;
  const w = plates.material === 'steel' ? plates.width : wood!.d;
  const bend = (M: number, S: number, F: number, words: string): number => {
    if (M < TRACE) return 0;
    rec?.step({
      symbol: 'fb',
      meaning: `bending of one plate ${words}, against ${say(F)} psi`,
      formula: 'V·e / S',
      substituted: `${say(M)} / ${say(S)}`,
      value: M / S,
      unit: 'psi',
      clause: 'statics',
    });
    return M / S / F;
  };
  let tension: number;
  let F: number;
  if (plates.material === 'steel') {
    const hole = q.D < 0.25 ? q.D + 1 / 16 : holeWidth(q.D);
    const Ta = flatTension({ t, w, holes: q.holes, hole, Fy: plates.Fy, Fu: plates.Fu }, rec);
    tension = compared('T', 'plumb force on one plate', Math.abs(q.T) / plates.count, Ta, 'AISC 360-16 D2', rec);
    F = plates.Fy / 1.67;
  } else {
    const Ft = designValue('Ft', wood!, { CD }, rec);
    const Fb = designValue('Fb', wood!, { CD });
    if (Ft === undefined || Fb === undefined) return undefined;
    const net = Ft * netSection(t, w, q.holes, q.D, rec);
    tension = compared('T', 'plumb force on one plate', Math.abs(q.T) / plates.count, net, 'NDS 2018 3.8.1', rec);
    F = Fb;
  }
  // In its plane both plates bend; pushed square to it, the one that is pressed against bends alone.
  const edge = bend((Math.abs(q.inPlane) * q.reach) / plates.count, (t * w * w) / 6, F, 'in its plane');
  const flat = bend(Math.abs(q.square) * q.reach, (w * t * t) / 6, F, 'out of its plane');
  return tension + edge + flat;
}
