/** Everything the program knows of one part: what it is, what it carries, how near its limits it is, and where that comes from. */

import { type Curve, combineComponent, combineVector } from '../analysis/index.js';
import type { TraceLine } from '../base/trace.js';
import type { CheckContext, CheckResult } from '../checks/contract.js';
import { houseTieDemands } from '../checks/lateral/side-loads.js';
import type { Combination } from '../loads/model.js';
import { JOINT_WORDS, roleWords } from '../structure/joint-words.js';
import { contextOf, type Derived } from './derived.js';
import { explainIn } from './explain.js';

export interface WhyForce {
  readonly combination: string;
  /** Named numbers with their unit: `N −4210 lb`. */
  readonly values: readonly { readonly symbol: string; readonly value: number; readonly unit: string }[];
}

export interface Why {
  readonly mark: string;
  /** `beam B1`, `joint J3 (14 alike): rafter to beam`. */
  readonly what: string;
  /** Section, size or shape, as printed. */
  readonly section: string;
  /** JSON pointers into the project file. */
  readonly paths: readonly string[];
  readonly results: readonly { readonly result: CheckResult; readonly steps: readonly TraceLine[] }[];
  /** Forces by allowable-stress combination, those of the worst part of the mark. */
  readonly forces: readonly WhyForce[];
}

interface Part {
  readonly mark: string;
  readonly what: string;
  readonly section: string;
  readonly paths: readonly string[];
  forces(ctx: CheckContext): readonly WhyForce[];
}

const words = (kind: string): string => kind.replaceAll('-', ' ');
const alike = (n: number): string => (n > 1 ? ` (${n} alike)` : '');
const unique = (texts: readonly string[]): string[] => [...new Set(texts.filter((t) => t !== ''))];

/** Value of largest size along a member, with its sign. */
function peak(curves: readonly Float64Array[], combination: Combination): number {
  let best = 0;
  const count = curves[0]?.length ?? 0;
  for (let i = 0; i < count; i++) {
    let sum = 0;
    for (const t of combination.terms) sum += t.factor * curves[t.case]![i]!;
    if (Math.abs(sum) > Math.abs(best)) best = sum;
  }
  return best;
}

const CURVES: readonly { readonly curve: Curve; readonly symbol: string; readonly unit: string }[] = [
  { curve: 'm', symbol: 'M', unit: 'lb·in' },
  { curve: 'v', symbol: 'V', unit: 'lb' },
  { curve: 'n', symbol: 'N', unit: 'lb' },
];

function memberPart(ctx: CheckContext, mark: string): Part | undefined {
  const { members } = ctx.structure;
  const one = members.find((m) => m.id === mark) ?? members.find((m) => m.mark === mark);
  if (!one) return undefined;
  const count = members.filter((m) => m.mark === one.mark).length;
  return {
    mark: one.mark,
    what: `${roleWords(one.role)} ${one.mark}${alike(count)}`,
    section: one.section.label,
    paths: unique([one.path, one.section.path]),
    forces({ effects, loads }) {
      const e = effects.members.get(one.id);
      if (!e) return [];
      return loads.combinations.map((c) => ({
        combination: c.id,
        values: CURVES.map(({ curve, symbol, unit }) => ({ symbol, value: peak(e[curve], c), unit })),
      }));
    },
  };
}

const AXES = [
  { axis: 'x', symbol: 'along the house' },
  { axis: 'y', symbol: 'out from the house' },
] as const;

function jointPart(ctx: CheckContext, mark: string): Part | undefined {
  const { joints } = ctx.structure;
  const one = joints.find((j) => j.id === mark) ?? joints.find((j) => j.mark === mark);
  if (!one) return undefined;
  const count = joints.filter((j) => j.mark === one.mark).length;
  return {
    mark: one.mark,
    what: `joint ${one.mark}${alike(count)}: ${JOINT_WORDS[one.kind]}`,
    section: one.ties.map((t) => t.part).join(' on '),
    paths: unique([one.path]),
    forces({ effects, loads }) {
      const f = effects.joints.get(one.id);
      if (!f) return [];
      return loads.combinations.map((c) => ({
        combination: c.id,
        values: [
          { symbol: 'down', value: 0 - combineComponent(f.force, c, 'z'), unit: 'lb' },
          ...AXES.map(({ axis, symbol }) => ({ symbol, value: combineComponent(f.force, c, axis), unit: 'lb' })),
        ],
      }));
    },
  };
}

function footingPart(ctx: CheckContext, mark: string): Part | undefined {
  const { footings } = ctx.structure;
  const one = footings.find((f) => f.id === mark) ?? footings.find((f) => f.mark === mark);
  if (!one) return undefined;
  const count = footings.filter((f) => f.mark === one.mark).length;
  return {
    mark: one.mark,
    what: `footing ${one.mark}${alike(count)}: ${words(one.kind)}`,
    section: `${one.size} in ${one.round ? 'round' : 'square'}, ${(one.surface - one.bottom).toFixed(1)} in deep, ${one.fc} psi concrete`,
    paths: unique([one.path, `/choices/footings/${one.choice}`]),
    forces({ effects, loads }) {
      const f = effects.footings.get(one.id);
      if (!f) return [];
      return loads.combinations.map((c) => {
        const v = combineVector(f.force, c);
        return {
          combination: c.id,
          values: [
            { symbol: 'down', value: v.z, unit: 'lb' },
            { symbol: 'along the house', value: v.x, unit: 'lb' },
            { symbol: 'out from the house', value: v.y, unit: 'lb' },
          ],
        };
      });
    },
  };
}

