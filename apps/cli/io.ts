/** What the commands write to, and the exit codes a script can trust. */
export const EXIT = { issuable: 0, notIssuable: 1, badInput: 2, ourFault: 3 } as const;

export interface Io {
  out(text: string): void;
  err(text: string): void;
  /** Progress, shown only when stderr is a terminal. */
  progress(text: string): void;
}
