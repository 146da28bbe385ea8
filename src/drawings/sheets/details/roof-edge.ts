/** What eave and rake details share: the roof's sheathing, covering and the metal along its edges. */
import type { Vec2 } from '../../../base/vec.js';
import { ROOF_COVERINGS } from '../../../catalog/index.js';
import type { CoverRoof } from '../../../project/model.js';
import { findPanel } from '../../../structure/layers.js';
import type { Primitive } from '../../ir/index.js';
import { stroke } from './picture.js';
import { isMetal } from './wall-edges.js';

/** Drip edge, inches: below the sheathing, back on the roof, lap and fastener spacing (IRC 2018 R905.2.8.5). */
export const DRIP = { down: 0.25, back: 2, lap: 2, fasteners: 12 } as const;
/** Leg of the metal down the fascia or barge, and its kick, drawn only. Common practice, no source. */
const FACE_LEG = 1.5;
const KICK = 0.3;

export interface EdgeFacts {
  readonly covering: string;
  readonly underlayment: string;
  readonly sheathing: string;
  readonly thickness: number;
  /** Long panels from eave to ridge, not courses. */
  readonly panels: boolean;
  /** Two layers of underlayment are asked for at this slope. */
  readonly double: boolean;
}

export function edgeFacts(roof: CoverRoof): EdgeFacts {
  const covering = ROOF_COVERINGS.find((c) => c.id === roof.finish.covering);
  const panel = findPanel(roof.finish.sheathing);
  const rule = covering?.underlayment;
  return {
    covering: covering?.name ?? roof.finish.covering,
    panels: isMetal(roof.finish.covering),
    underlayment: roof.finish.underlayment.replaceAll('-', ' '),
    sheathing: panel ? `${panel.name} sheathing` : 'no sheathing',
    thickness: panel?.thickness ?? 0,
    double: rule?.kind === 'double-below' && 12 * Math.tan(roof.pitch) < rule.slope,
  };
}

/**
 * Drip edge in profile: back on the deck from its edge, down the face below it, kicked out. `slope` is the rise of the deck
 * inward; the picture's outside is to the right.
 */
export function dripEdge(edge: Vec2, slope: number, out: number): Primitive {
  return stroke(
    [
      { x: edge.x - DRIP.back, y: edge.y + DRIP.back * slope },
      { x: edge.x + out + 0.1, y: edge.y - out * slope },
      { x: edge.x + out + 0.1, y: edge.y - out * slope - FACE_LEG },
      { x: edge.x + out + 0.1 + KICK, y: edge.y - out * slope - FACE_LEG - KICK },
    ],
    'profile',
    'drip-edge',
    true,
  );
}
