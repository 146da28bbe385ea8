/**
 * Draws two invented sheets that use every symbol, pen and pattern, so that an eye can judge them:
 * `npx tsx scripts/gallery.ts` writes out/gallery/*.svg and gallery.pdf. No structure is computed here.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import type { Vec2 } from '../src/base/vec.js';
import * as A from '../src/drawings/annotate/index.js';
import { type FontBytes, pdfOf } from '../src/drawings/backends/pdf/index.js';
import { svgOf } from '../src/drawings/backends/svg/index.js';
import {
  centeredViewport,
  FACE_NAMES,
  FACES,
  type LayerName,
  PATTERNS,
  type PatternName,
  PENS,
  type PenName,
  type Primitive,
  type Rect,
  SCALES,
  type Sheet,
  toPaper,
} from '../src/drawings/ir/index.js';

const box = (x: number, y: number, w: number, h: number): Vec2[] => [
  { x, y },
  { x: x + w, y },
  { x: x + w, y: y + h },
  { x, y: y + h },
];
const area = (layer: LayerName, pen: PenName | undefined, points: Vec2[], extra: object = {}): Primitive => ({
  kind: 'polyline',
  layer,
  closed: true,
  points,
  ...(pen && { pen }),
  ...extra,
});
const hatch = (layer: LayerName, pattern: PatternName, loop: Vec2[], extra: object = {}): Primitive => ({
  kind: 'hatch',
  layer,
  pattern,
  loops: [loop],
  ...extra,
});
const line = (
  layer: LayerName,
  pen: PenName,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  extra: object = {},
): Primitive => ({
  kind: 'line',
  layer,
  pen,
  a: { x: x0, y: y0 },
  b: { x: x1, y: y1 },
  ...extra,
});

const set: A.SetData = {
  project: 'Covered patio for a single-family house',
  address: ['14 Quarrel Street', 'Lower Example, Anystate'],
  owner: 'A. Sample & B. Sample',
  parcel: '000-000-001',
  jurisdiction: 'Example County building department',
  preparedBy: ['The owner'],
  date: '2026-11-25',
  revisions: [{ mark: '1', date: '2026-11-20', text: 'Footings moved to suit drain' }],
  status: { kind: 'preliminary' },
  cautions: [
    'Prepared with the help of a program that certifies nothing. The authority having jurisdiction decides.',
    'Do not scale these drawings: dimensions govern.',
  ],
};

/* ------------------------------------------------------------------ plan */
function plan(style: A.Style, scale: number): { items: Primitive[]; over: Primitive[]; model: Rect } {
  const W = 24 * 12;
  const D = 14 * 12;
  const items: Primitive[] = [];
  const over: Primitive[] = [];
  // The yard is drawn downward: y out from the house counts negative on paper.
  const wall = box(-30, 0, W + 60, 6);
  items.push(area('A-WALL-EXST', 'existing-cut', wall, { fill: 'poche' }));
  items.push(area('A-GLAZ-EXST', 'existing', box(60, 0, 72, 6), { fill: 'paper' }));
  items.push(line('A-GLAZ-EXST', 'existing', 60, 3, 132, 3));
  items.push(area('A-GLAZ-EXST', 'existing', box(190, 0, 48, 6), { fill: 'paper' }));
  items.push(line('A-GLAZ-EXST', 'existing', 190, 3, 238, 3));
  items.push(area('S-SLAB-EXST', 'existing', box(6, -132, 200, 132)));
  items.push(area('S-SLAB', 'new', box(206, -132, 76, 132)));
  items.push(hatch('S-FNDN-PATT', 'concrete', box(206, -132, 76, 132), { spacing: 1.4 }));
  items.push(line('A-ROOF-DEMO', 'demolition', 6, -40, 110, -40));
  items.push(line('A-ROOF-DEMO', 'demolition', 110, -40, 110, 0));
  const posts = [12, 102.3125, 186, W - 12];
  items.push(area('A-ROOF-OTLN', 'above', box(-18, -D - 18, W + 36, D + 18)));
  for (let x = 0; x <= W; x += 24) items.push(line('S-FRAM', x === 96 ? 'new' : 'center', x, -D, x, 0, { mark: 'T1' }));
  posts.forEach((x, i) => {
    const mark = i === 0 || i === 3 ? 'F1' : 'F2';
    const s = mark === 'F1' ? 24 : 30;
    items.push(area('S-FNDN', 'hidden', box(x - s / 2, -156 - s / 2, s, s), { mark }));
    items.push(area('S-COLS', 'cut', box(x - 2.75, -158.75, 5.5, 5.5), { fill: 'paper', mark: `P${i + 1}` }));
    items.push(hatch('S-COLS', 'wood-cross', box(x - 2.75, -158.75, 5.5, 5.5), { mark: `P${i + 1}` }));
    over.push(
      ...A.gridLine({ layer: 'S-GRID', style, a: { x, y: -D - 30 }, b: { x, y: 34 }, label: `${i + 1}`, ends: 'b' }),
    );
    over.push(
      A.tag({
        kind: 'footing',
        text: mark,
        at: { x: x + s / 2, y: -156 - s / 2 },
        off: { x: 0.28, y: -0.3 },
        layer: 'S-ANNO-SYMB',
        style,
      }),
    );
    over.push(
      A.tag({
        kind: 'post',
        text: `P${i + 1}`,
        at: { x, y: -156 },
        off: { x: -0.42, y: 0.45 },
        layer: 'S-ANNO-SYMB',
        style,
      }),
    );
  });
  items.push(area('S-BEAM', 'new', box(0, -157.5, W, 3), { mark: 'B1' }));
  over.push(
    ...A.gridLine({ layer: 'S-GRID', style, a: { x: -20, y: -156 }, b: { x: W + 46, y: -156 }, label: 'A', ends: 'b' }),
  );
  over.push(A.tag({ kind: 'beam', text: 'B1', at: { x: 145, y: -156 }, layer: 'S-ANNO-SYMB', style }));
  over.push(
    ...A.spread({
      layer: 'S-ANNO-NOTE',
      style,
      a: { x: 0, y: -70 },
      b: { x: W, y: -70 },
      text: 'T1 trusses at 24" o.c. (13)',
      dot: { x: 96, y: -70 },
    }),
  );
  over.push(
    ...A.sectionMark({
      layer: 'A-ANNO-SYMB',
      style,
      a: { x: 160, y: 60 },
      b: { x: 160, y: -200 },
      look: 1,
      number: 'A',
      sheet: 'A-301',
      ends: 'a',
    }),
  );
  over.push(
    ...A.detailMark({
      layer: 'A-ANNO-SYMB',
      style,
      at: { x: posts[3]!, y: -156 },
      radius: 22,
      number: '3',
      sheet: 'S-501',
      angle: 0.75,
      scale,
    }),
  );
  over.push(
    A.slopeArrow({ layer: 'A-ANNO-NOTE', style, at: { x: 50, y: -104 }, angle: -Math.PI / 2, text: '1/4" per ft' }),
  );
  over.push(
    A.leader({
      at: { x: 70, y: -40 },
      dx: -0.35,
      dy: -0.4,
      text: 'Remove awning',
      layer: 'A-ANNO-NOTE',
      style,
      mask: true,
    }),
  );
  over.push(A.revisionDelta({ layer: 'G-ANNO-REVS', style, at: { x: 240, y: -176 }, number: '1' }));
  const dims = A.dimString({
    side: 'below',
    datum: -D - 18,
    scale,
    layer: 'S-ANNO-DIMS',
    style,
    tiers: [
      { stations: [-18, 0, 12, 102.3125, 186, W - 12, W, W + 18], from: -D - 18, paths: ['/cover/overhang'] },
      { stations: posts },
      { stations: [-18, W + 18] },
    ],
  });
  over.push(...dims.items);
  const left = A.dimString({
    side: 'left',
    datum: -48,
    scale,
    layer: 'S-ANNO-DIMS',
    style,
    tiers: [{ stations: [0, -3.5, -132, -156, -D, -D - 18], from: -18 }, { stations: [0, -D - 18] }],
    first: 0.75,
  });
  over.push(...left.items);
  return { items, over, model: { x: -100, y: -D - 90, w: W + 160, h: D + 160 } };
}

