/** Schedules as plain rows: one row a mark, numbers unrounded in inches and pounds, printed by whoever shows them. */
import type { CheckResult } from '../checks/contract.js';
import { type JointDemand, jointDemands } from '../checks/joints/demands.js';
import type { OpeningKind } from '../project/model.js';
import type { Footing, Member, MemberRole, TrussShape } from '../structure/model.js';
import { contextOf, type Derived } from './derived.js';

/** Result nearest its limit, or already past it. */
export interface Nearest {
  readonly title: string;
  readonly ratio: number;
}

export interface MemberRow {
  readonly mark: string;
  readonly role: MemberRole;
  readonly count: number;
  readonly section: string;
  readonly treatment: string;
  readonly wet: boolean;
  /** Cut length, inches; shortest and longest where a mark has several. */
  readonly length: readonly [number, number];
  readonly cuts: readonly string[];
  readonly nearest: Nearest | undefined;
  readonly path: string;
}

export interface FootingRow {
  readonly mark: string;
  readonly count: number;
  readonly kind: Footing['kind'];
  readonly size: number;
  readonly round: boolean;
  readonly thickness: number;
  readonly pier: number;
  readonly depth: number;
  readonly top: number;
  readonly fc: number;
  readonly steel: string;
  readonly nearest: Nearest | undefined;
  readonly path: string;
}

export interface TrussRow extends MemberRow {
  readonly shape: TrussShape;
}

export interface OpeningRow {
  readonly mark: string;
  readonly kind: OpeningKind;
  readonly wall: string;
  readonly width: number;
  readonly height: number;
  readonly head: number;
  readonly room: string;
  readonly escape: boolean;
  readonly path: string;
}

export interface Schedules {
  readonly footings: readonly FootingRow[];
  readonly posts: readonly MemberRow[];
  readonly beams: readonly MemberRow[];
  readonly ledgers: readonly MemberRow[];
  /** Struts and knee braces. */
  readonly bracing: readonly MemberRow[];
  readonly framing: readonly MemberRow[];
  readonly trusses: readonly TrussRow[];
  readonly joints: readonly JointDemand[];
  readonly openings: readonly OpeningRow[];
}

/** Rows of one mark each, in the order the parts were placed. */
function byMark<T extends { readonly mark: string }>(parts: readonly T[]): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const p of parts) {
    const group = groups.get(p.mark);
    if (group) group.push(p);
    else groups.set(p.mark, [p]);
  }
  return [...groups.values()];
}

function nearest(results: readonly CheckResult[], mark: string): Nearest | undefined {
  let best: CheckResult | undefined;
  for (const r of results) {
    if (r.subject !== mark || (r.status !== 'pass' && r.status !== 'fail')) continue;
    if (!best || r.ratio > best.ratio) best = r;
  }
  return best && { title: best.title, ratio: best.ratio };
}

/** Every schedule; undefined when the structure was not worked out. */
export function schedules(d: Derived): Schedules | undefined {
  const ctx = contextOf(d);
  if (!ctx) return undefined;
  const { structure } = ctx;
  const rows = (...roles: readonly MemberRole[]): MemberRow[] =>
    byMark(structure.members.filter((m) => roles.includes(m.role))).map((group) => memberRow(group, d.results));
  return {
    footings: byMark(structure.footings).map((group) => footingRow(group, d.results)),
    posts: rows('post'),
    beams: rows('beam'),
    ledgers: rows('ledger'),
    bracing: rows('strut', 'brace'),
    framing: rows('rafter', 'hip', 'tie', 'ridge', 'outlooker', 'barge', 'fascia', 'gutter', 'blocking'),
    trusses: byMark(structure.members.filter((m) => m.truss !== undefined)).map((group) => ({
      ...memberRow(group, d.results),
      shape: group[0]!.truss!,
    })),
    joints: jointDemands(ctx),
    openings: structure.walls.flatMap((w) =>
      w.openings.map((o) => ({
        mark: o.mark,
        kind: o.kind,
        wall: w.name,
        width: o.width,
        height: o.head - o.sill,
        head: o.head,
        room: o.room,
        escape: o.escape,
        path: o.path,
      })),
    ),
  };
}

function memberRow(group: readonly Member[], results: readonly CheckResult[]): MemberRow {
  const m = group[0]!;
  const lengths = group.map((g) => g.length);
  return {
    mark: m.mark,
    role: m.role,
    count: group.length,
    section: m.section.label,
    treatment: m.section.treatment,
    wet: m.section.wet,
    length: [Math.min(...lengths), Math.max(...lengths)],
    cuts: m.cuts,
    nearest: nearest(results, m.mark),
    path: m.path,
  };
}

function footingRow(group: readonly Footing[], results: readonly CheckResult[]): FootingRow {
  const f = group[0]!;
  return {
    mark: f.mark,
    count: group.length,
    kind: f.kind,
    size: f.size,
    round: f.round,
    thickness: f.padThickness,
    pier: f.pierDiameter,
    depth: f.surface - f.bottom,
    top: f.top,
    fc: f.fc,
    steel: f.steel,
    nearest: nearest(results, f.mark),
    path: f.path,
  };
}
