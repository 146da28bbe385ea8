/**
 * The whole flow on one screen. Each stage is a pure function of what stands before it and runs only when that exists;
 * issues are gathered on the way. Nothing is thrown for bad input.
 */
import { analyse } from './analysis/index.js';
import { hasErrors, type Issue, type Outcome } from './base/issue.js';
import { runChecks } from './checks/run.js';
import type { DrawingInput } from './drawings/sheets/contract.js';
import { buildLoads } from './loads/index.js';
import { measureLot, surveyLot } from './lot/index.js';
import { locate, type Project, read } from './project/index.js';
import { contextOf, type Derived } from './report/derived.js';
import { explainIn } from './report/explain.js';
import { coverFootprint } from './report/footprint.js';
import { judge } from './review/verdict.js';
import { place } from './structure/place.js';

/** From the text of a project file. */
export function derive(text: string): Derived {
  // 1. text → Project
  const { value: project, issues } = read(text);
  if (!project) return { results: [], issues, verdict: judge(issues, [], false) };
  const derived = deriveProject(project, issues);
  return { ...derived, issues: locate(text, derived.issues) };
}

/** From a project already read; `before` are the reader's own notes. */
export function deriveProject(project: Project, before: readonly Issue[] = []): Derived {
  const issues: Issue[] = [...before];
  const keep = <T>(o: Outcome<T>): T | undefined => {
    issues.push(...o.issues);
    return o.value;
  };
  // 2. Project → lot, structure, and the distances between them
  const survey = keep(surveyLot(project));
  const structure = keep(place(project, survey ? { lotCorners: survey.corners } : {}));
  const lot = survey && structure && measureLot(project, survey, coverFootprint(structure));
  // 3. Structure → load cases and combinations
  const loads = structure && keep(buildLoads(project, structure));
  // 4. Loads → forces
  const effects = structure && loads && keep(analyse(project, structure, loads));
  // 5. Forces → results
  const ready = lot && structure && loads && effects;
  const results = ready ? runChecks({ project, lot, structure, loads, effects }) : [];
  // 6. Results → issuable or preliminary
  const verdict = judge(issues, results, ready !== undefined && !hasErrors(issues));
  return {
    project,
    ...(structure ? { structure } : {}),
    ...(lot ? { lot } : {}),
    ...(loads ? { loads } : {}),
    ...(effects ? { effects } : {}),
    results,
    issues,
    verdict,
  };
}

/** What the sheets draw from; undefined when a stage is missing. */
export function drawingInput(d: Derived): DrawingInput | undefined {
  const ctx = contextOf(d);
  if (!ctx) return undefined;
  const { results, issues, verdict } = d;
  return { ...ctx, results, issues, verdict, explain: (id) => explainIn(ctx, id) };
}
