/** What the finite-element program found, kept as data; and how it is read out of the program's printed tables. */
import type { Vec3 } from '../../../src/base/vec.js';
import { dot, sub } from '../../../src/base/vec.js';
import type { FrameCaseData } from './frame-cases.js';
import { axesOf, deckOf } from './frame-deck.js';

export interface SectionForces {
  readonly member: string;
  /** in, from the start of the member: the first and the last cross-section where the program integrates stress. */
  readonly distance: number;
  /** Signs as in src/analysis/solver/model.ts; lb and lb-in. */
  readonly n: number;
  readonly vy: number;
  readonly vz: number;
  readonly my: number;
  readonly mz: number;
}

export interface FrameReference {
  readonly name: string;
  readonly program: string;
  /** in, by joint, and by member for its middle. */
  readonly displacements: Readonly<Record<string, readonly [number, number, number]>>;
  /** lb, at supports that hold no rotation (the program's own reactions at clamped knots mix in the moment). */
  readonly reactions: Readonly<Record<string, readonly [number, number, number]>>;
  readonly sections: readonly SectionForces[];
}

/** Rows of a printed table that starts at the first line holding `title`. */
function table(text: string, title: string): number[][] {
  const lines = text.split('\n');
  const from = lines.findIndex((l) => l.includes(title));
  if (from < 0) throw new Error(`no table of ${title}`);
  const rows: number[][] = [];
  for (const line of lines.slice(from + 1)) {
    const cells = line.trim().split(/\s+/);
    if (cells[0] === '') continue;
    if (!/^\d+$/.test(cells[0]!)) break;
    rows.push(cells.map(Number));
  }
  return rows;
}

/** Without the noise of the program's own elimination. */
const tidy = (x: number, places: number): number => Number(x.toFixed(places)) + 0;

const triple = (r: readonly number[]): [number, number, number] => [r[1]!, r[2]!, r[3]!];

export function readResults(f: FrameCaseData, program: string, printed: string): FrameReference {
  const deck = deckOf(f);
  const moved = new Map(table(printed, 'displacements (').map((r) => [r[0]!, triple(r.map((x) => tidy(x, 10)))]));
  const reacted = new Map(table(printed, 'forces (').map((r) => [r[0]!, triple(r)]));
  // The first eight of the points printed for an element are those where the program integrates.
  const points = new Map<string, { s: number[]; p: Vec3 }>();
  const stress = table(printed, 'stresses (').filter((r) => r[1]! <= 8);
  const places = table(printed, 'global coordinates (').filter((r) => r[1]! <= 8);
  for (const [i, s] of stress.entries()) {
    const c = places[i]!;
    if (c[0] !== s[0] || c[1] !== s[1]) throw new Error('stresses and coordinates are not in step');
    points.set(`${s[0]} ${s[1]}`, { s: s.slice(2), p: { x: c[2]!, y: c[3]!, z: c[4]! } });
  }
  const sections: SectionForces[] = [];
  for (const m of f.members) {
    const a = axesOf(f, m);
    for (const [which, e] of deck.ends.get(m.name)!.entries()) {
      const eight = [1, 2, 3, 4, 5, 6, 7, 8].map((i) => {
        const { s, p } = points.get(`${e} ${i}`)!;
        const arm = sub(p, f.nodes[m.from]!);
        const [xx, yy, zz, xy, xz, yz] = s as [number, number, number, number, number, number];
        const pull = {
          x: xx * a.x.x + xy * a.x.y + xz * a.x.z,
          y: xy * a.x.x + yy * a.x.y + yz * a.x.z,
          z: xz * a.x.x + yz * a.x.y + zz * a.x.z,
        };
        return { x: dot(arm, a.x), y: dot(arm, a.y), z: dot(arm, a.z), pull };
      });
      eight.sort((p, q) => p.x - q.x);
      const four = which === 0 ? eight.slice(0, 4) : eight.slice(4);
      const part = (m.section[0] * m.section[1]) / 4;
      const force = (g: (p: (typeof four)[number]) => number): number =>
        tidy(
          four.reduce((t, p) => t + part * g(p), 0),
          5,
        );
      sections.push({
        member: m.name,
        distance: four.reduce((t, p) => t + p.x / 4, 0),
        n: force((p) => dot(p.pull, a.x)),
        vy: force((p) => dot(p.pull, a.y)),
        vz: force((p) => dot(p.pull, a.z)),
        my: force((p) => dot(p.pull, a.x) * p.z),
        mz: force((p) => -dot(p.pull, a.x) * p.y),
      });
    }
  }
  const pinned = f.held.filter((h) => h.freedoms.every((d) => d <= 3));
  return {
    name: f.name,
    program,
    displacements: Object.fromEntries(
      [...Object.keys(f.nodes), ...f.members.map((m) => m.name)].map((k) => [k, moved.get(deck.nodeNumber.get(k)!)!]),
    ),
    reactions: Object.fromEntries(
      pinned.map((h) => {
        // What the program prints at a supported node is the reaction and the load on that node together.
        const n = deck.nodeNumber.get(h.node)!;
        const put = deck.load.get(n) ?? [0, 0, 0];
        const [x, y, z] = reacted.get(n)!;
        return [h.node, [tidy(x - put[0], 5), tidy(y - put[1], 5), tidy(z - put[2], 5)] as const];
      }),
    ),
    sections,
  };
}
