/** A calculated connection against the forces of one mark's joints, each combination with its own load duration. */
import type { Recorder } from '../../../base/trace.js';
import { isShorter, length, type Vec3 } from '../../../base/vec.js';
import type { Connection, ConnectionPart, ConnectionWay } from '../../../project/connections.js';
import { say } from '../../codes/say.js';
import type { CheckContext, Finding } from '../../contract.js';
import { failed, measured, notEvaluated, outsideScope, RATIO_CAP } from '../../finding.js';
import { type Action, actionsOf } from '../actions.js';
import { bearsOnWood } from '../bearing.js';
import { type JointDemand, TRACE } from '../demands.js';
import { forceParts } from '../force-parts.js';
import type { Hold, Place } from './contract.js';
import { placeOf, takenBy, takesOf, waysOf } from './place.js';
import { kindOf } from './registry.js';

const CLAUSE = 'NDS 2018 chapters 11, 12';

/** `(2) 1/2 in. bolt above, … : up; wood on wood …: down`. */
export const connectionWords = (c: Connection): string =>
  c.parts.map((p) => `${kindOf(p).words(p)}: ${p.takes.join(', ')}`).join('; ');

const careWords = (c: Connection): string => {
  const all = [...new Set(c.parts.map((p) => kindOf(p).care(p)))].join('; ');
  return ` ${all[0]!.toUpperCase()}${all.slice(1)}.`;
};

/** The connection as the joint schedule prints it, with the place of every fastener. */
export const connectionSchedule = (c: Connection): string =>
  c.parts
    .map((p) => {
      const kind = kindOf(p);
      return [`${kind.words(p)} (${p.takes.join(', ')})`, kind.layout(p), kind.care(p)]
        .filter((t) => t !== '')
        .join('; ');
    })
    .join('. ');

interface Worst {
  readonly action: Action;
  readonly place: Place;
  readonly part: ConnectionPart;
  readonly force: Vec3;
  readonly ratio: number;
  readonly what: string;
}

interface Review {
  readonly worst: Worst | undefined;
  readonly faults: readonly string[];
  readonly outside: string | undefined;
  /** Set when the joint cannot be judged at all. */
  readonly blocked: string | undefined;
  /** Down by wood bearing on wood somewhere. */
  readonly byBearing: boolean;
}

const WAYS: readonly ConnectionWay[] = ['push', 'pull', 'down', 'up', 'lengthwise', 'crosswise'];

const isAxial = (c: Connection): boolean => c.parts.some((p) => p.takes.includes('push') || p.takes.includes('pull'));
const reviews = new WeakMap<CheckContext['effects'], Map<string, Review>>();

const forceOf = (a: Action): Vec3 => ({ x: a.x, y: a.y, z: a.z * a.raise.factor });

/**
 * Actions less than this share of another in every direction, load duration counted, cannot govern: leaving a direction
 * out gains at most 2·√(r − 1)/r where a fastener is r times as strong one way as another, and r stays under 9.
 */
const SHADE = 0.6;
const MOST_ANCHORS = 8;

/** Those actions that can govern. Joints that lie differently in plan are not compared. Keeps the moving app fast. */
function telling(ctx: CheckContext, actions: readonly Action[]): ReadonlySet<Action> {
  const n = actions.length;
  // An action's size each way, load duration counted.
  const [x, y, z, total] = [new Float64Array(n), new Float64Array(n), new Float64Array(n), new Float64Array(n)];
  const lie = new Int32Array(n);
  let most = 0;
  for (let i = 0; i < n; i++) {
    const a = actions[i]!;
    const { CD } = a.combination;
    const before = actions[i - 1]?.joint;
    lie[i] =
      a.joint === before ? lie[i - 1]! : Math.round(1e4 * Math.abs(placeOf(ctx, a.joint, true)?.lengthwise.x ?? 0));
    z[i] = (a.z * a.raise.factor) / CD;
    x[i] = Math.abs(a.x) / CD;
    y[i] = Math.abs(a.y) / CD;
    total[i] = Math.abs(z[i]!) + x[i]! + y[i]!;
    if (total[i]! > total[most]!) most = i;
  }
  const shades = (k: number, s: number): boolean =>
    lie[k] === lie[s] &&
    z[k]! * z[s]! >= 0 &&
    Math.abs(z[s]!) <= SHADE * Math.abs(z[k]!) &&
    x[s]! <= SHADE * x[k]! &&
    y[s]! <= SHADE * y[k]!;
  // The largest of all shades most: what it leaves is soon put in order.
  const sides: number[] = [];
  for (let i = 0; i < n; i++) if (i === most || !shades(most, i)) sides.push(i);
  sides.sort((p, q) => total[q]! - total[p]!);
  const anchors: number[] = [];
  const kept = new Set<Action>();
  for (const s of sides) {
    let shaded = false;
    for (let k = 0; k < anchors.length && !shaded; k++) shaded = shades(anchors[k]!, s);
    if (shaded) continue;
    kept.add(actions[s]!);
    if (anchors.length < MOST_ANCHORS) anchors.push(s);
  }
  return kept;
}

