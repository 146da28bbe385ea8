/** The cover's geometry agrees with itself: posts under beams, splices over posts, roofs over bearings. */
import type { Issue } from '../../base/issue.js';
import { formatLength } from '../../base/quantity/index.js';
import { fault } from '../issues.js';
import type { WrittenCover } from '../schema/cover.js';
import type { WrittenHouse } from '../schema/house.js';
import { endIssues, fasteningIssues, heldByHouse, INTO_WALL } from './attachment.js';
import { tieIssues } from './ties.js';

type Beam = WrittenCover['beams'][number];
type Roof = WrittenCover['roofs'][number];
type Gable = Extract<Roof, { kind: 'gable' }>;
type Shed = Extract<Roof, { kind: 'shed' }>;

/** What a tape measure cannot tell apart, inches. */
const SLACK = 1 / 16;
const SHORTEST_BEAM = 12;
const inches = (v: number): string => formatLength(v);

function beamIssues(b: Beam, path: readonly (string | number)[]): Issue[] {
  const length = Math.hypot(b.to.x - b.from.x, b.to.y - b.from.y);
  if (length < SHORTEST_BEAM) {
    return [
      fault(
        'out-of-range',
        [...path, 'to'],
        `beam ${b.mark} is ${inches(length)} long`,
        `at least ${inches(SHORTEST_BEAM)}`,
      ),
    ];
  }
  const issues: Issue[] = endIssues(b, path);
  const shared = b.shared ?? [];
  shared.forEach((s, i) => {
    if (s.at <= length + SLACK) return;
    const message = `post ${s.post} stands past the end of beam ${b.mark}`;
    issues.push(fault('post-off-beam', [...path, 'shared', i, 'at'], message, `from 0" to ${inches(length)}`));
  });
  b.posts.forEach((p, i) => {
    const at = [...path, 'posts', i, 'at'];
    if (p.at > length + SLACK) {
      issues.push(
        fault(
          'post-off-beam',
          at,
          `post ${p.mark} stands past the end of beam ${b.mark}`,
          `from 0" to ${inches(length)}`,
        ),
      );
    }
    const before = b.posts[i - 1];
    if (before && p.at <= before.at + SLACK) {
      issues.push(
        fault(
          'posts-order',
          at,
          `post ${p.mark} does not stand past ${before.mark}`,
          `more than ${inches(before.at)}: posts in order along the beam`,
        ),
      );
    }
  });
  (b.splices ?? []).forEach((s, i) => {
    if ([...b.posts, ...shared].some((p) => Math.abs(p.at - s) <= SLACK)) return;
    const posts = b.posts.map((p) => `${inches(p.at)} (${p.mark})`).join(', ');
    issues.push(
      fault(
        'splice-off-post',
        [...path, 'splices', i],
        `this splice of ${b.mark} is not over a post`,
        `one of ${posts}`,
      ),
    );
  });
  return issues;
}

/** Least and greatest coordinate of a beam along an axis. */
const extent = (b: Beam, axis: 'x' | 'y'): readonly [number, number] => [
  Math.min(b.from[axis], b.to[axis]),
  Math.max(b.from[axis], b.to[axis]),
];
const parallel = (b: Beam, axis: 'x' | 'y'): boolean => {
  const across = axis === 'x' ? 'y' : 'x';
  return Math.abs(b.from[across] - b.to[across]) <= SLACK;
};

function framesOver(
  r: Gable | Shed,
  path: readonly (string | number)[],
  bearings: readonly (readonly [string, readonly [number, number]])[],
): Issue[] {
  if (r.from >= r.to)
    return [
      fault(
        'contradiction',
        [...path, 'to'],
        `the frames of ${r.mark} end before they begin`,
        `more than ${inches(r.from)}`,
      ),
    ];
  return bearings.flatMap(([mark, [low, high]]) => {
    const range = `within ${mark}, from ${inches(low)} to ${inches(high)}`;
    return (['from', 'to'] as const)
      .filter((key) => r[key] < low - SLACK || r[key] > high + SLACK)
      .map((key) =>
        fault('frame-off-bearing', [...path, key], `this end frame of ${r.mark} has no bearing under it`, range),
      );
  });
}

