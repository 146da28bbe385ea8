/**
 * A sheet made flat and packed into a few arrays, so that it crosses from the worker without being walked object by object.
 * Each item has a head of eight integers and its numbers in paper inches; words are indices into one list.
 */
import {
  emSize,
  type Flat,
  faceRuns,
  flatten,
  type Primitive,
  SHEET_SIZES,
  type Sheet,
  textWidth,
  type Viewport,
} from '../../../src/drawing.js';

export const HEAD = 8;
export const KIND = { path: 0, arc: 1, text: 2 } as const;

/** Dimension of a sheet as the screen needs it: where it is measured, and what it says. */
export interface PackedDimension {
  readonly text: string;
  readonly value: number;
  readonly angle: number;
  readonly a: { readonly x: number; readonly y: number };
  readonly b: { readonly x: number; readonly y: number };
  readonly path: string | undefined;
  /** True where a and b are house axes seen from above. */
  readonly plan: boolean;
}

export interface PackedView {
  readonly name: string;
  readonly plan: boolean;
  readonly at: { readonly x: number; readonly y: number };
  readonly from: { readonly x: number; readonly y: number };
  readonly scale: number;
  /** Extent of its ink, paper inches: x0, y0, x1, y1. */
  readonly box: readonly [number, number, number, number];
}

export interface PackedSheet {
  readonly id: string;
  readonly title: string;
  readonly w: number;
  readonly h: number;
  /** kind, pen, fill or ink, mark, path, role, offset, length. −1 for none. Pens and faces are words too. */
  readonly head: Int32Array;
  readonly data: Float32Array;
  /** x0, y0, x1, y1 of each item. */
  readonly boxes: Float32Array;
  /** A number for what each item looks like: items that look alike at the same place have the same. */
  readonly keys: Int32Array;
  readonly words: readonly string[];
  readonly views: readonly PackedView[];
  readonly dimensions: Readonly<Record<string, PackedDimension>>;
}

interface Bag {
  readonly head: number[];
  readonly data: number[];
  readonly boxes: number[];
  readonly keys: number[];
  readonly words: string[];
  readonly index: Map<string, number>;
}

function word(bag: Bag, w: string | undefined): number {
  if (w === undefined) return -1;
  let i = bag.index.get(w);
  if (i === undefined) {
    i = bag.words.length;
    bag.words.push(w);
    bag.index.set(w, i);
  }
  return i;
}

const FLOAT = new Float32Array(1);
const BITS = new Int32Array(FLOAT.buffer);

/** Multiplies and mixes one number into a key (FNV-1a, whole words at a time). */
const mixed = (key: number, n: number): number => {
  const k = Math.imul(key ^ n, 16777619);
  return k ^ (k >>> 15);
};

function mixedText(key: number, text: string | undefined): number {
  let k = mixed(key, text?.length ?? -1);
  for (let i = 0; i < (text?.length ?? 0); i++) k = mixed(k, text!.charCodeAt(i));
  return k;
}

function keyOf(bag: Bag, f: Flat, at: number): number {
  // Mark and role too: by them a picked item is drawn otherwise.
  let k = mixedText(mixedText(mixedText(-2128831035, f.kind), f.mark), f.role);
  // The numbers of lettering hold indices of words, which differ from drawing to drawing: its own values say the same.
  if (f.kind === 'text') {
    k = mixedText(mixedText(mixedText(k, f.content), f.face), f.ink);
    for (const v of [f.x, f.y, f.angle, f.height, f.width]) {
      FLOAT[0] = v;
      k = mixed(k, BITS[0]!);
    }
    return mixedText(k, f.align);
  }
  k = mixedText(mixedText(k, f.pen), f.fill);
  for (let i = at; i < bag.data.length; i++) {
    FLOAT[0] = bag.data[i]!;
    k = mixed(k, BITS[0]!);
  }
  return k;
}

