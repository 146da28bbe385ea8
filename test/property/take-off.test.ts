/** The take-off against the structure it was taken from: nothing forgotten, nothing twice, volumes those of the solids. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { volume } from '../../src/base/geometry/index.js';
import { derive, piecesOf, type Takeoff, takeOff } from '../../src/index.js';
import type { Project } from '../../src/project/model.js';
import type { Structure } from '../../src/structure/model.js';
import { draws, KINDS } from './covers.js';

const EXAMPLES = join(import.meta.dirname, '../../examples');

/** A polygon of 16 sides is drawn for a round pier: its area is this part of the circle's. */
const SIXTEEN = (16 * Math.sin((2 * Math.PI) / 16)) / (2 * Math.PI);

function accounted(s: Structure, t: Takeoff): void {
  const cuts = t.cuts.flatMap((g) => g.cuts);
  // Every piece asked for is in the plan once, and each plan cuts only what was asked.
  for (const g of t.cuts) {
    const made = [...g.plan.boards.flatMap((b) => b.cuts), ...g.plan.tooLong].map((c) => c.id);
    expect(made.length).toBe(new Set(made).size);
    expect([...made].sort()).toEqual(g.cuts.map((c) => c.id).sort());
    expect(g.plan.tooLong).toEqual([]);
  }
  expect(new Set(cuts.map((c) => c.id)).size).toBe(cuts.length);
  for (const m of s.members) {
    const own = cuts.filter((c) => c.part === m.id);
    if (m.truss) {
      expect(own, m.id).toEqual([]);
      continue;
    }
    // Each ply of a member is there once, whole or in joined parts that make up its length.
    expect(
      own.reduce((sum, c) => sum + c.length, 0),
      m.id,
    ).toBeCloseTo(m.length * m.section.plies, 6);
    for (const c of own) expect(c.mark).toBe(m.mark);
    if (m.role !== 'fascia') expect(own.length, m.id).toBe(m.section.plies);
  }
  // Trusses are ordered by mark and count.
  for (const mark of new Set(s.members.filter((m) => m.truss).map((m) => m.mark))) {
    const line = t.lines.find((l) => l.item === `truss ${mark}`);
    expect(line?.buy.quantity, mark).toBe(s.members.filter((m) => m.mark === mark).length);
  }
}

function concrete(p: Project, s: Structure, t: Takeoff): void {
  const solids = piecesOf(s, p).filter((x) => x.material === 'concrete' && x.state === 'new' && x.role !== 'step');
  const round = new Map(s.footings.map((f) => [f.id, f]));
  let drawn = 0;
  for (const x of solids) {
    const f = round.get(x.part);
    const v = volume(x.solid);
    // The drawn pier is a prism of sixteen sides; pads and slabs are what they are.
    const pier = f !== undefined && x.solid.vertices.length === 32;
    drawn += pier ? v / SIXTEEN : v;
  }
  const bought = t.lines.filter((l) => l.unit === 'cu ft').reduce((sum, l) => sum + l.net, 0);
  const embedded = s.footings.some((f) => f.embedded);
  if (!embedded) expect(bought).toBeCloseTo(drawn / 1728, 4);
}

function sheets(t: Takeoff): void {
  for (const p of t.panels) {
    // Panels tile the roof: their areas add up to its own.
    const laid = p.pieces.reduce((sum, x) => sum + x.parts.reduce((a, q) => a + polygon(q), 0), 0);
    expect(Math.abs(laid - p.area)).toBeLessThan(0.006 * p.area + 1);
    const placed = p.cut.flatMap((c) => c.pieces.map((x) => x.piece.id));
    expect([...placed].sort()).toEqual(
      p.pieces
        .filter((x) => !x.whole)
        .map((x) => x.id)
        .sort(),
    );
    for (const c of p.cut)
      for (const [i, a] of c.pieces.entries()) {
        const [aw, ah] = [a.piece.u1 - a.piece.u0, a.piece.v1 - a.piece.v0];
        expect(a.x + aw).toBeLessThanOrEqual(96 + 0.2);
        expect(a.y + ah).toBeLessThanOrEqual(48 + 0.2);
        for (const b of c.pieces.slice(i + 1)) {
          const [bw, bh] = [b.piece.u1 - b.piece.u0, b.piece.v1 - b.piece.v0];
          const apart =
            a.x + aw <= b.x + 0.1 || b.x + bw <= a.x + 0.1 || a.y + ah <= b.y + 0.1 || b.y + bh <= a.y + 0.1;
          expect(apart, `${a.piece.id} and ${b.piece.id}`).toBe(true);
        }
      }
  }
}

const polygon = (q: readonly { x: number; y: number }[]): number =>
  Math.abs(q.reduce((sum, a, i) => sum + a.x * q[(i + 1) % q.length]!.y - q[(i + 1) % q.length]!.x * a.y, 0)) / 2;

function lines(p: Project, s: Structure, t: Takeoff): void {
  // Whatever is bought serves parts that are there: BL are the blocks, which no member stands for.
  const known = new Set([
    ...s.members.map((m) => m.mark),
    ...(s.overlays ?? []).flatMap((o) => o.members.map((m) => m.mark)),
    ...s.joints.map((j) => j.mark),
    ...s.footings.map((f) => f.mark),
    ...s.slabs.map((x) => x.mark),
    ...s.roofs.map((r) => r.mark),
    ...(p.cover.houseTies ?? []).map((x) => x.mark),
    'BL',
  ]);
  for (const l of t.lines)
    expect(
      l.serves.filter((m) => !known.has(m)),
      l.id,
    ).toEqual([]);
  for (const l of t.lines) expect(l.serves.length, l.id).toBeGreaterThan(0);
  expect(new Set(t.lines.map((l) => l.id)).size).toBe(t.lines.length);
  for (const l of t.lines) {
    for (const x of [l.net, l.gross, l.buy.quantity, l.waste.fraction]) expect(Number.isFinite(x), l.id).toBe(true);
    expect(l.gross, l.id).toBeGreaterThanOrEqual(l.net - 1e-6);
    expect(l.buy.quantity * l.buy.holds, l.id).toBeGreaterThanOrEqual(l.gross - 1e-4);
    expect(l.waste.rule, l.id).not.toBe('');
    expect(l.waste.source, l.id).not.toBe('');
  }
}

// The project that is broken on purpose places nothing that could be bought.
const names = readdirSync(EXAMPLES)
  .filter((n) => !n.includes('broken'))
  .sort();
describe.each(names)('take-off of %s', (name) => {
  const d = derive(readFileSync(join(EXAMPLES, name, 'project.json'), 'utf8'));
  const [project, structure] = [d.project!, d.structure!];
  const t = takeOff(project, structure);
  it('holds every member once', () => accounted(structure, t));
  it('pours what is drawn', () => concrete(project, structure, t));
  it('tiles the roof', () => sheets(t));
  it('shows its waste and buys enough', () => lines(project, structure, t));
});

describe.each(KINDS)('take-off of %s', (kind) => {
  it('holds every member once, pours what is drawn, tiles the roof', { timeout: 240_000 }, () => {
    for (const { d } of draws(kind, 6)) {
      const t = takeOff(d.project, d.structure);
      accounted(d.structure, t);
      concrete(d.project, d.structure, t);
      sheets(t);
      lines(d.project, d.structure, t);
    }
  });
});
