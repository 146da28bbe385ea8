/** The little that the metrics script needs of the font reader. */
declare module 'fontkit' {
  interface Glyph {
    readonly id: number;
    readonly advanceWidth: number;
  }
  interface Font {
    readonly unitsPerEm: number;
    readonly ascent: number;
    readonly descent: number;
    readonly capHeight: number;
    readonly xHeight: number;
    readonly characterSet: readonly number[];
    glyphForCodePoint(codePoint: number): Glyph;
    hasGlyphForCodePoint(codePoint: number): boolean;
  }
  export function create(bytes: Uint8Array): Font;
  export function openSync(path: string): Font;
}
