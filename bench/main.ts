/**
 * Benchmarks against the budgets: every example warm, the sheets of the first, the command line from a cold start, growth.
 * `--json` prints one line a benchmark: {"name","median_ms","best_ms","cpu_ms","budget_ms","runs","cases","freedoms"}.
 * Nothing here fails a build: a shared machine has moods; there read the best run and the processor time.
 */
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fonts } from '../apps/cli/commands/fonts.js';
import { firstLoad } from '../scripts/first-load.js';
import { derive, drawingInput, drawSet, pdfOf, svgOf } from '../src/index.js';
import { dragBench } from './drag.js';
import { growth } from './growth.js';
import { coldStart, measure, type Time } from './measure.js';

const json = process.argv.includes('--json');
const root = join(import.meta.dirname, '..');
const file = join(root, 'examples/01-gable-scissor-kept-slab/project.json');
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

interface Row {
  readonly name: string;
  readonly time: Time;
  readonly budget?: number;
  readonly cases?: number;
  readonly freedoms?: number;
  readonly posts?: number;
}

const short = (x: number): number => Number(x.toFixed(2));

function tell({ name, time, budget, ...more }: Row): void {
  const line = {
    name,
    median_ms: short(time.median),
    best_ms: short(time.best),
    cpu_ms: short(time.cpu),
    ...(budget === undefined ? {} : { budget_ms: budget }),
    runs: time.runs,
    ...more,
  };
  const ms = (x: number): string => `${x.toFixed(2).padStart(9)} ms`;
  const extra = [
    ...(budget === undefined ? [] : [`budget ${budget} ms`]),
    ...(more.posts === undefined ? [] : [`${(time.best / more.posts).toFixed(3)} ms a post`]),
    ...(more.cases === undefined ? [] : [`${more.cases} cases`, `${more.freedoms} freedoms`]),
  ];
  process.stdout.write(
    json
      ? `${JSON.stringify(line)}\n`
      : `${name.padEnd(42)} best${ms(time.best)}  middle${ms(time.median)}  processor${ms(time.cpu)}  ${time.runs} runs  ${extra.join(', ')}\n`,
  );
}

/** Budgets are milliseconds on two idle cores. */
for (const { name, text: t } of others) {
  const size = derive(t).effects?.size;
  tell({ name: `derive, warm: ${name}`, budget: 16, time: await measure(() => derive(t)), ...size });
}
tell({
  name: 'all sheets drawn, hidden lines removed',
  budget: 100,
  time: await measure(() => drawSet(input).map((s) => svgOf(s))),
});
tell({ name: 'the whole PDF set', budget: 500, time: await measure(() => pdfOf(sheets, faces, meta)) });

const cold = coldStart(root, ['check', file]);
if (cold) tell({ name: 'check, from a cold start', budget: 500, time: cold });
else process.stderr.write('cold start left out: the command line is not built (npm run build)\n');

for (const { posts, time } of await growth()) tell({ name: `derive, ${posts} posts`, posts, time });

const load = firstLoad(join(root, 'dist/web'));
if (load === undefined) process.stderr.write('browser app left out: it is not built (npm run build)\n');
else {
  const kb = load / 1000;
  process.stdout.write(
    json
      ? `${JSON.stringify({ name: 'app, first load of script', kB: short(kb), budget_kB: 500 })}\n`
      : `app, first load of script, compressed       ${kb.toFixed(0)} kB  budget 500 kB\n`,
  );
  try {
    const d = await dragBench();
    process.stdout.write(
      json
        ? `${JSON.stringify({ name: 'app, dragging a post', within33_percent: short(100 * d.within), ...d, budget_percent: 95 })}\n`
        : `app, dragging a post of the largest example, Chromium without graphics processor (--disable-gpu)  ${(100 * d.within).toFixed(1)} % of ${d.frames} frames within 33 ms (budget 95 %), middle ${d.p50.toFixed(1)} ms, 95th ${d.p95.toFixed(1)} ms, processor ${d.thread.toFixed(1)} ms; sheet behind the pointer by ${d.sheet50.toFixed(0)} ms, 95th ${d.sheet95.toFixed(0)} ms, ${d.sheets} sheets\n`,
    );
  } catch (e) {
    process.stderr.write(`dragging left out: ${e instanceof Error ? e.message.split('\n')[0] : String(e)}\n`);
  }
}
