/**
 * Reactions of sealed truss sheets as two more load cases. Such sheets give an envelope without load cases: the most down
 * and the most up at each bearing. Each becomes a case that, together with our own dead load, makes up exactly the
 * sheet's reaction: `D + papers` is its gravity reaction, `0.6D + papers` its uplift. Everything below is then checked
 * with ours and with theirs, so the larger governs. Their load duration factor is the sheet's. The analysis fills the
 * cases in (analysis/papers.ts), since they act on bearings and not on the roof.
 */
import type { Project, TrussPaper } from '../project/model.js';
import type { Structure } from '../structure/model.js';
import type { Combination, LoadCase, Loads } from './model.js';

type Kind = NonNullable<LoadCase['papers']>;

/** Sheets whose reactions go below: of trusses that stand here, and not set aside by the user. */
export const papersInUse = (project: Project, structure: Structure): readonly TrussPaper[] =>
  (project.cover.trussPapers ?? []).filter(
    (p) => p.govern === undefined && structure.members.some((m) => m.truss && m.mark === p.mark),
  );

const caseOf = (kind: Kind, from: string): LoadCase => ({
  id: `papers ${kind}`,
  // Counts as live load where deflection asks; wind would be scaled down there and replaced by component wind elsewhere.
  kind: 'Lr',
  title: `Truss papers, greatest ${kind} reaction beyond our dead load: ${from}`,
  areas: [],
  edges: [],
  plan: [],
  selfWeight: false,
  side: [],
  unevenAlong: true,
  papers: kind,
  clause: 'IRC 2018 R802.10.1',
});

/** ASD factor on dead load, strength factors on dead load and papers. */
const FACTORS: Readonly<Record<Kind, { readonly asd: number; readonly strength: readonly [number, number] }>> = {
  gravity: { asd: 1, strength: [1.2, 1.6] },
  // The sheet's uplift is at allowable-stress level, 0.6 W.
  uplift: { asd: 0.6, strength: [0.9, 1 / 0.6] },
};

export function withTrussPapers(project: Project, structure: Structure, loads: Loads): Loads {
  const papers = papersInUse(project, structure);
  const dead = loads.cases.findIndex((c) => c.kind === 'D');
  if (papers.length === 0 || dead < 0) return loads;
  const cases = [...loads.cases];
  const combinations = [...loads.combinations];
  const strength = [...loads.strength];
  for (const kind of ['gravity', 'uplift'] as const) {
    const rows = papers.flatMap((p) => p.reactions.filter((r) => r.kind === kind));
    if (rows.length === 0) continue;
    const own = cases.push(caseOf(kind, papers.map((p) => `${p.mark} ${p.from}`).join('; '))) - 1;
    const factors = FACTORS[kind];
    const make = (d: number, p: number, CD: number): Combination => ({
      id: `${d === 1 ? '' : d}D + ${p === 1 ? '' : Number(p.toFixed(2))}papers ${kind}`,
      label: `${d === 1 ? '' : d}D + ${p === 1 ? '' : Number(p.toFixed(2))}papers`,
      terms: [
        { case: dead, factor: d },
        { case: own, factor: p },
      ],
      CD,
      clause: 'IRC 2018 R802.10.1',
      uplift: kind === 'uplift',
    });
    // Of several sheets the shortest-lived factor would flatter the others: the least counts.
    const CD = Math.min(...rows.map((r) => r.duration));
    combinations.push(make(factors.asd, 1, CD));
    strength.push(make(factors.strength[0], factors.strength[1], CD));
  }
  return { ...loads, cases, combinations, strength };
}
