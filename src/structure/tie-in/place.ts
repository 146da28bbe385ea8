/**
 * Places the part of a gable that runs over an old roof slope. The old slope is taken at the top of its sheathing, its covering
 * off; the new one at the top of the new sheathing. Valley plates lie flat on the old sheathing, their outer edges bevelled to
 * the underside of the new sheathing; fill rafters stand on them and meet at a ridge board whose end is cut to the old slope.
 */
import { contains } from '../../base/plane.js';
import { cross, flat, unit, type Vec2, type Vec3 } from '../../base/vec.js';
import { toHouse } from '../axes.js';
import { error } from '../issues.js';
import type { OverlayFace, OverlayFrame, OverlayPlaced, Valley } from '../model.js';
import { degrees, feet, inches } from '../text.js';
import type { Outline, OverlayInput } from './contract.js';
import { cutParts } from './cut-parts.js';
import { overlayPoint } from './frame.js';
import { alongRidge, type OldSlope, oldSlope } from './old-slope.js';
import { overlayShape } from './overlay-shape.js';

/** Undefined when it cannot be placed; the reasons are in `kit.issues`. */
export function placeOverlay(input: OverlayInput): OverlayPlaced | undefined {
  const old = findSlope(input);
  const outline = old && outlineOf(input, old);
  if (old === undefined || outline === undefined || !lands(input, outline, old)) return undefined;
  const parts = cutParts(input, outline);
  return parts && { ...outline, ...parts };
}

const refuser =
  ({ kit, roof }: OverlayInput) =>
  (code: string, key: string, message: string, found: string, expected: string): undefined => {
    kit.issues.push(error(code, `${roof.path}/${key}`, message, { subject: roof.mark, found, expected }));
    return undefined;
  };

function findSlope(input: OverlayInput): OldSlope | undefined {
  const { roof, housePlanes } = input;
  const refuse = refuser(input);
  if (input.kit.project.cover.attachment === 'free-standing')
    return refuse(
      'overlay-free-standing',
      'meetsHouse',
      'A roof that goes on over the house does not stand free of it.',
      'attachment "free-standing"',
      '"attached", or no "meetsHouse"',
    );
  const s = oldSlope(roof, housePlanes);
  if (s === undefined)
    return refuse(
      'house-plane-unknown',
      'meetsHouse/plane',
      'The house roof has no slope of this name.',
      roof.meetsHouse.plane,
      `one of ${housePlanes.map((p) => p.id).join(', ')}`,
    );
  if (Math.abs(alongRidge(roof, s)) < 0.999)
    return refuse(
      'overlay-plane-direction',
      'meetsHouse/plane',
      'The ridge does not run straight up this slope of the house.',
      roof.meetsHouse.plane,
      `a slope that rises along ${roof.ridge}`,
    );
  if (roof.rakeFraming !== undefined)
    return refuse(
      'overlay-with-outlookers',
      'rakeFraming',
      'Outlookers at both ends do not go with a roof that runs on over the house.',
      'rakeFraming',
      'no "rakeFraming": sheathing carries a rake of a foot at most',
    );
  return s;
}

