import { findPanel } from '../../structure/layers.js';
import { line, wholeUp } from '../line.js';
import type { ItemKind, Line, TakeoffContext } from '../model.js';
import type { PanelLayout } from '../panels/model.js';
import { wasteOf } from '../waste.js';

const SQUARE_FEET = 144;

function panelLine(p: PanelLayout): Line {
  const net = p.area / SQUARE_FEET;
  const used = p.pieces.length - p.whole;
  return {
    id: `sheathing:sheathing:${p.item}`,
    group: 'sheathing',
    phase: 'sheathing',
    item: p.item,
    net,
    unit: 'sq ft',
    waste: {
      fraction: (32 * p.sheets) / net - 1,
      rule: 'what the panel layout leaves of whole sheets',
      source: 'panels laid out',
    },
    gross: 32 * p.sheets,
    buy: {
      quantity: p.sheets,
      unit: 'sheet',
      holds: 32,
      step: 1,
      rule: `${p.whole} whole, ${used} pieces cut from ${p.cut.length} more`,
    },
    serves: [p.roof],
    note: `Rule of thumb beside it: area / 32 and 10 % is ${wholeUp((net / 32) * 1.1)} sheets (Navy builder manual).`,
  };
}

/** Clips at panel edges between frames, where the panel's span needs its edges supported and no blocks are asked for. */
function clips(ctx: TakeoffContext, p: PanelLayout): Line[] {
  const roof = ctx.project.cover.roofs.find((r) => r.mark === p.roof)!;
  const panel = findPanel(p.sheathing);
  const { spacing } = roof.framing;
  if (!panel || roof.finish.nailing?.blocked || spacing <= panel.maxSpanUnsupported) return [];
  const count = p.rows
    .filter((r) => r.row > 1)
    .reduce((sum, r) => sum + Math.max(0, Math.round((r.u1 - r.u0) / spacing)), 0);
  return [
    line({
      group: 'sheathing',
      phase: 'sheathing',
      item: `panel edge clip, ${panel.name}`,
      net: count,
      unit: 'each',
      waste: wasteOf(ctx.buying, 'fasteners'),
      sold: { unit: 'each', holds: 1, rule: 'one in each bay of each edge between rows' },
      serves: [p.roof],
      note: `Frames at ${spacing} in are more than ${panel.maxSpanUnsupported} in, the panel’s span without edge support.`,
    }),
  ];
}

export const sheathing: ItemKind = { count: (ctx) => ctx.panels.flatMap((p) => [panelLine(p), ...clips(ctx, p)]) };
