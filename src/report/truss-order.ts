/**
 * What a truss plant is asked for: shape, place, loads. One order a mark. The plant's engineer designs the truss; nothing
 * of our preliminary layout binds it. What a sheet must show in the end: IRC 2018 R802.10.1.
 */
import { thrustSet } from '../analysis/index.js';
import type { CheckContext } from '../checks/contract.js';
import { trussChordForce } from '../checks/lateral/truss-chord.js';
import type { LoadKind } from '../loads/model.js';
import type { TrussShape } from '../structure/model.js';

export interface TrussOrder {
  readonly mark: string;
  readonly count: number;
  readonly gableEnd: boolean;
  readonly shape: TrussShape;
  readonly spacing: number;
  /** Psf: dead on the slope of each chord; live and balanced snow on plan. A part without a load has 0. */
  readonly topDead: number;
  readonly bottomDead: number;
  readonly live: number;
  readonly snow: number;
  /** Basic wind speed, mph; exposure; whether air passes under the roof. */
  readonly wind: { readonly speed: number; readonly exposure: string; readonly flow: string };
  /** Our own greatest reactions of one bearing, allowable-stress level, lb. */
  readonly down: number;
  readonly up: number;
  /** Outward push if both bearings are fastened, lb; 0 for a level bottom chord. */
  readonly thrust: number;
  /** Pull or push along the top chord by the bending of the roof under side load, lb, with its combination; 0 when none. */
  readonly chordForce: number;
  readonly chordFrom: string;
  readonly path: string;
}

export function trussOrders(ctx: CheckContext): readonly TrussOrder[] {
  const { project, structure, loads, effects } = ctx;
  const orders: TrussOrder[] = [];
  const psf = (surface: string, kind: LoadKind): number =>
    Math.max(
      0,
      ...loads.cases
        .filter((c) => c.kind === kind && c.papers === undefined && !c.unevenAlong)
        .map((c) => c.areas.filter((a) => a.surface === surface && !a.region).reduce((n, a) => n + a.psf, 0)),
    );
  const push = thrustSet(ctx)?.push;
  for (const m of structure.members) {
    if (!m.truss || orders.some((o) => o.mark === m.mark)) continue;
    const roof = project.cover.roofs.find((r) => r.mark === m.roof);
    const surface = structure.surfaces.find((s) => s.id === m.strips[0]?.surface);
    if (!roof || !surface) continue;
    const same = structure.members.filter((o) => o.mark === m.mark);
    const weigh = (wanted: boolean): number =>
      surface.layers.reduce((sum, l) => sum + ((l.under === true) === wanted ? l.psf : 0), 0);
    let down = 0;
    let up = 0;
    let thrust = 0;
    for (const { terms } of loads.combinations) {
      if (terms.some((t) => loads.cases[t.case]?.papers)) continue;
      for (const o of same) {
        const h = push?.get(o.id);
        if (h)
          thrust = Math.max(
            thrust,
            terms.reduce((n, t) => n + t.factor * h[t.case]!, 0),
          );
        for (const j of structure.joints) {
          if (j.ties[0]?.part !== o.id || j.kind !== 'truss-to-beam') continue;
          const force = effects.joints.get(j.id)?.force;
          const z = force ? terms.reduce((n, t) => n + t.factor * force[t.case]!.z, 0) : 0;
          down = Math.max(down, -z);
          up = Math.max(up, z);
        }
      }
    }
    const { wind } = project.basis;
    const chord = trussChordForce(ctx, m.mark);
    orders.push({
      mark: m.mark,
      count: same.length,
      gableEnd: m.role === 'gable-truss',
      shape: m.truss,
      spacing: roof.framing.spacing,
      topDead: weigh(false),
      bottomDead: weigh(true),
      live: psf(surface.id, 'Lr'),
      snow: psf(surface.id, 'S'),
      wind: { speed: wind.speed.value, exposure: wind.exposure.value, flow: wind.flow },
      down,
      up,
      thrust,
      chordForce: chord.value,
      chordFrom: chord.combination?.id ?? '',
      path: m.path,
    });
  }
  return orders;
}
