/** Section through the cover. */

import type { Member } from '../../structure/model.js';
import { levelMark, slopeTriangle } from '../annotate/index.js';
import type { Primitive } from '../ir/index.js';
import { CAMERAS, see } from '../views/camera.js';
import type { SheetBody, SheetContext, SheetKind } from './contract.js';
import { callsInSection } from './details/calls.js';
import { dims, type PlacedView, placeView } from './parts.js';
import { standsOff } from './plan-base.js';
import { type SectionSpot, sectionLayout, sectionMargin } from './section-layout.js';
import { type Cutting, coverOnly, sectionPicture, soil } from './section-picture.js';
import { carriersOf, type SectionPlane, sectionPlanes } from './section-plane.js';

function drawSection(ctx: SheetContext, number: number, plane: SectionPlane, spot: SectionSpot): PlacedView {
  const { structure, project } = ctx.input;
  const { style, len } = ctx;
  const { frame, scale } = spot;
  const h = style.note;
  const { cut, camera, pic } = sectionPicture(ctx, coverOnly(ctx, number), number);
  const over: Primitive[] = [];
  // With several roofs a section gives the levels and stations of its own.
  const several = structure.roofs.length > 1;
  const carriers = carriersOf(structure, plane.roof);
  const own = (part: { readonly id: string }): boolean => !several || carriers.has(part.id);
  const beams = structure.members.filter((m) => m.role === 'beam' && own(m));
  const bottom = Math.min(...structure.footings.filter(own).map((f) => f.bottom));
  const under = Math.min(...beams.map((m) => m.start.z - m.section.depth / 2));
  const { roof } = plane;
  const bearing = project.cover.roofs.find((r) => r.mark === roof.mark)!.bearing;
  const right = frame.x + frame.w;
  const across = cut.name === 'rear';
  const gradeName = across ? 'Grade at the cut' : 'Grade at house';
  const gradeAt = structure.grade.z0 + (across ? structure.grade.gy * cut.cutAt : 0);
  let last = Number.POSITIVE_INFINITY;
  for (const [name, z] of [
    ['Top of roof', roof.highestPoint],
    ['Roof bearing', bearing],
    ['Underside of beam', under],
    ['Finished floor', 0],
    [gradeName, gradeAt],
    ['Bottom of footing', bottom],
  ] as const) {
    if (last - z < (h * 4.6) / scale.ratio) continue;
    last = z;
    over.push(
      levelMark({ at: { x: right + 6, y: z }, side: 'right', name, value: len(z), layer: 'A-ANNO-DIMS', style }),
    );
  }
  const left = dims(ctx, {
    side: 'left',
    datum: frame.x,
    scale: scale.ratio,
    layer: 'A-ANNO-DIMS',
    // A tiny section has no paper left above it.
    within: scale.ratio < 1 / 90,
    tiers: [
      { stations: [bottom, 0, under, ...(roof.highestPoint - bearing > 6 ? [bearing] : []), roof.highestPoint] },
      { stations: [bottom, roof.highestPoint] },
    ],
  });
  over.push(...left.items);
  const posts = structure.members.filter((m) => m.role === 'post' && own(m));
  const stations = [...new Set(posts.map((m) => Math.round(see(camera, m.start).a * 16) / 16))];
  const edges = (several ? [roof] : structure.roofs).flatMap((r) => [
    see(camera, { x: r.min.x, y: r.min.y, z: 0 }).a,
    see(camera, { x: r.max.x, y: r.max.y, z: 0 }).a,
  ]);
  const wall = cut.name === 'right' && !standsOff(structure) ? [0] : [];
  const below = dims(ctx, {
    side: 'below',
    datum: Math.min(...structure.footings.map((f) => f.bottom)) - 4,
    scale: scale.ratio,
    layer: 'A-ANNO-DIMS',
    tiers: [
      { stations: [...wall, ...stations, Math.max(...edges), ...(wall.length === 0 ? [Math.min(...edges)] : [])] },
    ],
  });
  over.push(...below.items);
  over.push(...headroom(ctx, cut, scale.ratio, beams));
  for (const s of structure.surfaces) {
    const fall = s.downhill.x * camera.right.x + s.downhill.y * camera.right.y;
    if (Math.abs(fall) < 0.99) continue;
    const spec = project.cover.roofs.find((r) => r.mark === s.roof)!;
    const v = 0.55 * Math.max(...s.outline.map((p) => p.y));
    const p = see(camera, { x: s.origin.x + s.v.x * v, y: s.origin.y + s.v.y * v, z: s.origin.z + s.v.z * v });
    over.push(
      slopeTriangle({
        at: { x: p.a, y: p.b + (h * 2) / scale.ratio },
        rise: spec.pitchText.split('/')[0] ?? '',
        ratio: Math.tan(s.slope),
        up: fall > 0 ? 'left' : 'right',
        layer: 'A-ANNO-SYMB',
        style,
        path: `${spec.path}/pitch`,
      }),
    );
  }
  const items = [...soil(ctx, cut, frame), ...pic.items];
  const shown = (p: { readonly x: number; readonly y: number }): boolean =>
    p.x > frame.x && p.x < frame.x + frame.w && p.y > frame.y && p.y < frame.y + frame.h;
  over.push(...callsInSection(ctx, { camera, cutAt: cut.cutAt, scale: scale.ratio, shown, over, lines: items }));
  const margin = sectionMargin(ctx);
  // The string under the view belongs to it, so that the title stands under both.
  const string = (margin.under - margin.top) / scale.ratio;
  const placed = placeView(ctx, {
    box: spot.box,
    model: { ...frame, y: frame.y - string, h: frame.h + string },
    scale,
    number: String(number + 1),
    title: several ? `Section through ${roof.mark}` : 'Section through the cover',
    items,
    over,
    snug: margin.top,
  });
  const window = { x: frame.x - 14, y: frame.y - 6, w: frame.w + 28, h: frame.h + 6 };
  return { ...placed, viewport: { ...placed.viewport, window } };
}

