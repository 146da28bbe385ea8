/**
 * A new slope meeting an old one where the new ridge, level, runs straight up the old slope. Everything follows from two
 * rises over run and one height, by plane geometry; src/structure/tie-in/overlay-shape.test.ts proves each figure by
 * intersecting the planes themselves. A cricket is the same shape: its ridge runs from a wall up the slope that falls on it.
 *
 *        plan                          old slope rises to the right at `old`
 *   w ┌─────__  valley                 new ridge level, new slopes fall from it at `slope`
 *     │        ──__
 *     │ run x      ──__
 *   0 ╞═══ ridge ══════╧ run           x along the ridge from the start line, where the old slope lies `rise` below it
 */

export interface OverlayShape {
  /** Rise over run of the old slope and of the new ones; height of the new ridge over the old slope at the start line. */
  readonly old: number;
  readonly slope: number;
  readonly rise: number;
  /** Ridge from the start line to where it dies into the old slope. */
  readonly run: number;
  /** Level distance from the ridge to the valley's foot on the start line. */
  readonly halfWidth: number;
  /** Plan angle between new ridge and valley, radians: 45 degrees only where the slopes are equal. */
  readonly planAngle: number;
  /** True length of one valley, and its rise over its own plan run. */
  readonly valley: number;
  readonly valleySlope: number;
  /** Angle between the two planes, radians: bevel of the valley plate's outer edge. */
  readonly between: number;
  /** Angle between valley and the old slope's line of fall, measured on the old slope, radians. */
  readonly onOld: number;
}

/** Rises over run must be more than zero; lengths in any one unit. */
export function overlayShape(old: number, slope: number, rise: number): OverlayShape {
  const run = rise / old;
  const ratio = old / slope;
  return {
    old,
    slope,
    rise,
    run,
    halfWidth: rise / slope,
    planAngle: Math.atan(ratio),
    valley: run * Math.sqrt(1 + ratio * ratio + old * old),
    valleySlope: old / Math.sqrt(1 + ratio * ratio),
    between: Math.acos(1 / Math.sqrt((1 + old * old) * (1 + slope * slope))),
    onOld: Math.atan(ratio / Math.sqrt(1 + old * old)),
  };
}

/** Level run of the new slope from ridge to valley, `x` from the start line; nothing past the end of the ridge. */
export const runAt = (s: OverlayShape, x: number): number => Math.max(0, (s.rise - s.old * x) / s.slope);

/** By how much the level run of each fill rafter is shorter than that of the one before it. */
export const commonDifference = (s: OverlayShape, spacing: number): number => (spacing * s.old) / s.slope;

/** Cuts of every fill rafter, radians. */
export interface FillCuts {
  /** Plumb cut at the ridge, from square. */
  readonly plumb: number;
  /** Level seat on the valley plate, from the rafter's edge: the old slope is level along the rafter. */
  readonly seat: number;
  /** Tilt of the seat across the rafter's thickness: it lies on the old slope. */
  readonly bevel: number;
}

export const fillCuts = (s: Pick<OverlayShape, 'old' | 'slope'>): FillCuts => ({
  plumb: Math.atan(s.slope),
  seat: Math.atan(s.slope),
  bevel: Math.atan(s.old),
});

/**
 * How far from the valley line, on the old slope and square to the valley, a plate `thick` lies whose outer edge is bevelled
 * to the underside of new sheathing `sheathing` thick: its lower and its upper outer edge.
 */
export function plateSetback(between: number, thick: number, sheathing: number): { low: number; high: number } {
  const low = sheathing / Math.sin(between);
  return { low, high: low + thick / Math.tan(between) };
}
