/**
 * Builds the browser app twice: dist/web for any web host (or `eavewright app`), and dist/eavewright.html, one file that opens
 * by double-click. Fonts and examples stand beside the page under files/; in the single file they lie inside it.
 */
import { createHash } from 'node:crypto';
import { cp, mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join, relative } from 'node:path';
import react from '@vitejs/plugin-react';
import { build, type InlineConfig, type Plugin } from 'vite';
import { firstLoad } from './first-load.js';

const root = join(import.meta.dirname, '..');
const web = join(root, 'apps/web');
const out = join(root, 'dist/web');
const quiet = process.argv.includes('--quiet');

/**
 * What a page of ours may do: its own files, nothing else; no script or style written into the page. `wasm-unsafe-eval` lets
 * the worker compile the solver of the cutting plan; it does not allow `eval` of text.
 */
const POLICY =
  "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self' blob:; style-src 'self'; img-src 'self' data: blob:; font-src 'self' data:; connect-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
// A meta element cannot forbid framing; servers send that part.
const inMeta = (policy: string): string => policy.replace("; frame-ancestors 'none'", '');

// Also when a test runner, which sets another mode, starts this.
process.env.NODE_ENV = 'production';

/**
 * The solver's library for browsers only: its WebAssembly is handed in by the page (files/solver.wasm), so it must not be
 * packed a second time beside the script, and what it would do under Node is left out.
 */
const solverAlone = (): Plugin => ({
  name: 'solver-alone',
  transform: (code, id) =>
    id.endsWith('/highs.mjs')
      ? code
          .replaceAll('new URL("highs.wasm",import.meta.url).href', '"solver.wasm"')
          .replaceAll('await import("node:module")', '{}')
          .replaceAll('import.meta.url', '""')
      : undefined,
});

