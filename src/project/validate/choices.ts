import type { Issue } from '../../base/issue.js';
import { formatLength } from '../../base/quantity/index.js';
import { findGrade, parseNominal, WOOD_GRADES } from '../../catalog/index.js';
import { fault } from '../issues.js';
import { listing } from '../nearest.js';
import type { WrittenChoices } from '../schema/choices.js';
import type { WrittenCover } from '../schema/cover.js';
import type { PathSegment } from '../text/node.js';
import { connectionIssues } from './connections.js';

/** A species and grade the catalogue has design values for in this size. */
function woodIssues(
  wood: { readonly species: string; readonly grade: string },
  size: string,
  path: readonly PathSegment[],
): Issue[] {
  const n = parseNominal(size)!;
  if (findGrade(wood.species, wood.grade, n.thickness, n.width)) return [];
  const sold = (species: string, grade: string) => findGrade(species, grade, n.thickness, n.width) !== undefined;
  const sawn = WOOD_GRADES.filter((g) => g.table.startsWith('4')).flatMap((g) =>
    g.grade.split(' / ').map((grade) => ({ species: g.species, grade })),
  );
  const grades = [
    ...new Set(sawn.filter((g) => g.species === wood.species && sold(g.species, g.grade)).map((g) => g.grade)),
  ];
  if (grades.length > 0) {
    const message = `the catalogue has no grade "${wood.grade.slice(0, 40)}" of ${wood.species} in ${size}`;
    return [fault('not-one-of', [...path, 'grade'], message, listing(wood.grade, grades))];
  }
  const species = [...new Set(sawn.filter((g) => sold(g.species, g.grade)).map((g) => g.species))];
  const message = `the catalogue has no design values for ${wood.species} in ${size}`;
  return [fault('not-one-of', [...path, 'species'], message, listing(wood.species, species))];
}

/** A joint has one row: two that name the same mark or kind leave open which counts. */
function productIssues(rows: NonNullable<WrittenChoices['joints']>): Issue[] {
  const issues: Issue[] = [];
  const seen = new Map<string, string>();
  for (const [i, row] of rows.entries()) {
    for (const [k, name] of row.serves.entries()) {
      const path = ['choices', 'joints', i, 'serves', k];
      const first = seen.get(name);
      if (first === undefined) seen.set(name, `/choices/joints/${i}`);
      else
        issues.push(fault('contradiction', path, `"${name}" has a product already`, `one row; the first is ${first}`));
    }
    if ([row.down, row.up, row.along, row.across].every((r) => r === 'none')) {
      const path = ['choices', 'joints', i];
      issues.push(fault('contradiction', path, 'the product is rated in no direction', 'a force in one at least'));
    }
  }
  return issues;
}

export function choiceIssues(w: WrittenChoices): Issue[] {
  const issues: Issue[] = [];
  for (const [name, s] of Object.entries(w.sections)) {
    const path = ['choices', 'sections', name];
    if (s.kind === 'solid') issues.push(...woodIssues(s, s.size, path));
    if (s.kind !== 'built-up') continue;
    issues.push(...woodIssues(s, s.ply, path));
    if (s.spacers >= s.plies) {
      issues.push(
        fault(
          'contradiction',
          [...path, 'spacers'],
          `${s.plies} plies leave room for ${s.plies - 1} strips`,
          `at most ${s.plies - 1}`,
        ),
      );
    }
    if (s.spacers > 0 && s.spacerThickness === 0) {
      issues.push(
        fault(
          'contradiction',
          [...path, 'spacerThickness'],
          'the strips between the plies have no thickness',
          'e.g. "1/2 in"',
        ),
      );
    }
  }
  for (const name of Object.keys(w.anchors ?? {})) {
    if (Object.hasOwn(w.footings, name)) continue;
    const message = `no footing is named "${name.slice(0, 40)}"`;
    issues.push(fault('not-one-of', ['choices', 'anchors', name], message, listing(name, Object.keys(w.footings))));
  }
  for (const [name, f] of Object.entries(w.footings)) {
    const path = ['choices', 'footings', name];
    if ('thickness' in f && f.thickness > f.bottom) {
      issues.push(
        fault(
          'contradiction',
          [...path, 'thickness'],
          'the pad is thicker than it is deep',
          `at most ${formatLength(f.bottom)}`,
        ),
      );
    }
    if (f.kind === 'pier-on-pad' && f.diameter > f.width) {
      issues.push(
        fault(
          'contradiction',
          [...path, 'diameter'],
          'the pier is wider than its pad',
          `at most ${formatLength(f.width)}`,
        ),
      );
    }
  }
  issues.push(...productIssues(w.joints ?? []), ...connectionIssues(w));
  return issues;
}

export function trussWoodIssues(w: WrittenCover): Issue[] {
  return w.roofs.flatMap((r, i) =>
    r.framing.kind === 'rafter'
      ? []
      : woodIssues(r.framing.wood, r.framing.chord, ['cover', 'roofs', i, 'framing', 'wood']),
  );
}
