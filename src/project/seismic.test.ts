import { describe, expect, it } from 'vitest';
import { read } from './read.js';
import { edit, errorsOf, whole } from './testing.js';

const withSeismic = (inner: string): string => {
  const text = whole();
  const line = text.split('\n').find((l) => l.includes('"seismic"'))!;
  return edit(line.trimEnd(), line.trimEnd().replace(/\}\s*(,?)$/, `, ${inner} }$1`), text);
};

describe('accelerations of the site', () => {
  it('are absent unless written', () => {
    expect(Object.keys(read(whole()).value!.basis.seismic)).toEqual(['category']);
  });

  it('are read with their source, and asked when not known', () => {
    const text = withSeismic('"sds": { "value": 0.9, "from": "hazard map" }, "sd1": "unknown"');
    expect(errorsOf(text)).toEqual([]);
    const project = read(text).value!;
    expect(project.basis.seismic.sds).toMatchObject({ value: 0.9, state: 'given', from: 'hazard map' });
    expect(project.basis.seismic.sd1!.state).toBe('unknown');
    expect(project.questions.some((q) => q.path === '/basis/seismic/sd1')).toBe(true);
  });

  it('refuse what is no acceleration', () => {
    expect(errorsOf(withSeismic('"sds": 90')).length).toBeGreaterThan(0);
  });
});
