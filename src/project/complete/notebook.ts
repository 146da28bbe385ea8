import type { Issue } from '../../base/issue.js';
import type { Assumption, Office, Question } from '../model.js';
import type { WrittenOffice } from '../schema/office.js';

/** What stands in for an answer the office has not given: on the safe side for most places, and always printed. */
export interface Placeholder<T> {
  readonly value: T;
  /** As printed: `115 mph`. */
  readonly shown: string;
  /** For the office, on the cover. */
  readonly question: string;
}

/** Collects, while the project is completed, what was assumed, what must be asked and what has no source. */
export class Notebook {
  readonly assumptions: Assumption[] = [];
  readonly questions: Question[] = [];
  readonly issues: Issue[] = [];

  /** The written value, or one we assume and list. */
  default<T>(written: T | undefined, path: string, value: T, text: string, why: string): T {
    if (written !== undefined) return written;
    this.assumptions.push({ path, text, why });
    return value;
  }

  office<T>(written: WrittenOffice<T>, path: string, placeholder: Placeholder<T>): Office<T> {
    if (written.state === 'given') {
      if (written.from === '') {
        this.issues.push({
          code: 'no-source',
          severity: 'note',
          path,
          message: 'This value names no source; the sheets print it without one.',
          expected: '{ "value": …, "from": "county design criteria sheet" }',
        });
      }
      return { value: written.value, state: 'given', from: written.from, path };
    }
    this.ask(path, placeholder.question, placeholder.shown);
    return { value: placeholder.value, state: 'unknown', from: '', path };
  }

  ask(path: string, text: string, meanwhile: string): void {
    this.questions.push({ path, text, meanwhile });
  }
}
