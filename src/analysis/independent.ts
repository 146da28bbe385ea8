/**
 * The second road to the loads' totals: from the project's own numbers (plan extents, pitch, spacing counts, lengths),
 * knowing nothing of surfaces, strips, joints or members' places. Only weights per inch and per area come from the
 * sections and layers, pressures from the cases.
 */
import { contains } from '../base/plane.js';
import type { Vec3 } from '../base/vec.js';
import type { LoadCase, PlanLoad } from '../loads/model.js';
import type { BeamLine, CoverRoof, FootingChoice, Project, ShedRoof } from '../project/model.js';
import type { Section, Structure } from '../structure/model.js';
import { bracingWeight } from './independent-bracing.js';
import { hipFramingWeight } from './independent-hip.js';

interface PlanRoof {
  readonly roof: CoverRoof;
  /** Across the ridge from eave to eave (gable) or from eave to high edge (shed), inches on plan. */
  readonly across: number;
  readonly along: number;
  readonly frames: number;
}

/** Facts of the sections by the name the project gives them. */
type SectionFacts = ReadonlyMap<string, Pick<Section, 'width' | 'depth' | 'd' | 'weight'>>;

export function sectionFacts(structure: Structure): SectionFacts {
  // A truss's chord is an assumption of the order, not a section of the project.
  return new Map(structure.members.filter((m) => !m.truss).map((m) => [m.section.choice, m.section]));
}

const beamOf = (project: Project, mark: string): BeamLine | undefined =>
  project.cover.beams.find((b) => b.mark === mark);
const lengthOf = (b: BeamLine): number => Math.hypot(b.to.x - b.from.x, b.to.y - b.from.y);

/** Frames stand at `from`, at every spacing after it, and at `to`. */
const frameCount = (roof: CoverRoof): number => Math.ceil((roof.to - roof.from - 1e-6) / roof.framing.spacing) + 1;

/** Distance of a plan point down the way a shed falls. */
const downTo = (roof: ShedRoof, p: { x: number; y: number }): number =>
  roof.fall === '+x' ? p.x : roof.fall === '-x' ? -p.x : p.y;
/** The same of a beam's middle. */
const beamDown = (roof: ShedRoof, b: BeamLine | undefined): number =>
  b ? (downTo(roof, b.from) + downTo(roof, b.to)) / 2 : 0;

/** House axis a roof's ridge (or the direction across a shed's fall) runs along. */
const ridgeOf = (roof: CoverRoof): 'x' | 'y' =>
  roof.kind !== 'shed' ? roof.ridge : roof.fall === '+x' || roof.fall === '-x' ? 'y' : 'x';

/** Plan point between a roof's two bearings. */
function middleOf(project: Project, roof: CoverRoof): { x: number; y: number } {
  const ends = (b: BeamLine | undefined) => (b ? [b.from, b.to] : []);
  const wallOf = (mark: string) => {
    const ledger = project.cover.ledgers.find((l) => l.mark === mark);
    const wall = ledger && project.house.walls[ledger.wall];
    return wall ? [wall.start, wall.end] : [];
  };
  const points =
    roof.kind !== 'shed'
      ? roof.beams.flatMap((m) => ends(beamOf(project, m)))
      : [
          ...ends(beamOf(project, roof.low)),
          ...('beam' in roof.high ? ends(beamOf(project, roof.high.beam)) : wallOf(roof.high.ledger)),
        ];
  const mean = (axis: 'x' | 'y') => points.reduce((sum, p) => sum + p[axis], 0) / Math.max(1, points.length);
  return { x: mean('x'), y: mean('y') };
}