function gableIssues(r: Gable, beams: ReadonlyMap<string, Beam>, path: readonly (string | number)[]): Issue[] {
  const pair = r.beams.map((mark) => beams.get(mark));
  const [left, right] = pair;
  if (!left || !right) return [];
  if (left === right)
    return [
      fault('contradiction', [...path, 'beams'], `${r.mark} names one beam twice`, 'two beams, e.g. ["B1", "B2"]'),
    ];
  const along = r.ridge;
  const skew = [left, right].flatMap((b, i) =>
    parallel(b, along)
      ? []
      : [
          fault(
            'beams-not-parallel',
            [...path, 'beams', i],
            `beam ${b.mark} is not parallel to the ridge of ${r.mark}`,
            `a beam along ${along}`,
          ),
        ],
  );
  if (skew.length > 0) return skew;
  const issues: Issue[] = [];
  const across = along === 'x' ? 'y' : 'x';
  // Looking along +y, left is −x; looking along +x, left is +y.
  const leftward = (right.from[across] - left.from[across]) * (along === 'y' ? 1 : -1);
  if (Math.abs(leftward) < SHORTEST_BEAM) {
    issues.push(
      fault(
        'contradiction',
        [...path, 'beams'],
        `the beams of ${r.mark} lie on one line`,
        'beams on both sides of the ridge',
      ),
    );
  } else if (leftward < 0) {
    const right = `["${r.beams[1]}", "${r.beams[0]}"]`;
    issues.push(
      fault(
        'beams-order',
        [...path, 'beams'],
        `the beams of ${r.mark} are named right before left, looking along +${along}`,
        right,
      ),
    );
  }
  const [a, b] = [extent(left, along), extent(right, along)];
  const apart = heldByHouse(left) || heldByHouse(right) ? INTO_WALL : SLACK;
  if (Math.abs(a[0] - b[0]) > apart || Math.abs(a[1] - b[1]) > apart) {
    const both = `${left.mark} runs ${inches(a[0])} to ${inches(a[1])}, ${right.mark} ${inches(b[0])} to ${inches(b[1])}`;
    issues.push(
      fault(
        'beams-unequal',
        [...path, 'beams'],
        `the beams of ${r.mark} do not run over the same length: ${both}`,
        'equal extents along the ridge',
      ),
    );
  }
  issues.push(
    ...framesOver(r, path, [
      [left.mark, a],
      [right.mark, b],
    ]),
  );
  const f = r.framing;
  if (f.kind === 'scissor-truss' && f.bottomPitch >= r.pitch.angle - 1e-9) {
    issues.push(
      fault(
        'contradiction',
        [...path, 'framing', 'bottomPitch'],
        'the bottom chord is as steep as the roof or steeper',
        `less than ${r.pitch.text}, mostly half of it`,
      ),
    );
  }
  return issues;
}

function shedIssues(
  r: Shed,
  cover: WrittenCover,
  beams: ReadonlyMap<string, Beam>,
  path: readonly (string | number)[],
): Issue[] {
  const issues: Issue[] = [];
  const { ledger, beam } = r.high;
  if ((ledger === undefined) === (beam === undefined)) {
    const message =
      ledger === undefined
        ? 'the high bearing names neither a ledger nor a beam'
        : 'the high bearing names both a ledger and a beam';
    issues.push(
      fault(
        ledger === undefined ? 'missing' : 'contradiction',
        [...path, 'high'],
        message,
        '{ "ledger": "L1" } or { "beam": "B2" }',
      ),
    );
  }
  if (ledger !== undefined && r.highOverhang > SLACK) {
    issues.push(
      fault(
        'contradiction',
        [...path, 'highOverhang'],
        'a roof cannot hang over its ledger, the wall is there',
        '"0 in"',
      ),
    );
  }
  // The fall's axis and sense, and the axis across it that bearings run along.
  const fall = r.fall ?? '+y';
  const across = fall === '+y' ? 'x' : 'y';
  const along = fall === '+y' ? 'y' : 'x';
  const sense = fall === '-x' ? -1 : 1;
  const bearings: (readonly [string, readonly [number, number]])[] = [];
  const skew = (b: Beam, key: string) =>
    issues.push(
      fault(
        'beams-not-parallel',
        [...path, key],
        `beam ${b.mark} is not square to the fall of ${r.mark}`,
        `a beam along ${across}`,
      ),
    );
  const low = beams.get(r.low);
  const high = beam === undefined ? undefined : beams.get(beam);
  if (low && !parallel(low, across)) skew(low, 'low');
  else if (low) bearings.push([low.mark, extent(low, across)]);
  if (high && !parallel(high, across)) skew(high, 'high');
  else if (high) bearings.push([high.mark, extent(high, across)]);
  if (low && high && sense * (low.from[along] - high.from[along]) < SHORTEST_BEAM) {
    issues.push(
      fault(
        'contradiction',
        [...path, 'low'],
        `the roof ${r.mark} falls along ${fall}, but ${low.mark} is not beyond ${high.mark}`,
        'the low beam farther from the house',
      ),
    );
  }
  const held = cover.ledgers.find((l) => l.mark === ledger);
  if (held) bearings.push([held.mark, [held.from, held.to]]);
  return [...issues, ...framesOver(r, path, bearings)];
}