/* --------------------------------------------------------------- section */
function section(style: A.Style): { items: Primitive[]; over: Primitive[]; targets: A.ColumnNote[]; model: Rect } {
  const items: Primitive[] = [];
  const over: Primitive[] = [];
  const soil: Vec2[] = [
    { x: -20, y: -54 },
    { x: 190, y: -54 },
    { x: 190, y: -8 },
    { x: 168, y: -7 },
    { x: 168, y: -42 },
    { x: 144, y: -42 },
    { x: 144, y: -8 },
    { x: -20, y: -8 },
  ];
  items.push(hatch('A-SECT-PATT', 'earth', soil));
  items.push({
    kind: 'polyline',
    layer: 'C-TOPO',
    pen: 'profile',
    points: [
      { x: 168, y: -7 },
      { x: 190, y: -8.5 },
      { x: 214, y: -9 },
    ],
  });
  items.push(area('A-SECT-MCUT', 'cut', box(144, -42, 24, 36)));
  items.push(hatch('A-SECT-PATT', 'concrete', box(144, -42, 24, 36)));
  items.push(area('A-SECT-MCUT', 'existing-cut', box(0, -4, 144, 4)));
  items.push(hatch('A-SECT-PATT', 'concrete', box(0, -4, 144, 4), { spacing: 0.7 }));
  items.push(hatch('A-SECT-PATT', 'gravel', box(0, -8, 144, 4)));
  items.push(area('A-SECT', 'new', box(153.25, -4, 5.5, 104)));
  items.push(hatch('A-SECT', 'wood-grain', box(153.25, -4, 5.5, 104), { angle: Math.PI / 2 }));
  items.push(area('A-SECT-MCUT', 'cut', box(154.5, 100, 3, 11.25)));
  items.push(hatch('A-SECT-PATT', 'wood-cross', box(154.5, 100, 3, 11.25)));
  // House wall, cut.
  items.push(area('A-SECT-MCUT', 'existing-cut', box(-5.5, -8, 5.5, 130)));
  items.push(hatch('A-SECT-PATT', 'insulation-batt', box(-4.6, 0, 3.6, 116)));
  items.push(line('A-SECT', 'existing', -4.6, -8, -4.6, 122), line('A-SECT', 'existing', -1, -8, -1, 122));
  // Sloping roof, 3/12 down to the yard.
  const r = (x: number, d: number): Vec2 => ({ x, y: 111.25 + (156 - x) * 0.25 + d });
  items.push(area('A-SECT', 'new', [r(1.5, 0), r(180, 0), r(180, 5.5), r(1.5, 5.5)], { fill: 'paper' }));
  items.push(area('A-SECT-MCUT', 'new-fine', [r(0, 5.5), r(181, 5.5), r(181, 6.1), r(0, 6.1)]));
  items.push({ kind: 'polyline', layer: 'A-SECT-MCUT', pen: 'cut', points: [r(0, 6.4), r(182, 6.4)] });
  items.push(area('A-SECT-MCUT', 'cut', box(0, 142, 1.5, 9.25)));
  items.push(hatch('A-SECT-PATT', 'wood-end', box(0, 142, 1.5, 9.25)));
  over.push(...A.breakLine({ layer: 'A-SECT', style, a: { x: -12, y: 122 }, b: { x: 6, y: 122 } }));
  over.push(
    A.slopeTriangle({ layer: 'A-ANNO-NOTE', style, at: { x: 96, y: 152 }, rise: '3', ratio: 0.25, up: 'left' }),
  );
  over.push(
    A.levelMark({
      layer: 'A-ANNO-DIMS',
      style,
      at: { x: 192, y: 111.25 },
      side: 'right',
      name: 'Top of beam',
      value: `+9'-3 1/4"`,
    }),
  );
  over.push(
    A.levelMark({
      layer: 'A-ANNO-DIMS',
      style,
      at: { x: 192, y: 0 },
      side: 'right',
      name: 'Finished floor',
      value: `+0'-0"`,
    }),
  );
  over.push(
    A.levelMark({
      layer: 'A-ANNO-DIMS',
      style,
      at: { x: 192, y: -42 },
      side: 'right',
      name: 'Bottom of footing',
      value: `-3'-6"`,
    }),
  );
  const dims = A.dimString({
    side: 'left',
    datum: -12,
    scale: SCALES['3/8'].ratio,
    layer: 'A-ANNO-DIMS',
    style,
    tiers: [{ stations: [-42, -8, 0, 100, 111.25, 151.25] }, { stations: [-42, 151.25] }],
  });
  over.push(...dims.items);
  over.push(
    ...A.dimString({
      side: 'below',
      datum: -54,
      scale: SCALES['3/8'].ratio,
      layer: 'A-ANNO-DIMS',
      style,
      tiers: [{ stations: [0, 144, 168], from: -54 }, { stations: [0, 156] }],
    }).items,
  );
  const targets: A.ColumnNote[] = [
    {
      target: r(40, 6.4),
      text: 'Roof covering over underlayment on 19/32 sheathing, nailed at 6" edges and 12" field',
    },
    { target: r(90, 2.5), text: '2x6 rafter, No. 2, at 24" o.c.', mark: 'R1' },
    { target: { x: 157, y: 105 }, text: 'Beam B1: (2) 2x12 with joint J2 at each post' },
    { target: { x: 156, y: 60 }, text: 'Post P2, 6x6, treated; knee brace where shown' },
    { target: { x: 156, y: -3 }, text: 'Standoff base, joint J1, required uplift 1,240 lb' },
    { target: { x: 150, y: -25 }, text: 'Footing F2, 2500 psi, (3) #4 each way' },
    { target: { x: 138, y: -6 }, text: 'Existing 4" slab on gravel, kept', head: 'dot' },
  ];
  return { items, over, targets, model: { x: -70, y: -80, w: 300, h: 235 } };
}

