/** Drawing scales of the trade: paper inches per model inch, with the words printed under a view's title. */
export interface DrawingScale {
  /** Paper inches per model inch. */
  readonly ratio: number;
  readonly label: string;
  /** `architectural` bars count feet, `engineering` bars tens of feet. */
  readonly family: 'architectural' | 'engineering';
}

const architectural = (fraction: string, inchesPerFoot: number): DrawingScale => ({
  ratio: inchesPerFoot / 12,
  label: `${fraction}" = 1'-0"`,
  family: 'architectural',
});
const engineering = (feet: number): DrawingScale => ({
  ratio: 1 / (feet * 12),
  label: `1" = ${feet}'`,
  family: 'engineering',
});

export const SCALES = {
  full: { ratio: 1, label: 'Full size', family: 'architectural' },
  '3': architectural('3', 3),
  '1-1/2': architectural('1 1/2', 1.5),
  '1': architectural('1', 1),
  '3/4': architectural('3/4', 0.75),
  '1/2': architectural('1/2', 0.5),
  '3/8': architectural('3/8', 0.375),
  '1/4': architectural('1/4', 0.25),
  '3/16': architectural('3/16', 0.1875),
  '1/8': architectural('1/8', 0.125),
  '1:10': engineering(10),
  '1:20': engineering(20),
  '1:30': engineering(30),
  '1:40': engineering(40),
  '1:50': engineering(50),
  '1:60': engineering(60),
  '1:100': engineering(100),
} as const satisfies Record<string, DrawingScale>;
export type ScaleName = keyof typeof SCALES;

/** First of `candidates` (largest first) at which a model extent fits a paper extent; undefined when none does. */
export function chooseScale(
  model: { readonly w: number; readonly h: number },
  paper: { readonly w: number; readonly h: number },
  candidates: readonly ScaleName[],
): DrawingScale | undefined {
  for (const name of candidates) {
    const s = SCALES[name];
    if (model.w * s.ratio <= paper.w + 1e-9 && model.h * s.ratio <= paper.h + 1e-9) return s;
  }
  return undefined;
}
