/** Footing-to-ridge detail: the section's own cut, nearer, keyed part by part. */
import { formatSlope } from '../../base/quantity/index.js';
import type { Vec2 } from '../../base/vec.js';
import type { Member } from '../../structure/model.js';
import { type ColumnNote, noteColumn, tag } from '../annotate/index.js';
import { type Primitive, type Rect, toPaper } from '../ir/index.js';
import { CAMERAS, see } from '../views/camera.js';
import { braceKeys } from './brace-keys.js';
import { SHEET_IDS, type SheetBody, type SheetContext, type SheetKind } from './contract.js';
import { footingSize, footOfPost } from './footing-words.js';
import { DETAIL_SCALES, dims, placeView, scaleFor } from './parts.js';
import { type Cutting, coverOnly, sectionPicture, soil } from './section-picture.js';
import { carriersOf, sectionPlanes } from './section-plane.js';

interface Key {
  readonly at: Vec2;
  readonly text: string;
  readonly mark: string;
}

/** Footing to ridge: keyed notes from the soil up, each naming size, joint and schedule mark. */
function keys(ctx: SheetContext, cut: Cutting): Key[] {
  const { structure, project } = ctx.input;
  const camera = CAMERAS[cut.name];
  const seen = (p: Vec3Like): Vec2 => {
    const s = see(camera, p);
    return { x: s.a, y: s.b };
  };
  const chosen = lowPost(ctx, cut);
  const out: Key[] = [];
  const push = (p: Vec3Like, mark: string, text: string) => out.push({ at: seen(p), mark, text });
  if (!chosen) return out;
  const { post, footing } = chosen;
  const jointAt = (kind: string, part: string) =>
    structure.joints.find((j) => j.kind === kind && j.ties.some((t) => t.part === part));
  if (footing) {
    const slab = structure.slabs.find((s) => s.state !== 'removed');
    push(
      { ...footing.at, z: footing.bottom + footing.padThickness / 2 },
      footing.mark,
      `${footing.mark}: ${footing.kind.replaceAll('-', ' ')}, ${footingSize(footing, ctx.len)}, f'c ${footing.fc} psi; ${footing.steel}. Bottom ${ctx.len(footing.surface - footing.bottom)} below the surface, on undisturbed soil.`,
    );
    const base = jointAt('post-to-footing', post.id);
    push(
      { ...footing.at, z: footing.top },
      base?.mark ?? footing.mark,
      `${base?.mark ?? ''}: ${footOfPost(footing, post.start.z, ctx.len)}`,
    );
    if (slab)
      push(
        {
          x: footing.at.x,
          y: Math.max(6, footing.at.y - 30),
          z: slab.top.z0 + slab.top.gy * Math.max(6, footing.at.y - 30),
        },
        slab.mark,
        `${slab.mark}: ${slab.state} slab, ${ctx.len(slab.thickness)} thick, falls ${formatSlope(-slab.top.gy)} away from the house.`,
      );
  }
  push(
    { x: post.start.x, y: post.start.y, z: (post.start.z + post.end.z) / 2 },
    post.mark,
    `${post.mark}: ${post.section.label}, ${post.section.treatment.replace('-', ' ')} treated, length ${ctx.len(post.length)}; cut after measuring on site.`,
  );
  for (const k of braceKeys(ctx, post, (p) => seen(p).x)) push(k.at, k.mark, k.text);
  const toBeam = jointAt('beam-to-post', post.id);
  const beam = structure.members.find((m) => m.role === 'beam' && toBeam?.ties.some((t) => t.part === m.id));
  if (beam && toBeam) {
    push(
      toBeam.at,
      toBeam.mark,
      `${toBeam.mark}: ${beam.mark} to ${post.mark}, tied against uplift and sideways; allowable load in the joint schedule.`,
    );
    push({ ...post.end, z: beam.start.z }, beam.mark, `${beam.mark}: ${beam.section.label}.`);
    // The typical frame, not the gable end: the seat joint that occurs most often.
    const seats = structure.joints.filter(
      (j) => (j.kind === 'truss-to-beam' || j.kind === 'rafter-to-beam') && j.ties.some((t) => t.part === beam.id),
    );
    const often = (mark: string): number => seats.filter((j) => j.mark === mark).length;
    const seat = [...seats].sort((p, q) => often(q.mark) - often(p.mark))[0];
    const frame = structure.members.find((m) => seat?.ties.some((t) => t.part === m.id) && m.strips.length > 0);
    if (seat && frame) {
      push(
        { ...post.end, z: seat.at.z },
        seat.mark,
        `${seat.mark}: ${frame.mark} to ${beam.mark}, tied against uplift; allowable load in the joint schedule.`,
      );
      const q = frame.truss
        ? { x: post.end.x * 0.5, y: post.end.y, z: seat.at.z + 0.25 * frame.truss.height }
        : { x: post.end.x, y: (frame.start.y + frame.end.y) / 2, z: (frame.start.z + frame.end.z) / 2 };
      push(
        q,
        frame.mark,
        frame.truss
          ? `${frame.mark}: ${frame.truss.kind.replace('-', ' ')} at ${ctx.len(spacing(ctx))}, by the truss plant’s engineer; webs shown are not a design.`
          : `${frame.mark}: ${frame.section.label} at ${ctx.len(spacing(ctx))}.`,
      );
    }
  }
  const surface =
    structure.surfaces.find((s) => (cut.name === 'rear' ? s.origin.x * post.end.x >= 0 : true)) ??
    structure.surfaces[0]!;
  const v = 0.3 * Math.max(...surface.outline.map((p) => p.y));
  const top = {
    x: surface.origin.x + surface.v.x * v,
    y: surface.origin.y + surface.v.y * v,
    z: surface.origin.z + surface.v.z * v,
  };
  push(top, surface.roof, `Roof ${surface.roof}: ${surface.layers.map((l) => l.name).join('; ')}.`);
  const fascia = structure.members.find((m) => m.role === 'fascia');
  const roof = project.cover.roofs.find((r) => r.mark === surface.roof)!;
  if (fascia) {
    const e = { x: surface.origin.x, y: surface.origin.y, z: surface.origin.z - 3 };
    push(
      e,
      fascia.mark,
      `${fascia.mark}: fascia ${fascia.section.label}${roof.finish.gutter ? ', gutter and drip edge' : ', drip edge'}; underlayment over the drip edge at eaves.`,
    );
  }
  const ledger = structure.members.find((m) => m.role === 'ledger');
  if (ledger) {
    const wall = jointAt('ledger-to-house', ledger.id);
    const hang = jointAt('rafter-to-ledger', ledger.id);
    push(
      { x: 0, y: ledger.start.y, z: ledger.start.z },
      ledger.mark,
      `${ledger.mark}: ledger ${ledger.section.label} on the wall framing with the siding removed; ${wall?.mark ?? ''} into the house as on ${SHEET_IDS['at-house']}, ${hang?.mark ?? ''} rafter hangers. Flash: wall membrane over the ledger flashing, its ends turned up as dams.`,
    );
  }
  return out;
}