/* ---------------------------------------------------------------- detail */
function detail(style: A.Style): { items: Primitive[]; over: Primitive[]; model: Rect } {
  const items: Primitive[] = [];
  const over: Primitive[] = [];
  items.push(area('S-DETL-MCUT', 'cut', box(-2.75, -14, 5.5, 14), {}));
  items.push(hatch('S-DETL-PATT', 'wood-grain', box(-2.75, -14, 5.5, 14), { angle: Math.PI / 2 }));
  items.push(
    area('S-DETL-MCUT', 'cut', box(-1.5, 0, 1.5, 9.25)),
    hatch('S-DETL-PATT', 'wood-cross', box(-1.5, 0, 1.5, 9.25)),
  );
  items.push(area('S-DETL-MCUT', 'cut', box(0, 0, 0.5, 9.25)), hatch('S-DETL-PATT', 'plywood', box(0, 0, 0.5, 9.25)));
  items.push(
    area('S-DETL-MCUT', 'cut', box(0.5, 0, 1.5, 9.25)),
    hatch('S-DETL-PATT', 'wood-cross', box(0.5, 0, 1.5, 9.25)),
  );
  items.push(area('S-DETL-MCUT', 'cut', box(-3, -6, 0.25, 12)), hatch('S-DETL-PATT', 'steel', box(-3, -6, 0.25, 12)));
  items.push(
    area('S-DETL-MCUT', 'cut', box(2.75, -6, 0.25, 12)),
    hatch('S-DETL-PATT', 'steel', box(2.75, -6, 0.25, 12)),
  );
  for (const y of [-4, 4]) items.push(line('S-DETL', 'center', -4.5, y, 4.5, y));
  over.push(...A.breakLine({ layer: 'S-DETL', style, a: { x: -4, y: -14 }, b: { x: 4, y: -14 } }));
  over.push(
    A.tag({ kind: 'joint', text: 'J2', at: { x: 2.9, y: 0 }, off: { x: 0.7, y: -0.55 }, layer: 'S-ANNO-SYMB', style }),
  );
  over.push(
    A.leader({
      at: { x: 1.2, y: 7.5 },
      dx: 0.9,
      dy: 0.35,
      text: 'Beam B1, built up of (2) 2x10 with 1/2" plywood between; plywood adds no strength',
      width: 2.6,
      layer: 'S-ANNO-NOTE',
      style,
    }),
  );
  over.push(
    A.leader({ at: { x: -2.9, y: 4 }, dx: -0.8, dy: 0.95, text: '(2) 1/2" bolts', layer: 'S-ANNO-NOTE', style }),
  );
  over.push(
    ...A.dimString({
      side: 'above',
      datum: 9.25,
      scale: 1 / 8,
      layer: 'S-ANNO-DIMS',
      style,
      tiers: [{ stations: [-1.5, 0, 0.5, 2] }],
    }).items,
  );
  over.push(
    ...A.dimString({
      side: 'left',
      datum: -3.2,
      scale: 1 / 8,
      layer: 'S-ANNO-DIMS',
      style,
      first: 1.35,
      tiers: [{ stations: [-6, -4, 0, 4, 6], from: -3.2 }],
    }).items,
  );
  return { items, over, model: { x: -14, y: -16, w: 34, h: 32 } };
}

