/**
 * JSON with comments and trailing commas, read by hand so that every value keeps its place and one slip does not hide
 * the next. After a fault the reader guesses what was meant (a comma forgotten, quotes left off a key, an inch mark
 * not escaped) and goes on; the guesses only serve to find further faults, no project is built from a faulty text.
 */
import type { Member, Node, ObjectNode, PathSegment } from './node.js';

export type FaultCode = 'syntax' | 'duplicate-key' | 'unknown-key' | 'too-large' | 'too-deep';

export interface Fault {
  readonly code: FaultCode;
  readonly at: number;
  readonly path: readonly PathSegment[];
  readonly message: string;
  readonly expected: string;
  readonly found?: string;
}

export interface ParsedText {
  readonly root: Node | undefined;
  readonly faults: readonly Fault[];
}

/** Longest text read, UTF-16 units: hundreds of times a real project. */
export const MAX_TEXT = 2_000_000;
/** Deepest nesting read; a project needs nine. */
export const MAX_DEPTH = 40;
/** After so many faults the rest is noise. */
const MAX_FAULTS = 25;

/** Thrown inside this file only, to leave the recursion when going on makes no sense. */
const STOP = Symbol('stop');

export function parseText(text: string): ParsedText {
  if (text.length > MAX_TEXT) {
    const message = `the file has ${text.length} characters, more than any project needs`;
    return {
      root: undefined,
      faults: [{ code: 'too-large', at: 0, path: [], message, expected: `at most ${MAX_TEXT}` }],
    };
  }
  const reader = new Reader(text);
  return { root: reader.file(), faults: reader.faults };
}

