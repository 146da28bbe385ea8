/** What the project file names for a joint: a row naming the mark outranks one naming its kind, whichever list it is in. */
import type { Connection } from '../../project/connections.js';
import type { Choices, JointProduct } from '../../project/model.js';
import type { JointKind } from '../../structure/model.js';

export type Served =
  | { readonly by: 'product'; readonly product: JointProduct }
  | { readonly by: 'connection'; readonly connection: Connection };

export function servedBy(choices: Choices, mark: string, kind: JointKind): Served | undefined {
  for (const name of [mark, kind]) {
    const product = choices.joints.find((r) => r.serves.includes(name));
    if (product) return { by: 'product', product };
    const connection = choices.connections.find((r) => r.serves.includes(name));
    if (connection) return { by: 'connection', connection };
  }
  return undefined;
}

/** The product alone, where a product serves the joint. */
export function productFor(choices: Choices, mark: string, kind: JointKind): JointProduct | undefined {
  const served = servedBy(choices, mark, kind);
  return served?.by === 'product' ? served.product : undefined;
}
