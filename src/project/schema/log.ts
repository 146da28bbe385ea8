import type { z } from 'zod';
import { given, list, part } from './leaf.js';
import { choice, date, number, text } from './plain.js';
import { approvalDays, approvalKind, asBuilt, inspections } from './site-log.js';

export const prices = list(
  'What things cost where you buy.',
  part('A price.', {
    item: given(text('What it is, as the take-off names it.', '2x10x12 No. 2')),
    unit: given(text('Unit it is sold by.', 'each')),
    price: given(number('Price of one unit, in your currency.', 21.5, 0, 1e6)),
  }),
).max(5000);

export const log = part('What happened: revisions and approvals.', {
  revisions: list(
    'Revisions of the drawings.',
    part('A revision.', {
      number: given(text('Number or letter in its triangle.', '1')),
      date: given(date('Date of the revision.')),
      note: given(text('What changed.', 'post P2 moved', true)),
    }),
  )
    .max(200)
    .optional(),
  approvals: list(
    'Approvals needed and got.',
    part('An approval.', {
      body: given(text('Who approves.', 'Zoning clearance')),
      state: given(choice('How far it is.', ['needed', 'applied', 'granted', 'refused'])),
      date: given(date('Date of the last step; empty when none.', true)),
      note: given(text('Remark.', 'verbal, confirm in writing', true)),
      kind: approvalKind,
      lapsesAfter: approvalDays,
    }),
  )
    .max(200)
    .optional(),
  inspections: inspections.optional(),
  asBuilt: asBuilt.optional(),
});

export type WrittenLog = z.output<typeof log>;
export type WrittenPrices = z.output<typeof prices>;
