/**
 * Nearest whole count of steps, halves away from zero. A count a billionth short of a half is taken as the half: it was
 * one before it passed through inches.
 */
export function roundHalfUp(count: number): number {
  if (!Number.isFinite(count)) throw new RangeError(`cannot print ${count}`);
  const whole = Math.floor(Math.abs(count) + 0.5 + 1e-9);
  return whole === 0 ? 0 : Math.sign(count) * whole;
}

export interface NumberFormat {
  /** Drop zeros after the point that say nothing: `25` for `25.0`. Default false. */
  readonly trim?: boolean;
  /** Commas between thousands. Default true. */
  readonly group?: boolean;
}

/** Decimal text with halves rounded away from zero: `1,800`, `-0.35`; never `-0`, never an exponent. */
export function formatNumber(value: number, decimals = 0, { trim = false, group = true }: NumberFormat = {}): string {
  const steps = roundHalfUp(value * 10 ** decimals);
  const digits = BigInt(Math.abs(steps))
    .toString()
    .padStart(decimals + 1, '0');
  const whole = digits.slice(0, digits.length - decimals);
  const part = digits.slice(digits.length - decimals);
  const tail = trim ? part.replace(/0+$/, '') : part;
  const head = group ? whole.replace(/\B(?=(?:\d{3})+$)/g, ',') : whole;
  return (steps < 0 ? '-' : '') + head + (tail === '' ? '' : `.${tail}`);
}
