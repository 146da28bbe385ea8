/**
 * Roof surfaces from a framed profile: the plane at the top of the sheathing (top edge of the framing when there is none),
 * plumb over the framing's tails, so that plan sizes are those of the overhangs.
 */
import type { Vec2, Vec3 } from '../base/vec.js';
import type { CoverRoof } from '../project/model.js';
import { toHouse } from './axes.js';
import { GUTTER_PLF } from './constants.js';
import type { Framed } from './framing/contract.js';
import type { RoofLayers } from './layers.js';
import type { Section, Strip, Surface } from './model.js';
import type { Leg, Profile } from './roofs/contract.js';

/** Without negative zeros, which print and compare oddly. */
const positive = (p: Vec3): Vec3 => ({ x: p.x + 0, y: p.y + 0, z: p.z + 0 });

/** +1 when the slope rises with `a`, −1 when it rises against it. */
const rise = (leg: Leg): 1 | -1 => (leg.top > leg.eave ? 1 : -1);

/** Edges of the strips along the ridge: midway between frames, and the rakes at both ends. */
export function stripEdges(profile: Profile): number[] {
  const { stations, extent } = profile;
  const edges = [extent[0]];
  for (let i = 0; i + 1 < stations.length; i++) edges.push((stations[i]! + stations[i + 1]!) / 2);
  edges.push(extent[1]);
  return edges;
}

/** Strips of every station; u runs against the ridge axis where the slope rises with `a`, so that u × v points up. */
export function stripsOf(profile: Profile, roof?: CoverRoof): Strip[][] {
  const edges = stripEdges(profile);
  const { extent, stations } = profile;
  const make = (leg: Leg, from: number, to: number, share?: number): Strip => ({
    surface: leg.surface,
    ...(rise(leg) > 0 ? { u0: extent[1] - to, u1: extent[1] - from } : { u0: from - extent[0], u1: to - extent[0] }),
    ...(share === undefined ? {} : { share }),
  });
  const carried = roof?.rakeFraming !== undefined && roof.rake > 0 ? rakeStrips(profile) : [];
  return stations.map((_, i) =>
    profile.legs.flatMap((leg) => {
      const mine = carried.filter((r) => r.station === i);
      // What outlookers bring is told apart from the frame's own strip, which then begins at the frame.
      const ends = carried.filter((r) => r.own === i);
      const from = ends.some((r) => r.from === edges[i]) ? stations[i]! : edges[i]!;
      const to = ends.some((r) => r.to === edges[i + 1]) ? stations[i]! : edges[i + 1]!;
      return [make(leg, from, to), ...mine.map((r) => make(leg, r.from, r.to, r.share))];
    }),
  );
}

interface RakeStrip {
  readonly from: number;
  readonly to: number;
  /** Frame that gets this share of it, and the end frame it lies beside. */
  readonly station: number;
  readonly own: number;
  readonly share: number;
}

/**
 * Rakes on outlookers: a lever over the end frame, held down by the next one. Load that is even across the overhang acts at
 * its middle, so of each pound the end frame takes 1 + over/(2·back) and the next frame the rest, which lifts it.
 */
function rakeStrips({ stations, extent }: Profile): RakeStrip[] {
  const n = stations.length;
  return (
    [
      [0, 1, extent[0], stations[0]!],
      [n - 1, n - 2, stations[n - 1]!, extent[1]],
    ] as const
  ).flatMap(([own, next, from, to]) => {
    const lever = (to - from) / 2 / Math.abs(stations[own]! - stations[next]!);
    return [
      { from, to, own, station: own, share: 1 + lever },
      { from, to, own, station: next, share: -lever },
    ];
  });
}

export function placeSurfaces(
  roof: CoverRoof,
  profile: Profile,
  framed: Framed,
  layers: RoofLayers,
  fascia: Section | undefined,
): Surface[] {
  const cos = Math.cos(roof.pitch);
  const sin = Math.sin(roof.pitch);
  const [l0, l1] = profile.extent;
  const edges: { name: string; v: number; weight: number }[] = [];
  if (fascia) edges.push({ name: `Fascia ${fascia.label}`, v: 0, weight: fascia.weight });
  if (roof.finish.gutter) edges.push({ name: 'Gutter, empty', v: 0, weight: GUTTER_PLF / 12 });

  return profile.legs.map((leg, i): Surface => {
    const s = rise(leg);
    const { across, along } = profile.axes;
    const v: Vec3 = positive({ x: across.x * s * cos, y: across.y * s * cos, z: sin });
    const n: Vec3 = positive({ x: -across.x * s * sin, y: -across.y * s * sin, z: cos });
    const u: Vec3 = positive({ x: -s * along.x, y: -s * along.y, z: 0 });
    const height = Math.abs(leg.top - leg.eave) / cos;
    const width = l1 - l0;
    const outline: Vec2[] = [
      { x: 0, y: 0 },
      { x: width, y: 0 },
      { x: width, y: height },
      { x: 0, y: height },
    ];
    return {
      id: leg.surface,
      mark: leg.surface,
      roof: roof.mark,
      origin: toHouse(profile.axes, leg.eave, s > 0 ? l1 : l0, framed.eaves[i]! + layers.sheathing / cos),
      u,
      v,
      n,
      outline,
      slope: roof.pitch,
      downhill: { x: -s * across.x + 0, y: -s * across.y + 0 },
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

/** House point of a surface point, with height `h` above the plane. */
export const onSurface = (s: Surface, u: number, v: number, h = 0): Vec3 => ({
  x: s.origin.x + s.u.x * u + s.v.x * v + s.n.x * h,
  y: s.origin.y + s.u.y * u + s.v.y * v + s.n.y * h,
  z: s.origin.z + s.u.z * u + s.v.z * v + s.n.z * h,
});

/** Corners of a surface in the house axes. */
export const cornersOf = (s: Surface): Vec3[] => s.outline.map((p) => onSurface(s, p.x, p.y));

/** Height of a surface's plane over a plan point. */
export const planeHeight = (s: Surface, p: Vec2): number =>
  s.origin.z - (s.n.x * (p.x - s.origin.x) + s.n.y * (p.y - s.origin.y)) / s.n.z;
