/** One fastener of a ledger: what it is, whether its place is allowed, and what it holds sideways and in pull. */
import type { Recorder } from '../../base/trace.js';
import {
  BOLTS,
  type Fastener,
  findSpecies,
  LAG_SCREWS,
  LAG_THREAD,
  WOOD_GRADES,
  WOOD_SCREWS,
} from '../../catalog/index.js';
import type { LedgerFastening } from '../../project/model.js';
import type { Member } from '../../structure/model.js';
import {
  adjustedW,
  adjustedZ,
  CdeltaEnd,
  CdeltaSpacing,
  Cg,
  CMConnection,
  type ConnectionKind,
  dowelBearing,
  headPullThrough,
  type LateralValue,
  lateralValueGap,
  minEdgeDistance,
  slipModulus,
  W,
} from '../codes/nds-2018/index.js';
import { designValue } from '../members/design.js';

const RIGHT = Math.PI / 2;
/** Nut, washer and projecting thread of a through bolt, inches. Common practice, no source. */
const NUT = 0.75;

export interface Shank {
  readonly fastener: Fastener;
  readonly f: LedgerFastening;
  readonly ledger: Member;
  /** Bearing length in the framing, inches. */
  readonly lm: number;
  /** Thread in the framing that holds against pull; 0 for a bolt. */
  readonly thread: number;
  /** Whole thread of the screw, tip included; 0 for a bolt. */
  readonly cut: number;
  readonly gap: number;
  /** Specific gravity of the framing. */
  readonly Gm: number;
}

/** Why a fastener may not be used as given. */
export interface Unfit {
  readonly why: string;
}

const LISTS = { lag: LAG_SCREWS, screw: WOOD_SCREWS, bolt: BOLTS } as const;

const inches = (v: number): string => `${Number(v.toFixed(3))} in`;

/** Bearing and thread lengths; the tip of a screw counts in neither. NDS 2018 12.1.4.6, 12.1.5.6, 12.3.5.3. */
export function shankOf(f: LedgerFastening, ledger: Member): Shank | Unfit {
  const fastener = LISTS[f.kind].find((x) => Math.abs(x.D - f.diameter) < 0.004);
  if (!fastener)
    return {
      why: `no ${f.kind} of ${inches(f.diameter)} is in the catalogue; these are: ${LISTS[f.kind].map((x) => inches(x.D)).join(', ')}`,
    };
  const Gm = findSpecies(f.framing.species)?.G;
  if (Gm === undefined) return { why: `the catalogue has no specific gravity of ${f.framing.species}` };
  const gap = f.through + f.standoff;
  const past = f.length - ledger.section.width - gap;
  const { D } = fastener;
  if (f.kind === 'bolt') {
    const need = ledger.section.width + gap + f.framing.depth + NUT;
    if (f.length < need)
      return { why: `the bolt is ${inches(f.length)} long where ${inches(need)} with nut and washers is the least` };
    return { fastener, f, ledger, lm: f.framing.depth, thread: 0, cut: 0, gap, Gm };
  }
  // Wood screws carry no tip length in the catalogue: two diameters are taken.
  const tip = fastener.tip ?? 2 * D;
  const lm = Math.min(f.framing.depth, past - tip);
  const least = (f.kind === 'lag' ? 4 : 6) * D;
  if (lm < least - 1e-9)
    return {
      why: `it bears ${inches(Math.max(0, lm))} in the framing where ${inches(least)} is the least (NDS 2018 12.1): use a through bolt, a thinner or a longer one`,
    };
  const cut =
    f.kind === 'lag'
      ? ([...LAG_THREAD].reverse().find(([length]) => length <= f.length + 1e-9)?.[1] ?? 0)
      : (2 / 3) * f.length;
  return { fastener, f, ledger, lm, thread: Math.max(0, Math.min(cut - tip, lm)), cut, gap, Gm };
}

/** Distances of a ledger's fasteners from ends and edges, inches, with what each must be. */
export interface Spot {
  readonly what: string;
  readonly have: number;
  readonly need: number;
}

