import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';

/**
 * Strength against one row of fasteners tearing out along the grain, lb: n·Fv'·t·s, `s` the least of the end distance
 * and the spacing in the row, `t` the thickness of the member, in. NDS 2018 E.3.
 */
export function rowTearOut(n: number, FvAdj: number, t: number, s: number, rec?: Recorder): number {
  const value = n * FvAdj * t * s;
  rec?.step({
    symbol: "ZRT'",
    meaning: 'strength of one row against tearing out',
    formula: "n·Fv'·t·s,least",
    substituted: `${n}·${say(FvAdj)}·${say(t)}·${say(s)}`,
    value,
    unit: 'lb',
    clause: 'NDS 2018 E.3',
  });
  return value;
}

/**
 * Strength against a whole group tearing out, lb: half of the first and of the last row's tear-out and the tension across
 * the net area between them, in². NDS 2018 E.4.
 */
export function groupTearOut(first: number, last: number, FtAdj: number, netArea: number, rec?: Recorder): number {
  const value = first / 2 + last / 2 + FtAdj * netArea;
  rec?.step({
    symbol: "ZGT'",
    meaning: 'strength of the group against tearing out',
    formula: "ZRT'first / 2 + ZRT'last / 2 + Ft'·A,net",
    substituted: `${say(first)} / 2 + ${say(last)} / 2 + ${say(FtAdj)}·${say(netArea)}`,
    value,
    unit: 'lb',
    clause: 'NDS 2018 E.4',
  });
  return value;
}

/** Net area left by holes 1/16 in. over the fastener, in²; none for D under 1/4 in. NDS 2018 3.1.2, 12.1.3.2 (hole size recalled). */
export function netSection(b: number, d: number, holes: number, D: number, rec?: Recorder): number {
  const value = D < 0.25 ? b * d : Math.max(0, b * (d - holes * (D + 1 / 16)));
  rec?.step({
    symbol: 'An',
    meaning: 'net area of the member at the fasteners',
    formula: D < 0.25 ? 'b·d' : 'b·(d − n·(D + 1/16))',
    substituted: D < 0.25 ? `${say(b)}·${say(d)}` : `${say(b)}·(${say(d)} − ${holes}·(${say(D)} + 0.0625))`,
    value,
    unit: 'in²',
    clause: 'NDS 2018 3.1.2',
  });
  return value;
}
