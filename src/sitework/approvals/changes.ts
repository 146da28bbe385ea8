/** What changed between two projects, and which approval each change reopens. Pure data; drawings are compared elsewhere. */
import type { ApprovalKind, Project } from '../../project/model.js';

export interface Change {
  /** JSON pointer of the value. */
  readonly path: string;
  readonly was: string;
  readonly now: string;
  readonly reopens: readonly ApprovalKind[];
  readonly why: string;
}

interface Rule {
  readonly path: RegExp;
  readonly reopens: readonly ApprovalKind[];
  readonly why: string;
}

const BUILT = 'what is built is no longer what was approved';
const PLACE = 'place, height or area on the lot changed';

/** The first rule that fits decides. What fits none is told without reopening anything. */
const RULES: readonly Rule[] = [
  { path: /^\/(job|log|prices|buying|submittal)(\/|$)/, reopens: [], why: 'not part of what was approved' },
  { path: /^\/lot\/items/, reopens: ['zoning', 'health', 'building'], why: 'tanks, wells and lines on the lot' },
  { path: /^\/(lot|basis\/zoning)(\/|$)/, reopens: ['zoning', 'building'], why: 'the lot or its rules' },
  { path: /^\/basis(\/|$)/, reopens: ['building'], why: 'loads and soil the design rests on' },
  { path: /^\/house(\/|$)/, reopens: ['building'], why: 'the house the cover meets' },
  { path: /^\/patio\/slabs/, reopens: ['zoning', 'association', 'health', 'building'], why: PLACE },
  { path: /^\/patio(\/|$)/, reopens: ['zoning', 'building'], why: PLACE },
  {
    path: /^\/cover\/(roofs\/\d+\/finish\/(covering|fascia|gutter))/,
    reopens: ['association', 'building'],
    why: 'looks, and weight',
  },
  { path: /^\/cover\/roofs\/\d+\/(finish|framing|rakeFraming)/, reopens: ['building'], why: BUILT },
  { path: /^\/cover\/roofs/, reopens: ['zoning', 'association', 'building'], why: PLACE },
  {
    path: /^\/cover\/beams\/\d+\/(from|to|mark)|^\/cover\/beams\/\d+\/posts\/\d+\/(at|mark)|^\/cover\/beams\/\d+$/,
    reopens: ['zoning', 'health', 'building'],
    why: PLACE,
  },
  { path: /^\/cover\/electrical/, reopens: ['electrical'], why: 'wiring' },
  {
    path: /^\/cover\/(attachment|use)/,
    reopens: ['zoning', 'association', 'building'],
    why: 'what kind of structure it is',
  },
  { path: /^\/cover\/trussPapers/, reopens: ['building'], why: 'sealed truss design' },
  { path: /^\/(cover|choices)(\/|$)/, reopens: ['building'], why: BUILT },
];

/** An answer of an office: where it came from is bookkeeping, its value is not. */
const isAnswer = (v: object): boolean => 'value' in v && 'state' in v && 'from' in v;
const skipped = (key: string, within: object, path: string): boolean =>
  key === 'path' ||
  (path === '' && (key === 'assumptions' || key === 'questions')) ||
  (isAnswer(within) && (key === 'state' || key === 'from'));

const token = (key: string): string => key.replaceAll('~', '~0').replaceAll('/', '~1');
const shown = (v: unknown): string => (v === undefined ? 'not there' : typeof v === 'object' ? 'given' : String(v));

interface Difference {
  readonly path: string;
  readonly was: unknown;
  readonly now: unknown;
}

const isObject = (v: unknown): v is Record<string, unknown> => typeof v === 'object' && v !== null;

/** Items by their mark, where all have one: a part added in front moves no other part. */
const byMark = (list: readonly unknown[]): ReadonlyMap<string, number> | undefined => {
  const marks = list.map((v) => (isObject(v) && typeof v.mark === 'string' ? v.mark : undefined));
  return marks.every((m) => m !== undefined) ? new Map(marks.map((m, i) => [m!, i])) : undefined;
};

function walkLists(a: readonly unknown[], b: readonly unknown[], path: string, out: Difference[]): void {
  const [was, now] = [byMark(a), byMark(b)];
  if (!was || !now) {
    for (let i = 0; i < Math.max(a.length, b.length); i++) walk(a[i], b[i], `${path}/${i}`, out);
    return;
  }
  for (const mark of new Set([...was.keys(), ...now.keys()])) {
    const [i, j] = [was.get(mark), now.get(mark)];
    walk(i === undefined ? undefined : a[i], j === undefined ? undefined : b[j], `${path}/${j ?? i}`, out);
  }
}

function walk(a: unknown, b: unknown, path: string, out: Difference[]): void {
  if (Object.is(a, b)) return;
  if (Array.isArray(a) && Array.isArray(b)) {
    walkLists(a, b, path, out);
    return;
  }
  if (!isObject(a) || !isObject(b)) {
    const same = typeof a === 'number' && typeof b === 'number' && Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a));
    if (!same) out.push({ path, was: a, now: b });
    return;
  }
  for (const key of new Set([...Object.keys(a), ...Object.keys(b)]))
    if (!skipped(key, a, path)) walk(a[key], b[key], `${path}/${token(key)}`, out);
}

/** Every value that differs, in the order of the file. */
export function changesBetween(approved: Project, now: Project): readonly Change[] {
  const found: Difference[] = [];
  walk(approved, now, '', found);
  return found.map((f) => {
    const rule = RULES.find((r) => r.path.test(f.path));
    return { path: f.path, was: shown(f.was), now: shown(f.now), reopens: rule?.reopens ?? [], why: rule?.why ?? '' };
  });
}

/** Approvals that any of the changes reopens, in the order to ask. */
export const reopened = (changes: readonly Change[]): readonly ApprovalKind[] =>
  (['zoning', 'association', 'health', 'building', 'electrical'] as const).filter((k) =>
    changes.some((c) => c.reopens.includes(k)),
  );
