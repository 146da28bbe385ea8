/**
 * Lines of members that run over a support or past one, and the plan zones that belong to their spans, so that a load can lie
 * on some spans and not on others. A beam's spans cut the roof square to the beam, a rafter's square to the rafter.
 */
import type { Joint, Member, RoofPlaced, Structure } from '../structure/model.js';
import type { AreaLoad, PlanLoad, WindDirection } from './model.js';
import { lengthAlong, windwardEdge, zoneOn } from './wind-plan.js';

export interface ContinuousLine {
  /** As named in a case: `B1`, `R1 rafters`. */
  readonly name: string;
  /** What it is made of; a framing line spans square to the ridge. */
  readonly of: 'beam' | 'framing';
  readonly toward: '+x' | '+y';
  /** Coordinates of the supports between spans along `toward`, increasing; one fewer than the spans. */
  readonly cuts: readonly number[];
  /** Roofs that bear on it (beam), or the roof it belongs to (framing). */
  readonly roofs: readonly string[];
}

/** Supports nearer than this are one, inches. */
const NEAR = 1;

/** Direction of a member on plan; undefined when it is square to neither axis. */
function directionOf(m: Member): '+x' | '+y' | undefined {
  const dx = Math.abs(m.end.x - m.start.x);
  const dy = Math.abs(m.end.y - m.start.y);
  if (dx > 0 && dy < 1e-6 * dx) return '+x';
  return dy > 0 && dx < 1e-6 * dy ? '+y' : undefined;
}

/**
 * Supports between two spans of a member, as plan coordinates. An end that runs past its support by less than the member's
 * depth is no span: a load that close goes straight into the support.
 */
function cutsOf(m: Member, supports: readonly Joint[], toward: '+x' | '+y'): readonly number[] {
  const q = (p: { x: number; y: number }): number => (toward === '+x' ? p.x : p.y);
  const low = Math.min(q(m.start), q(m.end));
  const high = Math.max(q(m.start), q(m.end));
  const at = supports.map((j) => q(j.at)).sort((a, b) => a - b);
  return at.filter((a, i) => {
    if (i > 0 && a - at[i - 1]! < NEAR) return false;
    const before = i > 0 || a - low >= m.section.depth - 1e-6;
    const after = i < at.length - 1 || high - a >= m.section.depth - 1e-6;
    return before && after;
  });
}

const sameCuts = (a: ContinuousLine, b: ContinuousLine): boolean =>
  a.of === b.of &&
  a.toward === b.toward &&
  a.roofs.join() === b.roofs.join() &&
  a.cuts.length === b.cuts.length &&
  a.cuts.every((c, i) => Math.abs(c - b.cuts[i]!) < NEAR);

/** All such lines; equal ones once, under the name of the first. Members square to neither axis are listed in `skew`. */
export function continuousLines(structure: Structure): {
  readonly lines: readonly ContinuousLine[];
  readonly skew: readonly string[];
} {
  const members = new Map(structure.members.map((m) => [m.id, m]));
  const below = new Map<string, Joint[]>();
  const onBeam = new Map<string, Set<string>>();
  for (const j of structure.joints) {
    const upper = members.get(j.ties[0]?.part ?? '');
    if (!upper || j.kind === 'fascia-to-framing' || j.kind === 'beam-splice' || upper.rake) continue;
    const list = below.get(upper.id);
    if (list) list.push(j);
    else below.set(upper.id, [j]);
    const lower = members.get(j.ties.at(-1)?.part ?? '');
    if (lower?.role !== 'beam' || upper.roof === undefined) continue;
    const roofs = onBeam.get(lower.id) ?? new Set<string>();
    roofs.add(upper.roof);
    onBeam.set(lower.id, roofs);
  }
  const lines: ContinuousLine[] = [];
  const skew: string[] = [];
  const take = (m: Member, of: ContinuousLine['of'], name: string, roofs: readonly string[]): void => {
    const supports = below.get(m.id) ?? [];
    if (supports.length === 0) return;
    const toward = directionOf(m);
    if (!toward) {
      if (!skew.includes(name)) skew.push(name);
      return;
    }
    const line: ContinuousLine = { name, of, toward, cuts: cutsOf(m, supports, toward), roofs };
    if (line.cuts.length === 0 || lines.some((l) => sameCuts(l, line))) return;
    // The two slopes of a roof are two lines of one name; their cases must not share an id.
    const same = lines.filter((l) => l.name === name || l.name.startsWith(`${name} `)).length;
    lines.push(same === 0 ? line : { ...line, name: `${name} ${same + 1}` });
  };
  for (const m of structure.members)
    if (m.role === 'beam' && m.state === 'new') take(m, 'beam', m.id, [...(onBeam.get(m.id) ?? [])].sort());
  for (const m of structure.members)
    if (m.role === 'rafter' && m.roof !== undefined && m.strips.length > 0)
      take(m, 'framing', `${m.roof} rafters`, [m.roof]);
  return { lines, skew };
}

/** Zone of each span on one roof, from its edge along `toward`; the outer spans run to the roof's edges. */
export function spanZones(
  line: ContinuousLine,
  roof: RoofPlaced,
): readonly { readonly from: number; readonly to: number }[] {
  const L = lengthAlong(roof, line.toward);
  const zero = windwardEdge(roof, line.toward);
  const marks = [0, ...line.cuts.map((c) => Math.min(Math.max(c - zero, 0), L)), L];
  return marks.slice(1).map((to, i) => ({ from: marks[i]!, to }));
}

/** Even load on one zone of a roof, as areas on its surfaces and as a plan load. */
export function zoneLoad(
  structure: Structure,
  roof: RoofPlaced,
  toward: WindDirection,
  zone: { readonly from: number; readonly to: number },
  psf: number,
): { readonly areas: readonly AreaLoad[]; readonly plan: readonly PlanLoad[] } {
  if (!(psf > 0) || zone.to - zone.from <= 1e-6) return { areas: [], plan: [] };
  const areas: AreaLoad[] = [];
  for (const s of structure.surfaces) {
    if (s.roof !== roof.mark) continue;
    const part = zoneOn(s, roof, toward, zone.from, zone.to);
    if (part) areas.push({ surface: s.id, ...(part.whole ? {} : { region: part.region }), psf, acts: 'plan' });
  }
  return { areas, plan: [{ roof: roof.mark, psf, acts: 'plan', zone: { toward, from: zone.from, to: zone.to } }] };
}
