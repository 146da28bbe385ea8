/**
 * The work as tasks with durations, waits and what each must wait for. Durations are for two handy people and are common
 * practice without a source, as each task says; waits for concrete and lead times have theirs.
 */

import { area as polygonArea } from '../../base/plane.js';
import type { StageId } from '../../project/model.js';
import { CUBIC_INCHES_PER_CUBIC_FOOT } from '../../structure/constants.js';
import type { Structure } from '../../structure/model.js';

export interface Wait {
  readonly on: string;
  /** Days between the end of that task and the start of this one. */
  readonly days: number;
  readonly why: string;
}

export interface Task {
  readonly id: string;
  readonly title: string;
  /** Days of work. */
  readonly days: number;
  readonly after: readonly Wait[];
  /** Inspection that must be passed before what follows. */
  readonly stage?: StageId | undefined;
  readonly basis: string;
}

const PRACTICE = 'two people, common practice, no source';
const CURE =
  'load after 7 days; forms 24 to 48 hours; about half strength at 48 hours, full at 28 days (builders’ forums and pages)';
/** Half days: nothing on a site is known better. */
const half = (days: number): number => Math.max(0.5, Math.ceil(days * 2 - 1e-9) / 2);

/** Rates a day for two people. */
const RATES = {
  hole: 54,
  pier: 6,
  post: 4,
  beam: 2,
  brace: 8,
  truss: 10,
  rafter: 14,
  sheathing: 500,
  roofing: 300,
} as const;
/** Days to call an inspection ahead. Common practice, no source. */
const CALL = 1;
/** Weeks from the order to trusses on site: two to eight on fabricators' pages; the middle of the lower half. */
const TRUSS_LEAD = 28;

const SQUARE_FOOT = 144;

