/** Everything on the sheet by name, for the keyboard and for screen readers: to ask, to change, to move. */
import { memo, useState } from 'react';
import { pick } from '../store/desk.js';
import { drop } from '../store/project.js';
import type { Point } from './camera.js';
import type { Grip } from './handles.js';
import type { Thing } from './hit.js';

/** How far an arrow key moves the paper, pixels; also the way it points. */
export const ARROWS: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: 60, y: 0 },
  ArrowRight: { x: -60, y: 0 },
  ArrowUp: { x: 0, y: 60 },
  ArrowDown: { x: 0, y: -60 },
};

const across = (g: Grip, way: Point): number => g.handle.axis.y * way.y - g.handle.axis.x * way.x;

/** Moves a grip by one step for an arrow key; an arrow square to its way does nothing. */
export function step(g: Grip, way: Point, fine: boolean): boolean {
  const a = across(g, way);
  if (Math.abs(a) < 1) return false;
  void drop(g.handle.id, Math.sign(a) * (fine ? 0.5 : 1), `${g.handle.mark} moved`);
  return true;
}

interface Props {
  readonly sheet: string;
  readonly things: readonly Thing[];
  readonly grips: readonly Grip[];
  /** Shows where a thing is. */
  readonly show: (thing: Thing | undefined) => void;
  readonly ask: (thing: Thing) => void;
  readonly hold: (grip: Grip | undefined) => void;
}

export const Things = memo(function Things({ sheet, things, grips, show, ask, hold }: Props) {
  const [here, setHere] = useState(false);
  return (
    <nav
      className="sheet-things"
      aria-label={`Things on sheet ${sheet}`}
      data-here={here || undefined}
      onFocus={() => setHere(true)}
      onBlur={() => setHere(false)}
    >
      {things.map((t) => (
        <button
          type="button"
          key={`${t.label}${t.hit.item}`}
          onFocus={() => show(t)}
          onBlur={() => show(undefined)}
          onClick={() => ask(t)}
        >
          {t.label}
        </button>
      ))}
      {grips.map((g) => (
        <button
          type="button"
          key={g.handle.id}
          onFocus={() => {
            hold(g);
            pick(g.handle.mark);
          }}
          onBlur={() => hold(undefined)}
          onKeyDown={(e) => {
            const way = ARROWS[e.key];
            if (!way) return;
            step(g, way, e.shiftKey);
            e.preventDefault();
          }}
        >
          Move {g.handle.what} (arrow keys)
        </button>
      ))}
    </nav>
  );
});
