/** Dead load: layers on the sloping area, fascia and gutter along the edges, and the members' own weight. */
import type { Structure, Surface } from '../structure/model.js';
import { type Ledger, note } from './basis.js';
import type { AreaLoad, EdgeLoad, LoadCase, PlanLoad } from './model.js';

export const layersPsf = (surface: Surface): number => surface.layers.reduce((sum, layer) => sum + layer.psf, 0);

/** The dead case. Weights of layers come with the surfaces, of edges with their strips, of members with their sections. */
export function deadCase(structure: Structure, ledger: Ledger): LoadCase {
  const areas: AreaLoad[] = [];
  const edges: EdgeLoad[] = [];
  const plan: PlanLoad[] = [];
  const noted = new Set<string>();
  for (const surface of structure.surfaces) {
    const psf = layersPsf(surface);
    if (psf !== 0) areas.push({ surface: surface.id, psf, acts: 'slope' });
    for (const edge of surface.edges) edges.push({ surface: surface.id, v: edge.v, weight: edge.weight });
    if (noted.has(surface.roof)) continue;
    noted.add(surface.roof);
    if (psf !== 0) plan.push({ roof: surface.roof, psf, acts: 'slope' });
    for (const layer of surface.layers) {
      note(ledger, 'D', `${surface.roof}: ${layer.name}, on the slope`, layer.psf, 'psf', layer.source, [surface.path]);
    }
    note(ledger, 'D', `${surface.roof}: layers together, on the slope`, psf, 'psf', 'statics', [surface.path]);
    for (const edge of surface.edges) {
      note(ledger, 'D', `${surface.roof}: ${edge.name}, along the edge`, edge.weight, 'lb/in', 'section weight', [
        surface.path,
      ]);
    }
  }
  return {
    id: 'D',
    kind: 'D',
    title: 'Dead load',
    areas,
    edges,
    plan,
    selfWeight: true,
    side: [],
    clause: 'ASCE 7 3.1',
  };
}