/** First place from the ledger's end, and whether anything lifts or pushes along it. */
export interface Use {
  readonly first: number;
  readonly lifts: boolean;
  readonly along: boolean;
}

/** Edge, end and row distances. NDS 2018 12.5.1, Tables 12.5.1A to C; none asked below 1/4 in. but good practice. */
export function spotsOf(s: Shank, use: Use): readonly Spot[] {
  const { f, ledger } = s;
  const { D } = s.fastener;
  if (D < 0.25) return [];
  const top = ledger.start.z + ledger.section.depth / 2;
  const [high, low] = [f.rows[0]!, f.rows[f.rows.length - 1]!];
  const loaded = minEdgeDistance('perpendicular-loaded-edge', ledger.section.width, D);
  const free = minEdgeDistance('perpendicular-unloaded-edge', ledger.section.width, D);
  const spots: Spot[] = [
    { what: "from the ledger's top edge", have: high, need: loaded },
    { what: "from the ledger's bottom edge", have: ledger.section.depth - low, need: use.lifts ? loaded : free },
    { what: "from the ledger's end", have: use.first, need: 3.5 * D },
  ];
  for (let i = 1; i < f.rows.length; i++)
    spots.push({ what: 'between rows', have: f.rows[i]! - f.rows[i - 1]!, need: 3 * D });
  if (f.into === 'band') {
    const bottom = f.framing.bottom ?? Number.POSITIVE_INFINITY;
    const upper = f.framing.top ?? Number.NEGATIVE_INFINITY;
    spots.push(
      { what: "from the band's bottom edge", have: top - low - bottom, need: loaded },
      { what: "from the band's top edge", have: upper - (top - high), need: use.lifts ? loaded : free },
    );
  } else if (use.along) {
    // A stud is 1-1/2 in. wide and the fastener stands in its middle.
    spots.push({ what: "from the stud's edge, side load along the wall pressing on it", have: 0.75, need: loaded });
  }
  return spots;
}

/** Lateral value in the worse of the two directions, along the ledger and across it, lb. */
export function reference(s: Shank, rec?: Recorder): LateralValue {
  const { fastener, f, ledger } = s;
  const at = (ledgerTheta: number, framingTheta: number, r?: Recorder): LateralValue =>
    lateralValueGap(
      {
        D: fastener.Dr ?? fastener.D,
        nominalD: fastener.D,
        lm: s.lm,
        ls: ledger.section.b,
        Fem: dowelBearing(s.Gm, fastener.D, framingTheta, false, r),
        Fes: dowelBearing(ledger.section.values.G, fastener.D, ledgerTheta, false, r),
        Fyb: fastener.Fyb,
        thetaMax: Math.max(ledgerTheta, framingTheta),
      },
      s.gap,
      r,
    );
  // A band's grain runs along the ledger, a stud's across it.
  const stud = f.into === 'studs';
  const down = at(RIGHT, stud ? 0 : RIGHT);
  const along = at(0, stud ? RIGHT : 0);
  if (along.Z < down.Z) return rec ? at(0, stud ? RIGHT : 0, rec) : along;
  return rec ? at(RIGHT, stud ? 0 : RIGHT, rec) : down;
}

export interface Factors {
  readonly Cdelta: number;
  readonly Cg: number;
  readonly CM: number;
  readonly CMpull: number;
}

