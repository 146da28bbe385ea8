/** Issuable or preliminary, never in between. */
export interface Verdict {
  readonly issuable: boolean;
  /** Why not, each naming a check, a subject, a question or an issue. */
  readonly reasons: readonly string[];
}
