import { expect, it } from 'vitest';
import type { Sheet } from '../ir/index.js';
import { separateFiles } from './files.js';

const sheet = (id: string, file?: Sheet['file']): Sheet => ({
  id,
  title: id,
  discipline: 'S',
  size: 'ARCH D',
  viewports: [],
  items: [],
  scaleNote: '',
  ...(file && { file }),
});

it('puts every sheet in one file and makes no empty one', () => {
  const set = [sheet('G-001'), sheet('C-101', 'site-plan'), sheet('S-701', 'calculations'), sheet('A-201')];
  expect(separateFiles(set).map((f) => [f.name, f.sheets.map((s) => s.id)])).toEqual([
    ['site-plan', ['C-101']],
    ['drawings', ['G-001', 'A-201']],
    ['calculations', ['S-701']],
  ]);
});
