/** Footing kinds, soil values, anchors and the house footing as the file writes them. */
import { describe, expect, it } from 'vitest';
import { read } from './read.js';
import { edit, errorsOf, whole } from './testing.js';

/** The starter with its first footing put in other words. */
function withFooting(body: string): string {
  const text = whole();
  const at = text.indexOf('"kind": "pier-on-pad"');
  const open = text.lastIndexOf('{', at);
  return text.slice(0, open) + body + text.slice(text.indexOf('}', at) + 1);
}

const HOLE =
  '{ "kind": "embedded-post", "diameter": "18 in", "bottom": "54 in", "under": "8 in", "backfill": "concrete", "slabHolds": true, "fc": "3000 psi", "steel": "none" }';

describe('footings in the file', () => {
  it('reads a post set in the ground and one on the slab', () => {
    const hole = read(withFooting(HOLE));
    expect(hole.issues.filter((i) => i.severity === 'error')).toEqual([]);
    expect(Object.values(hole.value!.choices.footings)[0]).toMatchObject({
      kind: 'embedded-post',
      diameter: 18,
      bottom: 54,
      under: 8,
      backfill: 'concrete',
      slabHolds: true,
    });
    expect(errorsOf(withFooting('{ "kind": "slab", "fc": "3000 psi", "steel": "none" }'))).toEqual([]);
    expect(errorsOf(withFooting(HOLE.replace('"concrete"', '"gravel"')))[0]).toMatchObject({ code: 'not-one-of' });
  });

  it('keeps soil values out until they are given, and asks when they are unknown', () => {
    const { soil } = read(whole()).value!.basis;
    expect([soil.friction, soil.cohesion, soil.skinFriction, soil.halfInchMotion]).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
    const given = read(edit('"soil": {', '"soil": { "friction": { "value": 0.25, "from": "soils report" },'));
    expect(given.value!.basis.soil.friction).toEqual({
      value: 0.25,
      state: 'given',
      from: 'soils report',
      path: '/basis/soil/friction',
    });
    const open = read(edit('"soil": {', '"soil": { "halfInchMotion": "unknown",')).value!;
    expect(open.basis.soil.halfInchMotion).toMatchObject({ state: 'unknown', value: false });
    expect(open.questions.map((q) => q.path)).toContain('/basis/soil/halfInchMotion');
  });

  it('reads the house footing', () => {
    const text = edit('"house": {', '"house": { "footing": { "bottom": "30 in", "projection": "unknown" },');
    const { house } = read(text).value!;
    expect(house.footing?.bottom).toMatchObject({ value: 30, state: 'given' });
    expect(house.footing?.projection.state).toBe('unknown');
    expect(read(whole()).value!.house.footing).toBeUndefined();
  });

  it('ties an anchor to a footing that exists', () => {
    const name = Object.keys(read(whole()).value!.choices.footings)[0]!;
    const bolt = '{ "bolt": "5/8 in", "embedment": "8 in", "fu": "58000 psi", "fy": "36000 psi" }';
    const put = (of: string) => edit('"choices": {', `"choices": { "anchors": { "${of}": ${bolt} },`);
    expect(read(put(name)).value!.choices.anchors![name]).toEqual({ bolt: 0.625, embedment: 8, fu: 58000, fy: 36000 });
    expect(errorsOf(put('nowhere'))[0]).toMatchObject({ code: 'not-one-of', path: '/choices/anchors/nowhere' });
  });
});
