/** One fastener of a house tie: what it goes through and into, and what it holds along the wall and out of it. */
import type { Recorder } from '../../base/trace.js';
import { dressedSize, type Fastener, LAG_SCREWS, LAG_THREAD, parseNominal, WOOD_SCREWS } from '../../catalog/index.js';
import type { HouseTie } from '../../project/model.js';
import type { RoofPlaced, Section, WallPlaced } from '../../structure/model.js';
import { makeSection } from '../../structure/sections.js';
import {
  adjustedW,
  adjustedZ,
  CdeltaSpacing,
  Cg,
  CMConnection,
  dowelBearing,
  headPullThrough,
  lateralValueGap,
  minEdgeDistance,
  penetrationFactor,
  slipModulus,
  W,
} from '../codes/nds-2018/index.js';
import type { CheckContext, Finding } from '../contract.js';
import { failed, outsideScope } from '../finding.js';

const CLAUSE = 'NDS 2018 chapter 12';
/** Packing and wall sheathing a fastener may cross, inches. Rule of this program, no source. */
const WIDEST_GAP = 1;
/** What a tape measure cannot tell apart, inches. */
const SLACK = 0.25;
/** Least lap of the roof sheathing's edge on the nailer, inches: nail edge distance of 3/8 in and play. */
const LAP = 0.75;
/** House framing: thickness of a stud, plate or band as sold dressed; modulus of its wood, psi (least usual grade, recalled). */
const TWO_BY = 1.5;
const HOUSE_E = 1.2e6;
const BAND_DEPTH = 9.25;

export interface TieJoint {
  readonly fastener: Fastener;
  /** Board or frame the fasteners go through. */
  readonly side: Section;
  readonly sideName: string;
  /** Angle of the load to the grain of the side member and of the house's framing, radians. */
  readonly thetaSide: number;
  readonly thetaMain: number;
  readonly ls: number;
  /** Into the framing of the house: whole, and without the tip. */
  readonly p: number;
  readonly lm: number;
  /** Threads in the framing of the house. */
  readonly threads: number;
  readonly places: number;
}

/** The roof's own frame along the wall that stands nearest to it. */
function endFrame(ctx: CheckContext, roof: RoofPlaced) {
  const along = ctx.structure.members.filter(
    (m) => m.roof === roof.mark && m.strips.length > 0 && Math.abs(m.start.y - m.end.y) < SLACK,
  );
  return along.sort((a, b) => a.start.y - b.start.y)[0];
}

/** Thickness of the house's wall sheathing as the file words it: `1/2 in panel`; half an inch when not a plain size. */
export function wallSheathing(words: string): number {
  if (words.trim() === '' || /^none/i.test(words.trim())) return 0;
  const m = /(\d+)\s*\/\s*(\d+)/.exec(words);
  return m && Number(m[2]) > 0 ? Number(m[1]) / Number(m[2]) : 0.5;
}

function sideOf(
  ctx: CheckContext,
  t: HouseTie,
  roof: RoofPlaced,
  wall: WallPlaced,
): { section: Section; name: string } | Finding {
  if (t.nailer !== '') {
    const choice = ctx.project.choices.sections[t.nailer];
    const made = choice && makeSection(choice, { choice: t.nailer, path: `/choices/sections/${t.nailer}` });
    if (!made?.ok) return failed(CLAUSE, `The nailer of ${t.mark} names a section that cannot be made.`);
    const reach = roof.min.y - wall.start.y;
    if (reach > made.section.plyWidth - LAP) {
      return failed(
        CLAUSE,
        `The sheathing of ${roof.mark} ends ${reach.toFixed(2)} in off the wall and does not lap the nailer of ${t.mark} by ${LAP} in: run the roof to the wall.`,
      );
    }
    return { section: made.section, name: `nailer ${made.section.label}` };
  }
  const frame = endFrame(ctx, roof);
  if (!frame) {
    return failed(CLAUSE, `No frame of ${roof.mark} runs along the wall for ${t.mark} to fasten: name a nailer board.`);
  }
  const off = frame.start.y - frame.section.plyWidth / 2 - wall.start.y;
  const needs = off + wallSheathing(ctx.project.house.walls[t.wall]!.build.sheathing);
  if (needs > t.gap + SLACK) {
    return failed(
      CLAUSE,
      `${frame.id} stands ${off.toFixed(2)} in off the wall and ${needs.toFixed(2)} in off its studs, ${t.mark} reckons with a gap of ${t.gap} in: move the first frame to the wall, or name a nailer board.`,
    );
  }
  return { section: frame.section, name: frame.id };
}

