/**
 * The bars of a footing as they must lie so that the calculation holds: read from the steel the file names, placed in the
 * placed concrete with the cover and the hooks of the calculation. Inches.
 */
import type { Vec2 } from '../../base/vec.js';
import type { Footing } from '../../structure/model.js';
import { BAR_YIELD, EARTH_COVER, hookLength, TIE } from '../codes/aci-318-14/index.js';

export { EARTH_COVER };

/** Cover between the ends of upright bars and the top of the pier, inches. ACI 318-14 20.6.1.3.1, recalled. */
export const TOP_COVER = 2;
/** Lap of a ring tie over itself, inches. Common practice, no source: the office's detail governs. */
export const TIE_LAP = 8;
/** Grade of the bars the calculation takes, ksi. */
export const BAR_GRADE = BAR_YIELD / 1000;

const EACH_WAY = /\((\d+)\)\s*#(\d+)\s+each way/i;
const VERTICAL = /\((\d+)\)\s*#(\d+)\s+vertical/i;
const TIES = /#(\d+)\s+ties\s+at\s+(\d+(?:\.\d+)?)\s*in/i;

interface Bar {
  /** Bar number, eighths of an inch, and its diameter. */
  readonly bar: number;
  readonly diameter: number;
  readonly count: number;
}

/** Bars of the pad in two layers, `count` in each direction. */
export interface Mat extends Bar {
  readonly length: number;
  readonly spacing: number;
}

/** A standard hook of 90 degrees that turns outward in the pad. ACI 318-14 Table 25.3.1, recalled. */
export interface Hook {
  /** From the back of the upright to the end of the leg. */
  readonly leg: number;
  /** Least inside diameter of the bend. */
  readonly bend: number;
  /** Pad over the underside of the hook, and the length the calculation wants for the full yield. */
  readonly room: number;
  readonly need: number;
  /** The leg keeps its cover at the side of the pad. */
  readonly fits: boolean;
}

export interface Uprights extends Bar {
  /** Radius of the ring through their centres. */
  readonly ring: number;
  /** z of their lower and upper ends. */
  readonly foot: number;
  readonly head: number;
  /** Length of the straight part between them. */
  readonly height: number;
  readonly hook: Hook | undefined;
  /** Straight stock for one bar: height and leg; the bend takes a little less. */
  readonly stock: number;
}

export interface Ties extends Bar {
  readonly spacing: number;
  /** Outside diameter of the ring. */
  readonly outside: number;
  /** z of each, from the top. */
  readonly at: readonly number[];
  /** Straight stock for one, with its lap. */
  readonly stock: number;
}

export interface LaidSteel {
  readonly mat: Mat | undefined;
  readonly uprights: Uprights | undefined;
  readonly ties: Ties | undefined;
}

const barOf = (number: string | undefined, count: string | undefined): Bar => ({
  bar: Number(number),
  diameter: Number(number) / 8,
  count: Number(count),
});

/** Direction of each upright from the middle, turned half a step so that four legs point to the corners of the pad. */
export const uprightTurns = (count: number): Vec2[] =>
  Array.from({ length: count }, (_, i) => {
    const a = (2 * Math.PI * (i + 0.5)) / count;
    return { x: Math.cos(a), y: Math.sin(a) };
  });

function hookOf(f: Footing, { bar, count, diameter: db }: Bar, ring: number): Hook | undefined {
  if (f.padThickness <= 0) return undefined;
  // Inside diameter 6·db to #8, extension 12·db past the bend; the calculation knows no larger bars.
  const bend = (bar <= 8 ? 6 : 8) * db;
  const leg = 12 * db + bend / 2 + db;
  const reach = ring - db / 2 + leg;
  // Toward a side of a square pad only a part of the reach counts.
  const toSide = f.round ? 1 : Math.max(...uprightTurns(count).map((t) => Math.max(Math.abs(t.x), Math.abs(t.y))));
  return {
    bend,
    leg,
    room: f.padThickness - EARTH_COVER,
    need: hookLength(f.fc, db),
    fits: reach * toSide + (f.round ? 0 : db / 2) <= f.size / 2 - EARTH_COVER + 1e-9,
  };
}

/** What the steel of a footing says in the forms the calculation knows; undefined parts are not said there. */
export function laidSteel(f: Footing): LaidSteel {
  const each = f.padThickness > 0 || f.pierDiameter <= 0 ? EACH_WAY.exec(f.steel) : null;
  const mat = each ? barOf(each[2], each[1]) : undefined;
  const length = f.size - 2 * EARTH_COVER;
  const vertical = f.pierDiameter > 0 && !f.embedded ? VERTICAL.exec(f.steel) : null;
  const up = vertical ? barOf(vertical[2], vertical[1]) : undefined;
  const ring = up ? f.pierDiameter / 2 - EARTH_COVER - TIE - up.diameter / 2 : 0;
  const hook = up && hookOf(f, up, ring);
  const [foot, head] = [f.bottom + EARTH_COVER, f.top - TOP_COVER];
  const tied = f.pierDiameter > 0 && !f.embedded ? TIES.exec(f.steel) : null;
  const spacing = Number(tied?.[2]);
  const low = f.bottom + Math.max(f.padThickness, EARTH_COVER);
  const count = tied && spacing > 0 ? Math.floor(Math.max(0, head - low) / spacing) + 1 : 0;
  const tie = tied ? barOf(tied[1], String(count)) : undefined;
  const outside = f.pierDiameter - 2 * EARTH_COVER;
  return {
    mat:
      mat && mat.count > 0 && length > 0
        ? { ...mat, length, spacing: mat.count > 1 ? (length - mat.diameter) / (mat.count - 1) : 0 }
        : undefined,
    uprights:
      up && up.count > 0 && ring > 0 && head > foot
        ? { ...up, ring, foot, head, height: head - foot, hook, stock: head - foot + (hook?.leg ?? 0) }
        : undefined,
    ties:
      tie && count > 0 && outside > 0
        ? {
            ...tie,
            spacing,
            outside,
            at: Array.from({ length: count }, (_, i) => head - i * spacing),
            stock: Math.PI * outside + TIE_LAP,
          }
        : undefined,
  };
}
