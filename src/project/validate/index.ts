/** What a schema cannot say: names that resolve, geometry that agrees, editions that belong together. */
import type { Issue } from '../../base/issue.js';
import { bundleOf } from '../editions.js';
import { fault, missing } from '../issues.js';
import type { Written } from '../schema/index.js';
import type { Node } from '../text/node.js';
import { choiceIssues, trussWoodIssues } from './choices.js';
import { coverIssues } from './cover.js';
import { houseIssues } from './house.js';
import { outlineIssues } from './outline.js';
import { danglingReferences, duplicateMarks } from './references.js';

function codeIssues(w: Written['basis']): Issue[] {
  const e = bundleOf(w.codes);
  if (e.ok) return [];
  return e.faults.map((f) => fault(f.code, ['basis', 'codes', ...(f.key ? [f.key] : [])], f.message, f.expected));
}

function yardIssues(basis: Written['basis'], lot: Written['lot']): Issue[] {
  const needed =
    lot.courses.some((c) => c.yard === 'street-side') && basis.zoning.setbacks['street-side'] === undefined;
  return needed
    ? [missing(['basis', 'zoning', 'setbacks', 'street-side'], '{ "value": "15 ft", "from": "zoning counter" }')]
    : [];
}

const lotIssues = (w: Written['lot']): Issue[] => [
  ...w.buildings.flatMap((b, i) => outlineIssues(b.outline, ['lot', 'buildings', i, 'outline'])),
  ...w.items.flatMap((p, i) => (p.outline ? outlineIssues(p.outline, ['lot', 'items', i, 'outline']) : [])),
  ...(w.paving ?? []).flatMap((p, i) => outlineIssues(p.outline, ['lot', 'paving', i, 'outline'])),
];

const patioIssues = (w: Written['patio']): Issue[] => [
  ...w.slabs.flatMap((s, i) => outlineIssues(s.outline, ['patio', 'slabs', i, 'outline'])),
  ...(w.existing ?? []).flatMap((s, i) => outlineIssues(s.outline, ['patio', 'existing', i, 'outline'])),
  ...(w.steps ?? []).flatMap((s, i) => outlineIssues(s.outline, ['patio', 'steps', i, 'outline'])),
];

/** Judges the parts that could be read, together with the tree they came from. */
export function validate(root: Node, w: Partial<Written>): Issue[] {
  return [
    ...danglingReferences(root),
    ...duplicateMarks(root),
    ...(w.basis ? codeIssues(w.basis) : []),
    ...(w.basis && w.lot ? yardIssues(w.basis, w.lot) : []),
    ...(w.lot ? lotIssues(w.lot) : []),
    ...(w.house ? houseIssues(w.house) : []),
    ...(w.patio ? patioIssues(w.patio) : []),
    ...(w.cover ? [...coverIssues(w.cover, w.house), ...trussWoodIssues(w.cover)] : []),
    ...(w.choices ? choiceIssues(w.choices) : []),
  ];
}
