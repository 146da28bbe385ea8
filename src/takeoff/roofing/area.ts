import { area as areaOf } from '../../base/plane.js';
import { findCovering } from '../../catalog/index.js';
import { lengthOf, roofEdges } from '../edges.js';
import type { TakeoffContext } from '../model.js';
import type { RoofArea } from './contract.js';

/** Roofs with their true areas and edges. */
export function roofAreas({ project, structure }: TakeoffContext): RoofArea[] {
  const edges = roofEdges(structure);
  return project.cover.roofs.flatMap((roof) => {
    const covering = findCovering(roof.finish.covering);
    const surfaces = structure.surfaces.filter((s) => s.roof === roof.mark);
    if (!covering || surfaces.length === 0) return [];
    const own = edges.filter((e) => e.roof === roof.mark);
    const area = surfaces.reduce((sum, s) => sum + areaOf(s.outline), 0) / 144;
    return [{ roof, covering, surfaces, edges: own, area, cutUp: lengthOf(own, 'hip', 'valley') > 0 }];
  });
}
