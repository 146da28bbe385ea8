/** The Buy and Site views' part of the slow worker. */
import { type Derived, derive } from '../../../src/index.js';
import { buyView, comparedChoices, pricesFrom } from './buy-work.js';
import { siteView } from './site-work.js';
import type { ThoroughWork } from './work-api.js';
import { workFile } from './work-files.js';
import { stateNow } from './worker.js';

let last: { readonly text: string; readonly derived: Derived } | undefined;

/** No sheets of the set are drawn for these views, so only the structure is worked out, once a text. */
function derivedOf(text: string): Derived {
  const now = stateNow();
  if (now.text === text) return now.derived;
  if (last?.text !== text) last = { text, derived: derive(text) };
  return last.derived;
}

export const workApi: ThoroughWork = {
  site: (text, today) => siteView(derivedOf(text), today),
  buy: (text, o) => buyView(derivedOf(text), o),
  compared: (text, o) => comparedChoices(derivedOf(text), o),
  pricesFrom,
  workFile: (name, text, fonts, o) => workFile(name, derivedOf(text), fonts, o),
};
