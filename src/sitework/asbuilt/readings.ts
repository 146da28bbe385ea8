/** Readings of the project file as a network in plan and one in height. */
import type { Issue } from '../../base/issue.js';
import type { Reading, ReadingKind } from '../../project/model.js';
import { difference, distanceBetween, type Measure, type NetReading, type Network } from '../adjust/network.js';
import { BENCHMARK, HOME, type Layout } from '../layout/index.js';
import { INSTRUMENTS } from './instruments.js';

type Net = 'plan' | 'height';

interface KindRule {
  readonly net: Net;
  /** Point measured from when the reading names none. */
  readonly from: string;
  /** Lengths have no sign: the design says which way they run. */
  measure(designed: number): Measure;
  /** Value that the design has between two places. */
  designed(a: readonly number[], b: readonly number[]): number;
  words(from: string, to: string): string;
}

const KINDS: Readonly<Record<ReadingKind, KindRule>> = {
  along: {
    net: 'plan',
    from: HOME,
    measure: (d) => difference(0, d < 0 ? -1 : 1),
    designed: (a, b) => b[0]! - a[0]!,
    words: (a, b) => `${b} along the wall from ${a}`,
  },
  out: {
    net: 'plan',
    from: HOME,
    measure: (d) => difference(1, d < 0 ? -1 : 1),
    designed: (a, b) => b[1]! - a[1]!,
    words: (a, b) => (a === HOME ? `${b} out from the wall` : `${b} out from ${a}`),
  },
  distance: {
    net: 'plan',
    from: HOME,
    measure: () => distanceBetween,
    designed: (a, b) => Math.hypot(b[0]! - a[0]!, b[1]! - a[1]!),
    words: (a, b) => `${a} to ${b}`,
  },
  level: {
    net: 'height',
    from: BENCHMARK,
    measure: () => difference(0),
    designed: (a, b) => b[0]! - a[0]!,
    words: (a, b) => `level of ${b} above ${a}`,
  },
};

export interface ReadIn {
  readonly reading: Reading;
  readonly id: string;
  readonly net: Net;
  readonly words: string;
  readonly sigma: number;
  readonly designed: number;
}

export interface Networks {
  readonly readings: readonly ReadIn[];
  readonly plan: Network;
  readonly height: Network;
  readonly issues: readonly Issue[];
}

/** Points of the stake-out that something can be measured to. */
const placesOf = (layout: Layout, net: Net): ReadonlyMap<string, readonly number[]> =>
  new Map(
    layout.points.flatMap((p): [string, readonly number[]][] => {
      if (p.role === 'board') return [];
      if (net === 'plan') return [[p.name, [p.along, p.out]]];
      return p.level === undefined ? [] : [[p.name, [p.level]]];
    }),
  );

export function networksOf(readings: readonly Reading[], layout: Layout): Networks {
  const places = { plan: placesOf(layout, 'plan'), height: placesOf(layout, 'height') };
  const built = new Set(layout.points.filter((p) => p.role === 'footing').map((p) => p.name));
  const issues: Issue[] = [];
  const read: ReadIn[] = [];
  const rows: Record<Net, (NetReading & { measure: Measure })[]> = { plan: [], height: [] };
  for (const r of readings) {
    const kind = KINDS[r.kind];
    const known = places[kind.net];
    const from = r.from ?? kind.from;
    const bad = ([from, r.to] as const).find((n) => !known.has(n));
    if (bad !== undefined || from === r.to) {
      issues.push({
        code: bad === undefined ? 'reading-to-itself' : 'reading-point-unknown',
        severity: 'error',
        path: `${r.path}/${bad === r.to ? 'to' : 'from'}`,
        message:
          bad === undefined
            ? 'This reading runs from a point to itself.'
            : 'No point of this name is on the stake-out sheet.',
        found: bad ?? r.to,
        expected: `one of ${[...known.keys()].join(', ')}`,
      });
      continue;
    }
    const designed = kind.designed(known.get(from)!, known.get(r.to)!);
    const sigma = r.sigma ?? INSTRUMENTS[r.instrument].sigma;
    read.push({
      reading: r,
      id: r.path,
      net: kind.net,
      words: kind.words(from, r.to),
      sigma,
      designed: r.kind === 'level' ? designed : Math.abs(designed),
    });
    rows[kind.net].push({ id: r.path, from, to: r.to, value: r.value, sigma, measure: kind.measure(designed) });
  }
  const network = (net: Net): Network => ({
    // The house is the datum: home base, its corner, the marks on its wall, the benchmark.
    fixed: new Map([...places[net]].filter(([name]) => !built.has(name))),
    free: new Map([...places[net]].filter(([name]) => built.has(name))),
    readings: rows[net],
  });
  return { readings: read, plan: network('plan'), height: network('height'), issues };
}