/** Part of a beam's width a roof lies on: half where another roof lies on its other side over the same length. */
function shareOf(project: Project, roof: CoverRoof, mark: string): number {
  const beam = beamOf(project, mark);
  if (!beam) return 1;
  const axis = ridgeOf(roof) === 'x' ? 'y' : 'x';
  const side = (r: CoverRoof): number => Math.sign(middleOf(project, r)[axis] - beam.from[axis]);
  const named = (r: CoverRoof): boolean =>
    r.kind !== 'shed' ? r.beams.includes(mark) : r.low === mark || ('beam' in r.high && r.high.beam === mark);
  const meets = project.cover.roofs.some(
    (r) =>
      r.mark !== roof.mark &&
      named(r) &&
      ridgeOf(r) === ridgeOf(roof) &&
      side(r) === -side(roof) &&
      Math.min(r.to + r.rake, roof.to + roof.rake) - Math.max(r.from - r.rake, roof.from - roof.rake) > 1e-6,
  );
  return meets ? 0.5 : 1;
}

/** Place of the shed's high bearing down the fall and the distance its roof runs past it. */
function shedHigh(project: Project, roof: ShedRoof, facts: SectionFacts): { y: number; past: number } {
  if ('ledger' in roof.high) {
    const mark = roof.high.ledger;
    const ledger = project.cover.ledgers.find((l) => l.mark === mark);
    const wall = ledger && project.house.walls[ledger.wall];
    return { y: (wall ? downTo(roof, wall.start) : 0) + (facts.get(ledger?.section ?? '')?.width ?? 0), past: 0 };
  }
  const beam = beamOf(project, roof.high.beam);
  return {
    y: beamDown(roof, beam),
    past:
      (facts.get(beam?.section ?? '')?.width ?? 0) * (shareOf(project, roof, roof.high.beam) - 0.5) + roof.highOverhang,
  };
}

function planRoof(project: Project, roof: CoverRoof, facts: SectionFacts): PlanRoof {
  // A hip's eaves run all round: past its end beams as past its side beams.
  const end =
    roof.kind === 'hip' ? (facts.get(beamOf(project, roof.ends[0])?.section ?? '')?.width ?? 0) + 2 * roof.eave : 0;
  // A gable that goes on over the house has there, for a rake, half the bay to its first fill rafters.
  const over = roof.kind === 'gable' && roof.meetsHouse ? roof.meetsHouse.spacing / 2 : roof.rake;
  const along = roof.to - roof.from + roof.rake + over + end;
  const frames = frameCount(roof);
  if (roof.kind !== 'shed') {
    const [a, b] = roof.beams.map((m) => beamOf(project, m));
    const place = (line: BeamLine | undefined): number =>
      line ? (roof.ridge === 'y' ? line.from.x + line.to.x : line.from.y + line.to.y) / 2 : 0;
    const outer = [a, b].reduce(
      (sum, l) => sum + (l ? (facts.get(l.section)?.width ?? 0) * (shareOf(project, roof, l.mark) - 0.5) : 0),
      0,
    );
    return { roof, across: Math.abs(place(a) - place(b)) + outer + 2 * roof.eave, along, frames };
  }
  const low = beamOf(project, roof.low);
  const past = (facts.get(low?.section ?? '')?.width ?? 0) * (shareOf(project, roof, roof.low) - 0.5);
  const lowY = beamDown(roof, low);
  const high = shedHigh(project, roof, facts);
  return { roof, across: lowY - high.y + past + roof.eave + high.past, along, frames };
}

/** Weight in lb of a plan load that is even, or runs straight, across a zone of the roof: mean value times plan area. */
function zoneTotal(p: PlanRoof, load: PlanLoad): number {
  const { zone, psf } = load;
  if (!zone) return 0;
  const ridge = ridgeOf(p.roof);
  const across = !zone.toward.endsWith(ridge);
  const from = Math.max(0, zone.from);
  const to = Math.min(across ? p.across : p.along, zone.to);
  if (to <= from) return 0;
  const at = (q: number): number => psf + (((load.psfTo ?? psf) - psf) * (q - zone.from)) / (zone.to - zone.from);
  return (((at(from) + at(to)) / 2) * (to - from) * (across ? p.along : p.across)) / 144;
}

