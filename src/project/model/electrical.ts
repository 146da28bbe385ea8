/** Electrical devices of the cover, for the plan and the permit; circuits are designed by others. */
import type { Inches } from '../../base/units.js';
import type { Vec2 } from '../../base/vec.js';
import type { WorkState } from './patio.js';

export type DeviceKind = 'receptacle' | 'switch' | 'light' | 'fan' | 'junction' | 'panel' | 'disconnect';

export interface Device {
  /** Short mark, e.g. `E1`. */
  readonly mark: string;
  readonly kind: DeviceKind;
  readonly state: WorkState;
  readonly at: Vec2;
  /** Center above the patio surface below it. */
  readonly height: Inches;
  /** As the panel's directory names it; empty when not settled. */
  readonly circuit: string;
  /** Mark of the switch that works it; empty when none does. */
  readonly switchedBy: string;
  /** `damp` under the roof and out of the rain, `wet` where rain or spray reaches. */
  readonly place: 'damp' | 'wet' | 'dry';
  readonly note: string;
  readonly path: string;
}

/** Stated electrical work; a list without devices says that none is proposed. */
export interface Electrical {
  readonly devices: readonly Device[];
  readonly path: string;
}
