/**
 * Deleting any input of an issuable example never leaves the set issuable unnoticed: either it is no longer issuable and
 * says why, or what stands in for the input is listed as an assumption, which the cover prints. What is deleted without
 * either is listed here with its reason.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Derived, derive } from '../../src/index.js';

const root = resolve(import.meta.dirname, '../..');
const names = readdirSync(join(root, 'examples')).sort().slice(0, 2);

/** What decides nothing about safety, or cannot be missed because nothing says that it was there. */
const HARMLESS: readonly RegExp[] = [
  // Words and records.
  /^\/(job|log|prices|\$schema)/,
  /^\/basis\/criteria/,
  /\/(label|name|note|room|description|parcel|escape|circuit|switchedBy|swing)$/,
  /^\/(lot\/datum|house\/built)$/,
  // What stands on the lot or in the house: nobody can miss what the file never mentions.
  /^\/lot\/(street|items|paving|buildings|easements|utilities|drainage)/,
  /^\/lot\/courses\/\d+\/elevation$/,
  /^\/house\/(rooms|equipment)$/,
  /^\/patio\/(steps|existing)/,
  /^\/cover\/electrical$/,
  // The kitchen's window lies beside the roof: that room keeps its light and is not asked for any.
  /^\/house\/openings\/2\/(glass|opens)$/,
  // Printed as the sheet words it; the program works out its own.
  /^\/cover\/trussPapers\/\d+\/deflection$/,
  // A further proof. Without it the schedule sends the builder to the anchor in the source of the post base's loads.
  /^\/choices\/anchors/,
  // Who said a thing on which nothing rests: the tie names who saw its own framing; a header nobody vouches for is worked out.
  /^\/house\/builds\/stucco\/verified\/from$/,
  /^\/house\/openings\/1\/header\/verified\/from$/,
];

/** Lists whose rows prove something: each row is deleted too. */
const PROOFS = /^\/(cover\/(trussPapers|houseTies|ledgers)|choices\/(joints|connections))/;
/** Statements about the house and the parts hidden in it, which count only with a name. */
const WORD_OF = /\/(verified|sideLoad\/\w+)\/from$/;

type Node = Record<string, unknown>;
const isObject = (x: unknown): x is Node => typeof x === 'object' && x !== null && !Array.isArray(x);

const noticed = (d: Derived, at: string): boolean =>
  !d.verdict.issuable || (d.project?.assumptions.some((a) => a.path === at || a.path.startsWith(`${at}/`)) ?? false);

/** Whether the deleted thing is the source of an office value, of which the sheets say that it has none. */
const sourceless = (d: Derived, at: string): boolean =>
  d.issues.some((i) => i.code === 'no-source' && `${i.path}/from` === at);

/** Deletes each key, and each row of a proving list, in turn; `look` sees the text without it. */
function eachDeletion(doc: Node, look: (text: string, at: string, isSource: boolean) => void): void {
  const visit = (node: unknown, path: string): void => {
    if (Array.isArray(node)) {
      node.forEach((row: unknown, i) => {
        if (PROOFS.test(path)) {
          node.splice(i, 1);
          look(JSON.stringify(doc), `${path}/${i}`, false);
          node.splice(i, 0, row);
        }
        visit(row, `${path}/${i}`);
      });
      return;
    }
    if (!isObject(node)) return;
    for (const key of Object.keys(node)) {
      const kept = node[key];
      delete node[key];
      look(JSON.stringify(doc), `${path}/${key}`, key === 'from' && 'value' in node);
      node[key] = kept;
      visit(kept, `${path}/${key}`);
    }
  };
  visit(doc, '');
}

const example = (name: string): string => readFileSync(join(root, 'examples', name, 'project.json'), 'utf8');

describe('deleting an input', () => {
  for (const name of names) {
    it(`${name}: nothing that decides safety is missed in silence`, () => {
      expect(derive(example(name)).verdict).toEqual({ issuable: true, reasons: [] });
      const doc = JSON.parse(example(name).replace(/^\s*\/\/.*$/gm, '')) as Node;
      const silent: string[] = [];
      eachDeletion(doc, (text, at, isSource) => {
        if (HARMLESS.some((h) => h.test(at))) return;
        const d = derive(text);
        const found = isSource && !WORD_OF.test(at) ? sourceless(d, at) : noticed(d, at);
        if (!found) silent.push(at);
        // A set that is held back always says why.
        if (!d.verdict.issuable && d.verdict.reasons.length === 0) silent.push(`${at}: no reason`);
      });
      expect(silent).toEqual([]);
    }, 60_000);
  }
});
