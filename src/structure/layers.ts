import type { Issue } from '../base/issue.js';
import {
  findCovering,
  findFinish,
  findSheathing,
  type RoofCovering,
  SHEATHING,
  type SheathingPanel,
  underlaymentLayers,
} from '../catalog/index.js';
import type { CoverRoof } from '../project/model.js';
import { error } from './issues.js';
import type { Surface } from './model.js';

export interface RoofLayers {
  readonly covering: RoofCovering;
  readonly panel: SheathingPanel | undefined;
  readonly layers: Surface['layers'];
  /** Sheathing, and sheathing with covering: square to the slope, inches. */
  readonly sheathing: number;
  readonly thickness: number;
}

/** Underlayments by the trade's names, psf of one layer: felt is named for its pounds per 100 sq ft, the rest as commonly sold. */
const UNDERLAYMENTS: Readonly<Record<string, { readonly name: string; readonly psf: number }>> = {
  'felt-15': { name: 'Felt, 15 lb', psf: 0.15 },
  'felt-30': { name: 'Felt, 30 lb', psf: 0.3 },
  'self-adhering': { name: 'Self-adhering membrane', psf: 0.3 },
  synthetic: { name: 'Synthetic underlayment', psf: 0.05 },
};

/** Thickness of coverings as drawn, inches; a quarter inch when not listed. Common practice, no source; no load depends on it. */
const DRAWN: Readonly<Record<string, number>> = {
  'wood-shingle': 0.75,
  'ribbed-metal': 0.75,
  'ribbed-metal-sealed': 0.75,
  'clay-tile': 2,
  'concrete-tile': 2,
};

/** `osb-7/16`, `plywood-15/32`, `7/16` and catalogue ids all name a panel. */
export const findPanel = (id: string): SheathingPanel | undefined =>
  SHEATHING.find((p) => p.id === id) ?? findSheathing(id.slice(id.lastIndexOf('-') + 1).replace('_', '/'));

/** Weights of a roof's layers, psf on the slope, top to bottom. Unknown names are issues; weights are never guessed. */
export function layersOf(roof: CoverRoof, issues: Issue[]): RoofLayers | undefined {
  const { finish } = roof;
  const at = (key: string): string => `${roof.path}/finish/${key}`;
  const unknown = (key: string, found: string, expected: string): undefined => {
    issues.push(error(`${key}-unknown`, at(key), `The catalogue has no such ${key}.`, { found, expected }));
    return undefined;
  };
  const covering = findCovering(finish.covering);
  if (covering === undefined) return unknown('covering', finish.covering, '"asphalt-shingle" or "standing-seam-metal"');
  const panel = finish.sheathing === '' ? undefined : findPanel(finish.sheathing);
  if (panel === undefined && finish.sheathing !== '')
    return unknown('sheathing', finish.sheathing, `one of ${SHEATHING.map((p) => p.name).join(', ')}`);

  const source = (row: { source: string; edition: string }): string =>
    row.edition === '-' ? row.source : `${row.source} (${row.edition})`;
  const layers: { name: string; psf: number; source: string; under?: true }[] = [];
  layers.push({ name: covering.name, psf: covering.weight, source: source(covering) });

  if (finish.underlayment !== '' && finish.underlayment !== 'none') {
    const row = UNDERLAYMENTS[finish.underlayment];
    const catalogued = findFinish(finish.underlayment);
    const psf = row?.psf ?? catalogued?.weight;
    if (psf === undefined) return unknown('underlayment', finish.underlayment, '"felt-30" or "self-adhering"');
    // Slack keeps a pitch of exactly 4 in 12 out of the range below 4.
    const count = Math.max(1, underlaymentLayers(covering, 12 * Math.tan(roof.pitch) + 1e-9));
    layers.push({
      name: `${row?.name ?? catalogued?.name}${count === 2 ? ', two layers' : ''}`,
      psf: psf * count,
      source: catalogued === undefined ? 'common practice, no source' : source(catalogued),
    });
  }
  if (panel !== undefined) layers.push({ name: `Sheathing ${panel.name}`, psf: panel.weight, source: source(panel) });
  if (finish.ceiling !== '') {
    const ceiling = findFinish(finish.ceiling);
    if (ceiling === undefined) return unknown('ceiling', finish.ceiling, '"gypsum-1-2" or "plywood-3-8"');
    layers.push({ name: ceiling.name, psf: ceiling.weight, source: source(ceiling), under: true });
  }
  if (finish.allowance !== 0) layers.push({ name: 'Allowance', psf: finish.allowance, source: 'stated by the owner' });

  const sheathing = panel?.thickness ?? 0;
  return { covering, panel, layers, sheathing, thickness: sheathing + (DRAWN[covering.id] ?? 0.25) };
}