const QUOTE = 34;
const APOSTROPHE = 39;
const COMMA = 44;
const COLON = 58;
const OPEN_LIST = 91;
const CLOSE_LIST = 93;
const OPEN = 123;
const CLOSE = 125;
const BACKSLASH = 92;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /[^\s,:[\]{}"']+/y;
const ESCAPES: Readonly<Record<string, string>> = {
  '"': '"',
  '\\': '\\',
  '/': '/',
  b: '\b',
  f: '\f',
  n: '\n',
  r: '\r',
  t: '\t',
};

class Reader {
  readonly faults: Fault[] = [];
  private i = 0;
  private readonly path: PathSegment[] = [];

  constructor(private readonly text: string) {
    if (text.charCodeAt(0) === 0xfeff) this.i = 1;
  }

  file(): Node | undefined {
    try {
      this.skip();
      if (this.i >= this.text.length) {
        this.fault(this.i, 'the file is empty', 'a project object, e.g. { "eavewright": 1, … }');
        return undefined;
      }
      const root = this.value();
      this.skip();
      if (this.i < this.text.length) {
        this.fault(
          this.i,
          'the file goes on after its last closing bracket',
          'nothing but comments here',
          this.shown(),
        );
      }
      return root;
    } catch (stop) {
      if (stop !== STOP) throw stop;
      return undefined;
    }
  }

  private fault(at: number, message: string, expected: string, found?: string, code: FaultCode = 'syntax'): void {
    this.faults.push({ code, at, path: [...this.path], message, expected, ...(found === undefined ? {} : { found }) });
    if (this.faults.length >= MAX_FAULTS || code === 'too-deep') throw STOP;
  }

  /** What stands at the reading point, for a message. */
  private shown(): string {
    WORD.lastIndex = this.i;
    return (WORD.exec(this.text)?.[0] ?? this.text[this.i] ?? 'end of file').slice(0, 40);
  }

  /** Passes blanks and comments. */
  private skip(): void {
    const { text } = this;
    for (;;) {
      const c = text.charCodeAt(this.i);
      if (c === 32 || c === 9 || c === 10 || c === 13 || c === 0xa0) this.i++;
      else if (c === 47 && text.charCodeAt(this.i + 1) === 47) {
        while (this.i < text.length && text.charCodeAt(this.i) !== 10 && text.charCodeAt(this.i) !== 13) this.i++;
      } else if (c === 47 && text.charCodeAt(this.i + 1) === 42) {
        const end = text.indexOf('*/', this.i + 2);
        if (end < 0) {
          const at = this.i;
          this.i = text.length;
          this.fault(at, 'the comment that begins here is never closed', '*/ at its end');
        } else this.i = end + 2;
      } else return;
    }
  }

  private value(): Node {
    const start = this.i;
    const c = this.text.charCodeAt(start);
    if (c === OPEN) return this.object();
    if (c === OPEN_LIST) return this.list();
    if (c === QUOTE || c === APOSTROPHE) {
      const value = this.string();
      return { kind: 'scalar', value, start, end: this.i };
    }
    return this.bare();
  }

  private bare(): Node {
    const start = this.i;
    NUMBER.lastIndex = start;
    const number = NUMBER.exec(this.text)?.[0];
    WORD.lastIndex = start;
    const word = WORD.exec(this.text)?.[0] ?? '';
    this.i = start + word.length;
    const scalar = (value: number | boolean | null): Node => ({ kind: 'scalar', value, start, end: this.i });
    if (number !== undefined && number === word) {
      const n = Number(number);
      if (Number.isFinite(n)) return scalar(n);
      this.fault(start, 'the number is too large', 'a number that can be computed with, e.g. 1.5', word);
      return scalar(null);
    }
    if (word === 'true' || word === 'false') return scalar(word === 'true');
    if (word === 'null') return scalar(null);
    if (word === '') {
      this.fault(start, 'a value is missing here', 'a text, number, true, false, list or object', this.shown());
    } else {
      this.fault(start, `${word} is not a value`, `text in double quotes, e.g. "${word.replace(/"/g, '')}"`, word);
    }
    return scalar(null);
  }

  private string(): string {
    const { text } = this;
    const start = this.i;
    const quote = text.charCodeAt(start);
    if (quote === APOSTROPHE) this.fault(start, 'text is written in double quotes', '"…"', "'");
    let out = '';
    let from = start + 1;
    for (let i = from; ; i++) {
      const c = text.charCodeAt(i);
      if (c === quote && !this.strayMark(i)) {
        this.i = i + 1;
        return out + text.slice(from, i);
      }
      if (c === BACKSLASH) {
        out += text.slice(from, i);
        const [piece, length] = this.escape(i);
        out += piece;
        i += length - 1;
        from = i + 1;
      } else if (i >= text.length || c === 10 || c === 13) {
        this.i = i;
        this.fault(start, 'the text that begins here is not closed on its line', 'a double quote at its end');
        return out + text.slice(from, i);
      } else if (c < 32 && c !== 9) {
        this.fault(i, 'a control character stands inside a text', `\\u${c.toString(16).padStart(4, '0')} in its place`);
      }
    }
  }

  /** An inch mark typed as it is: a quote with another right behind it, and only then the end of the value. */
  private strayMark(i: number): boolean {
    if (this.text.charCodeAt(i + 1) !== QUOTE || !/\d/.test(this.text[i - 1] ?? '')) return false;
    if (!/^\s*(?:[,\]}]|\/[/*])/.test(this.text.slice(i + 2, i + 12))) return false;
    this.fault(i, 'an inch mark inside a text needs a backslash before it', `\\" or the word in, e.g. "6 in"`, '"');
    return true;
  }

  private escape(at: number): readonly [string, number] {
    const { text } = this;
    const letter = text[at + 1] ?? '';
    const simple = Object.hasOwn(ESCAPES, letter) ? ESCAPES[letter] : undefined;
    if (simple !== undefined) return [simple, 2];
    const hex = letter === 'u' ? /^[0-9a-fA-F]{4}/.exec(text.slice(at + 2, at + 6)) : null;
    if (hex) return [String.fromCharCode(Number.parseInt(hex[0], 16)), 6];
    this.fault(at, 'a backslash is followed by nothing it can stand before', '\\" or \\\\ or \\u00bd', `\\${letter}`);
    return ['', letter === '\n' || letter === '\r' || letter === '' ? 1 : 2];
  }

  private list(): Node {
    const start = this.enter();
    const items: Node[] = [];
    while (this.more(CLOSE_LIST, start)) {
      this.path.push(items.length);
      const before = this.i;
      items.push(this.value());
      this.path.pop();
      this.separator(CLOSE_LIST, before);
    }
    return { kind: 'list', items, start, end: this.i };
  }

  private object(): Node {
    const start = this.enter();
    const members = new Map<string, Member>();
    const node: ObjectNode = { kind: 'object', members, start, end: start };
    while (this.more(CLOSE, start)) {
      const before = this.i;
      this.member(members);
      this.separator(CLOSE, before);
    }
    return { ...node, end: this.i };
  }

  private enter(): number {
    this.depth++;
    if (this.depth > MAX_DEPTH) {
      this.fault(
        this.i,
        'brackets are nested deeper than any project needs',
        `at most ${MAX_DEPTH} levels`,
        undefined,
        'too-deep',
      );
    }
    return this.i++;
  }
  private depth = 0;

  /** True when another entry follows; passes the closing bracket when none does. */
  private more(close: number, start: number): boolean {
    this.skip();
    const c = this.text.charCodeAt(this.i);
    if (c === close) {
      this.i++;
      this.depth--;
      return false;
    }
    const right = close === CLOSE ? '}' : ']';
    if (this.i >= this.text.length) {
      this.fault(start, 'the bracket that opens here is never closed', `${right} at its end`);
      this.depth--;
      return false;
    }
    if (c === CLOSE || c === CLOSE_LIST) {
      this.fault(this.i, `this bracket closes another kind than the one opened`, right, this.text[this.i]);
      this.i++;
      this.depth--;
      return false;
    }
    return true;
  }

  private member(members: Map<string, Member>): void {
    const keyStart = this.i;
    const c = this.text.charCodeAt(keyStart);
    let key: string;
    if (c === QUOTE || c === APOSTROPHE) key = this.string();
    else {
      WORD.lastIndex = keyStart;
      key = WORD.exec(this.text)?.[0] ?? '';
      this.i += key.length;
      this.fault(
        keyStart,
        'a key in double quotes should stand here',
        key === '' ? '"key": value' : `"${key}"`,
        this.text[keyStart],
      );
      if (key === '') return;
    }
    this.skip();
    if (this.text.charCodeAt(this.i) === COLON) this.i++;
    else this.fault(this.i, `a colon is missing after the key "${key}"`, `"${key}": value`, this.shown());
    this.skip();
    this.path.push(key);
    if (key === '__proto__') {
      this.fault(keyStart, '"__proto__" is not a key of a project', 'another name', undefined, 'unknown-key');
    } else if (members.has(key)) {
      this.fault(
        keyStart,
        `the key "${key}" stands twice in this object`,
        'each key once',
        `"${key}"`,
        'duplicate-key',
      );
    }
    const value = this.value();
    this.path.pop();
    // The first stands, so that what follows is judged by what a reader of the file meets first.
    if (key !== '__proto__' && !members.has(key)) members.set(key, { keyStart, value });
  }

  /** Passes the comma between entries; without one, says so and makes sure the reading goes on. */
  private separator(close: number, before: number): void {
    this.skip();
    const c = this.text.charCodeAt(this.i);
    if (c === COMMA) this.i++;
    else if (c !== close && c !== CLOSE && c !== CLOSE_LIST && this.i < this.text.length) {
      if (this.i > before) this.fault(this.i, 'a comma is missing before this', ',', this.shown());
      else this.i++;
      if (c === COLON) this.i++;
    }
  }
}