/* ------------------------------------------------------------ big sheet */
function bigSheet(): Sheet {
  const size = 'ARCH D';
  const style = A.styleFor(size);
  const room = A.drawingArea(size);
  const [leftCol, rightCol] = A.splitColumns(room, [62, 38], 0.7) as [Rect, Rect];
  const [planBox, lower] = A.splitRows(leftCol, [51, 49], 0.4) as [Rect, Rect];
  const [secBox, detBox] = A.splitColumns(lower, [60, 40], 0.3) as [Rect, Rect];
  const items: Primitive[] = [];

  const ps = SCALES['3/8'];
  const p = plan(style, ps.ratio);
  const planView = centeredViewport({
    name: 'plan',
    box: { ...planBox, y: planBox.y + 0.35 },
    model: p.model,
    scale: ps.ratio,
    items: p.items,
    over: p.over,
  });
  const pt = A.viewTitle({
    at: { x: planBox.x + 0.3, y: planBox.y + 0.35 },
    number: '1',
    title: 'Footing and framing plan',
    scale: ps.label,
    style,
  });
  items.push(...pt.items);
  items.push(...A.scaleBar({ at: { x: planBox.x + pt.width + 1, y: planBox.y + 0.25 }, scale: ps, style }).items);
  items.push(A.northArrow({ at: { x: planBox.x + planBox.w - 1.2, y: planBox.y + 0.6 }, angle: 0.35, style }));

  const s = section(style);
  const secView = centeredViewport({
    name: 'section',
    box: { ...secBox, w: secBox.w - 2, y: secBox.y + 0.5 },
    model: s.model,
    scale: SCALES['3/8'].ratio,
    items: s.items,
    over: s.over,
  });
  const colX = secBox.x + secBox.w - 1.1;
  const col = A.noteColumn({
    notes: s.targets.map((t) => ({ ...t, target: toPaper(secView, t.target) })),
    x: colX,
    side: 'right',
    top: secBox.y + secBox.h - 0.1,
    bottom: secBox.y + 0.9,
    width: 2.8,
    layer: 'A-ANNO-NOTE',
    style,
  });
  items.push(...col.items);
  items.push(
    ...A.viewTitle({
      at: { x: secBox.x + 0.3, y: secBox.y + 0.3 },
      number: '2',
      title: 'Section A',
      scale: SCALES['3/8'].label,
      style,
    }).items,
  );

  const d = detail(style);
  const detView = centeredViewport({
    name: 'detail',
    box: { ...detBox, x: detBox.x + 1.6, w: detBox.w - 1.6 },
    model: d.model,
    scale: 1 / 8,
    items: d.items,
    over: d.over,
  });
  items.push(
    ...A.viewTitle({
      at: { x: detBox.x + 3.2, y: secBox.y + 0.3 },
      number: '3',
      title: 'Beam on post',
      scale: SCALES['1-1/2'].label,
      style,
    }).items,
  );

  const blocks: A.Block[] = [
    {
      kind: 'table',
      title: 'Footing schedule',
      columns: [
        { head: 'Mark' },
        { head: 'Size' },
        { head: 'Depth below grade', align: 'right' },
        { head: 'Reinforcement' },
        { head: 'Soil pressure', align: 'right' },
        { head: 'Uplift', align: 'right' },
      ],
      rows: [
        ['F1', `2'-0" x 2'-0"`, `3'-6"`, '(3) #4 each way', '1,120 psf', '640 lb'],
        ['F2', `2'-6" x 2'-6"`, `3'-6"`, '(3) #4 each way', '1,348 psf', '1,240 lb'],
      ],
    },
    {
      kind: 'table',
      title: 'Beam schedule',
      columns: [
        { head: 'Mark' },
        { head: 'Make-up', grow: true },
        { head: 'Span', align: 'right' },
        { head: 'Moment ratio', align: 'right' },
        { head: 'Shear ratio', align: 'right' },
        { head: 'Deflection', align: 'right' },
      ],
      rows: [
        [
          'B1',
          '(2) 2x10, No. 2, with 1/2" plywood ply (no strength counted), nailed 16d in two rows at 12" o.c., continuous over posts 2 and 3',
          `7'-6 5/16"`,
          '0.84',
          '0.61',
          'L/412',
        ],
        ['B2', '3-1/8 x 9 glulam 24F', `12'-0"`, '0.72', '0.40', 'L/388'],
      ],
    },
    { kind: 'heading', text: 'Design basis' },
    {
      kind: 'pairs',
      rows: [
        { name: 'Ground snow load', value: '25 psf, stated by the office' },
        { name: 'Wind speed, risk category II', value: '115 mph, Exposure B' },
        { name: 'Allowable soil pressure', value: '1,500 psf (assumed)' },
        { name: 'Frost depth', value: '36 in' },
        { name: 'Roof live load', value: '20 psf' },
      ],
    },
    { kind: 'heading', text: 'General notes' },
    {
      kind: 'numbered',
      items: [
        'Check every dimension at the site before concrete is ordered. Report a difference of more than 1/2" to the owner.',
        'Concrete reaches 2,500 psi at 28 days. Bottoms of footings bear on undisturbed soil; no loose earth, water or frost.',
        'Fasteners in treated wood are hot-dip galvanized or stainless steel.',
        'Trusses are designed and sealed by the truss plant’s engineer. The sealed sheets are on the site before framing begins.',
        'Do not fasten to brick veneer, siding or sheathing alone.',
      ],
    },
    { kind: 'heading', text: 'Load path at post 2' },
    {
      kind: 'para',
      text: 'Dead 1,310 lb + snow 3,050 lb = 4,360 lb down; wind 0.6W − 0.6D = 1,240 lb up. φ = 30°, γ = 110 pcf, σ ≤ 1,500 psf, Δ ≤ L/240, √(a² + b²) × 1.0 ≈ 2½.',
    },
    {
      kind: 'bullets',
      items: [
        'Roof to rafters by sheathing nails',
        'Rafters to beam by joint J3, uplift 310 lb each',
        'Beam to post by joint J2; post to footing by joint J1',
      ],
    },
  ];
  const flow = A.columnsFlow(A.measure(blocks, rightCol.w, style), [rightCol]);
  items.push(...flow.items);
  if (flow.rest.length > 0) console.log('notes left over:', flow.rest.length);

  const sheet: Sheet = {
    id: 'S-101',
    title: 'Footing and framing plan',
    discipline: 'S',
    size,
    scaleNote: 'As noted',
    viewports: [planView, secView, detView],
    items: [
      ...items,
      ...A.titleBlock(size, set, {
        id: 'S-101',
        title: 'Footing and framing plan',
        scaleNote: 'As noted',
        number: 5,
        of: 14,
      }),
    ],
  };
  console.log('note column: overflow', col.overflow, 'crossings', col.crossings);
  return sheet;
}

