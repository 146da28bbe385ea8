import { describe, expect, it } from 'vitest';
import { buildLoads } from '../loads/index.js';
import type { Joint, Member } from '../structure/model.js';
import { handChecks } from './hand.js';
import { analyse } from './index.js';
import { indexStructure } from './index-structure.js';
import type { Rows } from './rows.js';
import { type Fixture, makeGable, makeShed } from './testing.js';

/** Cuts the shed's beam in two over its middle post, the way a spliced line is placed. */
function splice(f: Fixture, at: number): Fixture {
  const beam = f.structure.members.find((m) => m.id === 'B1')!;
  const cut = { ...beam.start, x: beam.start.x + at };
  const parts: Member[] = [
    { ...beam, id: 'B1-1', end: cut, length: at },
    { ...beam, id: 'B1-2', start: cut, length: beam.length - at },
  ];
  const members = f.structure.members.flatMap((m) => (m.id === 'B1' ? parts : [m]));
  const joints = f.structure.joints.flatMap((j): Joint[] => {
    const tie = j.ties.find((t) => t.part === 'B1');
    if (!tie) return [j];
    const on = (id: string, along: number, suffix = ''): Joint => ({
      ...j,
      id: j.id + suffix,
      ties: j.ties.map((t) => (t.part === 'B1' ? { part: id, along } : t)),
    });
    if (j.kind === 'beam-to-post' && Math.abs(tie.along - at) < 1) return [on('B1-1', at, 'a'), on('B1-2', 0, 'b')];
    return [tie.along <= at ? on('B1-1', tie.along) : on('B1-2', tie.along - at)];
  });
  joints.push({
    ...joints[0]!,
    id: 'JS',
    kind: 'beam-splice',
    ties: [
      { part: 'B1-1', along: at },
      { part: 'B1-2', along: 0 },
    ],
  });
  return { ...f, structure: { ...f.structure, members, joints } };
}

describe('a spliced beam', () => {
  const f = splice(makeShed({ posts: [6, 120, 234] }), 120);
  const loads = buildLoads(f.project, f.structure).value!;
  const out = analyse(f.project, f.structure, loads);
  const effects = out.value!;
  const S = effects.cases.indexOf('S');

  it('closes', () => {
    expect(effects.failure).toBeUndefined();
    expect(out.issues).toEqual([]);
  });

  it('passes no moment over the splice, and each piece presses on the post for itself', () => {
    const left = effects.members.get('B1-1')!;
    const right = effects.members.get('B1-2')!;
    expect(left.m[S]!.at(-1)).toBeCloseTo(0, 6);
    expect(right.m[S]![0]).toBeCloseTo(0, 6);
    const a = effects.joints.get('JP-PB12a')!.force[S]!.z;
    const b = effects.joints.get('JP-PB12b')!.force[S]!.z;
    expect(a).toBeLessThan(0);
    expect(b).toBeLessThan(0);
    expect(a + b).toBeCloseTo(effects.joints.get('JF-PB12')!.force[S]!.z, 6);
  });

  it('rests as two beams on two bearings each: the reaction is the lever of its framing', () => {
    let moment = 0;
    const piece = effects.members.get('B1-1')!;
    for (const j of f.structure.joints) {
      const tie = j.ties.at(-1)!;
      if (tie.part === 'B1-1') moment += -effects.joints.get(j.id)!.force[S]!.z * (tie.along - 6);
    }
    expect(-effects.joints.get('JP-PB12a')!.force[S]!.z).toBeCloseTo(moment / (120 - 6), 4);
    expect(piece.spans.map((s) => s.kind)).toEqual(['overhang', 'span']);
  });
});

describe('trusses on two beams', () => {
  it('push both beams alike', () => {
    const f = makeGable();
    const loads = buildLoads(f.project, f.structure).value!;
    const effects = analyse(f.project, f.structure, loads).value!;
    const k = effects.cases.indexOf('W+x·A·clear');
    expect(effects.joints.get('JA-3')!.force[k]!.x).toBeCloseTo(effects.joints.get('JB-3')!.force[k]!.x, 9);
  });
});

describe('statics governs where the frame shows less without a reason', () => {
  it('a post that is told 20 % too little', () => {
    const f = makeGable();
    const loads = buildLoads(f.project, f.structure).value!;
    const effects = analyse(f.project, f.structure, loads).value!;
    const rows = new Map<string, Rows>();
    for (const [id, j] of effects.joints) {
      const short = id === 'JP-PB11' ? 0.8 : 1;
      rows.set(id, Float64Array.from(j.force.flatMap((v) => [v.x, v.y, v.z * short])));
    }
    const hand = handChecks(indexStructure(f.structure), loads, effects.members, rows, effects.footings);
    const row = hand.find((h) => h.about === 'B1 on PB11' && h.case === 'S')!;
    expect(row.governs).toBe('statics');
    expect(row.statics).toBeGreaterThan(row.analysed);
    expect(hand.find((h) => h.about === 'B1 on PB12' && h.case === 'S')!.governs).toBe('analysed');
  });
});
