/** Words and arrows of the roof plan: falls, edges, what stands on the roofs, leaders. */
import { contains } from '../../base/plane.js';
import { flat, type Vec2 } from '../../base/vec.js';
import { GUTTER_SIZE } from '../../structure/constants.js';
import type { Structure } from '../../structure/model.js';
import { cornersOf } from '../../structure/surfaces.js';
import { slopeOf } from '../../structure/tie-in/old-slope.js';
import { placeNote, slopeArrow } from '../annotate/index.js';
import type { Primitive } from '../ir/index.js';
import type { SheetContext } from './contract.js';
import { extents } from './parts.js';
import { houseEdges, leaderPlaces, type RoofEdge } from './roof-edges.js';

export const per12 = (k: number): string => `${Number((12 * k).toFixed(2))}/12`;

/** Outline of a surface on plan, and of the part of it over the house where it goes on there. */
export function outlines(
  structure: Structure,
): { readonly roof: string; readonly mark: string; readonly points: readonly Vec2[] }[] {
  return [
    ...structure.surfaces.map((s) => ({ roof: s.roof, mark: s.mark, points: cornersOf(s).map(flat) })),
    ...(structure.overlays ?? []).flatMap((o) =>
      o.faces.map((f) => ({ roof: o.roof, mark: f.mark, points: f.outline.map(flat) })),
    ),
  ];
}

interface Worded {
  readonly a: Vec2;
  readonly b: Vec2;
  /** Level direction out of the roof: the word stands inside of it, or outside where told so. */
  readonly out?: Vec2;
}

/** A word along an edge where it touches nothing. */
function word(ctx: SheetContext, e: Worded, text: string, mark?: string): Primitive[] {
  const h = ctx.style.note;
  let read = Math.atan2(e.b.y - e.a.y, e.b.x - e.a.x);
  if (read > Math.PI / 2 + 1e-9) read -= Math.PI;
  else if (read <= -Math.PI / 2 + 1e-9) read += Math.PI;
  const up = { x: -Math.sin(read), y: Math.cos(read) };
  const inner = e.out && up.x * e.out.x + up.y * e.out.y > 0 ? -1 : 1;
  return (e.out ? [inner, 2 * inner] : [1, -1]).flatMap((k) =>
    [0.5, 0.35, 0.65, 0.22, 0.78].map(
      (t): Primitive => ({
        kind: 'symbol',
        layer: 'A-ANNO-NOTE',
        at: { x: e.a.x + t * (e.b.x - e.a.x), y: e.a.y + t * (e.b.y - e.a.y) },
        ...(mark !== undefined && { mark }),
        items: [
          {
            kind: 'text',
            layer: 'A-ANNO-NOTE',
            at: { x: up.x * k * h * 1.15, y: up.y * k * h * 1.15 },
            content: text,
            height: h,
            angle: read,
            align: 'center',
            valign: 'middle',
            mask: true,
          },
        ],
      }),
    ),
  );
}

const ARROWS = [0.5, 0.35, 0.65, 0.2, 0.8];

/** Arrow of a fall somewhere inside an outline where it touches nothing. */
function fall(ctx: SheetContext, ring: readonly Vec2[], downhill: Vec2, text: string, path?: string): Primitive[] {
  const e = extents(ring);
  return ARROWS.flatMap((u) => ARROWS.map((v) => ({ x: e.x + u * e.w, y: e.y + v * e.h })))
    .filter((p) => contains(ring, p))
    .map((at) =>
      slopeArrow({
        at,
        angle: Math.atan2(downhill.y, downhill.x),
        text,
        layer: 'A-ANNO-SYMB',
        style: ctx.style,
        ...(path !== undefined && { path }),
      }),
    );
}

/** True where the middle of an edge lies under a roof of the house. */
const underHouse = (structure: Structure, e: RoofEdge): boolean => {
  const m = { x: (e.a.x + e.b.x) / 2, y: (e.a.y + e.b.y) / 2 };
  return structure.housePlanes.some((p) => contains(p.outline, m));
};

/** Way out of the roof at an eave. */
function outOf(structure: Structure, e: RoofEdge): { readonly out?: Vec2 } {
  const m = { x: (e.a.x + e.b.x) / 2, y: (e.a.y + e.b.y) / 2 };
  // Of the roof's slopes the one whose eave line it lies on.
  const off = (s: Structure['surfaces'][number]): number =>
    Math.abs((s.origin.x - m.x) * s.downhill.x + (s.origin.y - m.y) * s.downhill.y);
  const own = structure.surfaces.filter((s) => s.roof === e.roof).sort((p, q) => off(p) - off(q))[0];
  return own ? { out: own.downhill } : {};
}