interface Vec3Like {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

function spacing(ctx: SheetContext): number {
  return ctx.input.project.cover.roofs[0]!.framing.spacing;
}

/** The post whose load path the detail follows: at the right end of the picture, nearest the cut. */
function lowPost(
  ctx: SheetContext,
  cut: Cutting,
): { post: Member; footing: (typeof ctx.input.structure.footings)[number] | undefined } | undefined {
  const { structure } = ctx.input;
  const camera = CAMERAS[cut.name];
  const carriers = carriersOf(structure, sectionPlanes(structure)[0].roof);
  const post = structure.members
    .filter((m) => m.role === 'post' && carriers.has(m.id) && see(camera, m.start).depth <= cut.cutAt + 1e-6)
    .sort(
      (p, q) =>
        see(camera, q.start).depth - see(camera, p.start).depth || see(camera, q.start).a - see(camera, p.start).a,
    )[0];
  if (!post) return undefined;
  const footing = structure.footings.find((f) => Math.hypot(f.at.x - post.start.x, f.at.y - post.start.y) < 1);
  return { post, footing };
}

/** A roof that begins farther from the house wall than this, inches, does not meet it. */
const CLEAR_OF_HOUSE = 24;

function drawDetail(ctx: SheetContext): SheetBody[] {
  const { style, area } = ctx;
  const h = style.note;
  const { cut, camera, pic } = sectionPicture(ctx, coverOnly(ctx));
  const chosen = lowPost(ctx, cut);
  const { structure } = ctx.input;
  if (!chosen) return [];
  const a = see(camera, chosen.post.start).a;
  const low = Math.min(...structure.footings.map((f) => f.bottom)) - 4;
  const high = Math.max(...structure.roofs.map((r) => r.highestPoint)) + 8;
  // The detail follows the first section, so only that roof sets how much is shown.
  const all = [sectionPlanes(structure)[0].roof].flatMap((r) => [
    see(camera, { x: r.min.x, y: r.min.y, z: 0 }).a,
    see(camera, { x: r.max.x, y: r.max.y, z: 0 }).a,
  ]);
  const eave = Math.max(...all) + 8;
  // From the ridge, or the high side, of a roof that does not reach the house; else from the house.
  const clear = cut.name === 'rear' || Math.min(...all) > CLEAR_OF_HOUSE;
  const pitched =
    structure.surfaces.find((s) => s.roof === sectionPlanes(structure)[0].roof.mark)?.shape !== 'monoslope';
  const start = cut.name === 'rear' || pitched ? (Math.min(...all) + Math.max(...all)) / 2 - 10 : Math.min(...all) - 8;
  const ridge = clear ? start : -12;
  const frame: Rect = { x: Math.min(ridge, a - 40), y: low, w: eave - Math.min(ridge, a - 40), h: high - low };
  const noteWidth = Math.min(area.w * 0.36, 74 * h);
  const box: Rect = { x: area.x, y: area.y, w: area.w - noteWidth - style.gutter, h: area.h };
  const scale = scaleFor(ctx, frame, box, { x: h * 12, y: h * 5 }, [...DETAIL_SCALES, '3/16', '1/8']);
  const window = { x: frame.x, y: frame.y, w: frame.w + 4, h: frame.h };
  const items = [...soil(ctx, cut, frame), ...pic.items];
  const f = chosen.footing;
  const over: Primitive[] = [];
  if (f) {
    // The foot of a post set in the ground lies below the top of its concrete.
    const z = [
      ...new Set([
        f.bottom,
        ...(f.padThickness ? [f.bottom + f.padThickness] : []),
        f.top,
        chosen.post.start.z,
        chosen.post.end.z,
      ]),
    ].sort((p, q) => p - q);
    over.push(
      ...dims(ctx, { side: 'left', datum: frame.x, scale: scale.ratio, layer: 'S-ANNO-DIMS', tiers: [{ stations: z }] })
        .items,
    );
    over.push(
      ...dims(ctx, {
        side: 'below',
        datum: f.bottom,
        scale: scale.ratio,
        layer: 'S-ANNO-DIMS',
        tiers: [{ stations: [a - f.size / 2, a + f.size / 2] }],
      }).items,
    );
    over.push(
      tag({
        kind: 'footing',
        text: f.mark,
        at: { x: a - f.size / 2, y: f.bottom + 4 },
        off: { x: -h * 4, y: -h * 1 },
        layer: 'S-ANNO-SYMB',
        style,
      }),
    );
  }
  const placed = placeView(ctx, { box, model: frame, scale, number: '1', title: 'Footing to ridge', items, over });
  const inside = (p: Vec2): boolean =>
    p.x >= window.x - 1 && p.x <= window.x + window.w + 1 && p.y >= window.y - 1 && p.y <= window.y + window.h + 1;
  const notes: ColumnNote[] = keys(ctx, cut)
    .filter((k) => inside(k.at))
    .map((k) => ({ target: toPaper(placed.viewport, k.at), text: k.text, mark: k.mark }));
  const column = noteColumn({
    notes,
    x: box.x + box.w + style.gutter,
    side: 'right',
    top: area.y + area.h,
    bottom: area.y,
    width: noteWidth,
    layer: 'S-ANNO-NOTE',
    style,
  });
  return [
    {
      title: 'Footing-to-ridge detail',
      scaleNote: placed.scale.label,
      viewports: [{ ...placed.viewport, window }],
      items: [...placed.items, ...column.items],
    },
  ];
}

export const details: SheetKind = {
  title: 'Footing-to-ridge detail',
  discipline: 'S',
  needed: (i) => i.structure.footings.length > 0,
  draw: drawDetail,
};
