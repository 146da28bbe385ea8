/** What the schema of a calculated connection cannot say. */
import type { Issue } from '../../base/issue.js';
import { formatLength } from '../../base/quantity/index.js';
import { findFastener } from '../../catalog/index.js';
import { fault } from '../issues.js';
import { listing } from '../nearest.js';
import type { WrittenChoices } from '../schema/choices.js';
import type { PathSegment } from '../text/node.js';

type Row = NonNullable<WrittenChoices['connections']>[number];
type Part = Row['parts'][number];
type Dowel = Extract<Part, { upper: unknown }>;

function patternIssues(p: Dowel['upper'], path: readonly PathSegment[]): Issue[] {
  const issues: Issue[] = [];
  for (const [count, key] of [
    [p.alongGrain, 'spacingAlong'],
    [p.acrossGrain, 'spacingAcross'],
  ] as const) {
    if (count > 1 && p[key] === undefined) {
      issues.push(fault('missing', [...path, key], 'several fasteners need their spacing', 'e.g. "4 in"'));
    }
  }
  return issues;
}

function dowelIssues(part: Dowel, sections: WrittenChoices['sections'], path: readonly PathSegment[]): Issue[] {
  const issues = [...patternIssues(part.upper, [...path, 'upper']), ...patternIssues(part.lower, [...path, 'lower'])];
  const count = (p: Dowel['upper']) => p.alongGrain * p.acrossGrain;
  if (part.plates === undefined && count(part.upper) !== count(part.lower)) {
    const expected = `${count(part.upper)} in both: without plates the same fasteners pass through both`;
    issues.push(fault('contradiction', [...path, 'lower'], 'the members share their fasteners', expected));
  }
  if (part.plates?.material === 'wood' && sections[part.plates.section]?.kind !== 'solid') {
    const solid = Object.keys(sections).filter((name) => sections[name]!.kind === 'solid');
    const at = [...path, 'plates', 'section'];
    issues.push(fault('not-one-of', at, 'no solid section has this name', listing(part.plates.section, solid)));
  }
  return issues;
}

/** A nail's name says its length. */
function nailIssues(part: Extract<Part, { kind: 'nails' }>, path: readonly PathSegment[]): Issue[] {
  const nail = findFastener(part.size);
  if (nail?.length === undefined || Math.abs(nail.length - part.length) < 0.01) return [];
  const expected = formatLength(nail.length);
  return [fault('contradiction', [...path, 'length'], `a ${nail.name} has a length of its own`, expected)];
}

export function connectionIssues(w: WrittenChoices): Issue[] {
  const issues: Issue[] = [];
  const taken = new Map<string, string>();
  for (const [i, row] of (w.joints ?? []).entries()) {
    for (const name of row.serves) taken.set(name, `/choices/joints/${i}`);
  }
  for (const [i, row] of (w.connections ?? []).entries()) {
    const path = ['choices', 'connections', i] as const;
    for (const [k, name] of row.serves.entries()) {
      const first = taken.get(name);
      if (first === undefined) taken.set(name, `/choices/connections/${i}`);
      else
        issues.push(
          fault(
            'contradiction',
            [...path, 'serves', k],
            `"${name}" is served already`,
            `one row; the first is ${first}`,
          ),
        );
    }
    const held = new Set<string>();
    for (const [p, part] of row.parts.entries()) {
      const at = [...path, 'parts', p];
      for (const [k, way] of part.takes.entries()) {
        if (held.has(way))
          issues.push(
            fault(
              'contradiction',
              [...at, 'takes', k],
              `"${way}" is held by another part`,
              'one part for each direction',
            ),
          );
        held.add(way);
      }
      if ('upper' in part) issues.push(...dowelIssues(part, w.sections, at));
      if (part.kind === 'nails') issues.push(...nailIssues(part, at));
    }
  }
  return issues;
}
