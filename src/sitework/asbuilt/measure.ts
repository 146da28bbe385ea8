/** Readings → true positions with their uncertainty, and the readings that do not belong. */
import type { Issue } from '../../base/issue.js';
import type { Project } from '../../project/model.js';
import { UNCHECKED } from '../adjust/least-squares.js';
import { type Snooped, snoop } from '../adjust/snoop.js';
import type { Layout } from '../layout/index.js';
import { INSTRUMENTS } from './instruments.js';
import type { BadReading, MeasuredPoint, ReadReading } from './model.js';
import { networksOf, type ReadIn } from './readings.js';

export interface Measured {
  readonly readings: readonly ReadReading[];
  readonly bad: readonly BadReading[];
  readonly plan: Snooped | undefined;
  readonly height: Snooped | undefined;
  readonly points: readonly MeasuredPoint[];
  readonly loose: readonly string[];
  readonly issues: readonly Issue[];
}

function judged(r: ReadIn, s: Snooped | undefined): ReadReading {
  const { reading } = r;
  const base = {
    path: reading.path,
    words: r.words,
    value: reading.value,
    sigma: r.sigma,
    usualSigma: reading.sigma === undefined,
    date: reading.date,
    instrument: INSTRUMENTS[reading.instrument].words,
    designed: r.designed,
  };
  const suspect = s?.suspects.find((x) => x.id === r.id);
  if (suspect) return { ...base, residual: suspect.error, redundancy: 1, normalized: suspect.normalized, state: 'bad' };
  const i = s?.after.used.indexOf(r.id) ?? -1;
  if (!s || i < 0) return { ...base, residual: 0, redundancy: 0, normalized: 0, state: 'unused' };
  const { residuals, redundancy, normalized } = s.after.fit;
  const doubtful = s.suspects.some((x) => x.alike.includes(r.id));
  return {
    ...base,
    residual: residuals[i]!,
    redundancy: redundancy[i]!,
    normalized: normalized[i]!,
    state: doubtful ? 'doubtful' : redundancy[i]! <= UNCHECKED ? 'unchecked' : 'good',
  };
}

/** Undefined when nothing was measured. */
export function measured(project: Project, layout: Layout): Measured | undefined {
  const log = project.log.asBuilt;
  if (!log || log.readings.length === 0) return undefined;
  const nets = networksOf(log.readings, layout);
  const [plan, height] = [snoop(nets.plan), snoop(nets.height)];
  const readings = nets.readings.map((r) => judged(r, r.net === 'plan' ? plan : height));
  const worded = new Map(nets.readings.map((r) => [r.id, r.words]));
  const bad = [plan, height].flatMap((s) =>
    (s?.suspects ?? []).map((x): BadReading => {
      const r = readings.find((q) => q.path === x.id)!;
      return {
        path: x.id,
        words: r.words,
        normalized: x.normalized,
        expected: r.value + x.error,
        alike: x.alike.map((id) => worded.get(id)!),
      };
    }),
  );
  const points = layout.points
    .filter((p) => p.role === 'footing')
    .map((p): MeasuredPoint => {
      const inPlan = plan?.after.points.find((q) => q.name === p.name);
      const inHeight = height?.after.points.find((q) => q.name === p.name);
      return {
        name: p.name,
        designed: { along: p.along, out: p.out, level: p.level },
        plan: inPlan && {
          along: inPlan.at[0]!,
          out: inPlan.at[1]!,
          sigmaAlong: inPlan.sigma[0]!,
          sigmaOut: inPlan.sigma[1]!,
        },
        height: inHeight && { level: inHeight.at[0]!, sigma: inHeight.sigma[0]! },
      };
    });
  const loose = points.filter((p) => !p.plan).map((p) => p.name);
  return { readings, bad, plan, height, points, loose, issues: nets.issues };
}
