import { describe, expect, it } from 'vitest';
import { type Fixture, makeGable, makeShed } from '../analysis/testing.js';
import { buildLoads } from './index.js';
import { appendixApplies, appendixConditions } from './patio-appendix.js';

function adopted(f: Fixture, use: Fixture['project']['cover']['use'] = 'recreation'): Fixture {
  const roofLive = {
    ...f.project.basis.roofLive,
    minimum: { ...f.project.basis.roofLive.minimum, value: 10 },
    patioAppendix: { ...f.project.basis.roofLive.patioAppendix, value: true },
  };
  const project = {
    ...f.project,
    basis: { ...f.project.basis, roofLive },
    cover: { ...f.project.cover, use },
  };
  return { ...f, project } as Fixture;
}
const live = (f: Fixture): number =>
  buildLoads(f.project, f.structure).value!.cases.find((c) => c.id === 'Lr')!.areas[0]!.psf;
const failing = (f: Fixture): readonly string[] =>
  appendixConditions(f.project, f.structure)
    .filter((c) => !c.holds)
    .map((c) => c.otherwise);

describe('the appendix', () => {
  it('lets 10 psf be carried where every condition holds', () => {
    const f = adopted(makeShed());
    expect(failing(f)).toEqual([]);
    expect(appendixApplies(f.project, f.structure)).toBe(true);
    expect(live(f)).toBe(10);
  });

  it('not where it is not adopted, nor over a carport', () => {
    expect(failing(makeShed())).toEqual(['the appendix is not adopted']);
    const f = adopted(makeShed(), 'carport');
    expect(failing(f)).toEqual(['its use is carport']);
    expect(live(f)).toBe(20);
  });

  it('not above 12 ft from the lowest ground beside it', () => {
    const f = adopted(makeShed());
    const at = (h: number): Fixture => {
      const roofs = f.structure.roofs.map((r) => ({ ...r, highestPoint: h + f.structure.grade.z0 }));
      return { ...f, structure: { ...f.structure, roofs, grade: { ...f.structure.grade, gx: 0, gy: 0 } } };
    };
    expect(failing(at(144))).toEqual([]);
    expect(failing(at(145))).toEqual(['R1 is 12.1 ft high, over 12 ft']);
    expect(live(at(145))).toBe(20);
  });

  it('not between house walls that close two of the longer and other sides', () => {
    const g = adopted(makeGable());
    const { structure } = g;
    const roofs = structure.roofs.map((r) => ({ ...r, highestPoint: 100 + structure.grade.z0 }));
    const r = roofs[0]!;
    const wall = (id: string, out: { x: number; y: number }, a: [number, number], b: [number, number]) => ({
      id,
      name: id,
      start: { x: a[0], y: a[1] },
      end: { x: b[0], y: b[1] },
      out,
      base: 0,
      plate: 97,
      openings: [],
      path: '',
    });
    const { min, max } = r;
    const three = [
      wall('a', { x: 0, y: 1 }, [min.x, min.y], [max.x, min.y]),
      wall('b', { x: 1, y: 0 }, [min.x, min.y], [min.x, max.y]),
      wall('c', { x: -1, y: 0 }, [max.x, min.y], [max.x, max.y]),
    ];
    const put = (walls: typeof three): Fixture => ({ ...g, structure: { ...structure, roofs, walls } });
    expect(failing(put(three.slice(0, 1)))).toEqual([]);
    expect(failing(put(three.slice(0, 2)))).toEqual([]);
    expect(failing(put(three)).length).toBe(1);
  });
});

describe('ponding', () => {
  it('puts a roof under 1/4 in 12 outside', () => {
    const at = (pitch: number): boolean => {
      const f = makeShed({ pitch });
      return buildLoads(f.project, f.structure).value!.outside.some((o) => o.about === 'ponding on R1');
    };
    expect([at(0.24 / 12), at(0.25 / 12), at(2 / 12)]).toEqual([true, false, false]);
  });
});
