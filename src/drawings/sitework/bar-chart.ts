/** The build order as bars over days: work filled, waits hatched by a thin line, the critical chain in ink. Paper inches. */
import type { Schedule } from '../../sitework/sequence/index.js';
import { type Block, pencil } from '../annotate/index.js';
import { type Primitive, wrapText } from '../ir/index.js';
import { PAPER_STYLE } from '../papers/index.js';

const H = PAPER_STYLE.note;
const ROW = 2.1 * H;
const HEAD = 3.2 * H;
const NAMES = 2.75;

/** Days between marks so that about a dozen fit. */
const stepOf = (days: number): number => [1, 2, 5, 7, 14, 28].find((s) => days / s <= 12) ?? 56;

export function barChart(schedule: Schedule): Block {
  const { bars, days } = schedule;
  const height = HEAD + bars.length * ROW + H;
  return {
    kind: 'drawing',
    height,
    draw: (at, width): Primitive[] => {
      const p = pencil('G-ANNO-SCHD', 'rule');
      const left = at.x + NAMES;
      const unit = (width - NAMES - 0.3) / Math.max(1, days);
      const x = (day: number): number => left + day * unit;
      const top = at.y - HEAD;
      const bottom = top - bars.length * ROW;
      const out: Primitive[] = [p.text(at.x, at.y - 2.2 * H, 'Days from the start', H, { face: 'condensed' })];
      const step = stepOf(days);
      for (let d = 0; d <= days + 1e-9; d += step) {
        out.push(p.line(x(d), top + 0.4 * H, x(d), bottom, 'hatch'));
        out.push(p.text(x(d), at.y - 2.2 * H, String(d), H, { face: 'condensed', align: 'center' }));
      }
      out.push(p.line(at.x, top + 0.4 * H, at.x + width, top + 0.4 * H, 'rule-bold'));
      bars.forEach((b, i) => {
        const y = top - (i + 1) * ROW + 0.45 * ROW;
        const name = wrapText(b.title, NAMES - 0.12, H, b.critical ? 'condensed-bold' : 'condensed')[0]!;
        out.push(p.text(at.x, y - H / 2, name, H, { face: b.critical ? 'condensed-bold' : 'condensed' }));
        const k = 0.32 * ROW;
        out.push(
          p.shape(
            [
              [x(b.start), y - k],
              [Math.max(x(b.end), x(b.start) + 0.04), y - k],
              [Math.max(x(b.end), x(b.start) + 0.04), y + k],
              [x(b.start), y + k],
            ],
            'symbol',
            b.critical ? 'ink' : 'paper',
          ),
        );
        // What it waits for after the end of the one before: cure, marking, a day's call.
        for (const w of b.after) {
          if (w.days <= 0) continue;
          const before = bars.find((o) => o.id === w.on)!;
          if (before.end + w.days < b.start - 1e-9) continue;
          out.push(p.line(x(before.end), y, x(b.start), y, 'hidden'));
        }
        if (b.slack > 0.25) out.push(p.line(x(b.end), y - k, x(b.end + b.slack), y - k, 'hatch'));
        out.push(p.line(at.x, top - (i + 1) * ROW, at.x + width, top - (i + 1) * ROW, 'hatch'));
      });
      out.push(p.line(at.x, bottom, at.x + width, bottom, 'symbol'));
      return out;
    },
  };
}

export const BAR_KEY =
  'Filled: on the chain that decides the end. Open: may slip by the thin line behind it. Dashed: waiting, for concrete, the utilities or the inspector. Durations are for two people and common practice; waits for concrete and trusses have their sources in the list.';
