/** Sheathing as laid on each surface, and the sheets that are cut up. */
import { area, centroid } from '../../base/plane.js';
import type { Vec2 } from '../../base/vec.js';
import type { Surface } from '../../structure/model.js';
import type { Buy, PanelLayout, PanelPiece } from '../../takeoff/index.js';
import { framesOn } from '../../takeoff/panels/frames.js';
import { type Block, pencil } from '../annotate/index.js';
import { type Primitive, textWidth } from '../ir/index.js';
import { PAPER_STYLE, PAPER_WIDTH, type Paper } from '../papers/index.js';
import { inches, len, number, percent } from './words.js';

const N = PAPER_STYLE.note;
const TALL = 2.55;

/** Lowest and highest point of an outline on the line across it at `u`. */
function heights(outline: readonly Vec2[], u: number): [number, number] {
  const vs = outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    const inside = Math.min(a.x, b.x) <= u && u <= Math.max(a.x, b.x);
    if (!inside) return [];
    return a.x === b.x ? [a.y, b.y] : [a.y + ((u - a.x) / (b.x - a.x)) * (b.y - a.y)];
  });
  return vs.length === 0 ? [0, 0] : [Math.min(...vs), Math.max(...vs)];
}

/** `A2.3`: a letter for the surface, row, place in the row. */
const label = (layout: PanelLayout, piece: PanelPiece): string =>
  `${letter(layout, piece.surface)}${piece.id.slice(piece.id.lastIndexOf(' ') + 1)}`;

const letter = (layout: PanelLayout, surface: string): string =>
  'ABCDEFGHIJKLMNOPQRSTUVWXYZ'[layout.surfaces.indexOf(surface) % 26]!;

function surfaceBlock(b: Buy, s: Surface, layout: PanelLayout): Block {
  const us = s.outline.map((p) => p.x);
  const vs = s.outline.map((p) => p.y);
  const [u0, u1, v0, v1] = [Math.min(...us), Math.max(...us), Math.min(...vs), Math.max(...vs)];
  const scale = Math.min((PAPER_WIDTH - 0.2) / (u1 - u0), TALL / (v1 - v0));
  const height = (v1 - v0) * scale + 3.4 * N;
  return {
    kind: 'drawing',
    height,
    draw: (at: Vec2): Primitive[] => {
      const p = pencil('A-ROOF', 'rule');
      const top = at.y - 1.9 * N;
      const point = (q: Vec2): [number, number] => [at.x + 0.1 + (q.x - u0) * scale, top - (v1 - q.y) * scale];
      const items: Primitive[] = [
        p.text(
          at.x,
          at.y - N,
          `${letter(layout, s.id)}: ${s.mark}, ${len(u1 - u0)} along the eave, ${len(v1 - v0)} up the slope; the eave is below`,
          N,
          { face: 'condensed-bold' },
        ),
      ];
      for (const f of framesOn(b.structure, s)) {
        const [low, high] = heights(s.outline, f.u);
        items.push(p.line(...point({ x: f.u, y: low }), ...point({ x: f.u, y: high }), 'hidden'));
      }
      for (const piece of layout.pieces.filter((x) => x.surface === s.id)) {
        for (const part of piece.parts) items.push(p.shape(part.map(point), 'new'));
        const largest = [...piece.parts].sort((a, c) => area(c) - area(a))[0]!;
        const [x, y] = point(centroid(largest));
        items.push(p.text(x, y - N / 2, label(layout, piece), N, { face: 'condensed', align: 'center', mask: true }));
      }
      items.push(p.shape(s.outline.map(point), 'profile'));
      return items;
    },
  };
}

const PER_ROW = 4;
const SHEET_W = (PAPER_WIDTH - (PER_ROW - 1) * 0.22) / PER_ROW;

