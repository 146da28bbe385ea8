/** Leaves without units. */
import type { Vec2 } from '../../base/vec.js';
import { findSize, parseNominal, SAWN_SIZES } from '../../catalog/index.js';
import { listing } from '../nearest.js';
import { type Leaf, type LeafFault, type LeafResult, refuse, value, wrongType } from './leaf.js';

const quote = (s: string) => JSON.stringify(s);

/** Any text; `blank` allows the empty one. */
export function text(description: string, example: string, blank = false): Leaf<string> {
  const expected = `text, e.g. ${quote(example)}`;
  return {
    example: quote(example),
    json: { type: 'string', description, examples: [example], ...(blank ? {} : { minLength: 1 }) },
    read: (raw) => {
      if (typeof raw !== 'string') return wrongType(raw, 'a text', expected);
      const s = raw.trim();
      return s === '' && !blank ? refuse('missing', 'the text is empty', expected) : value(s);
    },
  };
}

const DAYS = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** A calendar date `2026-03-02`; `blank` allows none. */
export function date(description: string, blank = false): Leaf<string> {
  const expected = `year-month-day, e.g. "2026-03-02"${blank ? ', or ""' : ''}`;
  const pattern = '^\\d{4}-\\d{2}-\\d{2}$';
  return {
    example: '"2026-03-02"',
    json: { type: 'string', description, examples: ['2026-03-02'], pattern: blank ? `^$|${pattern}` : pattern },
    read: (raw) => {
      if (typeof raw !== 'string') return wrongType(raw, 'a date', expected);
      const s = raw.trim();
      if (s === '' && blank) return value('');
      const m = /^(\d{4})-(\d{2})-(\d{2})$/.exec(s);
      const year = Number(m?.[1]);
      const last =
        m?.[2] === '02' && (year % 4 !== 0 || (year % 100 === 0 && year % 400 !== 0))
          ? 28
          : (DAYS[Number(m?.[2]) - 1] ?? 0);
      const day = Number(m?.[3]);
      return day >= 1 && day <= last ? value(s) : refuse('wrong-type', 'this is not a date of the calendar', expected);
    },
  };
}

export function flag(description: string): Leaf<boolean> {
  return {
    example: 'true',
    json: { type: 'boolean', description, examples: [true, false] },
    read: (raw) =>
      typeof raw === 'boolean' ? value(raw) : wrongType(raw, 'true or false', 'true or false, without quotes'),
  };
}

/** A plain number, for what has no dimension or whose unit the key's description fixes. */
export function number(description: string, example: number, min: number, max: number, whole = false): Leaf<number> {
  const expected = `${whole ? 'a whole number' : 'a number'} from ${min} to ${max}, e.g. ${example}`;
  return {
    example: String(example),
    json: { type: whole ? 'integer' : 'number', description, examples: [example], minimum: min, maximum: max },
    read: (raw) => {
      if (typeof raw !== 'number') return wrongType(raw, 'a number without quotes', expected);
      if (whole && !Number.isInteger(raw)) return refuse('out-of-range', `${raw} is not whole`, expected);
      if (!(raw >= min && raw <= max))
        return refuse('out-of-range', `${raw} is outside what is plausible here`, expected);
      return value(raw);
    },
  };
}

/** One of a fixed list of words. */
export function choice<const T extends string>(
  description: string,
  words: readonly T[],
  example: T = words[0]!,
): Leaf<T> {
  const known = new Set<string>(words);
  return {
    example: quote(example),
    json: { type: 'string', description, enum: [...words], examples: [example] },
    read: (raw) => {
      if (typeof raw !== 'string') return wrongType(raw, 'a word in quotes', listing('', words));
      if (known.has(raw)) return value(raw as T);
      return refuse('not-one-of', `${quote(raw.slice(0, 60))} is not known here`, listing(raw, words));
    },
  };
}

/** A sawn size by its nominal name, read in any spelling and given as `2x10`; `blank` allows none. */
export function size(description: string, example: string, blank = false): Leaf<string> {
  const names = SAWN_SIZES.map((s) => s.nominal);
  return {
    example: quote(example),
    json: {
      type: 'string',
      description,
      examples: [example],
      pattern: `${blank ? '^$|' : ''}^\\s*\\d{1,2}\\s*[xX×]\\s*\\d{1,2}\\s*$`,
    },
    read: (raw) => {
      if (typeof raw !== 'string') return wrongType(raw, 'a nominal size', `e.g. ${quote(example)}`);
      if (blank && raw.trim() === '') return value('');
      const found = findSize(raw);
      if (found) return value(found.nominal);
      const why = parseNominal(raw) ? 'is not a size that is sold' : 'is not a nominal size';
      return refuse('not-one-of', `${quote(raw.slice(0, 40))} ${why}`, listing(raw, names));
    },
  };
}

/** A point `[x, y]` of two leaves of one kind. */
export function point(description: string, coordinate: Leaf<number>): Leaf<Vec2> {
  const example = `[${coordinate.example}, ${coordinate.example}]`;
  return {
    example,
    json: {
      type: 'array',
      description,
      examples: [JSON.parse(example)],
      prefixItems: [coordinate.json, coordinate.json],
      minItems: 2,
      maxItems: 2,
    },
    read: (raw): LeafResult<Vec2> => {
      if (!Array.isArray(raw)) return wrongType(raw, 'a point [x, y]', example);
      if (raw.length !== 2) return refuse('wrong-type', `a point has two lengths, not ${raw.length}`, example);
      const x = coordinate.read(raw[0]);
      const y = coordinate.read(raw[1]);
      if (x.ok && y.ok) return value({ x: x.value, y: y.value });
      const at = (r: LeafResult<number>, i: number): LeafFault[] =>
        r.ok ? [] : r.faults.map((f) => ({ ...f, path: [i, ...(f.path ?? [])] }));
      return { ok: false, faults: [...at(x, 0), ...at(y, 1)] };
    },
  };
}
