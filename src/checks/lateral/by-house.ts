/** Side load handed to the house: the roof as a diaphragm, its chords, its tie, and the house beyond. */
import { say } from '../codes/say.js';
import type { Check, CheckContext, Finding, Subject } from '../contract.js';
import { failed, measured, notEvaluated, RATIO_CAP } from '../finding.js';
import { diaphragm } from './diaphragm.js';
import { diaphragmChord } from './diaphragm-chord.js';
import { heelBlocking } from './heel-blocking.js';
import { housePath } from './house-path.js';
import { houseTie, NEEDED } from './house-tie.js';
import { roofSides } from './side-loads.js';
import { ALONG, type Axis, SWAY_CLAUSE, type SwaySystem } from './system.js';

/** What must hold, in the order the load comes down. */
const PATH: readonly Check[] = [heelBlocking, diaphragm, diaphragmChord, houseTie, housePath];

interface Link {
  readonly check: Check;
  readonly subject: Subject;
  readonly finding: Finding;
}

const RANK: Readonly<Record<Finding['status'], number>> = {
  'not-applicable': 0,
  pass: 1,
  fail: 2,
  'not-evaluated': 3,
  'outside-scope': 4,
};

const worse = (a: Link, b: Link): boolean =>
  RANK[a.finding.status] > RANK[b.finding.status] ||
  (RANK[a.finding.status] === RANK[b.finding.status] && a.finding.ratio > b.finding.ratio);

const made = new WeakMap<CheckContext, readonly Link[]>();

function links(ctx: CheckContext): readonly Link[] {
  const known = made.get(ctx);
  if (known) return known;
  const all = PATH.flatMap((check) =>
    check.subjects(ctx).map((subject): Link => ({ check, subject, finding: check.run(subject, ctx) })),
  );
  made.set(ctx, all);
  return all;
}

function findingFor(axis: Axis, ctx: CheckContext): Finding {
  if (ctx.structure.attachment === 'free-standing')
    return failed(
      SWAY_CLAUSE,
      `The cover stands free of the house and cannot be held by it ${ALONG[axis]}: name knee braces or fixed posts.`,
    );
  const loose = roofSides(ctx).filter((s) => !s.line && !s.split && !s.turned);
  if (loose.length > 0) {
    return notEvaluated(
      SWAY_CLAUSE,
      `Side load ${ALONG[axis]} is to be held by the house, and nothing ties ${loose.map((s) => s.roof.mark).join(', ')} to it. ${NEEDED}`,
    );
  }
  const all = links(ctx);
  const first = all[0];
  if (!first) return notEvaluated(SWAY_CLAUSE, 'no roof was placed');
  const worst = all.reduce((w, l) => (worse(l, w) ? l : w), first);
  const { finding, check, subject } = worst;
  const where = `${check.title} (${subject.id})`;
  if (finding.status === 'pass' || finding.status === 'not-applicable') {
    const beyond = all.filter((l) => l.check === housePath && l.finding.note !== '').map((l) => l.finding.note);
    return { ...finding, status: 'pass', note: [`Held by the house; most used: ${where}.`, ...beyond].join(' ') };
  }
  return { ...finding, note: `${where}: ${finding.note}` };
}

export const byHouse: SwaySystem = {
  answer(axis, ctx, rec) {
    const f = findingFor(axis, ctx);
    if (rec) {
      rec.heading(`Held by the house ${ALONG[axis]}`);
      for (const { check, subject, finding } of links(ctx)) {
        if (finding.status === 'not-applicable') continue;
        rec.step({
          symbol: subject.id,
          meaning: `${check.title}: ${finding.status}`,
          formula: 'demand / capacity',
          substituted: `${say(finding.demand)} / ${say(finding.capacity)} ${finding.unit}`,
          value: Math.min(finding.ratio, RATIO_CAP),
          unit: '',
          clause: finding.clause,
          note: `see ${check.id}:${subject.id}`,
        });
      }
      // The most used link is the answer; like every answer it ends with its ratio.
      if (f.status === 'pass' || f.status === 'fail') {
        const { demand, capacity, ratio, unit, combination } = f;
        measured(
          {
            demand,
            capacity,
            ratio,
            unit,
            combination,
            clause: f.clause,
            formula: 'greatest of the above',
            remedy: '',
          },
          rec,
        );
      }
    }
    return f;
  },
};
