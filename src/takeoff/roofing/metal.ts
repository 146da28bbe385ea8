/** Metal panels ordered to length: one strip of roof a panel, as long as the roof is in that strip. */
import { clipHalfPlane } from '../../base/plane.js';
import { formatLength } from '../../base/quantity/index.js';
import type { Surface } from '../../structure/model.js';
import { lengthOf } from '../edges.js';
import { EACH, line } from '../line.js';
import type { Line } from '../model.js';
import { NO_WASTE, wasteOf } from '../waste.js';
import { feet, type RoofingSystem } from './contract.js';

export interface MetalPanel {
  /** Width one panel covers, inches. */
  readonly covers: number;
  /** Fasteners or clips along each seam or rib, inches apart. */
  readonly spacing: number;
  readonly held: string;
}

/** Past the eave into the gutter, and to the whole inch. Common practice, no source: the maker's detail governs. */
const OVER = 1;

const length = (x: number): string => formatLength(x);

/** Length of roof in each strip of a panel's width, from the left edge; strips beyond the roof are none. */
export function panelLengths(s: Pick<Surface, 'outline'>, covers: number): number[] {
  const us = s.outline.map((p) => p.x);
  const [low, high] = [Math.min(...us), Math.max(...us)];
  const out: number[] = [];
  for (let u = low; u < high - 1 / 16; u += covers) {
    const strip = clipHalfPlane(
      clipHalfPlane(s.outline, (q) => q.x - u),
      (q) => u + covers - q.x,
    );
    const vs = strip.map((p) => p.y);
    if (vs.length > 2) out.push(Math.ceil(Math.max(...vs) - Math.min(...vs) + OVER - 1e-6));
  }
  return out;
}

export const metal = (panel: MetalPanel): RoofingSystem => ({
  dripEdge: true,
  lines: ({ roof, covering, surfaces, edges }, { buying }) => {
    const common = { group: 'roofing', phase: 'roofing', serves: [roof.mark] } as const;
    const all = surfaces.flatMap((s) => panelLengths(s, panel.covers));
    const counts = new Map<number, number>();
    for (const l of all) counts.set(l, (counts.get(l) ?? 0) + 1);
    const seams = surfaces.flatMap((s) => panelLengths(s, panel.covers).slice(1));
    const held = seams.reduce((sum, l) => sum + Math.ceil(l / panel.spacing) + 1, 0);
    const caps = feet(lengthOf(edges, 'ridge', 'hip'));
    const closed = feet(lengthOf(edges, 'ridge', 'hip', 'wall-top', 'top'));
    const flashing = wasteOf(buying, 'flashing');
    return [
      ...[...counts]
        .sort(([a], [b]) => a - b)
        .map(
          ([l, n]): Line =>
            line({
              ...common,
              item: `${covering.name.toLowerCase()}, ${panel.covers} in cover, ${length(l)} long`,
              net: n,
              unit: 'each',
              waste: NO_WASTE,
              sold: { ...EACH, rule: 'cut to length by the maker, one for each strip of roof' },
              note: `Strips of ${panel.covers} in (common practice, no source): order by the maker’s own cover width.`,
            }),
        ),
      line({
        ...common,
        item: panel.held,
        net: held,
        unit: 'each',
        waste: wasteOf(buying, 'fasteners'),
        sold: {
          unit: 'each',
          holds: 1,
          rule: `every ${panel.spacing} in along each seam; common practice, the maker’s uplift table governs`,
        },
      }),
      ...(caps > 0
        ? [
            line({
              ...common,
              item: 'metal ridge or hip cap',
              net: caps,
              unit: 'ft',
              waste: flashing,
              sold: { unit: '10 ft piece', holds: 10, rule: 'sold in 10 ft' },
            }),
          ]
        : []),
      ...(closed > 0
        ? [
            line({
              ...common,
              item: 'closure strip for panel ends',
              net: closed,
              unit: 'ft',
              waste: flashing,
              sold: { unit: '10 ft piece', holds: 10, rule: 'sold in 10 ft; common practice, no source' },
            }),
          ]
        : []),
    ];
  },
});

/** Widths and spacings that are common; each maker has its own. Common practice, no source. */
export const STANDING_SEAM: MetalPanel = { covers: 16, spacing: 24, held: 'seam clip with two screws' };
export const RIBBED: MetalPanel = { covers: 36, spacing: 24, held: 'panel screw with washer, ribs' };
