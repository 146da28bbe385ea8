import {
  emSize,
  type FaceName,
  FILLS,
  type Flat,
  type FlatText,
  faceRuns,
  INKS,
  penOf,
  textWidth,
} from '../../ir/index.js';

/** Ready-made fractions of ten-thousandths: far quicker than printing a float. */
const FRACTIONS = Array.from({ length: 10_000 }, (_, i) => String(i / 10_000).slice(1));

/** Number of a content stream: ten-thousandths of an inch, no exponent, no leading zero. */
export function num(v: number): string {
  const n = Math.round(v * 1e4);
  const a = n < 0 ? -n : n;
  const whole = Math.floor(a / 1e4);
  const fraction = FRACTIONS[a - whole * 1e4]!;
  const text = whole === 0 && fraction !== '' ? fraction : whole + fraction;
  return n < 0 ? `-${text}` : text;
}

/** What the page must supply: encoded glyphs of a text in a face, and the resource name of that face and of a layer. */
export interface Resources {
  encode(face: FaceName, text: string): string;
  fontName(face: FaceName): string;
  layerName(layer: string): string;
}

/** Cubic arcs of at most a quarter turn each. */
function arcOps(x: number, y: number, r: number, start: number, end: number): string {
  const n = Math.max(1, Math.ceil((end - start) / (Math.PI / 2) - 1e-9));
  const step = (end - start) / n;
  const k = (4 / 3) * Math.tan(step / 4);
  let out = `${num(x + r * Math.cos(start))} ${num(y + r * Math.sin(start))} m\n`;
  for (let i = 0; i < n; i++) {
    const a = start + i * step;
    const b = a + step;
    const [ca, sa, cb, sb] = [Math.cos(a), Math.sin(a), Math.cos(b), Math.sin(b)];
    out += `${num(x + r * (ca - k * sa))} ${num(y + r * (sa + k * ca))} ${num(x + r * (cb + k * sb))} ${num(y + r * (sb - k * cb))} ${num(x + r * cb)} ${num(y + r * sb)} c\n`;
  }
  return out;
}

function textOps(t: FlatText, res: Resources): string {
  const [c, s] = [Math.cos(t.angle), Math.sin(t.angle)];
  let along = t.align === 'left' ? 0 : t.align === 'center' ? -t.width / 2 : -t.width;
  let out = 'BT\n';
  for (const run of faceRuns(t.content, t.face)) {
    out += `/${res.fontName(run.face)} ${num(emSize(t.height, run.face))} Tf\n`;
    out += `${num(c)} ${num(s)} ${num(-s)} ${num(c)} ${num(t.x + c * along)} ${num(t.y + s * along)} Tm\n`;
    out += `<${res.encode(run.face, run.text)}> Tj\n`;
    along += textWidth(run.text, t.height, run.face);
  }
  return `${out}ET\n`;
}

/** Ink and paper only: pale lettering and cut existing work go black, washes and shades go white. */
const BLACK_FROM = 0.73;
const asBlack = (g: number): number => (g < BLACK_FROM ? 0 : 1);

/**
 * Content stream of one page, in inches (the first operator scales to points). Layers become marked-content runs.
 * @param black black line work: no grey anywhere
 */
export function contentOf(flats: readonly Flat[], res: Resources, black = false): string {
  const tone = black ? asBlack : (g: number): number => g;
  const out: string[] = ['72 0 0 72 0 0 cm\n1 J 1 j\n'];
  let layer: string | undefined;
  let pen: string | undefined;
  let fill = -1;
  let stroke = 0;
  const setFill = (given: number) => {
    const g = tone(given);
    if (g === fill) return;
    fill = g;
    out.push(`${num(g)} g\n`);
  };
  const setPen = (name: Parameters<typeof penOf>[0]) => {
    if (name === pen) return;
    const p = penOf(name);
    const dash = p.dash ?? [];
    out.push(`${num(p.width_mm / 25.4)} w [${dash.map(num).join(' ')}] 0 d ${dash.length > 0 ? 0 : 1} J\n`);
    const line = black ? 0 : (p.grey ?? 0);
    if (line !== stroke) {
      stroke = line;
      out.push(`${num(stroke)} G\n`);
    }
    pen = name;
  };
  for (const f of flats) {
    if (f.layer !== layer) {
      if (layer !== undefined) out.push('EMC\n');
      layer = f.layer;
      out.push(`/OC /${res.layerName(layer)} BDC\n`);
    }
    if (f.kind === 'text') {
      setFill(INKS[f.ink]);
      out.push(textOps(f, res));
      continue;
    }
    if (f.pen === undefined && f.fill === undefined) continue;
    if (f.pen !== undefined) setPen(f.pen);
    if (f.fill !== undefined) setFill(f.fill.startsWith('shade') && black ? 1 : FILLS[f.fill]);
    let d = '';
    let closed = false;
    if (f.kind === 'arc') {
      d = arcOps(f.x, f.y, f.r, f.start, f.end);
      closed = f.end - f.start >= 2 * Math.PI - 1e-9;
      if (closed) d += 'h\n';
    } else {
      closed = f.closed;
      for (const s of f.strokes) {
        for (let i = 0; i < s.length; i += 2) d += `${num(s[i]!)} ${num(s[i + 1]!)} ${i === 0 ? 'm' : 'l'}\n`;
        if (closed) d += 'h\n';
      }
    }
    out.push(d, f.fill === undefined ? 'S\n' : f.pen === undefined ? 'f*\n' : 'B*\n');
  }
  if (layer !== undefined) out.push('EMC\n');
  return out.join('');
}
