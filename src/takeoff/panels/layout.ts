import { area } from '../../base/plane.js';
import { findPanel } from '../../structure/layers.js';
import type { Structure } from '../../structure/model.js';
import type { TakeoffInput } from '../cuts/input.js';
import { framesOn } from './frames.js';
import { laySurface } from './lay.js';
import type { PanelLayout } from './model.js';
import { packPieces } from './pack.js';

/** Panel as bought: `7/16 OSB sheathing 4x8, 24/16`. */
function panelItem(sheathing: string): string {
  const panel = findPanel(sheathing);
  const made = sheathing.startsWith('osb') ? 'OSB' : sheathing.startsWith('plywood') ? 'plywood' : 'panel';
  return panel ? `${panel.name} ${made} sheathing 4x8, rated ${panel.spanRating}` : `${sheathing} 4x8`;
}

/** Sheathing of every roof that has some, laid out. */
export function panelLayouts({ project, structure }: TakeoffInput): PanelLayout[] {
  return project.cover.roofs.flatMap((roof): PanelLayout[] => {
    const { sheathing } = roof.finish;
    const surfaces = structure.surfaces.filter((s) => s.roof === roof.mark && s.sheathed);
    if (sheathing === '' || surfaces.length === 0) return [];
    const laid = surfaces.map((s) => laySurface(s, frameLines(structure, s.id)));
    const pieces = laid.flatMap((l) => l.pieces);
    const whole = pieces.filter((p) => p.whole).length;
    const cut = packPieces(pieces.filter((p) => !p.whole));
    return [
      {
        roof: roof.mark,
        sheathing,
        item: panelItem(sheathing),
        surfaces: surfaces.map((s) => s.id),
        rows: laid.flatMap((l) => l.rows),
        pieces,
        whole,
        cut,
        sheets: whole + cut.length,
        area: surfaces.reduce((sum, s) => sum + area(s.outline), 0),
      },
    ];
  });
}

function frameLines(structure: Structure, id: string): number[] {
  const s = structure.surfaces.find((x) => x.id === id)!;
  return framesOn(structure, s).map((f) => f.u);
}
