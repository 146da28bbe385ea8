/**
 * Horizontal wind along the ridge of a gabled open roof (ASCE 7-16 28.3.5, 7-22 28.3.7). The free-roof figures press square to
 * the roof planes, so wind along the ridge leaves them without a sideways force; gable ends, beam ends, posts and frames
 * are pushed all the same. The clause's force acts together with the free-roof pressures of the same direction.
 * The whole force is held at roof level, as the least wind is: none is left to go straight to the ground.
 */
import { makeRecorder, type Recorder } from '../base/trace.js';
import type { Project } from '../project/model.js';
import type { RoofPlaced, Structure } from '../structure/model.js';
import { type Ledger, noteSteps } from './basis.js';
import {
  asce,
  elevationKe,
  exposureKzChapter28,
  isOutOfScope,
  KD_BUILDINGS,
  longitudinalWind,
  type OutOfScope,
  velocityPressure,
} from './codes/asce7/index.js';
import { areaAgainst, type Below, skyline } from './minimum-wind.js';
import type { LoadCase, WindDirection } from './model.js';
import { heading } from './wind-plan.js';

/** Share of an open gable taken as solid, for its framing and the frames behind it. Our own figure, no source. */
const OPEN_SHARE = 0.5;
/** Posts nearer than this along the ridge stand in one frame, inches. */
const ONE_FRAME = 12;

const ft2 = (area: number): string => (area / 144).toFixed(2);

/** Lines of posts across the ridge. */
function frameLines(below: Below, axis: 'x' | 'y'): number {
  const at = below.posts.map((p) => p.start[axis]).sort((a, b) => a - b);
  return at.filter((a, i) => i === 0 || a - at[i - 1]! > ONE_FRAME).length;
}

/** Height of the lowest eave above the lowest ground at the roof's corners, inches. */
function eaveHeight(structure: Structure, roof: RoofPlaced): number {
  const { z0, gx, gy } = structure.grade;
  const xs = [roof.min.x, roof.max.x];
  const ys = [roof.min.y, roof.max.y];
  return roof.lowestEave - Math.min(...xs.flatMap((x) => ys.map((y) => z0 + gx * x + gy * y)));
}

/** Force on one gabled roof in lb, either way along its ridge; with a recorder, said step by step. */
export function gableForce(
  project: Project,
  structure: Structure,
  roof: RoofPlaced,
  below: Below,
  rec?: Recorder,
): number | OutOfScope {
  const { wind, codes } = project.basis;
  const edition = codes.loads;
  const clause = asce(edition, edition === '7-16' ? '28.3.5' : '28.3.7');
  const Kz = exposureKzChapter28(roof.meanHeight, wind.exposure.value, edition, rec);
  if (isOutOfScope(Kz)) return Kz;
  const Ke = elevationKe(wind.elevation, edition);
  const qh = velocityPressure(
    { Kz, Kzt: wind.topographic.value, Kd: KD_BUILDINGS, Ke, V: wind.speed.value },
    edition,
    rec,
  );
  const along: WindDirection = roof.ridgeAxis === 'x' ? '+x' : '+y';
  const B = roof.ridgeAxis === 'x' ? roof.max.y - roof.min.y : roof.max.x - roof.min.x;
  const length = roof.ridgeAxis === 'x' ? roof.max.x - roof.min.x : roof.max.y - roof.min.y;
  const rise = roof.highestPoint - roof.lowestEave;
  const eave = eaveHeight(structure, roof);
  const gable = skyline(roof, along, B);
  const AE = B * eave + gable;
  const said = project.cover.roofs.find((r) => r.mark === roof.mark)?.finish.gableEnd;
  const open = said === 'open';
  const lines = frameLines(below, roof.ridgeAxis);
  // Of the posts only one frame's stand in the end, the widest and longest; the others are behind it, which KS answers for.
  const perFrame = Math.ceil(below.posts.length / Math.max(1, lines));
  const face = (p: Below['posts'][number]): number => p.section.width * p.length;
  const ofOne = { ...below, posts: [...below.posts].sort((p, q) => face(q) - face(p)).slice(0, perFrame) };
  const solid = areaAgainst(roof, along, ofOne);
  const band = Math.max(0, roof.lowestEave - below.underside) * B;
  const AS = Math.min(AE, solid - (open ? (1 - OPEN_SHARE) * gable : 0));
  const n = Math.max(3, lines);
  rec?.step({
    symbol: 'AE',
    meaning: 'area of the end wall as if enclosed: eaves’ width by eave height, and the gable',
    formula: 'B · he + B · rise / 2',
    substituted: `${(B / 12).toFixed(2)} · ${(eave / 12).toFixed(2)} + ${(B / 12).toFixed(2)} · ${(rise / 12).toFixed(2)} / 2`,
    value: AE / 144,
    unit: 'ft²',
    clause,
    from: [roof.path],
  });
  rec?.step({
    symbol: 'AS',
    meaning: `solid area of the end, gable ${open ? 'open, half of it counted for framing (own figure, no source)' : said ? 'closed' : 'taken as closed, the harder case: whether it is open is not stated'}: gable, band down to the beams’ underside, posts of one frame`,
    formula: open ? 'gable / 2 + band + posts' : 'gable + band + posts',
    substituted: `${ft2(open ? gable / 2 : gable)} + ${ft2(band)} + ${ft2(solid - gable - band)}`,
    value: AS / 144,
    unit: 'ft²',
    clause,
    from: [`${roof.path}/finish${said ? '/gableEnd' : ''}`],
  });
  const found = longitudinalWind(
    {
      qh,
      Kd: KD_BUILDINGS,
      theta: roof.slope,
      B,
      leastDimension: Math.min(B, length),
      h: roof.meanHeight,
      eaveHeight: eave,
      n,
      AS,
      AE,
    },
    edition,
    rec,
  );
  return isOutOfScope(found) ? found : found.F;
}

/** The force of one direction along the ridge of a gabled roof, as a case carries it; its rows are written once a roof. */
export function gableSide(
  project: Project,
  structure: Structure,
  roof: RoofPlaced,
  below: Below,
  d: WindDirection,
  ledger: Ledger,
): LoadCase['side'] {
  const rec = d.startsWith('+') ? makeRecorder() : undefined;
  const F = gableForce(project, structure, roof, below, rec);
  if (isOutOfScope(F)) {
    const about = `wind on ${roof.mark} along its ridge`;
    if (!ledger.outside.some((o) => o.about === about))
      ledger.outside.push({ about, why: `${F.reason} (${F.clause}): needs a licensed professional` });
    return [];
  }
  if (rec) noteSteps(ledger, rec.lines, `${roof.mark}, wind along the ridge`, [roof.path]);
  const h = heading(d);
  return [
    {
      roof: roof.mark,
      at: {
        x: (roof.min.x + roof.max.x) / 2,
        y: (roof.min.y + roof.max.y) / 2,
        z: (below.underside + roof.highestPoint) / 2,
      },
      force: { x: F * h.x, y: F * h.y, z: 0 },
      why: 'wind along the ridge on gable ends, frames and posts (ASCE 7-16 28.3.5, 7-22 28.3.7)',
    },
  ];
}
