/** Header, classes and the objects behind a drawing: dictionaries, layouts, and that wipeouts show no frame. */
import type { Rect } from '../../ir/index.js';
import { point, point2, type Tag, tagsText } from './tags.js';

/** Release 2007: the first whose text is UTF-8, and nothing later is needed. */
const RELEASE = 'AC1021';

export interface HeaderParts {
  readonly seed: string;
  readonly model: Rect;
  readonly paper: Rect;
  /** Drawing units per paper inch that dashes are sized for. */
  readonly dashes: number;
  /** Open on the model rather than on the sheet. */
  readonly onModel: boolean;
}

export function header(o: HeaderParts): string {
  const { model: m, paper: p } = o;
  const vars: readonly (readonly [string, readonly Tag[]])[] = [
    ['$ACADVER', [[1, RELEASE]]],
    ['$ACADMAINTVER', [[70, 0]]],
    ['$DWGCODEPAGE', [[3, 'ANSI_1252']]],
    ['$INSBASE', point(10, 0, 0)],
    ['$EXTMIN', point(10, m.x, m.y)],
    ['$EXTMAX', point(10, m.x + m.w, m.y + m.h)],
    ['$LIMMIN', point2(10, m.x, m.y)],
    ['$LIMMAX', point2(10, m.x + m.w, m.y + m.h)],
    ['$ORTHOMODE', [[70, 0]]],
    ['$FILLMODE', [[70, 1]]],
    ['$LTSCALE', [[40, o.dashes]]],
    ['$TEXTSIZE', [[40, 0.09375]]],
    ['$TEXTSTYLE', [[7, 'Standard']]],
    ['$CLAYER', [[8, '0']]],
    ['$CELTYPE', [[6, 'ByLayer']]],
    ['$CECOLOR', [[62, 256]]],
    ['$CELTSCALE', [[40, 1]]],
    ['$DIMSTYLE', [[2, 'Standard']]],
    ['$LUNITS', [[70, 4]]],
    ['$LUPREC', [[70, 4]]],
    ['$AUNITS', [[70, 0]]],
    ['$AUPREC', [[70, 4]]],
    ['$ANGBASE', [[50, 0]]],
    ['$ANGDIR', [[70, 0]]],
    ['$HANDSEED', [[5, o.seed]]],
    ['$PINSBASE', point(10, 0, 0)],
    ['$PLIMCHECK', [[70, 0]]],
    ['$PEXTMIN', point(10, p.x, p.y)],
    ['$PEXTMAX', point(10, p.x + p.w, p.y + p.h)],
    ['$PLIMMIN', point2(10, p.x, p.y)],
    ['$PLIMMAX', point2(10, p.x + p.w, p.y + p.h)],
    ['$TILEMODE', [[70, o.onModel ? 1 : 0]]],
    ['$MAXACTVP', [[70, 64]]],
    // Dashes are sized in the model, so that they read alike there and, through the view's scale, on the sheet.
    ['$PSLTSCALE', [[70, 0]]],
    ['$MEASUREMENT', [[70, 0]]],
    ['$CELWEIGHT', [[370, -1]]],
    ['$LWDISPLAY', [[290, 1]]],
    ['$INSUNITS', [[70, 1]]],
    ['$PSTYLEMODE', [[290, 1]]],
  ];
  return tagsText([
    [0, 'SECTION'],
    [2, 'HEADER'],
    ...vars.flatMap(([name, tags]): Tag[] => [[9, name], ...tags]),
    [0, 'ENDSEC'],
  ]);
}

/** Classes that do not belong to the format's core and must be announced. */
export function classes(): string {
  const rows = [
    ['ACDBDICTIONARYWDFLT', 'AcDbDictionaryWithDefault', 'ObjectDBX Classes', 0, 0],
    ['DICTIONARYVAR', 'AcDbDictionaryVar', 'ObjectDBX Classes', 0, 0],
    ['ACDBPLACEHOLDER', 'AcDbPlaceHolder', 'ObjectDBX Classes', 0, 0],
    ['LAYOUT', 'AcDbLayout', 'ObjectDBX Classes', 0, 0],
    ['WIPEOUT', 'AcDbWipeout', 'WipeOut', 127, 1],
    ['WIPEOUTVARIABLES', 'AcDbWipeoutVariables', 'WipeOut', 0, 0],
  ] as const;
  return tagsText([
    [0, 'SECTION'],
    [2, 'CLASSES'],
    ...rows.flatMap(([name, cpp, app, flags, entity]): Tag[] => [
      [0, 'CLASS'],
      [1, name],
      [2, cpp],
      [3, app],
      [90, flags],
      [91, 0],
      [280, 0],
      [281, entity],
    ]),
    [0, 'ENDSEC'],
  ]);
}

export interface LayoutParts {
  readonly name: string;
  readonly handle: string;
  readonly record: string;
  readonly order: number;
  readonly area: Rect;
  /** Viewport of the sheet itself, on paper. */
  readonly active?: string;
}

const MM = 25.4;

