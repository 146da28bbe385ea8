/** Files of the Buy and Site views: the same bytes as the command line writes. */
import {
  type Buy,
  buyPages,
  buyTables,
  csvOf,
  type Derived,
  type FontBytes,
  hirePages,
  pdfOf,
  pricesCsv,
  purchaseTable,
  type Sheet,
  stagesOf,
  stakeOf,
  xlsxOf,
} from '../../../src/index.js';
import type { ExportFile } from './api.js';
import { bought } from './buy-work.js';
import type { WorkFile, WorkOptions } from './work-api.js';

interface Job {
  readonly d: Derived;
  readonly fonts: FontBytes;
  readonly o: WorkOptions;
}
type Content = string | Uint8Array | undefined;

const MIME: Readonly<Record<string, string>> = {
  pdf: 'application/pdf',
  csv: 'text/csv',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
};

const dateOf = (d: Derived): Date => new Date(`${d.project!.job.date}T00:00:00Z`);

const pdf = ({ d, fonts }: Job, sheets: readonly Sheet[], title: string): Promise<Uint8Array> =>
  pdfOf(sheets, fonts, { title, author: d.project!.job.preparedBy, date: dateOf(d) });

const buying =
  (make: (b: Buy, j: Job) => Content | Promise<Content>) =>
  async (j: Job): Promise<Content> => {
    const b = await bought(j.d, j.o);
    return b && make(b, j);
  };

/** Titles are those of the command line. */
const MAKERS: Readonly<Record<WorkFile, (j: Job) => Content | Promise<Content>>> = {
  'buy.pdf': buying((b, j) => pdf(j, buyPages(b), `What to buy: ${b.project.job.title}`)),
  'hire.pdf': buying((b, j) => pdf(j, hirePages(b), `Hiring: ${b.project.job.title}`)),
  'buy.xlsx': buying((b, j) => xlsxOf(buyTables(b), dateOf(j.d))),
  'buy.csv': buying((b) => csvOf(purchaseTable(b))),
  'prices.csv': buying((b) => pricesCsv(b.takeoff, b.prices)),
  'stake.pdf': (j) => sitePdf(j, stakeOf(j.d)?.sheets, 'Stake-out'),
  'stake.csv': (j) => stakeOf(j.d)?.csv,
  'stages.pdf': (j) => sitePdf(j, stagesOf(j.d, { today: j.o.today })?.sheets, 'Stages'),
  'stages.csv': (j) => stagesOf(j.d, { today: j.o.today })?.csv,
};

function sitePdf(j: Job, sheets: readonly Sheet[] | undefined, what: string): Promise<Uint8Array> | undefined {
  const { title, address } = j.d.project!.job;
  return sheets && pdf(j, sheets, `${what}: ${title}, ${address}`);
}

export async function workFile(
  name: WorkFile,
  d: Derived,
  fonts: Readonly<Record<string, Uint8Array>>,
  o: WorkOptions,
): Promise<ExportFile | undefined> {
  if (!d.project) return undefined;
  const content = await MAKERS[name]({ d, fonts: fonts as FontBytes, o });
  if (content === undefined) return undefined;
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  return { name, mime: MIME[name.slice(name.lastIndexOf('.') + 1)] ?? 'application/octet-stream', bytes };
}