export function tasksOf(structure: Structure): readonly Task[] {
  const tasks: Task[] = [];
  const has = (id: string): boolean => tasks.some((t) => t.id === id);
  const add = (t: Omit<Task, 'after'> & { readonly after: readonly (Wait | undefined)[] }): void => {
    tasks.push({ ...t, after: t.after.filter((w): w is Wait => w !== undefined && has(w.on)) });
  };
  const wait = (on: string, days = 0, why = ''): Wait => ({ on, days, why });
  const fresh = structure.members.filter((m) => m.state === 'new');
  const of = (...roles: string[]) => fresh.filter((m) => roles.includes(m.role));
  const holes = structure.footings.filter((f) => !f.onSlab);
  const framed = fresh.filter((m) => m.strips.length > 0);
  const trusses = framed.filter((m) => m.truss);
  const roof = structure.surfaces.reduce((s, f) => s + polygonArea(f.outline), 0) / SQUARE_FOOT;

  add({
    id: 'locate',
    title: 'Call the utility locate, mark white',
    days: 0.5,
    after: [],
    stage: 'locate',
    basis: PRACTICE,
  });
  if (trusses.length > 0)
    add({
      id: 'truss-lead',
      title: 'Trusses made by the plant',
      days: TRUSS_LEAD,
      after: [],
      basis: 'lead time 2 to 8 weeks on fabricators’ pages; ask the plant',
    });
  add({
    id: 'layout',
    title: 'Batter boards, strings, square',
    days: 1,
    after: [wait('locate', 3, 'utilities have two to three business days to mark')],
    stage: 'setback',
    basis: PRACTICE,
  });
  if (holes.length > 0) {
    const earth = holes.reduce((s, f) => {
      const area = f.round ? (Math.PI * f.size ** 2) / 4 : f.size ** 2;
      return s + (area * Math.max(0, f.surface - f.bottom)) / CUBIC_INCHES_PER_CUBIC_FOOT;
    }, 0);
    add({
      id: 'dig',
      title: `Dig ${holes.length} holes, ${Math.round(earth)} cu ft`,
      days: half(earth / RATES.hole),
      after: [wait('layout')],
      basis: `one cubic yard a day and person by hand (${PRACTICE})`,
    });
    add({
      id: 'forms',
      title: 'Forms, steel, anchors set out',
      days: half(holes.length / RATES.pier),
      after: [wait('dig')],
      basis: PRACTICE,
    });
    add({
      id: 'footing-look',
      title: 'Setback and footing inspection',
      days: 0.5,
      after: [wait('forms', CALL, 'call a day ahead')],
      stage: 'footing',
      basis: PRACTICE,
    });
    add({
      id: 'pour',
      title: 'Pour footings, set anchors',
      days: half(holes.length / 8),
      after: [wait('footing-look')],
      basis: PRACTICE,
    });
    add({
      id: 'strip',
      title: 'Forms off, backfill, measure pier tops',
      days: 0.5,
      after: [wait('pour', 2, 'forms stay 24 to 48 hours')],
      basis: CURE,
    });
  }
  if (structure.slabs.some((s) => s.state === 'new')) {
    add({
      id: 'slab-forms',
      title: 'Slab base and forms',
      days: 2,
      after: [wait('strip'), wait('layout')],
      stage: 'slab',
      basis: PRACTICE,
    });
    add({
      id: 'slab-pour',
      title: 'Pour and finish the slab',
      days: 1,
      after: [wait('slab-forms', CALL, 'inspection first')],
      basis: PRACTICE,
    });
  }
  const cured = [
    wait('strip'),
    wait('pour', 7, 'concrete takes load after 7 days'),
    wait('slab-pour', 7, 'slab takes load after 7 days'),
    wait('layout'),
  ];
  const posts = of('post');
  if (posts.length > 0)
    add({
      id: 'posts',
      title: `Cut and stand ${posts.length} posts, brace them`,
      days: half(posts.length / RATES.post),
      after: cured,
      stage: 'posts',
      basis: `${PRACTICE}; ${CURE}`,
    });
  const beams = of('beam', 'ridge', 'ledger');
  if (beams.length > 0)
    add({
      id: 'beams',
      title: `Set ${beams.length} beams and ledgers`,
      days: half(beams.length / RATES.beam),
      after: [wait('posts'), ...(posts.length > 0 ? [] : cured)],
      stage: 'beams',
      basis: PRACTICE,
    });
  const braces = of('brace', 'strut');
  if (braces.length > 0)
    add({
      id: 'braces',
      title: `Fit ${braces.length} braces and cross members`,
      days: half(braces.length / RATES.brace),
      after: [wait('beams'), wait('posts')],
      basis: PRACTICE,
    });
  if (framed.length > 0) {
    const rate = trusses.length > 0 ? RATES.truss : RATES.rafter;
    add({
      id: 'framing',
      title: trusses.length > 0 ? `Set and brace ${framed.length} trusses` : `Cut and set ${framed.length} rafters`,
      days: Math.max(1, half(framed.length / rate)),
      after: [wait('beams'), wait('braces'), wait('truss-lead')],
      basis: PRACTICE,
    });
    const fills = (structure.overlays ?? []).reduce((n, o) => n + 2 * o.fills.length, 0);
    if (fills > 0)
      add({
        id: 'tie-in',
        title: `Open the old roof, valley plates, ${fills} fill rafters`,
        days: Math.max(1.5, half(fills / RATES.rafter + 1)),
        after: [wait('framing')],
        basis: `${PRACTICE}; in a dry week: the old roof is open`,
      });
    add({
      id: 'framing-look',
      title: 'Framing inspection',
      days: 0.5,
      after: [wait('framing', CALL, 'call a day ahead'), wait('tie-in', CALL, 'call a day ahead')],
      stage: 'roof-framing',
      basis: PRACTICE,
    });
  }
  if (structure.surfaces.some((s) => s.sheathed)) {
    add({
      id: 'sheathing',
      title: `Sheathing, ${Math.round(roof)} sq ft`,
      days: half(roof / RATES.sheathing),
      after: [wait('framing-look'), wait('framing')],
      basis: `500 sq ft a day, ${PRACTICE}`,
    });
    add({
      id: 'nail-look',
      title: 'Nailing inspection',
      days: 0.5,
      after: [wait('sheathing', CALL, 'call a day ahead')],
      stage: 'sheathing',
      basis: PRACTICE,
    });
  }
  add({
    id: 'roofing',
    title: `Flashing and covering, ${Math.round(roof)} sq ft`,
    days: half(roof / RATES.roofing),
    after: [wait('nail-look'), wait('framing-look')],
    stage: 'roofing',
    basis: `300 sq ft a day, ${PRACTICE}`,
  });
  add({ id: 'trim', title: 'Fascia, gutters, paint', days: 2, after: [wait('roofing')], basis: PRACTICE });
  add({
    id: 'electrical',
    title: 'Electrical rough-in, where any',
    days: 1,
    after: [wait('framing-look'), wait('framing')],
    stage: 'electrical',
    basis: PRACTICE,
  });
  add({
    id: 'final',
    title: 'Final inspection',
    days: 0.5,
    after: [wait('trim', CALL, 'call a day ahead'), wait('electrical')],
    stage: 'final',
    basis: PRACTICE,
  });
  return tasks;
}
