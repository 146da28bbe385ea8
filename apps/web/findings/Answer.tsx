/** The place to answer what a check is waiting for, right beside the words that ask it. */
import type { CheckResult } from '../../../src/index.js';
import { Field, sample, useSchema } from '../fields/Field.js';
import { isOffice, nodeAt, valueAt, words } from '../fields/schema.js';
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
      <button type="button" onClick={() => void edit(`${key} said`, [{ path, value: sample(node) }])}>
        Say it: {key.toLowerCase()}
      </button>
      <p className="quiet">It starts with usual values. Put what you will really build in their place.</p>
    </div>
  );
}
