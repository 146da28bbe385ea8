/** Every state the project has had, with what was done to reach it. Nothing is ever dropped but undone states that are left behind. */
export interface Entry {
  /** What was done: `P2 moved`, `opened`. */
  readonly name: string;
  readonly text: string;
  /** Milliseconds since 1970. */
  readonly when: number;
  /** Name given to this state by the owner. */
  readonly version?: string;
}

export interface History {
  readonly entries: readonly Entry[];
  /** The present state. */
  readonly at: number;
}

export const begun = (entry: Entry): History => ({ entries: [entry], at: 0 });

export const present = (h: History): Entry => h.entries[h.at]!;

/** A new state after the present one; states that were undone are left behind. */
export const committed = (h: History, entry: Entry): History => ({
  entries: [...h.entries.slice(0, h.at + 1), entry],
  at: h.at + 1,
});

export const moved = (h: History, at: number): History => (at >= 0 && at < h.entries.length ? { ...h, at } : h);

export const named = (h: History, version: string): History => ({
  ...h,
  entries: h.entries.map((e, i) => (i === h.at ? { ...e, version } : e)),
});
