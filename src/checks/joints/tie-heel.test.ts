/** Ties: the nails by hand, the ridge without its contact, and component wind on a tied rafter against the analysed frame. */
import { describe, expect, it } from 'vitest';
import { analyse } from '../../analysis/index.js';
import { makeRecorder } from '../../base/trace.js';
import { buildLoads } from '../../loads/index.js';
import type { Project } from '../../project/model.js';
import { place } from '../../structure/place.js';
import { change } from '../../structure/testing.js';
import { tiedProject } from '../../structure/testing-ridge.js';
import { loadedLength, patternMoments } from '../cladding/framing-wind.js';
import { tieMoment } from '../cladding/tied-wind.js';
import type { CheckContext } from '../contract.js';
import { tieSlenderness } from '../members/tie-slenderness.js';
import { jointDemands } from './demands.js';
import { tieHeel } from './tie-heel.js';

function contextOf(project: Project): CheckContext {
  const structure = place(project).value!;
  const loads = buildLoads(project, structure).value!;
  const effects = analyse(project, structure, loads).value!;
  return { project, structure, loads, effects, lot: undefined as never };
}

const ties = (by: object): Project =>
  change(tiedProject, {
    cover: {
      roofs: (old) =>
        old.map(
          (r) =>
            ({ ...r, framing: { ...r.framing, ties: { ...(r.framing as { ties: object }).ties, ...by } } }) as typeof r,
        ),
    },
  });

describe('heel nails', () => {
  it('six 16d common nails of a Douglas Fir tie hold 6 · 141 lb · 1.25 (NDS 2018 Table 12N, recalled)', () => {
    const ctx = contextOf(tiedProject);
    const subject = tieHeel.subjects(ctx)[0]!;
    const found = tieHeel.run(subject, ctx);
    expect(found.combination).toMatch(/^D\+Lr/);
    expect(Math.abs(found.capacity - 6 * 141 * 1.25)).toBeLessThan(1.5);
    // Thrust of the dead and live load, case by case from the tie of the worst pair.
    const tie = ctx.structure.members.filter((m) => m.role === 'tie');
    const worst = Math.max(
      ...tie.map((m) => {
        const n = ctx.effects.members.get(m.id)!.n;
        const c = (id: string) => Math.max(...n[ctx.effects.cases.indexOf(id)]!);
        // Live load on some spans only may push harder than on all: the tails then lift nothing.
        const live = ctx.effects.cases.filter((id) => id.startsWith('Lr'));
        return c('D') + Math.max(...live.map(c));
      }),
    );
    expect(found.demand).toBeCloseTo(worst, 6);
    expect(found.status).toBe('pass');
  });

  it('answers for nails it does not know, nails too short, and nails too few', () => {
    const run = (p: Project) => {
      const ctx = contextOf(p);
      return tieHeel.run(tieHeel.subjects(ctx)[0]!, ctx);
    };
    expect(run(ties({ nail: 'spiral-16d' })).status).toBe('outside-scope');
    const few = run(ties({ nails: 2 }));
    expect(few.status).toBe('fail');
    expect(few.note).toMatch(/ridge beam/);
  });

  it('tells every number of its answer', () => {
    const ctx = contextOf(tiedProject);
    const rec = makeRecorder();
    const found = tieHeel.run(tieHeel.subjects(ctx)[0]!, ctx, rec);
    const value = (symbol: string) => {
      const line = rec.lines.filter((l) => l.kind === 'step').find((l) => l.symbol === symbol)!;
      return line.kind === 'step' ? line.value : Number.NaN;
    };
    expect(value('T') / value("n·Z'")).toBeCloseTo(found.ratio, 9);
    expect(value('Z') * 6 * 1.25).toBeCloseTo(value("n·Z'"), 6);
  });
});

it('ties that uplift presses must be braced', () => {
  const answer = (p: Project) => {
    const ctx = contextOf(p);
    return tieSlenderness.run(tieSlenderness.subjects(ctx)[0]!, ctx);
  };
  const blown = change(tiedProject, { basis: { wind: { speed: (v) => ({ ...v, value: 140 }) } } });
  const bare = answer(blown);
  expect(bare.status).toBe('fail');
  // 1.5 in thick: 50 · 1.5 = 75 in between braces.
  expect(bare.note).toContain('every 75 in');
  const braced = (inches: number): Project =>
    change(blown, {
      cover: {
        roofs: (old) =>
          old.map(
            (r) =>
              ({
                ...r,
                framing: { ...r.framing, ties: { ...(r.framing as { ties: object }).ties, braced: inches } },
              }) as typeof r,
          ),
      },
    });
  expect(answer(braced(72)).ratio).toBeCloseTo(72 / 1.5 / 50, 9);
  expect(answer(braced(72)).status).toBe('pass');
});

it('what presses the rafters onto the ridge board asks for no fastener', () => {
  const ctx = contextOf(tiedProject);
  const d = jointDemands(ctx).find((q) => q.kind === 'rafter-to-ridge')!;
  const heel = jointDemands(ctx).find((q) => q.kind === 'tie-to-rafter')!;
  expect(d.alongX.value).toBeLessThan(heel.alongX.value / 2);
  expect(d.known).toBe(true);
});

it('component moments with the tie are those of the analysed frame under an even pressure', () => {
  for (const height of [0, 4, 14]) {
    const ctx = contextOf(ties({ height }));
    const rafter = ctx.structure.members.find((m) => m.role === 'rafter' && m.id.endsWith('02'))!;
    const effects = ctx.effects.members.get(rafter.id)!;
    const c = ctx.effects.cases.indexOf('W+y·A·clear');
    // Wind along the ridge presses both slopes alike over its first zone, where this pair stands.
    const zone = ctx.loads.cases[c]!.plan![0]!;
    const surfaces = new Map(ctx.structure.surfaces.map((s) => [s.id, s]));
    const load = loadedLength(rafter, surfaces)!;
    expect(zone.zone!.to).toBeGreaterThan(rafter.start.y + load.width);
    const line = (zone.psf / 144) * load.width;
    const span = effects.spans.find((s) => s.kind === 'span')!;
    const extra = tieMoment(ctx.structure, rafter, load)!;
    const most = Math.max(...[...effects.m[c]!].map(Math.abs));
    const ours = [...effects.stations].map((x) => {
      const [a, b] = patternMoments(x, span.from, extra.hinge, load);
      return line * (a + b + extra.moment(x));
    });
    // The analysis gathers load past the rafter's end at that end, so near the ridge the two part a little.
    const apart = [...effects.m[c]!].map((m, i) => Math.abs(ours[i]! - m) / most);
    expect(Math.max(...apart)).toBeLessThan(0.02);
    expect(Math.max(...ours.map(Math.abs)) / most).toBeCloseTo(1, 2);
  }
});
