import { describe, expect, it } from 'vitest';
import { USUAL_BUYING } from '../../project/complete/buying.js';
import type { ConnectionPart, FastenerPattern } from '../../project/connections.js';
import type { Project } from '../../project/model.js';
import { place } from '../../structure/index.js';
import { change, gableProject, shedProject } from '../../structure/testing.js';
import type { TakeoffContext } from '../model.js';
import { panelLayouts } from '../panels/layout.js';
import type { PanelPiece } from '../panels/model.js';
import { takeOff } from '../take-off.js';
import { countJoints } from './joints.js';
import { named } from './names.js';
import { countPart } from './parts.js';
import { inRow, nailsOn } from './sheathing-nails.js';

const context = (project: Project): TakeoffContext => {
  const structure = place(project, {}).value!;
  const input = { project, structure, buying: USUAL_BUYING };
  return { ...input, solve: undefined, cuts: [], panels: panelLayouts(input) };
};

const pattern = (along: number, across: number): FastenerPattern => ({
  alongGrain: along,
  acrossGrain: across,
  spacingAlong: 2,
  spacingAcross: 2,
  end: 4,
  edge: 2,
});
const dowel = {
  takes: ['up'],
  axis: 'crosswise',
  upper: pattern(1, 2),
  lower: pattern(2, 1),
  upperThickness: undefined,
  lowerThickness: undefined,
} as const;

describe('countPart', () => {
  it('bolts through two plates: a place in each member, nuts, no washers, and a length for the grip', () => {
    const plates = { material: 'steel', count: 2, end: 1.5, thickness: 0.25, width: 3, Fy: 36000, Fu: 58000 } as const;
    const part = { ...dowel, kind: 'bolts', size: 'bolt-1-2', washer: 0, plates } as ConnectionPart;
    const rows = countPart(part, { upper: 5.5, lower: 5.5 });
    // 5 1/2 in of wood, 1/2 in of steel, 3/4 in for the nut and 1/8 in over: 6 7/8 in, so 7 in.
    expect(rows.map((r) => [r.item, r.count])).toEqual([
      ['1/2 in. bolt x 7"', 4],
      ['nut for 1/2" bolt', 4],
      ['steel plate 1/4" x 3", drilled', 2],
    ]);
  });
  it('bolts through lapped members: one pattern, two washers each', () => {
    const part = { ...dowel, kind: 'bolts', size: 'bolt-1-2', washer: 2, plates: undefined } as ConnectionPart;
    const rows = countPart(part, { upper: 1.5, lower: 3.5 });
    expect(rows.map((r) => r.count)).toEqual([2, 2, 4]);
  });
  it('toe-nails by their number, bearing by none', () => {
    const nails = { kind: 'toe-nails', takes: ['up'], size: 'common-16d', count: 3 } as ConnectionPart;
    expect(countPart(nails, { upper: 1.5, lower: 5.5 })).toMatchObject([{ item: '16d common nail, 3 1/2"', count: 3 }]);
    const bearing = { kind: 'bearing', takes: ['down'], length: 3, width: 3 } as ConnectionPart;
    expect(countPart(bearing, { upper: 1.5, lower: 5.5 })).toEqual([]);
  });
});

