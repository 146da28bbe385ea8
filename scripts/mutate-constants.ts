/**
 * Sensitivity of the tests: changes one constant at a time by 3 % in a scratch copy of the project and runs the tests
 * that should notice. Exits 1 when a change stays green, 2 when a change no longer finds its place.
 *
 *     node --import tsx scripts/mutate-constants.ts            every change
 *     node --import tsx scripts/mutate-constants.ts CD FcE     only changes whose name contains one of the words
 *
 * Takes minutes; not part of `npm test`. To cover a new constant, add a line to mutations.ts.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { CHANGES } from './mutations.js';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');

/** A copy of sources and tests with the real `node_modules` linked in. */
function scratchCopy(): string {
  const dir = mkdtempSync(join(tmpdir(), 'mutate-'));
  for (const f of ['package.json', 'tsconfig.json', 'tsconfig.base.json', 'vitest.config.ts'])
    cpSync(join(ROOT, f), join(dir, f));
  for (const d of ['src', 'test', 'apps']) cpSync(join(ROOT, d), join(dir, d), { recursive: true });
  symlinkSync(join(ROOT, 'node_modules'), join(dir, 'node_modules'), 'dir');
  return dir;
}

/** Names of the test files that failed; empty when all passed. */
function failing(dir: string, tests: readonly string[]): readonly string[] {
  const run = spawnSync(
    process.execPath,
    [
      join(ROOT, 'node_modules/vitest/vitest.mjs'),
      'run',
      '--reporter=json',
      // On a busy machine a test that takes too long would pass for one that noticed.
      '--testTimeout=0',
      '--hookTimeout=0',
      // The sources keep no state, so that one worker serves all files: much faster than one each.
      '--no-isolate',
      '--maxWorkers=1',
      ...tests,
    ],
    {
      cwd: dir,
      encoding: 'utf8',
      maxBuffer: 1 << 28,
    },
  );
  const start = run.stdout.indexOf('{');
  const report = JSON.parse(run.stdout.slice(start)) as { testResults: { name: string; status: string }[] };
  if (report.testResults.length === 0) throw new Error(`no tests ran: ${run.stderr.slice(0, 400)}`);
  return report.testResults.filter((r) => r.status !== 'passed').map((r) => r.name.slice(dir.length + 1));
}

const words = process.argv.slice(2);
const chosen = CHANGES.filter((c) => words.length === 0 || words.some((w) => c.name.includes(w)));
const dir = scratchCopy();
let green = 0;
let lost = 0;
try {
  for (const tests of new Set(chosen.map((c) => c.tests))) {
    const broken = failing(dir, tests);
    if (broken.length > 0) throw new Error(`these tests fail before any change: ${broken.join(', ')}`);
  }
  for (const c of chosen) {
    const path = join(dir, c.file);
    const before = readFileSync(path, 'utf8');
    if (before.split(c.find).length !== 2) {
      lost++;
      console.log(`LOST   ${c.name}: "${c.find}" is not exactly once in ${c.file}`);
      continue;
    }
    writeFileSync(
      path,
      before.replace(c.find, () => c.replace),
    );
    const red = failing(dir, c.tests);
    writeFileSync(path, before);
    if (red.length === 0) green++;
    console.log(red.length === 0 ? `GREEN  ${c.name}: no test noticed` : `red    ${c.name}: ${red.join(', ')}`);
  }
} finally {
  rmSync(dir, { recursive: true, force: true });
}
console.log(
  `${chosen.length} changes, ${chosen.length - green - lost} noticed, ${green} unnoticed, ${lost} lost their place`,
);
process.exit(green > 0 ? 1 : lost > 0 ? 2 : 0);
