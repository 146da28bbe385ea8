/** The truss order: every item a plant asks for, and where order, model and sealed papers disagree. */
import { formatForce, formatLength } from '../../base/quantity/index.js';
import type { CheckContext } from '../../checks/contract.js';
import { USUAL_BUYING } from '../../project/complete/buying.js';
import type { TrussPaper } from '../../project/model.js';
import { type TrussOrder, trussOrders } from '../../report/truss-order.js';
import { byMark } from '../line.js';

export interface OrderRow {
  readonly name: string;
  readonly value: string;
}

export interface Mismatch {
  readonly mark: string;
  readonly what: string;
  readonly ordered: string;
  readonly found: string;
  /** Where the other value stands. */
  readonly where: string;
}

export interface TrussSheet {
  readonly order: TrussOrder;
  readonly rows: readonly OrderRow[];
  readonly mismatches: readonly Mismatch[];
  /** What the plant will ask and the project does not say. */
  readonly missing: readonly string[];
}

/** Lengths that differ by no more are one: plants work to a sixteenth, tapes read an eighth. */
const SAME = 1 / 8;
const SAME_PITCH = 0.05;

const rise = (angle: number): number => 12 * Math.tan(angle);
const pitch = (angle: number): string => `${Number(rise(angle).toFixed(2))}/12`;
const len = (x: number): string => formatLength(x);
const lb = (x: number): string => (x > 0 ? formatForce(Math.ceil(x), 'us', 0) : 'none');
const psf = (x: number): string => (x > 0 ? `${Number(x.toFixed(1))} psf` : 'none');

function compared(o: TrussOrder, p: TrussPaper): Mismatch[] {
  const out: Mismatch[] = [];
  const differ = (
    what: string,
    ours: number,
    theirs: number,
    print: (x: number) => string,
    tolerance: number,
  ): void => {
    if (Math.abs(ours - theirs) > tolerance)
      out.push({ mark: o.mark, what, ordered: print(ours), found: print(theirs), where: p.from });
  };
  const t = o.shape;
  differ('span', t.span, p.span, len, SAME);
  differ('spacing', o.spacing, p.spacing, len, SAME);
  differ('heel height', t.heel, p.heel, len, SAME);
  for (const overhang of new Set(t.overhang)) differ('overhang', overhang, p.overhang, len, SAME);
  differ('pitch', rise(t.topPitch), rise(p.pitch), (x) => `${Number(x.toFixed(2))}/12`, SAME_PITCH);
  differ('bottom pitch', rise(t.bottomPitch), rise(p.bottomPitch), (x) => `${Number(x.toFixed(2))}/12`, SAME_PITCH);
  if (p.bearingWidth > t.bearing + SAME)
    out.push({
      mark: o.mark,
      what: 'bearing',
      ordered: len(t.bearing),
      found: `${len(p.bearingWidth)} needed`,
      where: p.from,
    });
  if (p.sealedBy === '')
    out.push({ mark: o.mark, what: 'seal', ordered: 'sealed by an engineer', found: 'no name', where: p.from });
  return out;
}