/** Ways that no part takes. Without a part along the member nothing is counted that way. */
const waysLeft = (c: Connection, axial: boolean): readonly ConnectionWay[] =>
  WAYS.filter((way) => (axial || (way !== 'push' && way !== 'pull')) && !c.parts.some((p) => p.takes.includes(way)));

function review(ctx: CheckContext, d: JointDemand, c: Connection): Review {
  const nothing = { worst: undefined, faults: [], outside: undefined, byBearing: false };
  const actions = d.known ? actionsOf(ctx, d.mark) : undefined;
  if (!actions) return { ...nothing, blocked: 'Forces of this joint are not all known, see the frame check.' };
  const faults = new Set<string>();
  let worst: Worst | undefined;
  let outside: string | undefined;
  let byBearing = false;
  let place: Place | undefined;
  let holds: readonly Hold[] = [];
  let onWood = false;
  const axial = isAxial(c);
  const left = waysLeft(c, axial);
  const takes = c.parts.map(takesOf);
  const looked = telling(ctx, actions);
  for (const action of actions) {
    if (place?.joint !== action.joint) {
      const here = placeOf(ctx, action.joint, c.madeDry);
      place = here;
      holds = here ? c.parts.map((part) => kindOf(part).hold(part, here)) : [];
      onWood = bearsOnWood(ctx.structure, action.joint);
    }
    if (!place) {
      const last = action.joint.ties.at(-1)!.part;
      const why = ctx.structure.footings.some((f) => f.id === last)
        ? 'An anchor in concrete is not calculated: name a product with published loads.'
        : `${last} is existing construction whose wood is not in the file.`;
      return { ...nothing, blocked: why };
    }
    const tells = looked.has(action);
    // Where wood bears, nothing more need be known of "down" once it is met.
    if (!tells && left.every((way) => way === 'down' && onWood && byBearing)) continue;
    const ways = waysOf(place, forceOf(action), axial);
    if (onWood && ways.down >= TRACE && left.includes('down')) byBearing = true;
    const open = left.find((way) => Math.abs(ways[way]) >= TRACE && !(way === 'down' && onWood));
    if (open) faults.add(`nothing holds ${Math.ceil(Math.abs(ways[open]) - 1e-6)} lb ${open} at ${action.joint.id}`);
    if (!tells) continue;
    for (let i = 0; i < c.parts.length; i++) {
      const part = c.parts[i]!;
      const force = takenBy(takes[i]!, place, ways);
      if (isShorter(force, TRACE)) continue;
      const held = holds[i]!(force, action.combination.CD);
      for (const fault of held.faults) faults.add(fault);
      outside ??= held.outside;
      if (!worst || held.ratio > worst.ratio)
        worst = { action, place, part, force, ratio: held.ratio, what: held.what };
    }
  }
  return { worst, faults: [...faults].slice(0, 4), outside, byBearing, blocked: undefined };
}

function reviewed(ctx: CheckContext, d: JointDemand, c: Connection): Review {
  let known = reviews.get(ctx.effects);
  if (!known) {
    known = new Map();
    reviews.set(ctx.effects, known);
  }
  const key = `${d.mark} ${c.path}`;
  const made = known.get(key) ?? review(ctx, d, c);
  known.set(key, made);
  return made;
}