/** Force of one plan load on a roof, house axes, lb. */
function planForce(p: PlanRoof, load: PlanLoad): Vec3 {
  const { roof } = p;
  const tan = Math.tan(roof.pitch);
  const area = (p.across * p.along) / 144;
  if (load.acts === 'plan') return { x: 0, y: 0, z: load.zone ? -zoneTotal(p, load) : -load.psf * area };
  if (load.acts === 'slope') return { x: 0, y: 0, z: (-load.psf * area) / Math.cos(roof.pitch) };
  // A pressure square to the slope: p per plan area downward, p·tan(pitch) per plan area against the uphill side.
  const zone = load.zone;
  const ridge = ridgeOf(roof);
  const acrossWind = zone !== undefined && !zone.toward.endsWith(ridge);
  const whole = acrossWind ? p.across : p.along;
  const from = zone ? Math.max(0, zone.from) : 0;
  const to = zone ? Math.min(whole, zone.to) : whole;
  const other = acrossWind ? p.along : p.across;
  const down = (load.psf * (to - from) * other) / 144;
  if (roof.kind === 'shed') {
    const push = -down * tan;
    return roof.fall === '+x'
      ? { x: push, y: 0, z: -down }
      : roof.fall === '-x'
        ? { x: -push, y: 0, z: -down }
        : { x: 0, y: push, z: -down };
  }
  if (!acrossWind || !zone) return { x: 0, y: 0, z: -down };
  // Across a gable each slope pushes toward the ridge: the windward side with the wind, the leeward side against it.
  const ridgeAt = p.across / 2;
  const windward = Math.max(0, Math.min(to, ridgeAt) - from);
  const leeward = Math.max(0, to - Math.max(from, ridgeAt));
  const push = ((load.psf * (windward - leeward) * other) / 144) * tan * (zone.toward.startsWith('+') ? 1 : -1);
  return roof.kind === 'gable' && ridge === 'y' ? { x: push, y: 0, z: -down } : { x: 0, y: push, z: -down };
}

/** Height of the walking surface at a post, from the patio's slabs and grade. */
function groundAt(project: Project, at: { x: number; y: number }): number {
  const slab = project.patio.slabs.find((s) => s.state !== 'removed' && contains(s.outline, at));
  return slab ? slab.topAtHouse - slab.fall * at.y : project.patio.grade.atHouse - project.patio.grade.fall * at.y;
}

/** Foot of the post above (or below) the surface beside it: on its base, or down in its hole. */
function postFootOver(f: FootingChoice, standoff: number): number {
  if (f.kind === 'embedded-post') return f.under - f.bottom;
  if (f.kind === 'slab') return standoff;
  return (f.kind === 'square-pad' ? f.thickness - f.bottom : f.top) + standoff;
}

/** Height of a beam's top, from the roof that bears on it. */
function beamTop(project: Project, mark: string, facts: SectionFacts): number {
  for (const roof of project.cover.roofs) {
    if (roof.kind !== 'shed') {
      if (roof.beams.includes(mark) || (roof.kind === 'hip' && roof.ends.includes(mark))) return roof.bearing;
      if (roof.ridgeBeam !== mark) continue;
      // The rafters' bottom edge rises from the inner corner of the eave beam to the middle of the ridge beam.
      const seat =
        (facts.get(beamOf(project, roof.beams[0])?.section ?? '')?.width ?? 0) * shareOf(project, roof, roof.beams[0]);
      const half = planRoof(project, roof, facts).across / 2 - roof.eave;
      return roof.bearing + (half - seat) * Math.tan(roof.pitch);
    }
    if ('beam' in roof.high && roof.high.beam === mark) return roof.bearing;
    if (roof.low !== mark || roof.framing.kind !== 'rafter') continue;
    const low = beamOf(project, mark)!;
    const half = (facts.get(low.section)?.width ?? 0) / 2;
    const tan = Math.tan(roof.pitch);
    const plumb = (facts.get(roof.framing.section)?.d ?? 0) / Math.cos(roof.pitch);
    const high = shedHigh(project, roof, facts);
    // Rafters hang flush with a ledger's top, and rest on a high beam at its uphill corner.
    const onBeam = 'beam' in roof.high;
    const highWidth = onBeam ? high.past - roof.highOverhang : 0;
    const run = beamDown(roof, low) - half - (high.y - highWidth);
    return roof.bearing - run * tan - (onBeam ? 0 : plumb);
  }
  return 0;
}

