import { INVENTED, type PriceRow, readPricesCsv, type SizedProject, sizeProject } from '../../../src/index.js';
import { readText, UserFault } from '../files.js';
import { EXIT, type Io } from '../io.js';
import { exitOf, load, printIssue } from './check.js';

export interface SizeFlags {
  readonly prices?: string;
  readonly inventedPrices?: boolean;
  readonly most?: string;
  readonly json?: boolean;
}

const WARNING =
  'Products named for joints keep their names: see that bases, caps and hangers are made for these sizes before you take them.';

function text(s: SizedProject, invented: boolean): string {
  const head = `${s.combinations} combinations: ${s.derived} worked out in full, ${s.pruned} passed over\n`;
  if (!s.best)
    return `${head}${s.finished ? 'none of them passes every check' : 'none found within the limit; raise --most'}\n`;
  const rows = s.best.choices.map((c) => `  ${c.dimension.padEnd(24)} ${c.option}\n`).join('');
  const steps = s.steps.map((x) => `  ${x.dimension}: ${x.option} fails ${x.fails.slice(0, 3).join('; ')}\n`).join('');
  return [
    head,
    `least cost that passes: ${s.best.cost.toFixed(2)}${invented ? ` (${INVENTED})` : ''}\n`,
    rows,
    ...(steps ? ['the next cheaper of each does not do:\n', steps] : []),
    `${WARNING}\n`,
    ...s.misfits.map((m) => `  not made for these sizes by its own words: ${m}\n`),
  ].join('');
}

export async function size(io: Io, file: string, o: SizeFlags): Promise<number> {
  if (o.prices !== undefined && o.inventedPrices) throw new UserFault('give --prices or --invented-prices, not both');
  const most = o.most === undefined ? undefined : Number(o.most);
  if (most !== undefined && !(Number.isInteger(most) && most > 0))
    throw new UserFault(`--most ${o.most} is not a whole number of combinations`);
  io.progress(`reading ${file}\n`);
  const d = await load(file);
  for (const i of d.issues) io.err(printIssue(file, i));
  if (!d.project || !d.structure) {
    io.err('Nothing was sized: put the errors above right first.\n');
    return exitOf(d);
  }
  let prices: readonly PriceRow[] | 'invented' = o.inventedPrices ? 'invented' : d.project.prices;
  if (o.prices !== undefined) {
    const { value, issues } = readPricesCsv(await readText(o.prices));
    for (const i of issues) io.err(printIssue(o.prices, i));
    if (!value) throw new UserFault(`${o.prices}: no price was taken; put the lines above right first`);
    prices = value;
  }
  if (prices.length === 0)
    throw new UserFault('there are no prices to compare sizes by: give --prices, or --invented-prices to try it out');
  io.progress('searching\n');
  const s = sizeProject(d.project, { prices, ...(most === undefined ? {} : { most }) });
  if (o.json) {
    const { best, ...rest } = s;
    io.out(
      `${JSON.stringify({ ...rest, ...(best ? { choices: best.choices, cost: best.cost } : {}), warning: WARNING }, null, 2)}\n`,
    );
  } else io.out(text(s, prices === 'invented'));
  return s.best ? EXIT.issuable : EXIT.notIssuable;
}
