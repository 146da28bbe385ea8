/** Where one looks on a sheet: paper inches at the middle of the window, and screen pixels for each of them. */
export interface Camera {
  readonly x: number;
  readonly y: number;
  readonly zoom: number;
}

export interface Size {
  readonly w: number;
  readonly h: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

export const toScreen = (c: Camera, size: Size, p: Point): Point => ({
  x: size.w / 2 + (p.x - c.x) * c.zoom,
  y: size.h / 2 - (p.y - c.y) * c.zoom,
});

export const toPaper = (c: Camera, size: Size, p: Point): Point => ({
  x: c.x + (p.x - size.w / 2) / c.zoom,
  y: c.y - (p.y - size.h / 2) / c.zoom,
});

/** Shows a rectangle of the paper with a little room round it. */
export function fitted(size: Size, [x0, y0, x1, y1]: readonly [number, number, number, number], pad = 12): Camera {
  const zoom = Math.min((size.w - 2 * pad) / (x1 - x0), (size.h - 2 * pad) / (y1 - y0));
  return { x: (x0 + x1) / 2, y: (y0 + y1) / 2, zoom: Math.max(2, zoom) };
}

/** Zooms about a point of the screen, which stays where it is. */
export function zoomAt(c: Camera, size: Size, at: Point, factor: number): Camera {
  const p = toPaper(c, size, at);
  const zoom = Math.min(900, Math.max(6, c.zoom * factor));
  return { zoom, x: p.x - (at.x - size.w / 2) / zoom, y: p.y + (at.y - size.h / 2) / zoom };
}

export const panned = (c: Camera, dx: number, dy: number): Camera => ({
  ...c,
  x: c.x - dx / c.zoom,
  y: c.y + dy / c.zoom,
});

/** Step that a dragged value snaps to, model inches, by how large a model inch is on the screen; `fine` halves an inch. */
export function snapStep(pixelsPerInch: number, fine: boolean): number {
  if (fine || pixelsPerInch >= 5) return 0.5;
  return pixelsPerInch >= 0.75 ? 1 : 12;
}
