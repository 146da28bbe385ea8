/** Where the water of each new slope goes, said row by row. */
import { area, contains } from '../../base/plane.js';
import { formatArea } from '../../base/quantity/index.js';
import { flat, type Vec2 } from '../../base/vec.js';
import { gutterOf } from '../../checks/roof/gutter.js';
import { oldRoofOf } from '../../checks/tie-in/overlay-loads.js';
import { cornersOf, onSurface } from '../../structure/surfaces.js';
import type { TableRow } from '../annotate/index.js';
import type { SheetContext } from './contract.js';
import { leaderPlaces } from './roof-edges.js';

/** In front of an eave the water falls this far out, inches. */
const DRIP = 8;

/** What lies under a plan point: another roof, a slab, or the ground. */
function under(ctx: SheetContext, p: Vec2, from: string): string {
  const { structure } = ctx.input;
  const roof = structure.surfaces.find((s) => s.roof !== from && contains(cornersOf(s).map(flat), p));
  if (roof) return `roof ${roof.roof}`;
  const old = structure.housePlanes.find((h) => contains(h.outline, p));
  if (old) return `the house’s slope ${old.id}`;
  const slab = structure.slabs.find((s) => s.state !== 'removed' && contains(s.outline, p));
  return slab ? `slab ${slab.mark}, which falls away from the house` : 'the ground, led away from the house';
}

export function drainageRows(ctx: SheetContext): TableRow[] {
  const { structure } = ctx.input;
  const leaders = leaderPlaces(ctx.input);
  const rows = structure.surfaces.map((s): TableRow => {
    const gutter = gutterOf(ctx.input, s.roof);
    const us = s.outline.filter((p) => Math.abs(p.y) < 1e-6).map((p) => p.x);
    const mid = us.length ? (Math.min(...us) + Math.max(...us)) / 2 : 0;
    const eave = onSurface(s, mid, 0);
    const lands = under(ctx, { x: eave.x + s.downhill.x * DRIP, y: eave.y + s.downhill.y * DRIP }, s.roof);
    const mine = leaders.filter((l) => l.surface === s.id);
    const plan = formatArea(area(cornersOf(s).map(flat)));
    const to = (l: (typeof mine)[number]): string =>
      under(ctx, { x: l.at.x + l.out.x * DRIP, y: l.at.y + l.out.y * DRIP }, s.roof);
    return gutter && mine.length > 0
      ? [
          { text: s.mark, mark: s.mark, path: s.path },
          plan,
          `gutter ${gutter.gutter}", leader ${gutter.leader}": ${mine.map((l) => l.mark).join(', ')}`,
          `${to(mine[0]!)}, by a splash block or drain`,
        ]
      : [{ text: s.mark, mark: s.mark, path: s.path }, plan, 'eave without gutter', lands];
  });
  for (const o of structure.overlays ?? []) {
    const old = oldRoofOf(ctx.input, o);
    const then = old?.gutter === undefined ? 'OPEN: gutter there?' : old.gutter ? 'its gutter' : 'NO GUTTER THERE';
    o.faces.forEach((f, i) => {
      rows.push([
        { text: `${f.mark} over ${o.plane}`, path: o.path },
        formatArea(f.planArea),
        `valley ${o.valleys[i]!.mark} and eave`,
        `the house’s slope ${o.plane}, ${ctx.len(o.start)} above its eave, then ${then}`,
      ]);
    });
  }
  return rows;
}
