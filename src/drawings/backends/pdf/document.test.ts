import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { FACE_NAMES, FACES, type FaceName, type Primitive, type Sheet } from '../../ir/index.js';
import { contentOf, num } from './content.js';
import { type FontBytes, pdfOf } from './document.js';

const root = new URL('../../../../', import.meta.url).pathname;
const fonts = Object.fromEntries(
  FACE_NAMES.map((f) => [f, new Uint8Array(readFileSync(`${root}assets/fonts/${FACES[f].file}`))]),
) as unknown as FontBytes;
const text = (y: number, content: string, face: FaceName): Primitive => ({
  kind: 'text',
  layer: 'G-ANNO-NOTE',
  at: { x: 1, y },
  content,
  height: 0.125,
  face,
});
const sheet = (id: string, discipline: 'G' | 'S'): Sheet => ({
  id,
  title: `Sheet ${id}`,
  discipline,
  size: id === 'G-001' ? 'ARCH D' : 'ANSI B',
  scaleNote: '',
  viewports: [],
  items: [
    { kind: 'text', layer: 'G-ANNO-NOTE', at: { x: 1, y: 9 }, content: 'Pale', height: 0.1, ink: 'soft' },
    {
      kind: 'polyline',
      layer: 'S-FNDN',
      pen: 'cut',
      fill: 'tint',
      closed: true,
      points: [
        { x: 1, y: 1 },
        { x: 2, y: 1 },
        { x: 2, y: 2 },
      ],
    },
    { kind: 'circle', layer: 'S-COLS', center: { x: 4, y: 4 }, radius: 1, pen: 'hidden' },
    text(5, `Fifteen fi fl AV To 12'-3 1/2" (½) ≤ ± Ø`, 'regular'),
    text(6, 'Semi-bold', 'bold'),
    text(7, 'Condensed with Δ and σ', 'condensed'),
    text(8, 'MARK', 'condensed-bold'),
  ],
});
const set = [sheet('G-001', 'G'), sheet('S-101', 'S'), sheet('S-102', 'S')];
const options = { title: 'Set <1> & (2) – ½', date: new Date('2026-01-02T03:04:05Z') };

