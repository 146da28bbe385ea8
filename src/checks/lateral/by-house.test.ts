import { describe, expect, it } from 'vitest';
import { combineComponent } from '../../analysis/index.js';
import { makeRecorder } from '../../base/trace.js';
import type { Project } from '../../project/model.js';
import { openSides } from '../joints/products.js';
import { joint } from '../testing.js';
import { diaphragm } from './diaphragm.js';
import { diaphragmChord } from './diaphragm-chord.js';
import { heelBlocking } from './heel-blocking.js';
import { housePath, solidLength } from './house-path.js';
import { houseTie } from './house-tie.js';
import { houseTieDemands } from './side-loads.js';
import { swayX, swayY } from './sway.js';
import { ask, gableWith, NAILED, SIDE_LOAD, shedWith, statedFor, steps, TIE, tied } from './testing.js';

const gable = gableWith();
const d = houseTieDemands(gable)[0]!;

describe('the diaphragm of a gable held by the house', () => {
  const f = ask(diaphragm, gable);
  it('is its load along and square to the line, by hand', () => {
    // 216 in of line: q = V·12/216, n = Vy·12/216 + M·12·108/(216³/12).
    // Nails square to the line, mode IIIs of 8d in a 7/16 panel, G = 0.5 both: two a foot, CD 1.6 in wind.
    const Fe = 16600 * 0.5 ** 1.84;
    const k3 = -1 + Math.sqrt(4 + (2 * 100000 * 3 * 0.131 ** 2) / (3 * Fe * 0.437 ** 2));
    const Z = (k3 * 0.131 * 0.437 * Fe) / (3 * 2.2);
    const k = 237.5 / (2 * Z * 1.6);
    expect(Z).toBeCloseTo(72.65, 2);
    const hand = gable.loads.combinations.map((_, i) => {
      const q = Math.abs(d.along[i]! * 12) / 216;
      const n = Math.abs(d.square[i]! * 12) / 216 + (Math.abs(d.couple[i]!) * 12 * 108) / (216 ** 3 / 12);
      return Math.hypot(q, k * n);
    });
    expect(f.status).toBe('pass');
    expect(f.demand).toBeCloseTo(Math.max(...hand), 6);
    // 7/16 panel, 8d at 6 in, unblocked, wind: 475 / 2 on Douglas Fir-Larch trusses.
    expect(f.capacity).toBe(237.5);
  });
  it('can be redone from its trace', () => {
    const s = steps(diaphragm, gable);
    expect(s.get('vr')).toBeCloseTo(Math.hypot(s.get('q')!, s.get('k')! * s.get('n')!), 9);
    expect(s.get('k')).toBeCloseTo(Math.max(1, s.get('va')! / (s.get('na1')! * 1.6)), 9);
    expect(s.get('ratio')).toBeCloseTo(s.get('vr')! / s.get('va')!, 9);
    expect(s.get("L'/W'")).toBeCloseTo(gable.structure.roofs[0]!.max.y / 216, 6);
    expect(s.get('δ')).toBeGreaterThan(0);
  });
  it('shows how a beam on two posts shares its side load: by the lever of its centre', () => {
    const s = steps(diaphragm, gable);
    const k = gable.loads.combinations.findIndex((c) => c.id === f.combination);
    const c = gable.loads.combinations[k]!;
    const held = gable.effects.restraints.filter((r) => r.beam === 'B1');
    const far = held.reduce((a, b) => (a.at.y > b.at.y ? a : b));
    const near = held.find((r) => r !== far)!;
    const V = held.reduce((sum, r) => sum + combineComponent(r.force, c, 'x'), 0);
    expect(held).toHaveLength(2);
    expect(s.get('F2')).toBeCloseTo((V * (s.get('c')! - near.at.y)) / (far.at.y - near.at.y), 6);
    expect(s.get('F2')).toBeCloseTo(combineComponent(far.force, c, 'x'), 3);
  });
  it('gains from blocking and closer nails', () => {
    const blocked = ask(diaphragm, gableWith({ nailing: { ...NAILED, blocked: true, edge: 4 } }));
    expect(blocked.capacity).toBe(475);
  });
  it('says what is missing or wrong', () => {
    expect(ask(diaphragm, gableWith({ finish: { nailing: undefined } })).status).toBe('not-evaluated');
    const bare = ask(diaphragm, gableWith({ finish: { sheathing: '' } }));
    expect(bare.status).toBe('not-evaluated');
    expect(bare.note).toContain('no sheathing');
    expect(ask(diaphragm, gableWith({ nailing: { ...NAILED, field: 16 } })).status).toBe('fail');
    expect(ask(diaphragm, gableWith({ nailing: { ...NAILED, edge: 8 } })).status).toBe('fail');
    expect(ask(diaphragm, gableWith({ nailing: { ...NAILED, nail: 'ring-shank' } })).status).toBe('outside-scope');
  });
  it('fails with a remedy when the nails are too few', () => {
    // Twenty times the wind.
    const cases = gable.effects.restraints.map((r) => ({
      ...r,
      force: r.force.map((x) => ({ x: 20 * x.x, y: 20 * x.y, z: 0 })),
    }));
    const heavy = ask(diaphragm, { ...gable, effects: { ...gable.effects, restraints: cases } });
    expect(heavy.status).toBe('fail');
    expect(heavy.note).toContain('block the panel edges');
  });
  it('wants the tie over the whole width', () => {
    const short = ask(diaphragm, tied({ from: -60, to: 60 }));
    expect(short.status).toBe('outside-scope');
    expect(short.note).toContain('collector');
  });
  it('goes no farther out than it is wide', () => {
    const roof = gable.structure.roofs[0]!;
    const structure = { ...gable.structure, roofs: [{ ...roof, max: { ...roof.max, y: 217 } }] };
    expect(ask(diaphragm, { ...gable, structure }).status).toBe('outside-scope');
    const within = { ...gable.structure, roofs: [{ ...roof, max: { ...roof.max, y: 215 } }] };
    expect(ask(diaphragm, { ...gable, structure: within }).status).toBe('pass');
  });
});

