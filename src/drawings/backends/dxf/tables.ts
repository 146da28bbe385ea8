/** The tables: linetypes, layers, text and dimension styles, and the names everything else must have. */
import { LAYERS, type LayerName, PENS, type PenName, penOf } from '../../ir/index.js';
import { type DimStyle, dimStyleTags } from './dimension.js';
import { linetypeOf, lineWeight } from './entity.js';
import { STYLES, type TextStyle } from './lettering.js';
import { point, point2, type Tag, tagsText } from './tags.js';

export interface LayerRow {
  readonly name: string;
  readonly means: string;
  readonly off: boolean;
}

export interface ViewOfModel {
  readonly x: number;
  readonly y: number;
  readonly height: number;
  readonly aspect: number;
}

type Next = () => string;

/** A table and its records; a record names its handle by `code` (105 for dimension styles, by the format's own exception). */
function table(
  next: Next,
  name: string,
  records: readonly { readonly class: string; readonly handle?: string; readonly tags: readonly Tag[] }[],
  code = 5,
  after: readonly Tag[] = [],
): string {
  const own = next();
  const rows = records.flatMap((r): Tag[] => [
    [0, name],
    [code, r.handle ?? next()],
    [330, own],
    [100, 'AcDbSymbolTableRecord'],
    [100, r.class],
    ...r.tags,
  ]);
  return tagsText([
    [0, 'TABLE'],
    [2, name],
    [5, own],
    [330, '0'],
    [100, 'AcDbSymbolTable'],
    [70, records.length],
    ...after,
    ...rows,
    [0, 'ENDTAB'],
  ]);
}

/** Dashes of a pen: on and off in turn, off negative. */
function dashTags(dash: readonly number[]): Tag[] {
  const total = dash.reduce((a, b) => a + b, 0);
  return [
    [72, 65],
    [73, dash.length],
    [40, total],
    ...dash.flatMap((d, i): Tag[] => [
      [49, i % 2 === 0 ? d : -d],
      [74, 0],
    ]),
  ];
}

function linetypes(next: Next): string {
  const plain = (name: string, means: string): { class: string; tags: Tag[] } => ({
    class: 'AcDbLinetypeTableRecord',
    tags: [[2, name], [70, 0], [3, means], ...dashTags([])],
  });
  const dashed = (Object.keys(PENS) as PenName[]).flatMap((pen) => {
    const { dash, means } = penOf(pen);
    if (!dash) return [];
    const tags: Tag[] = [[2, linetypeOf(pen)], [70, 0], [3, means], ...dashTags(dash)];
    return [{ class: 'AcDbLinetypeTableRecord', tags }];
  });
  return table(next, 'LTYPE', [plain('ByBlock', ''), plain('ByLayer', ''), plain('Continuous', 'solid'), ...dashed]);
}

/** Meaning of a layer, shown as its description: by the name's longest known beginning. */
export function layerMeans(name: string): string {
  const known = (Object.keys(LAYERS) as LayerName[]).filter((l) => name === l || name.startsWith(`${l}-`));
  const base = known.sort((a, b) => b.length - a.length)[0];
  return base === undefined ? '' : LAYERS[base];
}

const NEVER_PLOTTED: readonly string[] = ['G-ANNO-NPLT', 'Defpoints'];

const layers = (next: Next, rows: readonly LayerRow[], plotStyle: string): string =>
  table(
    next,
    'LAYER',
    rows.map((l) => ({
      class: 'AcDbLayerTableRecord',
      tags: [
        [2, l.name],
        [70, 0],
        [62, l.off ? -7 : 7],
        [6, 'Continuous'],
        ...(NEVER_PLOTTED.includes(l.name) ? ([[290, 0]] as const) : []),
        [370, lineWeight(penOf('new-fine').width_mm)],
        [390, plotStyle],
        ...(l.means === ''
          ? []
          : ([
              [1001, 'AcAecLayerStandard'],
              [1000, ''],
              [1000, l.means],
            ] as const)),
      ],
    })),
  );

