/** Property lines with bearing and distance, corners with their elevation. */
import { formatBearing, formatNumber } from '../../../base/quantity/index.js';
import type { Primitive } from '../../ir/index.js';
import type { SheetContext } from '../contract.js';
import { between, feet, type Lettering, middle, readable, word } from './words.js';

export function boundaryLines(ctx: SheetContext): Primitive[] {
  const { lot } = ctx.input;
  const h = ctx.style.note;
  return [
    { kind: 'polyline', layer: 'C-PROP', pen: 'property', points: lot.corners, closed: true },
    ...lot.corners.map(
      (at): Primitive => ({
        kind: 'symbol',
        layer: 'C-PROP',
        at,
        items: [
          { kind: 'circle', layer: 'C-PROP', center: { x: 0, y: 0 }, radius: h * 0.4, pen: 'symbol', fill: 'paper' },
        ],
      }),
    ),
  ];
}

/** Bearing and distance outside each line, over its name. Set first: they have one place. */
export function boundaryWords(ctx: SheetContext, over: Primitive[]): void {
  const { lot } = ctx.input;
  const h = ctx.style.note;
  for (const l of lot.lines) {
    const read = readable(Math.atan2(l.end.y - l.start.y, l.end.x - l.start.x));
    const up = { x: -Math.sin(read), y: Math.cos(read) };
    const sign = up.x * l.inward.x + up.y * l.inward.y <= 0 ? 1 : -1;
    const text = (content: string, rows: number, face?: 'bold'): Primitive => ({
      kind: 'text',
      layer: 'C-ANNO-NOTE',
      at: { x: up.x * sign * h * rows, y: up.y * sign * h * rows },
      content,
      height: h,
      angle: read,
      align: 'center',
      valign: 'middle',
      mask: true,
      ...(face && { face }),
    });
    over.push({
      kind: 'symbol',
      layer: 'C-ANNO-NOTE',
      // Side lines are labelled off their middle, where house and new roof are labelled too.
      at: l.yard === 'front' || l.yard === 'rear' ? middle(l.start, l.end) : between(l.start, l.end, 0.25),
      path: l.path,
      items: [
        text(`${formatBearing(l.azimuth)}   ${feet(l.distance)}`, 1.6, 'bold'),
        text(`${l.name}, ${l.yard} yard`, 3.5),
      ],
    });
  }
}

/** Elevations of the corners that have one. */
export function cornerElevations(ctx: SheetContext, l: Lettering): void {
  const h = ctx.style.note;
  ctx.input.project.lot.courses.forEach((c, i) => {
    const at = ctx.input.lot.corners[i];
    if (c.elevation === undefined || !at) return;
    const w = {
      content: `el. ${formatNumber(c.elevation / 12, 1)}'`,
      layer: 'C-TOPO' as const,
      path: `${c.path}/elevation`,
    };
    const ways = [
      [4, 1.6],
      [-4, 1.6],
      [4, -1.6],
      [-4, -1.6],
      [0, 5.4],
      [0, -5.4],
    ] as const;
    l.set(
      w,
      at,
      ways.map(([x, y]) => word(w, at, h, x * h, y * h)),
    );
  });
}
