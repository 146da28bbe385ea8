/** Beam ends at the house lie where their kind wants them, on a wall that can hold them, clear of openings. */
import type { Issue } from '../../base/issue.js';
import { findSize } from '../../catalog/index.js';
import type { BeamEnd, BeamLine, Cladding, HouseWall, WallFraming } from '../../project/model.js';
import { END_GAP, MEETS, SHEATHING_ALLOWANCE, SLACK, TOP_PLATES } from '../constants.js';
import { fromWall } from '../describe.js';
import { error, warning } from '../issues.js';
import type { Member, WallPlaced } from '../model.js';
import { inches } from '../text.js';
import type { Placed, StructureRule } from './contract.js';
import { postOutline } from './plan.js';

const VENEER: ReadonlySet<Cladding> = new Set<Cladding>(['brick-veneer', 'stone-veneer']);

/** What carries no beam, and why. Common practice, no source, where no section is named. */
const REFUSED: Readonly<Partial<Record<WallFraming, string>>> = {
  fascia: 'A fascia is trim on rafter tails and carries no beam',
  cantilever:
    'A floor that runs out past the wall below carries no beam (IRC 2018 R507.9.1.1 says so of deck ledgers, recalled)',
  band: 'A floor band carries no single beam (IRC 2009 R502.2.2.2 says so of deck girders, read in a quotation)',
  'single-stud': 'One stud of an ordinary wall is no place for the end of a beam',
  unknown: 'Nobody knows what would carry the end of the beam',
};

interface At {
  readonly line: BeamLine;
  readonly end: BeamEnd;
  readonly beam: Member;
  readonly point: { readonly x: number; readonly y: number };
  readonly house: HouseWall;
  readonly wall: WallPlaced;
}

function ends({ project, structure }: Placed): At[] {
  return project.cover.beams.flatMap((line) =>
    (['start', 'end'] as const).flatMap((key): At[] => {
      const end = line.ends?.[key];
      const wall = end && structure.walls[end.wall];
      const house = end && project.house.walls[end.wall];
      const own = structure.members.filter((m) => m.role === 'beam' && m.mark === line.mark);
      const beam = key === 'start' ? own[0] : own[own.length - 1];
      if (!end || !wall || !house || !beam) return [];
      return [{ line, end, beam, point: key === 'start' ? line.from : line.to, house, wall }];
    }),
  );
}

/** Outside faces of the studs: depth of the wall behind its line. */
const wallDepth = (w: HouseWall): number => (findSize(w.build.studSize)?.d ?? 3.5) + SHEATHING_ALLOWANCE;

function reach(a: At, placed: Placed): Issue[] {
  const { line, end, point, wall, house, beam } = a;
  const at = fromWall(wall, point);
  const subject = line.mark;
  const half = beam.section.width / 2;
  if (at.along < half || at.along > at.length - half)
    return [
      error('beam-end-off-wall', end.path, `The end of ${line.mark} is not on the wall "${house.name}".`, {
        subject,
        found: inches(at.along),
        expected: `between ${inches(half)} and ${inches(at.length - half)} along that wall`,
      }),
    ];
  const d = { x: line.to.x - line.from.x, y: line.to.y - line.from.y };
  const square = Math.abs(d.x * wall.out.x + d.y * wall.out.y) / Math.hypot(d.x, d.y);
  if (square < 0.999)
    return [
      error('beam-end-askew', end.path, `Beam ${line.mark} does not meet the wall squarely.`, {
        subject,
        expected: 'a beam square to the wall',
      }),
    ];
  if (end.kind === 'on-wall')
    return at.out >= -SLACK && at.out <= END_GAP + MEETS
      ? []
      : [
          error('beam-end-off-wall', end.path, `The end of ${line.mark} does not lie at the face of the wall.`, {
            subject,
            found: `${inches(at.out)} out from it`,
            expected: `at the wall line or up to ${inches(END_GAP)} in front of it`,
          }),
        ];
  const post = placed.structure.members.find((m) => m.id === end.mark && m.role === 'post');
  if (!post) return [];
  const outs = postOutline(post).map((p) => fromWall(wall, p).out);
  const depth = wallDepth(house);
  if (Math.max(...outs) <= MEETS && Math.min(...outs) >= -depth - MEETS) return [];
  return [
    error('post-not-in-wall', end.path, `Post ${end.mark} does not stand within the ${inches(depth)} of the wall.`, {
      subject: end.mark,
      found: `${inches(-Math.max(...outs))} to ${inches(-Math.min(...outs))} behind the wall line`,
      expected: `0" to ${inches(depth)}: the beam ends at the back of the post`,
    }),
  ];
}