/** Rows of small sheets, each with the pieces cut from it. */
function sheetRows(layout: PanelLayout): Block[] {
  const scale = SHEET_W / 96;
  const h = 48 * scale;
  const rows: Block[] = [];
  for (let i = 0; i < layout.cut.length; i += PER_ROW) {
    const shown = layout.cut.slice(i, i + PER_ROW);
    rows.push({
      kind: 'drawing',
      height: h + 0.12,
      draw: (at: Vec2): Primitive[] => {
        const p = pencil('A-ROOF', 'rule');
        return shown.flatMap((sheet, k): Primitive[] => {
          const x0 = at.x + k * (SHEET_W + 0.22);
          const y0 = at.y - h;
          const rect = (x: number, y: number, w: number, t: number): [number, number][] => [
            [x0 + x * scale, y0 + y * scale],
            [x0 + (x + w) * scale, y0 + y * scale],
            [x0 + (x + w) * scale, y0 + (y + t) * scale],
            [x0 + x * scale, y0 + (y + t) * scale],
          ];
          return [
            p.shape(rect(0, 0, 96, 48), 'new-fine', 'tint'),
            ...sheet.pieces.flatMap(({ piece, x, y }): Primitive[] => {
              const [w, t] = [Math.min(96 - x, piece.u1 - piece.u0), Math.min(48 - y, piece.v1 - piece.v0)];
              const [cx, cy] = [x0 + (x + w / 2) * scale, y0 + (y + t / 2) * scale];
              const size = `${inches(piece.u1 - piece.u0)} x ${inches(piece.v1 - piece.v0)}`;
              const both = t * scale > 3 * N && textWidth(size, N, 'condensed') < w * scale - 0.04;
              return [
                p.shape(rect(x, y, w, t), 'new-fine', 'paper'),
                ...(t * scale > 1.3 * N
                  ? [
                      p.text(cx, cy - N / 2 + (both ? 0.8 * N : 0), label(layout, piece), N, {
                        face: 'condensed-bold',
                        align: 'center',
                      }),
                    ]
                  : []),
                ...(both ? [p.text(cx, cy - 1.4 * N, size, N, { face: 'condensed', align: 'center' })] : []),
              ];
            }),
          ];
        });
      },
    });
  }
  return rows;
}

/** Less of a panel on the roof than the rectangle round it. */
const slanted = (p: PanelPiece): boolean =>
  p.parts.reduce((sum, q) => sum + area(q), 0) < 0.98 * (p.u1 - p.u0) * (p.v1 - p.v0);

export function panelPaper(b: Buy): Paper | undefined {
  const { panels } = b.takeoff;
  if (panels.length === 0) return undefined;
  return {
    title: 'Sheathing layout',
    sub: 'Each panel by its surface’s letter, its row from the eave and its place in the row',
    blocks: [
      {
        kind: 'para',
        text: 'Long edges lie across the framing, ends meet on framing and keep off the ends of the row below. Leave 1/8 in between panels unless their stamp says otherwise. Work from a fixed platform or with fall protection; carry panels in little wind.',
      },
      ...panels.flatMap((layout): Block[] => [
        { kind: 'heading', text: `${layout.roof}: ${layout.item}` },
        {
          kind: 'para',
          keep: true,
          text: `${layout.sheets} sheets: ${layout.whole} laid whole, ${layout.pieces.length - layout.whole} pieces cut from ${layout.cut.length}. Roof ${number(layout.area / 144)} sq ft, bought ${32 * layout.sheets} sq ft, ${percent((32 * 144 * layout.sheets) / layout.area - 1)} over.`,
        },
        ...layout.surfaces.map((id) => surfaceBlock(b, b.structure.surfaces.find((s) => s.id === id)!, layout)),
        ...(layout.cut.length > 0
          ? [{ kind: 'para' as const, keep: true, text: 'Sheets to cut up, shaded parts left over:' }]
          : []),
        ...sheetRows(layout),
        ...(layout.pieces.some(slanted)
          ? [
              {
                kind: 'para' as const,
                text: 'Pieces along hips and valleys are counted by the rectangle they are cut from. Two that slant alike may be had from one when the second is turned end for end: lay them out before you cut, and some sheets may go back.',
              },
            ]
          : []),
      ]),
    ],
  };
}
