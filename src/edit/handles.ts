import type { Vec2 } from '../base/vec.js';
import type { TextEdit } from '../project/edit.js';
import type { BeamLine, CoverRoof, PostSpec, Project } from '../project/model.js';
import type { Structure } from '../structure/model.js';
import type { Handle } from './model.js';
import { writeLength } from './write.js';

const unit = (a: Vec2, b: Vec2): Vec2 => {
  const d = Math.hypot(b.x - a.x, b.y - a.y);
  return d > 0 ? { x: (b.x - a.x) / d, y: (b.y - a.y) / d } : { x: 1, y: 0 };
};
const along = (p: Vec2, u: Vec2, s: number): Vec2 => ({ x: p.x + u.x * s, y: p.y + u.y * s });

interface Kit {
  readonly len: (inches: number) => string;
}

const point = (kit: Kit, p: Vec2): readonly [string, string] => [kit.len(p.x), kit.len(p.y)];

const postAt = (kit: Kit, p: PostSpec, by: number): TextEdit => ({ path: `${p.path}/at`, value: kit.len(p.at + by) });

function postHandles(b: BeamLine, kit: Kit): Handle[] {
  const u = unit(b.from, b.to);
  return b.posts.map((p) => ({
    id: `post:${p.mark}`,
    mark: p.mark,
    what: `post ${p.mark} with footing ${p.footingMark}, along ${b.mark}`,
    at: along(b.from, u, p.at),
    axis: u,
    value: p.at,
    path: `${p.path}/at`,
    from: `from the start of ${b.mark}`,
    edits: (by) => [postAt(kit, p, by)],
  }));
}

/** Moves the whole beam square to itself, its posts with it. An end that the house holds moves along the wall. */
function beamHandle(b: BeamLine, kit: Kit): Handle {
  const u = unit(b.from, b.to);
  const level = Math.abs(u.x) >= Math.abs(u.y);
  const axis: Vec2 = level ? { x: 0, y: 1 } : { x: 1, y: 0 };
  return {
    id: `beam:${b.mark}`,
    mark: b.mark,
    what: `beam ${b.mark} with its posts`,
    at: b.from,
    to: b.to,
    axis,
    value: level ? b.from.y : b.from.x,
    path: `${b.path}/from`,
    from: level ? 'out from the house wall' : 'along the house from its origin',
    edits: (by) => [
      { path: `${b.path}/from`, value: point(kit, along(b.from, axis, by)) },
      { path: `${b.path}/to`, value: point(kit, along(b.to, axis, by)) },
    ],
  };
}

/** Makes a beam longer or shorter; its posts stay where they stand, so their distances from its start follow. */
function endHandles(b: BeamLine, kit: Kit): Handle[] {
  const u = unit(b.from, b.to);
  const length = Math.hypot(b.to.x - b.from.x, b.to.y - b.from.y);
  const held = b.ends ?? {};
  const out: Handle[] = [];
  if (!held.end)
    out.push({
      id: `beam-end:${b.mark}:end`,
      mark: b.mark,
      what: `far end of beam ${b.mark}`,
      at: b.to,
      axis: u,
      value: length,
      path: `${b.path}/to`,
      from: `from the start of ${b.mark}`,
      edits: (by) => [{ path: `${b.path}/to`, value: point(kit, along(b.to, u, by)) }],
    });
  if (!held.start)
    out.push({
      id: `beam-end:${b.mark}:start`,
      mark: b.mark,
      what: `near end of beam ${b.mark}`,
      at: b.from,
      axis: { x: -u.x, y: -u.y },
      value: length,
      path: `${b.path}/from`,
      from: `from the far end of ${b.mark}`,
      edits: (by) => [
        { path: `${b.path}/from`, value: point(kit, along(b.from, u, -by)) },
        ...b.posts.map((p) => postAt(kit, p, by)),
        ...(b.shared ?? []).map((s, i) => ({ path: `${b.path}/shared/${i}/at`, value: kit.len(s.at + by) })),
        ...b.splices.map((s, i) => ({ path: `${b.path}/splices/${i}`, value: kit.len(s + by) })),
      ],
    });
  return out;
}

/** Edges of a roof as placed: the two square to its run move first and last frame, the eaves move the overhang. */
function roofHandles(r: CoverRoof, structure: Structure, kit: Kit): Handle[] {
  const placed = structure.roofs.find((p) => p.mark === r.mark);
  if (!placed) return [];
  const { min, max } = placed;
  const out: Handle[] = [];
  // Frames stand one behind the other along the run; a roof without a rake is carried round by its beams.
  const run: 'x' | 'y' = placed.ridgeAxis;
  const side = (axis: 'x' | 'y', high: boolean): { at: Vec2; to: Vec2 } => {
    const v = high ? max[axis] : min[axis];
    return axis === 'x'
      ? { at: { x: v, y: min.y }, to: { x: v, y: max.y } }
      : { at: { x: min.x, y: v }, to: { x: max.x, y: v } };
  };
  const plus = (axis: 'x' | 'y', sign: 1 | -1): Vec2 => (axis === 'x' ? { x: sign, y: 0 } : { x: 0, y: sign });
  for (const [key, high] of [
    ['from', false],
    ['to', true],
  ] as const) {
    out.push({
      id: `roof-edge:${r.mark}:${key}`,
      mark: r.mark,
      what: `${key === 'from' ? 'first' : 'last'} frame of roof ${r.mark}`,
      ...side(run, high),
      axis: plus(run, 1),
      value: r[key],
      path: `${r.path}/${key}`,
      from: run === 'y' ? 'out from the house wall' : 'along the house from its origin',
      edits: (by) => [{ path: `${r.path}/${key}`, value: kit.len(r[key] + by) }],
    });
  }
  const across = run === 'x' ? 'y' : 'x';
  for (const high of [false, true]) {
    const inward = structure.surfaces.some(
      (s) => s.roof === r.mark && (high ? s.downhill[across] > 0.5 : s.downhill[across] < -0.5),
    );
    if (!inward) continue;
    out.push({
      id: `roof-edge:${r.mark}:eave${high ? '+' : '-'}`,
      mark: r.mark,
      what: `eave of roof ${r.mark}`,
      ...side(across, high),
      axis: plus(across, high ? 1 : -1),
      value: r.eave,
      path: `${r.path}/eave`,
      from: 'past the outer face of the beam',
      edits: (by) => [{ path: `${r.path}/eave`, value: kit.len(Math.max(0, r.eave + by)) }],
    });
  }
  return out;
}

/** Everything of the cover that can be moved on a plan, posts first. */
export function handlesOf(project: Project, structure: Structure): readonly Handle[] {
  const units = project.job.units;
  const kit: Kit = { len: (inches) => writeLength(inches, units) };
  const { beams, roofs } = project.cover;
  return [
    ...beams.flatMap((b) => postHandles(b, kit)),
    ...beams.flatMap((b) => endHandles(b, kit)),
    ...beams.map((b) => beamHandle(b, kit)),
    ...roofs.flatMap((r) => roofHandles(r, structure, kit)),
  ];
}
