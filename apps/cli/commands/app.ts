import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize, sep } from 'node:path';
import { packageRoot, UserFault } from '../files.js';
import { EXIT, type Io } from '../io.js';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
  '.txt': 'text/plain; charset=utf-8',
};

/** Serves the built browser app on this machine only. */
export async function serve(port: number, folder = join(packageRoot(), 'dist/web')): Promise<Server> {
  const policy = await readFile(join(folder, 'policy.txt'), 'utf8').catch(() => undefined);
  if (policy === undefined) throw new UserFault('the browser app is not built; run: npm run build');
  const server = createServer(async (request, response) => {
    try {
      const path = decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname);
      const file = normalize(join(folder, path === '/' ? 'index.html' : path));
      if (!file.startsWith(folder + sep)) throw new Error('outside');
      const body = await readFile(file);
      response.writeHead(200, {
        'Content-Type': TYPES[extname(file)] ?? 'application/octet-stream',
        'Content-Security-Policy': policy,
        'X-Content-Type-Options': 'nosniff',
        'Referrer-Policy': 'no-referrer',
        'Cache-Control': 'no-cache',
      });
      response.end(body);
    } catch {
      response.writeHead(404, { 'Content-Type': 'text/plain' });
      response.end('not here');
    }
  });
  await new Promise<void>((done, failed) => {
    server.once('error', failed);
    server.listen(port, '127.0.0.1', done);
  });
  return server;
}

const PORT = 4173;

/** Serves until stopped. Without a port of the user's own, the usual one or, where that is taken, any free one. */
export async function app(io: Io, o: { port?: string }): Promise<number> {
  const wanted = o.port === undefined ? PORT : Number(o.port);
  if (!Number.isInteger(wanted) || wanted < 0 || wanted > 65535) throw new UserFault(`"${o.port}" is not a port`);
  const taken = (e: unknown): boolean => (e as { code?: string }).code === 'EADDRINUSE';
  const server = await serve(wanted).catch((e: unknown) => {
    if (!taken(e)) throw e;
    if (o.port !== undefined) throw new UserFault(`port ${wanted} is taken; name another with --port`);
    return serve(0);
  });
  io.out(
    `The app: http://127.0.0.1:${(server.address() as AddressInfo).port}/  (on this machine only; stop with Ctrl+C)\n`,
  );
  await new Promise<void>((done) => {
    for (const s of ['SIGINT', 'SIGTERM'] as const) process.once(s, () => server.close(() => done()));
    process.once('SIGINT', () => server.closeAllConnections());
    process.once('SIGTERM', () => server.closeAllConnections());
  });
  return EXIT.issuable;
}
