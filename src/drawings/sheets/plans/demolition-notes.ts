/** Keyed notes of the existing and demolition plan, from what the file states and from what the new work cuts. */
import { centroid, contains } from '../../../base/plane.js';
import type { Vec2 } from '../../../base/vec.js';
import type { WallPlaced } from '../../../structure/model.js';
import type { LayerName } from '../../ir/index.js';
import type { DrawingInput } from '../contract.js';
import { WALL } from '../plan-base.js';

export interface KeyedNote {
  readonly number: number;
  readonly text: string;
  /** Points its tags stand at. */
  readonly places: readonly Vec2[];
  /** Rings drawn as removed. */
  readonly cuts: readonly (readonly Vec2[])[];
  readonly layer: LayerName;
  readonly mark?: string;
  /** Places along the wall the cover faces that its string shows, x in house axes. */
  readonly stations?: readonly number[];
}

type Draft = Omit<KeyedNote, 'number'>;

const square = (at: Vec2, size: number): Vec2[] => {
  const r = size / 2;
  return [
    { x: at.x - r, y: at.y - r },
    { x: at.x + r, y: at.y - r },
    { x: at.x + r, y: at.y + r },
    { x: at.x - r, y: at.y + r },
  ];
};

/** Strip of a wall's outer skin between two distances along it. */
function strip(w: WallPlaced, a: number, b: number): Vec2[] {
  const size = Math.hypot(w.end.x - w.start.x, w.end.y - w.start.y);
  const u = { x: (w.end.x - w.start.x) / size, y: (w.end.y - w.start.y) / size };
  const at = (s: number, out: number): Vec2 => ({
    x: w.start.x + u.x * s + w.out.x * out,
    y: w.start.y + u.y * s + w.out.y * out,
  });
  return [at(a, -WALL / 3), at(b, -WALL / 3), at(b, WALL / 3), at(a, WALL / 3)];
}

/** The wall line the cover faces. */
const faced = (w: WallPlaced): boolean => Math.abs(w.start.y) < 1 && Math.abs(w.end.y) < 1;

/** Distances along a wall of two places given by the axis the wall runs in. */
function alongWall(w: WallPlaced, from: number, to: number): readonly [number, number] {
  const axis = Math.abs(w.end.x - w.start.x) >= Math.abs(w.end.y - w.start.y) ? 'x' : 'y';
  const d = [from, to].map((v) => Math.abs(v - w.start[axis])).sort((a, b) => a - b);
  return [d[0]!, d[1]!];
}

function slabDrafts({ structure }: DrawingInput, len: (v: number) => string): Draft[] {
  const drafts: Draft[] = [];
  for (const s of structure.slabs) {
    if (s.state === 'new') continue;
    const goes = s.state === 'removed';
    // Clear of the holes cut for footings, where it can.
    const c = centroid(s.outline);
    const far = s.outline.reduce((a, b) => (b.y > a.y || (b.y === a.y && b.x > a.x) ? b : a));
    const spots = [
      [0.3, 0.85],
      [0.5, 0.5],
      [0, 0.85],
      [0.7, 0.3],
    ].map(([u, v]) => ({ x: c.x + u! * (far.x - c.x), y: c.y + v! * (far.y - c.y) }));
    const free = spots.find((p) => structure.footings.every((f) => Math.hypot(f.at.x - p.x, f.at.y - p.y) > f.size));
    drafts.push({
      text: goes
        ? `Slab ${s.mark}, ${len(s.thickness)}: break out and remove with its base as far as the new work asks.`
        : `Slab ${s.mark}, ${len(s.thickness)}: stays. Protect it; it carries no post of the new roof unless the footing plan says so.`,
      places: [free ?? c],
      cuts: [],
      layer: goes ? 'S-SLAB-DEMO' : 'S-SLAB-EXST',
      mark: s.mark,
    });
    if (goes) continue;
    const through = structure.footings.filter((f) => !f.onSlab && contains(s.outline, f.at, 1e-6));
    if (through.length > 0) {
      drafts.push({
        text: `Saw-cut slab ${s.mark} full depth at ${through.map((f) => f.mark).join(', ')} and lift the piece out: at least the footing’s own ${[...new Set(through.map((f) => len(f.size)))].join(' and ')} across, square. Dig by the footing plan.`,
        places: through.map((f) => f.at),
        cuts: through.map((f) => square(f.at, f.size)),
        layer: 'S-SLAB-DEMO',
      });
    }
  }
  return drafts;
}