const CLADDING_REFUSED: Readonly<Record<string, string>> = {
  'brick-veneer': 'masonry veneer stands on its own and carries nothing; no fastener may be hung through it',
  'stone-veneer': 'masonry veneer stands on its own and carries nothing; no fastener may be hung through it',
  'concrete-masonry': 'anchors in masonry are not worked out here',
};

const BACKING_REFUSED: Readonly<Record<string, string>> = {
  fascia: 'a fascia board is trim and hands nothing to the house',
  'cantilevered-floor': 'the band of a cantilevered floor stands free of the wall below',
};

function refusal(ctx: CheckContext, t: HouseTie, wall: WallPlaced, level: number): Finding | undefined {
  const build = ctx.project.house.walls[t.wall]!.build;
  const why = CLADDING_REFUSED[build.cladding] ?? BACKING_REFUSED[t.into];
  if (why !== undefined) {
    return outsideScope(
      CLAUSE,
      `${t.mark} cannot be fastened there: ${why}. Stand the cover on its own bracing, or have a licensed professional design the tie.`,
    );
  }
  const sheathing = wallSheathing(build.sheathing);
  if (t.gap < sheathing - 1 / 16) {
    return failed(
      CLAUSE,
      `${t.mark} reckons with a gap of ${t.gap} in, the ${wall.name} wall has ${sheathing} in of sheathing before its framing: give the whole gap.`,
    );
  }
  if (t.gap > WIDEST_GAP) {
    return outsideScope(
      CLAUSE,
      `${t.mark} crosses ${t.gap} in of packing; more than ${WIDEST_GAP} in needs a licensed professional.`,
    );
  }
  if (t.into === 'studs') {
    const ratio = t.fastener.spacing / build.studSpacing;
    if (Math.abs(ratio - Math.round(ratio)) * build.studSpacing > SLACK || ratio < 0.9) {
      return failed(
        CLAUSE,
        `Fasteners at ${t.fastener.spacing} in miss the studs of the ${wall.name} wall: space ${t.mark} at ${build.studSpacing} in or a multiple of it.`,
      );
    }
  }
  if (t.into === 'plate' && Math.abs(level - (wall.plate - TWO_BY)) > TWO_BY + SLACK) {
    return failed(
      CLAUSE,
      `${t.mark} lies ${level.toFixed(1)} in above the floor and misses the plates of the ${wall.name} wall, whose top is ${wall.plate} in up: give its level, or fasten into studs.`,
    );
  }
  for (const o of wall.openings) {
    const from = wall.start.x + o.offset;
    if (level > o.sill && level < o.head && from < t.to && from + o.width > t.from) {
      return failed(CLAUSE, `${t.mark} runs across opening ${o.mark}: raise it over the head of the opening.`);
    }
  }
  return undefined;
}

/** Puts the joint together from file, structure and catalogue, or says why it cannot be. */
export function tieJoint(
  ctx: CheckContext,
  t: HouseTie,
  roof: RoofPlaced,
  wall: WallPlaced,
  level: number,
): TieJoint | { readonly finding: Finding } {
  const refused = refusal(ctx, t, wall, level);
  if (refused) return { finding: refused };
  const list = t.fastener.kind === 'lag' ? LAG_SCREWS : WOOD_SCREWS;
  const fastener = list.find((f) => Math.abs(f.D - t.fastener.diameter) < 0.005);
  if (!fastener) {
    return {
      finding: outsideScope(
        CLAUSE,
        `${t.mark}: no ${t.fastener.kind === 'lag' ? 'lag screw' : 'cut-thread wood screw'} of ${t.fastener.diameter} in is in the catalogue (${list.map((f) => f.D).join(', ')} in); other screws need their own report.`,
      ),
    };
  }
  const side = sideOf(ctx, t, roof, wall);
  if ('status' in side) return { finding: side };
  const nominal = parseNominal(ctx.project.house.walls[t.wall]!.build.studSize);
  const deep = nominal ? dressedSize(nominal).d : 3.5;
  const thick = t.into === 'band' ? TWO_BY : deep;
  const ls = side.section.plyWidth;
  const p = Math.min(t.fastener.length - ls - t.gap, thick);
  const tip = fastener.tip ?? 2 * fastener.D;
  const lm = p - (t.fastener.length - ls - t.gap < thick ? tip : 0);
  const least = penetrationFactor(t.fastener.kind === 'lag' ? 'lag' : 'wood-screw', lm, fastener.D);
  if (lm <= 0 || least === undefined) {
    return {
      finding: failed(
        CLAUSE,
        `The fasteners of ${t.mark} reach only ${Math.max(0, lm).toFixed(2)} in into the framing of the house: use longer ones (${t.fastener.kind === 'lag' ? '4' : '6'} diameters at least).`,
      ),
    };
  }
  const threaded =
    t.fastener.kind === 'lag'
      ? (LAG_THREAD.filter(([l]) => l <= t.fastener.length + 1e-9).at(-1)?.[1] ?? 0)
      : (2 * t.fastener.length) / 3;
  const threads = Math.min(lm, threaded - (t.fastener.kind === 'lag' ? tip : 0));
  const across = t.into === 'studs';
  if (fastener.D >= 0.25 - 1e-9) {
    const edge = TWO_BY / 2;
    const wanted = minEdgeDistance(across ? 'perpendicular-loaded-edge' : 'parallel', lm, fastener.D);
    if (t.into !== 'band' && edge < wanted - 1e-9) {
      return {
        finding: failed(
          'NDS 2018 Table 12.5.1C',
          `${t.mark} loads the ${across ? 'studs across their grain' : 'plates along their grain'}, ${edge} in from the edge where a ${fastener.name} wants ${wanted.toFixed(2)} in: use screws under 1/4 in, or ${across ? 'fasten into plates or a band' : 'thinner ones'}.`,
        ),
      };
    }
    const rows = t.fastener.rows;
    if (side.section.d < 2 * 1.5 * fastener.D + (rows - 1) * 1.5 * fastener.D) {
      return {
        finding: failed('NDS 2018 Table 12.5.1C', `${side.name} is too narrow for ${rows} rows of ${fastener.name}s.`),
      };
    }
  }
  if (CdeltaSpacing(t.fastener.spacing, fastener.D) === undefined) {
    return { finding: failed('NDS 2018 Table 12.5.1B', `The fasteners of ${t.mark} stand closer than 3 diameters.`) };
  }
  const places = Math.floor((t.to - t.from) / t.fastener.spacing + 1e-6) + 1;
  return {
    fastener,
    side: side.section,
    sideName: side.name,
    thetaSide: roof.ridgeAxis === 'y' ? roof.slope : 0,
    thetaMain: across ? Math.PI / 2 : 0,
    ls,
    p,
    lm,
    threads: Math.max(0, threads),
    places,
  };
}