/** Factors that do not change with the load. Undefined geometry counts as not permitted and is told by `spotsOf`. */
export function factorsOf(s: Shank, first: number, rec?: Recorder): Factors {
  const { f, ledger, fastener } = s;
  const { D } = fastener;
  const gaps = f.rows.slice(1).map((r, i) => r - f.rows[i]!);
  const spacing = gaps.length > 0 ? Math.min(...gaps) : 0;
  const cEnd = CdeltaEnd(first, D, 'tension') ?? 0;
  const cRow = gaps.length > 0 ? (CdeltaSpacing(spacing, D) ?? 0) : 1;
  // Across the grain a member counts with its thickness and the least spacing along the grain, 4D. NDS 2018 11.3.6.
  const E = ledger.section.values.E;
  const across = (thickness: number): number => E * thickness * 4 * D;
  const framing = f.into === 'studs' ? E * 1.5 * f.framing.depth : across(f.framing.depth);
  const group = Cg(f.rows.length, spacing, D, framing, across(ledger.section.b), slipModulus(D, false), rec);
  const wet = { wetAtFabrication: ledger.section.wet, wetInService: ledger.section.wet };
  const kind: ConnectionKind = 'dowel-lateral';
  const CM = CMConnection(kind, wet, D, f.rows.length === 1, rec);
  const CMpull = CMConnection('lag-or-screw-withdrawal', wet, D, true);
  rec?.step({
    symbol: 'CΔ',
    meaning: 'geometry factor: end distance of the first place, spacing between rows',
    formula: 'min(a/(7·D), s/(4·D)) ≤ 1',
    substituted: `a = ${inches(first)}, s = ${gaps.length > 0 ? inches(spacing) : 'one row'}, D = ${inches(D)}`,
    value: Math.min(cEnd, cRow),
    unit: '',
    clause: 'NDS 2018 12.5.1',
  });
  return { Cdelta: Math.min(cEnd, cRow), Cg: group, CM, CMpull };
}

/** Net area under a washer, in²: hole 1/16 in. larger than the shank. */
const washerArea = (s: Shank): number => (Math.PI / 4) * (s.f.washer ** 2 - (s.fastener.D + 1 / 16) ** 2);

/** Least bearing value across the grain of a species, psi; its grades mostly share one. */
const speciesFcPerp = (species: string): number =>
  WOOD_GRADES.reduce(
    (least, g) => (g.species === species ? Math.min(least, g.FcPerp) : least),
    Number.POSITIVE_INFINITY,
  );

/** What one fastener holds against pull at load duration CD, lb. The steel itself is stronger in all these sizes. */
export function pullOf(s: Shank, factors: Factors, CD: number, rec?: Recorder): number {
  const { f, ledger, fastener } = s;
  const area = washerArea(s);
  const FcPerp = designValue('FcPerp', ledger.section, {}, rec) ?? 0;
  const inner = f.kind === 'bolt' ? Math.min(FcPerp, speciesFcPerp(f.framing.species)) : FcPerp;
  if (f.kind === 'bolt') return under(inner, area, rec);
  const w = adjustedW(
    W(f.kind === 'lag' ? 'lag' : 'wood-screw', s.Gm, fastener.D, rec),
    { CD, CM: factors.CMpull },
    rec,
  );
  const drawn = w * s.thread;
  rec?.step({
    symbol: "W'p",
    meaning: 'withdrawal of one fastener, thread without its tip',
    formula: "W'·p",
    substituted: `${w.toFixed(0)}·${s.thread.toFixed(3)}`,
    value: drawn,
    unit: 'lb',
    clause: 'NDS 2018 12.2.1',
  });
  const head =
    f.kind === 'screw'
      ? headPullThrough(ledger.section.values.G, f.washer, ledger.section.b, rec) * CD * factors.CMpull
      : under(FcPerp, area, rec);
  return Math.min(drawn, head);
}

function under(FcPerp: number, area: number, rec?: Recorder): number {
  const value = Math.max(0, FcPerp * area);
  rec?.step({
    symbol: 'Pw',
    meaning: 'pull that the washer holds on the wood',
    formula: "Fc⊥'·Aw",
    substituted: `${FcPerp.toFixed(0)}·${area.toFixed(3)}`,
    value,
    unit: 'lb',
    clause: 'NDS 2018 3.10.2',
  });
  return value;
}

/** Z' of one fastener at load duration CD, lb. */
export const lateralOf = (Z: number, k: Factors, CD: number, rec?: Recorder): number =>
  adjustedZ(Z, { CD, CM: k.CM, Cg: k.Cg, Cdelta: k.Cdelta }, rec);