function ledgerIssues(cover: WrittenCover, house: WrittenHouse): Issue[] {
  return cover.ledgers.flatMap((l, i): Issue[] => {
    const path = ['cover', 'ledgers', i];
    const wrong = fasteningIssues(l, path);
    if (wrong.length > 0) return wrong;
    if (l.from >= l.to)
      return [
        fault(
          'contradiction',
          [...path, 'to'],
          `ledger ${l.mark} ends before it begins`,
          `more than ${inches(l.from)}`,
        ),
      ];
    const n = house.walls.findIndex((w) => w.name === l.wall);
    const wall = house.walls[n];
    if (!wall) return [];
    const { start } = wall;
    const end = house.walls[(n + 1) % house.walls.length]!.start;
    const alongX = Math.abs(start.y - end.y) <= SLACK;
    if (alongX ? start.x >= end.x : Math.abs(start.x - end.x) > SLACK) {
      return [
        fault(
          'ledger-wall-direction',
          [...path, 'wall'],
          `the wall "${l.wall}" does not face out along +y, +x or -x`,
          'a wall that faces the patio: the rear wall, or the side wall of a wing',
        ),
      ];
    }
    const axis = alongX ? 'x' : 'y';
    const [first, last] = [Math.min(start[axis], end[axis]), Math.max(start[axis], end[axis])];
    const off = (['from', 'to'] as const).filter((k) => l[k] < first - SLACK || l[k] > last + SLACK);
    const range = `within the wall, from ${inches(first)} to ${inches(last)}`;
    return off.map((k) =>
      fault('ledger-off-wall', [...path, k], `ledger ${l.mark} runs past the end of its wall`, range),
    );
  });
}

function attachmentIssues(w: WrittenCover): Issue[] {
  if (w.attachment === 'attached') return [];
  const path = ['cover', 'attachment'];
  const issues: Issue[] = [];
  if (w.ledgers.length > 0)
    issues.push(fault('contradiction', path, 'a free-standing cover has no ledger on the house', '"attached"'));
  if (w.beams.some(heldByHouse))
    issues.push(fault('contradiction', path, 'a free-standing cover has no beam end held by the house', '"attached"'));
  for (const axis of ['x', 'y'] as const) {
    if (w.lateral[axis] !== 'house') continue;
    issues.push(
      fault(
        'contradiction',
        ['cover', 'lateral', axis],
        'a free-standing cover cannot lean on the house',
        '"knee-braces" or "fixed-posts"',
      ),
    );
  }
  return issues;
}

export function coverIssues(w: WrittenCover, house: WrittenHouse | undefined): Issue[] {
  const beams = new Map(w.beams.map((b) => [b.mark, b]));
  return [
    ...w.beams.flatMap((b, i) => beamIssues(b, ['cover', 'beams', i])),
    ...w.roofs.flatMap((r, i) => {
      const path = ['cover', 'roofs', i];
      // A hip's lines are judged where it is laid out (structure/roofs/hip.ts).
      if (r.kind === 'hip') return [];
      return r.kind === 'gable' ? gableIssues(r, beams, path) : shedIssues(r, w, beams, path);
    }),
    ...(house ? ledgerIssues(w, house) : []),
    ...attachmentIssues(w),
    ...tieIssues(w, house),
  ];
}