export interface TieValues {
  /** Along the wall, and out of it, lb a fastener, load duration 1. */
  readonly lateral: number;
  readonly pull: number;
}

/** Allowable loads of one fastener with all factors but duration. */
export function tieValues(t: HouseTie, j: TieJoint, rec?: Recorder): TieValues {
  const { fastener: f, side } = j;
  const kind = t.fastener.kind === 'lag' ? 'lag' : 'wood-screw';
  const Dr = f.Dr ?? f.D;
  const Fem = dowelBearing(t.G, f.D, j.thetaMain, false, rec);
  const Fes = dowelBearing(side.values.G, f.D, j.thetaSide, false, rec);
  const { Z } = lateralValueGap(
    { D: Dr, nominalD: f.D, lm: j.lm, ls: j.ls, Fem, Fes, Fyb: f.Fyb, thetaMax: Math.max(j.thetaMain, j.thetaSide) },
    t.gap,
    rec,
  );
  const moisture = { wetAtFabrication: false, wetInService: side.wet };
  const main = t.into === 'band' ? TWO_BY * BAND_DEPTH : 2 * TWO_BY * 3.5;
  const group = Cg(
    j.places,
    t.fastener.spacing,
    f.D,
    HOUSE_E * main,
    side.values.E * side.b * side.d,
    slipModulus(f.D, false),
    rec,
  );
  const depth = penetrationFactor(kind, j.lm, f.D, rec) ?? 0;
  const factors = {
    CM: CMConnection('dowel-lateral', moisture, f.D, true, rec),
    Cg: group,
    Cdelta: CdeltaSpacing(t.fastener.spacing, f.D) ?? 0,
  };
  const lateral = depth * adjustedZ(Z, factors, rec);
  const perInch = adjustedW(
    W(kind, t.G, f.D, rec),
    { CM: CMConnection('lag-or-screw-withdrawal', moisture, f.D, true) },
    rec,
  );
  const withdrawal = perInch * j.threads;
  rec?.step({
    symbol: "W'p",
    meaning: `withdrawal of ${j.threads.toFixed(2)} in of thread in the framing of the house`,
    formula: "W' · p",
    substituted: `${perInch.toFixed(1)} · ${j.threads.toFixed(2)}`,
    value: withdrawal,
    unit: 'lb',
    clause: 'NDS 2018 Table 11.3.1',
    from: [t.path],
    note: 'without CD, which each combination brings; thread and tip lengths recalled from memory: confirm',
  });
  // A lag's washer does not pull through; a screw's head is about twice its shank (recalled).
  const pull = kind === 'lag' ? withdrawal : Math.min(withdrawal, headPullThrough(side.values.G, 2 * f.D, j.ls, rec));
  return { lateral, pull };
}
