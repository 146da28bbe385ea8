/**
 * Cut panels packed into sheets: straight cuts across the whole of what is left, strength axis kept, largest first. Panels are
 * laid with gaps about as wide as a saw's cut, so the cut itself takes nothing.
 */
import { SHEET_LENGTH, SHEET_WIDTH } from '../../catalog/index.js';
import type { CutSheet, PanelPiece } from './model.js';

interface Free {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}
interface Open {
  readonly pieces: { piece: PanelPiece; x: number; y: number }[];
  free: Free[];
}

const SAME = 1 / 16;

const sizeOf = (p: PanelPiece): { w: number; h: number } => ({ w: p.u1 - p.u0, h: p.v1 - p.v0 });

/** What is left of a rectangle when a piece is cut from its corner: the longer rest is kept whole. */
function splitRest(f: Free, w: number, h: number): Free[] {
  const right = f.w - w;
  const above = f.h - h;
  const tall = right * f.h >= above * f.w;
  const parts: Free[] = [
    { x: f.x + w, y: f.y, w: right, h: tall ? f.h : h },
    { x: f.x, y: f.y + h, w: tall ? w : f.w, h: above },
  ];
  return parts.filter((p) => p.w > 1 && p.h > 1);
}

export function packPieces(pieces: readonly PanelPiece[]): CutSheet[] {
  const sheets: Open[] = [];
  const order = [...pieces].sort((a, b) => {
    const [p, q] = [sizeOf(a), sizeOf(b)];
    return q.h - p.h || q.w - p.w || (a.id < b.id ? -1 : 1);
  });
  for (const piece of order) {
    const { w, h } = sizeOf(piece);
    let best: { sheet: Open; free: Free; rest: number } | undefined;
    for (const sheet of sheets)
      for (const free of sheet.free) {
        if (w > free.w + SAME || h > free.h + SAME) continue;
        const rest = Math.min(free.w - w, free.h - h);
        if (best === undefined || rest < best.rest - 1e-9) best = { sheet, free, rest };
      }
    if (best === undefined) {
      const free = { x: 0, y: 0, w: SHEET_LENGTH, h: SHEET_WIDTH };
      const sheet: Open = { pieces: [], free: [free] };
      sheets.push(sheet);
      best = { sheet, free, rest: 0 };
    }
    const { sheet, free } = best;
    sheet.pieces.push({ piece, x: free.x, y: free.y });
    sheet.free = [...sheet.free.filter((f) => f !== free), ...splitRest(free, w, h)];
  }
  return sheets.map((s) => ({ pieces: s.pieces }));
}
