/**
 * Least horizontal wind of an open building (ASCE 7 27.1.5): 16 psf on the area projected on a plane square to the wind,
 * a case of its own in each direction. The projected area is taken as if the roof were solid from the underside of its
 * lowest beam to its outline against the sky; posts below count with their full faces.
 */
import type { Project } from '../project/model.js';
import type { Member, RoofPlaced, Structure } from '../structure/model.js';
import { type Ledger, note } from './basis.js';
import { asce, minimumOpenBuildingForce } from './codes/asce7/index.js';
import type { LoadCase, WindDirection } from './model.js';
import { DIRECTIONS, heading, isAcross } from './wind-plan.js';

export interface Below {
  readonly underside: number;
  readonly posts: readonly Member[];
}

/** Beams a roof's framing bears on, and the posts below them not yet counted with another roof. */
export function supportsBelow(structure: Structure, roof: RoofPlaced, counted: Set<string>): Below {
  const byId = new Map(structure.members.map((m) => [m.id, m]));
  const beams = new Set<string>();
  for (const joint of structure.joints) {
    if (byId.get(joint.ties[0]?.part ?? '')?.roof !== roof.mark) continue;
    const lower = byId.get(joint.ties.at(-1)?.part ?? '');
    if (lower?.role === 'beam') beams.add(lower.id);
  }
  let underside = Number.POSITIVE_INFINITY;
  for (const id of beams) {
    const beam = byId.get(id)!;
    underside = Math.min(underside, Math.min(beam.start.z, beam.end.z) - beam.section.depth / 2);
  }
  const posts: Member[] = [];
  for (const joint of structure.joints) {
    if (joint.kind !== 'beam-to-post' || !joint.ties.some((t) => beams.has(t.part))) continue;
    const post = byId.get(joint.ties.at(-1)?.part ?? '');
    if (!post || counted.has(post.id)) continue;
    counted.add(post.id);
    posts.push(post);
  }
  return { underside: Number.isFinite(underside) ? underside : roof.lowestEave, posts };
}

/** Area of the roof's outline above its lowest eave, seen along `d`, in²: a rectangle across the ridge, a triangle along it. */
export function skyline(roof: RoofPlaced, d: WindDirection, acrossWind: number): number {
  return ((roof.highestPoint - roof.lowestEave) * acrossWind) / (isAcross(roof, d) ? 1 : 2);
}

/** Area against wind toward `d` as if solid above the beams' underside, with the faces of the posts below, in². */
export function areaAgainst(roof: RoofPlaced, d: WindDirection, { underside, posts }: Below): number {
  const acrossWind = d.endsWith('x') ? roof.max.y - roof.min.y : roof.max.x - roof.min.x;
  const band = Math.max(0, roof.lowestEave - underside) * acrossWind;
  const faces = posts.reduce((sum, p) => sum + p.section.width * p.length, 0);
  return skyline(roof, d, acrossWind) + band + faces;
}

/** The four cases; a roof without surfaces adds nothing. All of a roof's force is held at roof level, the posts' share too. */
export function minimumWindCases(project: Project, structure: Structure, ledger: Ledger): readonly LoadCase[] {
  const edition = project.basis.codes.loads;
  const clause = asce(edition, '27.1.5');
  const counted = new Set<string>();
  const below = structure.roofs.map((roof) => supportsBelow(structure, roof, counted));
  return DIRECTIONS.map((d) => {
    const h = heading(d);
    const side = structure.roofs.map((roof, i) => {
      const { underside } = below[i]!;
      const Af = areaAgainst(roof, d, below[i]!);
      const F = minimumOpenBuildingForce(Af, edition);
      const from = [roof.path];
      note(
        ledger,
        'Af',
        `${roof.mark}: area against wind toward ${d}, as if solid above the beams' underside, with posts`,
        Af / 144,
        'ft²',
        clause,
        from,
      );
      note(ledger, 'Fmin', `${roof.mark}: least wind force toward ${d}, 16 psf`, F, 'lb', clause, from);
      const at = {
        x: (roof.min.x + roof.max.x) / 2,
        y: (roof.min.y + roof.max.y) / 2,
        z: (underside + roof.highestPoint) / 2,
      };
      return {
        roof: roof.mark,
        at,
        force: { x: F * h.x, y: F * h.y, z: 0 },
        why: 'least wind load on the open building',
      };
    });
    return {
      id: `W${d}·least`,
      kind: 'W' as const,
      title: `Least horizontal wind toward ${d}`,
      areas: [],
      edges: [],
      plan: [],
      selfWeight: false,
      side,
      clause,
    };
  });
}
