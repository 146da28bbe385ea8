/** Tables and notes of the floor plan: what the checks of rooms, doors and edges found. */
import { area } from '../../../base/plane.js';
import { formatArea, formatNumber, formatSlope } from '../../../base/quantity/index.js';
import type { CheckResult } from '../../../checks/contract.js';
import { type Placed, underCover } from '../../../checks/rooms/facts.js';
import { isDoor } from '../../../checks/rooms/landing.js';
import type { Opening } from '../../../project/model.js';
import { heightAt } from '../../../structure/ground.js';
import type { Block, TableRow } from '../../annotate/index.js';
import type { SheetContext } from '../contract.js';
import { meetsHouse } from '../details/slab-edge.js';

const KIND: Readonly<Record<Opening['kind'], string>> = {
  window: 'window',
  door: 'door',
  'sliding-door': 'sliding door',
  'french-door': 'pair of doors',
  vent: 'vent',
  'garage-door': 'garage door',
};

const WORDS: Readonly<Record<CheckResult['status'], string>> = {
  pass: 'meets',
  fail: 'DOES NOT MEET',
  'not-applicable': 'does not arise',
  'not-evaluated': 'OPEN',
  'outside-scope': 'licensed professional',
};

const found = (ctx: SheetContext, check: string, subject: string): CheckResult | undefined =>
  ctx.input.results.find((r) => r.check === check && r.subject === subject);

const squareFeet = (v: number): string => `${formatNumber(v, 1)}`;

/** Light and air of the rooms stated, as the checks weighed them; rooms without an opening under the cover keep what they have. */
function roomRows(ctx: SheetContext): TableRow[] {
  return ctx.input.project.house.rooms.map((r) => {
    const light = found(ctx, 'room-light', r.name);
    const air = found(ctx, 'room-air', r.name);
    const pair = (c: CheckResult | undefined): string =>
      c && (c.status === 'pass' || c.status === 'fail') ? `${squareFeet(c.demand)} / ${squareFeet(c.capacity)}` : '–';
    const worst = [light, air].find((c) => c && c.status !== 'pass') ?? light;
    return [
      { text: r.name, path: r.path },
      r.use,
      formatArea(area(r.outline), ctx.input.project.job.units),
      pair(light),
      pair(air),
      worst ? WORDS[worst.status] : 'not under it',
    ];
  });
}

function openingRows(ctx: SheetContext, shown: readonly Placed[]): TableRow[] {
  const { len } = ctx;
  const under = new Set(underCover(ctx.input.structure).map((p) => p.opening.mark));
  return shown.map(({ opening: o }) => [
    { text: o.mark, path: o.path },
    `${KIND[o.kind]}${o.escape ? ', escape' : ''}`,
    `${len(o.width)} x ${len(o.head - o.sill)}`,
    isDoor(o) ? '–' : len(o.sill),
    o.room || '–',
    under.has(o.mark) ? 'yes' : 'no',
  ]);
}

function equipmentRows(ctx: SheetContext): TableRow[] {
  const { len } = ctx;
  return ctx.input.project.house.equipment.map((e) => {
    const r = found(ctx, 'equipment-clearance', e.label);
    return [
      { text: e.label, path: e.path },
      len(e.height),
      { text: len(e.clearance.value), path: e.clearance.path },
      r && r.status === 'pass' ? len(Math.floor(r.capacity)) : '–',
      e.clearance.state === 'given' ? e.clearance.from || 'source not stated' : 'ASK THE OFFICE',
    ];
  });
}

