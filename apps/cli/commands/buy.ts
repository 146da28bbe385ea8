import { join } from 'node:path';
import {
  type Buy,
  buyJson,
  buyOf,
  buyPages,
  buyTables,
  compareChoices,
  csvOf,
  deriveProject,
  drawingInput,
  hirePages,
  inventedPrices,
  type PriceRow,
  pdfOf,
  pricesCsv,
  purchaseTable,
  readPricesCsv,
  xlsxOf,
} from '../../../src/index.js';
import { readText, UserFault, writeWhole } from '../files.js';
import type { Io } from '../io.js';
import { loadSolver } from '../solver.js';
import { exitOf, load, printIssue } from './check.js';
import { fonts } from './fonts.js';

export interface BuyFlags {
  readonly output: string;
  readonly prices?: string;
  readonly inventedPrices?: boolean;
  readonly compare?: boolean;
  readonly json?: boolean;
}

async function pricesOf(io: Io, o: BuyFlags): Promise<readonly PriceRow[] | 'invented' | undefined> {
  if (o.inventedPrices) return 'invented';
  if (o.prices === undefined) return undefined;
  const { value, issues } = readPricesCsv(await readText(o.prices));
  for (const i of issues) io.err(printIssue(o.prices, i));
  if (!value) throw new UserFault(`${o.prices}: no price was taken; put the lines above right first`);
  return value;
}

/** What a reader wants to know first. */
function summary(b: Buy): string {
  const { costs, takeoff } = b;
  const plans = takeoff.cuts.filter((g) => g.plan.boards.length > 0);
  const proved = plans.filter((g) => g.plan.gap < 1e-9).length;
  const mismatches = b.trusses.reduce((n, t) => n + t.mismatches.length, 0);
  return [
    `${takeoff.lines.length} lines to buy; ${proved} of ${plans.length} cutting plans proved least`,
    ...(takeoff.open.length > 0 ? [`not counted: ${takeoff.open.length}, see the first page`] : []),
    ...(mismatches > 0 ? [`truss order: ${mismatches} things do not agree, see the truss page`] : []),
    costs.unpriced.length > 0
      ? `prices: ${costs.lines.length - costs.unpriced.length} of ${costs.lines.length} lines; fill prices.csv and give it with --prices`
      : `material ${costs.material.toFixed(2)}, work ${costs.work.toFixed(2)}${b.pricesAre ? ' at INVENTED prices' : ''}`,
  ]
    .map((line) => `${line}\n`)
    .join('');
}

export async function buy(io: Io, file: string, o: BuyFlags): Promise<number> {
  if (o.prices !== undefined && o.inventedPrices) throw new UserFault('give --prices or --invented-prices, not both');
  io.progress(`reading ${file}\n`);
  const d = await load(file);
  for (const i of d.issues) io.err(printIssue(file, i));
  if (!d.project || !d.structure) {
    io.err('Nothing was taken off: put the errors above right first.\n');
    return exitOf(d);
  }
  const prices = await pricesOf(io, o);
  const solve = await loadSolver();
  io.progress('planning the cuts\n');
  const own = prices === 'invented' ? undefined : prices;
  const compared = o.compare
    ? compareChoices(d.project, deriveProject, {
        solve,
        ...(own ? { prices: own } : {}),
        ...(prices === 'invented' ? { priceList: inventedPrices } : {}),
      })
    : undefined;
  const b = buyOf(d.project, d.structure, drawingInput(d), { solve, prices, compared });
  const { job } = d.project;
  const date = new Date(`${job.date}T00:00:00Z`);
  const faces = await fonts();
  const about = { author: job.preparedBy, date };
  // Everything is made before the first file is written, so that a fault leaves no half set.
  const files: readonly (readonly [string, string | Uint8Array])[] = [
    ['buy.pdf', await pdfOf(buyPages(b), faces, { ...about, title: `What to buy: ${job.title}` })],
    ['hire.pdf', await pdfOf(hirePages(b), faces, { ...about, title: `Hiring: ${job.title}` })],
    ['buy.xlsx', await xlsxOf(buyTables(b), date)],
    ['buy.csv', csvOf(purchaseTable(b))],
    ['prices.csv', pricesCsv(b.takeoff, b.prices)],
    ['buy.json', `${JSON.stringify(buyJson(b), null, 2)}\n`],
  ];
  const written: string[] = [];
  for (const [name, content] of files) {
    const path = join(o.output, name);
    await writeWhole(path, content);
    written.push(path);
  }
  io.out(
    o.json
      ? `${JSON.stringify({ files: written, issuable: d.verdict.issuable })}\n`
      : `${summary(b)}${written.join('\n')}\n`,
  );
  return exitOf(d);
}
