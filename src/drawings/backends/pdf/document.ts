import { zlibSync } from 'fflate';
import type PDFDocument from 'pdfkit';
import type { PdfFont, PdfReference } from 'pdfkit';
import {
  DISCIPLINES,
  type Discipline,
  escapeXml,
  FACE_NAMES,
  type FaceName,
  flatten,
  SHEET_SIZES,
  type Sheet,
} from '../../ir/index.js';
import { contentOf, type Resources } from './content.js';

export interface PdfOptions {
  /** Title of the whole set. */
  readonly title: string;
  /** Creation date written into the file; the caller's, so that the same project gives the same bytes. */
  readonly date: Date;
  readonly author?: string;
  readonly subject?: string;
  readonly keywords?: string;
  /** Black line work only, for offices that refuse grey: soft lettering goes black, washes go white, cut existing work black. */
  readonly black?: boolean;
}

/** Font files (TrueType) by face. */
export type FontBytes = Readonly<Record<FaceName, Uint8Array>>;

type Loader = () => Promise<{ readonly default: typeof PDFDocument }>;

/**
 * Compresses every stream with one portable deflate. The document library would use the platform's own in Node and another
 * one in a browser, and the two give different bytes; so it is told not to compress, and each object's stream is packed just
 * before it is written.
 */
function packStreams(doc: PDFDocument): void {
  const make = doc.ref.bind(doc);
  doc.ref = (data?: Record<string, unknown>): PdfReference => {
    const ref = make(data);
    const finish = ref.finalize.bind(ref);
    ref.finalize = () => {
      if (ref.buffer.length > 0 && ref.data.Filter === undefined) {
        const raw = joined(ref.buffer);
        ref.buffer = [zlibSync(raw, { level: 6 })];
        ref.data.Filter = 'FlateDecode';
      }
      finish();
    };
    return ref;
  };
}

/** The library pastes title and author into its XML metadata as they are: escape them there, after the plain ones are written. */
function escapeMetadata(doc: PDFDocument): void {
  const end = doc.endMetadata.bind(doc);
  doc.endMetadata = () => {
    for (const [key, value] of Object.entries(doc.info))
      if (typeof value === 'string') doc.info[key] = escapeXml(value);
    end();
  };
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  let length = 0;
  for (const c of chunks) length += c.length;
  const out = new Uint8Array(length);
  let at = 0;
  for (const c of chunks) {
    out.set(c, at);
    at += c.length;
  }
  return out;
}

/** Glyph codes of a face, one character one glyph: the widths are those of the text metrics, without kerning or ligatures. */
function encoder(font: PdfFont): (text: string) => string {
  const known = new Map<string, string>();
  const code = (ch: string): string => {
    const cp = ch.codePointAt(0)!;
    const glyph = font.font.glyphForCodePoint(cp);
    const gid = font.subset.includeGlyph(glyph.id);
    font.widths[gid] ??= glyph.advanceWidth * font.scale;
    font.unicode[gid] ??= [cp];
    return gid.toString(16).padStart(4, '0');
  };
  return (text) => {
    let out = '';
    for (const ch of text) {
      let c = known.get(ch);
      if (c === undefined) {
        c = code(ch);
        known.set(ch, c);
      }
      out += c;
    }
    return out;
  };
}

/**
 * A set of sheets as one PDF 1.7 file: vector strokes, embedded font subsets, one optional-content layer for each drawing layer,
 * bookmarks by discipline, page labels equal to sheet ids. The same input gives the same bytes, in Node and in a browser.
 * @param load the document library; replaced only in tests
 */
export async function pdfOf(
  sheets: readonly Sheet[],
  fonts: FontBytes,
  options: PdfOptions,
  load: Loader = () => import('pdfkit'),
): Promise<Uint8Array> {
  const { default: Document } = await load();
  const doc = new Document({
    autoFirstPage: false,
    compress: false,
    pdfVersion: '1.7',
    lang: 'en-US',
    displayTitle: true,
    font: fonts.regular,
    fontLayoutCache: false,
    info: {
      Title: options.title,
      CreationDate: options.date,
      Producer: 'Eavewright',
      Creator: 'Eavewright',
      ...(options.author !== undefined && { Author: options.author }),
      ...(options.subject !== undefined && { Subject: options.subject }),
      ...(options.keywords !== undefined && { Keywords: options.keywords }),
    },
  });
  const chunks: Uint8Array[] = [];
  const done = new Promise<void>((resolve) => {
    doc.on('data', (chunk) => chunks.push(chunk));
    doc.on('end', resolve);
  });
  packStreams(doc);
  escapeMetadata(doc);

  const faces = new Map<FaceName, { readonly font: PdfFont; readonly encode: (text: string) => string }>();
  const face = (name: FaceName) => {
    let f = faces.get(name);
    if (f === undefined) {
      doc.registerFont(name, fonts[name]).font(name);
      f = { font: doc._font, encode: encoder(doc._font) };
      faces.set(name, f);
    }
    return f;
  };
  // Opened in a fixed order, so that object numbers do not depend on which text comes first.
  for (const name of FACE_NAMES) face(name);

  const layers = new Map<string, { readonly name: string; readonly ref: PdfReference }>();
  const layer = (id: string) => {
    let l = layers.get(id);
    if (l === undefined) {
      l = { name: `L${layers.size}`, ref: doc.ref({ Type: 'OCG', Name: pdfString(id) }) };
      l.ref.end();
      layers.set(id, l);
    }
    return l;
  };

  const groups = new Map<string, ReturnType<typeof doc.outline.addItem>>();
  const labels: unknown[] = [];
  sheets.forEach((sheet, index) => {
    const { w, h } = SHEET_SIZES[sheet.size];
    doc.addPage({ size: [w * 72, h * 72], margin: 0 });
    const page = doc.page;
    const used: Record<string, PdfReference> = {};
    const resources: Resources = {
      encode: (name, text) => face(name).encode(text),
      fontName: (name) => {
        const { font } = face(name);
        page.fonts[font.id] ??= font.ref();
        return font.id;
      },
      layerName: (id) => {
        const l = layer(id);
        used[l.name] = l.ref;
        return l.name;
      },
    };
    const content = contentOf(flatten(sheet), resources, options.black);
    page.resources.data.Properties = used;
    // The library has begun the page with a flip of the y axis; our streams keep the axis of the paper.
    page.content.buffer = [];
    page.content.write(content);
    labels.push(index, { P: pdfString(sheet.id) });
    const discipline = DISCIPLINES[sheet.discipline];
    let group = groups.get(discipline);
    if (group === undefined) {
      group = doc.outline.addItem(discipline, { expanded: true });
      groups.set(discipline, group);
    }
    group.addItem(`${sheet.id}  ${sheet.title}`);
  });

  const root = doc._root.data;
  root.PageMode = 'UseOutlines';
  root.PageLabels = { Nums: labels };
  const sorted = [...layers.entries()].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  const all = sorted.map(([, l]) => l.ref);
  // A reader shows the layers of each discipline under its name.
  const order = [...new Set(sorted.map(([id]) => id[0]!))].map((letter) => [
    pdfString(DISCIPLINES[letter as Discipline] ?? letter),
    ...sorted.filter(([id]) => id[0] === letter).map(([, l]) => l.ref),
  ]);
  root.OCProperties = { OCGs: all, D: { Name: pdfString('Layers'), Order: order, ON: all, BaseState: 'ON' } };
  doc.end();
  await done;
  return joined(chunks);
}

/** The library writes a plain string as a name and a string object as text. */
const pdfString = (text: string): unknown => new String(text);
