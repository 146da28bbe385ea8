import type { Inches } from '../base/units.js';

/** How the plies of a built-up section are fastened to each other, at every face where two of them meet. */
export interface PlyFastening {
  /** Catalogue id: `common-16d`, `bolt-1-2`. */
  readonly fastener: string;
  readonly rows: number;
  /** Along the member, in each row. */
  readonly spacing: Inches;
  /** From the nearest row to the edge of the ply; of posts, from the end to the first fastener. */
  readonly edge: Inches;
  readonly end: Inches;
}