function outlineOf(input: OverlayInput, old: OldSlope): Outline | undefined {
  const { roof, profile, planes, layers } = input;
  const refuse = refuser(input);
  const leg = profile.legs[0]!;
  const { axes } = profile;
  const up = alongRidge(roof, old) > 0;
  const lastL = up ? roof.to : roof.from;
  const half = Math.abs(leg.top - leg.eave);
  const slope = Math.tan(roof.pitch);
  const eave = planes[0]!.origin.z;
  const ridge = eave + half * slope;
  const onRidge = toHouse(axes, leg.top, lastL, 0);
  // From the last frame to the old eave edge, along the way up the slope.
  const lowest = old.plane.outline.find((p) => p.z === old.eave)!;
  const toEave = (lowest.x - onRidge.x) * old.into.x + (lowest.y - onRidge.y) * old.into.y;
  const outward = leg.eave > leg.top ? 1 : -1;
  const frame: OverlayFrame = {
    origin: { x: onRidge.x + old.into.x * toEave, y: onRidge.y + old.into.y * toEave, z: old.eave },
    into: old.into,
    side: { x: axes.across.x * outward, y: axes.across.y * outward },
  };
  if (toEave < 1)
    return refuse(
      'overlay-frame-on-house',
      up ? 'to' : 'from',
      'The last frame on the beams stands over the old roof: only fill rafters do.',
      `${feet(Math.abs(toEave))} past the old eave`,
      'a frame in front of the old eave edge',
    );
  const start = (eave - old.eave) / old.slope;
  const edge = -toEave + roof.meetsHouse.spacing / 2;
  // The cover's own roof reaches half a bay past its last frame: there its eave must still be over the old roof.
  const least = Math.max(0, edge);
  if (start < least)
    return refuse(
      'overlay-eave-low',
      'bearing',
      'The new eave would lie lower than the old roof beside it: it would run under it and trap its water.',
      `new eave ${feet(eave)}, old roof ${feet(old.eave + least * old.slope)}`,
      `the bearing ${inches((least - start) * old.slope)} higher, a smaller overhang, or fill rafters closer together`,
    );
  const head = (ridge - old.eave) / old.slope;
  const shape = overlayShape(old.slope, slope, ridge - eave);
  const faces = ([1, -1] as const).map((sign, i): OverlayFace => {
    const { surface } = profile.legs[i]!;
    const at = (x: number, y: number): Vec3 => overlayPoint(frame, x, y * sign, ridge - slope * y);
    const outline = [at(edge, 0), at(edge, half), at(start, half), at(head, 0)];
    const plan = (half * (start - edge + (head - edge))) / 2;
    const n = unit(cross(minus(outline[1]!, outline[0]!), minus(outline[3]!, outline[0]!)));
    const normal = n.z < 0 ? { x: -n.x, y: -n.y, z: -n.z } : n;
    return {
      id: `${surface}-over`,
      mark: surface,
      sign,
      outline,
      area: plan / normal.z,
      planArea: plan,
      normal,
      slope: roof.pitch,
    };
  });
  const valleys = faces.map(
    (f, i): Valley => ({
      mark: `V${i + 1}`,
      sign: f.sign,
      foot: f.outline[2]!,
      head: f.outline[3]!,
      length: shape.valley,
    }),
  );
  return {
    roof: roof.mark,
    plane: old.plane.id,
    frame,
    shape,
    last: -toEave,
    edge,
    start,
    head,
    ridge,
    eave,
    oldRidge: old.top,
    half,
    sheathing: layers.sheathing,
    thickness: layers.thickness,
    layers: layers.layers,
    faces,
    valleys,
    path: `${roof.path}/meetsHouse`,
  };
}

const minus = (a: Vec3, b: Vec3): Vec3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });

/** Least height of the old ridge over the new one, inches: cap and flashing have to pass. Common practice, no source. */
const UNDER_RIDGE = 6;
/** Least distance from a valley's foot to the edge of the old slope, inches, so that its water stays on it. Common practice, no source. */
const FROM_EDGE = 12;

/** The ridge dies below the old ridge, and both valleys lie on the slope. */
function lands(input: OverlayInput, o: Outline, old: OldSlope): boolean {
  const refuse = refuser(input);
  if (o.ridge > o.oldRidge - UNDER_RIDGE + 1e-6) {
    refuse(
      'overlay-over-old-ridge',
      'pitch',
      'The new ridge does not die into the old slope below its ridge.',
      `new ridge ${feet(o.ridge)}, old ridge ${feet(o.oldRidge)}`,
      `a new ridge at ${feet(o.oldRidge - UNDER_RIDGE)} or lower: a lower pitch (${degrees(Math.atan((o.oldRidge - UNDER_RIDGE - o.eave) / o.half))} at most), a narrower roof or a lower bearing`,
    );
    return false;
  }
  const ring = old.plane.outline.map(flat);
  const inside = (p: Vec2): boolean => contains(ring, p, 1e-6);
  const past = ([1, -1] as const).flatMap((sign) => [
    overlayPoint(o.frame, o.start, sign * (o.half + FROM_EDGE), 0),
    overlayPoint(o.frame, o.head, 0, 0),
  ]);
  if (past.every(inside)) return true;
  refuse(
    'valley-off-house-roof',
    'meetsHouse/plane',
    `A valley does not lie on slope ${o.plane} with ${inches(FROM_EDGE)} of it beside its foot: its water would run off the side.`,
    `${feet(2 * o.half)} wide at the valleys' feet`,
    'a narrower roof, or another place on the slope',
  );
  return false;
}
