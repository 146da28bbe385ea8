/** New work keeps the stated clearance from flues, vents, meters and intakes on the walls beside it. */
import type { Vec3 } from '../../base/vec.js';
import type { Equipment } from '../../project/model.js';
import type { Structure, Surface } from '../../structure/model.js';
import type { Check } from '../contract.js';
import { measured, notApplicable, notEvaluated } from '../finding.js';

const CLAUSE = 'clearance as entered';

export function equipmentAt(structure: Structure, e: Equipment): Vec3 | undefined {
  const wall = structure.walls[e.wall];
  if (!wall) return undefined;
  const length = Math.hypot(wall.end.x - wall.start.x, wall.end.y - wall.start.y);
  return {
    x: wall.start.x + ((wall.end.x - wall.start.x) * e.offset) / length,
    y: wall.start.y + ((wall.end.y - wall.start.y) * e.offset) / length,
    z: e.height,
  };
}

const minus = (a: Vec3, b: Vec3): Vec3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
const dot = (a: Vec3, b: Vec3): number => a.x * b.x + a.y * b.y + a.z * b.z;

function toBar(p: Vec3, a: Vec3, b: Vec3): number {
  const d = minus(b, a);
  const n = dot(d, d);
  const t = n === 0 ? 0 : Math.min(1, Math.max(0, dot(minus(p, a), d) / n));
  return Math.hypot(p.x - a.x - t * d.x, p.y - a.y - t * d.y, p.z - a.z - t * d.z);
}

function toSurface(p: Vec3, s: Surface): number {
  const d = minus(p, s.origin);
  const [u, v] = [dot(d, s.u), dot(d, s.v)];
  const us = s.outline.map((q) => q.x);
  const vs = s.outline.map((q) => q.y);
  // Box of the outline: a roof edge cut askew is taken as if it ran on, which is nearer.
  const du = Math.max(Math.min(...us) - u, 0, u - Math.max(...us));
  const dv = Math.max(Math.min(...vs) - v, 0, v - Math.max(...vs));
  return Math.hypot(du, dv, dot(d, s.n));
}

/** Least distance from a point to new members (their half depth taken off) and roof planes, with what is nearest. Inches. */
export function clearOf(structure: Structure, p: Vec3): { readonly distance: number; readonly part: string } {
  const parts = [
    ...structure.members
      .filter((m) => m.state === 'new')
      .map((m) => ({
        part: m.id,
        distance: toBar(p, m.start, m.end) - Math.max(m.section.depth, m.section.width) / 2,
      })),
    ...structure.surfaces.map((s) => ({ part: `roof ${s.roof}`, distance: toSurface(p, s) })),
  ];
  return parts.reduce((a, b) => (b.distance < a.distance ? b : a), { part: '', distance: Number.POSITIVE_INFINITY });
}

export const equipmentClearance: Check = {
  id: 'equipment-clearance',
  title: 'Clearance from vents, meters and intakes',
  subjects: ({ project }) =>
    project.house.equipment.length === 0
      ? [{ id: 'house', path: '/house' }]
      : project.house.equipment.map((e) => ({ id: e.label, path: e.path })),
  run(subject, { project, structure }, rec) {
    const e = project.house.equipment.find((q) => q.path === subject.path);
    if (!e) return notApplicable(CLAUSE, 'no vent, meter or intake is entered beside the cover');
    const at = equipmentAt(structure, e);
    if (!at) return notEvaluated(CLAUSE, 'its wall was not placed');
    const near = clearOf(structure, at);
    if (!Number.isFinite(near.distance)) return notEvaluated(CLAUSE, 'nothing new was placed');
    rec?.step({
      symbol: 'd',
      meaning: `least distance of the ${e.label} from new work, at ${near.part}`,
      formula: 'measured on the placed structure',
      substituted: `${near.distance.toFixed(1)} in`,
      value: near.distance,
      unit: 'in',
      clause: CLAUSE,
      from: [e.path, e.clearance.path],
    });
    return measured(
      {
        demand: e.clearance.value,
        capacity: Math.max(0, near.distance),
        unit: 'in',
        clause: CLAUSE,
        formula: 'clearance / distance',
        prescriptive: true,
        note: e.clearance.from === '' ? '' : `clearance by: ${e.clearance.from}`,
        remedy: `The ${e.label} is ${near.distance.toFixed(0)} in from ${near.part} where ${e.clearance.value.toFixed(0)} in is asked for: have it moved or lead it through by its own trade, or move the work.`,
      },
      rec,
    );
  },
};
