import {
  emSize,
  escapeXml,
  FACES,
  FILLS,
  type Flat,
  type FlatText,
  flatten,
  INKS,
  PENS,
  penOf,
  SHEET_SIZES,
  type Sheet,
} from '../../ir/index.js';

/** SVG user units per inch: hundredths keep numbers short and font sizes in a range every browser renders well. */
const UNIT = 100;

/** Ready-made fractions: printing a whole number and a table look-up is far quicker than printing a float. */
const HUNDREDTHS = Array.from({ length: 100 }, (_, i) => String(i / 100).slice(1));

/** Inches as user units with at most two decimals: a ten-thousandth of an inch. */
function num(inches: number): string {
  const n = Math.round(inches * UNIT * 100);
  const a = n < 0 ? -n : n;
  const whole = Math.floor(a / 100);
  const text = whole + HUNDREDTHS[a - whole * 100]!;
  return n < 0 ? `-${text}` : text;
}

const grey = (g: number): string => {
  const v = Math.round(g * 255)
    .toString(16)
    .padStart(2, '0');
  return `#${v}${v}${v}`;
};

/** One class a pen, fill, ink and face, so that a screen can restyle a sheet without touching it. */
function styleSheet(): string {
  const rules = [
    '.sheet path,.sheet circle{fill:none;stroke:none;stroke-linecap:round;stroke-linejoin:round}',
    '.sheet text{font-kerning:none;font-variant-ligatures:none;white-space:pre;stroke:none}',
  ];
  for (const name of Object.keys(PENS) as (keyof typeof PENS)[]) {
    const pen = penOf(name);
    const dash = pen.dash ? `;stroke-dasharray:${pen.dash.map(num).join(' ')};stroke-linecap:butt` : '';
    rules.push(`.sheet .pen-${name}{stroke:${grey(pen.grey ?? 0)};stroke-width:${num(pen.width_mm / 25.4)}${dash}}`);
  }
  for (const [name, g] of Object.entries(FILLS)) rules.push(`.sheet .fill-${name}{fill:${grey(g)};fill-rule:evenodd}`);
  for (const [name, g] of Object.entries(INKS)) rules.push(`.sheet .ink-${name}{fill:${grey(g)}}`);
  for (const [name, face] of Object.entries(FACES)) {
    const spare = face.fallback ? `,'${FACES[face.fallback].family}'` : '';
    rules.push(`.sheet .face-${name}{font-family:'${face.family}'${spare},sans-serif;font-weight:${face.weight}}`);
  }
  return rules.join('\n');
}

const STYLE = styleSheet();

export interface SvgOptions {
  /** CSS put before ours, e.g. `@font-face` rules with embedded fonts. */
  readonly css?: string;
  /** Leaves the style sheet out, for a page that holds many sheets and carries it once (`svgStyle`). */
  readonly bare?: boolean;
}

export const svgStyle = STYLE;

/**
 * A sheet as SVG text, sized in inches. Layers are runs of groups with `data-layer` in painting order; every element of a part
 * carries `data-mark`, and the first one the id `<sheet>.<mark>`. Text stays text.
 */
export function svgOf(sheet: Sheet, options: SvgOptions = {}): string {
  const { w, h } = SHEET_SIZES[sheet.size];
  const seen = new Set<string>();
  const x = num;
  const y = (v: number): string => num(h - v);

  const data = (f: Flat): string => {
    let out = '';
    if (f.mark !== undefined) {
      const id = `${sheet.id}.${f.mark}`.replace(/\s+/g, '_');
      if (!seen.has(id)) {
        seen.add(id);
        out += ` id="${escapeXml(id)}"`;
      }
      out += ` data-mark="${escapeXml(f.mark)}"`;
    }
    if (f.path !== undefined) out += ` data-path="${escapeXml(f.path)}"`;
    if (f.role !== undefined) out += ` data-role="${escapeXml(f.role)}"`;
    return out;
  };
  const classes = (f: { readonly pen: string | undefined; readonly fill: string | undefined }): string =>
    `${f.pen === undefined ? '' : `pen-${f.pen}`}${f.pen !== undefined && f.fill !== undefined ? ' ' : ''}${f.fill === undefined ? '' : `fill-${f.fill}`}`;

  const textOf = (t: FlatText): string => {
    const anchor = t.align === 'left' ? '' : ` text-anchor="${t.align === 'center' ? 'middle' : 'end'}"`;
    const turn = Math.round((-t.angle * 180 * 1000) / Math.PI) / 1000 + 0;
    const rotate = turn === 0 ? '' : ` transform="rotate(${turn} ${x(t.x)} ${y(t.y)})"`;
    const size = num(emSize(t.height, t.face));
    return `<text class="face-${t.face} ink-${t.ink}" x="${x(t.x)}" y="${y(t.y)}" font-size="${size}"${anchor}${rotate}${data(t)}>${escapeXml(t.content)}</text>`;
  };

  const draw = (f: Flat): string => {
    if (f.kind === 'text') return textOf(f);
    if (f.kind === 'path') {
      let d = '';
      for (const s of f.strokes) {
        for (let i = 0; i < s.length; i += 2) d += `${i === 0 ? 'M' : i === 2 ? 'L' : ' '}${x(s[i]!)} ${y(s[i + 1]!)}`;
        if (f.closed) d += 'Z';
      }
      return `<path class="${classes(f)}" d="${d}"${data(f)}/>`;
    }
    if (f.end - f.start >= 2 * Math.PI - 1e-9) {
      return `<circle class="${classes(f)}" cx="${x(f.x)}" cy="${y(f.y)}" r="${num(f.r)}"${data(f)}/>`;
    }
    const at = (a: number) => `${x(f.x + f.r * Math.cos(a))} ${y(f.y + f.r * Math.sin(a))}`;
    const large = f.end - f.start > Math.PI ? 1 : 0;
    return `<path class="${classes(f)}" d="M${at(f.start)}A${num(f.r)} ${num(f.r)} 0 ${large} 0 ${at(f.end)}"${data(f)}/>`;
  };

  const out = [
    `<svg xmlns="http://www.w3.org/2000/svg" class="sheet" width="${w}in" height="${h}in" viewBox="0 0 ${num(w)} ${num(h)}" data-sheet="${escapeXml(sheet.id)}">`,
    `<title>${escapeXml(`${sheet.id} ${sheet.title}`)}</title>`,
  ];
  if (!options.bare) out.push(`<style>\n${options.css ? `${options.css}\n` : ''}${STYLE}\n</style>`);
  out.push(`<rect width="${num(w)}" height="${num(h)}" fill="#ffffff"/>`);
  let layer: string | undefined;
  for (const f of flatten(sheet)) {
    if (f.layer !== layer) {
      if (layer !== undefined) out.push('</g>');
      layer = f.layer;
      out.push(`<g data-layer="${layer}">`);
    }
    out.push(draw(f));
  }
  if (layer !== undefined) out.push('</g>');
  out.push('</svg>', '');
  return out.join('\n');
}
