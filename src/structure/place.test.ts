import { describe, expect, it } from 'vitest';
import type { Joint, Member, Structure } from './model.js';
import { place } from './place.js';
import { change, gableProject, shedProject } from './testing.js';

const placed = (p: typeof gableProject): Structure => place(p).value!;
const member = (s: Structure, id: string): Member => s.members.find((m) => m.id === id)!;
const joints = (s: Structure, kind: Joint['kind']): Joint[] => s.joints.filter((j) => j.kind === kind);

describe('attached gable on glulam beams', () => {
  const s = placed(gableProject);

  it('stands each post on the slab at its own place', () => {
    // Slab top −5 − y/48: y = 6+6 = 12 → −5.25; y = 6+162 = 168 → −8.5. Pier flush, standoff 1; beam underside 100 − 12 = 88.
    expect(member(s, 'P1').start).toEqual({ x: -108, y: 12, z: -4.25 });
    expect(member(s, 'P1').end).toEqual({ x: -108, y: 12, z: 88 });
    expect(member(s, 'P1').length).toBeCloseTo(92.25, 9);
    expect(member(s, 'P4').start).toEqual({ x: 108, y: 168, z: -7.5 });
    expect(member(s, 'P4').length).toBeCloseTo(95.5, 9);
  });

  it('measures each footing from the surface above it', () => {
    const f2 = s.footings.find((f) => f.id === 'F2')!;
    // Surface −8.5, 30 in deep; pad 30 x 30 x 12; pier 16 round and 18 tall.
    expect(f2).toMatchObject({
      top: -8.5,
      bottom: -38.5,
      surface: -8.5,
      size: 30,
      round: false,
      pierDiameter: 16,
      padThickness: 12,
    });
    expect(f2.bearingArea).toBe(900);
    expect(f2.concrete).toBeCloseTo(900 * 12 + Math.PI * 64 * 18, 6);
    expect(f2.soilOver).toBeCloseTo((900 - Math.PI * 64) * 18, 6);
  });

  it('lays the beams with their tops at the bearing', () => {
    // Top 100, depth 12: axis at 94; y from 6 to 180.
    expect(member(s, 'B2').start).toEqual({ x: 108, y: 6, z: 94 });
    expect(member(s, 'B2').end).toEqual({ x: 108, y: 180, z: 94 });
    // Top edge held by trusses at 24, bottom free between posts at 6 and 162.
    expect(member(s, 'B2').unbraced).toEqual({ top: 24, bottom: 156 });
  });

  it('spans trusses from tail to tail, one gable truss at each end', () => {
    const trusses = s.members.filter((m) => m.truss);
    // 9, 33 … 177: seven bays of 24.
    expect(trusses.map((m) => m.start.y)).toEqual([9, 33, 57, 81, 105, 129, 153, 177]);
    expect(trusses.map((m) => m.id)).toEqual(['T2-01', 'T1-01', 'T1-02', 'T1-03', 'T1-04', 'T1-05', 'T1-06', 'T2-02']);
    expect(trusses.map((m) => m.role)).toEqual(['gable-truss', ...Array(6).fill('truss'), 'gable-truss']);
    // Outer faces at ±(108 + 2.75) = ±110.75; eave 16 more: tails at ±126.75.
    expect(trusses[1]!.start).toEqual({ x: -126.75, y: 33, z: 100 });
    expect(trusses[1]!.end).toEqual({ x: 126.75, y: 33, z: 100 });
    const t = trusses[1]!.truss!;
    // Span 221.5; height 5.5 + 110.75/3 = 42.41667; 6 plf x 221.5/12 ft = 110.75 lb.
    expect(t.span).toBe(221.5);
    expect(t.overhang).toEqual([16, 16]);
    expect(t.height).toBeCloseTo(5.5 + 110.75 / 3, 9);
    expect(t.weight).toBeCloseTo(110.75, 9);
    expect(trusses[1]!.section.weight * trusses[1]!.length).toBeCloseTo(110.75, 9);
  });

  it('lays two surfaces over the sheathing', () => {
    const [left, right] = s.surfaces;
    // Top chord at the tail: 100 + 5.5 − 16/3 = 100.16667; sheathing 0.437 square = 0.437·√10/3 plumb.
    const eave = 100 + 5.5 - 16 / 3 + (0.437 * Math.sqrt(10)) / 3;
    expect(right!.origin.x).toBeCloseTo(126.75, 9);
    expect(right!.origin.y).toBe(3);
    expect(right!.origin.z).toBeCloseTo(eave, 9);
    expect(left!.origin).toMatchObject({ x: -126.75, y: 183 });
    expect(right!.u).toEqual({ x: 0, y: 1, z: 0 });
    expect(left!.u).toEqual({ x: 0, y: -1, z: 0 });
    expect(right!.downhill).toEqual({ x: 1, y: 0 });
    // Along the eave 9 − 6 to 177 + 6 = 180; up the slope 126.75·√10/3.
    expect(right!.outline[2]!.x).toBeCloseTo(180, 9);
    expect(right!.outline[2]!.y).toBeCloseTo((126.75 * Math.sqrt(10)) / 3, 9);
    // Ridge 126.75/3 = 42.25 above the eave; grade at y = 183 is −10 − 183/48 = −13.8125.
    expect(s.roofs[0]!.highestPoint).toBeCloseTo(eave + 42.25, 9);
    expect(s.roofs[0]!.meanHeight).toBeCloseTo(eave + 42.25 / 2 + 13.8125, 9);
    expect(s.roofs[0]).toMatchObject({ attached: true, ridgeAxis: 'y', min: { x: -126.75, y: 3 } });
  });

  it('weighs the layers from the catalogue', () => {
    const layers = Object.fromEntries(s.surfaces[0]!.layers.map((l) => [l.name, l.psf]));
    // Shingles 2; one layer of 30 lb felt, since 4:12 is not below 4; 7/16 panel 0.437 in x 3.2 = 1.40; allowance 1.
    expect(layers).toEqual({ 'Asphalt shingles': 2, 'Felt, 30 lb': 0.3, 'Sheathing 7/16': 1.4, Allowance: 1 });
    expect(s.surfaces[0]!.layers.every((l) => l.source !== '')).toBe(true);
    // 2x6 fascia: 1.5 x 5.5 in of wood of G 0.5 at 15 % moisture: 62.4·0.5/(1 + 0.009·0.5·15)·1.15 = 33.61 pcf; gutter 1 plf.
    const pcf = ((62.4 * 0.5) / (1 + 0.009 * 0.5 * 15)) * 1.15;
    expect(s.surfaces[0]!.edges.map((e) => e.weight)).toEqual([expect.closeTo((pcf / 1728) * 8.25, 9), 1 / 12]);
  });

  it('joins roof to beam to post to footing, marks in that order', () => {
    expect(joints(s, 'truss-to-beam')).toHaveLength(16);
    expect(joints(s, 'truss-to-beam')[0]).toMatchObject({
      mark: 'J1',
      at: { x: -108, y: 9, z: 100 },
      contact: { length: 5.5, width: 1.5 },
    });
    // Gable trusses J1, the others J2, all beam-to-post J3, all bases J4, fascia J5.
    expect([...new Set(s.joints.map((j) => `${j.mark} ${j.kind}`))]).toEqual([
      'J1 truss-to-beam',
      'J2 truss-to-beam',
      'J3 beam-to-post',
      'J4 post-to-footing',
      'J5 fascia-to-framing',
    ]);
    const cap = joints(s, 'beam-to-post').find((j) => j.ties[1]!.part === 'P2')!;
    expect(cap).toMatchObject({ at: { x: -108, y: 168, z: 88 }, contact: { length: 5.5, width: 5.5 } });
    expect(cap.ties[0]).toEqual({ part: 'B1', along: 162 });
    expect(cap.ties[1]!.along).toBeCloseTo(95.5, 9);
    expect(new Set(s.joints.map((j) => j.id)).size).toBe(s.joints.length);
  });

  it('runs the same with the ridge along x, turned', () => {
    const turned = place(
      change(gableProject, {
        cover: {
          attachment: 'free-standing',
          beams: [
            { ...gableProject.cover.beams[0]!, from: { x: -87, y: 100 }, to: { x: 87, y: 100 } },
            { ...gableProject.cover.beams[1]!, from: { x: -87, y: 316 }, to: { x: 87, y: 316 } },
          ],
          roofs: (old) => [{ ...old[0]!, ridge: 'x' as const, from: -84, to: 84 } as (typeof old)[number]],
        },
      }),
    ).value!;
    expect(turned.surfaces[0]!.n.y).toBeCloseTo(Math.sin(Math.atan(1 / 3)), 9);
    expect(turned.surfaces[0]!.downhill).toEqual({ x: 0, y: 1 });
    expect(turned.roofs[0]).toMatchObject({ attached: false, min: { x: -90 }, max: { x: 90 } });
    expect(turned.members.filter((m) => m.truss)).toHaveLength(8);
    expect(turned.roofs[0]!.max.y).toBeCloseTo(316 + 2.75 + 16, 9);
  });
});

