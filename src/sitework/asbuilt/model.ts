/** What was built, as far as it was measured, and what follows for the next parts. Inches; places from home base. */
import type { GlobalTest } from '../adjust/snoop.js';

export interface ReadReading {
  /** Place in the project file; also its name here. */
  readonly path: string;
  readonly words: string;
  readonly value: number;
  readonly sigma: number;
  /** The file gave no sigma. */
  readonly usualSigma: boolean;
  readonly date: string;
  readonly instrument: string;
  /** What the design has there. */
  readonly designed: number;
  /** Adjusted less read. */
  readonly residual: number;
  readonly redundancy: number;
  readonly normalized: number;
  /** `bad`: taken out; `doubtful`: as likely as a bad one; `unchecked`: no other reading would show its error. */
  readonly state: 'good' | 'bad' | 'doubtful' | 'unchecked' | 'unused';
}

export interface BadReading {
  readonly path: string;
  readonly words: string;
  readonly normalized: number;
  /** What the others say it should have read. */
  readonly expected: number;
  readonly alike: readonly string[];
}

export interface MeasuredPoint {
  readonly name: string;
  readonly designed: { readonly along: number; readonly out: number; readonly level?: number | undefined };
  readonly plan?:
    | { readonly along: number; readonly out: number; readonly sigmaAlong: number; readonly sigmaOut: number }
    | undefined;
  readonly height?: { readonly level: number; readonly sigma: number } | undefined;
}

export type FitState = 'fits' | 'adjust' | 'stop' | 'unknown';

/** One part of the work against what was measured. */
export interface FitFinding {
  readonly rule: string;
  readonly part: string;
  readonly state: FitState;
  /** What was found, in words with numbers. */
  readonly found: string;
  /** What to do; empty when it fits. */
  readonly remedy: string;
  readonly source: string;
}

export interface PostNow {
  readonly post: string;
  readonly section: string;
  readonly designed: number;
  /** By the measured pier; undefined while its level was not read. */
  readonly now: number | undefined;
  readonly sigma: number;
  /** Cut already, with this length. */
  readonly cut?: number | undefined;
}

export interface AsBuilt {
  readonly readings: readonly ReadReading[];
  readonly bad: readonly BadReading[];
  readonly plan: GlobalTest | undefined;
  readonly heights: GlobalTest | undefined;
  readonly points: readonly MeasuredPoint[];
  /** Points that the readings do not fix. */
  readonly loose: readonly string[];
  readonly posts: readonly PostNow[];
  readonly findings: readonly FitFinding[];
}
