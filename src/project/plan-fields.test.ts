/** Fields that only the plans need: optional, read with units, refused with a place when wrong. */
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { read } from './index.js';

const text = readFileSync(
  join(resolve(import.meta.dirname, '../..'), 'examples/01-gable-scissor-kept-slab/project.json'),
  'utf8',
);
const swapped = (from: string, to: string): string => {
  expect(text).toContain(from);
  return text.replace(from, to);
};
const codesOf = (source: string) => read(source).issues.map((i) => [i.code, i.path]);

describe('fields of the plans', () => {
  it('reads rooms, equipment, street, elevations and devices in inches', () => {
    const { value } = read(text);
    expect(value!.house.rooms.map((r) => [r.name, r.use])).toEqual([
      ['bedroom 2', 'sleeping'],
      ['family room', 'living'],
      ['kitchen', 'cooking'],
    ]);
    expect(value!.house.equipment[0]).toMatchObject({ kind: 'dryer-vent', wall: 0, offset: 39 * 12, height: 12 });
    expect(value!.lot.street).toMatchObject({ rightOfWay: 600, toPavement: 108 });
    expect(value!.lot.courses[0]!.elevation).toBeCloseTo(99.2 * 12, 9);
    expect(value!.cover.electrical!.devices[0]).toMatchObject({ mark: 'E1', height: 18, switchedBy: '' });
    expect(value!.house.openings.find((o) => o.mark === 'D1')).toMatchObject({ glass: 0.8, opens: 0.45 });
    expect(value!.patio.existing.map((t) => t.state)).toEqual(['removed', 'existing']);
  });

  it('reads files without any of them', () => {
    const bare = text
      .replace(/"rooms": \[[\s\S]*?\n {4}\],\n/, '')
      .replace(/"equipment": \[[\s\S]*?\n {4}\],\n/, '')
      .replace(/"electrical": \{[\s\S]*?\n {4}\},\n/, '')
      .replace(/"utilities": \[[\s\S]*?\n {4}\],\n/, '')
      .replace(/"drainage": \[[\s\S]*?\n {4}\],\n/, '');
    const { value } = read(bare);
    expect(value!.house.rooms).toEqual([]);
    expect(value!.cover.electrical).toBeUndefined();
    expect(value!.lot.utilities).toEqual([]);
  });

  it('refuses a switch that is none, a wall that is none, a mark used twice, a room that crosses itself', () => {
    expect(codesOf(swapped('"switchedBy": "E4"', '"switchedBy": "E1"'))).toContainEqual([
      'dangling-reference',
      '/cover/electrical/devices/4/switchedBy',
    ]);
    expect(
      codesOf(
        swapped('"kind": "dryer-vent",\n        "wall": "rear"', '"kind": "dryer-vent",\n        "wall": "reer"'),
      ),
    ).toContainEqual(['dangling-reference', '/house/equipment/0/wall']);
    expect(codesOf(swapped('"mark": "E2"', '"mark": "P2"')).map(([c]) => c)).toContain('duplicate-mark');
    const crossed = swapped(
      '[["-9 ft", "-16 ft"], ["8 ft", "-16 ft"], ["8 ft", "-6 in"], ["-9 ft", "-6 in"]]',
      '[["-9 ft", "-16 ft"], ["8 ft", "-6 in"], ["8 ft", "-16 ft"], ["-9 ft", "-6 in"]]',
    );
    expect(codesOf(crossed)).toContainEqual(['outline-crosses', '/house/rooms/1/outline']);
  });

  it('asks the office for a clearance nobody knows', () => {
    const { value } = read(
      swapped('"clearance": { "value": "3 ft", "from": "building counter" }', '"clearance": "unknown"'),
    );
    expect(value!.questions.map((q) => q.text)).toContain(
      'How far must new work keep from the dryer vent on the rear wall?',
    );
  });
});
