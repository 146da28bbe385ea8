/** Shear, moment and sag along a member: the envelope of all allowable-stress combinations, with the extremes named. */
import type { MemberEffects } from '../../analysis/model.js';
import type { Vec2 } from '../../base/vec.js';
import type { Combination } from '../../loads/model.js';
import { markList } from '../../report/path/table.js';
import type { Member } from '../../structure/model.js';
import { type Block, pencil } from '../annotate/index.js';
import type { Primitive } from '../ir/index.js';
import type { SheetContext } from './contract.js';

type Pick = 'v' | 'm' | 'sag';

interface Band {
  readonly upper: Float64Array;
  readonly lower: Float64Array;
  /** Extreme of largest size: value, station, combination. */
  readonly value: number;
  readonly station: number;
  readonly combination: string;
}

/** Greatest and least value at each station. */
function bandOf(e: MemberEffects, combinations: readonly Combination[], pick: Pick): Band {
  const n = e.stations.length;
  const upper = new Float64Array(n);
  const lower = new Float64Array(n);
  let value = 0;
  let station = 0;
  let combination = '';
  for (const c of combinations) {
    for (let i = 0; i < n; i++) {
      let sum = 0;
      for (const t of c.terms) sum += t.factor * e[pick][t.case]![i]!;
      if (sum > upper[i]!) upper[i] = sum;
      if (sum < lower[i]!) lower[i] = sum;
      if (Math.abs(sum) > Math.abs(value)) [value, station, combination] = [sum, i, c.id];
    }
  }
  return { upper, lower, value, station, combination };
}

const figure = (x: number): string => Math.round(x).toLocaleString('en-US');

const CURVES: readonly { readonly pick: Pick; readonly name: string; readonly text: (v: number) => string }[] = [
  { pick: 'v', name: 'Shear V', text: (v) => `${figure(v)} lb` },
  { pick: 'm', name: 'Moment M', text: (v) => `${figure(v / 12)} lb·ft` },
  { pick: 'sag', name: 'Sag', text: (v) => `${v.toFixed(3)} in` },
];

/** One curve: axis, filled band, its extreme as a dot with value and combination beside the name. */
function curve(
  e: MemberEffects,
  band: Band,
  name: string,
  text: string,
  at: Vec2,
  w: number,
  h: number,
  note: number,
): Primitive[] {
  const p = pencil('S-DETL', 'symbol');
  const length = e.stations.at(-1)! || 1;
  const most = Math.max(1e-9, ...band.upper, ...[...band.lower].map((v) => -v));
  const top = Math.max(0, ...band.upper) / most;
  const bottom = Math.max(0, ...[...band.lower].map((v) => -v)) / most;
  const unit = h / Math.max(1e-9, top + bottom);
  const axis = at.y - top * unit;
  const x = (i: number): number => at.x + (w * e.stations[i]!) / length;
  const line = (values: Float64Array): [number, number][] =>
    Array.from(values, (v, i) => [x(i), axis + (v / most) * unit] as [number, number]);
  const upper = line(band.upper);
  const lower = line(band.lower).reverse();
  const dot = { x: x(band.station), y: axis + (band.value / most) * unit };
  return [
    {
      kind: 'hatch',
      layer: 'S-DETL-PATT',
      pattern: 'generic',
      loops: [[...upper, ...lower].map(([px, py]) => ({ x: px, y: py }))],
    },
    p.path(upper, 'new'),
    p.path([...lower].reverse(), 'new'),
    p.line(at.x, axis, at.x + w, axis, 'symbol'),
    p.circle(dot.x, dot.y, 0.35 * note, undefined, 'ink'),
    p.text(at.x, at.y + 0.7 * note, `${name}: ${text}, ${band.combination}`, note, { face: 'condensed' }),
  ];
}

/** Supports under the axis: small triangles where spans meet. */
function supports(e: MemberEffects, at: Vec2, w: number, note: number): Primitive[] {
  const p = pencil('S-DETL', 'symbol');
  const length = e.stations.at(-1)! || 1;
  const places = new Set<number>();
  for (const s of e.spans) {
    if (s.kind !== 'span') continue;
    places.add(s.from);
    places.add(s.to);
  }
  return [...places].map((s) => {
    const x = at.x + (w * s) / length;
    return p.shape(
      [
        [x, at.y],
        [x - 0.7 * note, at.y - 1.2 * note],
        [x + 0.7 * note, at.y - 1.2 * note],
      ],
      'symbol',
      'paper',
    );
  });
}

interface Lined {
  readonly member: Member;
  readonly effects: MemberEffects;
  readonly bands: readonly Band[];
}

function diagram(ctx: SheetContext, { member, effects, bands }: Lined): Block {
  const { note } = ctx.style;
  const strip = 6 * note;
  const gap = 3.2 * note;
  return {
    kind: 'drawing',
    height: 3.4 * note + CURVES.length * (strip + gap),
    draw: (at, width) => {
      const w = width - 2 * note;
      const x = at.x + note;
      const p = pencil('S-DETL', 'cut');
      let y = at.y - note;
      const out: Primitive[] = [p.line(x, y, x + w, y, 'profile'), ...supports(effects, { x, y }, w, note)];
      y -= 1.6 * note;
      CURVES.forEach((c, i) => {
        y -= gap;
        out.push(...curve(effects, bands[i]!, c.name, c.text(bands[i]!.value), { x, y }, w, strip, note));
        y -= strip;
      });
      return out.map((q) => ({ ...q, mark: member.mark }));
    },
  };
}

/** Parts with the same section and the same extremes are drawn once. */
const likeness = ({ member, bands }: Lined): string =>
  [
    member.section.label,
    member.length.toFixed(2),
    ...bands.map((b) => `${b.value.toPrecision(4)}@${b.station}`),
  ].join();

/** Diagrams of beams and rafters. */
export function diagramBlocks(ctx: SheetContext): Block[] {
  const { structure, effects, loads } = ctx.input;
  const groups = new Map<string, Lined[]>();
  for (const member of structure.members) {
    const e = effects.members.get(member.id);
    if (!e || (member.role !== 'beam' && member.role !== 'rafter')) continue;
    const lined = { member, effects: e, bands: CURVES.map((c) => bandOf(e, loads.combinations, c.pick)) };
    const key = likeness(lined);
    const known = groups.get(key);
    if (known) known.push(lined);
    else groups.set(key, [lined]);
  }
  // Of equal rafters with unlike loads the one bent most stands for its mark.
  const worst = new Map<string, Lined[]>();
  for (const group of groups.values()) {
    const { member } = group[0]!;
    const key = member.role === 'beam' ? group.map((g) => g.member.id).join() : member.mark;
    const known = worst.get(key);
    if (!known || Math.abs(group[0]!.bands[1]!.value) > Math.abs(known[0]!.bands[1]!.value)) worst.set(key, group);
  }
  return [...worst.values()].flatMap((group): Block[] => {
    const { member } = group[0]!;
    const who = member.role === 'beam' ? markList(group.map((g) => g.member.id)) : `${member.mark}, the one bent most`;
    return [
      { kind: 'heading', text: `${who}: ${member.section.label}, envelope of all combinations` },
      diagram(ctx, group[0]!),
    ];
  });
}
