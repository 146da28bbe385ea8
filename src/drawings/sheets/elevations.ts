import type { Vec2 } from '../../base/vec.js';
import { levelMark, slopeTriangle } from '../annotate/index.js';
import type { Primitive, Rect } from '../ir/index.js';
import { CAMERAS, type CameraName, see } from '../views/camera.js';
import { picture } from '../views/picture.js';
import type { SheetBody, SheetContext, SheetKind } from './contract.js';
import { dims, PLAN_SCALES, type PlacedView, placeView, scaleFor } from './parts.js';

interface View {
  readonly camera: CameraName;
  readonly title: string;
}

/** Named from where the house stands: the rear elevation is seen from the yard. */
const VIEWS: readonly View[] = [
  { camera: 'rear', title: 'Rear elevation, seen from the yard' },
  { camera: 'right', title: 'Right side elevation' },
  { camera: 'left', title: 'Left side elevation' },
  { camera: 'front', title: 'Front elevation, no change' },
];

interface Level {
  readonly name: string;
  readonly z: number;
}

/** Heights a reviewer looks for, nearest ones thinned so that texts do not touch. */
function levels(ctx: SheetContext): Level[] {
  const { structure, project } = ctx.input;
  const roof = structure.roofs[0]!;
  const beams = structure.members.filter((m) => m.role === 'beam');
  const under = Math.min(...beams.map((m) => Math.min(m.start.z, m.end.z) - m.section.depth / 2));
  return [
    { name: 'Top of new roof', z: roof.highestPoint },
    { name: 'Roof bearing', z: project.cover.roofs[0]!.bearing },
    { name: 'Underside of beam', z: under },
    { name: 'Finished floor', z: 0 },
    { name: 'Grade at house', z: structure.grade.z0 },
  ];
}

function thin(all: readonly Level[], gap: number): Level[] {
  const out: Level[] = [];
  for (const l of [...all].sort((p, q) => q.z - p.z)) if (out.length === 0 || out.at(-1)!.z - l.z >= gap) out.push(l);
  return out;
}

/** Grade seen square on is a straight line; drawn as the ground profile. */
function ground(ctx: SheetContext, camera: CameraName, bounds: Rect): Primitive[] {
  const { grade } = ctx.input.structure;
  const c = CAMERAS[camera];
  const y0 = -240;
  const y1 = 400;
  const z = (y: number): number => (y < 0 ? grade.z0 : grade.z0 + grade.gy * y);
  if (camera === 'rear' || camera === 'front') {
    const level = camera === 'rear' ? z(Math.max(0, ...ctx.input.structure.roofs.map((r) => r.max.y))) : grade.z0;
    return [
      {
        kind: 'line',
        layer: 'C-TOPO',
        pen: 'profile',
        a: { x: bounds.x - 12, y: level },
        b: { x: bounds.x + bounds.w + 12, y: level },
      },
    ];
  }
  const points = [y0, 0, y1].map((y) => ({ x: see(c, { x: 0, y, z: 0 }).a, y: z(y) }));
  const lo = bounds.x - 12;
  const hi = bounds.x + bounds.w + 12;
  const line = (x: number): number => {
    const s = [...points].sort((p, q) => p.x - q.x);
    for (let i = 1; i < s.length; i++) {
      const [p, q] = [s[i - 1]!, s[i]!];
      if (x <= q.x) return p.y + ((q.y - p.y) * (x - p.x)) / (q.x - p.x);
    }
    return s.at(-1)!.y;
  };
  const mid = see(c, { x: 0, y: 0, z: 0 }).a;
  const stops = [lo, ...(mid > lo && mid < hi ? [mid] : []), hi];
  return [{ kind: 'polyline', layer: 'C-TOPO', pen: 'profile', points: stops.map((x) => ({ x, y: line(x) })) }];
}

