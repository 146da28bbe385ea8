/** A ledger on the house: where every fastener goes, seen square to the wall. */

import { shankText } from '../../../checks/house/calculated.js';
import { factsAt } from '../../../checks/house/facts.js';
import { type HousePlace, housePlaces, needsText } from '../../../checks/house/places.js';
import type { Primitive, Rect } from '../../ir/index.js';
import { see } from '../../views/camera.js';
import type { SheetContext } from '../contract.js';
import { endsText } from '../house-pictures.js';
import { briefly, needText } from '../joint-text.js';
import { dims } from '../parts.js';
import type { Detail } from './contract.js';
import { broken, dot, facing, nearPicture, part, rect, spot } from './picture.js';

/** Fastener places shown from the end. */
const SHOWN = 4;

function detailOf(ctx: SheetContext, place: HousePlace): Detail | undefined {
  const { structure } = ctx.input;
  const { len } = ctx;
  const { member, wall } = place;
  const f = place.ledger?.fastening;
  if (!f) return undefined;
  const camera = facing({ x: -wall.out.y, y: wall.out.x });
  const a = Math.min(see(camera, member.start).a, see(camera, member.end).a);
  const b = Math.max(see(camera, member.start).a, see(camera, member.end).a);
  const c = spot(camera, member.start);
  const top = c.y + member.section.depth / 2;
  const low = top - member.section.depth;
  const at = place.joints.map((j) => spot(camera, j.at).x).sort((p, q) => p - q);
  const shown = at.slice(0, SHOWN);
  const spacing = at.length > 1 ? at[1]! - at[0]! : f.spacing;
  const right = Math.min(b, (shown.at(-1) ?? a) + spacing * 0.6);
  const band = f.into === 'band' && f.framing.bottom !== undefined && f.framing.top !== undefined;
  const [z0, z1] = [Math.min(low, band ? f.framing.bottom! : low) - 2, Math.max(top, band ? f.framing.top! : top) + 2];
  const frame: Rect = { x: a - 5, y: z0, w: right - a + 5, h: z1 - z0 };
  const depth = see(camera, member.start).depth;
  const hangs = structure.joints.filter((j) => j.kind === 'rafter-to-ledger' && j.ties.at(-1)?.part === member.id);
  const rafter = structure.members.find((m) => m.id === hangs[0]?.ties[0]?.part);
  const seats = hangs.map((j) => spot(camera, j.at).x).filter((x) => x < right);
  const half = (rafter?.section.width ?? 1.5) / 2;
  const items: Primitive[] = [
    ...nearPicture(ctx, { camera, frame, depth: [depth - 3, depth + 3], keep: (p) => p.part === member.id }),
    ...(band ? part(rect(frame.x, f.framing.bottom!, right, f.framing.top!), 'hidden') : []),
    ...seats.map(
      (x): Primitive => ({
        kind: 'polyline',
        layer: 'S-JNTS',
        pen: 'hidden',
        closed: true,
        points: rect(x - half, top - (rafter?.section.depth ?? 8) * 1.05, x + half, top),
        mark: hangs[0]!.mark,
      }),
    ),
    ...shown.flatMap((x) => f.rows.map((r) => dot({ x, y: top - r }, Math.max(f.washer / 2, 0.3), 'fastener'))),
  ];
  const mark = place.joints[0]?.mark ?? member.mark;
  const what = f.kind === 'bolt' ? 'through bolts' : f.kind === 'lag' ? 'lag screws' : 'wood screws';
  const verified = factsAt(ctx.input, place).filter((x) => x.takes !== '');
  return {
    id: `ledger ${member.mark}`,
    title: `Fasteners of ledger ${member.mark}`,
    views: [
      {
        frame,
        items,
        margin: { left: 5.5, right: 2, above: 1, below: 7 },
        over: (scale) => {
          const common = { scale, layer: 'S-ANNO-DIMS', first: 3.4 * ctx.style.note } as const;
          return [
            ...dims(ctx, { ...common, side: 'below', datum: frame.y, tiers: [{ stations: [a, ...shown] }] }).items,
            ...dims(ctx, {
              ...common,
              side: 'left',
              datum: frame.x,
              tiers: [{ stations: [low, ...f.rows.map((r) => top - r), top] }],
            }).items,
            ...(right < b ? broken(ctx, { x: right, y: frame.y }, { x: right, y: frame.y + frame.h }) : []),
          ];
        },
        keys: [
          {
            at: { x: shown[1] ?? shown[0] ?? a, y: top - f.rows[0]! },
            text: `${mark}: ${f.rows.length} ${what} ${shankText(f, len)} x ${len(f.length)} at each of ${at.length} places, washers ${len(f.washer)}; rows ${f.rows.map((r) => len(r)).join(', ')} below the top; spaces of ${len(spacing)}${endsText(ctx, place)}.`,
            mark,
            off: { x: 3, y: 4 },
          },
          {
            at: { x: a + 1.5, y: low + 1 },
            text: `${member.mark}: ${member.section.label}, ${member.section.treatment.replace('-', ' ')} treated, ${len(member.length)} long, top at ${len(top)} from the floor.`,
            mark: member.mark,
            off: { x: -3, y: -3 },
          },
          ...(rafter && seats[0] !== undefined
            ? [
                {
                  at: { x: seats.at(-1)!, y: top - rafter.section.depth * 0.5 },
                  text: `${hangs[0]!.mark}, ${hangs.length} places, ${needText(ctx, hangs[0]!.mark)}: ${briefly(ctx, hangs[0]!.mark)}. Dashed: ${rafter.mark}. No fastener of the ledger behind a hanger: shift it a washer’s width and keep the count.`,
                  mark: hangs[0]!.mark,
                  off: { x: 3, y: 4 },
                },
              ]
            : []),
          {
            at: { x: frame.x + 2, y: band ? f.framing.top! - 0.5 : top },
            text: band
              ? `Floor band behind, dashed: ${f.framing.species}, ${len(f.framing.depth)} thick; takes ${needsText(place.needs)} at each place.`
              : `${place.house.build.studSize} studs at ${len(place.house.build.studSpacing)} behind: one behind every place; takes ${needsText(place.needs)} at each.`,
            off: { x: 2, y: 3 },
          },
        ],
      },
    ],
    words: [
      ...verified.map((x) => `${x.what}: ${x.state === 'verified' ? 'verified' : 'TO VERIFY'}, ${x.note}.`),
      'Never to brick or stone veneer, a fascia, a cantilevered floor or a bay. Drill a pilot hole and look: stop where the bit meets no wood.',
      'Shore the ledger level until its last fastener is in; do not stand under it.',
    ],
    scales: ['1-1/2', '1', '3/4', '1/2'],
    call: {
      at: {
        x: member.start.x + 0.3 * (member.end.x - member.start.x),
        y: member.start.y + 0.3 * (member.end.y - member.start.y),
        z: member.start.z,
      },
      radius: 12,
    },
  };
}

export const ledgerDetails = (ctx: SheetContext): readonly Detail[] =>
  housePlaces(ctx.input).flatMap((p) => (p.kind === 'ledger' ? (detailOf(ctx, p) ?? []) : []));