describe('shed on a ledger', () => {
  const s = placed(shedProject);
  const cos = 6 / Math.sqrt(37);
  const sin = 1 / Math.sqrt(37);
  // Rafter top flush with the ledger top (119) at its face y = 1.5; 2x10 is 9.25/cos plumb.
  const plumb = 9.25 / cos;
  const top = (y: number): number => 119 - (y - 1.5) / 6;
  // Beam 4.5 + 2 x 1/2 = 5.5 wide on y = 126: uphill face 123.25, downhill face 128.75.
  const beamTop = top(123.25) - plumb;

  it('sets the low beam where the rafter meets its uphill corner', () => {
    expect(beamTop).toBeCloseTo(89.3307, 4);
    expect(member(s, 'B1').start.z).toBeCloseTo(beamTop - 5.625, 9);
    expect(member(s, 'B1').section).toMatchObject({ width: 5.5, b: 4.5, plies: 3, plyWidth: 1.5, depth: 11.25 });
  });

  it('makes posts reach from the slab to the beam', () => {
    // Slab −7 − 126/48 = −9.625; pier 2 above, standoff 1: base at −6.625.
    expect(member(s, 'P2').start).toEqual({ x: 0, y: 126, z: -6.625 });
    expect(member(s, 'P2').length).toBeCloseTo(beamTop - 11.25 + 6.625, 9);
    expect(s.footings.map((f) => f.size)).toEqual([28, 36, 28]);
  });

  it('places rafters from tail to ledger', () => {
    const rafters = s.members.filter((m) => m.role === 'rafter');
    // 238.5 / 16 = 14.9: fifteen at the spacing and one at the end.
    expect(rafters).toHaveLength(16);
    expect(rafters[14]!.start.x).toBeCloseTo(104.75, 9);
    expect(rafters[15]!.start.x).toBe(119.25);
    const r = rafters[0]!;
    // Tail at 128.75 + 12 = 140.75; axis half the plumb depth under the top edge.
    expect(r.start.y).toBe(140.75);
    expect(r.start.z).toBeCloseTo(top(140.75) - plumb / 2, 9);
    expect(r.end.y).toBe(1.5);
    expect(r.end.z).toBeCloseTo(119 - plumb / 2, 9);
    expect(r.length).toBeCloseTo(139.25 / cos + 9.25 / 6, 9);
    expect(r.notch).toBeCloseTo(5.5 * sin, 9);
    expect(r.unbraced.top).toBe(0);
    expect(r.unbraced.bottom).toBeCloseTo((126 - 1.5) / cos, 9);
  });

  it('bears rafters on a level seat and hangs them from the ledger', () => {
    const seat = joints(s, 'rafter-to-beam')[0]!;
    expect(seat.at.y).toBe(126);
    expect(seat.at.z).toBeCloseTo(beamTop, 9);
    expect(seat.contact).toEqual({ length: 5.5, width: 1.5 });
    expect(seat.ties[0]!.along).toBeCloseTo((140.75 - 126) / cos, 9);
    const hanger = joints(s, 'rafter-to-ledger')[0]!;
    expect(hanger.at.y).toBe(1.5);
    expect(hanger.contact).toEqual({ length: 0, width: 0 });
    expect(hanger.ties[1]).toEqual({ part: 'L1', along: 0.75 });
  });

  it('fastens the ledger once a stud spacing', () => {
    const house = joints(s, 'ledger-to-house');
    // 240 / 16 = 15 groups, the first half a spacing in.
    expect(house.map((j) => j.ties[0]!.along)).toEqual(Array.from({ length: 15 }, (_, i) => 8 + 16 * i));
    expect(house[0]).toMatchObject({ at: { x: -112, y: 0, z: 119 - 5.625 } });
    expect(house[0]!.ties[1]).toEqual({ part: 'HW1', along: 0 });
  });

  it('bears the beam on the posts over its structural plies only', () => {
    expect(joints(s, 'beam-to-post')[0]!.contact).toEqual({ length: 5.5, width: 4.5 });
  });

  it('tells pads of different size apart by joint mark', () => {
    expect(joints(s, 'post-to-footing').map((j) => j.mark)).toEqual(['J5', 'J5', 'J6']);
  });

  it('works with a beam on the high side', () => {
    const high = place(
      change(shedProject, {
        cover: {
          attachment: 'free-standing',
          ledgers: [],
          beams: (old) => [
            ...old,
            {
              ...old[0]!,
              mark: 'B2',
              path: '/cover/beams/1',
              from: { x: -120, y: 20 },
              to: { x: 120, y: 20 },
              posts: old[0]!.posts.map((p, i) => ({
                ...p,
                mark: `P${i + 4}`,
                footingMark: `F${i + 4}`,
                path: `/cover/beams/1/posts/${i}`,
              })),
            },
          ],
          roofs: (old) => [{ ...old[0]!, high: { beam: 'B2' }, highOverhang: 10 } as (typeof old)[number]],
        },
      }),
    ).value!;
    // Bottom edge through the high beam's uphill corner (y = 17.25, z = 119), down to the low beam's at y = 123.25.
    expect(member(high, 'B2').start.z).toBeCloseTo(119 - 5.625, 9);
    expect(member(high, 'B1').start.z).toBeCloseTo(119 - (123.25 - 17.25) / 6 - 5.625, 9);
    // High end 10 past the beam's outer face: y = 17.25 − 10.
    expect(high.members.find((m) => m.role === 'rafter')!.end.y).toBeCloseTo(7.25, 9);
    expect(joints(high, 'rafter-to-beam')).toHaveLength(32);
  });

  it('splices a beam over a post into two members that share it', () => {
    const spliced = placed(change(shedProject, { cover: { beams: (old) => [{ ...old[0]!, splices: [120] }] } }));
    const beams = spliced.members.filter((m) => m.role === 'beam');
    expect(beams.map((b) => [b.id, b.mark, b.length])).toEqual([
      ['B1-1', 'B1', 120],
      ['B1-2', 'B1', 120],
    ]);
    const caps = joints(spliced, 'beam-to-post').filter((j) => j.ties[1]!.part === 'P2');
    // Each piece covers half of the 5.5 in post.
    expect(caps.map((j) => [j.ties[0], j.contact.length])).toEqual([
      [{ part: 'B1-1', along: 120 }, 2.75],
      [{ part: 'B1-2', along: 0 }, 2.75],
    ]);
    expect(joints(spliced, 'beam-splice').map((j) => j.ties.map((t) => t.part))).toEqual([['B1-1', 'B1-2']]);
    // A rafter past the splice sits on the second piece.
    const far = joints(spliced, 'rafter-to-beam').at(-1)!;
    expect(far.ties[1]).toEqual({ part: 'B1-2', along: expect.closeTo(119.25, 9) });
  });
});

it('stands a post on grade where no slab is', () => {
  const s = placed(change(shedProject, { patio: { slabs: (old) => [{ ...old[0]!, state: 'removed' as const }] } }));
  // Grade −14 − 126/48 = −16.625; pier 2 above, standoff 1.
  expect(member(s, 'P1').start.z).toBeCloseTo(-13.625, 9);
});

it('does not change its input', () => {
  const before = JSON.stringify(gableProject);
  place(gableProject);
  expect(JSON.stringify(gableProject)).toBe(before);
});