/** Weight of one tie: between the rafters' top edges at its own upper edge, no longer than the beams stand apart. */
function tieWeight(project: Project, roof: CoverRoof, facts: SectionFacts): number {
  const f = roof.framing;
  if (roof.kind !== 'gable' || f.kind !== 'rafter' || !f.ties) return 0;
  const tie = facts.get(f.ties.section);
  const rafter = facts.get(f.section);
  if (!tie || !rafter) return 0;
  const half = planRoof(project, roof, facts).across / 2 - roof.eave;
  const width = facts.get(beamOf(project, roof.beams[0])?.section ?? '')?.width ?? 0;
  const inner = half - width * shareOf(project, roof, roof.beams[0]);
  const above = rafter.d / Math.cos(roof.pitch) - f.ties.height - tie.d;
  return tie.weight * 2 * Math.min(half, inner + above / Math.tan(roof.pitch));
}

/** Weight of the outlookers and barge boards of both rakes, slope by slope. */
function rakeWeight({ roof, across, frames }: PlanRoof, facts: SectionFacts): number {
  const rake = roof.rakeFraming;
  const look = facts.get(rake?.section ?? '');
  const barge = facts.get(rake?.barge ?? '');
  if (!rake || !look || !barge) return 0;
  const slopes = roof.kind === 'gable' ? 2 : 1;
  const slope = across / slopes / Math.cos(roof.pitch);
  const count = Math.ceil(slope / rake.spacing - 1e-9);
  const { spacing } = roof.framing;
  // The bay behind the first frame is a whole one; behind the last it is what is left.
  const last = roof.to - roof.from - (frames - 2) * spacing;
  const bays = Math.min(spacing, roof.to - roof.from) + last;
  const outlookers = count * (bays + 2 * (roof.rake - barge.width)) * look.weight;
  return slopes * (outlookers + 2 * slope * barge.weight);
}

