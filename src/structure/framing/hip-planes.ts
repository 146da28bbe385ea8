/** Roof planes and fascias of a hip roof. */
import type { Vec2 } from '../../base/vec.js';
import type { HipRoof } from '../../project/model.js';
import { GUTTER_PLF, SLACK } from '../constants.js';
import type { Member, Surface } from '../model.js';
import type { LayInput, Laying } from '../roofs/lay.js';
import { serial } from '../text.js';
import type { Seat } from './contract.js';
import { at, type Frame, planAt } from './hip-frame.js';

/** The four planes, at the top of the sheathing. */
export function planesOf({ layers, fascia, roof, profile }: LayInput<HipRoof>, f: Frame): Surface[] {
  const edges: { name: string; v: number; weight: number }[] = [];
  if (fascia) edges.push({ name: `Fascia ${fascia.label}`, v: 0, weight: fascia.weight });
  if (roof.finish.gutter) edges.push({ name: 'Gutter, empty', v: 0, weight: GUTTER_PLF / 12 });
  const half = f.plan.width / 2;
  const v = half / f.cos;
  return f.plan.faces.map((face): Surface => {
    const { inward: w, length } = face;
    const square: Vec2[] = [
      { x: length - half, y: v },
      { x: half, y: v },
    ];
    return {
      id: face.surface,
      mark: face.surface,
      roof: roof.mark,
      origin: at(face.origin, f.topEdge(0) + layers.sheathing / f.cos),
      u: { x: face.u.x + 0, y: face.u.y + 0, z: 0 },
      v: { x: w.x * f.cos + 0, y: w.y * f.cos + 0, z: f.sin },
      n: { x: -w.x * f.sin + 0, y: -w.y * f.sin + 0, z: f.cos },
      outline: [{ x: 0, y: 0 }, { x: length, y: 0 }, ...(length - 2 * half < SLACK ? [{ x: half, y: v }] : square)],
      slope: roof.pitch,
      downhill: { x: -w.x + 0, y: -w.y + 0 },
      layers: layers.layers,
      slippery: layers.covering.slippery,
      sheathed: layers.panel !== undefined,
      thickness: layers.thickness,
      shape: profile.shape,
      edges,
      path: roof.path,
    };
  });
}

/** A fascia along each eave, mitred at the corners. */
export function trimOf(
  { fascia, roof, number }: LayInput<HipRoof>,
  f: Frame,
  tails: readonly (readonly Member[])[],
): Laying['trim'] {
  if (fascia === undefined) return undefined;
  // Eaves of one length share a mark.
  const marks = new Map<string, string>();
  const counts = new Map<string, number>();
  const members: Member[] = [];
  const seats: Seat[] = [];
  for (const [k, face] of f.plan.faces.entries()) {
    const size = face.length.toFixed(3);
    const mark = marks.get(size) ?? `FA${number('FA')}`;
    marks.set(size, mark);
    const count = (counts.get(mark) ?? 0) + 1;
    counts.set(mark, count);
    const id = `${mark}-${serial(count)}`;
    const z = f.topEdge(0) - fascia.d / 2;
    members.push({
      id,
      mark,
      role: 'fascia',
      section: fascia,
      start: at(planAt(face, 0, -fascia.b / 2), z),
      end: at(planAt(face, face.length, -fascia.b / 2), z),
      up: { x: 0, y: 0, z: 1 },
      length: face.length + 2 * fascia.b,
      state: 'new',
      strips: [],
      roof: roof.mark,
      notch: 0,
      cuts: ['mitred 45° both ends'],
      unbraced: { top: 0, bottom: 0 },
      path: `${roof.path}/finish/fascia`,
    });
    const nail = f.topEdge(0) - Math.min(fascia.d, f.plumb) / 2;
    for (const m of tails[k]!)
      seats.push({
        kind: 'fascia-to-framing',
        member: id,
        support: m.id,
        at: { ...m.start, z: nail },
        contact: { length: fascia.d, width: m.section.b },
      });
  }
  return { members, seats };
}
