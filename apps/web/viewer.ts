/**
 * The browser's side of the core: derives a project and shows its sheets in a page. The app proper is not built yet; this
 * module keeps the core honest meanwhile, since it compiles with DOM types and without Node's.
 */
import { derive, drawingInput, drawSet, svgOf, type Verdict } from '../../src/index.js';

export interface Shown {
  readonly sheets: number;
  readonly verdict: Verdict;
}

/** Replaces the contents of `host` by the sheets of the project in `text`; project text is only ever set as SVG text nodes. */
export function showSheets(host: HTMLElement, text: string): Shown {
  const derived = derive(text);
  const input = drawingInput(derived);
  const sheets = input ? drawSet(input) : [];
  const parser = new DOMParser();
  host.replaceChildren(
    ...sheets.map((s) => {
      const svg = parser.parseFromString(svgOf(s), 'image/svg+xml').documentElement;
      svg.setAttribute('aria-label', `${s.id} ${s.title}`);
      return document.importNode(svg, true);
    }),
  );
  return { sheets: sheets.length, verdict: derived.verdict };
}
