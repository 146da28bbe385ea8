/**
 * Component wind on one framing member by hand statics: how far it can lift each bearing and bend the member. A part of
 * the roof counts only where it adds, so that no partial loading is worse.
 */
import { dot, sub } from '../../base/vec.js';
import { isOutOfScope, type OutOfScope } from '../../loads/codes/asce7/index.js';
import type { Joint, Member, Surface } from '../../structure/model.js';
import { JOINT_TRAITS } from '../joints/kinds.js';
import { componentPressure, type WindSource } from './zone-wind.js';

/** Joints that tie a single framing member down, by member id. */
export function componentTies(joints: readonly Joint[]): ReadonlyMap<string, readonly Joint[]> {
  const out = new Map<string, Joint[]>();
  for (const joint of joints) {
    const upper = joint.ties[0];
    if (!upper || !JOINT_TRAITS[joint.kind].component) continue;
    const known = out.get(upper.part);
    if (known) known.push(joint);
    else out.set(upper.part, [joint]);
  }
  return out;
}

/** Lowest and highest edge of a surface along its slope, inches. */
function slopeExtent(surface: Surface): readonly [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const p of surface.outline) {
    low = Math.min(low, p.y);
    high = Math.max(high, p.y);
  }
  return [low, high];
}

/** Integral of the positive part of a straight line from `a` to `b` over `run`. */
export function positivePart(a: number, b: number, run: number): number {
  if (a >= 0 && b >= 0) return ((a + b) / 2) * run;
  if (a <= 0 && b <= 0) return 0;
  const high = Math.max(a, b);
  return (high * high * run) / (2 * Math.abs(a - b));
}

/**
 * Effective wind area of a framing member on two bearings, in²: span times the larger of its spacing and a third of its
 * span (ASCE 7-16 26.2). `span` along the member, inches.
 */
export const effectiveArea = (span: number, spacing: number): number => span * Math.max(spacing, span / 3);

/** One part of the roof in a tie's lift: `psf · area · share` lb. */
export interface LiftPart {
  /** Net pressure lifting, psf, positive. */
  readonly psf: number;
  /** Area loaded, in². */
  readonly area: number;
  /** Mean share of it that reaches the tie upward, and how it came about. */
  readonly share: number;
  readonly text: string;
}

export interface TieLift {
  /** Wind alone, lb up at each tie, unfactored; in the order of the joints given. */
  readonly up: readonly number[];
  readonly area: number;
  /** Net pressure, psf, negative: lifting. */
  readonly pressure: number;
  /** Parts of the lift of tie `i`, for printing. */
  parts(i: number): readonly LiftPart[];
}

/** Lift of the wind on `member` at its two ties. Undefined when it is not on two bearings. */
export function tieLift(
  ctx: WindSource,
  member: Member,
  ties: readonly Joint[],
  surfaces: ReadonlyMap<string, Surface>,
): TieLift | OutOfScope | undefined {
  const [a, b] = ties;
  const spacing = ctx.project.cover.roofs.find((r) => r.mark === member.roof)?.framing.spacing;
  if (!a || !b || ties.length > 2 || member.roof === undefined || spacing === undefined) return undefined;
  const run = Math.hypot(b.at.x - a.at.x, b.at.y - a.at.y);
  if (run < 1) return undefined;
  // A truss bears level; a rafter's span lies along its axis.
  const span = member.truss ? run : Math.abs(b.ties[0]!.along - a.ties[0]!.along);
  const area = effectiveArea(span, spacing);
  const pressure = componentPressure(ctx, member.roof, 'minus', area);
  if (pressure === undefined || isOutOfScope(pressure)) return pressure;
  return {
    up: [liftAt(a, b, member, surfaces, pressure), liftAt(b, a, member, surfaces, pressure)],
    area,
    pressure,
    parts: (i) => liftParts(i === 0 ? a : b, i === 0 ? b : a, member, surfaces, pressure),
  };
}

/** Share of a unit force square to surface `s`, standing at height v on it, that reaches the tie `at` upward; linear in v. */
function shareAt(s: Surface, v: number, at: Joint, other: Joint, holds: Joint): number {
  const dx = at.at.x - other.at.x;
  const dy = at.at.y - other.at.y;
  const run = Math.hypot(dx, dy);
  const across = ((s.origin.x + s.v.x * v - other.at.x) * dx + (s.origin.y + s.v.y * v - other.at.y) * dy) / run;
  const height = s.origin.z + s.v.z * v - holds.at.z;
  return (s.n.z * across - ((s.n.x * dx + s.n.y * dy) / run) * height) / run;
}

