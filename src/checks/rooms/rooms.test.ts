/** Rooms, doors and edges behind a gable like that of the first example; areas worked by hand. */
import { describe, expect, it } from 'vitest';
import type { Opening, Project, Room } from '../../project/model.js';
import { place } from '../../structure/place.js';
import { change, gableProject, given } from '../../structure/testing.js';
import type { Check, CheckContext, Finding } from '../contract.js';
import { doorLight, patioReceptacle } from '../electrical/devices.js';
import { mandatoryOf } from '../mandatory.js';
import { contextFor } from '../testing.js';
import { equipmentClearance } from './equipment.js';
import { escapePath } from './escape.js';
import { openSide, underCover } from './facts.js';
import { guard } from './guard.js';
import { doorLanding } from './landing.js';
import { roomAir, roomLight } from './light-and-air.js';

const square = (x0: number, y0: number, x1: number, y1: number) => [
  { x: x0, y: y0 },
  { x: x1, y: y0 },
  { x: x1, y: y1 },
  { x: x0, y: y1 },
];
const room = (name: string, use: Room['use'], w: number, d: number): Room => ({
  name,
  use,
  outline: square(-w / 2, -d, w / 2, 0),
  path: '/house/rooms/0',
});
const glazed = (o: Opening): Opening => ({ ...o, glass: 0.8, opens: 0.5 });

/** 10 ft by 20 ft family room behind an 8 ft by 6 ft 8 in door: floor 200 sq ft, opening 53.33 sq ft. */
const project = change(gableProject, {
  house: { rooms: [room('family room', 'living', 120, 240)], openings: (all: readonly Opening[]) => all.map(glazed) },
});
function contextOf(p: Project): CheckContext {
  const { value } = place(p, {});
  if (!value) throw new Error('not placed');
  return contextFor({ project: p, structure: value });
}
function run(check: Check, p: Project, subject: string): Finding {
  const ctx = contextOf(p);
  const found = check.subjects(ctx).find((s) => s.id === subject);
  if (!found) throw new Error(`${check.id} has no ${subject}: ${check.subjects(ctx).map((s) => s.id)}`);
  return check.run(found, ctx);
}

describe('what lies under the cover', () => {
  it('is what the roof stands before: the door and the window beside it, not those farther off', () => {
    expect(underCover(contextOf(project).structure).map((p) => p.opening.mark)).toEqual(['D1', 'W1']);
  });
  it('opens on the long side away from the house but for its posts', () => {
    const { structure } = contextOf(project);
    const roof = structure.roofs[0]!;
    const side = openSide(structure, roof);
    expect(side.length).toBeCloseTo(roof.max.x - roof.min.x, 9);
    // Two 6x6 posts stand within 2 ft of the far side.
    expect(side.share).toBeCloseTo(1 - 11 / side.length, 6);
  });
});

describe('light and air (IRC R303.1: 8 and 4 percent of the floor)', () => {
  it('weighs the door’s glass and opening against the floor', () => {
    expect(run(roomLight, project, 'family room')).toMatchObject({ status: 'pass', demand: 16 });
    expect(run(roomLight, project, 'family room').capacity).toBeCloseTo((0.8 * (96 * 80)) / 144, 9);
    expect(run(roomAir, project, 'family room')).toMatchObject({ status: 'pass', demand: 8 });
    expect(run(roomAir, project, 'family room').capacity).toBeCloseTo((0.5 * (96 * 80)) / 144, 9);
  });
  it('fails a floor too large for its glass', () => {
    const big = change(project, { house: { rooms: [room('family room', 'living', 240, 400)] } });
    // 666.7 sq ft: 53.3 of glass needed, 42.7 there.
    expect(run(roomLight, big, 'family room').status).toBe('fail');
  });
  it('does not count glass under a porch that is too low', () => {
    const low = change(project, { cover: { roofs: (all) => all.map((r) => ({ ...r, bearing: 76 })) } });
    const f = run(roomLight, low, 'family room');
    expect(f.status).toBe('fail');
    expect(f.note).toContain('does not count under the cover');
  });
  it('asks for what nobody stated: the glass, or the room itself', () => {
    const dark = change(project, {
      house: { openings: (all: readonly Opening[]) => all.map((o) => ({ ...o, glass: undefined })) },
    });
    expect(run(roomLight, dark, 'family room').status).toBe('not-evaluated');
    expect(run(roomLight, project, 'bedroom 2').status).toBe('not-evaluated');
  });
  it('does not arise for rooms that are not habitable', () => {
    const hall = change(project, { house: { rooms: [room('family room', 'service', 120, 240)] } });
    expect(run(roomLight, hall, 'family room').status).toBe('not-applicable');
  });
  it('is mandatory only where a habitable room is stated', () => {
    expect(mandatoryOf(gableProject).has('room-light')).toBe(false);
    expect(mandatoryOf(project).has('room-light')).toBe(true);
  });
});

