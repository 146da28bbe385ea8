/** The cover as it will be seen: from the yard, and from the neighbors' sides. */
import { formatLength } from '../../../base/quantity/index.js';
import type { Vec3 } from '../../../base/vec.js';
import { measure, splitColumns, splitRows, textBlock, viewTitle } from '../../annotate/index.js';
import type { Primitive, Rect, Viewport } from '../../ir/index.js';
import type { Eye } from '../../views/perspective.js';
import { type Shaded, shaded } from '../../views/shaded.js';
import type { SheetBody, SheetContext, SheetKind } from '../contract.js';

/** Height of an eye above the ground. Common practice, no source. */
const EYE = 66;
/** Height from which the roof itself is seen. */
const OVERLOOK = 264;

export interface LookedFrom {
  readonly title: string;
  readonly words: string;
  readonly eye: Eye;
}

/** Places to look from, on the lot's own ground and distances: the yard, every side line, and above the yard. */
export function viewpoints(ctx: SheetContext): readonly LookedFrom[] {
  const { structure, lot } = ctx.input;
  const xs = structure.roofs.flatMap((r) => [r.min.x, r.max.x]);
  const ys = structure.roofs.flatMap((r) => [r.min.y, r.max.y]);
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const target: Vec3 = { x: (x0 + x1) / 2, y: (y0 + y1) / 2, z: 0 };
  const ground = (x: number, y: number): number =>
    structure.grade.z0 + structure.grade.gx * x + structure.grade.gy * Math.max(0, y);
  const eyeAt = (x: number, y: number): Vec3 => ({ x, y, z: ground(x, y) + EYE });
  const size = Math.max(x1 - x0, y1 - y0);
  // Far enough to take the cover in at a glance, off its middle so that two sides are seen.
  const back = y1 + 1.15 * size + 60;
  const sides = lot.distances.filter((d) => d.yard === 'left' || d.yard === 'right');
  const len = (v: number): string =>
    formatLength(Math.round(v / 12) * 12, { units: ctx.input.project.job.units, glyphs: true });
  const above = 'Eye 5\'-6" above the ground';
  const fromSide = (d: (typeof sides)[number]): LookedFrom => {
    // Seen looking out of the house, the left line lies toward −x.
    const sign = d.yard === 'left' ? -1 : 1;
    return {
      title: `From the neighbor’s side, ${d.yard}`,
      words: `${above} on the ${d.line}, ${len(d.toEave)} from the roof. Fences and plants are left out.`,
      eye: { at: eyeAt((sign > 0 ? x1 : x0) + sign * d.toEave, y1 + 0.25 * size), target },
    };
  };
  const yard = eyeAt(target.x + 0.55 * size, back);
  return [
    { title: 'From the yard', words: `${above}, ${len(back - y1)} from the roof.`, eye: { at: yard, target } },
    ...sides.map(fromSide),
    {
      title: 'From above the yard',
      words: `Eye ${len(OVERLOOK)} above the ground, ${len(back - y1)} from the roof.`,
      eye: { at: { x: target.x - 0.55 * size, y: back, z: ground(target.x, back) + OVERLOOK }, target },
    },
  ];
}

/** What of the picture is shown: the new work with its surroundings, in the shape of its box. */
function windowOf(s: Shaded, box: Rect): Rect {
  const { fresh } = s;
  const ratio = box.w / box.h;
  const w = Math.max(fresh.w * 1.7, fresh.h * 1.5 * ratio);
  const h = w / ratio;
  return { x: fresh.x + fresh.w / 2 - w / 2, y: fresh.y + fresh.h * 0.5 - h * 0.5, w, h };
}

function draw(ctx: SheetContext): SheetBody[] {
  const { area, style } = ctx;
  const looks = viewpoints(ctx);
  const rows = Math.ceil(looks.length / 2);
  const boxes = splitRows(
    area,
    Array.from({ length: rows }, () => 1),
    style.gutter,
  ).flatMap((r) => splitColumns(r, [1, 1], style.gutter));
  const viewports: Viewport[] = [];
  const items: Primitive[] = [];
  looks.forEach((look, i) => {
    const cell = boxes[i]!;
    const text = textBlock(measure([{ kind: 'para', text: look.words }], cell.w, style, 'G-ANNO-NOTE'), {
      x: 0,
      y: 0,
    }).height;
    const foot = style.bubble * 2.4 + text + style.note * 3;
    const h = cell.h - foot;
    const box = { x: cell.x, y: cell.y + cell.h - h, w: cell.w, h };
    const picture = shaded(ctx.pieces, look.eye, { fresh: 'A-ELEV', existing: 'A-ELEV-EXST', shade: 'A-ELEV-PATT' });
    const window = windowOf(picture, box);
    viewports.push({
      name: look.title,
      at: { x: box.x, y: box.y },
      from: { x: window.x, y: window.y },
      scale: box.w / window.w,
      window,
      items: picture.items,
    });
    items.push({
      kind: 'polyline',
      layer: 'G-ANNO-TITL',
      pen: 'rule',
      closed: true,
      points: [
        { x: box.x, y: box.y },
        { x: box.x + box.w, y: box.y },
        { x: box.x + box.w, y: box.y + box.h },
        { x: box.x, y: box.y + box.h },
      ],
    });
    const y = box.y - style.bubble * 1.6;
    items.push(
      ...viewTitle({
        at: { x: cell.x, y },
        number: String(i + 1),
        title: look.title,
        scale: 'Perspective, no scale',
        style,
      }).items,
    );
    const below = { x: cell.x, y: y - style.bubble * 1.6 };
    items.push(...textBlock(measure([{ kind: 'para', text: look.words }], cell.w, style, 'G-ANNO-NOTE'), below).items);
  });
  return [{ title: 'Perspectives', scaleNote: 'No scale', viewports, items }];
}

export const perspectives: SheetKind = { title: 'Perspectives', discipline: 'A', needed: () => true, draw };
