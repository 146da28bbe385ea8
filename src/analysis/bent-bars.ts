/** Effects along posts that bend, struts and braces, sampled from the solved frame. */
import { distance } from '../base/vec.js';
import type { Member } from '../structure/model.js';
import type { BeamPiece } from './frame-draft.js';
import { byCase, type SolvedFrame, solvesOf } from './frame-parts.js';
import type { MemberEffects } from './model.js';
import { makeTable } from './rows.js';
import { makeSamples, sampleElement } from './solver/index.js';

/** Nothing but its own weight acts between the ends of a piece, so few stations tell its curves. */
const DIVISIONS = 2;

/**
 * `pieces` lie in a row; what lies beyond the member's ends (inside a post, a beam, the ground) is left out, except in the
 * one span's length, which runs between the working points. Sideways movement counts from the line through these.
 */
export function barEffects(member: Member, pieces: readonly BeamPiece[], solved: SolvedFrame): MemberEffects {
  const { frame, cases, results } = solved;
  const long = distance(member.start, member.end);
  const parts = pieces.flatMap((piece) => {
    const from = Math.max(piece.from, 0);
    const to = Math.min(piece.to, long);
    if (to - from < 1e-6) return [];
    const x = Array.from({ length: DIVISIONS + 1 }, (_, i) => from - piece.from + ((to - from) * i) / DIVISIONS);
    return [{ piece, x, samples: makeSamples(x.length) }];
  });
  const stations = Float64Array.from(parts.flatMap(({ piece, x }) => x.map((at) => piece.from + at)));
  const count = stations.length;
  const first = pieces[0]!;
  const last = pieces.at(-1)!;
  const a = frame.model.elements[first.element]!.start;
  const b = frame.model.elements[last.element]!.end;
  const solves = solved.at(a);
  const own = cases.slice(0, solvesOf(solves));
  const row = (): Float64Array[] => makeTable(own.length, count);
  const out = { m: row(), v: row(), n: row(), mWeak: row(), vWeak: row(), sag: row() };
  const working = last.to - first.from;
  const { up } = member;
  own.forEach((c, i) => {
    const result = results[i]!;
    const u = result.displacements;
    const moved = (node: number): number => u[6 * node]! * up.x + u[6 * node + 1]! * up.y + u[6 * node + 2]! * up.z;
    const [start, end] = [moved(a), moved(b)];
    let at = 0;
    for (const { piece, x, samples: s } of parts) {
      sampleElement(frame, c, result, piece.element, x, s);
      for (let j = 0; j < x.length; j++, at++) {
        const chord = start + ((end - start) * (piece.from + x[j]! - first.from)) / working;
        out.m[i]![at] = s.mz[j]!;
        out.v[i]![at] = -s.vy[j]!;
        out.n[i]![at] = s.n[j]!;
        out.mWeak[i]![at] = s.my[j]!;
        out.vWeak[i]![at] = s.vz[j]!;
        out.sag[i]![at] = chord - s.dy[j]!;
      }
    }
  });
  return {
    member: member.id,
    stations,
    spanOf: new Int32Array(count),
    spans: [{ from: 0, to: long, length: working, kind: 'span' }],
    ...byCase(out, solves),
  };
}
