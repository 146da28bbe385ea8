/** The place to answer what a check is waiting for, right beside the words that ask it. */
import type { CheckResult, TextEdit } from '../../../src/index.js';
import { Field, useSchema } from '../fields/Field.js';
import { SayForm } from '../fields/SayForm.js';
import { sample } from '../fields/sample.js';
import { isOffice, type Node, nodeAt, valueAt, words } from '../fields/schema.js';
import { useProject } from '../store/project.js';
import { answerPath } from './answers.js';
import { ProductForm } from './ProductForm.js';

export function Answer({ result }: { readonly result: CheckResult }) {
  const root = useSchema();
  const tree = useProject((p) => p.summary?.tree);
  if (result.check === 'joint-products') return <ProductForm result={result} />;
  const path = answerPath(result);
  if (!root || path === '') return null;
  const node = nodeAt(root, tree, path);
  if (!node) return null;
  const there = valueAt(tree, path) !== undefined;
  if (there || isOffice(node)) return <Field path={path} />;
  const key = words(path.split('/').at(-1) ?? '');
  return <SayForm node={node} label={key} edits={(value) => saying(root, tree, path, value)} rest={sample} />;
}

/** Says a value for the first time, and with it whatever it stands in that is not said either. */
function saying(root: Node, tree: unknown, path: string, value: unknown): TextEdit[] {
  const steps = path.split('/').slice(1);
  const prefixes = steps.map((_, i) => `/${steps.slice(0, i + 1).join('/')}`);
  const first = prefixes.find((p) => valueAt(tree, p) === undefined) ?? path;
  return [...new Set([first, path])].flatMap((p) => {
    const node = nodeAt(root, tree, p);
    return node ? [{ path: p, value: p === path ? value : sample(node) }] : [];
  });
}
