/**
 * Runs one at a time and keeps only the last wish made meanwhile: frames are dropped, never queued. Dropped wishes are
 * answered with undefined.
 */
export function latest<A extends readonly unknown[], T>(
  run: (...args: A) => Promise<T>,
): (...args: A) => Promise<T | undefined> {
  let busy = false;
  let wish: { args: A; done: (v: Promise<T> | undefined) => void } | undefined;
  const go = async (args: A): Promise<T> => {
    busy = true;
    try {
      return await run(...args);
    } finally {
      busy = false;
      const w = wish;
      wish = undefined;
      if (w) w.done(go(w.args));
    }
  };
  return (...args) => {
    if (!busy) return go(args);
    wish?.done(undefined);
    return new Promise((done) => {
      wish = { args, done };
    });
  };
}