describe('escape (IRC R310.2.4: 36 in)', () => {
  it('measures the path under the cover', () => {
    expect(run(escapePath, project, 'W1')).toMatchObject({ status: 'pass', demand: 36 });
  });
  it('refuses a post before the window', () => {
    const moved = change(project, {
      house: {
        openings: (all: readonly Opening[]) => all.map((o) => (o.mark === 'W1' ? { ...o, offset: 264 - 108 - 30 } : o)),
      },
    });
    const f = run(escapePath, moved, 'W1');
    expect(f.status).toBe('fail');
    expect(f.note).toContain('P1');
  });
});

describe('landings and guards (IRC R311.3, R312.1)', () => {
  const slab = (by: object) => change(project, { patio: { slabs: (all) => [{ ...all[0]!, ...by }] } });
  it('allows 7-3/4 in from the threshold', () => {
    expect(run(doorLanding, slab({ topAtHouse: -7.75 }), 'D1').status).toBe('pass');
    expect(run(doorLanding, slab({ topAtHouse: -8 }), 'D1').status).toBe('fail');
  });
  it('wants the landing as wide as the door and 36 in deep, falling 1/4 in 12 at most', () => {
    expect(run(doorLanding, slab({ outline: square(-132, 0, 132, 35) }), 'D1').status).toBe('fail');
    expect(run(doorLanding, slab({ outline: square(-132, 0, 132, 36) }), 'D1').status).toBe('pass');
    expect(run(doorLanding, slab({ fall: 0.5 / 12 }), 'D1').status).toBe('fail');
  });
  it('asks for a landing where none is entered', () => {
    expect(run(doorLanding, slab({ state: 'removed' }), 'D1').status).toBe('not-evaluated');
  });
  it('sends an edge over 30 in to a professional', () => {
    const high = change(slab({}), { patio: { grade: { atHouse: -36, fall: 0 } } });
    // Slab top −5 in at the house, ground at −36: 31 in.
    expect(run(guard, high, 'S1').status).toBe('outside-scope');
    expect(run(guard, project, 'S1').status).toBe('pass');
  });
});

describe('equipment and devices', () => {
  const vent = (offset: number, height: number) =>
    change(project, {
      house: {
        equipment: [
          {
            label: 'vent',
            kind: 'dryer-vent' as const,
            wall: 0,
            offset,
            height,
            clearance: given(36),
            path: '/house/equipment/0',
          },
        ],
      },
    });
  it('keeps the stated clearance from new work', () => {
    expect(run(equipmentClearance, vent(500, 20), 'vent').status).toBe('pass');
    // Under the end of the left beam, at its height.
    expect(run(equipmentClearance, vent(264 - 108, 95), 'vent').status).toBe('fail');
  });
  const wired = (height: number) =>
    change(project, {
      cover: {
        electrical: {
          path: '/cover/electrical',
          devices: [
            {
              mark: 'E1',
              kind: 'receptacle',
              state: 'new',
              at: { x: 90, y: 0 },
              height,
              circuit: '',
              switchedBy: '',
              place: 'damp',
              note: '',
              path: '/cover/electrical/devices/0',
            },
            {
              mark: 'E2',
              kind: 'light',
              state: 'new',
              at: { x: 50, y: 0 },
              height: 80,
              circuit: '',
              switchedBy: 'E3',
              place: 'damp',
              note: '',
              path: '/cover/electrical/devices/1',
            },
          ],
        },
      },
    } as never) as Project;
  it('finds the receptacle at 6 ft 6 in at most, and the light at the door', () => {
    expect(run(patioReceptacle, wired(78), 'cover').status).toBe('pass');
    expect(run(patioReceptacle, wired(79), 'cover').status).toBe('fail');
    expect(run(doorLight, wired(20), 'D1').status).toBe('pass');
    expect(run(doorLight, project, 'D1').status).toBe('not-applicable');
  });
});
