/** Files made from the set: the same bytes as the command line writes. */

import {
  type Derived,
  dxfModelPlan,
  dxfOf,
  type FontBytes,
  pdfOf,
  type Sheet,
  svgOf,
  why,
  whyText,
} from '../../../src/index.js';
import type { ExportFile, ExportKind } from './api.js';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

interface Job {
  readonly d: Derived;
  readonly sheets: readonly Sheet[];
  readonly one: Sheet | undefined;
  readonly fonts: FontBytes;
}

async function pdf({ d, fonts }: Job, sheets: readonly Sheet[], name: string): Promise<ExportFile> {
  const job = d.project!.job;
  const data = await pdfOf(sheets, fonts, {
    title: `${job.title}, ${job.address}`,
    author: job.preparedBy,
    subject: d.verdict.issuable ? 'For permit' : 'PRELIMINARY – NOT FOR PERMIT',
    keywords: sheets.map((s) => s.id).join(', '),
    date: new Date(`${job.date}T00:00:00Z`),
  });
  return { name, mime: 'application/pdf', bytes: data };
}

const dxf = (name: string, text: string): ExportFile => ({ name, mime: 'image/vnd.dxf', bytes: bytes(text) });

/** Every step of every result, part by part, as plain text. */
function calculations({ d }: Job): ExportFile {
  const marks = [...new Set(d.results.map((r) => r.subject))];
  const parts = marks.flatMap((m) => {
    const w = why(d, m);
    return w ? [whyText(w)] : [];
  });
  return { name: 'calculations.txt', mime: 'text/plain', bytes: bytes(parts.join('\n')) };
}

const MAKERS: Readonly<Record<ExportKind, (j: Job) => Promise<ExportFile[]> | ExportFile[]>> = {
  pdf: async (j) => [await pdf(j, j.sheets, 'set.pdf')],
  'sheet-pdf': async (j) => (j.one ? [await pdf(j, [j.one], `${j.one.id}.pdf`)] : []),
  'sheet-svg': (j) => (j.one ? [{ name: `${j.one.id}.svg`, mime: 'image/svg+xml', bytes: bytes(svgOf(j.one)) }] : []),
  dxf: (j) => (j.one ? [dxf(`${j.one.id}.dxf`, dxfOf(j.one))] : []),
  'dxf-plan': (j) => {
    const plan = dxfModelPlan(j.sheets);
    return plan === undefined ? [] : [dxf('model-plan.dxf', plan)];
  },
  calculations: (j) => [calculations(j)],
  'read-only': (j) => [{ name: 'set.html', mime: 'text/html', bytes: bytes(readOnly(j)) }],
};

export async function exportFiles(
  kind: ExportKind,
  d: Derived,
  sheets: readonly Sheet[],
  fonts: Readonly<Record<string, Uint8Array>>,
  sheet: string | undefined,
): Promise<readonly ExportFile[]> {
  if (!d.project || sheets.length === 0) return [];
  return MAKERS[kind]({ d, sheets, fonts: fonts as FontBytes, one: sheets.find((s) => s.id === sheet) });
}

const escaped = (s: string): string =>
  s.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

const base64 = (data: Uint8Array): string => {
  let s = '';
  for (let i = 0; i < data.length; i += 0x8000) s += String.fromCharCode(...data.subarray(i, i + 0x8000));
  return btoa(s);
};

const FAMILIES: Readonly<Record<string, readonly [string, number]>> = {
  regular: ['IBM Plex Sans', 400],
  bold: ['IBM Plex Sans', 600],
  condensed: ['IBM Plex Sans Condensed', 400],
  'condensed-bold': ['IBM Plex Sans Condensed', 600],
};

/** The set as one page without any script, to send to a contractor or a committee: links to sheets, sheets one below another. */
function readOnly({ d, sheets, fonts }: Job): string {
  const job = d.project!.job;
  const faces = Object.entries(FAMILIES)
    .map(
      ([face, [family, weight]]) =>
        `@font-face{font-family:'${family}';font-weight:${weight};src:url(data:font/ttf;base64,${base64(fonts[face as keyof FontBytes])})}`,
    )
    .join('\n');
  const stamp = d.verdict.issuable ? 'For permit' : 'Preliminary – not for permit';
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(job.title)}</title>
<style>
${faces}
body{margin:0;background:#e9e3d5;color:#1c2a3a;font:16px/1.45 'IBM Plex Sans',sans-serif}
header,nav,section{max-width:1500px;margin:0 auto;padding:16px}
nav a{display:inline-block;padding:8px 12px 8px 0;color:#8a3520}
section>div{overflow-x:auto;background:#fff;box-shadow:0 1px 4px #0003}
section svg{display:block;width:100%;min-width:900px;height:auto}
@media print{header,nav,h2{display:none}body{background:#fff}section{padding:0;max-width:none;break-after:page}section>div{box-shadow:none}}
</style></head><body>
<header><h1>${escaped(job.title)}</h1><p>${escaped(job.address)} · ${escaped(job.date)} · <strong>${stamp}</strong></p>
<p>Prepared with a program that certifies nothing. The authority having jurisdiction decides. Do not scale lengths off a screen: read the dimensions.</p></header>
<nav>${sheets.map((s) => `<a href="#${escaped(s.id)}">${escaped(s.id)} ${escaped(s.title)}</a>`).join('')}</nav>
${sheets.map((s) => `<section id="${escaped(s.id)}"><h2>${escaped(s.id)} ${escaped(s.title)}</h2><div>${svgOf(s)}</div></section>`).join('\n')}
</body></html>
`;
}
