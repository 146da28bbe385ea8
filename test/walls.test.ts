/** The import table of ARCHITECTURE.md, enforced. Type imports count; the folder with the longest matching path decides. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '..');

function table(): Map<string, readonly string[]> {
  const text = readFileSync(join(root, 'ARCHITECTURE.md'), 'utf8');
  const body = text.slice(text.indexOf('<!-- walls:begin -->'), text.indexOf('<!-- walls:end -->'));
  const rows = new Map<string, readonly string[]>();
  for (const line of body.split('\n')) {
    const cells = line.split('|').map((c) => c.trim());
    if (cells.length < 4 || !/^(src|apps)/.test(cells[1]!)) continue;
    rows.set(
      cells[1]!,
      cells[2]!
        .split(',')
        .map((c) => c.trim())
        .filter(Boolean),
    );
  }
  return rows;
}

function sources(dir: string): string[] {
  return readdirSync(join(root, dir), { recursive: true, encoding: 'utf8' })
    .filter((f) => /\.tsx?$/.test(f) && !/\.test\.tsx?$/.test(f) && !f.endsWith('.d.ts') && !f.includes('node_modules'))
    .map((f) => join(dir, f))
    .sort();
}

/** Files named `testing.ts` hold fixtures for unit tests; they are held to the walls of their folder all the same. */
const files = [...sources('src'), ...sources('apps')];
const rules = table();

const ownerOf = (file: string): string | undefined =>
  [...rules.keys()]
    .filter((k) => file === k || file.startsWith(`${k}/`) || (k === 'src' && file.startsWith('src/')))
    .sort((a, b) => b.length - a.length)[0];

function importsOf(file: string): { target: string; line: number; spec: string }[] {
  const text = readFileSync(join(root, file), 'utf8');
  const info = ts.preProcessFile(text, true, true);
  return info.importedFiles.map((i) => ({
    spec: i.fileName,
    line: text.slice(0, i.pos).split('\n').length,
    target: i.fileName.startsWith('.')
      ? relative(root, resolve(root, dirname(file), i.fileName)).replace(/\.js$/, '.ts')
      : i.fileName,
  }));
}

/** Packages the core may use: pure computation, no input or output. */
const CORE_PACKAGES: Readonly<Record<string, readonly string[]>> = {
  zod: ['src/project'],
  'clipper2-ts': ['src/lot', 'src/takeoff'],
  pdfkit: ['src/drawings/backends'],
  fflate: ['src/drawings/backends', 'src/tables'],
  hucre: ['src/tables'],
};
/** Packages that fixtures may use, files that only tests import. */
const FIXTURE_PACKAGES: readonly string[] = ['fast-check'];

describe('import walls', () => {
  it('reads a table and enough files to mean something', () => {
    expect(rules.size).toBeGreaterThan(15);
    expect(files.length).toBeGreaterThan(60);
  });

  it('every source file belongs to a folder of the table', () => {
    expect(files.filter((f) => ownerOf(f) === undefined)).toEqual([]);
  });

  it('no file imports past its folder’s row', () => {
    const bad: string[] = [];
    for (const file of files) {
      const owner = ownerOf(file)!;
      const allowed = rules.get(owner)!;
      for (const { target, line, spec } of importsOf(file)) {
        if (!spec.startsWith('.')) {
          if (!file.startsWith('src/')) continue;
          if (file.endsWith('.testing.ts') && FIXTURE_PACKAGES.includes(spec)) continue;
          const name = Object.keys(CORE_PACKAGES).find((p) => spec === p || spec.startsWith(`${p}/`));
          if (!name || !CORE_PACKAGES[name]!.some((f) => file.startsWith(f)))
            bad.push(`${file}:${line} imports ${spec}`);
          continue;
        }
        const to = ownerOf(target);
        const fine =
          to === owner ||
          (allowed.includes('src') && target.startsWith('src/')) ||
          allowed.includes(target) ||
          (to !== undefined && allowed.includes(to));
        if (!fine) bad.push(`${file}:${line} imports ${target}`);
      }
    }
    expect(bad).toEqual([]);
  });

  it('has no cycles between files', () => {
    const graph = new Map(
      files.map((f) => [
        f,
        importsOf(f)
          .map((i) => i.target)
          .filter((t) => files.includes(t)),
      ]),
    );
    const state = new Map<string, 1 | 2>();
    const cycles: string[] = [];
    const visit = (f: string, trail: readonly string[]): void => {
      if (state.get(f) === 2) return;
      if (state.get(f) === 1) {
        cycles.push([...trail.slice(trail.indexOf(f)), f].join(' → '));
        return;
      }
      state.set(f, 1);
      for (const t of graph.get(f) ?? []) visit(t, [...trail, f]);
      state.set(f, 2);
    };
    for (const f of files) visit(f, []);
    expect(cycles).toEqual([]);
  });

  it('branches on a kind only where that kind is read or built', () => {
    // Reading a file and placing a structure turn kinds into parts; the independent integral must know them too, or it would
    // lean on what it proves. Everything after reads members, joints and surfaces.
    const home = /^src\/(project|structure)\/|^src\/analysis\/independent\.ts$/;
    const kinds =
      'gable|shed|hip|rafter|common-truss|scissor-truss|solid|built-up|glulam|lvl|round-pier|square-pad|pier-on-pad';
    const branch = new RegExp(`\\bkind\\s*[!=]==\\s*'(${kinds})'|case '(${kinds})'`);
    const bad: string[] = [];
    for (const file of files.filter((f) => f.startsWith('src/') && !home.test(f))) {
      readFileSync(join(root, file), 'utf8')
        .split('\n')
        .forEach((l, i) => {
          if (branch.test(l)) bad.push(`${file}:${i + 1} ${l.trim()}`);
        });
    }
    expect(bad).toEqual([]);
  });

  it('keeps clock and chance out of the core (DOM, disk and network do not compile there)', () => {
    const bad: string[] = [];
    const forbidden = /\b(Date\.now|new Date\(|Math\.random|performance\.now|globalThis)/;
    for (const file of files.filter((f) => f.startsWith('src/'))) {
      const lines = readFileSync(join(root, file), 'utf8').split('\n');
      lines.forEach((l, i) => {
        const code = l.replace(/\/\/.*$/, '').replace(/^\s*\*.*$/, '');
        if (forbidden.test(code) && !file.startsWith('src/drawings/backends/pdf'))
          bad.push(`${file}:${i + 1} ${l.trim()}`);
      });
    }
    expect(bad).toEqual([]);
  });
});