/* ---------------------------------------------------------- small sheet */
function legend(): Sheet {
  const size = 'ANSI B';
  const style = A.styleFor(size);
  const room = A.drawingArea(size);
  const items: Primitive[] = [];
  const cols = A.splitColumns(room, [1, 1, 1], 0.45) as [Rect, Rect, Rect];
  const p = A.pencil('G-ANNO-NOTE');
  const h = style.note;
  const pens = Object.keys(PENS) as PenName[];
  const penBlock: A.Block[] = [
    { kind: 'heading', text: 'Lines' },
    {
      kind: 'drawing',
      height: pens.length * 0.27,
      draw: (at, width) =>
        pens.flatMap((pen, i) => {
          const y = at.y - i * 0.27 - 0.14;
          return [
            p.line(at.x, y, at.x + 1.75, y, pen),
            p.text(at.x + 1.95, y, pen, h, { face: 'condensed-bold', valign: 'middle' }),
            p.text(at.x + width, y, `${PENS[pen].width_mm} mm`, h, {
              face: 'condensed',
              valign: 'middle',
              align: 'right',
            }),
          ];
        }),
    },
    { kind: 'heading', text: 'Tags' },
    {
      kind: 'drawing',
      height: 1.9,
      draw: (at) =>
        (Object.keys(A.TAGS) as A.TagKind[]).flatMap((kind, i) => {
          const x = at.x + (i % 2) * 2.1;
          const y = at.y - 0.25 - Math.floor(i / 2) * 0.46;
          return [
            A.tag({ kind, text: `${'FPBTRJLN'[i]}${i + 1}`, at: { x: x + 0.3, y }, layer: 'S-ANNO-SYMB', style }),
            p.text(x + 0.75, y, A.TAGS[kind].means, h, { valign: 'middle' }),
          ];
        }),
    },
  ];
  items.push(...A.columnsFlow(A.measure(penBlock, cols[0].w, style), [cols[0]]).items);

  const patterns = Object.keys(PATTERNS) as PatternName[];
  const swatch: A.Block[] = [
    { kind: 'heading', text: 'Materials' },
    {
      kind: 'drawing',
      height: Math.ceil(patterns.length / 3) * 1.12,
      draw: (at, width) =>
        patterns.flatMap((pattern, i) => {
          const w = (width - 0.4) / 3;
          const x = at.x + (i % 3) * (w + 0.2);
          const y = at.y - Math.floor(i / 3) * 1.12 - 0.72;
          const loop = box(x, y, w, 0.7);
          return [
            hatch('A-DETL-PATT', pattern, loop),
            area('A-DETL-MCUT', 'new', loop),
            p.text(x, y - 0.06, pattern, h, { face: 'condensed', valign: 'top' }),
          ];
        }),
    },
  ];
  items.push(...A.columnsFlow(A.measure(swatch, cols[1].w, style), [cols[1]]).items);

  const third: A.Block[] = [
    { kind: 'heading', text: 'Marks' },
    {
      kind: 'drawing',
      height: 2.3,
      draw: (at) => [
        ...A.sectionMark({
          layer: 'A-ANNO-SYMB',
          style,
          a: { x: at.x + 0.5, y: at.y - 0.4 },
          b: { x: at.x + 2, y: at.y - 0.4 },
          look: -1,
          number: 'B',
          sheet: 'A-302',
        }),
        A.elevationMark({
          layer: 'A-ANNO-SYMB',
          style,
          at: { x: at.x + 3.4, y: at.y - 0.4 },
          angle: Math.PI / 2,
          number: '2',
          sheet: 'A-201',
        }),
        ...A.detailMark({
          layer: 'A-ANNO-SYMB',
          style,
          at: { x: at.x + 0.5, y: at.y - 1.6 },
          radius: 0.28,
          number: '5',
          sheet: 'S-502',
          scale: 1,
        }),
        A.slopeTriangle({
          layer: 'A-ANNO-NOTE',
          style,
          at: { x: at.x + 2.1, y: at.y - 1.6 },
          rise: '5',
          ratio: 5 / 12,
          up: 'right',
        }),
        A.northArrow({ at: { x: at.x + 3.6, y: at.y - 1.6 }, angle: -0.4, style }),
        ...A.breakLine({
          layer: 'A-DETL',
          style,
          a: { x: at.x + 1.3, y: at.y - 2.1 },
          b: { x: at.x + 3, y: at.y - 2.1 },
        }),
      ],
    },
    { kind: 'heading', text: 'Cautions' },
    {
      kind: 'para',
      text: 'This set is a help to its owner. It is no certificate. <Angle> brackets, "quotes" & ampersands come through as they are written.',
    },
    {
      kind: 'bullets',
      items: ['A short point', 'A longer point that needs more than one line of this narrow column to be said in full'],
    },
    {
      kind: 'table',
      title: 'Sheets',
      columns: [{ head: 'Sheet' }, { head: 'Title', grow: true }, { head: 'Date' }],
      rows: [
        ['G-001', 'Cover, design basis, assumptions', '2026-11-25'],
        ['C-101', 'Lot plan', '2026-11-25'],
        ['S-101', 'Footing and framing plan', '2026-11-25'],
      ],
    },
    {
      kind: 'drawing',
      height: 1.4,
      draw: (at) => [
        ...A.viewTitle({
          at: { x: at.x, y: at.y - 0.4 },
          number: '4',
          title: 'Lot plan',
          scale: SCALES['1:20'].label,
          style,
        }).items,
        ...A.scaleBar({ at: { x: at.x, y: at.y - 1.2 }, scale: SCALES['1:20'], style }).items,
        A.alignedDimension({
          a: { x: at.x + 2.4, y: at.y - 1.1 },
          b: { x: at.x + 4, y: at.y - 0.7 },
          offset: 0.2,
          layer: 'C-ANNO-DIMS',
          style,
          text: `80.00'`,
          scale: 1,
        }),
      ],
    },
  ];
  items.push(...A.columnsFlow(A.measure(third, cols[2].w, style), [cols[2]]).items);
  return {
    id: 'G-002',
    title: 'Lines, materials, symbols',
    discipline: 'G',
    size,
    scaleNote: 'Not to scale',
    viewports: [],
    items: [
      ...items,
      ...A.titleBlock(
        size,
        { ...set, status: { kind: 'issued', purpose: 'Permit application' }, stamp: false },
        { id: 'G-002', title: 'Lines, materials, symbols', scaleNote: 'Not to scale', number: 2, of: 14 },
      ),
    ],
  };
}

