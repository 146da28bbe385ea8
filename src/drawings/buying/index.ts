/** The buying and hiring papers of a project, as pages. */
import type { Buy } from '../../takeoff/index.js';
import type { Sheet } from '../ir/index.js';
import { type Paper, type PaperData, papersOf } from '../papers/index.js';
import { costPaper } from './costs.js';
import { cutListPaper } from './cut-list.js';
import { hirePapers } from './hire.js';
import { concretePaper, ordersPaper } from './orders.js';
import { panelPaper } from './panels.js';
import { takeOffPaper } from './take-off.js';
import { trussPaper } from './trusses.js';

const data = (b: Buy, prefix: string): PaperData => ({
  prefix,
  project: b.project.job.title,
  address: b.project.job.address,
  date: b.project.job.date,
  ...(b.pricesAre ? { banner: 'INVENTED PRICES' } : {}),
});

const there = (list: readonly (Paper | undefined)[]): Paper[] => list.filter((p): p is Paper => p !== undefined);

/** Take-off, orders, cut list, panel layout, cost. */
export const buyPages = (b: Buy): Sheet[] =>
  papersOf(
    there([
      takeOffPaper(b),
      ordersPaper(b),
      concretePaper(b),
      trussPaper(b),
      cutListPaper(b),
      panelPaper(b),
      costPaper(b),
    ]),
    data(b, 'BUY'),
  );

/** Scopes with bid forms, bids compared, checklist. */
export const hirePages = (b: Buy): Sheet[] => {
  const { banner: _, ...rest } = data(b, 'HIRE');
  return papersOf(hirePapers(b), rest);
};