function roofPart(ctx: CheckContext, mark: string): Part | undefined {
  const one = ctx.structure.roofs.find((r) => r.mark === mark);
  if (!one) return undefined;
  const layers = ctx.structure.surfaces.find((s) => s.roof === mark)?.layers ?? [];
  return {
    mark,
    what: `roof ${mark}`,
    section: layers.map((l) => `${l.name} ${l.psf} psf`).join(', '),
    paths: unique([one.path]),
    forces: ({ effects, loads }) => {
      const sway = effects.sway.find((s) => s.roof === mark);
      if (!sway) return [];
      return loads.combinations.map((c) => ({
        combination: c.id,
        values: AXES.map(({ axis, symbol }) => ({
          symbol: `held ${symbol}`,
          value: combineComponent(sway.force, c, axis),
          unit: 'lb',
        })),
      }));
    },
  };
}

/** A part that stands on the old roof: the answers of the roof it belongs to speak of it. */
function overlayPart(ctx: CheckContext, mark: string): Part | undefined {
  for (const o of ctx.structure.overlays ?? []) {
    const m = o.members.find((x) => x.mark === mark || x.id === mark);
    if (!m) continue;
    const count = o.members.filter((x) => x.mark === m.mark).length;
    return {
      mark: o.roof,
      what: `${m.mark}, ${words(m.role)}${alike(count)}, of roof ${o.roof} on the old slope ${o.plane}`,
      section: m.section.label,
      paths: unique([m.path, m.section.path]),
      forces: () => [],
    };
  }
  return undefined;
}

function tiePart(ctx: CheckContext, mark: string): Part | undefined {
  const one = ctx.project.cover.houseTies?.find((t) => t.mark === mark);
  if (!one) return undefined;
  const { kind, diameter, length, spacing } = one.fastener;
  return {
    mark,
    what: `tie ${mark}: ${one.roof} to the house`,
    section: `${kind === 'lag' ? 'lag screws' : 'screws'} ${diameter} x ${length} in at ${spacing} in into ${one.into}`,
    paths: unique([one.path]),
    forces(full) {
      const d = houseTieDemands(full).find((x) => x.mark === mark);
      if (!d) return [];
      return full.loads.combinations.map((c, k) => ({
        combination: c.id,
        values: [
          { symbol: 'along the house', value: d.along[k]!, unit: 'lb' },
          { symbol: 'out from the house', value: d.square[k]!, unit: 'lb' },
          { symbol: 'couple', value: d.couple[k]!, unit: 'lb·in' },
        ],
      }));
    },
  };
}

/** Looked up in this order; marks are unique over all of them. */
const PARTS = [memberPart, jointPart, footingPart, roofPart, tiePart, overlayPart];

/** The answer for a mark or an id; undefined when nothing bears it or nothing could be worked out. */
export function why(d: Derived, mark: string): Why | undefined {
  const ctx = contextOf(d);
  if (!ctx) return undefined;
  let part: Part | undefined;
  for (const find of PARTS) part ??= find(ctx, mark);
  if (!part) return undefined;
  const { mark: name } = part;
  return {
    mark: name,
    what: part.what,
    section: part.section,
    paths: part.paths,
    results: d.results
      .filter((r) => r.subject === name)
      .map((result) => ({ result, steps: explainIn(ctx, result.id) })),
    forces: part.forces(ctx),
  };
}

const figure = (x: number): string => {
  const rounded = Math.abs(x) >= 1000 ? Math.round(x) : Number(x.toPrecision(4));
  return String(rounded === 0 ? 0 : rounded);
};

function stepText(line: TraceLine): string {
  if (line.kind === 'heading') return `    ${line.text}`;
  const numbers = line.substituted && line.substituted !== line.formula ? ` = ${line.substituted}` : '';
  const note = line.note ? `\n        note: ${line.note}` : '';
  const from = line.from && line.from.length > 0 ? `\n        from: ${line.from.join(', ')}` : '';
  return `      ${line.symbol} = ${line.formula}${numbers} = ${figure(line.value)} ${line.unit}\n        ${line.meaning} [${line.clause}]${note}${from}`;
}

/** The answer as plain text for a terminal. */
export function whyText(w: Why): string {
  const lines = [w.what, `  ${w.section}`, `  stated at ${w.paths.join(', ')}`];
  for (const { result: r, steps } of w.results) {
    const ratio = r.capacity > 0 ? `, ratio ${r.ratio.toFixed(3)}` : '';
    const limit = r.capacity > 0 ? ` (${figure(r.demand)} of ${figure(r.capacity)} ${r.unit})` : '';
    lines.push('', `  ${r.title}: ${words(r.status)}${ratio}${limit} [${r.clause}]`);
    if (r.note) lines.push(`    ${r.note}`);
    lines.push(...steps.map(stepText));
  }
  if (w.forces.length > 0) {
    lines.push('', '  Forces by combination');
    for (const f of w.forces) {
      lines.push(`    ${f.combination}: ${f.values.map((v) => `${v.symbol} ${figure(v.value)} ${v.unit}`).join(', ')}`);
    }
  }
  return `${lines.join('\n')}\n`;
}