describe('earthquake', () => {
  it('takes the lower column, and the worst of both', () => {
    const cases = gable.loads.cases.map((c) => (c.kind === 'W' ? { ...c, kind: 'E' as unknown as typeof c.kind } : c));
    const shaken = { ...gable, loads: { ...gable.loads, cases } };
    expect(ask(diaphragm, shaken).capacity).toBe(170);
    expect(ask(diaphragm, shaken).ratio).toBeGreaterThan(ask(diaphragm, gable).ratio);
  });
  it('reads the edition of the project', () => {
    const { basis } = gable.project;
    const project = { ...gable.project, basis: { ...basis, codes: { ...basis.codes, id: '2021' as const } } };
    expect(ask(diaphragm, { ...gable, project }).clause).toBe('SDPWS 2021 4.1.4');
  });
});

describe('the diaphragm between posts', () => {
  const ctx = gableWith({ cover: { lateral: { x: 'knee-braces', y: 'knee-braces' } } });
  it('never has more shear than the whole load over its extent', () => {
    const s = steps(diaphragm, ctx);
    const f = ask(diaphragm, ctx);
    const roof = ctx.structure.roofs[0]!;
    const extents = [roof.max.x - roof.min.x, roof.max.y - roof.min.y];
    expect(extents.some((e) => Math.abs((12 * s.get('V')!) / e - f.demand) < 1e-6)).toBe(true);
    expect(f.status).toBe('pass');
  });
});