function put(bag: Bag, f: Flat): void {
  const at = bag.data.length;
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  const see = (x: number, y: number): void => {
    if (x < x0) x0 = x;
    if (x > x1) x1 = x;
    if (y < y0) y0 = y;
    if (y > y1) y1 = y;
  };
  let pen = -1;
  let fill = -1;
  if (f.kind === 'path') {
    pen = word(bag, f.pen);
    fill = word(bag, f.fill);
    bag.data.push(f.closed ? 1 : 0, f.strokes.length);
    for (const s of f.strokes) {
      bag.data.push(s.length);
      for (let i = 0; i < s.length; i += 2) {
        bag.data.push(s[i]!, s[i + 1]!);
        see(s[i]!, s[i + 1]!);
      }
    }
  } else if (f.kind === 'arc') {
    pen = word(bag, f.pen);
    fill = word(bag, f.fill);
    bag.data.push(f.x, f.y, f.r, f.start, f.end);
    see(f.x - f.r, f.y - f.r);
    see(f.x + f.r, f.y + f.r);
  } else {
    // Face in the place of the pen, ink in that of the fill; the content is a word.
    pen = word(bag, f.face);
    fill = word(bag, f.ink);
    const align = f.align === 'left' ? 0 : f.align === 'center' ? 1 : 2;
    const runs = faceRuns(f.content, f.face);
    bag.data.push(f.x, f.y, f.angle, f.height, align, f.width, word(bag, f.content), runs.length);
    // One run for each face that supplies a character, with the width the sheet reckons with.
    for (const r of runs) {
      const width = textWidth(r.text, f.height, r.face);
      bag.data.push(word(bag, r.face), emSize(f.height, r.face), word(bag, r.text), width);
    }
    const left = align === 0 ? 0 : align === 1 ? -f.width / 2 : -f.width;
    const [c, s] = [Math.cos(f.angle), Math.sin(f.angle)];
    for (const u of [left, left + f.width])
      for (const v of [-0.3 * f.height, 1.2 * f.height]) see(f.x + c * u - s * v, f.y + s * u + c * v);
  }
  bag.head.push(
    f.kind === 'path' ? KIND.path : f.kind === 'arc' ? KIND.arc : KIND.text,
    pen,
    fill,
    word(bag, f.mark),
    word(bag, f.path),
    word(bag, f.role),
    at,
    bag.data.length - at,
  );
  bag.boxes.push(x0, y0, x1, y1);
  bag.keys.push(keyOf(bag, f, at));
}

/** Gives every dimension of a list a role of its own, which its strokes inherit, and writes down what it measures. */
function named(
  list: readonly Primitive[],
  where: string,
  plan: boolean,
  out: Record<string, PackedDimension>,
): readonly Primitive[] {
  return list.map((p, i) => {
    if (p.kind !== 'dimension') return p;
    const role = `dimension ${where}.${i}`;
    out[role] = { text: p.text, value: p.value, angle: p.angle, a: p.a, b: p.b, path: p.path, plan };
    return { ...p, role };
  });
}

export function pack(sheet: Sheet): PackedSheet {
  const bag: Bag = { head: [], data: [], boxes: [], keys: [], words: [], index: new Map() };
  const dimensions: Record<string, PackedDimension> = {};
  const views: PackedView[] = [];
  const one = (v: Viewport | undefined, items: readonly Primitive[] = []): void => {
    const first = bag.head.length / HEAD;
    for (const f of flatten({ ...sheet, viewports: v ? [v] : [], items })) put(bag, f);
    if (!v) return;
    const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let i = first; i < bag.head.length / HEAD; i++) {
      box[0] = Math.min(box[0], bag.boxes[4 * i]!);
      box[1] = Math.min(box[1], bag.boxes[4 * i + 1]!);
      box[2] = Math.max(box[2], bag.boxes[4 * i + 2]!);
      box[3] = Math.max(box[3], bag.boxes[4 * i + 3]!);
    }
    views.push({ name: v.name, plan: v.plan === true, at: v.at, from: v.from, scale: v.scale, box });
  };
  sheet.viewports.forEach((v, n) => {
    const plan = v.plan === true;
    one({
      ...v,
      items: named(v.items, `${n}i`, plan, dimensions),
      ...(v.over ? { over: named(v.over, `${n}o`, plan, dimensions) } : {}),
    });
  });
  one(undefined, named(sheet.items, 's', false, dimensions));
  const { w, h } = SHEET_SIZES[sheet.size];
  return {
    id: sheet.id,
    title: sheet.title,
    w,
    h,
    head: Int32Array.from(bag.head),
    data: Float32Array.from(bag.data),
    boxes: Float32Array.from(bag.boxes),
    keys: Int32Array.from(bag.keys),
    words: bag.words,
    views,
    dimensions,
  };
}

/** Buffers that may be handed over instead of copied. */
export const buffersOf = (p: PackedSheet): ArrayBuffer[] =>
  [p.head.buffer, p.data.buffer, p.boxes.buffer, p.keys.buffer] as ArrayBuffer[];
