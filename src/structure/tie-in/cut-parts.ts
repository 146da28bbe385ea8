/** Valley plates, ridge board, fill rafters and the fascia's last piece of an overlay, each with its cut lengths. */
import { LEAST_BEARING, SLACK } from '../constants.js';
import { error } from '../issues.js';
import type { BoardCut, Fill, Member, OverlayPlaced, PlateCut, Section } from '../model.js';
import { degrees, feet, inches, serial } from '../text.js';
import type { Outline, OverlayInput } from './contract.js';
import { oldAt, overlayPoint } from './frame.js';
import { fillCuts, plateSetback, runAt } from './overlay-shape.js';

type Parts = Pick<OverlayPlaced, 'members' | 'fills' | 'plates' | 'board'>;

/** Shortest run of a fill rafter, inches; nearer the end of the ridge the plates carry the sheathing. Common practice, no source. */
const SHORTEST = 8;

interface Sections {
  readonly rafter: Section;
  readonly plate: Section;
  readonly ridge: Section;
}

export function cutParts(input: OverlayInput, o: Outline): Parts | undefined {
  const { roof, kit } = input;
  const get = (key: 'rafter' | 'plate' | 'ridge'): Section | undefined =>
    kit.section(roof.meetsHouse[key], `${o.path}/${key}`);
  const [rafter, plate, ridge] = [get('rafter'), get('plate'), get('ridge')];
  if (rafter === undefined || plate === undefined || ridge === undefined) return undefined;
  const s: Sections = { rafter, plate, ridge };
  if (!deepEnough(input, o, s)) return undefined;
  const plates = plateCut(input, o, plate);
  const board = boardCut(input, o, s);
  const made = fills(input, o, s, plates);
  if (made === undefined) return undefined;
  return {
    members: [
      ...plateMembers(o, plate, plates),
      boardMember(input, o, ridge, board),
      ...made.members,
      ...fasciaMembers(input, o),
    ],
    fills: made.fills,
    plates,
    board,
  };
}

function deepEnough(input: OverlayInput, o: Outline, s: Sections): boolean {
  const plumb = s.rafter.d / Math.cos(input.roof.pitch);
  if (s.ridge.depth >= plumb - SLACK) return true;
  input.kit.issues.push(
    error(
      'ridge-board-too-shallow',
      `${o.path}/ridge`,
      'The ridge board is not as deep as the plumb end of the fill rafters (IRC 2018 R802.3, recalled).',
      { subject: o.roof, found: inches(s.ridge.depth), expected: `${inches(plumb)} or more` },
    ),
  );
  return false;
}

const common = (o: Outline): Pick<Member, 'state' | 'strips' | 'roof' | 'notch' | 'unbraced'> => ({
  state: 'new',
  strips: [],
  roof: o.roof,
  notch: 0,
  unbraced: { top: 0, bottom: 0 },
});

/** Level distance from the ridge's centre to where the plane `drop` (plumb) under the new one meets `lift` (plumb) over the old one. */
const meets = (o: Outline, x: number, drop: number, lift: number): number =>
  (o.ridge - drop - oldAt(o, x) - lift) / o.shape.slope;

/** Plumb measure of a thickness on the old slope, and on the new one. */
const onOld = (o: Outline, t: number): number => t * Math.hypot(1, o.shape.old);
const onNew = (o: Outline, t: number): number => t * Math.hypot(1, o.shape.slope);

function plateCut(input: OverlayInput, o: Outline, plate: Section): PlateCut {
  const { low, high } = plateSetback(o.shape.between, plate.b, o.sheathing);
  // Both ends are cut along the old slope's fall, at the ridge and in line with the tails: a parallelogram, each long edge as
  // long as the valley.
  const { onOld: angle } = o.shape;
  const long = o.shape.valley + plate.d / Math.tan(angle);
  return {
    mark: `VP${input.number('VP')}`,
    long,
    width: plate.d,
    thick: plate.b,
    low,
    high,
    bevel: o.shape.between,
    ridgeCut: Math.PI / 2 - angle,
  };
}

