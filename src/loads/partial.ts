/**
 * Loads on some spans only: half of the balanced snow taken off spans of a continuous member (ASCE 7 7.5), and roof live load
 * on every other span (ASCE 7 4.3.3). The snow is ps without rain on snow and without the low-slope minimum (7.3.4, 7.10).
 */
import type { Project } from '../project/model.js';
import type { RoofPlaced, Structure } from '../structure/model.js';
import { asce, partialSnowPatterns, tableDegrees } from './codes/asce7/index.js';
import type { AreaLoad, LoadCase, PlanLoad, SnowAnswer } from './model.js';
import { type ContinuousLine, continuousLines, spanZones, zoneLoad } from './patterns.js';
import { isAcross } from './wind-plan.js';

/** Gables of 1/2 in 12 to 7 in 12: members square to the ridge need no partial snow, unbalanced snow covers them (7.5). */
const EXEMPT_FROM = (Math.atan(0.5 / 12) * 180) / Math.PI;
const EXEMPT_TO = (Math.atan(7 / 12) * 180) / Math.PI;

function exempt(structure: Structure, line: ContinuousLine): boolean {
  if (line.of !== 'framing') return false;
  const roof = structure.roofs.find((r) => r.mark === line.roofs[0]);
  const pitched = structure.surfaces.some((s) => s.roof === roof?.mark && s.shape === 'pitched');
  const deg = roof ? tableDegrees(roof.slope) : 0;
  return pitched && deg >= EXEMPT_FROM - 1e-9 && deg <= EXEMPT_TO + 1e-9;
}

/** Every other span loaded, starting with the first and with the second. */
export const alternateSpans = (spans: number): readonly (readonly number[])[] =>
  spans < 2 ? [] : [0, 1].map((first) => Array.from({ length: spans }, (_, i) => (i % 2 === first ? 1 : 0)));

const textOf = (pattern: readonly number[]): string =>
  pattern.map((f) => (f === 1 ? 'full' : f === 0 ? 'none' : 'half')).join(', ');

interface Source {
  readonly structure: Structure;
  readonly kind: 'S' | 'Lr';
  /** Full load by roof, psf on plan. */
  readonly psf: ReadonlyMap<string, number>;
  readonly clause: string;
}

/** One case: the pattern on the roofs of the line, the full load on every other roof. */
function patternCase(
  { structure, kind, psf, clause }: Source,
  line: ContinuousLine,
  k: number,
  pattern: readonly number[],
): LoadCase {
  const areas: AreaLoad[] = [];
  const plan: PlanLoad[] = [];
  let unevenAlong = false;
  const put = (roof: RoofPlaced, zone: { from: number; to: number }, p: number): void => {
    const load = zoneLoad(structure, roof, line.toward, zone, p);
    areas.push(...load.areas);
    plan.push(...load.plan);
  };
  for (const roof of structure.roofs) {
    const full = psf.get(roof.mark) ?? 0;
    if (!(full > 0)) continue;
    if (!line.roofs.includes(roof.mark)) {
      plan.push({ roof: roof.mark, psf: full, acts: 'plan' });
      for (const s of structure.surfaces)
        if (s.roof === roof.mark) areas.push({ surface: s.id, psf: full, acts: 'plan' });
      continue;
    }
    if (!isAcross(roof, line.toward)) unevenAlong = true;
    spanZones(line, roof).forEach((zone, i) => {
      put(roof, zone, full * pattern[i]!);
    });
  }
  return {
    id: `${kind}·partial·${line.name}·${k + 1}`,
    kind,
    title: `${kind === 'S' ? 'Partial snow' : 'Roof live load on some spans'}, ${line.name}: ${textOf(pattern)}`,
    areas,
    edges: [],
    plan,
    selfWeight: false,
    side: [],
    clause,
    pattern: true,
    ...(unevenAlong ? { unevenAlong } : {}),
  };
}

/** Partial snow cases of every continuous line, and an answer for each roof. */
export function partialSnow(
  project: Project,
  structure: Structure,
  ps: ReadonlyMap<string, number>,
): { readonly cases: readonly LoadCase[]; readonly answers: readonly SnowAnswer[] } {
  const clause = asce(project.basis.codes.loads, '7.5');
  const { lines, skew } = continuousLines(structure);
  const source: Source = { structure, kind: 'S', psf: ps, clause };
  const cases: LoadCase[] = [];
  const byRoof = new Map<string, string[]>();
  for (const line of lines) {
    if (exempt(structure, line)) continue;
    partialSnowPatterns(line.cuts.length + 1).forEach((pattern, k) => {
      const c = patternCase(source, line, k, pattern);
      cases.push(c);
      for (const roof of line.roofs) byRoof.set(roof, [...(byRoof.get(roof) ?? []), c.id]);
    });
  }
  const answers = structure.roofs.map((roof): SnowAnswer => {
    const mine = byRoof.get(roof.mark) ?? [];
    const bad = skew.length > 0;
    const half = (ps.get(roof.mark) ?? 0) / 2;
    return {
      question: 'partial',
      roof: roof.mark,
      outcome: bad ? 'outside' : mine.length > 0 ? 'included' : 'none',
      cases: bad ? [] : mine,
      peak: bad || mine.length === 0 ? 0 : half,
      clause,
      note: bad
        ? `${skew.join(', ')} is square to neither axis of the house, so its spans cannot be told apart on the roof.`
        : mine.length > 0
          ? `Carried as ${mine.join(', ')}: full balanced snow on the spans named, half of it, ${Number(half.toFixed(2))} psf, on the others; ends that run past a support by less than the member’s depth count with their span.`
          : 'no beam or rafter runs over a support or past one by more than its depth',
    };
  });
  return { cases, answers };
}

/** Roof live load on every other span of each continuous line (ASCE 7 4.3.3); `full` is the plain case it is taken from. */
export function partialLive(project: Project, structure: Structure, full: LoadCase): readonly LoadCase[] {
  const psf = new Map((full.plan ?? []).map((p) => [p.roof, p.psf]));
  const source: Source = { structure, kind: 'Lr', psf, clause: asce(project.basis.codes.loads, '4.3.3') };
  return continuousLines(structure).lines.flatMap((line) =>
    alternateSpans(line.cuts.length + 1).map((pattern, k) => patternCase(source, line, k, pattern)),
  );
}