const root = new URL('..', import.meta.url).pathname;
const out = `${root}out/gallery`;
mkdirSync(out, { recursive: true });
const fonts = Object.fromEntries(
  FACE_NAMES.map((f) => [f, new Uint8Array(readFileSync(`${root}assets/fonts/${FACES[f].file}`))]),
) as unknown as FontBytes;
const clock = (name: string, run: () => unknown) => {
  const t = performance.now();
  run();
  console.log(name, (performance.now() - t).toFixed(1), 'ms');
};
const sheets = [bigSheet(), legend()];
for (const s of sheets) {
  writeFileSync(`${out}/${s.id}.svg`, svgOf(s));
  for (const [a, b] of A.overlaps(A.textBoxes(s))) console.log(s.id, 'overlap:', a.content, '|', b.content);
  for (const t of A.outside(A.textBoxes(s), A.sheetFrame(s.size))) console.log(s.id, 'outside:', t.content);
}
const pdf = await pdfOf(sheets, fonts, { title: 'Gallery', date: new Date('2026-11-25T00:00:00Z') });
writeFileSync(`${out}/gallery.pdf`, pdf);
console.log('pdf', pdf.length, 'bytes');
clock('layout warm', () => [bigSheet(), legend()]);
clock('svg warm', () => sheets.map((s) => svgOf(s)));
const t = performance.now();
await pdfOf(sheets, fonts, { title: 'Gallery', date: new Date('2026-11-25T00:00:00Z') });
console.log('pdf warm', (performance.now() - t).toFixed(1), 'ms');
