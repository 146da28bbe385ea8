/** The detail sheets: what each collects, and where a detail stands, for the bubbles on plans and sections. */
import type { DrawingInput, SheetContext, SheetKind, SheetKindId } from '../contract.js';
import { idAt, SHEET_IDS } from '../contract.js';
import { bearingDetails } from './bearing.js';
import type { Call, Detail, DetailMaker } from './contract.js';
import { eaveDetails } from './eave.js';
import { ledgerDetails } from './ledger.js';
import { type Packed, packDetails } from './pack.js';
import { plyDetails } from './plies.js';
import { postBaseDetails } from './post-base.js';
import { postBeamDetails } from './post-beam.js';
import { postHoleDetails } from './post-hole.js';
import { rakeDetails } from './rake.js';
import { slabEdgeDetails } from './slab-edge.js';
import { tiedRafterDetails } from './tied-rafters.js';
import { trussBracingDetails } from './truss-bracing.js';
import { wallEdgeDetails } from './wall-edge.js';

type Family = Extract<SheetKindId, 'joint-details' | 'edge-details'>;

interface Sheets {
  readonly title: string;
  readonly discipline: 'S' | 'A';
  readonly makers: readonly DetailMaker[];
}

const FAMILIES: Readonly<Record<Family, Sheets>> = {
  'joint-details': {
    title: 'Connection and bracing details',
    discipline: 'S',
    makers: [postBeamDetails, plyDetails, bearingDetails, tiedRafterDetails, trussBracingDetails, ledgerDetails],
  },
  'edge-details': {
    title: 'Edge and weather details',
    discipline: 'A',
    makers: [postBaseDetails, postHoleDetails, slabEdgeDetails, eaveDetails, rakeDetails, wallEdgeDetails],
  },
};

interface Made {
  readonly details: readonly Detail[];
  readonly packed: Packed;
}

const made = new WeakMap<SheetContext, Map<Family, Made>>();

/** The details of a family and their places; drawn once a set, since plans and sections ask where they stand. */
function madeOf(ctx: SheetContext, family: Family): Made {
  const known = made.get(ctx) ?? new Map<Family, Made>();
  made.set(ctx, known);
  const before = known.get(family);
  if (before) return before;
  const { title, makers } = FAMILIES[family];
  const details = makers.flatMap((m) => m(ctx));
  const now = { details, packed: packDetails(ctx, title, details) };
  known.set(family, now);
  return now;
}

export interface DetailCall extends Call {
  readonly id: string;
  readonly title: string;
  readonly number: string;
  readonly sheet: string;
}

/** Every detail of the set with its number, its sheet and the place it shows. */
export const detailCalls = (ctx: SheetContext): readonly DetailCall[] =>
  (Object.keys(FAMILIES) as Family[]).flatMap((family) => {
    const { details, packed } = madeOf(ctx, family);
    return details.flatMap((d) => {
      const s = packed.spots.get(d.id);
      return s
        ? [{ ...d.call, id: d.id, title: d.title, number: s.number, sheet: idAt(SHEET_IDS[family], s.sheet) }]
        : [];
    });
  });

const kind = (family: Family, needed: (i: DrawingInput) => boolean): SheetKind => ({
  title: FAMILIES[family].title,
  discipline: FAMILIES[family].discipline,
  needed,
  draw: (ctx) => madeOf(ctx, family).packed.bodies,
});

export const jointDetails = kind('joint-details', (i) => i.structure.members.some((m) => m.role === 'post'));

export const edgeDetails = kind('edge-details', () => true);
