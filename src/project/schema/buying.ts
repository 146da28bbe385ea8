import type { z } from 'zod';
import { PHASES, WASTES } from '../model/buying.js';
import { given, list, maybe, part } from './leaf.js';
import { choice, date, number, size, text } from './plain.js';
import { length, percent } from './quantities.js';

const phase = given(choice('Activity it belongs to.', PHASES, 'framing'));
const money = (what: string, example: number) => number(`${what}, in your currency.`, example, 0, 1e7);
const lengths = list('Lengths sold.', given(length('A length.', '16 ft', 24, 720)))
  .min(1)
  .max(30);

const concrete = part('How concrete comes.', {
  by: given(choice('In bags, or from a plant.', ['bags', 'ready-mix'])),
  bag: maybe(number('Weight of a bag, lb: 40, 50, 60 or 80.', 80, 40, 80, true)),
  leastLoad: maybe(number('Least load the plant brings, cubic yards.', 1, 0, 12)),
  shortLoad: maybe(number('Load below which the plant asks more, cubic yards.', 4, 0, 12)),
});

const waste = list(
  'Waste allowances in place of the usual ones.',
  part('An allowance.', {
    of: given(choice('What for.', WASTES, 'concrete')),
    percent: given(percent('Bought over the net quantity.', '10 %', 0, 1)),
    from: given(text('Why this much.', 'my own jobs', true)),
  }),
).max(30);

const work = list(
  'Who does which activity.',
  part('An activity.', {
    phase,
    by: given(choice('Your own work, or a subcontract.', ['own', 'subcontract'], 'subcontract')),
    price: maybe(money('The work alone, without material', 1800)),
    from: maybe(text('Where the price comes from.', 'bid of 2026-03-01', true)),
  }),
).max(20);

const extras = list(
  'Things to buy that the drawings do not hold.',
  part('A thing.', {
    item: given(text('What it is.', 'cedar post wrap 1x8')),
    unit: given(text('Unit it is sold by.', 'ft')),
    quantity: given(number('How much, waste included.', 64, 0, 1e6)),
    phase,
  }),
).max(200);

const bids = list(
  'Bids as received, each on one scope of work.',
  part('A bid.', {
    trade: given(text('Name of the scope it answers.', 'concrete')),
    bidder: given(text('Who bids.', 'Dry Fork Concrete')),
    date: given(date('Date of the bid.')),
    total: given(money('Sum of the bid', 4200)),
    deposit: maybe(money('Asked before work begins', 400)),
    lines: list(
      'What it says of each line of the scope.',
      part('A line.', {
        line: given(text('Number of the line in the scope.', 'C3')),
        says: given(choice('In the bid, left out, or offered otherwise.', ['included', 'excluded', 'different'])),
        price: maybe(money('Price of this line', 600)),
        note: maybe(text('What is different.', '3,000 psi instead of 2,500', true)),
      }),
    )
      .max(100)
      .optional(),
  }),
).max(60);

export const buying = part('How material is bought and who does the work. Nothing here is designed with.', {
  stock: list(
    'Lengths your yard sells, size by size; a size without a row has 8 ft to 20 ft by 2 ft.',
    part('A size.', { size: given(size('Nominal size.', '2x10')), lengths }),
  )
    .max(60)
    .optional(),
  kerf: maybe(length('Width of the saw’s cut.', '1/8 in', 0, 0.5)),
  trim: maybe(length('Cut off every board before use, for end checks and squaring.', '1 in', 0, 12)),
  concrete: concrete.optional(),
  waste: waste.optional(),
  work: work.optional(),
  extras: extras.optional(),
  delivery: part('For plants and yards.', {
    date: maybe(date('Wanted on the site.', true)),
    access: maybe(text('How a truck gets in.', 'alley behind the lot, 10 ft gate', true)),
    contact: maybe(text('Who is called.', 'owner', true)),
  }).optional(),
  bids: bids.optional(),
});

export type WrittenBuying = z.output<typeof buying>;
