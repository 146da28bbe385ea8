/** Effects along a beam, sampled from the solved frame. */
import type { BeamLineModel } from './frame-draft.js';
import { ON_NODE } from './frame-loads.js';
import { byCase, type SolvedFrame, solvesOf } from './frame-parts.js';
import type { MemberEffects } from './model.js';
import { makeTable } from './rows.js';
import { makeSamples, sampleElement } from './solver/index.js';
import { makeSpans } from './two-bearings.js';

/** Even divisions of a piece from support to support; of the shorter pieces between braces as well. */
const DIVISIONS = 12;
const DIVISIONS_FRAMED = 4;

/** Stations of one piece: even divisions, both faces of every point load, and the ends. Distances from the piece's start. */
function pieceStations(length: number, loads: readonly number[], divisions: number): number[] {
  const hair = 1e-9 * length;
  const at: number[] = [];
  for (let i = 0; i <= divisions; i++) at.push((length * i) / divisions);
  for (const x of loads) at.push(x, x + hair);
  at.sort((p, q) => p - q);
  return at.filter((x, i) => i === 0 || x - at[i - 1]! >= hair / 2);
}

/** `arm`: the axis above the level the frame has the beam at. The force along that level turns about the axis. */
export function beamEffects(beam: BeamLineModel, arm: number, solved: SolvedFrame): MemberEffects {
  const { frame, cases, results } = solved;
  const solves = solved.at(beam.held[0]!.node);
  const supports = [...beam.held].sort((p, q) => p.along - q.along);
  const spans = makeSpans(
    beam.length,
    supports.map((s) => s.along),
  );
  const spanAt = (x: number): number => {
    const i = spans.findIndex((s) => x < s.to);
    return i < 0 ? spans.length - 1 : i;
  };
  const parts = beam.pieces.map((piece) => {
    const loads = beam.loads
      .map((l) => l.lowerAlong - piece.from)
      .filter((x) => x > ON_NODE && x < piece.to - piece.from - ON_NODE);
    return {
      piece,
      x: pieceStations(piece.to - piece.from, loads, arm === 0 ? DIVISIONS : DIVISIONS_FRAMED),
      samples: makeSamples(0),
    };
  });
  for (const part of parts) part.samples = makeSamples(part.x.length);
  const count = parts.reduce((n, p) => n + p.x.length, 0);
  const stations = new Float64Array(count);
  const spanOf = new Int32Array(count);
  let k = 0;
  for (const { piece, x } of parts) {
    const span = spanAt((piece.from + piece.to) / 2);
    for (const at of x) {
      stations[k] = piece.from + at;
      spanOf[k++] = span;
    }
  }
  const own = cases.slice(0, solvesOf(solves));
  const row = (): Float64Array[] => makeTable(own.length, count);
  const out = { m: row(), v: row(), n: row(), mWeak: row(), vWeak: row(), sag: row() };
  const up = beam.member.up;
  own.forEach((c, i) => {
    const result = results[i]!;
    let at = 0;
    for (const { piece, x, samples: s } of parts) {
      sampleElement(frame, c, result, piece.element, x, s);
      for (let j = 0; j < x.length; j++, at++) {
        out.m[i]![at] = arm === 0 ? s.mz[j]! : s.mz[j]! + arm * s.n[j]!;
        out.v[i]![at] = -s.vy[j]!;
        out.n[i]![at] = s.n[j]!;
        out.mWeak[i]![at] = s.my[j]!;
        out.vWeak[i]![at] = s.vz[j]!;
        out.sag[i]![at] = -s.dy[j]!;
      }
    }
    // Sag counts from the line through the supports of its span; past the ends that line runs on.
    const sunk = supports.map(({ node }) => {
      const u = result.displacements;
      return -(u[6 * node]! * up.x + u[6 * node + 1]! * up.y + u[6 * node + 2]! * up.z);
    });
    const sag = out.sag[i]!;
    // Stations come in order, so the next support is found once.
    let b = 0;
    for (let j = 0; j < count; j++) {
      const x = stations[j]!;
      while (b < supports.length - 1 && x > supports[b]!.along) b++;
      const a = Math.max(0, b - 1);
      const hi = supports.length > 1 ? Math.max(b, 1) : 0;
      const run = supports[hi]!.along - supports[a]!.along;
      const t = run > 0 ? (x - supports[a]!.along) / run : 0;
      sag[j] = sag[j]! - (sunk[a]! + t * (sunk[hi]! - sunk[a]!));
    }
  });
  return { member: beam.member.id, stations, spanOf, spans, ...byCase(out, solves) };
}
