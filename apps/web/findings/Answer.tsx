/** The place to answer what a check is waiting for, right beside the words that ask it. */
import type { CheckResult, TextEdit } from '../../../src/index.js';
import { Field, sample, useSchema } from '../fields/Field.js';
import { isOffice, type Node, nodeAt, valueAt, words } from '../fields/schema.js';
import { edit, useProject } from '../store/project.js';
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
  return (
    <div className="remedies">
      <p>{node.description}</p>
      <button type="button" onClick={() => void edit(`${key} said`, saying(root, tree, path))}>
        Say it: {key.toLowerCase()}
      </button>
      <p className="quiet">It starts with usual values. Put what you will really build in their place.</p>
    </div>
  );
}

/** Says a value for the first time, and with it whatever it stands in that is not said either. */
function saying(root: Node, tree: unknown, path: string): TextEdit[] {
  const steps = path.split('/').slice(1);
  const prefixes = steps.map((_, i) => `/${steps.slice(0, i + 1).join('/')}`);
  const first = prefixes.find((p) => valueAt(tree, p) === undefined) ?? path;
  return [...new Set([first, path])].flatMap((p) => {
    const node = nodeAt(root, tree, p);
    return node ? [{ path: p, value: sample(node) }] : [];
  });
}
