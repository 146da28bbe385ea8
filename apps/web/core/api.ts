/** What the page asks of the worker, and what it hears. Everything is plain data. */
import type {
  Assumption,
  CheckResult,
  DimensionMove,
  Handle,
  Issue,
  PathAnswer,
  Question,
  Remedy,
  Scene,
  SceneState,
  TextEdit,
  TraceLine,
  Verdict,
  Why,
} from '../../../src/index.js';
import type { Changed, ExportFile } from './answers.js';
import type { PackedSheet } from './pack.js';
import type { QuickWork, ThoroughWork } from './work-api.js';

export type { Changed, ExportFile } from './answers.js';

export interface PartRow {
  readonly mark: string;
  /** `beam B1`, `footing F2`. */
  readonly what: string;
  readonly path: string;
}

export type HandleRow = Omit<Handle, 'edits'>;

export interface SheetRow {
  readonly id: string;
  readonly title: string;
}

/** What of the set can be shown. */
export interface Shown {
  readonly index: readonly SheetRow[];
  readonly sheet: PackedSheet | undefined;
  /** False while only the first sheet is there: its makers are loaded before those of the others. */
  readonly whole: boolean;
}

/** All that a derived project tells the page at once; whatever is larger is asked for. */
export interface Summary extends Shown {
  readonly drawable: boolean;
  readonly issues: readonly Issue[];
  readonly results: readonly CheckResult[];
  readonly verdict: Verdict;
  /** The file as plain data, for fields. */
  readonly tree: unknown;
  readonly parts: readonly PartRow[];
  readonly handles: readonly HandleRow[];
  readonly questions: readonly Question[];
  readonly assumptions: readonly Assumption[];
  readonly title: string;
  readonly units: 'us' | 'metric';
  readonly lot: LotNumbers | undefined;
  /** Milliseconds of the worker. */
  readonly took: number;
}

/** What the first six questions show at once. */
export interface LotNumbers {
  readonly covered: number;
  readonly limit: number;
  readonly distances: readonly {
    readonly line: string;
    readonly yard: string;
    readonly has: number;
    readonly needs: number;
  }[];
  readonly highest: number;
}

/** Answer to one frame of dragging: the sheet looked at and what the checks say, nothing else. */
export interface Live {
  readonly sheet: PackedSheet | undefined;
  readonly failing: readonly string[];
  readonly nearest: { readonly title: string; readonly subject: string; readonly ratio: number } | undefined;
  readonly issue: string | undefined;
  readonly took: number;
}

export interface Steps {
  readonly steps: readonly TraceLine[];
}

export type ExportKind = 'pdf' | 'sheet-pdf' | 'sheet-svg' | 'dxf' | 'dxf-plan' | 'calculations' | 'read-only';

export interface Quick extends QuickWork {
  derive(text: string, sheet: string | undefined): Promise<Summary>;
  /** The set of what was derived last, and one sheet of it, once all sheets are loaded. */
  rest(sheet: string | undefined): Promise<Shown>;
  sheet(id: string): Promise<PackedSheet | undefined>;
  drag(handle: string, by: number, sheet: string): Live;
  /** Text after a drag of so many inches. */
  moved(handle: string, by: number): Changed;
  edit(text: string, edits: readonly TextEdit[]): Changed;
  /** Ways to change a dimension of the sheet; asked with what the sheet says of it. */
  moves(a: { x: number; y: number }, b: { x: number; y: number }, angle: number): readonly DimensionMove[];
  dimension(move: DimensionMove, from: number, typed: string): Changed;
  why(mark: string): Why | undefined;
  explain(result: string): Steps;
  path(mark: string): PathAnswer | undefined;
  starter(kind: string): string;
}

export interface Thorough extends Quick, ThoroughWork {
  remedies(result: string): readonly Remedy[];
  scene(): Scene | undefined;
  /** Ids of the combinations, in order. */
  combinations(): readonly string[];
  sceneState(combination: string): SceneState | undefined;
  export(
    kind: ExportKind,
    fonts: Readonly<Record<string, Uint8Array>>,
    sheet: string | undefined,
  ): Promise<readonly ExportFile[]>;
}

export type Call = { readonly id: number; readonly name: string; readonly args: readonly unknown[] };
export type Reply = { readonly id: number; readonly value?: unknown; readonly fault?: string };
