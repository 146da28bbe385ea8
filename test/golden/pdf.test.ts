/** The set of each example as a plan room meets it: read back by independent programs, not by our own code. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { derive, drawingInput, drawSet, FACES, type FaceName, pdfOf, SHEET_SIZES } from '../../src/index.js';
import { root } from './golden.js';

const temp = mkdtempSync(join(tmpdir(), 'eavewright-pdf-'));
afterAll(() => rmSync(temp, { recursive: true, force: true }));

/** Runs a reader and gives its standard output; anything it complains of fails the test. */
function read(program: 'qpdf' | 'pdfinfo' | 'pdffonts' | 'pdftotext', ...args: string[]): string {
  const r = spawnSync(program, args, { encoding: 'utf8', maxBuffer: 1 << 28 });
  if ((r.error as NodeJS.ErrnoException | undefined)?.code === 'ENOENT') {
    expect.fail(`${program} is not installed: run \`bash scripts/debian-tools.sh\` (packages poppler-utils and qpdf)`);
  }
  expect(r.stderr, `${program} ${args.join(' ')}`).toBe('');
  expect(r.status, `${program} ${args.join(' ')}`).toBe(0);
  return r.stdout;
}

interface Bookmark {
  readonly title: string;
  readonly destpageposfrom1: number;
  readonly kids: readonly Bookmark[];
}

const fonts = Object.fromEntries(
  Object.entries(FACES).map(([name, f]) => [name, new Uint8Array(readFileSync(join(root, 'assets/fonts', f.file)))]),
) as Record<FaceName, Uint8Array>;

const drawn = readdirSync(join(root, 'examples'))
  .sort()
  .flatMap((name) => {
    const input = drawingInput(derive(readFileSync(join(root, 'examples', name, 'project.json'), 'utf8')));
    return input ? [{ name, input }] : [];
  });

it('has two good examples', () => {
  expect(drawn.length).toBeGreaterThanOrEqual(2);
});

for (const { name, input } of drawn) {
  for (const size of ['ARCH D', 'ANSI B'] as const) {
    describe(`${name}, ${size}`, () => {
      const sheets = drawSet(input, size);
      const { job } = input.project;
      const options = {
        title: `${job.title}, ${job.address}`,
        author: job.preparedBy,
        date: new Date(`${job.date}T00:00:00Z`),
      };
      const file = join(temp, `${name}-${size.replace(' ', '-')}.pdf`);
      let bytes: Uint8Array;
      beforeAll(async () => {
        bytes = await pdfOf(sheets, fonts, options);
        writeFileSync(file, bytes);
      });

      it('is a sound file', () => {
        expect(read('qpdf', '--check', file)).toContain('No syntax or stream encoding errors found');
      });

      it('has a page for each sheet, all of the one size', () => {
        const info = read('pdfinfo', '-l', '-1', file);
        expect(info).toMatch(new RegExp(`^Pages:\\s+${sheets.length}$`, 'm'));
        const sizes = [...info.matchAll(/^Page\s+\d+ size:\s+([\d.]+) x ([\d.]+) pts/gm)];
        expect(sizes).toHaveLength(sheets.length);
        const { w, h } = SHEET_SIZES[size];
        for (const [line, pw, ph] of sizes) expect([Number(pw), Number(ph)], line).toEqual([w * 72, h * 72]);
      });

      it('embeds every font as a subset with a map to Unicode', () => {
        const rows = read('pdffonts', file).split('\n').slice(2).filter(Boolean);
        expect(rows.length).toBeGreaterThan(0);
        // Columns at the end of a row: emb sub uni, then object and generation.
        for (const row of rows) expect(row).toMatch(/\syes\s+yes\s+yes\s+\d+\s+\d+\s*$/);
      });

      it('lets a reader search for every mark on the plans', () => {
        const pages = read('pdftotext', '-layout', file, '-').split('\f');
        const plans = sheets.flatMap((s, i) => (/^S-10[123]$/.test(s.id) ? [pages[i]!] : [])).join('\n');
        const words = new Set(plans.match(/[A-Z]+\d+/g));
        const { members, footings, joints } = input.structure;
        const marks = new Set([...members, ...footings, ...joints].map((p) => p.mark));
        expect(marks.size).toBeGreaterThan(5);
        expect([...marks].filter((m) => !words.has(m))).toEqual([]);
      });

      it('says on every page that it is preliminary', () => {
        const pages = read('pdftotext', '-layout', file, '-').split('\f').slice(0, -1);
        expect(pages).toHaveLength(sheets.length);
        const silent = sheets.filter((_, i) => !/PRELIMINARY[\s\S]*NOT FOR PERMIT/.test(pages[i]!)).map((s) => s.id);
        expect(silent).toEqual([]);
      });

      it('has a bookmark and a page label for each sheet', () => {
        const json = JSON.parse(read('qpdf', '--json', '--json-key=outlines', '--json-key=pagelabels', file));
        // Grouped by discipline; the leaves are the sheets.
        const leaves = (json.outlines as Bookmark[]).flatMap((group) => group.kids);
        expect(leaves.map((b) => b.title.split(' ')[0])).toEqual(sheets.map((s) => s.id));
        expect(leaves.map((b) => b.destpageposfrom1)).toEqual(sheets.map((_, i) => i + 1));
        const labels = json.pagelabels.map((l: { index: number; label: Record<string, unknown> }) => [
          l.index,
          String(l.label['/P']).replace(/^u:/, ''),
        ]);
        expect(labels).toEqual(sheets.map((s, i) => [i, s.id]));
      });

      it('comes out the same to the byte a second time', async () => {
        const again = await pdfOf(drawSet(input, size), fonts, options);
        expect(Buffer.compare(Buffer.from(again), Buffer.from(bytes))).toBe(0);
      });
    });
  }
}