function plateMembers(o: Outline, plate: Section, cut: PlateCut): Member[] {
  return o.valleys.map((v, i): Member => {
    const off = cut.low + cut.width / 2;
    // Unit vectors on the old slope: up the valley, and from it towards the ridge line.
    const { shape } = o;
    const run = Math.hypot(1, shape.old / shape.slope, shape.old);
    const up = { x: 1 / run, y: -shape.old / shape.slope / run, z: shape.old / run };
    const fall = Math.hypot(1, shape.old);
    const normal = { x: -shape.old / fall, y: 0, z: 1 / fall };
    // normal × up points to the side where y falls.
    const in3 = {
      x: normal.y * up.z - normal.z * up.y,
      y: normal.z * up.x - normal.x * up.z,
      z: normal.x * up.y - normal.y * up.x,
    };
    const inward = in3.y < 0 ? in3 : { x: -in3.x, y: -in3.y, z: -in3.z };
    const place = (t: number) => {
      const x = o.start + up.x * t + inward.x * off + (normal.x * plate.b) / 2;
      const y = o.half + up.y * t + inward.y * off + (normal.y * plate.b) / 2;
      const z = o.eave + up.z * t + inward.z * off + (normal.z * plate.b) / 2;
      return overlayPoint(o.frame, x, y * v.sign, z);
    };
    const back = off / Math.tan(shape.onOld);
    const n = { x: o.frame.into.x * normal.x, y: o.frame.into.y * normal.x, z: normal.z };
    return {
      ...common(o),
      id: `${cut.mark}-${serial(i + 1)}`,
      mark: cut.mark,
      role: 'valley-plate',
      section: plate,
      start: place(-back),
      end: place(shape.valley - back),
      up: n,
      length: cut.long,
      cuts: [
        `flat on the old sheathing, outer edge bevelled ${degrees(cut.bevel)}`,
        `outer edge ${inches(cut.low)} inside the valley line`,
        `cut ${degrees(cut.ridgeCut)} at the ridge to meet the other, plumb in line with the tails at the foot`,
      ],
      path: `${o.path}/plate`,
    };
  });
}

function boardCut(input: OverlayInput, o: Outline, s: Sections): BoardCut {
  const top = boardTop(o, s.ridge);
  const lift = onOld(o, s.plate.b);
  const end = (z: number): number => (z - o.frame.origin.z - lift) / o.shape.old;
  const from = boardStart(input, o);
  return {
    mark: `RB${input.number('RB')}`,
    long: end(top) - from,
    short: Math.max(0, end(top - s.ridge.depth) - from),
    cut: Math.atan(o.shape.old),
  };
}

/** Its upper corners touch the underside of the new sheathing. */
const boardTop = (o: Outline, ridge: Section): number =>
  o.ridge - onNew(o, o.sheathing) - (ridge.width / 2) * o.shape.slope;

/** At the inner face of the last frame on the beams. */
const boardStart = (input: OverlayInput, o: Outline): number =>
  o.last + (input.framed.tails[0]?.[0]?.section.b ?? 0) / 2;

function boardMember(input: OverlayInput, o: Outline, ridge: Section, cut: BoardCut): Member {
  const z = boardTop(o, ridge) - ridge.depth / 2;
  const from = boardStart(input, o);
  return {
    ...common(o),
    id: cut.mark,
    mark: cut.mark,
    role: 'ridge',
    section: ridge,
    start: overlayPoint(o.frame, from, 0, z),
    end: overlayPoint(o.frame, from + cut.long, 0, z),
    up: { x: 0, y: 0, z: 1 },
    length: cut.long,
    cuts: [`end cut to the old slope, ${degrees(cut.cut)} from level, on the valley plates`],
    path: `${o.path}/ridge`,
  };
}

