/**
 * What the cover adds to the existing house, against the thresholds of the existing-building code: 5 percent more gravity load
 * on a part (2018 IEBC 502.4, 503.3), 10 percent more lateral (502.5, 503.4). What the house carries today is not in the
 * project, so the answer is the number at which each threshold would be met, unless the office has said that the house is
 * kept under the residential code.
 */
import type { Check, CheckContext } from '../contract.js';
import { notApplicable, notEvaluated } from '../finding.js';

const CLAUSE = '2018 IEBC 502.4, 502.5';
export const GRAVITY_SHARE = 0.05;
export const LATERAL_SHARE = 0.1;

interface Handed {
  /** Greatest vertical load on one wall, lb and lb/ft of the part of it that is loaded. */
  readonly down: number;
  readonly plf: number;
  readonly wall: string;
  readonly combination: string;
}

/** Gravity on each wall, combination by combination; undefined when a joint on the house has no forces. */
function handedDown(ctx: CheckContext): Handed | undefined | 'none' {
  const byWall = new Map<string, { joints: (readonly { z: number }[])[]; low: number; high: number }>();
  for (const j of ctx.structure.joints) {
    const wall = ctx.structure.walls.find((w) => w.id === j.ties.at(-1)?.part);
    if (!wall) continue;
    const force = ctx.effects.joints.get(j.id)?.force;
    if (!force) return undefined;
    const length = Math.hypot(wall.end.x - wall.start.x, wall.end.y - wall.start.y);
    const s =
      ((j.at.x - wall.start.x) * (wall.end.x - wall.start.x) + (j.at.y - wall.start.y) * (wall.end.y - wall.start.y)) /
      length;
    const w = byWall.get(wall.id) ?? { joints: [], low: s, high: s };
    w.joints.push(force);
    w.low = Math.min(w.low, s);
    w.high = Math.max(w.high, s);
    byWall.set(wall.id, w);
  }
  let worst: Handed | 'none' = 'none';
  for (const [id, w] of byWall) {
    const perCase = ctx.loads.cases.map((_, c) => w.joints.reduce((sum, f) => sum - f[c]!.z, 0));
    for (const combo of ctx.loads.combinations) {
      if (combo.terms.some((t) => 'WE'.includes(ctx.loads.cases[t.case]!.kind))) continue;
      const down = combo.terms.reduce((sum, t) => sum + t.factor * perCase[t.case]!, 0);
      if (down <= 0.5 || (worst !== 'none' && down <= worst.down)) continue;
      const run = Math.max(12, w.high - w.low);
      worst = { down, plf: (12 * down) / run, wall: id, combination: combo.id };
    }
  }
  return worst;
}

/** Greatest side load that the house has to hold, lb, over the directions that lean on it. */
function handedSideways(ctx: CheckContext): { readonly force: number; readonly combination: string } {
  let force = 0;
  let combination = '';
  for (const axis of ['x', 'y'] as const) {
    if (ctx.project.cover.lateral[axis] !== 'house') continue;
    const perCase = ctx.loads.cases.map((_, c) => ctx.effects.sway.reduce((sum, s) => sum + s.force[c]![axis], 0));
    for (const combo of ctx.loads.combinations) {
      const F = Math.abs(combo.terms.reduce((sum, t) => sum + t.factor * perCase[t.case]!, 0));
      if (F > force) {
        force = F;
        combination = combo.id;
      }
    }
  }
  return { force, combination };
}

export const existingBuilding: Check = {
  id: 'existing-building',
  title: 'Load added to the house',
  subjects: () => [{ id: 'house', path: '/house' }],
  run(_subject, ctx, rec) {
    const down = handedDown(ctx);
    if (down === undefined) return notEvaluated(CLAUSE, 'no forces were worked out on the house, see the frame check');
    const side = handedSideways(ctx);
    const over = (ctx.structure.overlays?.length ?? 0) > 0;
    if (down === 'none' && side.force < 0.5)
      return notApplicable(
        CLAUSE,
        over
          ? 'the cover hands no load to the walls directly; what it lays on the old roof is asked by the checks of the overlay'
          : 'the cover hands no load to the house',
      );
    const parts: string[] = [];
    if (down !== 'none') {
      const today = down.plf / GRAVITY_SHARE;
      rec?.step({
        symbol: 'w',
        meaning: `gravity load added to the house wall, ${Math.round(down.down)} lb over the loaded part of it`,
        formula: down.combination,
        substituted: 'sum of the joints on the wall over their distance',
        value: down.plf,
        unit: 'lb/ft',
        clause: CLAUSE,
        from: ['/cover/ledgers'],
      });
      rec?.step({
        symbol: 'w today',
        meaning: 'load the wall must carry today for the addition to stay within 5 percent',
        formula: 'w / 0.05',
        substituted: `${down.plf.toFixed(1)} / 0.05`,
        value: today,
        unit: 'lb/ft',
        clause: CLAUSE,
      });
      parts.push(
        `${Math.round(down.plf)} lb/ft of gravity load (within 5 percent only where the wall carries ${Math.round(today)} lb/ft today)`,
      );
    }
    if (side.force >= 0.5) {
      rec?.step({
        symbol: 'V',
        meaning: 'side load handed to the house',
        formula: side.combination,
        substituted: 'sum of the restraints at roof level',
        value: side.force,
        unit: 'lb',
        clause: CLAUSE,
        from: ['/cover/lateral'],
      });
      rec?.step({
        symbol: 'V today',
        meaning: 'side load the house must resist today for the addition to stay within 10 percent',
        formula: 'V / 0.10',
        substituted: `${side.force.toFixed(1)} / 0.10`,
        value: side.force / LATERAL_SHARE,
        unit: 'lb',
        clause: CLAUSE,
      });
      parts.push(
        `${Math.round(side.force)} lb of side load (within 10 percent where it resists ${Math.round(side.force / LATERAL_SHARE)} lb today)`,
      );
    }
    const { existingHouse: rule } = ctx.project.basis;
    if (rule?.state === 'given' && rule.from !== '' && rule.value === 'residential') {
      return notApplicable(
        'IRC 2018 R102.7.1 (recalled)',
        `the house is kept under the residential code (${rule.from}), so that the 5 and 10 percent rules are not asked; it takes ${parts.join(' and ')}`,
      );
    }
    return notEvaluated(
      CLAUSE,
      `House: verify. It takes ${parts.join(' and ')}. Houses of up to five dwelling units that keep to the residential code or conventional light framing are excepted from the gravity rule. Needed: the office’s word on which code governs the house, and a look at the wall, its headers and its footing.`,
    );
  },
};
