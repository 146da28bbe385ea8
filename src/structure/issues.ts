import type { Issue } from '../base/issue.js';

type More = Partial<Pick<Issue, 'found' | 'expected' | 'subject'>>;

export const error = (code: string, path: string, message: string, more: More = {}): Issue => ({
  code,
  severity: 'error',
  path,
  message,
  ...more,
});

export const warning = (code: string, path: string, message: string, more: More = {}): Issue => ({
  code,
  severity: 'warning',
  path,
  message,
  ...more,
});

export const note = (code: string, path: string, message: string, more: More = {}): Issue => ({
  code,
  severity: 'note',
  path,
  message,
  ...more,
});

/** One token of a JSON pointer (RFC 6901). */
export const token = (name: string): string => name.replaceAll('~', '~0').replaceAll('/', '~1');
