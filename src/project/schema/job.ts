import { given, part } from './leaf.js';
import { choice, date, text } from './plain.js';

export const job = part('Title block: whose job, where, in which units and on which sheets.', {
  title: given(text('Name of the job as printed on every sheet.', 'Gabled patio roof')),
  address: given(text('Street address of the house.', '118 Saltbush Lane, Dry Fork', true)),
  owner: given(text('Owner as on the deed.', 'M. Tarrow', true)),
  parcel: given(text('Parcel or tax number, from the tax bill.', '0417-22-118', true)),
  preparedBy: given(text('Who made the drawings.', 'the owner', true)),
  date: given(date('Date printed in the title block.')),
  units: given(choice('Units of the dimensions on the sheets. The file itself may mix them.', ['us', 'metric'])),
  sheetSize: given(
    choice('Sheet of the set, by its standard name. Ask which sizes the office takes.', [
      'ARCH D',
      'ARCH C',
      'ANSI B',
      'ANSI D',
    ]),
  ),
  scope: given(
    text('Scope of work in plain words, for the cover.', 'New gabled roof on four posts over the existing patio slab.'),
  ),
});