export function annotations(
  ctx: SheetContext,
  edges: readonly RoofEdge[],
  ratio: number,
  items: readonly Primitive[],
): Primitive[] {
  const { structure, project } = ctx.input;
  const h = ctx.style.note;
  const over: Primitive[] = [];
  const put = (ways: readonly Primitive[]): void => {
    const [first, ...more] = ways;
    if (first) over.push(placeNote([first, ...more], 0.5 * h, ratio, over, items));
  };
  for (const p of structure.housePlanes) {
    const s = slopeOf(p.outline);
    if (s)
      put(fall(ctx, p.outline.map(flat), { x: -s.into.x, y: -s.into.y }, `${p.id} ${per12(s.slope)}`, '/house/roofs'));
  }
  for (const s of structure.surfaces) {
    const roof = project.cover.roofs.find((r) => r.mark === s.roof);
    put(
      fall(ctx, cornersOf(s).map(flat), s.downhill, `${s.roof} ${roof?.pitchText ?? ''}`, roof && `${roof.path}/pitch`),
    );
  }
  // One word a kind and roof is enough to read the rest by.
  const said = new Set<string>();
  for (const e of edges) {
    const below = e.kind === 'high edge' && underHouse(structure, e) ? ' below' : '';
    const text = e.kind === 'valley' ? `valley ${e.mark ?? ''}`.trim() : `${e.kind}${below}`;
    const key = `${e.roof} ${text}`;
    if (e.kind === 'joint' || e.kind === 'rake' || said.has(key)) continue;
    said.add(key);
    put(word(ctx, e.kind === 'eave' ? { ...e, ...outOf(structure, e) } : e, text, e.mark));
  }
  const told = new Set<string>();
  const rings = outlines(structure).map((o) => o.points);
  const covered = (p: Vec2): boolean => rings.some((r) => contains(r, p, 12));
  for (const e of houseEdges(ctx.input)) {
    if (told.has(e.text)) continue;
    // What the new roof covers is not seen.
    const open = word(ctx, e, e.text).filter((w) => 'at' in w && !covered(w.at));
    put(open);
    if (open.length > 0) told.add(e.text);
  }
  for (const r of project.house.roofs)
    for (const t of r.standing ?? []) {
      const k = Math.max(t.width, t.depth) / 2;
      put(
        [
          { x: k, y: 0, align: 'left' as const },
          { x: -k, y: 0, align: 'right' as const },
        ].map(
          ({ x, align }): Primitive => ({
            kind: 'symbol',
            layer: 'A-ANNO-NOTE',
            at: { x: t.at.x + x, y: t.at.y },
            items: [
              {
                kind: 'text',
                layer: 'A-ANNO-NOTE',
                at: { x: Math.sign(x) * 0.6 * h, y: 0 },
                content: t.name,
                height: h,
                align,
                valign: 'middle',
              },
            ],
          }),
        ),
      );
    }
  return over;
}

/** Leaders of the gutters, as dots with their number in the table. */
export function leaderItems(ctx: SheetContext): Primitive[] {
  const h = ctx.style.note;
  return leaderPlaces(ctx.input).map((l) => ({
    kind: 'symbol' as const,
    layer: 'A-ANNO-SYMB' as const,
    // On the middle of its gutter.
    at: { x: l.at.x + l.out.x * GUTTER_SIZE * 0.8, y: l.at.y + l.out.y * GUTTER_SIZE * 0.8 },
    mark: l.mark,
    items: [
      {
        kind: 'circle' as const,
        layer: 'A-ANNO-SYMB' as const,
        center: { x: 0, y: 0 },
        radius: 0.45 * h,
        fill: 'ink' as const,
      },
      {
        kind: 'text' as const,
        layer: 'A-ANNO-SYMB' as const,
        at: { x: l.out.x * 2.9 * h + l.along.x * 2.6 * h, y: l.out.y * 1.9 * h + l.along.y * 1.2 * h },
        content: l.mark,
        height: h,
        face: 'bold' as const,
        align: 'center' as const,
        valign: 'middle' as const,
      },
    ],
  }));
}