/** The lift at `at` with the side force held at `holds`, part by part. */
function partsWith(
  holds: Joint,
  [at, other]: readonly [Joint, Joint],
  member: Member,
  surfaces: ReadonlyMap<string, Surface>,
  psf: number,
): readonly LiftPart[] {
  return member.strips.flatMap((strip) => {
    const s = surfaces.get(strip.surface);
    // A share that presses the tie down while the rest lifts is left out.
    const width = Math.max(0, strip.share ?? 1) * (strip.u1 - strip.u0);
    if (!s || !(width > 0)) return [];
    const [v0, v1] = slopeExtent(s);
    const low = shareAt(s, v0, at, other, holds);
    const high = shareAt(s, v1, at, other, holds);
    const share = positivePart(low, high, v1 - v0) / (v1 - v0);
    const text = `${(width / 12).toFixed(2)} ft by ${((v1 - v0) / 12).toFixed(2)} ft of ${s.id}, share ${low.toFixed(3)} at its low edge, ${high.toFixed(3)} at its high edge`;
    return [{ psf: -psf, area: width * (v1 - v0), share, text }];
  });
}

/** Parts of `liftAt`, with the side force held at the worse of the two bearings. */
export function liftParts(
  at: Joint,
  other: Joint,
  member: Member,
  surfaces: ReadonlyMap<string, Surface>,
  psf: number,
): readonly LiftPart[] {
  const total = (parts: readonly LiftPart[]): number => parts.reduce((t, p) => t + p.area * p.share, 0);
  const [one, two] = [at, other].map((h) => partsWith(h, [at, other], member, surfaces, psf));
  return total(one!) >= total(two!) ? one! : two!;
}

/** Vertical pull on the tie `at`, lb: moments about the other bearing, side force held at whichever bearing is worse. */
export function liftAt(
  at: Joint,
  other: Joint,
  member: Member,
  surfaces: ReadonlyMap<string, Surface>,
  psf: number,
): number {
  let worst = 0;
  for (const holds of [at, other]) {
    let lift = 0;
    for (const strip of member.strips) {
      const s = surfaces.get(strip.surface);
      if (!s) continue;
      const [v0, v1] = slopeExtent(s);
      const reach = positivePart(shareAt(s, v0, at, other, holds), shareAt(s, v1, at, other, holds), v1 - v0);
      // A share that presses the tie down while the rest lifts is left out.
      lift += Math.max(0, strip.share ?? 1) * (-psf / 144) * (strip.u1 - strip.u0) * reach;
    }
    worst = Math.max(worst, lift);
  }
  return worst;
}

/** Where the wind load begins and ends along the member's axis, and its width, inches: foot of the normal from the roof. */
export interface LoadedLength {
  readonly from: number;
  readonly to: number;
  readonly width: number;
}

export function loadedLength(member: Member, surfaces: ReadonlyMap<string, Surface>): LoadedLength | undefined {
  const strip = member.strips[0];
  const s = strip && surfaces.get(strip.surface);
  if (!s || member.strips.some((k) => k.surface !== strip.surface)) return undefined;
  const axis = sub(member.end, member.start);
  const length = Math.sqrt(dot(axis, axis));
  const [v0, v1] = slopeExtent(s);
  const place = (v: number): number => (dot(sub(s.origin, member.start), axis) + dot(s.v, axis) * v) / length;
  const [p, q] = [place(v0), place(v1)];
  return {
    from: Math.min(p, q),
    to: Math.max(p, q),
    width: member.strips.reduce((w, k) => w + Math.max(0, k.share ?? 1) * (k.u1 - k.u0), 0),
  };
}

/**
 * Moments of a load of 1 lb/in down onto a beam on bearings `a` and `b`, at `x` inches: between the bearings with the
 * overhangs bare, and from the overhangs alone (zero or less). The full load is their sum and lies between them.
 */
export function patternMoments(x: number, a: number, b: number, load: LoadedLength): readonly [number, number] {
  const tail = (c: number): number => -(Math.max(c, 0) ** 2) / 2;
  if (x <= a) return [0, tail(x - load.from)];
  if (x >= b) return [0, tail(load.to - x)];
  const left = tail(a - load.from);
  const right = tail(load.to - b);
  return [((x - a) * (b - x)) / 2, left + ((right - left) * (x - a)) / (b - a)];
}
