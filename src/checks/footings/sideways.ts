/**
 * What takes side force and moment at a footing: the soil beside its shaft (IBC 1807.3), or its base. A shaft that is deep
 * enough under every combination takes both and its base bears the vertical load alone; a pad whose pier is not deep enough
 * takes both through its base. One way answers for all combinations, so that no force is counted twice.
 */
import type { FootingForces } from '../../analysis/model.js';
import { contains } from '../../base/plane.js';
import type { Recorder } from '../../base/trace.js';
import type { Footing } from '../../structure/model.js';
import { freePostDepth, heldPostDepth, ISOLATED_POLE_FACTOR, type PostAtGrade } from '../codes/ibc-2018/index.js';
import type { CheckContext } from '../contract.js';
import { type Actions, actionsUnder, groundBeside, momentAt, NO_FORCE, NO_MOMENT, sourced } from './actions.js';
import type { LoadedFooting } from './footing.js';

export interface Sideways {
  readonly by: 'nothing' | 'soil' | 'base';
  /** Depth in the ground, and the greatest that Eq. 18-1 or 18-3 asks for with its combination; 0 without a shaft. */
  readonly depth: number;
  readonly needs: number;
  readonly governs: Actions | undefined;
  readonly held: boolean;
}

/** A slab of the structure lies all round the shaft, and the owner says it is rigid against it. */
function heldBySlab(ctx: CheckContext, f: Footing): boolean {
  if (!f.slabHolds) return false;
  const r = Math.max(f.pierDiameter, 1) / 2;
  const round = [
    { x: f.at.x - r, y: f.at.y },
    { x: f.at.x + r, y: f.at.y },
    { x: f.at.x, y: f.at.y - r },
    { x: f.at.x, y: f.at.y + r },
  ];
  return ctx.structure.slabs.some((s) => s.state !== 'removed' && round.every((p) => contains(s.outline, p)));
}

/**
 * 2 where the user says, with a source, that 1/2 in of motion does no harm, for wind on a cover not tied to the house. A
 * post that a slab holds does not move, and is not doubled.
 */
export const poleFactor = (ctx: CheckContext, f: Footing, a: Actions): number =>
  a.wind &&
  !heldBySlab(ctx, f) &&
  ctx.structure.attachment === 'free-standing' &&
  sourced(ctx.project.basis.soil.halfInchMotion) === true
    ? ISOLATED_POLE_FACTOR
    : 1;

/** Width of the shaft that presses on the soil; 0 when the footing has none. */
export const shaftWidth = (f: Footing): number => f.embedded?.width ?? f.pierDiameter;

export const atGrade = (ctx: CheckContext, { footing }: LoadedFooting, a: Actions): PostAtGrade => ({
  P: a.V,
  Mg: momentAt(a, groundBeside(ctx, footing) - footing.bottom),
  b: shaftWidth(footing),
  lateral: ctx.project.basis.soil.lateral.value * poleFactor(ctx, footing, a),
});

const made = new WeakMap<FootingForces, Sideways>();

function workOut(ctx: CheckContext, on: LoadedFooting): Sideways {
  const { footing } = on;
  const depth = groundBeside(ctx, footing) - footing.bottom;
  const held = heldBySlab(ctx, footing);
  const pushed = actionsUnder(ctx, on, ctx.loads.combinations).filter(
    (a) => a.V >= NO_FORCE || Math.hypot(a.Mx, a.My) >= NO_MOMENT,
  );
  if (pushed.length === 0) return { by: 'nothing', depth, needs: 0, governs: undefined, held };
  if (shaftWidth(footing) <= 0 || depth <= 0) return { by: 'base', depth, needs: 0, governs: undefined, held };
  let needs = -1;
  let governs: Actions | undefined;
  for (const a of pushed) {
    const post = atGrade(ctx, on, a);
    const d = held ? heldPostDepth(post) : freePostDepth(post, depth);
    if (d > needs) [needs, governs] = [d, a];
  }
  // A pier without pad has no base to speak of: there the depth must do.
  const base = footing.padThickness > 0 && needs > depth;
  return { by: base ? 'base' : 'soil', depth, needs, governs, held };
}

export function sidewaysOf(ctx: CheckContext, on: LoadedFooting): Sideways {
  let s = made.get(on.forces);
  if (!s) {
    s = workOut(ctx, on);
    made.set(on.forces, s);
  }
  return s;
}

/** Says why no side force or moment reaches the base, where the soil beside the shaft takes both: the depth it rests on. */
export function recordCentral(ctx: CheckContext, on: LoadedFooting, rec?: Recorder): void {
  const side = sidewaysOf(ctx, on);
  if (side.by !== 'soil') return;
  const holds = side.needs <= side.depth;
  rec?.step({
    symbol: 'd',
    meaning: `depth in the ground where ${side.needs.toFixed(1)} in is asked for (${side.governs?.combination.id ?? ''}): ${
      holds ? 'the soil beside the shaft takes V and M of every combination' : 'not enough for V and M, which fails'
    }, see Depth against side force and moment; the base bears P alone, ex = ey = 0`,
    formula: 'z(ground) − z(bottom)',
    substituted: `${groundBeside(ctx, on.footing).toFixed(1)} − ${on.footing.bottom.toFixed(1)}`,
    value: side.depth,
    unit: 'in',
    clause: side.held ? 'IBC 2018 1807.3.2.2' : 'IBC 2018 1807.3.2.1',
    from: [on.footing.path],
  });
}
