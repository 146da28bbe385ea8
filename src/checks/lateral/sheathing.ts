/** What the file says of a roof's sheathing, as the diaphragm tables want it. */
import { NAILS } from '../../catalog/index.js';
import type { Combination } from '../../loads/model.js';
import type { CoverRoof } from '../../project/model.js';
import { findPanel } from '../../structure/layers.js';
import { makeSection } from '../../structure/sections.js';
import { panelGravity } from '../cladding/sheathing-nails.js';
import {
  type Edition,
  type Found,
  findCell,
  type Hazard,
  type Nailed,
  clause as placeOf,
} from '../codes/sdpws-2015/index.js';
import type { CheckContext, Finding } from '../contract.js';
import { failed, notEvaluated, outsideScope } from '../finding.js';

/** Edition that goes with the project's code year (IBC chapter 35, recalled). */
export const editionOf = (ctx: CheckContext): Edition => (ctx.project.basis.codes.id === '2021' ? '2021' : '2015');

/** A rule of the diaphragm standard as printed, in the edition of the project. */
export const clauseOf = (ctx: CheckContext, rule: Parameters<typeof placeOf>[1] = 'whole'): string =>
  placeOf(editionOf(ctx), rule);

/** Hazard a combination's shortest load belongs to. Earthquake counts before wind. */
export function hazardOf(ctx: CheckContext, combination: Combination): Hazard {
  let hazard: Hazard = 'other';
  for (const t of combination.terms) {
    const kind: string = ctx.loads.cases[t.case]!.kind;
    if (kind === 'E') return 'earthquake';
    if (kind === 'W') hazard = 'wind';
  }
  return hazard;
}

export interface Sheathed {
  readonly found: Found;
  readonly nailed: Nailed;
  /** Least specific gravity of the framing. */
  readonly G: number;
  readonly plywood: boolean;
  /** Bending yield strength of the nail, psi; specific gravity of the panel as a side member. */
  readonly Fyb: number;
  readonly panelG: number;
  /** As printed: `7/16 in panel, 8d common nail at 6 in boundaries, 6 in edges, 12 in field, unblocked`. */
  readonly text: string;
}

/** Spacing elsewhere in the panel, at most, inches (4.2.7.1, recalled; 6 in. where frames stand 48 in. apart). */
const fieldLimit = (spacing: number): number => (spacing >= 48 ? 6 : 12);

const PATH_WORDS = 'Needed: the nail and its spacing at panel edges and elsewhere, under finish.nailing.';

/** Boards at the house that the sheathing's edge is nailed to count like framing. */
function nailerGravities(ctx: CheckContext, roof: string): readonly number[] {
  return (ctx.project.cover.houseTies ?? []).flatMap((t) => {
    const choice = t.roof === roof ? ctx.project.choices.sections[t.nailer] : undefined;
    const made = choice && makeSection(choice, { choice: t.nailer, path: `/choices/sections/${t.nailer}` });
    return made?.ok ? [made.section.values.G] : [];
  });
}

/** The sheathing of a roof as a diaphragm, or why it is none. */
export function sheathedRoof(ctx: CheckContext, roof: CoverRoof): Sheathed | { readonly finding: Finding } {
  const clause = clauseOf(ctx);
  const bare = ctx.structure.surfaces.some((s) => s.roof === roof.mark && !s.sheathed);
  const panel = findPanel(roof.finish.sheathing);
  if (bare || !panel) {
    return {
      finding: notEvaluated(
        clause,
        'This roof has no sheathing and is no diaphragm; another way to carry side load must be shown. Needed: bracing in the roof plane.',
      ),
    };
  }
  const { nailing } = roof.finish;
  if (!nailing) return { finding: notEvaluated(clause, `How the sheathing is nailed is not stated. ${PATH_WORDS}`) };
  const nail = NAILS.find((n) => n.id === nailing.nail);
  if (nail?.length === undefined) {
    return {
      finding: outsideScope(
        clause,
        `“${nailing.nail}” is not a smooth nail of the catalogue: a diaphragm nailed with it needs its own report and a licensed professional.`,
      ),
    };
  }
  const framing = ctx.structure.members.filter((m) => m.roof === roof.mark && m.strips.length > 0);
  if (framing.length === 0) return { finding: notEvaluated(clause, 'no framing was placed under this sheathing') };
  if (framing.some((m) => m.section.wet)) {
    return {
      finding: outsideScope(
        clause,
        'The framing under this sheathing is wet in service; the diaphragm tables are for dry wood, a licensed professional must answer.',
      ),
    };
  }
  const G = [...framing.map((m) => m.section.values.G), ...nailerGravities(ctx, roof.mark)].reduce(
    (a, b) => Math.min(a, b),
    1,
  );
  const width = framing.reduce((least, m) => Math.min(least, m.section.plyWidth), 99);
  const blocked = nailing.blocked ?? false;
  const boundary = nailing.boundary ?? nailing.edge;
  const nailed: Nailed = {
    grade: 'sheathing',
    thickness: panel.thickness,
    D: nail.D,
    length: nail.length,
    framing: width,
    blocked,
    boundary,
    edge: nailing.edge,
  };
  if (nailing.field > fieldLimit(roof.framing.spacing)) {
    return {
      finding: failed(
        clause,
        `The nails within the panels of ${roof.mark} stand ${nailing.field} in apart: ${fieldLimit(roof.framing.spacing)} in at most in a diaphragm.`,
      ),
    };
  }
  const found = findCell(nailed);
  if (!found) {
    return {
      finding: failed(
        clause,
        `No row of the diaphragm tables is reached by ${panel.name} in panels with ${nail.name}s at ${Math.max(boundary, nailing.edge)} in: nail at 6 in or closer with 8d or 10d common nails.`,
      ),
    };
  }
  const text = `${panel.name} in panel, ${nail.name} at ${boundary} in boundaries, ${nailing.edge} in edges, ${nailing.field} in field, ${blocked ? 'blocked' : 'unblocked'}`;
  return {
    found,
    nailed,
    G,
    plywood: roof.finish.sheathing.startsWith('plywood'),
    Fyb: nail.Fyb,
    panelG: panelGravity(roof.finish.sheathing),
    text,
  };
}
