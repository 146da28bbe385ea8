/** The part of the `dxf` package that the tests use; it comes without types. */
declare module 'dxf' {
  interface Point {
    readonly x: number;
    readonly y: number;
  }
  interface DxfEntity {
    readonly type: string;
    readonly handle: string;
    readonly layer: string;
    readonly paperSpace?: number;
    readonly block?: string;
    readonly string?: string;
    readonly x?: number;
    readonly y?: number;
    readonly r?: number;
    /** Of an arc, radians counter-clockwise from x. */
    readonly startAngle?: number;
    readonly endAngle?: number;
    readonly rotation?: number;
    readonly start?: Point;
    readonly end?: Point;
    readonly vertices?: readonly Point[];
    readonly closed?: boolean;
    readonly measureStart?: Point;
    readonly measureEnd?: Point;
    readonly center?: Point;
    readonly centerDCS?: Point;
    readonly width?: number;
    readonly height?: number;
    readonly boundary?: {
      readonly loops: readonly { readonly entities: readonly { readonly points: readonly Point[] }[] }[];
    };
  }
  interface DxfFile {
    readonly header: { readonly insUnits: number; readonly extMin: Point; readonly extMax: Point };
    readonly entities: readonly DxfEntity[];
    readonly blocks: readonly { readonly name: string; readonly entities: readonly DxfEntity[] }[];
    readonly tables: {
      readonly layers: Readonly<Record<string, { readonly colorNumber: number }>>;
      readonly ltypes: Readonly<Record<string, unknown>>;
      readonly styles: Readonly<Record<string, unknown>>;
    };
  }
  export function parseString(text: string): DxfFile;
}