/** Beams and cross members this near to the cut are in it, inches. */
const AT_CUT = 8;

/** Clear height under the lowest beam or cross member in the cut, over the walking surface below it, drawn as a dimension. */
function headroom(ctx: SheetContext, cut: Cutting, ratio: number, beams: readonly Member[]): Primitive[] {
  const { structure } = ctx.input;
  const camera = CAMERAS[cut.name];
  const slab = structure.slabs.find((s) => s.state !== 'removed');
  const key = cut.name === 'rear' ? 'y' : 'x';
  const inCut = (m: Member): boolean =>
    Math.min(m.start[key], m.end[key]) < cut.cutAt + AT_CUT && Math.max(m.start[key], m.end[key]) > cut.cutAt - AT_CUT;
  const struts = structure.members.filter((m) => m.role === 'strut');
  const crossing = [...beams, ...struts].filter(inCut);
  const underside = (m: Member): number => m.start.z - m.section.depth / 2;
  const low = [...(crossing.length > 0 ? crossing : beams)].sort((p, q) => underside(p) - underside(q))[0];
  if (!low || !slab) return [];
  const under = underside(low);
  const [a, b] = [see(camera, low.start).a, see(camera, low.end).a];
  // One seen along its length is measured a quarter along it, one seen end on beside it.
  const lengthwise = Math.abs(a - b) > low.section.width;
  const at = lengthwise
    ? { x: 0.75 * low.start.x + 0.25 * low.end.x, y: 0.75 * low.start.y + 0.25 * low.end.y }
    : low.start;
  const y = cut.name === 'rear' ? cut.cutAt : at.y;
  const floor = slab.top.z0 + slab.top.gy * y + slab.top.gx * at.x;
  const center = see(camera, { x: at.x, y, z: 0 }).a;
  const inward = center > 0 || cut.name === 'right' ? -1 : 1;
  const x = lengthwise ? center : center + inward * (low.section.width / 2 + 14);
  return [
    {
      kind: 'dimension',
      layer: 'A-ANNO-DIMS',
      a: { x, y: floor },
      b: { x, y: under },
      angle: Math.PI / 2,
      base: { x, y: floor },
      offset: 0,
      value: under - floor,
      text: `${ctx.len(under - floor)} clear under ${low.mark}`,
      height: ctx.style.note,
      noExtensionA: true,
      noExtensionB: true,
    },
    {
      kind: 'line',
      layer: 'A-ANNO-DIMS',
      pen: 'dimension',
      a: { x: center, y: under },
      b: { x: x + inward * (4 / (48 * ratio)), y: under },
    },
  ];
}

function draw(ctx: SheetContext): SheetBody[] {
  const spots = sectionLayout(ctx);
  const views = sectionPlanes(ctx.input.structure).map((plane, i) => drawSection(ctx, i, plane, spots[i]!));
  return [...new Set(spots.map((s) => s.sheet))].map((sheet) => {
    const mine = views.filter((_, i) => spots[i]!.sheet === sheet);
    return {
      title: mine.length > 1 ? 'Sections' : 'Section',
      scaleNote: mine[0]!.scale.label,
      viewports: mine.map((v) => v.viewport),
      items: mine.flatMap((v) => v.items),
    };
  });
}

export const sections: SheetKind = { title: 'Section', discipline: 'A', needed: () => true, draw };