describe('chords', () => {
  it('take the couple over their distance, greatest at the house', () => {
    const most = gable.loads.combinations.map((c) =>
      Math.abs(
        gable.effects.restraints.reduce(
          (sum, r) => sum + combineComponent(r.force, c, 'x') * r.at.y - combineComponent(r.force, c, 'y') * r.at.x,
          0,
        ) / 216,
      ),
    );
    const rec = makeRecorder();
    diaphragmChord.run(diaphragmChord.subjects(gable)[0]!, gable, rec);
    const lines = rec.lines.flatMap((l) => (l.kind === 'step' ? [l] : []));
    // The first is the greatest, at the house; its sign tells pull from push.
    expect(Math.abs(lines.find((l) => l.symbol === 'Tc')!.value)).toBeCloseTo(Math.max(...most), 6);
    expect(lines.some((l) => l.symbol === 'N0')).toBe(true);
    const s = steps(diaphragmChord, gable);
    expect(s.get('N')).toBeCloseTo(s.get('N0')! + s.get('Tc')!, 6);
    expect(ask(diaphragmChord, gable).status).toBe('pass');
  });
  it('ask more than the member alone when the roof bends hard', () => {
    const restraints = gable.effects.restraints.map((r) => ({
      ...r,
      force: r.force.map((x) => ({ x: 60 * x.x, y: 60 * x.y, z: 0 })),
    }));
    const hard = ask(diaphragmChord, { ...gable, effects: { ...gable.effects, restraints } });
    expect(hard.ratio).toBeGreaterThan(ask(diaphragmChord, gable).ratio + 0.05);
  });
  it('wait for a strap where a splice must pass the pull', () => {
    // A joint on B1, 8 ft out; every place farther out pulls there.
    const at = { x: -108, y: 96, z: 94 };
    const splice = joint({
      id: 'J9-01',
      mark: 'J9',
      kind: 'beam-splice',
      at,
      ties: [
        { part: 'B1', along: 93 },
        { part: 'B1', along: 93 },
      ],
    });
    const structure = { ...gable.structure, joints: [...gable.structure.joints, splice] };
    const open = ask(diaphragmChord, { ...gable, structure });
    expect(open.status).toBe('not-evaluated');
    expect(open.note).toContain('J9');
    const strap = {
      serves: ['J9'],
      product: 'strap',
      count: 1,
      down: undefined,
      up: undefined,
      along: undefined,
      across: 1000,
      duration: 1.6,
      species: 'DF-L',
      G: 0.5,
      service: 'dry',
      concrete: undefined,
      source: 'report',
      path: '',
    } as const;
    const rated = { ...gable.project, choices: { ...gable.project.choices, joints: [strap] } };
    expect(ask(diaphragmChord, { ...gable, structure, project: rated }).status).toBe('pass');
    const weak = { ...gable.project, choices: { ...gable.project.choices, joints: [{ ...strap, across: 10 }] } };
    expect(ask(diaphragmChord, { ...gable, structure, project: weak }).status).toBe('fail');
  });
  it('count only combinations with side load', () => {
    const id = ask(diaphragmChord, shedWith()).combination;
    const c =
      gable.loads.combinations.find((k) => k.id === id) ?? shedWith().loads.combinations.find((k) => k.id === id)!;
    const { cases } = shedWith().loads;
    expect(c.terms.some((t) => ['W', 'E'].includes(cases[t.case]!.kind))).toBe(true);
  });
  it('of a shed are its end rafters, with the roof’s bending on top of their own', () => {
    const f = ask(diaphragmChord, shedWith());
    expect(f.status).toBe('pass');
    expect(f.ratio).toBeGreaterThan(0);
  });
});

describe('blocks over the bearings', () => {
  it('take the load along the beam and its flow as a chord, by hand', () => {
    const f = ask(heelBlocking, gable);
    const s = steps(heelBlocking, gable);
    expect(f.status).toBe('pass');
    // Under the governing combination: both beams' share along y over 7 bays of one, and V/18 ft over a 2 ft bay.
    const k = gable.loads.combinations.findIndex((c) => c.id === f.combination);
    const c = gable.loads.combinations[k]!;
    const alongBeam = gable.effects.restraints
      .filter((r) => r.beam === 'B1')
      .reduce((sum, r) => sum + combineComponent(r.force, c, 'y'), 0);
    expect(f.demand).toBeCloseTo(Math.abs(alongBeam) / 7 + (Math.abs(d.along[k]!) / 216) * 24, 4);
    expect(f.capacity).toBeCloseTo(s.get("Z'")! * 1.6 * 3, 6);
  });
  it('are as strong as the widest bay asks', () => {
    // Without the second inner truss one bay is 48 in instead of 24.
    const inner = gable.structure.members.filter((m) => m.truss && m.mark === 'T1')[1]!.id;
    const structure = {
      ...gable.structure,
      joints: gable.structure.joints.filter((j) => j.ties[0]?.part !== inner),
    };
    const f = ask(heelBlocking, { ...gable, structure });
    const most = Math.max(...gable.loads.combinations.map((c, i) => (c.CD === 1.6 ? Math.abs(d.along[i]!) : 0)));
    expect(f.demand).toBeGreaterThan((most / 216) * 48 - 1e-6);
    expect(f.demand).toBeGreaterThan(ask(heelBlocking, gable).demand);
  });
  it('must be stated', () => {
    const { heel, ...rest } = NAILED;
    expect(heel?.count).toBe(3);
    const f = ask(heelBlocking, gableWith({ nailing: rest }));
    expect(f.status).toBe('not-evaluated');
    expect(f.note).toContain('finish.nailing.heel');
  });
});

