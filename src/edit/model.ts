/** What a person may take hold of on a plan, and which values of the project file change when it is moved. */
import type { Vec2 } from '../base/vec.js';
import type { TextEdit } from '../project/edit.js';

export interface Handle {
  /** Stable: `post:P1`, `beam:B1`, `beam-end:B1:end`, `roof-edge:R1:from`. */
  readonly id: string;
  readonly mark: string;
  /** `post P1 along B1`. */
  readonly what: string;
  /** Where it is taken hold of; with `to`, anywhere on the line between. House axes, inches. */
  readonly at: Vec2;
  readonly to?: Vec2;
  /** Unit vector along which it moves. */
  readonly axis: Vec2;
  /** The value of the file that the move is counted in, inches, and its place: the value grows along `axis`. */
  readonly value: number;
  readonly path: string;
  /** What the value is measured from: `from the start of B1`. */
  readonly from: string;
  /** All changes of the file for a move of so many inches along `axis`. */
  edits(by: number): readonly TextEdit[];
}
