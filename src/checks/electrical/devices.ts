/**
 * What an inspector of the electrical work looks for on a porch, as trade pages state the national electrical code: a receptacle
 * within the patio's edge not over 6 ft 6 in above it, and a switched light at each door to the ground. Advice, never a
 * condition of the set: circuits are designed and installed under their own permit.
 */
import { contains, distanceToSegment } from '../../base/plane.js';
import type { Vec2 } from '../../base/vec.js';
import type { Device } from '../../project/model.js';
import type { Structure } from '../../structure/model.js';
import type { Check, CheckContext } from '../contract.js';
import { measured, notApplicable, notEvaluated } from '../finding.js';
import { type Placed, underCover } from '../rooms/facts.js';
import { isDoor } from '../rooms/landing.js';

const RECEPTACLE = 'national electrical code, porch receptacle, as trade pages state it';
const LIGHT = 'national electrical code, light at exits, as trade pages state it';

/** Most that the receptacle stands above the floor, inches (6 ft 6 in). */
export const RECEPTACLE_HEIGHT = 78;
/** A light this near a door lights it: ours, no source. */
const AT_DOOR = 120;

const kept = (ctx: CheckContext): readonly Device[] =>
  (ctx.project.cover.electrical?.devices ?? []).filter((d) => d.state !== 'removed');

/** Within a slab or under a roof; the wall that closes it belongs to it. */
function within(structure: Structure, p: Vec2): boolean {
  const edge = 8;
  const outlines = [
    ...structure.slabs.filter((s) => s.state !== 'removed').map((s) => s.outline),
    ...structure.roofs.map((r) => [r.min, { x: r.max.x, y: r.min.y }, r.max, { x: r.min.x, y: r.max.y }]),
  ];
  return outlines.some(
    (o) => contains(o, p) || o.some((a, i) => distanceToSegment(p, a, o[(i + 1) % o.length]!) <= edge),
  );
}

export const patioReceptacle: Check = {
  id: 'patio-receptacle',
  title: 'Receptacle at the patio',
  subjects: () => [{ id: 'cover', path: '/cover/electrical' }],
  run(_subject, ctx, rec) {
    if (!ctx.project.cover.electrical) return notApplicable(RECEPTACLE, 'no electrical work is stated');
    if (!underCover(ctx.structure).some((p) => isDoor(p.opening)))
      return notApplicable(RECEPTACLE, 'no door of the house leads to this patio');
    const found = kept(ctx).filter((d) => d.kind === 'receptacle' && within(ctx.structure, d.at));
    const lowest = found.reduce<Device | undefined>((a, d) => (a && a.height <= d.height ? a : d), undefined);
    if (!lowest)
      return notEvaluated(
        RECEPTACLE,
        'No receptacle stands within the edge of the patio: ask the electrical inspector whether one is needed.',
      );
    rec?.step({
      symbol: 'h',
      meaning: `height of receptacle ${lowest.mark} above the patio`,
      formula: 'given',
      substituted: `${lowest.height.toFixed(0)} in`,
      value: lowest.height,
      unit: 'in',
      clause: RECEPTACLE,
      from: [lowest.path],
    });
    return measured(
      {
        demand: lowest.height,
        capacity: RECEPTACLE_HEIGHT,
        unit: 'in',
        clause: RECEPTACLE,
        formula: 'height / 6 ft 6 in',
        prescriptive: true,
        note: `${found.map((d) => d.mark).join(', ')} within the edge of the patio`,
        remedy: `Receptacle ${lowest.mark} stands ${lowest.height.toFixed(0)} in above the patio; 6 ft 6 in is the most.`,
      },
      rec,
    );
  },
};

const near = (p: Placed, d: Device): boolean => Math.hypot(d.at.x - p.middle.x, d.at.y - p.middle.y) <= AT_DOOR;

export const doorLight: Check = {
  id: 'door-light',
  title: 'Switched light at doors under the cover',
  subjects: ({ structure }) => {
    const doors = underCover(structure).filter((p) => isDoor(p.opening));
    return doors.length > 0
      ? doors.map((p) => ({ id: p.opening.mark, path: p.opening.path }))
      : [{ id: 'cover', path: '/cover/electrical' }];
  },
  run(subject, ctx, rec) {
    if (!ctx.project.cover.electrical) return notApplicable(LIGHT, 'no electrical work is stated');
    const door = underCover(ctx.structure).find((p) => p.opening.mark === subject.id);
    if (!door) return notApplicable(LIGHT, 'no door lies under the cover');
    const lights = kept(ctx).filter((d) => d.kind === 'light' && near(door, d) && d.switchedBy !== '');
    if (lights.length === 0)
      return notEvaluated(
        LIGHT,
        `No switched light is shown at door ${subject.id}: one is needed where the door leads to the ground.`,
      );
    rec?.step({
      symbol: 'lights',
      meaning: `switched lights within 10 ft of ${subject.id}`,
      formula: 'counted',
      substituted: lights.map((d) => d.mark).join(', '),
      value: lights.length,
      unit: '',
      clause: LIGHT,
      from: ['/cover/electrical'],
    });
    return measured(
      {
        demand: 1,
        capacity: lights.length,
        unit: 'lights',
        clause: LIGHT,
        formula: '1 / lights',
        prescriptive: true,
        note: lights.map((d) => `${d.mark} switched by ${d.switchedBy}`).join(', '),
        remedy: '',
      },
      rec,
    );
  },
};
