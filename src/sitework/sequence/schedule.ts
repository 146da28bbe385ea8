/** Tasks laid out in time: the earliest start of each, how far it may slip, and the chain that decides the end. */
import type { Task } from './tasks.js';

export interface Bar extends Task {
  /** Days from the beginning. */
  readonly start: number;
  readonly end: number;
  /** Days it may slip without moving the end. */
  readonly slack: number;
  readonly critical: boolean;
}

export interface Schedule {
  readonly bars: readonly Bar[];
  readonly days: number;
}

/** @throws RangeError when a task waits for one that comes after it or is not there. */
export function scheduleOf(tasks: readonly Task[]): Schedule {
  const start = new Map<string, number>();
  const end = new Map<string, number>();
  for (const t of tasks) {
    const from = t.after.map((w) => {
      const e = end.get(w.on);
      if (e === undefined) throw new RangeError(`${t.id} waits for ${w.on}, which does not come before it`);
      return e + w.days;
    });
    start.set(t.id, Math.max(0, ...from));
    end.set(t.id, start.get(t.id)! + t.days);
  }
  const days = Math.max(0, ...end.values());
  const latest = new Map<string, number>();
  for (const t of [...tasks].reverse()) {
    const followers = tasks.flatMap((f) =>
      f.after.filter((w) => w.on === t.id).map((w) => latest.get(f.id)! - f.days - w.days),
    );
    latest.set(t.id, followers.length > 0 ? Math.min(...followers) : days);
  }
  return {
    days,
    bars: tasks.map((t) => {
      const slack = latest.get(t.id)! - end.get(t.id)!;
      return { ...t, start: start.get(t.id)!, end: end.get(t.id)!, slack, critical: slack < 1e-9 };
    }),
  };
}