function houseDrafts({ project, structure }: DrawingInput, len: (v: number) => string): Draft[] {
  const drafts: Draft[] = [];
  const open = (wall: number, from: number, to: number, what: string, mark: string): void => {
    const w = structure.walls[wall];
    if (!w) return;
    const [a, b] = alongWall(w, from, to);
    const ring = strip(w, a, b);
    const build = project.house.walls[wall]!.build.cladding.replace('-', ' ');
    drafts.push({
      text: `${what} on the ${w.name} wall: take the ${build} off down to the sheathing over ${len(b - a)}, wide enough for the flashing of the details. Studs and sheathing stay; show the framing to the inspector before it is covered.`,
      places: [{ x: ring[0]!.x + 0.25 * (ring[1]!.x - ring[0]!.x), y: ring[0]!.y + 0.25 * (ring[1]!.y - ring[0]!.y) }],
      cuts: [ring],
      layer: 'A-WALL-DEMO',
      mark,
      stations: faced(w) ? [ring[0]!.x, ring[1]!.x] : [],
    });
  };
  for (const l of project.cover.ledgers) open(l.wall, l.from, l.to, `Ledger ${l.mark}`, l.mark);
  for (const t of project.cover.houseTies ?? []) open(t.wall, t.from, t.to, `Tie line ${t.mark}`, t.mark);
  for (const b of project.cover.beams)
    for (const [key, at] of [
      ['start', b.from],
      ['end', b.to],
    ] as const) {
      const end = b.ends?.[key];
      const w = end && structure.walls[end.wall];
      if (!end || !w) continue;
      const along = Math.abs(w.end.x - w.start.x) >= Math.abs(w.end.y - w.start.y) ? at.x : at.y;
      const half = (structure.members.find((m) => m.mark === b.mark)?.section.width ?? 0) / 2;
      const [from, to] = alongWall(w, along - half, along + half);
      const ring = strip(w, from, to);
      drafts.push({
        text: `Beam ${b.mark} at the ${w.name} wall: open cladding, sheathing and finish where it and its post go in, no more than their details ask; cut no stud, plate or header beyond them.`,
        places: [{ x: (ring[0]!.x + ring[2]!.x) / 2, y: (ring[0]!.y + ring[2]!.y) / 2 }],
        cuts: [ring],
        layer: 'A-WALL-DEMO',
        mark: b.mark,
        stations: faced(w) ? [along] : [],
      });
    }
  return drafts;
}

function oldDrafts({ project }: DrawingInput, len: (v: number) => string): Draft[] {
  const things = project.patio.existing.map(
    (t): Draft => ({
      text:
        t.state === 'removed'
          ? `${cap(t.name)}: remove whole, with its fastenings and footings.`
          : `${cap(t.name)}: stays. Protect it.`,
      places: [t.outline.reduce((a, b) => (b.y - b.x > a.y - a.x ? b : a))].map((p) => inward(p, t.outline)),
      cuts: [],
      layer: t.state === 'removed' ? 'A-WALL-DEMO' : 'A-FLOR-EXST',
    }),
  );
  const flights = project.patio.steps
    .filter((s) => s.state !== 'new')
    .map(
      (s): Draft => ({
        text: `Steps, ${s.risers} risers, top ${len(s.top)} from the floor: ${s.state === 'removed' ? 'remove' : 'stay'}.`,
        places: [centroid(s.outline)],
        cuts: [],
        layer: 'A-FLOR',
      }),
    );
  return [...things, ...flights];
}

const cap = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);
const inward = (p: Vec2, outline: readonly Vec2[]): Vec2 => {
  const c = centroid(outline);
  return { x: p.x + 0.25 * (c.x - p.x), y: p.y + 0.25 * (c.y - p.y) };
};

/** All keyed notes in order; none where nothing stands and nothing is opened. */
export const keyedNotes = (input: DrawingInput, len: (inches: number) => string): KeyedNote[] =>
  [...slabDrafts(input, len), ...oldDrafts(input, len), ...houseDrafts(input, len)].map((d, i) => ({
    ...d,
    number: i + 1,
  }));
