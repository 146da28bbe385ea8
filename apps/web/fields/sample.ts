import { isOffice, type Node } from './schema.js';

const CLAIMS: ReadonlySet<string> = new Set(['from', 'source', 'basis']);

/** An example of a whole value, from the examples of its leaves; the owner puts own numbers in their place. */
export function sample(node: Node, key = ''): unknown {
  // Who said so is never made up.
  if (CLAIMS.has(key)) return 'not said yet';
  if (isOffice(node)) return 'unknown';
  if (node.const !== undefined) return node.const;
  if (node.type === 'object' && node.properties)
    return Object.fromEntries(
      Object.entries(node.properties)
        .filter(([k]) => node.required?.includes(k))
        .map(([k, n]) => [k, sample(n, k)]),
    );
  if (node.prefixItems) return node.prefixItems.map((n) => sample(n));
  if (node.type === 'array') return node.items && (node as { minItems?: number }).minItems ? [sample(node.items)] : [];
  if (node.oneOf ?? node.anyOf) return sample((node.oneOf ?? node.anyOf)![0]!);
  return node.examples?.[0] ?? node.enum?.[0] ?? '';
}
