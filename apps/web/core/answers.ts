/** Answers that more than one part of the worker's doors gives. */
import type { Issue } from '../../../src/index.js';

export interface Changed {
  /** Undefined when nothing could be changed; then `issues` say why. */
  readonly text: string | undefined;
  readonly issues: readonly Issue[];
  /** The text with the change in it, where the change would leave a file that cannot be drawn. */
  readonly anyway?: string;
}

export interface ExportFile {
  readonly name: string;
  readonly mime: string;
  readonly bytes: Uint8Array;
}
