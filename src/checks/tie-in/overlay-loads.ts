/**
 * What an overlay lays on the old roof, in closed form. Every pound of its plan area comes down on the valley plates: the fill
 * rafters of a pair lean on each other at the ridge, which takes nothing of an even load. Nothing of it goes to the cover's
 * own beams, and nothing of the cover's loads here: half the bay to the last frame belongs to that frame.
 */
import type { HouseRoof, Overlay } from '../../project/model.js';
import type { OverlayPlaced } from '../../structure/model.js';
import type { CheckContext } from '../contract.js';

export interface OverlayLoads {
  /** Plan area, in². */
  readonly area: number;
  /** Weight of its members, lb. */
  readonly members: number;
  /** Dead load of surface and members, and the larger of roof live and balanced snow: psf on plan. */
  readonly layers: number;
  readonly dead: number;
  readonly live: number;
  readonly liveKind: 'Lr' | 'S';
  /** Heaviest fill rafter: mark, load at its seat, lb; horizontal push of its pair there, lb. */
  readonly worst: { readonly mark: string; readonly down: number; readonly thrust: number };
  /** Load of the plate along its plan length where it is heaviest, lb/ft. */
  readonly plate: number;
  /** Load on one old rafter where the plate crosses it, lb. */
  readonly point: number;
}

/** The house roof under an overlay. */
export function oldRoofOf(ctx: Pick<CheckContext, 'project'>, o: OverlayPlaced): HouseRoof | undefined {
  const n = Number(/^HR(\d+)-/.exec(o.plane)?.[1] ?? 0);
  return ctx.project.house.roofs[n - 1];
}

/** What the project says of the overlay of a roof. */
export function overlayOf(ctx: Pick<CheckContext, 'project'>, roof: string): Overlay | undefined {
  const r = ctx.project.cover.roofs.find((x) => x.mark === roof);
  return r && 'meetsHouse' in r ? r.meetsHouse : undefined;
}

const planLoad = (ctx: Pick<CheckContext, 'loads'>, id: string, roof: string): number =>
  ctx.loads.cases.find((c) => c.id === id)?.plan?.find((p) => p.roof === roof)?.psf ?? 0;

export function overlayLoads(ctx: Pick<CheckContext, 'project' | 'loads'>, o: OverlayPlaced): OverlayLoads {
  const area = o.faces.reduce((t, f) => t + f.planArea, 0);
  const members = o.members.reduce((t, m) => t + m.section.weight * m.length, 0);
  const layers = o.layers.reduce((t, l) => t + l.psf, 0) * Math.hypot(1, o.shape.slope);
  const dead = layers + (members * 144) / area;
  const [lr, s] = [planLoad(ctx, 'Lr', o.roof), planLoad(ctx, 'S', o.roof)];
  const live = Math.max(lr, s);
  const heavy = o.fills.reduce((a, b) => (b.area > a.area ? b : a));
  // One rafter of the pair.
  const down = ((dead + live) * heavy.area) / 2 / 144;
  const spacing = overlayOf(ctx, o.roof)?.spacing ?? 0;
  const step = (spacing * o.shape.old) / o.shape.slope;
  const crossed = oldRoofOf(ctx, o)?.framing?.spacing ?? 0;
  return {
    area,
    members,
    layers,
    dead,
    live,
    liveKind: s > lr ? 'S' : 'Lr',
    worst: { mark: heavy.mark, down, thrust: down / (2 * o.shape.slope) },
    plate: down / (Math.hypot(spacing, step) / 12),
    // Old rafters farther apart than the seats gather more than one of them.
    point: down * Math.max(1, crossed / step),
  };
}
