/** Measured points turned into what posts and beams feel of them. */
import type { Vec2 } from '../../base/vec.js';
import type { BeamLine, Project } from '../../project/model.js';
import type { Structure } from '../../structure/model.js';
import type { MeasuredPoint } from './model.js';
import type { BeamOff, PostOff } from './rules/contract.js';

export function postOffsets(structure: Structure, points: readonly MeasuredPoint[]): readonly PostOff[] {
  return points.flatMap((point): PostOff[] => {
    const footing = structure.footings.find((f) => f.mark === point.name);
    const tie = structure.joints.find((j) => j.kind === 'post-to-footing' && j.ties[1]?.part === footing?.id);
    const post = structure.members.find((m) => m.id === tie?.ties[0]?.part);
    if (!post || !footing) return [];
    const { plan, designed } = point;
    const off = plan && { x: plan.along - designed.along, y: plan.out - designed.out };
    return [{ post, footing: point.name, point, off }];
  });
}

export function beamDirection(line: BeamLine): Vec2 {
  const d = { x: line.to.x - line.from.x, y: line.to.y - line.from.y };
  const size = Math.hypot(d.x, d.y);
  return { x: d.x / size, y: d.y / size };
}

/** Straight line nearest to all points (least squares): level and slope; level alone for one place. */
function lineThrough(points: readonly { readonly at: number; readonly across: number }[]): (at: number) => number {
  if (points.length === 0) return () => 0;
  const n = points.length;
  const mean = { at: points.reduce((s, p) => s + p.at, 0) / n, across: points.reduce((s, p) => s + p.across, 0) / n };
  const spread = points.reduce((s, p) => s + (p.at - mean.at) ** 2, 0);
  const slope = spread > 0 ? points.reduce((s, p) => s + (p.at - mean.at) * (p.across - mean.across), 0) / spread : 0;
  return (at) => mean.across + slope * (at - mean.at);
}

export function beamOffsets(project: Project, posts: readonly PostOff[]): readonly BeamOff[] {
  return project.cover.beams.map((line) => {
    const dir = beamDirection(line);
    const own = line.posts.map((p) => ({ post: p.mark, at: p.at }));
    const shared = (line.shared ?? []).map((s) => ({ post: s.post, at: s.at }));
    const under = [...own, ...shared].flatMap(({ post, at }) => {
      const off = posts.find((p) => p.post.mark === post);
      if (!off?.off) return [];
      const { x, y } = off.off;
      return [{ off, at, along: x * dir.x + y * dir.y, across: -x * dir.y + y * dir.x }];
    });
    // An end in the house wall stays where the house is.
    const length = Math.hypot(line.to.x - line.from.x, line.to.y - line.from.y);
    const held = [
      ...(line.ends?.start ? [{ at: 0, across: 0 }] : []),
      ...(line.ends?.end ? [{ at: length, across: 0 }] : []),
    ];
    return {
      mark: line.mark,
      dir,
      heldByHouse: line.ends?.start !== undefined || line.ends?.end !== undefined,
      posts: under,
      acrossAt: lineThrough([...under, ...held]),
    };
  });
}
