import { cross, dot, unit, type Vec3 } from '../../base/vec.js';
import type { FrameCase, FrameModel, Support } from './model.js';

/**
 * Rigid rotation of a whole problem, for tests: a frame turned in space with its loads must answer the same, turned.
 * Supports hold global axes, so only those that treat all directions alike can be turned.
 */
export type Rotation = (v: Vec3) => Vec3;

/** Right-hand rotation by `angle` about an axis through the origin (Rodrigues). */
export function rotationAbout(axis: Vec3, angle: number): Rotation {
  const k = unit(axis);
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return (v) => {
    const kv = cross(k, v);
    const along = dot(k, v) * (1 - c);
    return {
      x: v.x * c + kv.x * s + k.x * along,
      y: v.y * c + kv.y * s + k.y * along,
      z: v.z * c + kv.z * s + k.z * along,
    };
  };
}

export function rotateModel(model: FrameModel, turn: Rotation): FrameModel {
  for (const s of model.supports)
    if (!isIsotropic(s)) throw new RangeError(`the support of node ${s.node} cannot be turned`);
  return {
    nodes: model.nodes.map(turn),
    elements: model.elements.map((e) => ({ ...e, up: turn(e.up) })),
    supports: model.supports,
  };
}

const isIsotropic = (s: Support): boolean => s.dx === s.dy && s.dy === s.dz && s.rx === s.ry && s.ry === s.rz;

export function rotateCase(c: FrameCase, turn: Rotation): FrameCase {
  if (c.settlements?.length) throw new RangeError('settlements are given by global freedom and cannot be turned');
  const turned = (v: Vec3 | undefined): Vec3 | undefined => v && turn(v);
  const points = c.points?.map((p) => {
    if (p.axes === 'local') return p;
    const force = turned(p.force);
    const moment = turned(p.moment);
    return { ...p, ...(force && { force }), ...(moment && { moment }) };
  });
  const distributed = c.distributed?.map((d) => {
    if (d.axes === 'local') return d;
    const endForce = turned(d.endForce);
    return { ...d, startForce: turn(d.startForce), ...(endForce && { endForce }) };
  });
  const nodal = c.nodal?.map((n) => {
    const force = turned(n.force);
    const moment = turned(n.moment);
    return { node: n.node, ...(force && { force }), ...(moment && { moment }) };
  });
  return { ...(nodal && { nodal }), ...(distributed && { distributed }), ...(points && { points }) };
}

/** Turns every three numbers of a flat array of global vectors. */
export function rotateFlat(values: Float64Array, turn: Rotation): Float64Array {
  const out = new Float64Array(values.length);
  for (let i = 0; i < values.length; i += 3) {
    const v = turn({ x: values[i]!, y: values[i + 1]!, z: values[i + 2]! });
    out.set([v.x, v.y, v.z], i);
  }
  return out;
}
