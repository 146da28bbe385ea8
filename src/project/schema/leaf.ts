/**
 * Leaves of the written file. A leaf reads one written value into base units and says what is wrong with it, and
 * carries the JSON Schema by which an editor completes and explains it. zod walks the objects between the leaves.
 */
import { z } from 'zod';

// zod's fast path builds code at run time, which a page under a strict content security policy must not do. One way
// of reading everywhere also keeps Node and the browser alike.
z.config({ jitless: true });

export type LeafFault = {
  readonly code: string;
  readonly message: string;
  readonly expected: string;
  /** Place within the value, for leaves that read lists or objects. */
  readonly path?: readonly (string | number)[];
};
export type LeafResult<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly LeafFault[] };
/** A JSON Schema (draft 2020-12) fragment. */
export type Json = { readonly [key: string]: unknown };

export interface Leaf<T> {
  readonly read: (raw: unknown) => LeafResult<T>;
  readonly json: Json;
  /** Example as it stands in the file. */
  readonly example: string;
}

export const value = <T>(v: T): LeafResult<T> => ({ ok: true, value: v });
export const refuse = (code: string, message: string, expected: string): LeafResult<never> => ({
  ok: false,
  faults: [{ code, message, expected }],
});

/** Params of the zod issues this file raises; `issues.ts` turns them into ours. */
export interface LeafParams {
  readonly code: string;
  readonly expected: string;
}

/** A key that must be there. */
export function given<T>(leaf: Leaf<T>) {
  return z
    .any()
    .transform((raw, ctx): T => {
      if (raw === undefined) {
        fail(ctx, { code: 'missing', message: 'a value is missing here', expected: leaf.example }, raw);
        return z.NEVER;
      }
      const r = leaf.read(raw);
      if (r.ok) return r.value;
      for (const f of r.faults) fail(ctx, f, raw);
      return z.NEVER;
    })
    .meta({ ...leaf.json });
}

/** A key that may be left out. */
export const maybe = <T>(leaf: Leaf<T>) => given(leaf).optional();

function fail(ctx: z.core.ParsePayload, f: LeafFault, input: unknown): void {
  const params: LeafParams = { code: f.code, expected: f.expected };
  ctx.issues.push({ code: 'custom', message: f.message, path: [...(f.path ?? [])], params, input });
}

/** `a text`, `a number`, … for messages about a wrong type. */
export function typeName(raw: unknown): string {
  if (raw === null) return 'null';
  if (Array.isArray(raw)) return 'a list';
  const names: Readonly<Record<string, string>> = {
    string: 'a text',
    number: 'a number',
    boolean: 'true or false',
    object: 'an object',
  };
  return names[typeof raw] ?? typeof raw;
}

export const wrongType = (raw: unknown, wanted: string, expected: string): LeafResult<never> =>
  refuse('wrong-type', `${wanted} should stand here, not ${typeName(raw)}`, expected);

/** An object with exactly these keys, described for editors. */
export const part = <S extends z.core.$ZodLooseShape>(description: string, shape: S) =>
  z.strictObject(shape).meta({ description });

export const list = <T extends z.ZodType>(description: string, item: T) => z.array(item).meta({ description });

/** Objects by a name the author gives. */
export const named = <T extends z.ZodType>(description: string, item: T) =>
  z.record(z.string(), item).meta({ description });