describe('the tie', () => {
  it('holds shear and pull together', () => {
    const f = ask(houseTie, gable);
    const s = steps(houseTie, gable);
    expect(f.status).toBe('pass');
    expect(s.get('N')).toBe(14);
    expect(s.get('V1')).toBeCloseTo(Math.abs(s.get('Vx')!) / 28, 9);
    // Σx² of 14 places at 16 in: 16²·14·(14² − 1)/12 = 58240; the last stands 104 in out.
    expect(s.get('P1')).toBeCloseTo(Math.max(0, s.get('Vy')! / 28 + (Math.abs(s.get('M')!) * 104) / 58240 / 2), 6);
    expect(f.demand).toBeCloseTo(Math.hypot(s.get('V1')!, s.get('P1')!), 9);
  });
  it.each([
    [{ into: 'fascia' as const }, 'fascia'],
    [{ into: 'cantilevered-floor' as const }, 'cantilevered'],
    [{ gap: 3 }, 'packing'],
    [{ fastener: { ...TIE.fastener, diameter: 0.23 } }, 'catalogue'],
  ])('is beyond the program: %o', (change, words) => {
    const f = ask(houseTie, tied(change));
    expect(f.status).toBe('outside-scope');
    expect(f.note).toContain(words);
  });
  it.each([
    [{ fastener: { ...TIE.fastener, spacing: 12 } }, 'studs'],
    [{ fastener: { ...TIE.fastener, length: 2.5 } }, 'longer'],
    [{ fastener: { ...TIE.fastener, kind: 'lag' as const, diameter: 0.375 } }, 'across their grain'],
    [{ level: 60 }, 'D1'],
    [{ into: 'plate' as const, level: 120 }, 'plates'],
    [{ nailer: '' }, 'off the wall'],
    [{ gap: 0 }, 'sheathing before its framing'],
  ])('fails with what would cure it: %o', (change, words) => {
    const f = ask(houseTie, tied(change));
    expect(f.status).toBe('fail');
    expect(f.note).toContain(words);
  });
  it('waits for somebody to look, and for a tie at all', () => {
    const verified = { ...TIE.verified, state: 'unknown' as const, value: false };
    expect(ask(houseTie, tied({ verified })).status).toBe('not-evaluated');
    expect(ask(houseTie, gableWith({ cover: { houseTies: [] } })).status).toBe('not-evaluated');
  });
  it('may not cross veneer', () => {
    const { house } = gable.project;
    const walls = house.walls.map((w) => ({ ...w, build: { ...w.build, cladding: 'brick-veneer' as const } }));
    const project: Project = { ...gable.project, house: { ...house, walls } };
    expect(ask(houseTie, { ...gable, project }).status).toBe('outside-scope');
  });
  it('into plates may be lag screws', () => {
    const f = ask(
      houseTie,
      tied({
        into: 'plate',
        level: 96,
        fastener: { ...TIE.fastener, kind: 'lag', diameter: 0.375, length: 5, rows: 1 },
      }),
    );
    expect(f.status).toBe('pass');
  });
});