function fills(
  input: OverlayInput,
  o: Outline,
  s: Sections,
  plates: PlateCut,
): { members: Member[]; fills: Fill[] } | undefined {
  const { roof, number } = input;
  const { spacing } = roof.meetsHouse;
  const { rafter, ridge } = s;
  const cos = Math.cos(roof.pitch);
  const cuts = fillCuts(o.shape);
  const [drop, lift] = [onNew(o, o.sheathing), onOld(o, s.plate.b)];
  const tip = (x: number): number => meets(o, x, drop, lift);
  const first = o.last + spacing;
  if (tip(first) > o.half + SLACK) return hangs(input, o, tip(first) - o.half);
  // Along the fill rafter, level, the plate is as wide as it is across, over the cosine of its turn.
  const on = (plates.width - (plates.high - plates.low)) / Math.cos(o.shape.onOld);
  const seat = Math.min(on, rafter.d / Math.sin(roof.pitch));
  if (seat < LEAST_BEARING - SLACK) {
    input.kit.issues.push(
      error('bearing-too-short', `${o.path}/plate`, `The fill rafters bear on ${inches(seat)} of valley plate.`, {
        subject: o.roof,
        expected: '1 1/2" or more (IRC 2018 R802.6): a wider plate',
      }),
    );
    return undefined;
  }
  const members: Member[] = [];
  const out: Fill[] = [];
  for (let x = first; tip(x) >= SHORTEST; x += spacing) {
    const mark = `FR${number('FR')}`;
    const face = tip(x - rafter.b / 2);
    const long = (face - ridge.width / 2) / cos;
    const short = Math.max(0, (face - ridge.width / 2 - rafter.d / Math.sin(roof.pitch)) / cos);
    const area = 2 * stripArea(o, x - spacing / 2, x + spacing / 2);
    out.push({ mark, x, area, run: tip(x), long, short, seat: Math.min(seat, face - ridge.width / 2) });
    const half = rafter.d / cos / 2;
    const z = (y: number): number => o.ridge - drop - o.shape.slope * y - half;
    for (const [i, f] of o.faces.entries()) {
      const outward = { x: o.frame.side.x * f.sign, y: o.frame.side.y * f.sign };
      members.push({
        ...common(o),
        id: `${mark}-${serial(i + 1)}`,
        mark,
        role: 'fill-rafter',
        section: rafter,
        start: overlayPoint(o.frame, x, tip(x) * f.sign, z(tip(x))),
        end: overlayPoint(o.frame, x, (ridge.width / 2) * f.sign, z(ridge.width / 2)),
        up: { x: outward.x * Math.sin(roof.pitch), y: outward.y * Math.sin(roof.pitch), z: cos },
        length: long,
        cuts: [
          `plumb cut ${degrees(cuts.plumb)} at the ridge, square across`,
          `level seat ${degrees(cuts.seat)} from the edge, saw tilted ${degrees(cuts.bevel)}, uphill face short`,
        ],
        path: `${o.path}/rafter`,
      });
    }
  }
  return { members, fills: lastTakesTheRest(o, out, spacing) };
}

/** Plan area of one side between two places along the ridge. */
function stripArea(o: Outline, from: number, to: number): number {
  const a = Math.max(from, o.edge);
  const b = Math.min(to, o.head);
  if (b <= a) return 0;
  const width = (x: number): number => (x <= o.start ? o.half : runAt(o.shape, x - o.start));
  const cuts = [a, ...(o.start > a && o.start < b ? [o.start] : []), b];
  let sum = 0;
  for (let i = 0; i + 1 < cuts.length; i++)
    sum += ((width(cuts[i]!) + width(cuts[i + 1]!)) / 2) * (cuts[i + 1]! - cuts[i]!);
  return sum;
}

/** Roof past the last strip is carried by the plates themselves; it is counted with the last pair. */
function lastTakesTheRest(o: Outline, fills: readonly Fill[], spacing: number): Fill[] {
  return fills.map((f, i) =>
    i < fills.length - 1 ? f : { ...f, area: f.area + 2 * stripArea(o, f.x + spacing / 2, o.head) },
  );
}

function hangs(input: OverlayInput, o: Outline, by: number): undefined {
  const { roof, kit } = input;
  kit.issues.push(
    error(
      'overlay-eave-unsupported',
      `${roof.path}/bearing`,
      'The first pair of fill rafters has no valley plate under it: the old roof lies too low there.',
      {
        subject: o.roof,
        found: `${inches(by * o.shape.slope)} too high at the first pair`,
        expected: `a bearing ${inches(by * o.shape.slope)} lower, the last frame nearer to the old eave, or a longer overhang (valley feet ${feet(o.start)} up from the old eave)`,
      },
    ),
  );
  return undefined;
}

/** The fascia from where the cover's own ends to where its lower edge and then its upper one meet the old roof. */
function fasciaMembers({ fascia, roof }: OverlayInput, o: Outline): Member[] {
  if (fascia === undefined) return [];
  const { section, mark } = fascia;
  const top = o.eave - onNew(o, o.sheathing);
  const end = (top - o.frame.origin.z) / o.shape.old;
  if (end <= o.edge + 1) return [];
  return o.faces.map(
    (f, i): Member => ({
      ...common(o),
      id: `${mark}-over-${serial(i + 1)}`,
      mark,
      role: 'fascia',
      section,
      start: overlayPoint(o.frame, o.edge, (o.half + section.b / 2) * f.sign, top - section.d / 2),
      end: overlayPoint(o.frame, end, (o.half + section.b / 2) * f.sign, top - section.d / 2),
      up: { x: 0, y: 0, z: 1 },
      length: end - o.edge,
      cuts: [`scribed to the old roof, ${degrees(Math.atan(o.shape.old))} from level`],
      path: `${roof.path}/finish/fascia`,
    }),
  );
}