const dir = mkdtempSync(join(tmpdir(), 'pdf-'));
afterAll(() => rmSync(dir, { recursive: true }));
/** Runs an independent reader if this machine has it; undefined when it has not. */
function tool(name: string, args: readonly string[]): string | undefined {
  try {
    return execFileSync(name, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
  } catch (e) {
    if ((e as { code?: string }).code === 'ENOENT') return undefined;
    throw e;
  }
}
const pdf = await pdfOf(set, fonts, options);
const file = join(dir, 'set.pdf');
writeFileSync(file, pdf);
const plain = tool('qpdf', ['--qdf', '--object-streams=disable', file, '-']);

describe('pdfOf', () => {
  it('gives the same bytes twice', async () => {
    expect(Buffer.compare(Buffer.from(await pdfOf(set, fonts, options)), Buffer.from(pdf))).toBe(0);
  });

  it('gives the same bytes with the browser build of the library', async () => {
    const browser = `${root}node_modules/pdfkit/js/pdfkit.browser.mjs`;
    const other = await pdfOf(set, fonts, options, () => import(/* @vite-ignore */ browser));
    expect(Buffer.compare(Buffer.from(other), Buffer.from(pdf))).toBe(0);
  });

  it('is small: streams are packed and fonts are subsets', () => {
    expect(pdf.length).toBeLessThan(60_000);
    expect(Buffer.from(pdf).toString('latin1')).toContain('/Filter /FlateDecode');
  });

  it.skipIf(plain === undefined)(
    'an independent reader finds no fault, and the labels, layers and bookmarks we meant',
    () => {
      expect(tool('qpdf', ['--check', file])).toContain('No syntax or stream encoding errors');
      const text = plain!.replace(/\s+/g, ' ');
      for (const id of ['G-001', 'S-101', 'S-102']) expect(text).toContain(`/P (${id})`);
      for (const layer of ['S-FNDN', 'S-COLS', 'G-ANNO-NOTE'])
        expect(text).toMatch(new RegExp(`/Name \\(${layer}\\) /Type /OCG`));
      expect(text).toContain('/Title (Structural)');
      expect(text).toContain('/Title (S-102 Sheet S-102)');
      expect(text).toContain('(D:20260102030405Z)');
      expect(text).toContain('>Set &lt;1&gt; &amp; (2) – ½</rdf:li>');
      expect(text).toContain('/MediaBox [ 0 0 2592 1728 ]');
    },
  );

  it.skipIf(plain === undefined)('groups the layers by discipline', () => {
    const json = JSON.parse(tool('qpdf', ['--json', '--json-key=qpdf', file])!);
    const objects = json.qpdf[1] as Record<string, { value?: Record<string, unknown> }>;
    const name = (ref: string): string => String(objects[`obj:${ref}`]!.value!['/Name']).slice(2);
    const catalog = Object.values(objects).find((o) => o.value?.['/Type'] === '/Catalog')!.value!;
    const config = (catalog['/OCProperties'] as Record<string, Record<string, unknown>>)['/D']!;
    const groups = (config['/Order'] as string[][]).map(([label, ...refs]) => [label, refs.map(name)]);
    expect(groups).toEqual([
      ['u:General', ['G-ANNO-NOTE']],
      ['u:Structural', ['S-COLS', 'S-FNDN']],
    ]);
  });

  it.skipIf(plain === undefined)('draws black line work without any grey', async () => {
    const grey = (pages: string) => new Set([...pages.matchAll(/^([\d.]+) [gG]$/gm)].map((m) => Number(m[1])));
    expect([...grey(plain!)].some((g) => g > 0 && g < 1)).toBe(true);
    const black = join(dir, 'black.pdf');
    writeFileSync(black, await pdfOf(set, fonts, { ...options, black: true }));
    const levels = grey(tool('qpdf', ['--qdf', '--object-streams=disable', black, '-'])!);
    expect([...levels].every((g) => g === 0 || g === 1)).toBe(true);
  });

  it.skipIf(plain === undefined)('carries title, author, subject and keywords', async () => {
    const told = join(dir, 'told.pdf');
    const words = { author: 'the owner', subject: 'For permit', keywords: 'S-101, S-102' };
    writeFileSync(told, await pdfOf(set, fonts, { ...options, ...words }));
    const info = tool('pdfinfo', [told]);
    if (info === undefined) return;
    for (const [key, value] of [
      ['Title', options.title],
      ['Author', words.author],
      ['Subject', words.subject],
      ['Keywords', words.keywords],
    ])
      expect(info).toMatch(new RegExp(`^${key}:\\s+${value!.replace(/[()&]/g, '\\$&')}$`, 'm'));
  });

  it.skipIf(plain === undefined)('embeds four subsets', () => {
    const list = tool('pdffonts', [file]);
    if (list === undefined) return;
    const rows = list.trim().split('\n').slice(2);
    expect(rows).toHaveLength(4);
    for (const r of rows) expect(r).toMatch(/CID TrueType +Identity-H +yes yes yes/);
  });

  it.skipIf(plain === undefined)('text comes out as it went in, ligatures and fallbacks included', () => {
    const out = tool('pdftotext', ['-layout', file, '-']);
    if (out === undefined) return;
    expect(out).toContain(`Fifteen fi fl AV To 12'-3 1/2" (½) ≤ ± Ø`);
    expect(out).toContain('Condensed with Δ and σ');
  });
});

describe('content stream', () => {
  const names = { encode: () => '0001', fontName: () => 'F1', layerName: () => 'L0' };
  it('writes short numbers', () => {
    expect([0.5, -0.25, 12, 0, -0, 1e-7, 1.23456].map(num)).toEqual(['.5', '-.25', '12', '0', '0', '0', '1.2346']);
  });
  it('sets a pen once and closes marked content', () => {
    const line = {
      kind: 'path',
      layer: 'S-BEAM',
      strokes: [[0, 0, 1, 0]],
      closed: false,
      pen: 'new',
      fill: undefined,
      mark: undefined,
      role: undefined,
      path: undefined,
    } as const;
    const out = contentOf([line, line], names);
    expect(out.match(/ w /g)).toHaveLength(1);
    expect(out.match(/BDC/g)).toHaveLength(1);
    expect(out.trim().endsWith('EMC')).toBe(true);
  });
});