/** Own weight of members: trusses by span, rafters by their axis, beams, ledgers and posts by the project's lengths. */
function membersWeight(project: Project, roofs: readonly PlanRoof[], facts: SectionFacts): number {
  const per = (name: string): number => facts.get(name)?.weight ?? 0;
  let sum = 0;
  for (const { roof, across, along, frames } of roofs) {
    const f = roof.framing;
    if (roof.kind === 'hip') {
      const common = f.kind === 'rafter' ? per(f.section) : 0;
      const beam = facts.get(beamOf(project, roof.beams[0])?.section ?? '')?.width ?? 0;
      const hipWidth = facts.get(roof.hip)?.width ?? 0;
      sum += hipFramingWeight(roof, across, along, { common, hip: per(roof.hip), hipWidth, beam });
      continue;
    }
    if (f.kind === 'rafter') {
      const board = f.ties ? (facts.get(f.ties.ridgeBoard)?.width ?? 0) : 0;
      // Under outlookers the two end frames are of another section.
      const ends = roof.rakeFraming?.endFrame;
      const each = ends === undefined ? frames * per(f.section) : (frames - 2) * per(f.section) + 2 * per(ends);
      sum += (each * (across - board)) / Math.cos(roof.pitch);
      if (f.ties) sum += frames * tieWeight(project, roof, facts) + per(f.ties.ridgeBoard) * along;
    } else sum += (frames * f.weight * (across - 2 * roof.eave)) / 12;
    sum += rakeWeight({ roof, across, along, frames }, facts);
  }
  const named = new Set<string>(
    roofs.flatMap(({ roof }) =>
      roof.kind !== 'shed'
        ? [...roof.beams, ...(roof.kind === 'hip' ? roof.ends : []), roof.ridgeBeam ?? '']
        : [roof.low, ...Object.values(roof.high)],
    ),
  );
  sum += bracingWeight(project, facts, named);
  for (const ledger of project.cover.ledgers)
    if (named.has(ledger.mark)) sum += per(ledger.section) * (ledger.to - ledger.from);
  for (const beam of project.cover.beams) {
    // What no roof names carries nothing and is not built.
    if (!named.has(beam.mark)) continue;
    const length = lengthOf(beam);
    sum += per(beam.section) * length;
    const underside = beamTop(project, beam.mark, facts) - (facts.get(beam.section)?.depth ?? 0);
    for (const post of beam.posts) {
      const at = {
        x: beam.from.x + ((beam.to.x - beam.from.x) * post.at) / length,
        y: beam.from.y + ((beam.to.y - beam.from.y) * post.at) / length,
      };
      const footing = project.choices.footings[post.footing];
      if (!footing) continue;
      const bottom = groundAt(project, at) + postFootOver(footing, project.choices.standoff);
      sum += per(post.section) * (underside - bottom);
    }
    for (const [end, along] of [
      [beam.ends?.start, 0],
      [beam.ends?.end, length],
    ] as const) {
      if (end?.kind !== 'post-in-wall') continue;
      const footing = end.foot.kind === 'footing' ? project.choices.footings[end.foot.footing] : undefined;
      const inset = (facts.get(end.section)?.width ?? 0) / 2;
      const t = (along === 0 ? inset : length - inset) / length;
      const at = {
        x: beam.from.x + (beam.to.x - beam.from.x) * t,
        y: beam.from.y + (beam.to.y - beam.from.y) * t,
      };
      const bottom =
        end.foot.kind === 'foundation'
          ? end.foot.top
          : groundAt(project, at) +
            (footing ? postFootOver(footing, project.choices.standoff) : project.choices.standoff);
      sum += per(end.section) * (underside - bottom);
    }
  }
  return sum;
}

/** Mean length of a roof's eaves, inches. */
const eaveOf = (p: PlanRoof | undefined): number =>
  p === undefined ? 0 : p.roof.kind === 'hip' ? (p.across + p.along) / 2 : p.along;

/** Totals of every case, lb, house axes. */
export function independentTotals(project: Project, structure: Structure, cases: readonly LoadCase[]): readonly Vec3[] {
  const facts = sectionFacts(structure);
  const roofs = project.cover.roofs.map((r) => planRoof(project, r, facts));
  const byMark = new Map(roofs.map((r) => [r.roof.mark, r]));
  // Weight per inch of eave of each roof's fascia and gutter; every slope has one eave of the roof's full length.
  const perInch = new Map<string, number>();
  for (const s of structure.surfaces) {
    for (const e of s.edges) perInch.set(s.roof, (perInch.get(s.roof) ?? 0) + e.weight);
  }
  return cases.map((c) => {
    const sum = { x: 0, y: 0, z: 0 };
    for (const load of c.plan ?? []) {
      const roof = byMark.get(load.roof);
      if (!roof) continue;
      const f = planForce(roof, load);
      sum.x += f.x;
      sum.y += f.y;
      sum.z += f.z;
    }
    // Side forces are totals already: the load stage states them with their area.
    for (const s of c.side) {
      sum.x += s.force.x;
      sum.y += s.force.y;
      sum.z += s.force.z;
    }
    if (c.edges.length > 0) for (const [mark, w] of perInch) sum.z -= w * eaveOf(byMark.get(mark));
    if (c.selfWeight) sum.z -= membersWeight(project, roofs, facts);
    return sum;
  });
}
