import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';

/** Result of bending with compression. Each number is at most 1 when the member passes. */
export interface BeamColumn {
  /** Eq. 3.9-3 or 15.4-1; undefined when a buckling limit is reached, where the equation has no meaning. */
  readonly interaction: number | undefined;
  /** Eq. 3.9-4 or 15.4-2, which must stay below 1. */
  readonly stability: number;
  /** fc/Fc', 3.7.1: the square of it in Eq. 3.9-3 shows a smaller number, so it is looked at by itself. */
  readonly compression: number;
  /** The governing ratio of the three; always finite. Past a buckling limit it is the largest stress over its limit (1 or more). */
  readonly ratio: number;
}

export interface TensionBending {
  /** Eq. 3.9-1. */
  readonly tension: number;
  /** Eq. 3.9-2; 0 when tension relieves the compression edge wholly. */
  readonly compression: number;
  readonly ratio: number;
}

/**
 * Bending and axial tension. FbStar is Fb adjusted by all factors but CL, FbStarStar by all but CV; psi.
 * NDS 2018 3.9.1, Eq. 3.9-1 and 3.9-2.
 */
export function bendingTension(
  ft: number,
  FtAdj: number,
  fbValue: number,
  FbStar: number,
  FbStarStar: number,
  rec?: Recorder,
): TensionBending {
  const tension = ft / FtAdj + fbValue / FbStar;
  const compression = Math.max(0, (fbValue - ft) / FbStarStar);
  rec?.step({
    symbol: 'ratio',
    meaning: 'bending and tension, tension edge',
    formula: "ft/Ft' + fb/Fb* ≤ 1",
    substituted: `${say(ft)}/${say(FtAdj)} + ${say(fbValue)}/${say(FbStar)}`,
    value: tension,
    unit: '',
    clause: 'NDS 2018 Eq. 3.9-1',
  });
  rec?.step({
    symbol: 'ratio',
    meaning: 'bending and tension, compression edge',
    formula: '(fb − ft)/Fb** ≤ 1',
    substituted: `(${say(fbValue)} − ${say(ft)})/${say(FbStarStar)}`,
    value: compression,
    unit: '',
    clause: 'NDS 2018 Eq. 3.9-2',
  });
  return { tension, compression, ratio: Math.max(tension, compression) };
}

/** Stresses and limits of a beam-column, psi. Axis 1 is bending on the narrow face (strong axis), axis 2 on the wide. */
export interface BeamColumnInput {
  readonly fc: number;
  readonly fb1: number;
  readonly fb2: number;
  readonly FcAdj: number;
  readonly Fb1Adj: number;
  readonly Fb2Adj: number;
  /** Buckling limits in the planes of bending about axes 1 and 2; a very large number where held all along. */
  readonly FcE1: number;
  readonly FcE2: number;
  /** Lateral buckling limit in bending about axis 1; a very large number where CL = 1 by bracing. */
  readonly FbE: number;
}

/** A limit of this size or more stands for none: the member is held all along. */
const NO_LIMIT = 1e9;

/** `fc/FcE2 + (m1/FbE)²` in numbers, with its terms left out where nothing can buckle that way. */
function stabilityText(fc: number, FcE2: number, m1: number, FbE: number): string {
  const first = FcE2 >= NO_LIMIT ? '0 (no limit: held all along)' : `${say(fc)}/${say(FcE2)}`;
  const second = FbE >= NO_LIMIT ? '0 (no limit: d ≤ b or held all along)' : `(${say(m1)}/${say(FbE)})²`;
  return `${first} + ${second}`;
}

/** Biaxial bending and axial compression, all bounds. NDS 2018 3.7.1 and 3.9.2, Eq. 3.9-3 and 3.9-4. */
export function bendingCompression(s: BeamColumnInput, rec?: Recorder): BeamColumn {
  return eccentricCompression(s, 0, 0, rec);
}

/**
 * Biaxial bending and axial compression with the load off centre. `k1`, `k2` are 6·e/d for the eccentricity about axes
 * 1 and 2 (0 when centred). With both 0 this is 3.9.2 itself. NDS 2018 15.4, Eq. 15.4-1 and 15.4-2 (recalled).
 */
export function eccentricCompression(s: BeamColumnInput, k1: number, k2: number, rec?: Recorder): BeamColumn {
  const { fc, fb1, fb2, FcE1, FcE2, FbE } = s;
  const m1 = fb1 + fc * k1;
  const lateral = (m1 / FbE) ** 2;
  const stability = fc / FcE2 + lateral;
  const left1 = 1 - fc / FcE1;
  const left2 = 1 - stability;
  const stable = left1 > 0 && left2 > 0 && fc < FcE1 && fc < FcE2 && m1 < FbE;
  const a1 = fb1 + fc * k1 * (1 + (0.234 * fc) / FcE1);
  const a2 = fb2 + fc * k2 * (1 + (0.234 * fc) / FcE2 + 0.234 * lateral);
  const interaction = stable ? (fc / s.FcAdj) ** 2 + a1 / (s.Fb1Adj * left1) + a2 / (s.Fb2Adj * left2) : undefined;
  const compression = fc / s.FcAdj;
  const ratio =
    interaction === undefined
      ? Math.max(1, fc / FcE1, fc / FcE2, m1 / FbE, stability, compression)
      : Math.max(interaction, stability, compression);
  const centred = k1 === 0 && k2 === 0;
  rec?.step({
    symbol: 'ratio',
    meaning: 'compression alone',
    formula: "fc/Fc' ≤ 1",
    substituted: `${say(fc)}/${say(s.FcAdj)}`,
    value: compression,
    unit: '',
    clause: 'NDS 2018 3.7.1',
  });
  rec?.step({
    symbol: 'ratio',
    meaning: centred ? 'bending and compression' : 'bending and off-centre compression',
    formula: centred
      ? "(fc/Fc')² + fb1/(Fb1'·(1−fc/FcE1)) + fb2/(Fb2'·(1−fc/FcE2−(fb1/FbE)²)) ≤ 1"
      : "(fc/Fc')² + [fb1+fc·(6e1/d1)·(1+0.234·fc/FcE1)]/(Fb1'·(1−fc/FcE1)) + [fb2+fc·(6e2/d2)·(1+0.234·fc/FcE2+0.234·((fb1+fc·6e1/d1)/FbE)²)]/(Fb2'·(1−fc/FcE2−((fb1+fc·6e1/d1)/FbE)²)) ≤ 1",
    substituted: stable
      ? `(${say(fc)}/${say(s.FcAdj)})² + ${say(a1)}/(${say(s.Fb1Adj)}·${say(left1)}) + ${say(a2)}/(${say(s.Fb2Adj)}·${say(left2)})`
      : 'a buckling limit is reached: largest stress over its limit',
    value: interaction ?? ratio,
    unit: '',
    clause: centred ? 'NDS 2018 Eq. 3.9-3' : 'NDS 2018 Eq. 15.4-1',
  });
  rec?.step({
    symbol: 'ratio',
    meaning: 'stability under bending and compression',
    formula: centred ? 'fc/FcE2 + (fb1/FbE)² < 1' : 'fc/FcE2 + ((fb1+fc·6e1/d1)/FbE)² < 1',
    substituted: stabilityText(fc, FcE2, m1, FbE),
    value: stability,
    unit: '',
    clause: centred ? 'NDS 2018 Eq. 3.9-4' : 'NDS 2018 Eq. 15.4-2',
  });
  return { interaction, stability, compression, ratio };
}
