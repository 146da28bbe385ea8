/** Snow that does not lie evenly (ASCE 7-16 7.6, 7.7, 7.9). */
import type { CheckContext, Subject } from '../contract.js';
import { pendingCheck, roofSubjects } from './pending.js';

const noSnow = (ctx: CheckContext): string | undefined =>
  ctx.project.basis.snow.ground.value > 0 ? undefined : 'the ground snow load here is zero';

/** Reach of a neighbouring roof's snow in plan, inches: adjacent structures count within 20 ft (ASCE 7-16 7.7.2). */
const NEAR = 240;

/** True when a rectangle lies within `NEAR` of the roof's plan extents. */
function near(ctx: CheckContext, roof: string, points: readonly { readonly x: number; readonly y: number }[]): boolean {
  const r = ctx.structure.roofs.find((q) => q.mark === roof);
  if (!r || points.length === 0) return false;
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  return (
    Math.min(...xs) < r.max.x + NEAR &&
    Math.max(...xs) > r.min.x - NEAR &&
    Math.min(...ys) < r.max.y + NEAR &&
    Math.max(...ys) > r.min.y - NEAR
  );
}

function higherBeside(ctx: CheckContext, subject: Subject): boolean {
  const roof = ctx.structure.roofs.find((r) => r.mark === subject.id);
  if (!roof) return true;
  const low = roof.lowestEave;
  return (
    ctx.structure.walls.some((w) => w.plate > low && near(ctx, subject.id, [w.start, w.end])) ||
    higherRoof(ctx, subject)
  );
}

function higherRoof(ctx: CheckContext, subject: Subject): boolean {
  const roof = ctx.structure.roofs.find((r) => r.mark === subject.id);
  if (!roof) return true;
  return ctx.structure.housePlanes.some(
    (p) => p.state !== 'removed' && p.outline.some((q) => q.z > roof.lowestEave) && near(ctx, subject.id, p.outline),
  );
}

export const snowDrift = pendingCheck({
  id: 'snow-drift',
  title: 'Snow drift against the house',
  clause: 'ASCE 7-16 7.7',
  reason: 'Drifted snow below a higher wall or roof is not worked out yet.',
  needs: 'the length of the higher roof, the height step, and a drift load case',
  subjects: roofSubjects,
  unless: (ctx, s) =>
    noSnow(ctx) ?? (higherBeside(ctx, s) ? undefined : 'no higher wall or roof stands within 20 ft of this roof'),
});

export const snowSliding = pendingCheck({
  id: 'snow-sliding',
  title: 'Snow sliding from a higher roof',
  clause: 'ASCE 7-16 7.9',
  reason: 'Snow sliding down from a higher roof is not worked out yet.',
  needs: 'the slope, surface and eave length of the higher roof, and a sliding load case',
  subjects: roofSubjects,
  unless: (ctx, s) => noSnow(ctx) ?? (higherRoof(ctx, s) ? undefined : 'no higher roof lies within 20 ft of this roof'),
});

export const snowUnbalanced = pendingCheck({
  id: 'snow-unbalanced',
  title: 'Unbalanced snow across the ridge',
  clause: 'ASCE 7-16 7.6.1',
  reason: 'Snow blown from one side of the ridge to the other is not worked out yet.',
  needs: 'an unbalanced snow load case for each wind direction across the ridge',
  subjects: roofSubjects,
  unless: (ctx, s) =>
    noSnow(ctx) ??
    (ctx.structure.surfaces.some((x) => x.roof === s.id && x.shape === 'monoslope')
      ? 'a roof of one slope has no ridge to drift across'
      : undefined),
});
