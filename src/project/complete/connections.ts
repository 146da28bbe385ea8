import type { Connection, ConnectionPart, FastenerPattern } from '../connections.js';
import type { WrittenConnection } from '../schema/connections.js';

type WrittenPart = WrittenConnection['parts'][number];
type WrittenPattern = Extract<WrittenPart, { upper: unknown }>['upper'];

const pattern = (w: WrittenPattern): FastenerPattern => ({
  ...w,
  spacingAlong: w.spacingAlong ?? 0,
  spacingAcross: w.spacingAcross ?? 0,
});

function completePart(w: WrittenPart): ConnectionPart {
  if (w.kind === 'toe-nails' || w.kind === 'bearing') return w;
  const common = {
    plates: w.plates && { ...w.plates, count: w.plates.count === 1 ? (1 as const) : (2 as const) },
    upper: pattern(w.upper),
    lower: pattern(w.lower),
    upperThickness: w.upperThickness,
    lowerThickness: w.lowerThickness,
  };
  return w.kind === 'bolts' ? { ...w, ...common, washer: w.washer ?? 0 } : { ...w, ...common, head: w.head ?? 'upper' };
}

export const completeConnection = (w: WrittenConnection, i: number): Connection => ({
  serves: w.serves,
  madeDry: w.made === 'dry',
  parts: w.parts.map(completePart),
  path: `/choices/connections/${i}`,
});
