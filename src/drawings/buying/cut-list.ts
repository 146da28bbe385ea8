import type { Buy, CutGroup } from '../../takeoff/index.js';
import { byMark, marks } from '../../takeoff/line.js';
import type { Block } from '../annotate/index.js';
import type { Paper } from '../papers/index.js';
import { alikeBoards, boardBlock } from './cut-picture.js';
import { count, len, number, percent, ranges } from './words.js';

const feet = (x: number): string => `${number(x / 12)} ft`;

function standing(g: CutGroup): string {
  const { plan } = g;
  const bought = plan.boards.reduce((s, b) => s + b.stock.length, 0);
  const used = plan.boards.reduce((s, b) => s + b.cuts.reduce((t, c) => t + c.length, 0), 0);
  if (g.single)
    return `${count(g.cuts.length, 'piece')}, each a length of its own, ${g.lengthsFrom}. Cut on the site, measured there.`;
  const proof =
    plan.gap < 1e-9
      ? `proved the least ${g.priced ? 'cost' : 'length'} there is`
      : `no other plan can be more than ${percent(plan.gap)} ${g.priced ? 'cheaper' : 'shorter'}`;
  const saved =
    plan.cost < 0.999 * plan.baseline
      ? `; ${percent(1 - plan.cost / plan.baseline)} less than cutting longest first`
      : '';
  return `${count(g.cuts.length, 'piece')}, ${feet(used)}, from ${count(plan.boards.length, g.kind === 'lumber' ? 'board' : 'length')}, ${feet(bought)}: ${proof}${saved}. Lengths sold: ${g.lengthsFrom}.`;
}

/** Pieces of one length and use together. */
function pieceTable(g: CutGroup): Block {
  const rows = new Map<string, { marks: string[]; count: number; length: string; words: string }>();
  for (const c of [...g.cuts].sort((a, b) => byMark(a.mark, b.mark) || b.length - a.length)) {
    const words = [c.what.replace(/^ply \d+ of (\d+)/, 'one of $1 plies'), c.ends ?? '']
      .filter((w) => w !== '')
      .join('; ');
    const key = `${len(c.length)}|${words}`;
    const row = rows.get(key) ?? { marks: [], count: 0, length: len(c.length), words };
    rows.set(key, { ...row, marks: [...row.marks, c.mark], count: row.count + 1 });
  }
  return {
    kind: 'table',
    columns: [
      { head: 'Mark', face: 'condensed-bold', width: 0.95 },
      { head: 'Pieces', align: 'right', width: 0.65 },
      { head: 'Length', align: 'right', width: 1.05 },
      { head: 'What, and how its ends are cut', grow: true },
    ],
    rows: [...rows.values()].map((r) => [ranges(marks(r.marks)), String(r.count), r.length, r.words]),
  };
}

function groupBlocks(g: CutGroup, kerf: number): Block[] {
  const longest = Math.max(...g.plan.boards.map((b) => b.stock.length));
  return [
    { kind: 'heading', text: g.item },
    { kind: 'para', text: standing(g), keep: true },
    ...alikeBoards(g.plan.boards).map((a) => boardBlock(a, longest, kerf)),
    pieceTable(g),
  ];
}

/** Boards, engineered pieces, bars and tubes, each stock by itself. */
export function cutListPaper(b: Buy): Paper {
  const groups = [...b.takeoff.cuts].sort((x, y) => KINDS.indexOf(x.kind) - KINDS.indexOf(y.kind));
  return {
    title: 'Cut list',
    sub: 'Board by board, longest piece first; offcuts serve the blocks',
    blocks: [
      {
        kind: 'para',
        text: `Each board is trimmed by ${len(b.buying.trim)} for end checks unless one piece takes all of it; the saw takes ${len(b.buying.kerf)}. Shaded ends are left over. Sight along every board first and keep the bad end for short pieces. Measure posts and whatever meets finished work on the site before you cut. Wear eye, ear and dust protection; do not burn treated offcuts.`,
      },
      ...groups.flatMap((g) => groupBlocks(g, g.kerf)),
    ],
  };
}

const KINDS: readonly CutGroup['kind'][] = ['engineered', 'lumber', 'bar', 'tube'];
