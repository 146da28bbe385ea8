/**
 * Publishes the JSON Schema of the project file: `npx tsx scripts/schema.ts` writes schema/project.v1.schema.json,
 * with `--check` it only says whether the file is current (exit 1 when it is not).
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { projectJsonSchema } from '../src/project/schema/index.js';

const file = join(resolve(import.meta.dirname, '..'), 'schema/project.v1.schema.json');
const text = `${JSON.stringify(projectJsonSchema(), null, 2)}\n`;
const current = existsSync(file) && readFileSync(file, 'utf8') === text;

if (process.argv.includes('--check')) {
  if (!current) {
    process.stderr.write(`${file} is not current; run npx tsx scripts/schema.ts\n`);
    process.exitCode = 1;
  }
} else if (!current) {
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
}
