/** Notes beside a view of the tie-in sheet, their leaders running into it. */
import type { Vec2 } from '../../base/vec.js';
import { noteColumn } from '../annotate/index.js';
import { type Rect, toPaper, type Viewport } from '../ir/index.js';
import type { SheetContext } from './contract.js';

export interface NotesBeside {
  /** Where each points, in the view's own axes. */
  readonly notes: readonly { readonly target: Vec2; readonly text: string; readonly mark: string }[];
  readonly viewport: Viewport;
  /** Paper of the view, and of view and notes together. */
  readonly view: Rect;
  readonly box: Rect;
  readonly width: number;
}

export const notesBeside = ({ style }: SheetContext, n: NotesBeside): ReturnType<typeof noteColumn> =>
  noteColumn({
    notes: n.notes.map((k) => ({ ...k, target: toPaper(n.viewport, k.target) })),
    x: n.view.x + n.view.w + style.gutter,
    side: 'right',
    top: n.box.y + n.box.h,
    bottom: n.box.y,
    width: n.width,
    layer: 'S-ANNO-NOTE',
    style,
  });
