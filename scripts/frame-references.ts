/** Called by frame-references.sh: solves the frames with CalculiX and keeps decks and results as test data. */
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { FRAME_CASES } from '../test/verification/helpers/frame-cases.js';
import { deckOf } from '../test/verification/helpers/frame-deck.js';
import { readResults } from '../test/verification/helpers/frame-results.js';

const DATA = join(dirname(fileURLToPath(import.meta.url)), '../test/verification/data/frames');
const [version] = process.argv.slice(2);
if (!version) throw new Error('run scripts/frame-references.sh');
const room = mkdtempSync(join(tmpdir(), 'frames-'));
for (const f of FRAME_CASES) {
  const deck = join(DATA, `${f.name}.inp`);
  writeFileSync(deck, deckOf(f).text);
  copyFileSync(deck, join(room, `${f.name}.inp`));
  const said = execFileSync('ccx', [f.name], {
    cwd: room,
    encoding: 'utf8',
    env: { ...process.env, OMP_NUM_THREADS: '1' },
  });
  if (said.includes('*ERROR')) throw new Error(said);
  const result = readResults(f, `CalculiX ${version}`, readFileSync(join(room, `${f.name}.dat`), 'utf8'));
  writeFileSync(join(DATA, `${f.name}.json`), `${JSON.stringify(result, null, 1)}\n`);
  console.log(`${f.name}: ${result.sections.length} sections`);
}
rmSync(room, { recursive: true });