function drawView(ctx: SheetContext, view: View, box: Rect, number: string): PlacedView {
  const { style, len } = ctx;
  const h = style.note;
  const { structure, project } = ctx.input;
  const camera = CAMERAS[view.camera];
  // The front shows only what stands there today: new work lies behind the house.
  const pieces =
    view.camera === 'front'
      ? ctx.pieces.filter((p) => p.role === 'wall' || p.role === 'opening' || p.role === 'house-roof')
      : ctx.pieces;
  const pic = picture(pieces, camera, { layers: { fresh: 'A-ELEV', existing: 'A-ELEV-EXST' } });
  const frame = pic.bounds;
  const scale = scaleFor(ctx, frame, box, { x: h * 14, y: h * 2 }, PLAN_SCALES);
  // Nothing new is seen from the front: heights of the new work belong to the views that show it.
  const shows = view.camera !== 'front';
  const over: Primitive[] = [];
  const shown = thin(
    levels(ctx).filter((l) => shows || l.z <= 0),
    (h * 4.4) / scale.ratio,
  );
  for (const l of shown) {
    over.push(
      levelMark({
        at: { x: frame.x + frame.w + 6, y: l.z },
        side: 'right',
        name: l.name,
        value: len(l.z),
        layer: 'A-ANNO-DIMS',
        style,
      }),
    );
  }
  // A bearing level with the top (a ledger) would only crowd the string.
  const top = structure.roofs[0]!.highestPoint;
  const bearing = project.cover.roofs[0]!.bearing;
  const zs = [structure.grade.z0, ...(top - bearing > 6 ? [bearing] : []), top];
  if (shows)
    over.push(
      ...dims(ctx, {
        side: 'left',
        datum: frame.x,
        scale: scale.ratio,
        layer: 'A-ANNO-DIMS',
        tiers: [{ stations: zs }, { stations: [zs[0]!, top] }],
      }).items,
    );
  // Slope triangles on roofs whose fall is seen square on; slopes of one pitch close together share the first one's.
  const drawn: { readonly x: number; readonly slope: number }[] = [];
  for (const s of shows ? structure.surfaces : []) {
    const fall = s.downhill.x * camera.right.x + s.downhill.y * camera.right.y;
    // Nothing of a roof behind the house is seen.
    if (Math.abs(fall) < 0.99 || !pic.items.some((i) => 'mark' in i && i.mark === s.mark)) continue;
    const roof = project.cover.roofs.find((r) => r.mark === s.roof)!;
    const vm = Math.max(...s.outline.map((p) => p.y)) / 2;
    const p = see(camera, { x: s.origin.x + s.v.x * vm, y: s.origin.y + s.v.y * vm, z: s.origin.z + s.v.z * vm });
    const rise = roof.pitchText.split('/')[0] ?? roof.pitchText;
    const at: Vec2 = { x: p.a, y: p.b + (h * 4.5) / scale.ratio };
    const near = drawn.some((t) => Math.abs(t.x - at.x) * scale.ratio < 10 * h && Math.abs(t.slope - s.slope) < 1e-6);
    if (near) continue;
    drawn.push({ x: at.x, slope: s.slope });
    over.push(
      slopeTriangle({
        at,
        rise,
        ratio: Math.tan(s.slope),
        up: fall > 0 ? 'left' : 'right',
        layer: 'A-ANNO-SYMB',
        style,
        path: `${roof.path}/pitch`,
      }),
    );
  }
  return placeView(ctx, {
    box,
    model: frame,
    scale,
    number,
    title: view.title,
    items: [...pic.items, ...ground(ctx, view.camera, frame)],
    over,
  });
}

function draw(ctx: SheetContext): SheetBody[] {
  const { area, style } = ctx;
  const g = style.gutter;
  const big = area.h > 16;
  const bodies: SheetBody[] = [];
  const perSheet = big ? 4 : 2;
  for (let k = 0; k < VIEWS.length; k += perSheet) {
    const group = VIEWS.slice(k, k + perSheet);
    const cols = big ? 2 : 1;
    const rows = Math.ceil(group.length / cols);
    const w = (area.w - (cols - 1) * g) / cols;
    const noteBand = k === 0 ? style.note * 9 : 0;
    const height = (area.h - noteBand - (rows - 1) * g) / rows;
    const placed = group.map((v, i) => {
      const col = i % cols;
      const row = Math.floor(i / cols);
      const box = { x: area.x + col * (w + g), y: area.y + noteBand + (rows - 1 - row) * (height + g), w, h: height };
      return drawView(ctx, v, box, String(k + i + 1));
    });
    const finish = ctx.input.structure.surfaces[0]!.layers.map((l) => l.name)[0] ?? '';
    const items: Primitive[] = placed.flatMap((p) => [...p.items]);
    if (noteBand > 0) {
      const text = [
        'Existing work is drawn thin, new work heavy, parts below ground dashed. Elevations are projections of the same model as the plans.',
        `New roof: ${finish}. New posts, beams and fascia: see the column and beam plan and the schedules. House finishes stay as they are except where the new work is fastened and flashed.`,
      ];
      text.forEach((t, i) => {
        items.push({
          kind: 'text',
          layer: 'A-ANNO-NOTE',
          at: { x: area.x, y: area.y + style.note * (4.2 - i * 2.2) },
          content: t,
          height: style.note,
        });
      });
    }
    bodies.push({
      title: bodies.length === 0 ? 'Elevations' : 'Elevations, continued',
      scaleNote: 'As noted',
      viewports: placed.map((p) => p.viewport),
      items,
    });
  }
  return bodies;
}

export const elevations: SheetKind = { title: 'Elevations', discipline: 'A', needed: () => true, draw };