function rowsOf(ctx: CheckContext, o: TrussOrder): OrderRow[] {
  const { project, structure } = ctx;
  const t = o.shape;
  const members = structure.members.filter((m) => m.mark === o.mark);
  const roof = project.cover.roofs.find((r) => r.mark === members[0]?.roof);
  const bearings = new Set(
    structure.joints
      .filter((j) => j.kind === 'truss-to-beam' && members.some((m) => m.id === j.ties[0]?.part))
      .map((j) => structure.members.find((m) => m.id === j.ties.at(-1)?.part)?.section.label ?? ''),
  );
  const ends = o.gableEnd
    ? `gable end that spans, studs for sheathing${roof?.rakeFraming ? ', dropped for outlookers' : ', not dropped'}`
    : 'no';
  const { delivery } = project.buying ?? USUAL_BUYING;
  return [
    { name: 'Quantity', value: `${o.count}, at ${len(o.spacing)} on center` },
    { name: 'Type', value: t.kind.replace('-', ' ') },
    { name: 'Gable end', value: ends },
    { name: 'Span', value: `${len(t.span)}, out to out of bearings` },
    { name: 'Pitch', value: `${pitch(t.topPitch)} top chord, ${pitch(t.bottomPitch)} bottom chord` },
    { name: 'Heel height', value: `${len(t.heel)} above the bearing, at the outer face of the beam` },
    {
      name: 'Overhang',
      value: `${len(t.overhang[0])} left, ${len(t.overhang[1])} right, level, from the outer face, fascia not counted`,
    },
    { name: 'Cantilever', value: 'none: bearings are at the ends of the span' },
    { name: 'Tail cut', value: 'plumb; no soffit return' },
    {
      name: 'Bearings',
      value: `${len(t.bearing)} wide, ${[...bearings].join(' and ')}${t.slides === undefined ? '' : `; the ${t.slides === 0 ? 'left' : 'right'} one lets the truss slide along itself`}`,
    },
    { name: 'Top chord', value: `live ${psf(o.live)}, snow ${psf(o.snow)} on plan; dead ${psf(o.topDead)} on slope` },
    { name: 'Bottom chord', value: `live none; dead ${psf(o.bottomDead)}` },
    {
      name: 'Ceiling',
      value: roof?.finish.ceiling
        ? roof.finish.ceiling
        : 'none: the bottom chord is open and is braced as the sealed sheet says',
    },
    { name: 'Wind', value: `${o.wind.speed} mph, exposure ${o.wind.exposure}, open underneath, ${o.wind.flow} flow` },
    { name: 'Our reactions', value: `${lb(o.down)} down, ${lb(o.up)} up at one bearing, allowable-stress level` },
    ...(o.thrust > 0
      ? [
          {
            name: 'Outward',
            value: `${lb(o.thrust)} if both bearings are fastened; say how far they move with one free`,
          },
        ]
      : []),
    ...(o.chordForce > 0
      ? [
          {
            name: 'Side load',
            value: `${lb(o.chordForce)} along the top chord (${o.chordFrom}): state it on the sealed sheet`,
          },
        ]
      : []),
    { name: 'Height', value: `${len(t.height)} from bearing to peak` },
    { name: 'Site', value: project.job.address },
    { name: 'Access', value: delivery.access || 'not given' },
    { name: 'Wanted on site', value: delivery.date || 'not given; plants take 2 to 8 weeks' },
    { name: 'Contact', value: delivery.contact || project.job.owner },
  ];
}

/** One sheet a mark, in the order of the drawings. */
export function trussSheets(ctx: CheckContext): TrussSheet[] {
  const papers = ctx.project.cover.trussPapers ?? [];
  const { delivery } = ctx.project.buying ?? USUAL_BUYING;
  const orders = [...trussOrders(ctx)].sort((a, b) => byMark(a.mark, b.mark));
  return orders.map((order) => {
    const paper = papers.find((p) => p.mark === order.mark);
    const placed = ctx.structure.members.filter((m) => m.mark === order.mark && m.truss);
    const odd = placed.filter((m) => m.truss!.span !== order.shape.span || m.truss!.heel !== order.shape.heel);
    return {
      order,
      rows: rowsOf(ctx, order),
      mismatches: [
        ...(paper ? compared(order, paper) : []),
        ...(placed.length === order.count
          ? []
          : [
              {
                mark: order.mark,
                what: 'count',
                ordered: String(order.count),
                found: String(placed.length),
                where: 'placed structure',
              },
            ]),
        ...odd.map((m) => ({
          mark: order.mark,
          what: 'shape',
          ordered: len(order.shape.span),
          found: len(m.truss!.span),
          where: m.id,
        })),
      ],
      missing: [
        ...(paper ? [] : [`sealed design of ${order.mark}`]),
        ...(delivery.date === '' ? ['date wanted on site'] : []),
        ...(delivery.access === '' ? ['access for the truck'] : []),
      ],
    };
  });
}

/** Papers of trusses the model does not have. */
export const strayPapers = (ctx: CheckContext): string[] =>
  (ctx.project.cover.trussPapers ?? [])
    .map((p) => p.mark)
    .filter((mark) => !ctx.structure.members.some((m) => m.mark === mark && m.truss));
