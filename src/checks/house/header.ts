/** The header over an opening that the cover loads: verified by someone, worked out from what it is made of, or unknown. */
import type { Recorder } from '../../base/trace.js';
import type { Header, Opening, SectionChoice } from '../../project/model.js';
import type { Section } from '../../structure/model.js';
import { makeSection } from '../../structure/sections.js';
import { fb, fcPerp, fv } from '../codes/nds-2018/index.js';
import { ratioOf } from '../finding.js';
import { designValue } from '../members/design.js';

/** Load of the cover on a header: even, lb/in, and a single force, lb, at a distance from the near jamb, in. */
export interface HeaderLoad {
  readonly even: number;
  readonly point: number;
  readonly at: number;
}

export type HeaderAnswer =
  | { readonly state: 'verified'; readonly text: string }
  | { readonly state: 'unknown'; readonly text: string }
  | {
      readonly state: 'worked-out';
      readonly ratio: number;
      readonly text: string;
      /** The question nearest its limit. */
      readonly governs: HeaderShare;
    };

export interface HeaderShare {
  readonly demand: number;
  readonly capacity: number;
  readonly unit: string;
  readonly formula: string;
  readonly clause: string;
}

/** Thickness of a jack stud, inches: nominal 2 in. */
const JACK = 1.5;
/** Load duration factor: what the header carries already is of unknown duration, so permanent stands for all of it. */
const CD = 0.9;

function sectionOf(m: NonNullable<Header['made']>, path: string): Section | undefined {
  const wood = { species: m.species, grade: m.grade, treatment: 'none', incised: false, service: 'dry' } as const;
  const choice: SectionChoice =
    m.plies > 1
      ? { kind: 'built-up', plies: m.plies, ply: m.size, spacers: 0, spacerThickness: 0, fastening: '', ...wood }
      : { kind: 'solid', size: m.size, ...wood };
  const made = makeSection(choice, { choice: 'header', path });
  return made.ok ? made.section : undefined;
}

const said = (load: HeaderLoad): string =>
  [
    load.even > 0 ? `${Math.ceil(load.even * 12)} lb per foot` : '',
    load.point > 0 ? `${Math.ceil(load.point)} lb at one place` : '',
  ]
    .filter(Boolean)
    .join(' and ');

/**
 * Simple span from jack to jack under the load it carries already and the cover's: bending and shear (NDS 2018 3.3, 3.4),
 * and bearing on the jacks (3.10.2). Its top is held by the wall on it.
 */
export function assessHeader(o: Opening, load: HeaderLoad, rec?: Recorder): HeaderAnswer {
  const h = o.header;
  const adds = `${o.mark} (${o.room || o.kind}): header and jack studs take ${said(load)} more`;
  // A bare yes names nobody who could be asked.
  if (h && h.verified.state === 'given' && h.verified.value && h.verified.from !== '')
    return { state: 'verified', text: `${adds}; verified: ${h.verified.from}` };
  const section = h?.made && sectionOf(h.made, h.path);
  if (!h?.made || !section) return { state: 'unknown', text: adds };
  const L = o.width + JACK * h.made.jacks;
  const w = load.even + h.made.existing;
  const a = Math.min(Math.max(load.at, 0), o.width) + (JACK * h.made.jacks) / 2;
  rec?.heading(`Header of ${o.mark}: ${section.label}, ${h.made.jacks} jack stud(s) each end`);
  const M = (w * L * L) / 8 + (load.point * a * (L - a)) / L;
  const R = (w * L) / 2 + (load.point * Math.max(a, L - a)) / L;
  const step = (
    symbol: string,
    meaning: string,
    formula: string,
    substituted: string,
    value: number,
    unit: string,
  ): void => rec?.step({ symbol, meaning, formula, substituted, value, unit, clause: 'statics', from: [h.path] });
  step(
    'L',
    'span, to the middle of the jacks',
    'opening + jack · number',
    `${o.width} + ${JACK}·${h.made.jacks}`,
    L,
    'in',
  );
  step(
    'w',
    'load carried already and load added',
    'existing + added',
    `${h.made.existing.toFixed(2)} + ${load.even.toFixed(2)}`,
    w,
    'lb/in',
  );
  step(
    'M',
    'moment, simple span',
    'w·L²/8 + P·a·(L−a)/L',
    `${w.toFixed(2)}·${L}²/8 + ${load.point.toFixed(0)}·${a}·${L - a}/${L}`,
    M,
    'lb·in',
  );
  step(
    'R',
    'greater end reaction',
    'w·L/2 + P·max(a, L−a)/L',
    `${w.toFixed(2)}·${L}/2 + ${load.point.toFixed(0)}·${Math.max(a, L - a)}/${L}`,
    R,
    'lb',
  );
  const Fb = designValue('Fb', section, { CD, CL: 1 }, rec);
  const Fv = designValue('Fv', section, { CD }, rec);
  const Fp = designValue('FcPerp', section, {}, rec);
  if (Fb === undefined || Fv === undefined || Fp === undefined) return { state: 'unknown', text: adds };
  const shares: readonly HeaderShare[] = [
    { demand: fb(M, section.b, section.d, rec), capacity: Fb, formula: "fb / Fb'", clause: 'NDS 2018 3.3.1' },
    { demand: fv(R, section.b, section.d, rec), capacity: Fv, formula: "fv / Fv'", clause: 'NDS 2018 3.4.1' },
    {
      demand: fcPerp(R, section.b, JACK * h.made.jacks, rec),
      capacity: Fp,
      formula: "fc⊥ / Fc⊥', on the jacks",
      clause: 'NDS 2018 3.10.2',
    },
  ].map((s) => ({ ...s, unit: 'psi' }));
  const short = (v: number): string => String(Number(v.toPrecision(4)));
  for (const s of shares)
    rec?.step({
      symbol: 'used',
      meaning: 'part of the capacity of the header',
      formula: s.formula,
      substituted: `${short(s.demand)} / ${short(s.capacity)}`,
      value: ratioOf(s.demand, s.capacity),
      unit: '',
      clause: s.clause,
      from: [h.path],
    });
  const governs = shares.reduce((g, s) => (ratioOf(s.demand, s.capacity) > ratioOf(g.demand, g.capacity) ? s : g));
  const ratio = ratioOf(governs.demand, governs.capacity);
  return {
    state: 'worked-out',
    ratio,
    governs,
    text: `${adds}; (${h.made.plies}) ${h.made.size} worked out: ${ratio.toFixed(2)} of its capacity`,
  };
}
