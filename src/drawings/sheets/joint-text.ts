/** Joints in words, the same on schedule, joint plan and details: what they tie, what they must carry, what serves them. */
import { formatForce } from '../../base/quantity/index.js';
import { calculatedText } from '../../checks/house/calculated.js';
import { connectionSchedule } from '../../checks/joints/connections/assess.js';
import { type Demand, type JointDemand, jointDemands } from '../../checks/joints/demands.js';
import { type Served, servedBy } from '../../checks/joints/serving.js';
import type { UnitChoice } from '../../project/model.js';
import { byMark, markList } from '../../report/path/table.js';
import type { Structure } from '../../structure/model.js';
import type { SheetContext } from './contract.js';

/** Marks of the parts a joint ties, by mark: `T1 to B1, B2`. */
export function tied(structure: Structure, mark: string): string {
  const name = (id: string): string =>
    structure.members.find((m) => m.id === id)?.mark ??
    structure.footings.find((f) => f.id === id)?.mark ??
    (structure.walls.some((w) => w.id === id) ? 'house' : id);
  const ends: Set<string>[] = [];
  for (const j of structure.joints) {
    if (j.mark !== mark) continue;
    j.ties.forEach((t, i) => {
      const end = ends[i] ?? new Set<string>();
      ends[i] = end;
      end.add(name(t.part));
    });
  }
  return ends.map((e) => markList([...e].sort(byMark))).join(' to ');
}

/** `(2) strap tie: 600 lb up, 115 lb along house each, CD 1.6, G 0.5 or more; report, Table 3`. */
export function servedText(served: Served | undefined, u: UnitChoice): string {
  if (!served) return 'open: name a product or connection';
  if (served.by === 'connection') return `by calculation, ${connectionSchedule(served.connection)}`;
  const p = served.product;
  const rated = (
    [
      [p.down, 'down'],
      [p.up, 'up'],
      [p.along, 'along house'],
      [p.across, 'out from house'],
    ] as const
  ).flatMap(([lb, way]) => (lb === undefined ? [] : [`${formatForce(Math.floor(lb), u, u === 'us' ? 0 : 2)} ${way}`]));
  return `(${p.count}) ${p.product}: ${rated.join(', ')} each, CD ${p.duration}, G ${p.G} or more; ${p.source}`;
}

/** What serves the joints of a demand: product, calculated connection, the ledger's own fasteners. */
export function madeOf({ input, len }: SheetContext, d: JointDemand): string {
  if (d.kind === 'fascia-to-framing') return 'nailed by the code’s fastening schedule';
  const { choices, job } = input.project;
  const served = servedBy(choices, d.mark, d.kind);
  return (served ? undefined : calculatedText(input, d.mark, len)) ?? servedText(served, job.units);
}

/** A pound figure of a demand, rounded up; a dash for none. */
export const pounds = (ctx: SheetContext, d: Demand): string =>
  d.value > 0 ? formatForce(Math.ceil(d.value), ctx.input.project.job.units, 0) : '–';

/** `needs 2,694 lb down, 440 lb up`: the allowable load a joint of a mark must have. */
export function needText(ctx: SheetContext, mark: string): string {
  const d = jointDemands(ctx.input).find((x) => x.mark === mark);
  if (!d) return 'carries nothing';
  if (!d.known) return 'carries forces that are not all known';
  const rows: readonly (readonly [Demand, string])[] = [
    [d.down, 'down'],
    [d.up, 'up'],
    [d.alongX, 'along house'],
    [d.alongY, 'out from house'],
  ];
  const some = rows.flatMap(([x, way]) => (x.value > 0 ? [`${pounds(ctx, x)} ${way}`] : []));
  return some.length > 0 ? `needs ${some.join(', ')}` : 'carries nothing that was worked out';
}

/** What serves a joint in a few words: product and count, or that the calculated connection is drawn. */
export function briefly(ctx: SheetContext, mark: string): string {
  const d = jointDemands(ctx.input).find((x) => x.mark === mark);
  if (!d) return '';
  const served = servedBy(ctx.input.project.choices, mark, d.kind);
  if (served?.by === 'product') return `(${served.product.count}) ${served.product.product}`;
  if (served?.by === 'connection') return connectionSchedule(served.connection);
  return calculatedText(ctx.input, mark, ctx.len) ?? 'open: name a product or connection';
}
