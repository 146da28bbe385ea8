/** Worked covers for the tests of side load: the demonstration structures with ties, blocks and other answers added. */
import { analyse } from '../../analysis/index.js';
import { makeRecorder } from '../../base/trace.js';
import { buildLoads } from '../../loads/index.js';
import type { Cover, CoverRoof, HouseTie, Nailing, Project, WallSideLoad } from '../../project/model.js';
import { place } from '../../structure/place.js';
import { gableProject, given, shedProject } from '../../structure/testing.js';
import type { Check, CheckContext, Finding } from '../contract.js';
import { LOT } from '../testing.js';

export const NAILED: Nailing = {
  nail: 'common-8d',
  edge: 6,
  field: 12,
  heel: { nail: 'common-8d', count: 3 },
};

export const TIE: HouseTie = {
  mark: 'H1',
  roof: 'R1',
  wall: 0,
  from: -108,
  to: 108,
  level: 102,
  nailer: 'fascia',
  fastener: { kind: 'screw', diameter: 0.242, length: 5, spacing: 16, rows: 2 },
  into: 'studs',
  gap: 0.5,
  G: 0.42,
  verified: given(true, 'opened at the soffit', '/cover/houseTies/0/verified'),
  path: '/cover/houseTies/0',
};

export interface Change {
  readonly cover?: Partial<Cover>;
  readonly nailing?: Nailing | undefined;
  readonly finish?: Partial<CoverRoof['finish']>;
}

/** What an invented engineer says the wall behind the cover may be given. */
export const SIDE_LOAD: WallSideLoad = {
  along: given(1000, 'engineer’s letter', '/house/walls/0/sideLoad/along'),
  square: given(150 / 12, 'engineer’s letter', '/house/walls/0/sideLoad/square'),
  path: '/house/walls/0/sideLoad',
};

/** The same context, the first wall of the house stated for something else, or for nothing. */
export function statedFor(ctx: CheckContext, sideLoad: WallSideLoad | undefined): CheckContext {
  const [first, ...rest] = ctx.project.house.walls;
  const { sideLoad: _, ...wall } = first!;
  const walls = [sideLoad === undefined ? wall : { ...wall, sideLoad }, ...rest];
  return { ...ctx, project: { ...ctx.project, house: { ...ctx.project.house, walls } } };
}

const changed = (p: Project, { cover, nailing = NAILED, finish }: Change): Project => ({
  ...p,
  house: { ...p.house, walls: p.house.walls.map((w, i) => (i === 0 ? { ...w, sideLoad: SIDE_LOAD } : w)) },
  cover: {
    ...p.cover,
    roofs: p.cover.roofs.map((r) => ({ ...r, finish: { ...r.finish, nailing, ...finish } })),
    ...cover,
  },
});

export function worked(project: Project): CheckContext {
  const structure = place(project).value!;
  const loads = buildLoads(project, structure).value!;
  return { project, structure, loads, effects: analyse(project, structure, loads).value!, lot: LOT };
}

/** Gable on four posts, its sheathing run to the house wall and tied there by H1. */
export function gableWith(change: Change = {}): CheckContext {
  const p = changed(gableProject, { ...change, cover: { houseTies: [TIE], ...change.cover } });
  const gap = place(p).value!.roofs[0]!.min.y;
  const roofs = p.cover.roofs.map((r) => ({ ...r, rake: r.rake + gap }));
  return worked({ ...p, cover: { ...p.cover, roofs } });
}

/** Shed on its ledger. */
export const shedWith = (change: Change = {}): CheckContext => worked(changed(shedProject, change));

export const tied = (change: Partial<HouseTie>): CheckContext =>
  gableWith({ cover: { houseTies: [{ ...TIE, ...change }] } });

export const ask = (check: Check, ctx: CheckContext, subject?: string): Finding =>
  check.run(check.subjects(ctx).find((s) => subject === undefined || s.id === subject)!, ctx);

/** Steps of a check by symbol, the last of each. */
export function steps(check: Check, ctx: CheckContext): ReadonlyMap<string, number> {
  const rec = makeRecorder();
  check.run(check.subjects(ctx)[0]!, ctx, rec);
  return new Map(rec.lines.flatMap((l) => (l.kind === 'step' ? [[l.symbol, l.value] as const] : [])));
}