function layout(o: LayoutParts, owner: string): Tag[] {
  const { area } = o;
  const onPaper = o.active !== undefined;
  return [
    [0, 'LAYOUT'],
    [5, o.handle],
    [330, owner],
    [100, 'AcDbPlotSettings'],
    [1, ''],
    [2, 'none_device'],
    [4, onPaper ? `Eavewright_(${area.w.toFixed(2)}_x_${area.h.toFixed(2)}_Inches)` : ''],
    [6, ''],
    [40, 0],
    [41, 0],
    [42, 0],
    [43, 0],
    // Paper in millimetres whatever the plot units are.
    [44, onPaper ? area.w * MM : 0],
    [45, onPaper ? area.h * MM : 0],
    [46, 0],
    [47, 0],
    [48, 0],
    [49, 0],
    [140, 0],
    [141, 0],
    [142, 1],
    [143, 1],
    // Plot line weights and use the standard scale; the model's own layout says so of itself.
    [70, onPaper ? 688 : 1712],
    [72, 0],
    [73, 0],
    // What is plotted: the layout, or the model's extents.
    [74, onPaper ? 5 : 1],
    [7, ''],
    [75, 16],
    [76, 0],
    [77, 2],
    [78, 300],
    [147, 1],
    [148, 0],
    [149, 0],
    [100, 'AcDbLayout'],
    [1, o.name],
    [70, 0],
    [71, o.order],
    ...point2(10, area.x, area.y),
    ...point2(11, area.x + area.w, area.y + area.h),
    ...point(12, 0, 0),
    ...point(14, area.x, area.y),
    ...point(15, area.x + area.w, area.y + area.h),
    [146, 0],
    ...point(13, 0, 0),
    [16, 1],
    [26, 0],
    [36, 0],
    [17, 0],
    [27, 1],
    [37, 0],
    [76, 0],
    [330, o.record],
    ...(o.active === undefined ? [] : ([[331, o.active]] as const)),
  ];
}

const dictionary = (handle: string, owner: string, entries: readonly (readonly [string, string])[]): Tag[] => [
  [0, 'DICTIONARY'],
  [5, handle],
  [330, owner],
  [100, 'AcDbDictionary'],
  [281, 1],
  ...entries.flatMap(([name, to]): Tag[] => [
    [3, name],
    [350, to],
  ]),
];

/** @param plotStyle handle of the plot style that layers name */
export function objects(next: () => string, layouts: readonly LayoutParts[], plotStyle: string): string {
  const [root, groups, sheets, multilines, multiline, plots, styles, scales, wipeouts, variables, frame] = Array.from(
    { length: 11 },
    next,
  ) as [string, string, string, string, string, string, string, string, string, string, string];
  return tagsText([
    [0, 'SECTION'],
    [2, 'OBJECTS'],
    ...dictionary(root, '0', [
      ['ACAD_GROUP', groups],
      ['ACAD_LAYOUT', sheets],
      ['ACAD_MLINESTYLE', multilines],
      ['ACAD_PLOTSETTINGS', plots],
      ['ACAD_PLOTSTYLENAME', styles],
      ['ACAD_SCALELIST', scales],
      ['ACAD_WIPEOUT_VARS', wipeouts],
      ['AcDbVariableDictionary', variables],
    ]),
    ...dictionary(groups, root, []),
    ...dictionary(
      sheets,
      root,
      layouts.map((l) => [l.name, l.handle]),
    ),
    ...dictionary(multilines, root, [['Standard', multiline]]),
    ...dictionary(plots, root, []),
    [0, 'ACDBDICTIONARYWDFLT'],
    [5, styles],
    [330, root],
    [100, 'AcDbDictionary'],
    [281, 1],
    [3, 'Normal'],
    [350, plotStyle],
    [100, 'AcDbDictionaryWithDefault'],
    [340, plotStyle],
    [0, 'ACDBPLACEHOLDER'],
    [5, plotStyle],
    [330, styles],
    ...dictionary(scales, root, []),
    ...layouts.flatMap((l) => layout(l, sheets)),
    [0, 'MLINESTYLE'],
    [5, multiline],
    [330, multilines],
    [100, 'AcDbMlineStyle'],
    [2, 'Standard'],
    [70, 0],
    [3, ''],
    [62, 256],
    [51, 90],
    [52, 90],
    [71, 2],
    [49, 0.5],
    [62, 256],
    [6, 'BYLAYER'],
    [49, -0.5],
    [62, 256],
    [6, 'BYLAYER'],
    [0, 'WIPEOUTVARIABLES'],
    [5, wipeouts],
    [330, root],
    [100, 'AcDbWipeoutVariables'],
    [70, 0],
    ...dictionary(variables, root, [['WIPEOUTFRAME', frame]]),
    [0, 'DICTIONARYVAR'],
    [5, frame],
    [330, variables],
    [100, 'DictionaryVariables'],
    [280, 0],
    [1, '0'],
    [0, 'ENDSEC'],
    [0, 'EOF'],
  ]);
}
