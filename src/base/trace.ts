/**
 * A calculation is written once. When someone asks why, the same function runs again with a recorder that collects
 * its steps; without one, `rec?.step({...})` evaluates nothing and costs nothing.
 */
export interface Step {
  /** Symbol of the result as the standard writes it, e.g. `Fb'`, `CP`, `fv`. */
  readonly symbol: string;
  /** What the symbol means, in words: `adjusted bending design value`. */
  readonly meaning: string;
  /** Formula in symbols: `Fb · CD · CM · Ct · CL · CF · Ci · Cr`. */
  readonly formula: string;
  /** The same with numbers in place of symbols: `900 · 1.15 · 1.0 · …`. */
  readonly substituted: string;
  readonly value: number;
  /** Unit as printed: `psi`, `lb`, `in`, `psf`, '' for a pure number. */
  readonly unit: string;
  /** Standard and section, e.g. `NDS 2018 3.3.3`, `ASCE 7-16 Eq. 26.10-1`, `statics`, `common practice, no source`. */
  readonly clause: string;
  /** JSON pointers of the project-file values that went in directly. */
  readonly from?: readonly string[];
  /** Caveat worth printing, e.g. `value recalled from memory: confirm`. */
  readonly note?: string;
}

export interface Recorder {
  step(step: Step): void;
  /** Heading that groups the steps that follow. */
  heading(text: string): void;
}

export type TraceLine = { readonly kind: 'heading'; readonly text: string } | ({ readonly kind: 'step' } & Step);

export function makeRecorder(): Recorder & { readonly lines: readonly TraceLine[] } {
  const lines: TraceLine[] = [];
  return {
    lines,
    step: (s) => lines.push({ kind: 'step', ...s }),
    heading: (text) => lines.push({ kind: 'heading', text }),
  };
}
