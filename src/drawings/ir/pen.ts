/**
 * Pens: the line alphabet of every sheet. Weights in millimetres, because pens are made and named that way; dash
 * lengths in paper inches, so a pattern reads the same at every scale.
 *
 * Weights follow the national CAD standard's steps as read in a university's working-drawing notes on it (0.18 hatch,
 * 0.25 dimensions and leaders, 0.35 objects, 0.50 profiles and titles, 0.70 borders and match lines, 1.0 border).
 */
export interface Pen {
  readonly width_mm: number;
  /** Paper inches on, off, on, off …; absent for a continuous line. */
  readonly dash?: readonly number[];
  /** 0 is black, 1 is white. Greys are few: offices scan sheets, and a pale line is lost. */
  readonly grey?: number;
  readonly means: string;
}

export const PENS = {
  border: { width_mm: 1.0, means: 'sheet border' },
  cut: { width_mm: 0.7, means: 'outline of a part that the section plane cuts; match line' },
  profile: { width_mm: 0.5, means: 'silhouette and ground line; title rules' },
  new: { width_mm: 0.35, means: 'edge of new work seen in view' },
  'new-fine': { width_mm: 0.25, means: 'inner or far edge of new work' },
  existing: { width_mm: 0.18, means: 'existing work that stays' },
  'existing-cut': { width_mm: 0.35, means: 'existing work that the section plane cuts' },
  demolition: { width_mm: 0.35, dash: [0.1, 0.05], means: 'existing work to be removed' },
  hidden: { width_mm: 0.25, dash: [0.08, 0.04], means: 'edge behind or below another part' },
  above: { width_mm: 0.25, dash: [0.2, 0.07], means: 'edge above the cutting plane, such as a roof over a plan' },
  center: { width_mm: 0.18, dash: [0.42, 0.06, 0.08, 0.06], means: 'center line' },
  grid: { width_mm: 0.18, dash: [0.6, 0.07, 0.1, 0.07], means: 'structural grid line' },
  property: { width_mm: 0.7, dash: [0.75, 0.1, 0.14, 0.1, 0.14, 0.1], means: 'property line' },
  setback: { width_mm: 0.25, dash: [0.3, 0.09], means: 'setback or yard line' },
  easement: { width_mm: 0.25, dash: [0.45, 0.08, 0.03, 0.08], means: 'easement line' },
  section: { width_mm: 0.5, dash: [0.35, 0.08, 0.1, 0.08], means: 'trace of a section plane' },
  dimension: { width_mm: 0.18, means: 'dimension and extension line' },
  tick: { width_mm: 0.5, means: 'oblique end tick of a dimension' },
  leader: { width_mm: 0.18, means: 'leader of a note' },
  symbol: { width_mm: 0.25, means: 'outline of a tag, bubble or mark' },
  hatch: { width_mm: 0.13, means: 'material hatch' },
  'hatch-bold': { width_mm: 0.18, means: 'coarse strokes of a material hatch' },
  rule: { width_mm: 0.18, means: 'thin rule of a table or title block' },
  'rule-bold': { width_mm: 0.5, means: 'heading rule of a table, underline of a view title' },
} as const satisfies Record<string, Pen>;

export type PenName = keyof typeof PENS;

export const penOf = (name: PenName): Pen => PENS[name];

/** Greys of lit faces in a shaded picture, dark to light. Black line work leaves them white. */
export const SHADES = {
  'shade-1': 0.36,
  'shade-2': 0.44,
  'shade-3': 0.52,
  'shade-4': 0.6,
  'shade-5': 0.68,
  'shade-6': 0.76,
  'shade-7': 0.83,
  'shade-8': 0.9,
  'shade-9': 0.96,
} as const satisfies Record<string, number>;
export type ShadeName = keyof typeof SHADES;

/** Fill of a closed path: `paper` hides what lies under it, `tint` reads as a light wash, `poche` marks cut existing work. */
export const FILLS = { paper: 1, tint: 0.93, poche: 0.72, ink: 0, ...SHADES } as const satisfies Record<string, number>;
export type FillName = keyof typeof FILLS;

/** Text ink as grey: `soft` is for the labels of a form, never for content. */
export const INKS = { solid: 0, soft: 0.38, paper: 1 } as const satisfies Record<string, number>;
export type InkName = keyof typeof INKS;
