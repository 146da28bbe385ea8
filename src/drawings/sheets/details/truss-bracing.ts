/** Lasting bracing of a truss roof: rows on the bottom chords, and gable ends braced to the roof plane. */
import type { CoverRoof } from '../../../project/model.js';
import type { Member, Surface } from '../../../structure/model.js';
import { planeHeight } from '../../../structure/surfaces.js';
import type { Primitive, Rect } from '../../ir/index.js';
import { see } from '../../views/camera.js';
import type { SheetContext } from '../contract.js';
import { dims } from '../parts.js';
import type { Detail, DetailView } from './contract.js';
import { facing, nearPicture, part, planDirection, rect, spot } from './picture.js';

/**
 * Farthest that gable-end braces and rows on the bottom chord stand apart, and the board they are made of (2x4), inches.
 * Common practice, no source: the sealed drawings decide, and where they say nothing accepted practice (IRC 2018 R802.10.3).
 */
const APART = 72;
const ROW_MOST = 120;
const BOARD = { b: 1.5, d: 3.5 } as const;

interface TrussRoof {
  readonly roof: CoverRoof;
  /** From the end away from the house inward. */
  readonly row: readonly Member[];
  readonly surfaces: readonly Surface[];
}

function roofsOf(ctx: SheetContext): TrussRoof[] {
  const { structure, project } = ctx.input;
  return project.cover.roofs.flatMap((roof): TrussRoof[] => {
    const row = structure.members.filter((m) => m.roof === roof.mark && m.truss);
    if (row.length < 3) return [];
    const y = (m: Member): number => m.start.y + m.start.x * 1e-3;
    return [
      {
        roof,
        row: [...row].sort((p, q) => y(q) - y(p)),
        surfaces: structure.surfaces.filter((s) => s.roof === roof.mark),
      },
    ];
  });
}

/** Distances of the brace lines from the left bearing: equal spaces, none wider than allowed. */
const spaces = (span: number, most: number): number[] => {
  const n = Math.max(2, Math.ceil(span / most - 1e-9));
  return Array.from({ length: n - 1 }, (_, i) => ((i + 1) * span) / n);
};
const linesOf = (span: number): number[] => spaces(span, APART);

/** Height of the bottom chord's upper edge over the bearing. */
function chordTop(m: Member, x: number): number {
  const t = m.truss!;
  const inner = Math.min(x, t.span - x) - t.bearing;
  return Math.max(0, inner) * Math.tan(t.bottomPitch) + t.chordDepth / Math.cos(t.bottomPitch);
}

const along = (m: Member, x: number): { x: number; y: number; z: number } => {
  const d = planDirection(m);
  const s = x + m.truss!.overhang[0];
  return { x: m.start.x + d.x * s, y: m.start.y + d.y * s, z: m.start.z };
};

const deckAt = (surfaces: readonly Surface[], p: { x: number; y: number }, sheathing: number): number =>
  Math.min(...surfaces.map((s) => planeHeight(s, p))) - sheathing;

/** The end truss seen square, with the brace lines. */
function endView(ctx: SheetContext, r: TrussRoof, notes: Notes): DetailView {
  const end = r.row[0]!;
  const t = end.truss!;
  const camera = facing(planDirection(end));
  const a = spot(camera, end.start);
  const x0 = a.x + t.overhang[0];
  const frame: Rect = { x: a.x - 6, y: a.y - 8, w: t.span + t.overhang[0] + t.overhang[1] + 12, h: t.height + 12 };
  const depth = see(camera, end.start).depth;
  const lines = linesOf(t.span);
  const rows = rowsOf(ctx, r);
  const items: Primitive[] = [
    ...nearPicture(ctx, { camera, frame, depth: [depth - 1, depth + 1], keep: (p) => p.part === end.id }),
    ...lines.flatMap((x) => {
      const z = a.y + chordTop(end, x);
      return part(rect(x0 + x - BOARD.b / 2, z, x0 + x + BOARD.b / 2, z + BOARD.d), 'cut', { fill: true });
    }),
    ...rows.flatMap((x) => {
      const z = a.y + chordTop(end, x);
      return part(rect(x0 + x - BOARD.d / 2, z, x0 + x + BOARD.d / 2, z + BOARD.b), 'cut', { fill: true });
    }),
  ];
  return {
    name: `End truss ${end.mark}`,
    frame,
    items,
    margin: { left: 2, right: 2, above: 1, below: rows.length > 0 ? 9.5 : 7 },
    over: (scale) =>
      dims(ctx, {
        scale,
        layer: 'S-ANNO-DIMS',
        side: 'below',
        datum: a.y,
        first: 3.4 * ctx.style.note,
        tiers: [
          { stations: [x0, ...lines.map((x) => x0 + x), x0 + t.span] },
          ...(rows.length > 0 ? [{ stations: [x0, ...rows.map((x) => x0 + x), x0 + t.span] }] : []),
        ],
      }).items,
    keys: [
      ...(rows.length > 0
        ? [{ at: { x: x0 + rows[0]!, y: a.y + chordTop(end, rows[0]!) + 1 }, text: notes.row, off: { x: -3, y: -4 } }]
        : []),
      {
        at: { x: x0 + lines.at(-1)!, y: a.y + chordTop(end, lines.at(-1)!) + BOARD.b },
        text: notes.brace,
        off: { x: 3, y: 4 },
      },
    ],
  };
}

