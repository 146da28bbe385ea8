/** Symbols of the electrical plan, drawn for this program in the trade's plain forms; the legend on the sheet shows them. */
import type { Device, DeviceKind } from '../../../project/model.js';
import { type Pencil, pencil } from '../../annotate/index.js';
import type { LayerName, Primitive } from '../../ir/index.js';

interface Symbol {
  readonly means: string;
  readonly layer: LayerName;
  readonly draw: (p: Pencil, r: number) => readonly Primitive[];
}

const ring = (p: Pencil, r: number): Primitive => p.circle(0, 0, r, 'symbol', 'paper');
const box = (p: Pencil, x: number, y: number, fill: 'paper' | 'ink' = 'paper'): Primitive =>
  p.shape(
    [
      [-x, -y],
      [x, -y],
      [x, y],
      [-x, y],
    ],
    'symbol',
    fill,
  );

export const SYMBOLS: Readonly<Record<DeviceKind, Symbol>> = {
  receptacle: {
    means: 'receptacle, weather-resistant, with ground-fault protection',
    layer: 'E-POWR',
    draw: (p, r) => [
      ring(p, r),
      p.line(-0.35 * r, -1.5 * r, -0.35 * r, 1.5 * r),
      p.line(0.35 * r, -1.5 * r, 0.35 * r, 1.5 * r),
    ],
  },
  switch: {
    means: 'switch',
    layer: 'E-LITE',
    draw: (p, r) => [p.text(0, 0, 'S', 2 * r, { face: 'bold', align: 'center', valign: 'middle', mask: true })],
  },
  light: {
    means: 'light',
    layer: 'E-LITE',
    draw: (p, r) => {
      const k = r * Math.SQRT1_2;
      return [ring(p, r), p.line(-k, -k, k, k), p.line(-k, k, k, -k)];
    },
  },
  fan: {
    means: 'box rated to carry a fan, with the fan',
    layer: 'E-LITE',
    draw: (p, r) => [
      ...[0, 1, 2, 3].map((i) => {
        const a = Math.PI / 4 + (i * Math.PI) / 2;
        const at = (u: number, v: number): readonly [number, number] => [
          u * Math.cos(a) - v * Math.sin(a),
          u * Math.sin(a) + v * Math.cos(a),
        ];
        return p.shape(
          [at(0.5 * r, -0.25 * r), at(2 * r, -0.45 * r), at(2 * r, 0.45 * r), at(0.5 * r, 0.25 * r)],
          'symbol',
          'paper',
        );
      }),
      p.circle(0, 0, 0.6 * r, 'symbol', 'ink'),
    ],
  },
  junction: {
    means: 'junction box, listed for the place',
    layer: 'E-POWR',
    draw: (p, r) => [
      ring(p, r),
      p.text(0, 0, 'J', 1.1 * r, { face: 'condensed-bold', align: 'center', valign: 'middle' }),
    ],
  },
  panel: { means: 'panel', layer: 'E-POWR', draw: (p, r) => [box(p, 1.6 * r, 0.6 * r, 'ink')] },
  disconnect: {
    means: 'disconnect',
    layer: 'E-POWR',
    draw: (p, r) => [box(p, r, r), p.line(-r, -r, r, r)],
  },
};

/** Symbol of a device at its place; what is removed is struck out. Paper radius `r`. */
export function deviceSymbol(d: Pick<Device, 'kind' | 'at' | 'state' | 'mark' | 'path'>, r: number): Primitive {
  const s = SYMBOLS[d.kind];
  const p = pencil(s.layer);
  return {
    kind: 'symbol',
    layer: s.layer,
    at: d.at,
    mark: d.mark,
    path: d.path,
    items: [
      ...s.draw(p, r),
      ...(d.state === 'removed'
        ? [p.line(-1.5 * r, -1.5 * r, 1.5 * r, 1.5 * r, 'cut'), p.line(-1.5 * r, 1.5 * r, 1.5 * r, -1.5 * r, 'cut')]
        : []),
    ],
  };
}
