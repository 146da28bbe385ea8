/** Answers that more than one part of the worker's doors gives. */
import type { Issue } from '../../../src/index.js';

export interface Changed {
  /** Undefined when nothing could be changed; then `issues` say why. */
  readonly text: string | undefined;
  readonly issues: readonly Issue[];
}

export interface ExportFile {
  readonly name: string;
  readonly mime: string;
  readonly bytes: Uint8Array;
}
