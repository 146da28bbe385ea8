import { anchors } from './items/anchors.js';
import { ceiling } from './items/ceiling.js';
import { concrete } from './items/concrete.js';
import { extras } from './items/extras.js';
import { fasteners } from './items/fasteners.js';
import { flashing } from './items/flashing.js';
import { gravel } from './items/gravel.js';
import { gutter } from './items/gutter.js';
import { lumber } from './items/lumber.js';
import { paint } from './items/paint.js';
import { roofing } from './items/roofing.js';
import { sheathing } from './items/sheathing.js';
import { strips } from './items/strips.js';
import { trusses } from './items/trusses.js';
import { underlayment } from './items/underlayment.js';
import type { ItemKind } from './model.js';

/** Kinds of things that are bought, in the order they are listed within a phase. */
export const ITEMS = {
  concrete,
  gravel,
  anchors,
  lumber,
  strips,
  trusses,
  fasteners,
  sheathing,
  underlayment,
  roofing,
  flashing,
  gutter,
  ceiling,
  paint,
  extras,
} as const satisfies Record<string, ItemKind>;