interface Brace {
  readonly line: number;
  /** Trusses the brace passes before it reaches the roof plane. */
  readonly bays: number;
  readonly rise: number;
}

function braceOf(r: TrussRoof): Brace {
  const end = r.row[0]!;
  const lines = linesOf(end.truss!.span);
  const rises = lines.map((x) => deckAt(r.surfaces, along(end, x), 0) - end.start.z - chordTop(end, x));
  const most = rises.indexOf(Math.max(...rises));
  const rise = rises[most]!;
  // As flat as 45 degrees or flatter.
  const bays = Math.min(r.row.length - 1, Math.max(1, Math.ceil(rise / r.roof.framing.spacing)));
  return { line: lines[most]!, bays, rise };
}

/** Along the ridge through a brace line, at the end of the roof. */
function sideView(ctx: SheetContext, r: TrussRoof, notes: Notes): DetailView {
  const end = r.row[0]!;
  const { line, bays } = braceOf(r);
  const shown = r.row[Math.min(r.row.length - 1, bays + 1)]!;
  const p = along(end, line);
  const q = along(shown, line);
  const camera = facing({ x: p.x - q.x, y: p.y - q.y });
  const c = spot(camera, p);
  const far = spot(camera, q).x;
  const foot = c.y + chordTop(end, line);
  const deck = deckAt(r.surfaces, p, 0.5);
  const frame: Rect = {
    x: far - 6,
    y: c.y + chordTop(end, line) - 10,
    w: c.x + Math.max(8, r.roof.rake + 2) - far + 6,
    h: deck - foot + 14,
  };
  const depth = see(camera, p).depth;
  const target = along(r.row[bays]!, line);
  const tx = spot(camera, target).x;
  const half = end.section.b / 2;
  const dir = { x: tx - c.x, y: deck - BOARD.d - foot - BOARD.b };
  const size = Math.hypot(dir.x, dir.y);
  const n = { x: (-dir.y / size) * (BOARD.d / 2), y: (dir.x / size) * (BOARD.d / 2) };
  const lo = { x: c.x - half, y: foot + BOARD.b + BOARD.d / 2 };
  const hi = { x: tx + half, y: deck - BOARD.d / 2 - 2 };
  const items: Primitive[] = [
    ...nearPicture(ctx, {
      camera,
      frame,
      depth: [depth - 2, depth + 2],
      cutAt: depth + 0.01,
      keep: (k) =>
        (k.role === 'roof-surface' && r.surfaces.some((s) => s.id === k.part)) || r.row.some((m) => m.id === k.part),
    }),
    ...part(rect(far - 6, foot, c.x + half, foot + BOARD.b), 'new', { fill: true }),
    ...part(
      [
        { x: lo.x + n.x, y: lo.y + n.y },
        { x: lo.x - n.x, y: lo.y - n.y },
        { x: hi.x - n.x, y: hi.y - n.y },
        { x: hi.x + n.x, y: hi.y + n.y },
      ],
      'cut',
      { fill: true },
    ),
    // Block between the top chords that takes the brace's head.
    ...part(
      rect(tx + half, deck - BOARD.d, spot(camera, along(r.row[Math.max(0, bays - 1)]!, line)).x - half, deck),
      'hidden',
    ),
  ];
  const stations = r.row.slice(0, Math.min(r.row.length, bays + 2)).map((m) => spot(camera, along(m, line)).x);
  return {
    name: 'Along the ridge',
    frame,
    items,
    margin: { left: 5.5, right: 2, above: 1, below: 7 },
    over: (scale) => [
      ...dims(ctx, {
        scale,
        layer: 'S-ANNO-DIMS',
        side: 'below',
        datum: frame.y,
        first: 3.4 * ctx.style.note,
        tiers: [{ stations }],
      }).items,
      // Where the string is too short for its text, the note alone gives the height.
      ...((deck - foot) * scale < 9 * ctx.style.note
        ? []
        : dims(ctx, {
            scale,
            layer: 'S-ANNO-DIMS',
            side: 'left',
            datum: frame.x,
            first: 3 * ctx.style.note,
            tiers: [{ stations: [foot, deck] }],
          }).items),
    ],
    keys: [
      { at: { x: (lo.x + hi.x) / 2, y: (lo.y + hi.y) / 2 }, text: notes.brace, off: { x: 4, y: 2 } },
      { at: { x: far - 1, y: foot + BOARD.b / 2 }, text: notes.row, off: { x: -1, y: -5 } },
      {
        at: { x: (tx + spot(camera, along(r.row[Math.max(0, bays - 1)]!, line)).x) / 2, y: deck - BOARD.d / 2 },
        text: notes.block,
        off: { x: 3, y: 4 },
      },
    ],
  };
}

