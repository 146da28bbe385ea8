/** Demand over capacity of one link of the load path, each way, from the results that the set prints. */
import type { CheckContext, CheckResult } from '../../checks/contract.js';
import { jointCapacities, type WayCapacity } from '../../checks/joints/capacity.js';
import { jointDemands } from '../../checks/joints/demands.js';
import type { PathLink } from '../../checks/path/graph.js';
import type { PathShare, PathWay } from './model.js';

const ANSWERED: ReadonlySet<CheckResult['status']> = new Set(['pass', 'fail']);

const OPEN: Readonly<Record<CheckResult['status'], string>> = {
  pass: '',
  fail: '',
  'not-applicable': 'nothing asked',
  'not-evaluated': 'open: not evaluated',
  'outside-scope': 'open: needs a licensed professional',
};

/** The worst answered result of some checks on one subject as a share; where none was answered, why. */
function fromResults(
  way: PathWay,
  by: string,
  checks: readonly string[],
  subject: string,
  results: readonly CheckResult[],
): PathShare {
  const found = results.filter((r) => r.subject === subject && checks.includes(r.check));
  const answered = found.filter((r) => ANSWERED.has(r.status)).sort((a, b) => b.ratio - a.ratio);
  const open = found.find((r) => r.status === 'not-evaluated' || r.status === 'outside-scope');
  const worst = answered[0];
  if (!worst || (open && worst.status === 'pass')) {
    const said = open ?? found[0];
    const asked = open !== undefined;
    return {
      way,
      demand: 0,
      capacity: undefined,
      unit: '',
      ratio: asked ? undefined : 0,
      by: said ? OPEN[said.status] : 'nothing asked',
      result: said?.id ?? '',
    };
  }
  const { demand, capacity, unit, ratio, id } = worst;
  return { way, demand, capacity, unit, ratio, by: `${by} (${worst.title.toLowerCase()})`, result: id };
}

function fromJoint(c: WayCapacity, way: PathWay, mark: string): PathShare {
  const { demand, capacity, together, by } = c;
  const ratio = demand <= 0 ? 0 : capacity === undefined ? together : demand / capacity;
  return { way, demand, capacity, unit: 'lb', ratio, by, result: `${c.check}:${mark}` };
}

/** Ways that are nearer their limit come first; an open one is nearer than any. */
const nearness = (s: PathShare): number => (s.ratio === undefined ? Number.MAX_VALUE : s.ratio);

const BY_LINK: Readonly<
  Record<PathLink['by'], (link: PathLink, ctx: CheckContext, results: readonly CheckResult[]) => readonly PathShare[]>
> = {
  sheathing(link, ctx, results) {
    const roof = ctx.structure.surfaces.find((s) => s.id === link.upper)?.roof ?? '';
    return [
      fromResults('down', 'sheathing', ['sheathing-span'], roof, results),
      fromResults('up', 'sheathing nails', ['sheathing-nails'], roof, results),
      fromResults('side', 'roof diaphragm', ['diaphragm'], roof, results),
    ];
  },
  joint(link, ctx, results) {
    const mark = link.joint?.mark ?? '';
    const d = jointDemands(ctx).find((q) => q.mark === mark);
    if (!d) return [];
    const [down, up, along, across] = jointCapacities(ctx, d, results);
    const sides = [fromJoint(along!, 'side', mark), fromJoint(across!, 'side', mark)];
    sides.sort((a, b) => nearness(b) - nearness(a));
    return [fromJoint(down!, 'down', mark), fromJoint(up!, 'up', mark), sides[0]!];
  },
  soil(link, ctx, results) {
    const mark = ctx.structure.footings.find((f) => f.id === link.upper)?.mark ?? link.upper;
    return [
      fromResults('down', 'soil', ['soil-bearing'], mark, results),
      fromResults('up', 'weight', ['footing-uplift'], mark, results),
      fromResults('side', 'soil', ['footing-sliding', 'footing-overturning', 'embedment'], mark, results),
    ];
  },
};

export const sharesOf = (link: PathLink, ctx: CheckContext, results: readonly CheckResult[]): readonly PathShare[] =>
  BY_LINK[link.by](link, ctx, results);

/** All ways together at the worst joint of a mark, as the joint check answers; undefined where open or no joint. */
export function togetherOf(link: PathLink, results: readonly CheckResult[]): number | undefined {
  const found = results.find((r) => r.check === 'joint-products' && r.subject === link.joint?.mark);
  return found && ANSWERED.has(found.status) ? found.ratio : undefined;
}
