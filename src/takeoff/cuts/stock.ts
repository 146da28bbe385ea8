/** What sections are called and sold as at a lumber yard. */
import { STOCK_LENGTHS_FT } from '../../catalog/index.js';
import type { Buying } from '../../project/model/buying.js';
import type { Section } from '../../structure/model.js';
import { gradeText } from '../../structure/sections.js';
import { inches } from '../../structure/text.js';
import type { StockSpec } from './model.js';

const TREATED: Readonly<Record<Section['treatment'], string>> = {
  none: '',
  'above-ground': ', treated above ground',
  'ground-contact': ', treated ground contact',
};

/** Glulam and veneer lumber come cut to whole feet. Common practice, no source. */
const FOOT = 12;
const LONGEST_ENGINEERED_FT = 60;

export const sizeOf = (s: Section): string => `${s.nominal.thickness}x${s.nominal.width}`;

function sawn(s: Section, buying: Buying): StockSpec {
  const size = sizeOf(s);
  const own = buying.stock.find((r) => r.size === size);
  const tail = ` ${gradeText(s)}${TREATED[s.treatment]}`;
  return {
    kind: 'lumber',
    single: false,
    item: `${size}${tail}`,
    head: size,
    tail,
    lengths: own?.lengths ?? STOCK_LENGTHS_FT.map((f) => f * 12),
    lengthsFrom: own ? 'project file' : 'common practice, no source',
    kerf: buying.kerf,
    trim: buying.trim,
  };
}

function engineered(s: Section, longest: number): StockSpec {
  const glulam = s.plies === 1 && s.sizeClass === 'glulam';
  const tail = glulam ? ` ${s.grade} glulam${TREATED[s.treatment]}` : ` ${s.grade} LVL${TREATED[s.treatment]}`;
  const head = `${inches(s.plyWidth)} x ${inches(s.depth)}`;
  const most = Math.max(LONGEST_ENGINEERED_FT, Math.ceil(longest / FOOT));
  return {
    kind: 'engineered',
    single: true,
    item: `${head}${tail}`,
    head,
    tail,
    lengths: Array.from({ length: most }, (_, i) => (i + 1) * FOOT),
    lengthsFrom: 'ordered to whole feet; common practice, no source',
    kerf: 0,
    trim: 0,
  };
}

/** Stock of one ply of a section. */
export const specOf = (s: Section, buying: Buying, longest: number): StockSpec =>
  s.nominal.thickness > 0 ? sawn(s, buying) : engineered(s, longest);

/** Reinforcing bars come in 20 ft, some yards cut them to 10 ft. Common practice, no source. */
export const barSpec = (number: number): StockSpec => ({
  kind: 'bar',
  single: false,
  item: `#${number} bar`,
  head: `#${number} bar`,
  tail: '',
  lengths: [120, 240],
  lengthsFrom: 'common practice, no source',
  kerf: 0,
  trim: 0,
});

/** Paper form tubes by inside diameter. Common practice, no source. */
export const tubeSpec = (diameter: number): StockSpec => ({
  kind: 'tube',
  single: false,
  item: `${inches(diameter)} form tube`,
  head: `${inches(diameter)} form tube`,
  tail: '',
  lengths: [48, 96, 144],
  lengthsFrom: 'common practice, no source',
  kerf: 0,
  trim: 0,
});

const feet = (length: number): string => `${Number((length / 12).toFixed(2))}`;

/** Name of a board of a length: `2x10x12 DF-L No. 2`; of bars and tubes `#4 bar, 20 ft`. */
export const boardItem = (s: Pick<StockSpec, 'kind' | 'head' | 'tail'>, length: number): string =>
  s.kind === 'lumber' ? `${s.head}x${feet(length)}${s.tail}` : `${s.head}${s.tail}, ${feet(length)} ft`;
