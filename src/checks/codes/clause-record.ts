/**
 * Where a clause's numbers come from. `read`: seen in a copy of the standard or in a text that quotes it; `memory`:
 * recalled, to be confirmed in the adopted code; `mixed`: the note says which part is recalled.
 */
export type ClauseProvenance = 'read' | 'memory' | 'mixed';

/** One line of the list "where these values were read"; the program prints every one that is not plainly `read`. */
export interface ClauseRecord {
  readonly id: string;
  /** Standard, edition and section. */
  readonly clause: string;
  readonly title: string;
  readonly provenance: ClauseProvenance;
  /** What exactly is recalled, or what a reader should know of the source. */
  readonly note?: string;
}

/** Printed beside a traced step whose value nobody saw in print for this work. */
export const MEMORY_NOTE = 'value recalled from memory: confirm in the adopted code';
