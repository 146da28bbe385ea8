/** Deleting any input of an example never leads to an issuable set unnoticed: it is an issue that names its path, or a listed assumption. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive } from '../../src/index.js';

const root = resolve(import.meta.dirname, '../..');
const names = readdirSync(join(root, 'examples')).sort().slice(0, 2);

/** Keys that decide nothing about safety: words printed on sheets, and lists that may be empty. */
const FREE =
  /^\/(job|log|prices|\$schema)|^\/basis\/criteria|\/(label|name|from|note|room|description|paving|items|buildings|easements|steps|splices|allowance|parcel|mark|escape)(\/|$)|^\/lot\/(street|items|paving|buildings|easements)|^\/house\/openings\/\d+/;

describe('deleting an input', () => {
  for (const name of names) {
    it(`${name}: every key that decides safety is missed by name`, () => {
      const doc = JSON.parse(
        readFileSync(join(root, 'examples', name, 'project.json'), 'utf8').replace(/^\s*\/\/.*$/gm, ''),
      ) as Record<string, unknown>;
      const silent: string[] = [];
      const visit = (node: unknown, path: string): void => {
        if (!node || typeof node !== 'object' || Array.isArray(node)) {
          if (Array.isArray(node)) for (const [i, v] of node.entries()) visit(v, `${path}/${i}`);
          return;
        }
        for (const key of Object.keys(node)) {
          const at = `${path}/${key}`;
          if (!FREE.test(at)) {
            const record = node as Record<string, unknown>;
            const kept = record[key];
            delete record[key];
            const d = derive(JSON.stringify(doc));
            record[key] = kept;
            const named =
              // Named by its own path, or, for a thing that others refer to, at the place that misses it.
              d.issues.some(
                (i) =>
                  i.severity === 'error' &&
                  (i.path === at ||
                    at.startsWith(`${i.path}/`) ||
                    i.path.startsWith(at) ||
                    (i.code === 'dangling-reference' && i.found === JSON.stringify(key))),
              ) ||
              (d.project?.assumptions.some((a) => a.path === at) ?? false) ||
              (d.project?.questions.some((q) => q.path === at) ?? false) ||
              // An optional fact whose absence leaves a mandatory check open at its own path.
              d.results.some((r) => r.mandatory && r.status === 'not-evaluated' && r.path === at);
            if (!named || d.verdict.issuable) silent.push(at);
          }
          visit((node as Record<string, unknown>)[key], at);
        }
      };
      visit(doc, '');
      expect(silent).toEqual([]);
    });
  }
});
