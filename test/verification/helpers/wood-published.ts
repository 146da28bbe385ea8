/** Published wood comparisons: each expected number comes from `data/wood.json`, never from the test. */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Suite, Tolerance } from '../record.js';

export interface Published {
  readonly id: string;
  readonly topic: string;
  readonly source: string;
  readonly where: string;
  readonly provenance: 'read' | 'memory';
  // The inputs and expected parts differ from topic to topic; each test reads the fields of its own topic.
  // biome-ignore lint/suspicious/noExplicitAny: free-form published data
  readonly inputs: any;
  // biome-ignore lint/suspicious/noExplicitAny: free-form published data
  readonly expected: any;
  readonly tolerance: { readonly abs?: number; readonly rel?: number };
  readonly assumptions: string;
}

const PATH = join(dirname(fileURLToPath(import.meta.url)), '..', 'data', 'wood.json');
export const WOOD: readonly Published[] = JSON.parse(readFileSync(PATH, 'utf8'));

export const published = (id: string): Published => {
  const found = WOOD.find((p) => p.id === id);
  if (found === undefined) throw new Error(`no published check ${id}`);
  return found;
};

export const topic = (...names: readonly string[]): readonly Published[] => WOOD.filter((p) => names.includes(p.topic));

export interface Asked {
  readonly clause: string;
  readonly unit: string;
  /** Why the tolerance is as wide as it is; the number itself is the data's unless `tolerance` is given. */
  readonly reason: string;
  readonly tolerance?: Omit<Tolerance, 'reason'>;
  readonly note?: string;
}

/** Compares `ours` with the number at a dotted path of the check's expected part, e.g. `LC_D.CP`. */
export function against(suite: Suite, p: Published, path: string, ours: number, a: Asked): void {
  // Keys may hold dots themselves (`0.131`): longest key first.
  let at: unknown = p.expected;
  let rest = path;
  while (rest !== '') {
    const keys = Object.keys(at as object).filter((k) => rest === k || rest.startsWith(`${k}.`));
    const key = keys.sort((x, y) => y.length - x.length)[0];
    if (key === undefined) throw new Error(`${p.id}: nothing published at ${path}`);
    at = (at as Record<string, unknown>)[key];
    rest = rest.slice(key.length + 1);
  }
  if (typeof at !== 'number') throw new Error(`${p.id}: no number at ${path}`);
  const { abs, rel } = a.tolerance ?? p.tolerance;
  const tolerance = { ...(abs === undefined ? {} : { abs }), ...(rel === undefined ? {} : { rel }) };
  suite.compare({
    id: p.id,
    quantity: path,
    clause: a.clause,
    source: p.source,
    where: p.where,
    provenance: p.provenance,
    published: at,
    ours,
    unit: a.unit,
    tolerance: { ...tolerance, reason: a.reason },
    ...(a.note === undefined ? {} : { note: a.note }),
  });
}

export const leaveOut = (suite: Suite, p: Published, clause: string, reason: string): void =>
  suite.leaveOut({ id: p.id, clause, source: p.source, reason });

/** Which suite answers for each topic; `wood-coverage.test.ts` shows that no topic is forgotten. */
export const SUITE_OF_TOPIC: Readonly<Record<string, string>> = {
  'section properties': 'wood-sections',
  density: 'wood-sections',
  'adjusted design values': 'wood-members',
  'beam: bending, shear, deflection': 'wood-members',
  'beam: wet service': 'wood-members',
  'beam stability': 'wood-members',
  'beam stability (glulam)': 'wood-members',
  'glulam beam (cold check part)': 'wood-members',
  'joist: governing spans': 'wood-members',
  'rafter: bending and deflection': 'wood-members',
  'joist: required section modulus': 'wood-members',
  column: 'wood-members',
  'built-up column': 'wood-members',
  'column (older KcE format)': 'wood-members',
  'combined bending and compression': 'wood-members',
  'biaxial bending and compression': 'wood-members',
  'combined bending and tension': 'wood-members',
  'bolt, steel side plate': 'wood-connections',
  'bolt, wood to wood single shear': 'wood-connections',
  'lag screw, steel side plate': 'wood-connections',
  'lag screw, wood side member': 'wood-connections',
  'nail, wood to wood single shear': 'wood-connections',
  'nail, reduced penetration': 'wood-connections',
  'nail single shear': 'wood-connections',
  'nail with steel side plate': 'wood-connections',
  'nail, mixed materials': 'wood-connections',
  'dowel bending moment': 'wood-connections',
  'bolt double shear modes': 'wood-connections',
  'lag screw withdrawal': 'wood-connections',
  'nail withdrawal': 'wood-connections',
  'floor joist span': 'wood-spans',
  'rafter span': 'wood-spans',
  'ceiling joist span': 'wood-spans',
  'deck joist span': 'wood-spans',
  'deck joist overhang': 'wood-spans',
  'deck beam span': 'wood-spans',
  'open porch header/girder': 'wood-spans',
  'exterior header span': 'wood-spans',
  'single-ply exterior header': 'wood-spans',
  'deck footing size': 'wood-spans',
  'deck post height': 'wood-spans',
  'continuous beam': 'wood-statics',
  'simple beam': 'wood-statics',
  'overhanging beam': 'wood-statics',
};

/** Entries of the suite's topics that were neither compared nor left out. */
export function forgotten(suite: Suite, name: string): readonly string[] {
  const answered = suite.ids();
  return WOOD.filter((p) => SUITE_OF_TOPIC[p.topic] === name && !answered.has(p.id)).map((p) => p.id);
}