function height({ line, end, beam, wall }: At): Issue[] {
  const [low, high] = [beam.start.z - beam.section.depth / 2, beam.start.z + beam.section.depth / 2];
  const subject = line.mark;
  const expected = `a beam under the top plates, its top at ${inches(wall.plate - TOP_PLATES)} or lower`;
  if (end.kind === 'post-in-wall' && high > wall.plate - TOP_PLATES + MEETS)
    return [
      error('beam-cuts-plate', end.path, `Beam ${line.mark} would cut the top plates of the wall.`, {
        subject,
        found: inches(high),
        expected,
      }),
    ];
  if (end.kind === 'on-wall' && high > wall.plate + MEETS)
    return [
      error('beam-end-above-wall', end.path, `Beam ${line.mark} meets the house above the wall's plate.`, {
        subject,
        found: inches(high),
        expected: `its top at ${inches(wall.plate)} or lower`,
      }),
    ];
  return low < wall.base
    ? [error('beam-end-above-wall', end.path, `Beam ${line.mark} meets the house below grade.`, { subject })]
    : [];
}

function holding({ line, end, house }: At): Issue[] {
  const subject = line.mark;
  if (end.kind === 'on-wall') {
    if (VENEER.has(house.build.cladding))
      return [
        error(
          'beam-on-veneer',
          `${end.path}/wall`,
          `The ${house.name} wall is clad with masonry, which carries no beam.`,
          {
            subject,
            found: house.build.cladding,
            expected: 'a post of its own in front of the wall or inside it',
          },
        ),
      ];
    const why = REFUSED[end.into];
    if (why)
      return [
        error('beam-on-nothing', `${end.path}/into`, `${why}.`, {
          subject,
          found: end.into,
          expected: 'a post or doubled studs down to the foundation, or a post in front of the wall',
        }),
      ];
  }
  return end.verified.value && end.verified.state === 'given'
    ? []
    : [
        warning(
          'beam-end-unverified',
          end.verified.path || end.path,
          `Nobody has verified the wall where ${line.mark} meets it.`,
          {
            subject,
            expected: 'the wall opened, its framing noted',
          },
        ),
      ];
}

/** A beam and its post keep clear of the openings beside and below them. */
function clear({ line, end, beam, wall, point }: At): Issue[] {
  const { along } = fromWall(wall, point);
  const half = beam.section.width / 2;
  const low = beam.start.z - beam.section.depth / 2;
  const high = beam.start.z + beam.section.depth / 2;
  return wall.openings.flatMap((o): Issue[] => {
    if (along + half <= o.offset || along - half >= o.offset + o.width) return [];
    const crosses = low < o.head && high > o.sill;
    const blocked = end.kind === 'post-in-wall' && o.sill < high;
    if (!crosses && !blocked) return [];
    return [
      error(
        crosses ? 'beam-crosses-opening' : 'post-in-opening',
        end.path,
        crosses
          ? `The end of ${line.mark} crosses ${o.mark} (${o.room}).`
          : `The post under ${line.mark} would stand in ${o.mark} (${o.room}).`,
        { subject: line.mark, expected: `clear of ${o.mark}: another place along the wall` },
      ),
    ];
  });
}

export const beamEnds: StructureRule = (placed) =>
  ends(placed).flatMap((a) => {
    const off = reach(a, placed);
    return off.length > 0 ? off : [...height(a), ...holding(a), ...clear(a)];
  });
