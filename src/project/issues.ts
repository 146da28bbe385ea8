/** From zod's findings to ours: stable codes, the place, what was found, what would be right. */
import type { z } from 'zod';
import type { Issue } from '../base/issue.js';
import { listing, nearest } from './nearest.js';
import type { LeafParams } from './schema/leaf.js';
import { find, type Node, type PathSegment, pointer } from './text/node.js';

/** An issue together with where in its value to point: at the key that names it, or at the value. */
export interface Draft {
  readonly issue: Issue;
  readonly atKey?: boolean;
}

export function fault(
  code: string,
  path: readonly PathSegment[],
  message: string,
  expected?: string,
  found?: string,
): Issue {
  return {
    code,
    severity: 'error',
    path: pointer(path),
    message: message[0]!.toUpperCase() + message.slice(1) + (/[.!?]$/.test(message) ? '' : '.'),
    ...(expected === undefined ? {} : { expected }),
    ...(found === undefined ? {} : { found }),
  };
}

const last = (path: readonly PathSegment[]): string => {
  const s = path.at(-1);
  return typeof s === 'number' ? `entry ${s + 1}` : `"${String(s).slice(0, 60)}"`;
};

export const missing = (path: readonly PathSegment[], expected: string): Issue =>
  fault('missing', path, `${last(path)} is missing`, expected);

export function unknownKey(path: readonly PathSegment[], known: readonly string[]): Issue {
  const key = String(path.at(-1));
  const near = nearest(key, known);
  const expected =
    near === undefined ? `one of ${known.join(', ')}` : `did you mean "${near}"? One of ${known.join(', ')}`;
  return fault(
    'unknown-key',
    path,
    `the key ${last(path)} is not known here`,
    expected,
    JSON.stringify(key.slice(0, 60)),
  );
}

/** Keys an object of the schema takes, for "did you mean"; of every kind when the object is a choice of kinds. */
function keysAt(schema: z.core.$ZodType, path: readonly PathSegment[], node: Node): readonly string[] {
  let s: z.core.$ZodType | undefined = schema;
  let at: Node | undefined = node;
  for (let i = 0; s; ) {
    const def: z.core.$ZodTypes['_zod']['def'] = (s as z.core.$ZodTypes)._zod.def;
    if (def.type === 'optional') s = def.innerType;
    else if (def.type === 'union') {
      const kind = at?.kind === 'object' ? at.members.get('kind')?.value : undefined;
      const word = kind?.kind === 'scalar' ? kind.value : undefined;
      s = def.options.find((o) => kindOf(o) === word) ?? def.options[0];
    } else if (i === path.length) return def.type === 'object' ? Object.keys(def.shape) : [];
    else {
      const segment: PathSegment = path[i++]!;
      if (at) at = find(at, [segment]).exact ? find(at, [segment]).node : undefined;
      if (def.type === 'object') s = def.shape[String(segment)];
      else if (def.type === 'array') s = def.element;
      else if (def.type === 'record') s = def.valueType;
      else return [];
    }
  }
  return [];
}

function kindOf(option: z.core.$ZodType): unknown {
  const def = (option as z.core.$ZodTypes)._zod.def;
  const kind = def.type === 'object' ? (def.shape.kind as z.core.$ZodTypes | undefined)?._zod.def : undefined;
  return kind?.type === 'literal' ? kind.values[0] : undefined;
}

/** What one zod finding means, `base` being the path of the part that was read. */
export function fromZod(z: z.core.$ZodIssue, base: string, schema: z.core.$ZodType, root: Node): readonly Draft[] {
  const path = [base, ...z.path.map((s) => (typeof s === 'symbol' ? String(s) : s))];
  switch (z.code) {
    case 'custom': {
      const p = z.params as LeafParams | undefined;
      const code = p?.code ?? 'wrong-type';
      if (code === 'missing' && !find(root, path).exact) return [{ issue: missing(path, p?.expected ?? '') }];
      return [{ issue: fault(code, path, z.message, p?.expected), atKey: code === 'unknown-key' }];
    }
    case 'unrecognized_keys': {
      const known = keysAt(schema, z.path as PathSegment[], find(root, [base]).node);
      return z.keys.map((key) => ({ issue: unknownKey([...path, key], known), atKey: true }));
    }
    case 'invalid_type': {
      const wanted = z.expected === 'array' ? 'a list' : 'an object';
      if (!find(root, path).exact) return [{ issue: missing(path, z.expected === 'array' ? '[ … ]' : '{ … }') }];
      return [
        { issue: fault('wrong-type', path, `${wanted} should stand here`, z.expected === 'array' ? '[ … ]' : '{ … }') },
      ];
    }
    case 'invalid_union': {
      const options = 'options' in z && Array.isArray(z.options) ? z.options.map(String) : [];
      const f = find(root, path);
      if (!f.exact) return [{ issue: missing(path, listing('', options)) }];
      const found = f.node.kind === 'scalar' ? String(f.node.value) : '';
      return [{ issue: fault('not-one-of', path, `${last(path)} names no kind known here`, listing(found, options)) }];
    }
    case 'too_small':
    case 'too_big': {
      const small = z.code === 'too_small';
      const limit = small ? `at least ${z.minimum}` : `at most ${z.maximum}`;
      return [
        {
          issue: fault('out-of-range', path, `the list ${last(path)} has too ${small ? 'few' : 'many'} entries`, limit),
        },
      ];
    }
    default:
      return [{ issue: fault('wrong-type', path, z.message) }];
  }
}