/** Sentences of the checks, each once. */
function findings(ctx: SheetContext): string[] {
  const { results } = ctx.input;
  const of = (check: string): readonly CheckResult[] =>
    results.filter((r) => r.check === check && r.subject !== 'house');
  const notes: string[] = [];
  for (const r of of('door-landing'))
    notes.push(
      r.status === 'pass'
        ? `Door ${r.subject}: landing on ${r.note}, ${ctx.len(r.demand)} below the threshold, 7 ¾" at most (${r.clause}).`
        : r.note,
    );
  for (const r of of('escape-path'))
    notes.push(
      r.status === 'pass'
        ? `Escape opening ${r.subject}: ${r.note}; least clear height ${ctx.len(Math.floor(r.capacity))}, 36" needed (${r.clause}).`
        : r.note,
    );
  for (const r of of('guard'))
    notes.push(
      r.status === 'pass'
        ? `Edge of ${r.subject}: at most ${ctx.len(Math.ceil(r.demand * 4) / 4)} above the ground within 36" of it; a guard is needed over 30" (${r.clause}).`
        : r.note,
    );
  for (const check of ['room-light', 'room-air']) {
    const counted = of(check).filter((r) => r.status === 'pass' && r.note !== '');
    const reason = counted[0]?.note.replace(/^.*? under the cover: /, '');
    if (reason) notes.push(`${check === 'room-light' ? 'Glass' : 'Openings'} under the cover: ${reason}.`);
    notes.push(
      ...of(check)
        .filter((r) => r.status === 'fail' || r.status === 'not-evaluated')
        .map((r) => r.note),
    );
  }
  return [...new Set(notes.filter((n) => n !== ''))];
}

function slabNotes(ctx: SheetContext): string[] {
  const { len } = ctx;
  return ctx.input.structure.slabs
    .filter((s) => s.state !== 'removed')
    .map((s) => {
      const near = s.outline.reduce((p, q) => (q.y < p.y ? q : p));
      const top = heightAt(s.top, near);
      const where = meetsHouse(s) ? 'at the house' : `at its near edge, ${len(near.y)} out from the house line`;
      return `Slab ${s.mark}, ${s.state}, ${len(s.thickness)}: top ${len(Math.abs(top))} ${top < 0 ? 'below' : 'above'} the finished floor ${where}, falls ${formatSlope(-s.top.gy)} away from it.`;
    });
}

export function floorBlocks(ctx: SheetContext, shown: readonly Placed[]): Block[] {
  const { house } = ctx.input.project;
  const h = ctx.style.note;
  return [
    {
      kind: 'table',
      whole: true,
      title: 'Openings',
      columns: [
        { head: 'Mark' },
        { head: 'What', max: 13 * h },
        { head: 'Size' },
        { head: 'Sill' },
        { head: 'Room' },
        { head: 'Under cover', grow: true },
      ],
      rows: openingRows(ctx, shown),
    },
    {
      kind: 'table',
      whole: true,
      title: 'Light and air of rooms behind, sq ft needed / given',
      columns: [
        { head: 'Room' },
        { head: 'Use' },
        { head: 'Floor', align: 'right' },
        { head: 'Glass 8 %', align: 'right' },
        { head: 'Opens 4 %', align: 'right' },
        { head: 'Result', grow: true },
      ],
      rows: roomRows(ctx),
    },
    ...(house.rooms.length === 0
      ? [
          {
            kind: 'para' as const,
            text: 'No room behind the cover is stated: its light, air and way out were not judged. An office may ask (IRC R303.1, R310.1).',
          },
        ]
      : []),
    {
      kind: 'table',
      whole: true,
      title: 'Vents, meters and intakes on the wall',
      columns: [
        { head: 'What' },
        { head: 'Height' },
        { head: 'Clear of new work' },
        { head: 'Is' },
        { head: 'By', grow: true },
      ],
      rows: equipmentRows(ctx),
    },
    { kind: 'heading', text: 'Notes' },
    {
      kind: 'numbered',
      items: [
        'Walls, openings and rooms shown are existing and stay as they are unless the existing and demolition plan says otherwise.',
        ...slabNotes(ctx),
        ...findings(ctx),
        'Landings are at least as wide as their door and 36" deep and fall no more than 1/4 in 12 (IRC R311.3).',
        house.equipment.length > 0
          ? 'No flue, vent or intake may end under the roof unless its maker and the office allow it; what would is led out by its own trade before the roof is closed.'
          : 'Look along the wall for flues, vents, meters and intakes before work: none is entered. What would end under the roof is led out by its own trade.',
        'Dimensions are to post centers, jambs, and the face of the existing wall line.',
      ],
    },
  ];
}
