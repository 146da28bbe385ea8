/**
 * Names that point at other entries, and marks that must be told apart. Judged on the tree rather than on the parsed
 * parts, so that a slip elsewhere in the file does not hide these.
 */
import type { Issue } from '../../base/issue.js';
import { fault } from '../issues.js';
import { listing } from '../nearest.js';
import { type Node, type PathSegment, pointer } from '../text/node.js';
import { indices, keys, nodeAt, textAt } from './tree.js';

interface Reference {
  readonly path: readonly PathSegment[];
  readonly what: string;
  readonly names: readonly string[];
}

const marksIn = (root: Node, list: string): string[] =>
  indices(root, 'cover', list).flatMap((i) => textAt(root, 'cover', list, i, 'mark') ?? []);

function references(root: Node): Reference[] {
  const out: Reference[] = [];
  const add = (what: string, names: readonly string[], ...path: PathSegment[]) => out.push({ path, what, names });
  const sections = keys(root, 'choices', 'sections');
  const footings = keys(root, 'choices', 'footings');
  const builds = keys(root, 'house', 'builds');
  const walls = indices(root, 'house', 'walls').flatMap((i) => textAt(root, 'house', 'walls', i, 'name') ?? []);
  const beams = marksIn(root, 'beams');
  const ledgers = marksIn(root, 'ledgers');
  const posts = indices(root, 'cover', 'beams').flatMap((i) =>
    indices(root, 'cover', 'beams', i, 'posts').flatMap(
      (j) => textAt(root, 'cover', 'beams', i, 'posts', j, 'mark') ?? [],
    ),
  );

  for (const i of indices(root, 'house', 'walls')) add('a wall build', builds, 'house', 'walls', i, 'build');
  for (const i of indices(root, 'house', 'openings')) add('a house wall', walls, 'house', 'openings', i, 'wall');
  for (const i of indices(root, 'house', 'equipment')) add('a house wall', walls, 'house', 'equipment', i, 'wall');
  for (const i of indices(root, 'cover', 'ledgers')) {
    add('a house wall', walls, 'cover', 'ledgers', i, 'wall');
    add('a section', sections, 'cover', 'ledgers', i, 'section');
  }
  for (const i of indices(root, 'cover', 'houseTies')) {
    add('a house wall', walls, 'cover', 'houseTies', i, 'wall');
    add('a roof', marksIn(root, 'roofs'), 'cover', 'houseTies', i, 'roof');
    add('a section', sections, 'cover', 'houseTies', i, 'nailer');
  }
  for (const i of indices(root, 'cover', 'beams')) {
    add('a section', sections, 'cover', 'beams', i, 'section');
    for (const j of indices(root, 'cover', 'beams', i, 'posts')) {
      add('a section', sections, 'cover', 'beams', i, 'posts', j, 'section');
      add('a footing', footings, 'cover', 'beams', i, 'posts', j, 'footing');
      for (const k of indices(root, 'cover', 'beams', i, 'posts', j, 'braces'))
        add('a section', sections, 'cover', 'beams', i, 'posts', j, 'braces', k, 'section');
    }
    for (const j of indices(root, 'cover', 'beams', i, 'shared'))
      add('a post', posts, 'cover', 'beams', i, 'shared', j, 'post');
    for (const end of ['start', 'end']) {
      add('a house wall', walls, 'cover', 'beams', i, 'ends', end, 'wall');
      add('a section', sections, 'cover', 'beams', i, 'ends', end, 'section');
      add('a footing', footings, 'cover', 'beams', i, 'ends', end, 'foot', 'footing');
    }
  }
  const devices = indices(root, 'cover', 'electrical', 'devices');
  const switches = devices.flatMap((i) =>
    textAt(root, 'cover', 'electrical', 'devices', i, 'kind') === 'switch'
      ? (textAt(root, 'cover', 'electrical', 'devices', i, 'mark') ?? [])
      : [],
  );
  for (const i of devices) add('a switch', switches, 'cover', 'electrical', 'devices', i, 'switchedBy');
  for (const i of indices(root, 'cover', 'struts')) {
    add('a section', sections, 'cover', 'struts', i, 'section');
    add('a section', sections, 'cover', 'struts', i, 'braces', 'section');
    for (const end of ['from', 'to'] as const) add('a post', posts, 'cover', 'struts', i, end);
  }
  for (const i of indices(root, 'cover', 'roofs')) {
    for (const j of indices(root, 'cover', 'roofs', i, 'beams')) add('a beam', beams, 'cover', 'roofs', i, 'beams', j);
    add('a beam', beams, 'cover', 'roofs', i, 'low');
    for (const j of indices(root, 'cover', 'roofs', i, 'ends')) add('a beam', beams, 'cover', 'roofs', i, 'ends', j);
    add('a beam', beams, 'cover', 'roofs', i, 'ridgeBeam');
    add('a section', sections, 'cover', 'roofs', i, 'hip');
    for (const key of ['section', 'barge', 'endFrame'])
      add('a section', sections, 'cover', 'roofs', i, 'rakeFraming', key);
    for (const key of ['rafter', 'plate', 'ridge']) add('a section', sections, 'cover', 'roofs', i, 'meetsHouse', key);
    add('a beam', beams, 'cover', 'roofs', i, 'high', 'beam');
    add('a ledger', ledgers, 'cover', 'roofs', i, 'high', 'ledger');
    add('a section', sections, 'cover', 'roofs', i, 'framing', 'section');
    add('a section', sections, 'cover', 'roofs', i, 'framing', 'ties', 'section');
    add('a section', sections, 'cover', 'roofs', i, 'framing', 'ties', 'ridgeBoard');
  }
  return out;
}

