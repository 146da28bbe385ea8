/** Colours of paper and ink on the screen. Prints are black on white; the screen has one accent, for new work. */
import { FILLS, INKS, PENS } from '../../../src/drawing.js';

export interface Ink {
  readonly paper: string;
  readonly pen: Readonly<Record<string, string>>;
  readonly fill: Readonly<Record<string, string>>;
  readonly text: Readonly<Record<string, string>>;
  readonly accent: string;
}

type Rgb = readonly [number, number, number];

const css = (c: Rgb): string => `rgb(${c.map(Math.round).join(' ')})`;
const mix = (a: Rgb, b: Rgb, t: number): Rgb => [0, 1, 2].map((i) => a[i]! + (b[i]! - a[i]!) * t) as unknown as Rgb;

const NEW: ReadonlySet<string> = new Set(['new', 'new-fine', 'cut']);

function inkOf(paper: Rgb, ink: Rgb, accent: Rgb): Ink {
  const greys = (t: Readonly<Record<string, number>>) =>
    Object.fromEntries(Object.entries(t).map(([k, g]) => [k, css(mix(ink, paper, g))]));
  return {
    paper: css(paper),
    accent: css(accent),
    pen: Object.fromEntries(
      Object.entries(PENS).map(([name, p]) => [
        name,
        css(NEW.has(name) ? accent : mix(ink, paper, 'grey' in p ? (p.grey as number) : 0)),
      ]),
    ),
    fill: greys(FILLS),
    text: greys(INKS),
  };
}

export const LIGHT = inkOf([253, 250, 243], [26, 40, 56], [158, 58, 32]);
export const DARK = inkOf([30, 33, 38], [222, 224, 222], [232, 138, 104]);
