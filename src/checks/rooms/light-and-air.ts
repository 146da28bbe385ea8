/**
 * Daylight and air of the habitable rooms behind the cover. A roof before a window does not take its glass away where the porch
 * is open enough (IRC R303.9); a window may open into a cover without walls (R303.1, exception 3).
 */
import { area } from '../../base/plane.js';
import type { Recorder } from '../../base/trace.js';
import { SQUARE_INCHES_PER_SQUARE_FOOT } from '../../base/units.js';
import type { Opening, Room } from '../../project/model.js';
import { PORCH_CEILING, PORCH_OPEN_SIDE, requiredGlass, requiredOpening } from '../codes/irc-2018/index.js';
import type { Check, CheckContext, Subject } from '../contract.js';
import { measured, notApplicable, notEvaluated } from '../finding.js';
import { ceilingHeight, habitable, openSide, roofsOver, roomsBehind, underCover } from './facts.js';

const squareFeet = (squareInches: number): number => squareInches / SQUARE_INCHES_PER_SQUARE_FOOT;

const subjects = (ctx: CheckContext): readonly Subject[] => {
  const { rooms, unknown } = roomsBehind(ctx);
  const all = [
    ...rooms.map((r) => ({ id: r.name, path: r.path })),
    ...unknown.map((name) => ({ id: name, path: '/house/rooms' })),
  ];
  return all.length > 0 ? all : [{ id: 'house', path: '/house/openings' }];
};

/** Whether the roofs before an opening leave its glass counting, with the numbers. */
function porch(ctx: CheckContext, opening: Opening): { readonly counts: boolean; readonly words: string } {
  const placed = underCover(ctx.structure).find((p) => p.opening === opening);
  if (!placed) return { counts: true, words: '' };
  const side = Math.min(...roofsOver(ctx.structure, placed).map((r) => openSide(ctx.structure, r).share));
  const ceiling = ceilingHeight(ctx.structure) ?? 0;
  return {
    counts: side >= PORCH_OPEN_SIDE && ceiling >= PORCH_CEILING,
    words: `longer side ${(100 * side).toFixed(0)} % open, ceiling ${ceiling.toFixed(0)} in at its lowest`,
  };
}

interface Quality {
  readonly id: string;
  readonly title: string;
  readonly clause: string;
  readonly what: string;
  readonly share: (o: Opening) => number | undefined;
  readonly required: (floor: number, rec?: Recorder) => number;
  readonly counts: (ctx: CheckContext, o: Opening) => { readonly counts: boolean; readonly words: string };
  readonly allowed: string;
  readonly cure: string;
}

const answer = (q: Quality): Check => ({
  id: q.id,
  title: q.title,
  subjects,
  run(subject, ctx, rec) {
    const room: Room | undefined = ctx.project.house.rooms.find((r) => r.name === subject.id);
    if (subject.id === 'house') return notApplicable(q.clause, 'no opening of a named room lies under the cover');
    if (!room)
      return notEvaluated(
        q.clause,
        `The ${subject.id} behind the cover is not entered under house/rooms: give its use and floor.`,
      );
    if (!habitable(room)) return notApplicable(q.clause, `the ${room.name} is no habitable room`);
    const floor = squareFeet(area(room.outline));
    const required = q.required(floor, rec);
    const own = ctx.project.house.openings.filter((o) => o.room === room.name);
    const silent = own.filter((o) => q.share(o) === undefined);
    const roofed = own.filter((o) => underCover(ctx.structure).some((p) => p.opening === o));
    const lost = own.filter((o) => !q.counts(ctx, o).counts);
    let sum = 0;
    for (const o of own) {
      const share = q.share(o);
      if (share === undefined || lost.includes(o)) continue;
      const size = squareFeet(o.width * (o.head - o.sill)) * share;
      sum += size;
      rec?.step({
        symbol: o.mark,
        meaning: `${q.what} of ${o.mark}${roofed.includes(o) ? `, under the cover: ${q.counts(ctx, o).words || q.allowed}` : ''}`,
        formula: 'width · height · share',
        substituted: `${squareFeet(o.width * (o.head - o.sill)).toFixed(1)} · ${share.toFixed(2)}`,
        value: size,
        unit: 'sq ft',
        clause: q.clause,
        from: [o.path],
      });
    }
    if (sum < required && silent.length > 0)
      return notEvaluated(q.clause, `Give ${q.what} of ${silent.map((o) => o.mark).join(', ')} in the ${room.name}.`);
    const away =
      lost.length > 0
        ? ` ${lost.map((o) => `${o.mark} does not count under the cover (${q.counts(ctx, o).words})`).join('; ')}.`
        : '';
    return measured(
      {
        demand: required,
        capacity: sum,
        unit: 'sq ft',
        clause: q.clause,
        formula: 'required / given',
        prescriptive: true,
        note: roofed.length > 0 ? `${roofed.map((o) => o.mark).join(', ')} under the cover: ${q.allowed}` : '',
        remedy: `The ${room.name} of ${floor.toFixed(0)} sq ft needs ${required.toFixed(1)} sq ft of ${q.what}; ${sum.toFixed(1)} is there.${away} ${q.cure}`,
      },
      rec,
    );
  },
});

export const roomLight = answer({
  id: 'room-light',
  title: 'Daylight of rooms behind the cover',
  clause: 'IRC 2018 R303.1, R303.9',
  what: 'glass',
  share: (o) => o.glass,
  required: requiredGlass,
  counts: porch,
  allowed:
    'counted, as before a roofed porch whose longer side is at least 65 % open and whose ceiling is at least 7 ft high (R303.9)',
  cure: 'Raise or open the cover, add glass elsewhere, or ask the office about artificial light with whole-house ventilation (R303.1, exceptions 1 and 2).',
});

export const roomAir = answer({
  id: 'room-air',
  title: 'Ventilation of rooms behind the cover',
  clause: 'IRC 2018 R303.1',
  what: 'opening to the outdoors',
  share: (o) => o.opens,
  required: requiredOpening,
  counts: () => ({ counts: true, words: '' }),
  allowed: 'counted: the cover has no walls, so more than 40 % of its sides are open (R303.1, exception 3)',
  cure: 'Add openable area, or ask the office about whole-house ventilation (R303.1, exception 1).',
});