/** Every name that names nothing. */
export function danglingReferences(root: Node): Issue[] {
  const issues: Issue[] = [];
  for (const { path, what, names } of references(root)) {
    const name = textAt(root, ...path);
    if (name === undefined || name === '' || names.includes(name)) continue;
    const expected = names.length === 0 ? `${what} of the file; it has none` : listing(name, names);
    issues.push(
      fault('dangling-reference', path, `"${name.slice(0, 60)}" names ${what} that is not in the file`, expected),
    );
  }
  const courses = indices(root, 'lot', 'courses').length;
  const byNumber = [
    ['lot', 'street', 'course'],
    ...indices(root, 'lot', 'easements').map((i) => ['lot', 'easements', i, 'course']),
  ];
  for (const path of byNumber) {
    const node = nodeAt(root, ...path);
    const n = node?.kind === 'scalar' ? node.value : undefined;
    if (typeof n !== 'number' || courses === 0 || n < courses) continue;
    issues.push(
      fault('dangling-reference', path, `the lot has no course ${n}`, `0 to ${courses - 1}, counting from 0`),
    );
  }
  return issues;
}

/** Paths of everything that carries a mark on the sheets. */
function marked(root: Node): PathSegment[][] {
  const beams = indices(root, 'cover', 'beams');
  return [
    ...indices(root, 'house', 'openings').map((i) => ['house', 'openings', i, 'mark']),
    ...indices(root, 'patio', 'slabs').map((i) => ['patio', 'slabs', i, 'mark']),
    ...beams.flatMap((i) => [
      ['cover', 'beams', i, 'mark'],
      ...indices(root, 'cover', 'beams', i, 'posts').flatMap((j) => [
        ['cover', 'beams', i, 'posts', j, 'mark'],
        ['cover', 'beams', i, 'posts', j, 'footingMark'],
      ]),
      ...['start', 'end'].flatMap((end) => [
        ['cover', 'beams', i, 'ends', end, 'mark'],
        ['cover', 'beams', i, 'ends', end, 'foot', 'footingMark'],
      ]),
    ]),
    ...indices(root, 'cover', 'ledgers').map((i) => ['cover', 'ledgers', i, 'mark']),
    ...indices(root, 'cover', 'struts').map((i) => ['cover', 'struts', i, 'mark']),
    ...indices(root, 'cover', 'houseTies').map((i) => ['cover', 'houseTies', i, 'mark']),
    ...indices(root, 'cover', 'electrical', 'devices').map((i) => ['cover', 'electrical', 'devices', i, 'mark']),
    ...indices(root, 'cover', 'roofs').map((i) => ['cover', 'roofs', i, 'mark']),
  ];
}

/** Every mark, wall name or course name used a second time. */
export function duplicateMarks(root: Node): Issue[] {
  const issues: Issue[] = [];
  const once = (paths: readonly (readonly PathSegment[])[], what: string) => {
    const seen = new Map<string, string>();
    for (const path of paths) {
      const mark = textAt(root, ...path);
      if (mark === undefined || mark === '') continue;
      const first = seen.get(mark);
      if (first === undefined) seen.set(mark, pointer(path));
      else
        issues.push(
          fault(
            'duplicate-mark',
            path,
            `the ${what} "${mark.slice(0, 60)}" is taken already`,
            `another ${what}; this one stands at ${first}`,
          ),
        );
    }
  };
  once(marked(root), 'mark');
  once(
    indices(root, 'house', 'walls').map((i) => ['house', 'walls', i, 'name']),
    'wall name',
  );
  once(
    indices(root, 'lot', 'courses').map((i) => ['lot', 'courses', i, 'name']),
    'line name',
  );
  return issues;
}