function record(ctx: CheckContext, w: Worst, axial: boolean, rec: Recorder): void {
  const { action, part, force, place } = w;
  rec.heading(`${action.joint.id}, ${action.combination.id}: ${kindOf(part).words(part)}`);
  const ways = waysOf(place, force, axial);
  for (const way of WAYS) {
    if (Math.abs(ways[way]) < TRACE) continue;
    const isRaised = action.raise.because !== undefined && way !== 'lengthwise' && way !== 'crosswise';
    // Of the joint's force, unraised; what this part is spared of it leaves the parts unsaid.
    const whole = Math.abs(ways[way]) / (isRaised ? action.raise.factor : 1);
    const sum = forceParts(ctx, action.joint.id, action.combination.id, whole, (f) => {
      const of = waysOf(place, f, axial);
      return way === 'up' || way === 'down'
        ? of.up - of.down
        : way === 'push' || way === 'pull'
          ? of.push - of.pull
          : of[way];
    });
    const stat = action.raise.because;
    const up =
      isRaised && stat ? `(${sum}) · ${say(stat.statics)} / ${say(stat.analysed)}, raised to hand statics` : sum;
    rec.step({
      symbol: `P,${way}`,
      meaning: `force ${way} that this part takes${sum && ', from the frame'}`,
      formula: 'sum of factored cases',
      substituted: sum ? up : `${action.combination.id}${isRaised ? ', raised to hand statics' : ''}`,
      value: Math.abs(ways[way]),
      unit: 'lb',
      clause: action.combination.clause,
      from: [action.joint.path],
    });
  }
  kindOf(part).hold(part, place)(force, action.combination.CD, rec);
}

/** `open` are the house directions whose side load is still missing, as words. */
export function assessConnection(
  ctx: CheckContext,
  d: JointDemand,
  c: Connection,
  open: string,
  rec?: Recorder,
): Finding {
  const { worst, faults, outside, byBearing, blocked } = reviewed(ctx, d, c);
  if (blocked !== undefined) return notEvaluated(CLAUSE, blocked + open);
  if (outside !== undefined) return outsideScope(CLAUSE, `${outside}.${open}`);
  if (faults.length > 0 && (!worst || worst.ratio <= 1)) {
    const more = failed(CLAUSE, `The layout does not hold: ${faults.join('; ')}.${open}`);
    if (worst && rec) record(ctx, worst, isAxial(c), rec);
    return more;
  }
  const words = connectionWords(c);
  const truss = d.kind === 'truss-to-beam';
  const chord = truss ? ' Truss chord wood is the one in the file: confirm it on the sealed truss drawing.' : '';
  const bearing = byBearing ? ' Down by wood bearing on wood, checked apart.' : '';
  if (!worst) {
    const calm = {
      demand: 0,
      capacity: 0,
      unit: 'lb',
      clause: CLAUSE,
      formula: '0',
      remedy: '',
      note: `${words}: nothing asked of it.${bearing}`,
    };
    const f = measured(calm, open === '' ? rec : undefined);
    return open === '' ? f : { ...f, status: 'not-evaluated', note: f.note + open };
  }
  if (rec) record(ctx, worst, isAxial(c), rec);
  const demand = length(worst.force);
  const note = `${words}.${bearing}${careWords(c)}${chord}`;
  const measure = {
    demand,
    capacity: worst.ratio > 0 ? demand / worst.ratio : demand * RATIO_CAP,
    ratio: worst.ratio,
    unit: 'lb',
    combination: worst.action.combination.id,
    clause: CLAUSE,
    formula: 'greatest use of the connection',
    note,
    remedy: `${kindOf(worst.part).words(worst.part)} is too weak at ${worst.action.joint.id} under ${worst.action.combination.id} (${Math.ceil(demand)} lb); ${worst.what}${faults.length > 0 ? `; also ${faults.join('; ')}` : ''}.${open}`,
  };
  const finding = measured(measure);
  if (finding.status === 'fail' || open === '') return measured(measure, rec);
  return { ...finding, status: 'not-evaluated', note: `So far it fits: ${note}${open}` };
}
