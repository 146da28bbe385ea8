/** Fixtures for the tests of this folder: small edits of a whole file. */
import type { Issue } from '../base/issue.js';
import { read } from './read.js';
import { starter } from './starter/index.js';

/** A whole file that reads without errors, one line a member as the starter writes it. */
export const whole = (): string => starter('shed-attached');

/** The file with one piece of text put in place of another, which must be there exactly once or `nth` counts. */
export function edit(from: string, to: string, text: string = whole(), nth = 1): string {
  let at = -1;
  for (let i = 0; i < nth; i++) at = text.indexOf(from, at + 1);
  if (at < 0) throw new Error(`the fixture has no ${from}`);
  return text.slice(0, at) + to + text.slice(at + from.length);
}

export const errorsOf = (text: string): readonly Issue[] => read(text).issues.filter((i) => i.severity === 'error');

/** 1-based line and column of the nth place a piece of text stands. */
export function placeOf(text: string, piece: string, nth = 1): { readonly line: number; readonly column: number } {
  let at = -1;
  for (let i = 0; i < nth; i++) at = text.indexOf(piece, at + 1);
  if (at < 0) throw new Error(`no ${piece}`);
  const before = text.slice(0, at).split('\n');
  return { line: before.length, column: before.at(-1)!.length + 1 };
}
