/**
 * The part of pdfkit 0.20 that this back-end uses, without Node types. Underlined members are not public: they are used in
 * document.ts only, and document.test.ts reads the result through an independent tool.
 */
declare module 'pdfkit' {
  export interface PdfReference {
    readonly id: number;
    readonly data: Record<string, unknown>;
    buffer: Uint8Array[];
    write(chunk: string | Uint8Array): void;
    end(chunk?: string | Uint8Array): void;
    finalize(): void;
  }
  export interface PdfOutlineItem {
    addItem(title: string, options?: { expanded?: boolean }): PdfOutlineItem;
  }
  export interface PdfFont {
    readonly id: string;
    readonly font: { glyphForCodePoint(codePoint: number): { readonly id: number; readonly advanceWidth: number } };
    readonly subset: { includeGlyph(id: number): number };
    readonly scale: number;
    readonly widths: number[];
    readonly unicode: number[][];
    ref(): PdfReference;
  }
  export interface PdfPage {
    readonly content: PdfReference;
    readonly resources: PdfReference;
    readonly fonts: Record<string, PdfReference>;
  }
  export default class PDFDocument {
    constructor(options: Record<string, unknown>);
    readonly page: PdfPage;
    readonly outline: PdfOutlineItem;
    readonly _root: PdfReference;
    readonly _font: PdfFont;
    readonly info: Record<string, unknown>;
    endMetadata(): void;
    ref(data?: Record<string, unknown>): PdfReference;
    addPage(options: { size: readonly [number, number]; margin: number }): this;
    registerFont(name: string, bytes: Uint8Array): this;
    font(name: string): this;
    on(event: 'data', listener: (chunk: Uint8Array) => void): this;
    on(event: 'end', listener: () => void): this;
    end(): void;
  }
}
