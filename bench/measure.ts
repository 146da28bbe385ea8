/**
 * Wall and processor time of one thing done over and over. On a machine that others use too, wall time mostly tells how
 * busy they are: the best run and the processor time of a run are the numbers to compare.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { Bench } from 'tinybench';

export interface Time {
  /** Milliseconds of a run: the middle one, the best one, and of the processor (all threads, collecting garbage included). */
  readonly median: number;
  readonly best: number;
  readonly cpu: number;
  readonly runs: number;
}

const cpuMs = (since?: NodeJS.CpuUsage): number => {
  const { user, system } = process.cpuUsage(since);
  return (user + system) / 1000;
};

/** Warm: run for `time` ms, at least `iterations` times, after as many runs unmeasured or a third of the time. */
export async function measure(run: () => unknown, time = 1500, iterations = 40): Promise<Time> {
  const until = performance.now() + time / 3;
  for (let i = 0; i < iterations || performance.now() < until; i++) await run();
  const bench = new Bench({ time, iterations, warmup: false, throws: true });
  bench.add('run', async () => void (await run()));
  const before = process.cpuUsage();
  const [task] = await bench.run();
  const cpu = cpuMs(before);
  const { latency } = task!.result as unknown as { latency: { p50: number; min: number; samplesCount: number } };
  return { median: latency.p50, best: latency.min, cpu: cpu / latency.samplesCount, runs: latency.samplesCount };
}

/** Tells the processor time of the whole process as it leaves, then does what the command line does. */
const CHILD = `process.on('exit', () => {
  const { user, system } = process.cpuUsage();
  process.stderr.write('CPU ' + (user + system) / 1000);
});
await import('./bin/eavewright.js');`;

/** The built command line, started new each time; undefined when it is not built. */
export function coldStart(root: string, args: readonly string[], times = 5): Time | undefined {
  if (!existsSync(join(root, 'dist/apps/cli/main.js'))) return undefined;
  const runs: { wall: number; cpu: number }[] = [];
  for (let i = 0; i < times; i++) {
    const start = performance.now();
    const child = spawnSync(process.execPath, ['--input-type=module', '-e', CHILD, 'eavewright', ...args], {
      cwd: root,
      encoding: 'utf8',
    });
    const cpu = Number(/CPU ([\d.]+)$/.exec(child.stderr)?.[1]);
    if (child.status === null || child.status > 1 || !Number.isFinite(cpu)) throw new Error(child.stderr);
    runs.push({ wall: performance.now() - start, cpu });
  }
  const walls = runs.map((r) => r.wall).sort((a, b) => a - b);
  return {
    median: walls[Math.floor(times / 2)]!,
    best: walls[0]!,
    cpu: Math.min(...runs.map((r) => r.cpu)),
    runs: times,
  };
}
