/** Ordered beside sealed, line by line, and whether they agree: reactions by the same rows as the check of the papers. */
import { formatForce } from '../../base/quantity/index.js';
import { type ReactionPair, reactionPairs } from '../../checks/trusses/reactions.js';
import type { TrussPaper } from '../../project/model.js';
import type { TrussOrder } from '../../report/truss-order.js';
import type { TableRow } from '../annotate/index.js';
import type { SheetContext } from './contract.js';

const pitch = (radians: number): string => `${Number((12 * Math.tan(radians)).toFixed(2))}/12`;
const ABSENT = 'not on the sealed sheet';
const AGREES = 'agrees';
/** Values that print alike to this share of an inch or of a twelfth are one. */
const SAME = 1 / 16;

export function comparedRows(ctx: SheetContext, o: TrussOrder, p: TrussPaper | undefined): TableRow[] {
  const { len, input } = ctx;
  const u = input.project.job.units;
  // A demand is rounded up, what a sheet prints is left as it is.
  const lb = (x: number): string => (x > 0 ? formatForce(Math.ceil(x - 1e-6), u, 0) : 'none');
  const t = o.shape;
  /** The answer of a row; nothing is answered before there is a sheet. */
  const answer = (gaps: readonly (number | undefined)[], print: (gap: number) => string): string => {
    if (!p) return '';
    const off = gaps.find((g) => g === undefined || Math.abs(g) > SAME);
    if (gaps.some((g) => g === undefined)) return ABSENT;
    return off === undefined ? AGREES : `differs by ${print(Math.abs(off))}`;
  };
  const twelfths = (a: number, b: number): number => 12 * (Math.tan(a) - Math.tan(b));
  const slope = (gap: number): string => `${Number(gap.toFixed(2))} in 12`;
  const absent = p ? ABSENT : '';
  const said = (text: string | undefined): string => (p && text ? 'stated' : absent);
  const pairs = p ? reactionPairs(input, o.mark, p) : [];
  const reaction = (name: string, way: ReactionPair['way'], ours: number): TableRow[] => {
    const rows = pairs.filter((r) => r.way === way);
    if (ours <= 0 && rows.every((r) => r.sealed === undefined)) return [];
    if (rows.length === 0) return [[name, lb(ours), '', '']];
    return rows.map((r) => [
      `${name}, ${r.bearing} bearing`,
      lb(r.ours),
      r.sealed === undefined ? '' : formatForce(r.sealed, u, 0),
      r.sealed === undefined
        ? ABSENT
        : r.agreement === 'agrees'
          ? AGREES
          : r.agreement === 'short'
            ? `SHORT by ${lb(r.ours - r.sealed)}`
            : `differs by ${formatForce(r.sealed - Math.ceil(r.ours - 1e-6), u, 0)}, covers ours`,
    ]);
  };
  const blank = (v: string | undefined): string => v ?? '';
  return [
    [
      'Count, spacing',
      `${o.count} at ${len(o.spacing)}`,
      p ? `at ${len(p.spacing)}` : '',
      answer([p && p.spacing - o.spacing], len),
    ],
    ['Span, out to out of bearings', len(t.span), blank(p && len(p.span)), answer([p && p.span - t.span], len)],
    [
      'Pitch, top and bottom',
      `${pitch(t.topPitch)}, ${pitch(t.bottomPitch)}`,
      blank(p && `${pitch(p.pitch)}, ${pitch(p.bottomPitch)}`),
      answer([p && twelfths(p.pitch, t.topPitch), p && twelfths(p.bottomPitch, t.bottomPitch)], slope),
    ],
    [
      'Heel; overhang',
      `${len(t.heel)}; ${t.overhang.map((x) => len(x)).join(' and ')}`,
      blank(p && `${len(p.heel)}; ${len(p.overhang)}`),
      answer([p && p.heel - t.heel, p && p.overhang - Math.max(...t.overhang)], len),
    ],
    [
      'Bearing width',
      len(t.bearing),
      blank(p && `${len(p.bearingWidth)} or wider`),
      answer([p && Math.max(0, p.bearingWidth - t.bearing)], len),
    ],
    [
      'Top chord loads',
      `live ${o.live.toFixed(0)}, snow ${o.snow.toFixed(0)}, dead ${o.topDead.toFixed(1)} psf`,
      '',
      p ? 'compare on the sheet' : '',
    ],
    ['Bottom chord dead', `${o.bottomDead.toFixed(1)} psf`, '', p ? 'compare on the sheet' : ''],
    ['Wind', `${o.wind.speed} mph, exposure ${o.wind.exposure}, open below`, '', p ? 'compare on the sheet' : ''],
    ...reaction('Down', 'down', o.down),
    ...reaction('Uplift', 'up', o.up),
    ...(o.chordForce > 0
      ? [
          [
            'Side load along top chord',
            lb(o.chordForce),
            p && p.chordForce > 0 ? formatForce(p.chordForce, u, 0) : '',
            !p || p.chordForce <= 0
              ? absent
              : p.chordForce < o.chordForce - 0.5
                ? `SHORT by ${lb(o.chordForce - p.chordForce)}`
                : p.chordForce - o.chordForce > 0.5
                  ? `differs by ${formatForce(p.chordForce - Math.ceil(o.chordForce - 1e-6), u, 0)}, covers ours`
                  : AGREES,
          ],
        ]
      : []),
    ...reaction('Push outward', 'outward', o.thrust),
    ['Bracing asked', 'all of it stated', blank(p?.bracing), said(p?.bracing)],
    ['Deflection', 'within the limits of the set', blank(p?.deflection), said(p?.deflection)],
    [
      'Sheet; sealed by',
      '',
      p ? `${p.from}; ${p.sealedBy || 'not sealed'}` : '',
      p ? (p.sealedBy ? 'sealed' : 'NOT sealed') : '',
    ],
  ];
}
