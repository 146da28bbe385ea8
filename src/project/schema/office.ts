import { type Json, type Leaf, type LeafFault, type LeafResult, value } from './leaf.js';
import { text } from './plain.js';

/** A value that the office or the site decides, as written: with its source, bare, or not known yet. */
export type WrittenOffice<T> =
  | { readonly state: 'given'; readonly value: T; readonly from: string }
  | { readonly state: 'unknown' };

export const UNKNOWN = 'unknown';

const isObject = (raw: unknown): raw is Readonly<Record<string, unknown>> =>
  typeof raw === 'object' && raw !== null && !Array.isArray(raw);

/**
 * `{ "value": …, "from": "county design criteria sheet" }`, a bare value, or `"unknown"`. Unknown is an answer: it
 * becomes a question for the office and keeps the set preliminary.
 */
export function office<T>(inner: Leaf<T>): Leaf<WrittenOffice<T>> {
  const source = text('Who said so, printed beside the value.', 'county design criteria sheet', true);
  const { description, ...shape } = inner.json;
  const orUnknown: Json[] = [shape, { const: UNKNOWN }];
  const example = `{ "value": ${inner.example}, "from": ${source.example} }`;
  const expected = `${example}, or "unknown"`;

  const readValue = (raw: unknown, from: string): LeafResult<WrittenOffice<T>> => {
    if (raw === UNKNOWN) return value({ state: 'unknown' });
    const r = inner.read(raw);
    return r.ok ? value({ state: 'given', value: r.value, from }) : r;
  };

  return {
    example,
    json: {
      description: `${String(description)} The office decides: give the value and who said so, or "unknown" to have it asked.`,
      examples: [UNKNOWN],
      anyOf: [
        {
          type: 'object',
          properties: { value: { anyOf: orUnknown, description }, from: source.json },
          required: ['value', 'from'],
          additionalProperties: false,
        },
        ...orUnknown,
      ],
    },
    read: (raw) => {
      if (!isObject(raw)) return readValue(raw, '');
      const faults: LeafFault[] = [];
      for (const key of Object.keys(raw)) {
        if (key === 'value' || key === 'from') continue;
        faults.push({
          code: 'unknown-key',
          path: [key],
          message: `the key "${key}" is not known here`,
          expected: 'one of "value", "from"',
        });
      }
      const from = raw.from === undefined ? value('') : source.read(raw.from);
      if (!from.ok) faults.push(...from.faults.map((f) => ({ ...f, path: ['from'] })));
      if (raw.value === undefined) {
        faults.push({ code: 'missing', path: ['value'], message: '"value" is missing', expected });
        return { ok: false, faults };
      }
      const read = readValue(raw.value, from.ok ? from.value : '');
      if (!read.ok) faults.push(...read.faults.map((f) => ({ ...f, path: ['value', ...(f.path ?? [])] })));
      return faults.length > 0 || !read.ok ? { ok: false, faults } : read;
    },
  };
}
