import { formatLength } from '../../base/quantity/index.js';

export const len = (inches: number): string => formatLength(inches);

/** Sizes that are never split into feet: `37 5/8"`. */
export const inches = (x: number): string => formatLength(x, { style: 'inches' });

/** Two decimals and thousands: `1,234.50`. */
export const money = (x: number): string => {
  const [whole, cents] = Math.abs(x).toFixed(2).split('.');
  return `${x < 0 ? '–' : ''}${whole!.replaceAll(/\B(?=(\d{3})+$)/g, ',')}.${cents}`;
};

/** No more decimals than say something. */
export const number = (x: number): string => {
  const digits = x >= 100 ? 0 : x >= 10 ? 1 : 2;
  return String(Number(x.toFixed(digits)));
};

export const percent = (fraction: number): string => `${Number((100 * fraction).toFixed(fraction < 0.1 ? 1 : 0))} %`;

/** `F1–F6, P1, P3`: runs of one letter are drawn together. */
export function ranges(marks: readonly string[]): string {
  const out: string[] = [];
  let run: { letter: string; from: number; to: number } | undefined;
  const close = (): void => {
    if (!run) return;
    const { letter, from, to } = run;
    out.push(from === to ? `${letter}${from}` : `${letter}${from}${to === from + 1 ? ', ' : '–'}${letter}${to}`);
    run = undefined;
  };
  for (const mark of marks) {
    const m = /^(\D+)(\d+)$/.exec(mark);
    if (!m) {
      close();
      out.push(mark);
      continue;
    }
    const n = Number(m[2]);
    if (run && run.letter === m[1] && n === run.to + 1) run.to = n;
    else {
      close();
      run = { letter: m[1]!, from: n, to: n };
    }
  }
  close();
  return out.join(', ');
}

/** `62 bag`, `6 × 10 ft piece`, `4` of what is sold by the piece. */
export const sold = (quantity: number, unit: string): string =>
  unit === 'each' ? number(quantity) : `${number(quantity)} ${/^\d/.test(unit) ? '× ' : ''}${unit}`;