const textStyle = (s: TextStyle): Tag[] => [
  [2, s.name],
  [70, 0],
  [40, 0],
  [41, s.width],
  [50, 0],
  [71, 0],
  [42, 0.1],
  [3, s.file],
  [4, ''],
  // Family and weight for systems that look faces up by name: 34 is a proportional sans serif, the high bit bold.
  [1001, 'ACAD'],
  [1000, s.family],
  [1071, s.bold ? 0x2000022 : 0x22],
];

/** Applications whose extended data the file carries; the last one is ours: the mark of the part drawn. */
export const OWN_APP = 'EAVEWRIGHT';

export interface TableParts {
  readonly layers: readonly LayerRow[];
  readonly dimStyles: readonly DimStyle[];
  readonly blockRecords: readonly { readonly name: string; readonly handle: string; readonly layout: string }[];
  readonly view: ViewOfModel;
  readonly plotStyle: string;
}

export function tables(next: Next, o: TableParts): string {
  const standard: TextStyle = { ...STYLES.regular, name: 'Standard' };
  const texts = [standard, ...Object.values(STYLES)].map((s) => ({ s, handle: next() }));
  const lettering = texts.find((t) => t.s === STYLES.regular)!.handle;
  const dims: DimStyle[] = [{ name: 'Standard', height: 0.125, k: 1 }, ...o.dimStyles];
  const dimHandles = dims.map(() => next());
  const v = o.view;
  return [
    tagsText([
      [0, 'SECTION'],
      [2, 'TABLES'],
    ]),
    table(next, 'VPORT', [
      {
        class: 'AcDbViewportTableRecord',
        tags: [
          [2, '*Active'],
          [70, 0],
          ...point2(10, 0, 0),
          ...point2(11, 1, 1),
          ...point2(12, v.x, v.y),
          ...point2(13, 0, 0),
          ...point2(14, 12, 12),
          ...point2(15, 12, 12),
          [16, 0],
          [26, 0],
          [36, 1],
          ...point(17, 0, 0),
          [40, v.height],
          [41, v.aspect],
          [42, 50],
          [43, 0],
          [44, 0],
          [50, 0],
          [51, 0],
          [71, 0],
          [72, 1000],
          [73, 1],
          [74, 3],
          [75, 0],
          [76, 0],
          [77, 0],
          [78, 0],
          [281, 0],
          [65, 0],
        ],
      },
    ]),
    linetypes(next),
    layers(next, o.layers, o.plotStyle),
    table(
      next,
      'STYLE',
      texts.map(({ s, handle }) => ({ class: 'AcDbTextStyleTableRecord', handle, tags: textStyle(s) })),
    ),
    table(next, 'VIEW', []),
    table(next, 'UCS', []),
    table(
      next,
      'APPID',
      ['ACAD', 'AcAecLayerStandard', OWN_APP].map((name) => ({
        class: 'AcDbRegAppTableRecord',
        tags: [
          [2, name],
          [70, 0],
        ],
      })),
    ),
    table(
      next,
      'DIMSTYLE',
      dims.map((d, i) => ({
        class: 'AcDbDimStyleTableRecord',
        handle: dimHandles[i]!,
        tags: [[2, d.name], [70, 0], ...dimStyleTags(d, lettering)],
      })),
      105,
      [[100, 'AcDbDimStyleTable'], [71, dims.length], ...dimHandles.map((h): Tag => [340, h])],
    ),
    table(
      next,
      'BLOCK_RECORD',
      o.blockRecords.map((b) => ({
        class: 'AcDbBlockTableRecord',
        handle: b.handle,
        tags: [
          [2, b.name],
          [340, b.layout],
          [70, 0],
          [280, 1],
          [281, 0],
        ],
      })),
    ),
    tagsText([[0, 'ENDSEC']]),
  ].join('');
}