describe('the house beyond', () => {
  const wall = gable.structure.walls[0]!;
  it('counts solid wall between openings by hand', () => {
    // 44 ft with openings at 7-12, 18-26 and 33-37 ft: 7 + 6 + 7 + 7 ft.
    expect(solidLength(wall, 97)).toBe(27 * 12);
  });
  it('compares the force with what somebody states, and prints both', () => {
    const f = ask(housePath, gable);
    const along = Math.max(...d.along.map(Math.abs));
    const square = Math.max(
      ...gable.loads.combinations.map(
        (_, k) => (12 * Math.abs(d.square[k]!)) / 216 + (72 * Math.abs(d.couple[k]!)) / 216 ** 2,
      ),
    );
    expect(f.status).toBe('pass');
    expect(f.ratio).toBeCloseTo(Math.max(along / 1000, square / 150), 9);
    expect(f.note).toContain(`${Math.ceil(along)} lb along it`);
    expect(f.note).toContain('stated for 1000 lb along and 150 lb per foot square to it: engineer’s letter');
    const less = { ...SIDE_LOAD, along: { ...SIDE_LOAD.along, value: along - 1 } };
    expect(ask(housePath, statedFor(gable, less)).status).toBe('fail');
    const narrow = { ...SIDE_LOAD, square: { ...SIDE_LOAD.square, value: (square - 1) / 12 } };
    expect(ask(housePath, statedFor(gable, narrow)).status).toBe('fail');
  });
  it('never passes by the program’s own guess', () => {
    // The gable's own wind along its ridge is past the modest share; 0.4 of it is not.
    expect(ask(housePath, statedFor(gable, undefined)).status).toBe('outside-scope');
    const restraints = gable.effects.restraints.map((r) => ({
      ...r,
      force: r.force.map((x) => ({ x: 0.4 * x.x, y: 0.4 * x.y, z: 0 })),
    }));
    const mild = { ...gable, effects: { ...gable.effects, restraints } };
    const alone = ask(housePath, statedFor(mild, undefined));
    expect(alone.status).toBe('not-evaluated');
    expect(alone.note).toContain('"sideLoad"');
    for (const way of ['along', 'square'] as const) {
      const nobody = { ...SIDE_LOAD, [way]: { ...SIDE_LOAD[way], from: '' } };
      expect(ask(housePath, statedFor(mild, nobody)).status).toBe('not-evaluated');
      const asked = { ...SIDE_LOAD, [way]: { ...SIDE_LOAD[way], state: 'unknown' as const } };
      expect(ask(housePath, statedFor(mild, asked)).status).toBe('not-evaluated');
    }
    const unseen = { ...TIE, verified: { ...TIE.verified, from: '' } };
    expect(ask(housePath, gableWith({ cover: { houseTies: [unseen] } })).status).toBe('not-evaluated');
  });
  it('is a professional’s past a modest share, and where the wall is mostly openings, while nobody states it', () => {
    const quiet = statedFor(gable, undefined);
    const restraints = gable.effects.restraints.map((r) => ({
      ...r,
      force: r.force.map((x) => ({ x: 3 * x.x, y: 3 * x.y, z: 0 })),
    }));
    expect(ask(housePath, { ...quiet, effects: { ...gable.effects, restraints } }).status).toBe('outside-scope');
    expect(ask(housePath, { ...gable, effects: { ...gable.effects, restraints } }).status).toBe('fail');
    const opening = { ...wall.openings[0]!, offset: 120, width: 300 };
    const walls = [{ ...wall, openings: [opening] }, ...gable.structure.walls.slice(1)];
    const open = ask(housePath, { ...quiet, structure: { ...gable.structure, walls } });
    expect(open.status).toBe('outside-scope');
    expect(open.note).toContain('mostly openings');
  });
});

describe('sway held by the house', () => {
  it('passes when every link does, and names the most used', () => {
    for (const check of [swayX, swayY]) {
      const f = ask(check, gable);
      expect(f.status).toBe('pass');
      expect(f.note).toContain('House, as stated by others');
    }
    expect(ask(swayX, shedWith()).status).toBe('pass');
  });
  it('is no answer for a cover that stands free', () => {
    const structure = { ...gable.structure, attachment: 'free-standing' as const };
    expect(ask(swayX, { ...gable, structure }).status).toBe('fail');
  });
  it('leaves no side load missing at the joints', () => {
    expect(openSides(gable)).toEqual([]);
    // Whether the tie holds is the sway checks' question; the joints carry the force either way.
    expect(openSides(tied({ into: 'fascia' }))).toEqual([]);
  });
  it('takes the status of its worst link', () => {
    expect(ask(swayX, tied({ into: 'fascia' })).status).toBe('outside-scope');
    expect(ask(swayX, tied({ nailer: '' })).status).toBe('fail');
    const none = ask(swayX, gableWith({ cover: { houseTies: [] } }));
    expect(none.status).toBe('not-evaluated');
    expect(none.note).toContain('R1');
  });
});
