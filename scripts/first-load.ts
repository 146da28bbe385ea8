/** Compressed size of the scripts that show the first sheet: the page's and its first worker's, with what they import at once. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

const STATIC = /\b(?:import|export)\s*(?:[\w$*{][^'"`;()]*?from\s*)?["']\.\/([^"']+\.js)["']/g;

/** Bytes, gzip at its best; undefined when the app is not built. What is loaded after the first sheet is not in it. */
export function firstLoad(web: string): number | undefined {
  const page = join(web, 'index.html');
  if (!existsSync(page)) return undefined;
  const html = readFileSync(page, 'utf8');
  const assets = join(web, 'assets');
  const first = readdirSync(assets).filter((f) => f.endsWith('.js') && (html.includes(f) || f.startsWith('quick')));
  const seen = new Set<string>();
  let sum = 0;
  const add = (file: string): void => {
    if (seen.has(file)) return;
    seen.add(file);
    const script = readFileSync(join(assets, file));
    sum += gzipSync(script, { level: 9 }).length;
    for (const m of script.toString('utf8').matchAll(STATIC)) add(m[1]!);
  };
  for (const f of first) add(f);
  return sum;
}