interface Notes {
  readonly row: string;
  readonly brace: string;
  readonly block: string;
}

function detailOf(ctx: SheetContext, r: TrussRoof): Detail {
  const { len } = ctx;
  const end = r.row[0]!;
  const t = end.truss!;
  const lines = linesOf(t.span);
  const space = t.span / (lines.length + 1);
  const { bays, rise } = braceOf(r);
  const run = bays * r.roof.framing.spacing;
  const ceiling = r.roof.finish.ceiling !== '';
  const rows = rowsOf(ctx, r);
  const sealed = sealedBracing(ctx, r);
  const notes: Notes = {
    row: ceiling
      ? 'The ceiling holds the bottom chords sideways where it is a rigid sheet; brace them until it is up.'
      : sealed !== ''
        ? `Rows on the bottom chords, which no ceiling holds sideways, as the sealed sheets ask: ${sealed}. Set them out from the sealed sheets; 2x4 lapped over two trusses, two 16d nails at each crossing.`
        : `Bottom chords have no ceiling to hold them sideways: ${rows.length} ${rows.length > 1 ? 'rows' : 'row'} of 2x4 flat on top of them over the whole length in equal spaces of ${len(t.span / (rows.length + 1))}, never over ${len(ROW_MOST)} (lower string), lapped over two trusses, two 16d nails at each crossing.`,
    brace: `Gable-end braces: ${lines.length} of 2x4 at each end of the roof in equal spaces of ${len(space)}, never over ${len(APART)}, from the end truss’s bottom chord up to the roof plane at the ${ordinal(bays + 1)} truss: ${len(run)} along, ${len(rise)} up at most, four 16d nails at each end.`,
    block:
      'Block 2x4 on edge between the top chords where the brace ends, sheathing nailed to it: the brace hands its force to the roof plane.',
  };
  const mid = along(end, t.span / 2);
  return {
    id: `truss-bracing ${r.roof.mark}`,
    title: `Bracing of the trusses of ${r.roof.mark}`,
    views: [endView(ctx, r, notes), sideView(ctx, r, notes)],
    words: [
      `${sealed !== '' ? 'Where the sealed sheets say nothing of it, common practice, no source' : 'Common practice, no source, until the sealed sheets are here'}: what they say on bracing governs (IRC 2018 R802.10.3).`,
      'Trusses fall over until sheathed: ground-brace the first, tie each next one before it is let go, nobody under them. Do not take a brace out to shift a truss.',
    ],
    scales: ['1', '3/4', '1/2', '3/8', '1/4', '3/16'],
    call: { at: { ...mid, z: mid.z + t.height * 0.4 }, radius: 14 },
  };
}

/** What the sealed sheets ask, marks that ask the same together: `T1, T2: one row at the middle`. */
function sealedBracing(ctx: SheetContext, r: TrussRoof): string {
  const asks = new Map<string, string[]>();
  for (const p of ctx.input.project.cover.trussPapers ?? [])
    if (p.bracing !== '' && r.row.some((m) => m.mark === p.mark))
      asks.set(p.bracing, [...(asks.get(p.bracing) ?? []), p.mark]);
  return [...asks].map(([what, marks]) => `${marks.join(', ')}: ${what}`).join('; ');
}

/** Rows on the bottom chord from the left bearing; none where a ceiling or a sealed sheet decides. */
const rowsOf = (ctx: SheetContext, r: TrussRoof): number[] =>
  r.roof.finish.ceiling !== '' || sealedBracing(ctx, r) !== '' ? [] : spaces(r.row[0]!.truss!.span, ROW_MOST);

const ordinal = (n: number): string => `${n}${n === 1 ? 'st' : n === 2 ? 'nd' : n === 3 ? 'rd' : 'th'}`;

export const trussBracingDetails = (ctx: SheetContext): readonly Detail[] => roofsOf(ctx).map((r) => detailOf(ctx, r));
