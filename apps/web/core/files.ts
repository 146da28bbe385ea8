/**
 * Files that stand beside the page: fonts, examples, and in the single HTML file also the worker. There they lie in the page
 * itself, as base64 in one block of JSON; on a web host they are fetched.
 */
let inside: Readonly<Record<string, string>> | undefined;

function block(): Readonly<Record<string, string>> {
  inside ??= JSON.parse(document.getElementById('files')?.textContent ?? '{}') as Record<string, string>;
  return inside;
}

export const isSingleFile = (): boolean => document.getElementById('files') !== null;

export async function fileBytes(name: string): Promise<Uint8Array> {
  const packed = block()[name];
  if (packed !== undefined) return Uint8Array.from(atob(packed), (c) => c.charCodeAt(0));
  const answer = await fetch(new URL(`./files/${name}`, document.baseURI));
  if (!answer.ok) throw new Error(`${name} could not be fetched (${answer.status})`);
  return new Uint8Array(await answer.arrayBuffer());
}

export const fileText = async (name: string): Promise<string> => new TextDecoder().decode(await fileBytes(name));

export const FONT_FILES: Readonly<
  Record<string, { readonly file: string; readonly family: string; readonly weight: string }>
> = {
  regular: { file: 'fonts/IBMPlexSans-Regular.ttf', family: 'IBM Plex Sans', weight: '400' },
  bold: { file: 'fonts/IBMPlexSans-SemiBold.ttf', family: 'IBM Plex Sans', weight: '600' },
  condensed: { file: 'fonts/IBMPlexSansCondensed-Regular.ttf', family: 'IBM Plex Sans Condensed', weight: '400' },
  'condensed-bold': {
    file: 'fonts/IBMPlexSansCondensed-SemiBold.ttf',
    family: 'IBM Plex Sans Condensed',
    weight: '600',
  },
};

let fontBytes: Promise<Readonly<Record<string, Uint8Array>>> | undefined;

/** The faces that sheets are lettered in, fetched once. */
export function fonts(): Promise<Readonly<Record<string, Uint8Array>>> {
  fontBytes ??= Promise.all(
    Object.entries(FONT_FILES).map(async ([face, f]) => [face, await fileBytes(f.file)] as const),
  ).then((list) => Object.fromEntries(list));
  return fontBytes;
}

/** Makes the faces known to the page, so that the canvas letters as the sheets do. */
export async function letter(): Promise<void> {
  const bytes = await fonts();
  for (const [face, f] of Object.entries(FONT_FILES)) {
    const data = bytes[face]!;
    const font = new FontFace(f.family, data.slice().buffer as ArrayBuffer, { weight: f.weight });
    document.fonts.add(await font.load());
  }
}
