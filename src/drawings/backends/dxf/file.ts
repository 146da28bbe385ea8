/** One file put together: sections in the format's order, every handle given out once, every layer and block named in its table. */
import type { Rect } from '../../ir/index.js';
import type { Entity } from './entity.js';
import type { Library } from './library.js';
import { classes, header, type LayoutParts, objects } from './objects.js';
import { type LayerRow, layerMeans, OWN_APP, tables } from './tables.js';
import { handles, point, point2, type Tag, tagsText } from './tags.js';

/** A window of the sheet into model space. */
export interface PaperView {
  /** On paper. */
  readonly rect: Rect;
  /** Centre of what it shows, in model space. */
  readonly center: { readonly x: number; readonly y: number };
  /** Drawing units per paper inch. */
  readonly k: number;
}

export interface Drawing {
  readonly layout: string;
  readonly paper: Rect;
  readonly model: Rect;
  readonly onModel: boolean;
  /** Drawing units per paper inch that dashes are sized for: the file's linetype scale. */
  readonly dashes: number;
  readonly modelEntities: readonly Entity[];
  readonly paperEntities: readonly Entity[];
  readonly views: readonly PaperView[];
  readonly library: Library;
  /** Layers switched off when the file is opened. */
  readonly off?: readonly string[];
}

const VIEW_LAYER = 'G-ANNO-NPLT';
/** Always on, its scale locked, the coordinate sign hidden as on a sheet. */
const VIEW_STATUS = 0x8000 + 0x4000 + 0x20;

const MODEL = '*Model_Space';
const PAPER = '*Paper_Space';

function viewport(id: number, rect: Rect, center: { x: number; y: number }, k: number): Entity {
  return {
    type: 'VIEWPORT',
    layer: VIEW_LAYER,
    mark: undefined,
    look: [],
    body: [
      [100, 'AcDbViewport'],
      ...point(10, rect.x + rect.w / 2, rect.y + rect.h / 2),
      [40, rect.w],
      [41, rect.h],
      [68, id],
      [69, id],
      ...point2(12, center.x, center.y),
      ...point2(13, 0, 0),
      ...point2(14, 12, 12),
      ...point2(15, 12, 12),
      [16, 0],
      [26, 0],
      [36, 1],
      ...point(17, 0, 0),
      [42, 50],
      [43, 0],
      [44, 0],
      [45, rect.h * k],
      [50, 0],
      [51, 0],
      [72, 1000],
      [90, VIEW_STATUS],
      [1, ''],
      [281, 0],
      [71, 0],
      [74, 0],
      ...point(110, 0, 0),
      [111, 1],
      [121, 0],
      [131, 0],
      [112, 0],
      [122, 1],
      [132, 0],
      [79, 0],
      [146, 0],
    ],
  };
}

const markTags = (mark: string | undefined): Tag[] =>
  mark === undefined
    ? []
    : [
        [1001, OWN_APP],
        [1000, `mark ${mark}`],
      ];

const entityTags = (e: Entity, handle: string, owner: string, onPaper: boolean): Tag[] => [
  [0, e.type],
  [5, handle],
  [330, owner],
  [100, 'AcDbEntity'],
  ...(onPaper ? ([[67, 1]] as const) : []),
  [8, e.layer],
  ...e.look,
  ...e.body,
  ...(e.extended ?? []),
  ...markTags(e.mark),
];

/** The layers that entities stand on, by name, after the two that every drawing has. */
function layerRows(entities: readonly Entity[], off: readonly string[]): LayerRow[] {
  const names = [...new Set(entities.map((e) => e.layer))].filter((n) => n !== '0').sort();
  return [
    { name: '0', means: '', off: false },
    { name: 'Defpoints', means: '', off: false },
    ...names.map((name) => ({ name, means: layerMeans(name), off: off.includes(name) })),
  ];
}

/** View on opening: everything, with a little room. */
const viewOf = (r: Rect): { x: number; y: number; height: number; aspect: number } => ({
  x: r.x + r.w / 2,
  y: r.y + r.h / 2,
  height: Math.max(r.h, r.w / 1.6, 1) * 1.05,
  aspect: 1.6,
});

export function dxfText(d: Drawing): string {
  const all = handles();
  const { next } = all;
  const plotStyle = next();
  const record = { model: next(), paper: next() };
  const sheet = { model: next(), paper: next() };
  const active = next();
  const blocks = d.library.blocks().map((b) => ({ ...b, handle: next() }));
  // The sheet itself is viewport 1; views count on from it.
  const main = viewport(1, d.paper, { x: d.paper.x + d.paper.w / 2, y: d.paper.y + d.paper.h / 2 }, 1);
  const views = d.views.map((v, i) => viewport(i + 2, v.rect, v.center, v.k));
  const entities = [...d.modelEntities, main, ...views, ...d.paperEntities, ...blocks.flatMap((b) => b.entities)];

  const tableText = tables(next, {
    layers: layerRows(entities, d.off ?? []),
    dimStyles: d.library.dimStyles(),
    plotStyle,
    view: viewOf(d.model),
    blockRecords: [
      { name: MODEL, handle: record.model, layout: sheet.model },
      { name: PAPER, handle: record.paper, layout: sheet.paper },
      ...blocks.map((b) => ({ name: b.name, handle: b.handle, layout: '0' })),
    ],
  });

  const block = (name: string, owner: string, inside: readonly Entity[], onPaper = false): string =>
    tagsText([
      [0, 'BLOCK'],
      [5, next()],
      [330, owner],
      [100, 'AcDbEntity'],
      ...(onPaper ? ([[67, 1]] as const) : []),
      [8, '0'],
      [100, 'AcDbBlockBegin'],
      [2, name],
      [70, name.startsWith('*D') ? 1 : 0],
      ...point(10, 0, 0),
      [3, name],
      [1, ''],
      ...inside.flatMap((e) => entityTags(e, next(), owner, false)),
      [0, 'ENDBLK'],
      [5, next()],
      [330, owner],
      [100, 'AcDbEntity'],
      ...(onPaper ? ([[67, 1]] as const) : []),
      [8, '0'],
      [100, 'AcDbBlockEnd'],
    ]);
  const blockText = [
    tagsText([
      [0, 'SECTION'],
      [2, 'BLOCKS'],
    ]),
    block(MODEL, record.model, []),
    block(PAPER, record.paper, [], true),
    ...blocks.map((b) => block(b.name, b.handle, b.entities)),
    tagsText([[0, 'ENDSEC']]),
  ].join('');

  const entityText = tagsText([
    [0, 'SECTION'],
    [2, 'ENTITIES'],
    ...d.modelEntities.flatMap((e) => entityTags(e, next(), record.model, false)),
    ...entityTags(main, active, record.paper, true),
    ...[...views, ...d.paperEntities].flatMap((e) => entityTags(e, next(), record.paper, true)),
    [0, 'ENDSEC'],
  ]);

  const layouts: LayoutParts[] = [
    { name: 'Model', handle: sheet.model, record: record.model, order: 0, area: d.model },
    { name: d.layout, handle: sheet.paper, record: record.paper, order: 1, area: d.paper, active },
  ];
  const objectText = objects(next, layouts, plotStyle);
  const head = header({ seed: all.seed(), model: d.model, paper: d.paper, onModel: d.onModel, dashes: d.dashes });
  return [head, classes(), tableText, blockText, entityText, objectText].join('');
}
