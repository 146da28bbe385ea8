/** Every clause folder is reachable through `codes`, and every exported clause function says what it is and of which standard. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { codes } from '../src/index.js';

const root = resolve(import.meta.dirname, '..');
const HOMES = ['src/checks/codes', 'src/loads/codes'];
const folders = HOMES.flatMap((home) =>
  readdirSync(join(root, home), { withFileTypes: true })
    .filter((e) => e.isDirectory())
    .map((e) => `${home}/${e.name}`),
);
/** A standard by name, a numbered clause, table, equation or figure of the folder's own standard, or plain mechanics. */
const STANDARD =
  /\b(NDS|ASCE|ACI|IBC|IRC|SDPWS|AISC|NSPC|TR12|Technical Report|Supplement)\b|\b[A-Z]?\d+(\.\d+)+|\b(Table|Eq\.|Fig\.|App(endix|\.)|Chapter|Section)|statics|mechanics|closed form|plumbing code|no standard/i;

interface Clause {
  readonly name: string;
  readonly file: string;
  readonly doc: string;
}

/** Exported functions of a file, with their own comment and the file's first. */
function clausesOf(file: string): Clause[] {
  const text = readFileSync(join(root, file), 'utf8');
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const exported = (n: ts.Node): boolean =>
    ts.canHaveModifiers(n) && (ts.getModifiers(n) ?? []).some((m) => m.kind === ts.SyntaxKind.ExportKeyword);
  const doc = (n: ts.Node): string =>
    (ts.getLeadingCommentRanges(text, n.getFullStart()) ?? [])
      .map((r) => text.slice(r.pos, r.end))
      .filter((c) => c.startsWith('/**'))
      .join('\n');
  return source.statements.flatMap((n): Clause[] => {
    if (!exported(n)) return [];
    if (ts.isFunctionDeclaration(n) && n.name) return [{ name: n.name.text, file, doc: doc(n) }];
    if (!ts.isVariableStatement(n)) return [];
    return n.declarationList.declarations
      .filter((d) => d.initializer && (ts.isArrowFunction(d.initializer) || ts.isFunctionExpression(d.initializer)))
      .map((d) => ({ name: d.name.getText(source), file, doc: doc(n) }));
  });
}

const filesOf = (folder: string): string[] =>
  readdirSync(join(root, folder))
    .filter((f) => f.endsWith('.ts') && !f.endsWith('.test.ts'))
    .map((f) => `${folder}/${f}`);

const reachable = new Set(Object.values(codes).flatMap((c) => Object.keys(c)));

describe.each(folders)('%s', (folder) => {
  const clauses = filesOf(folder).flatMap(clausesOf);

  it('is exported through `codes`', async () => {
    expect(existsSync(join(root, folder, 'index.ts'))).toBe(true);
    const index = (await import(join(root, folder, 'index.ts'))) as Record<string, unknown>;
    const functions = Object.keys(index).filter((k) => typeof index[k] === 'function');
    expect(functions.length).toBeGreaterThan(0);
    expect(functions.filter((k) => !reachable.has(k))).toEqual([]);
  });

  it('says of each function what it is and where it is from', () => {
    expect(clauses.length).toBeGreaterThan(0);
    expect(clauses.filter((c) => c.doc === '').map((c) => `${c.file}: ${c.name}`)).toEqual([]);
    expect(clauses.filter((c) => !STANDARD.test(c.doc)).map((c) => `${c.file}: ${c.name}: ${c.doc}`)).toEqual([]);
  });
});