// Modules of the core do nothing when they are read in, so page and workers take only the functions they name; nor do those of
// the polygon library, which does not say so itself.
const treeshake = { moduleSideEffects: (id: string): boolean => !/\/src\/|\/clipper2-ts\//.test(id) };

const common: InlineConfig = {
  mode: 'production',
  root: web,
  base: './',
  configFile: false,
  logLevel: quiet ? 'error' : 'warn',
  plugins: [react(), solverAlone()],
  // A worker is a build of its own, with options of its own.
  worker: { format: 'es', plugins: () => [solverAlone()], rollupOptions: { treeshake } },
  build: {
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 2000,
    reportCompressedSize: false,
    rollupOptions: {
      treeshake,
    },
  },
};

async function filesUnder(dir: string): Promise<string[]> {
  const all = await readdir(dir, { recursive: true, withFileTypes: true });
  return all
    .filter((f) => f.isFile())
    .map((f) => relative(dir, join(f.parentPath, f.name)).replaceAll('\\', '/'))
    .sort();
}

async function besideThePage(): Promise<Map<string, Uint8Array>> {
  const files = new Map<string, Uint8Array>();
  for (const f of await readdir(join(root, 'assets/fonts')))
    if (f.endsWith('.ttf')) files.set(`fonts/${f}`, await readFile(join(root, 'assets/fonts', f)));
  for (const name of (await readdir(join(root, 'examples'))).sort())
    files.set(`examples/${name}.json`, await readFile(join(root, 'examples', name, 'project.json')));
  const schema = await readFile(join(root, 'schema/project.v1.schema.json'), 'utf8');
  files.set('solver.wasm', await readFile(createRequire(import.meta.url).resolve('highs/runtime')));
  files.set('schema.json', new TextEncoder().encode(JSON.stringify(JSON.parse(schema))));
  return files;
}

/** Keeps every file of the app under the hash of all of them; a new build fills a new cache and drops the old. */
function serviceWorker(files: readonly string[], hash: string): string {
  return `'use strict';
const CACHE = 'eavewright-${hash}';
const FILES = ${JSON.stringify(['./', ...files])};
self.addEventListener('install', (e) => {
  e.waitUntil(caches.open(CACHE).then((c) => c.addAll(FILES)).then(() => self.skipWaiting()));
});
self.addEventListener('activate', (e) => {
  e.waitUntil(
    caches.keys()
      .then((keys) => Promise.all(keys.filter((k) => k.startsWith('eavewright-') && k !== CACHE).map((k) => caches.delete(k))))
      .then(() => self.clients.claim()),
  );
});
self.addEventListener('fetch', (e) => {
  if (e.request.method !== 'GET' || new URL(e.request.url).origin !== self.location.origin) return;
  e.respondWith(
    caches.open(CACHE).then(async (c) => {
      const kept = await c.match(e.request, { ignoreSearch: true });
      if (kept) return kept;
      return fetch(e.request);
    }),
  );
});
`;
}

async function forHosts(files: ReadonlyMap<string, Uint8Array>): Promise<void> {
  await build({ ...common, build: { ...common.build, outDir: out, emptyOutDir: true } });
  for (const [name, data] of files) {
    await mkdir(join(out, 'files', name, '..'), { recursive: true });
    await writeFile(join(out, 'files', name), data);
  }
  const page = join(out, 'index.html');
  const html = await readFile(page, 'utf8');
  await writeFile(
    page,
    html.replace('<!--csp-->', `<meta http-equiv="Content-Security-Policy" content="${inMeta(POLICY)}" />`),
  );
  await writeFile(join(out, 'policy.txt'), POLICY);
  const list = (await filesUnder(out)).filter((f) => f !== 'sw.js' && f !== 'index.html' && f !== 'policy.txt');
  const hash = createHash('sha256');
  for (const f of [...list, 'index.html']) hash.update(f).update(await readFile(join(out, f)));
  await writeFile(join(out, 'sw.js'), serviceWorker(list, hash.digest('hex').slice(0, 16)));
}

const escaped = (script: string): string => script.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');

async function oneFile(files: Map<string, Uint8Array>): Promise<void> {
  const temp = join(root, 'dist/web-single');
  const single = (more: InlineConfig['build']): InlineConfig => ({ ...common, build: { ...common.build, ...more } });
  // The worker by itself, without parts that are loaded later: a file on a disk may not load others.
  await build({
    ...single({
      outDir: join(temp, 'worker'),
      emptyOutDir: true,
      lib: {
        entry: join(web, 'core/thorough.worker.ts'),
        formats: ['iife'],
        name: 'core',
        fileName: () => 'worker.js',
      },
    }),
    define: { 'process.env.NODE_ENV': '"production"' },
  });
  await build(
    single({
      outDir: join(temp, 'page'),
      emptyOutDir: true,
      cssCodeSplit: false,
      rollupOptions: { ...common.build?.rollupOptions, output: { codeSplitting: false } },
    }),
  );
  const worker = await readFile(join(temp, 'worker/worker.js'));
  const html = await readFile(join(temp, 'page/index.html'), 'utf8');
  // Only what the page itself names: the workers built along with it lie in the block of files.
  const text = async (named: RegExp): Promise<string> => {
    const names = [...html.matchAll(named)].map((m) => m[1]!);
    return (await Promise.all(names.map((f) => readFile(join(temp, 'page', f), 'utf8')))).join('\n');
  };
  const script = escaped(await text(/src="\.\/(assets\/[^"]+\.js)"/g));
  const style = await text(/href="\.\/(assets\/[^"]+\.css)"/g);
  const all = new Map([...files, ['worker.js', new Uint8Array(worker)]]);
  const block = JSON.stringify(Object.fromEntries([...all].map(([n, d]) => [n, Buffer.from(d).toString('base64')])));
  const sha = (s: string): string => `'sha256-${createHash('sha256').update(s).digest('base64')}'`;
  const icon = `data:image/svg+xml;base64,${(await readFile(join(web, 'public/icon.svg'))).toString('base64')}`;
  const policy = `default-src 'none'; script-src ${sha(script)} 'wasm-unsafe-eval'; worker-src blob:; style-src ${sha(style)}; img-src data: blob:; base-uri 'none'; form-action 'none'`;
  const page = html
    .replace(/<script type="module"[^>]*><\/script>/g, '')
    .replace(/<link rel="(stylesheet|modulepreload|manifest)"[^>]*>/g, '')
    .replace(/<link rel="icon"[^>]*>/, () => `<link rel="icon" href="${icon}" />`)
    .replace('<!--csp-->', () => `<meta http-equiv="Content-Security-Policy" content="${policy}" />`)
    .replace('</head>', () => `<style>${style}</style></head>`)
    .replace(
      '</body>',
      () =>
        `<script type="application/json" id="files">${block}</script><script type="module">${script}</script></body>`,
    );
  await writeFile(join(root, 'dist/eavewright.html'), page);
  await rm(temp, { recursive: true });
}

const files = await besideThePage();
await forHosts(files);
if (!process.argv.includes('--host-only')) await oneFile(files);
const size = firstLoad(out) ?? 0;
await cp(join(root, 'LICENSE'), join(out, 'LICENSE.txt'));
if (!quiet)
  process.stdout.write(
    `dist/web built; first load of script ${(size / 1000).toFixed(0)} kB compressed (budget 500 kB)\n`,
  );