describe('countJoints', () => {
  const served = (p: Project, kind: string, count: number) =>
    change(p, {
      choices: {
        joints: [
          {
            serves: [kind],
            product: 'tie',
            count,
            down: undefined,
            up: 500,
            along: undefined,
            across: undefined,
            duration: 1.6,
            species: 'Douglas Fir-Larch',
            G: 0.5,
            service: 'dry',
            concrete: undefined,
            source: '',
            path: '/choices/joints/0',
          },
        ],
      },
    } as never);

  it('a product at every joint it serves, times its count; the others are open by name', () => {
    const ctx = context(served(gableProject, 'truss-to-beam', 2));
    const joints = ctx.structure.joints.filter((j) => j.kind === 'truss-to-beam');
    const { counted, open } = countJoints(ctx);
    expect(counted.filter((c) => c.item === 'tie').reduce((s, c) => s + c.count, 0)).toBe(2 * joints.length);
    const rest = new Set(ctx.structure.joints.map((j) => j.mark));
    for (const j of joints) rest.delete(j.mark);
    for (const j of ctx.structure.joints.filter((x) => x.kind === 'fascia-to-framing')) rest.delete(j.mark);
    expect(new Set(open.flatMap((o) => o.serves))).toEqual(rest);
  });
  it('two nails in each tail of a fascia', () => {
    const ctx = context(gableProject);
    const tails = ctx.structure.joints.filter((j) => j.kind === 'fascia-to-framing').length;
    expect(tails).toBeGreaterThan(0);
    expect(countJoints(ctx).counted.find((c) => c.item === named('common-16d').item)?.count).toBe(2 * tails);
  });
  it('ledger fasteners as its own layout says', () => {
    const spec = shedProject.cover.ledgers[0]!;
    const rows = [3, 8];
    const fastening = {
      ...spec.fastening!,
      kind: 'lag',
      diameter: 0.5,
      length: 6,
      washer: 1.5,
      spacing: 16,
      rows,
    } as const;
    const p = change(shedProject, { cover: { ledgers: [{ ...spec, fastening }] } } as never);
    const ctx = context(p);
    const places = ctx.structure.joints.filter((j) => j.kind === 'ledger-to-house').length;
    const { counted } = countJoints(ctx);
    expect(counted.find((c) => c.item.startsWith('lag screw'))?.count).toBe(2 * places);
    expect(counted.find((c) => c.item.startsWith('washer'))?.count).toBe(2 * places);
  });
});

describe('sheathing nails', () => {
  it('rows begin and end with a nail and keep the spacing', () => {
    expect([inRow(48, 6), inRow(48, 12), inRow(49, 12), inRow(0.5, 6)]).toEqual([9, 5, 6, 0]);
  });
  const piece = (u0: number, u1: number): PanelPiece => ({
    id: 'p',
    surface: 's',
    row: 1,
    u0,
    u1,
    v0: 0,
    v1: 48,
    parts: [
      [
        { x: u0, y: 0 },
        { x: u1, y: 0 },
        { x: u1, y: 48 },
        { x: u0, y: 48 },
      ],
    ],
    whole: true,
  });
  const nailing = { nail: 'common-8d', edge: 6, field: 12 };
  const none = [-1e9, -1e9] as const;

  it('of one panel across five frames: two ends at the edge spacing, three frames at the field spacing', () => {
    expect(nailsOn(piece(0, 96), nailing, [0, 24, 48, 72, 96], none)).toBe(2 * 9 + 3 * 5);
  });
  it('past the end frame a panel is nailed to the barge, where there is one', () => {
    const frames = [6, 30, 54, 78];
    expect(nailsOn(piece(0, 78), nailing, frames, none)).toBe(3 * 5 + 9);
    expect(nailsOn(piece(0, 78), { ...nailing, boundary: 4 }, frames, [0, 500])).toBe(3 * 5 + 9 + 13);
  });
  it('blocked panels are nailed along both long edges between the frames too', () => {
    expect(nailsOn(piece(0, 96), { ...nailing, blocked: true }, [0, 24, 48, 72, 96], none)).toBe(33 + 2 * (17 - 5));
  });
  it('fields closer together take more nails of the whole roof', () => {
    const roof = shedProject.cover.roofs[0]!;
    const nails = (field: number): number => {
      const finish = { ...roof.finish, nailing: { ...nailing, field } };
      const p = change(shedProject, { cover: { roofs: [{ ...roof, finish }] } } as never);
      return takeOff(p, place(p, {}).value!).lines.find((l) => l.phase === 'sheathing' && l.item.includes('8d'))!.net;
    };
    expect(nails(6)).toBeGreaterThan(nails(12));
  });
});
