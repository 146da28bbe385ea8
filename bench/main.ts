/**
 * Benchmarks against the budgets of ARCHITECTURE.md, first example, warm. `--json` prints one line a benchmark:
 * {"name","median_ms","budget_ms","runs","cases","freedoms"}. Nothing here fails a build: a shared machine has moods.
 */
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Bench } from 'tinybench';
import { fonts } from '../apps/cli/commands/draw.js';
import { derive, drawingInput, drawSet, pdfOf, svgOf } from '../src/index.js';

import { growth } from './growth.js';

const json = process.argv.includes('--json');
const file = join(import.meta.dirname, '../examples/01-gable-scissor-kept-slab/project.json');
const text = await readFile(file, 'utf8');
const examples = join(import.meta.dirname, '../examples');
const others = await Promise.all(
  (await readdir(examples))
    .sort()
    .map(async (name) => ({ name, text: await readFile(join(examples, name, 'project.json'), 'utf8') })),
);
const derived = derive(text);
const input = drawingInput(derived);
if (!input || !derived.effects) throw new Error('the first example does not derive');
const sheets = drawSet(input);
const faces = await fonts();
const meta = { title: 'bench', author: 'bench', date: new Date('2026-01-01T00:00:00Z') };

/** Milliseconds on two shared cores. */
const BUDGETS: readonly { name: string; budget: number; run: () => unknown }[] = [
  ...others.map(({ name, text: t }) => ({ name: `derive, warm: ${name}`, budget: 16, run: () => derive(t) })),
  { name: 'all sheets drawn, hidden lines removed', budget: 100, run: () => drawSet(input).map((s) => svgOf(s)) },
  { name: 'the whole PDF set', budget: 500, run: () => pdfOf(sheets, faces, meta) },
];

for (const { name, budget, run } of BUDGETS) {
  const bench = new Bench({ time: 1500, iterations: 10, warmupTime: 500, warmupIterations: 5, throws: true });
  bench.add(name, async () => void (await run()));
  const [task] = await bench.run();
  const result = task?.result as unknown as { latency: { p50: number; samplesCount?: number; samples?: number[] } };
  const line = {
    name,
    median_ms: Number(result.latency.p50.toFixed(2)),
    budget_ms: budget,
    runs: result.latency.samplesCount ?? result.latency.samples?.length ?? 0,
    cases: derived.effects.size.cases,
    freedoms: derived.effects.size.freedoms,
  };
  process.stdout.write(
    json
      ? `${JSON.stringify(line)}\n`
      : `${line.name.padEnd(42)} ${line.median_ms.toFixed(2).padStart(8)} ms  budget ${budget} ms  (${line.runs} runs, ${line.cases} cases, ${line.freedoms} freedoms)\n`,
  );
}

for (const p of await growth()) {
  process.stdout.write(
    json
      ? `${JSON.stringify({ name: `derive, ${p.posts} posts`, median_ms: Number(p.ms.toFixed(2)), posts: p.posts })}\n`
      : `${`derive, ${p.posts} posts`.padEnd(42)} ${p.ms.toFixed(2).padStart(8)} ms  ${(p.ms / p.posts).toFixed(3)} ms a post\n`,
  );
}
