import type { Buy, CutGroup } from '../../takeoff/index.js';
import type { Block } from '../annotate/index.js';
import type { Paper } from '../papers/index.js';
import { alikeBoards, boardBlock } from './cut-picture.js';
import { len, number, percent } from './words.js';

const feet = (x: number): string => `${number(x / 12)} ft`;

function standing(g: CutGroup): string {
  const { plan } = g;
  const bought = plan.boards.reduce((s, b) => s + b.stock.length, 0);
  const used = plan.boards.reduce((s, b) => s + b.cuts.reduce((t, c) => t + c.length, 0), 0);
  const proof =
    plan.gap < 1e-9
      ? `proved the least ${g.priced ? 'cost' : 'length'} there is`
      : `no other plan can be more than ${percent(plan.gap)} ${g.priced ? 'cheaper' : 'shorter'}`;
  const saved =
    plan.cost < 0.999 * plan.baseline
      ? `; ${percent(1 - plan.cost / plan.baseline)} less than cutting longest first`
      : '';
  return `${g.cuts.length} pieces, ${feet(used)}, from ${plan.boards.length} boards, ${feet(bought)}: ${proof}${saved}. Lengths sold: ${g.lengthsFrom}.`;
}

function groupBlocks(g: CutGroup, kerf: number): Block[] {
  const longest = Math.max(...g.plan.boards.map((b) => b.stock.length));
  const names = [...new Set(g.cuts.map((c) => c.what).filter((w) => w !== ''))];
  return [
    { kind: 'heading', text: g.item },
    { kind: 'para', text: standing(g), keep: true },
    ...(names.length > 0 && names.length <= 6
      ? [{ kind: 'para' as const, text: `Pieces: ${names.join('; ')}.`, face: 'condensed' as const, keep: true }]
      : []),
    ...alikeBoards(g.plan.boards).map((a) => boardBlock(a, longest, kerf)),
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
