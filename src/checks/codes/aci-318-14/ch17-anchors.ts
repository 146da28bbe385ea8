/**
 * ACI 318-14 chapter 17: one cast-in headed anchor bolt, no supplementary reinforcement, concrete taken as cracked, no
 * earthquake. Inches, psi, pounds; loads are factored. `c` is the least distance from the bolt to an edge; all edges are
 * taken that near. From memory except where a record says otherwise: confirm in the adopted code.
 */
import type { Recorder } from '../../../base/trace.js';
import { MEMORY_NOTE } from '../clause-record.js';
import { say } from '../say.js';

/** Strength reduction, Condition B (17.3.3): ductile steel in tension and shear, concrete, pullout and pryout. */
export const PHI_ANCHOR = { steelTension: 0.75, steelShear: 0.65, concrete: 0.7 } as const;
/** Basic breakout coefficient of cast-in anchors (17.4.2.2). */
export const KC_CAST_IN = 24;

/** Effective tensile area (UNC thread) and net bearing area of a hex head by nominal diameter, in². ASME B1.1 and B18.2.1 sizes, recalled. */
export const BOLTS: readonly { readonly d: number; readonly Ase: number; readonly head: number }[] = [
  { d: 0.5, Ase: 0.142, head: 0.291 },
  { d: 0.625, Ase: 0.226, head: 0.454 },
  { d: 0.75, Ase: 0.334, head: 0.654 },
  { d: 0.875, Ase: 0.462, head: 0.891 },
  { d: 1, Ase: 0.606, head: 1.163 },
];

const step = (
  rec: Recorder | undefined,
  symbol: string,
  meaning: string,
  formula: string,
  substituted: () => string,
  value: number,
  clause: string,
  unit = 'lb',
): number => {
  rec?.step({
    symbol,
    meaning,
    formula,
    substituted: substituted(),
    value,
    unit,
    clause: `ACI 318-14 ${clause}`,
    note: MEMORY_NOTE,
  });
  return value;
};

/** Specified tensile strength that counts, psi: at most 1.9·fy and 125 000 (17.4.1.2). */
export const countedTensile = (fu: number, fy: number): number => Math.min(fu, 1.9 * fy, 125000);

/** φNsa in pounds (17.4.1.2). */
export const steelTension = (Ase: number, futa: number, rec?: Recorder): number =>
  step(
    rec,
    'φNsa',
    'steel in tension',
    'φ·Ase·futa',
    () => `${PHI_ANCHOR.steelTension} · ${say(Ase)} · ${say(futa)}`,
    PHI_ANCHOR.steelTension * Ase * futa,
    '17.4.1.2',
  );

/** Embedment that counts where three or more edges are nearer than 1.5·hef (17.4.2.3), in. */
export const countedEmbedment = (hef: number, c: number): number => (c < 1.5 * hef ? Math.min(hef, c / 1.5) : hef);

/** Basic breakout strength Nb in pounds in cracked concrete (17.4.2.2); the deep form from 11 to 25 in where it is larger for cast-in bolts. */
export function basicBreakout(kc: number, fc: number, hef: number): number {
  const usual = kc * Math.sqrt(fc) * hef ** 1.5;
  return kc === KC_CAST_IN && hef >= 11 && hef <= 25 ? 16 * Math.sqrt(fc) * hef ** (5 / 3) : usual;
}

/** Modification for the nearest edge (17.4.2.5). */
export const edgeFactor = (c: number, hef: number): number => (c >= 1.5 * hef ? 1 : 0.7 + (0.3 * c) / (1.5 * hef));

/** φNcb in pounds of a bolt `c` from all four edges (17.4.2.1). */
export function breakoutTension(fc: number, hef: number, c: number, rec?: Recorder): number {
  const h = countedEmbedment(hef, c);
  step(
    rec,
    'hef',
    'embedment that counts: no edge farther than c',
    'min(hef, c/1.5)',
    () => `min(${say(hef)}, ${say(c)}/1.5)`,
    h,
    '17.4.2.3',
    'in',
  );
  const reach = 2 * Math.min(c, 1.5 * h);
  const ratio = reach ** 2 / (9 * h * h);
  step(
    rec,
    'ANc/ANco',
    'breakout area over that of an anchor far from edges',
    '(2·min(c, 1.5·hef))²/(9·hef²)',
    () => `${say(reach)}²/(9 · ${say(h)}²)`,
    ratio,
    '17.4.2.1',
    '',
  );
  const edge = edgeFactor(c, h);
  const Nb = basicBreakout(KC_CAST_IN, fc, h);
  const deep = h >= 11 && h <= 25;
  step(
    rec,
    'Nb',
    'basic breakout strength',
    deep ? "16·√f'c·hef^(5/3)" : "24·√f'c·hef^1.5",
    () => `${deep ? 16 : 24} · √${say(fc)} · ${say(h)}^${deep ? '(5/3)' : '1.5'}`,
    Nb,
    '17.4.2.2',
  );
  return step(
    rec,
    'φNcb',
    'concrete breakout in tension',
    'φ·(ANc/ANco)·ψed,N·ψc,N·Nb, ψc,N = 1 cracked',
    () => `${PHI_ANCHOR.concrete} · ${say(ratio)} · ${say(edge)} · 1 · ${say(Nb)}`,
    PHI_ANCHOR.concrete * ratio * edge * Nb,
    '17.4.2.1',
  );
}

/** φNpn in pounds: the head crushing its way out, cracked concrete (17.4.3.4). */
export const pullout = (fc: number, head: number, rec?: Recorder): number =>
  step(
    rec,
    'φNpn',
    'pullout of the head',
    "φ·8·Abrg·f'c",
    () => `${PHI_ANCHOR.concrete} · 8 · ${say(head)} · ${say(fc)}`,
    PHI_ANCHOR.concrete * 8 * head * fc,
    '17.4.3.4',
  );

/** φVsa in pounds of a cast-in headed bolt (17.5.1.2b). */
export const steelShear = (Ase: number, futa: number, rec?: Recorder): number =>
  step(
    rec,
    'φVsa',
    'steel in shear',
    'φ·0.6·Ase·futa',
    () => `${PHI_ANCHOR.steelShear} · 0.6 · ${say(Ase)} · ${say(futa)}`,
    PHI_ANCHOR.steelShear * 0.6 * Ase * futa,
    '17.5.1.2',
  );

/** φVcb in pounds toward an edge `c` away with side edges as near, in concrete deeper than 1.5·c (17.5.2). */
export function breakoutShear(fc: number, d: number, hef: number, c: number, rec?: Recorder): number {
  const le = Math.min(hef, 8 * d);
  const root = Math.sqrt(fc) * c ** 1.5;
  const Vb = Math.min(7 * (le / d) ** 0.2 * Math.sqrt(d) * root, 9 * root);
  step(
    rec,
    'Vb',
    'basic breakout strength in shear',
    "min(7·(le/da)^0.2·√da, 9)·√f'c·c^1.5",
    () => `min(7 · (${say(le)}/${say(d)})^0.2 · √${say(d)}, 9) · √${say(fc)} · ${say(c)}^1.5`,
    Vb,
    '17.5.2.2',
  );
  // Side edges at c: AVc = 2c·1.5c against 4.5c²; ψed,V = 0.7 + 0.3·c/(1.5c).
  return step(
    rec,
    'φVcb',
    'concrete breakout in shear',
    'φ·(3·c²/(4.5·c²))·0.9·Vb, ψc,V = 1 cracked',
    () => `${PHI_ANCHOR.concrete} · 0.6667 · 0.9 · ${say(Vb)}`,
    PHI_ANCHOR.concrete * (2 / 3) * 0.9 * Vb,
    '17.5.2.1',
  );
}

/** φVcp in pounds: pryout, twice the breakout of 17.4.2 from 2.5 in of embedment (17.5.3.1). `Ncb` is φNcb. */
export const pryout = (Ncb: number, hef: number, rec?: Recorder): number =>
  step(
    rec,
    'φVcp',
    'pryout',
    'kcp·φNcb',
    () => `${hef < 2.5 ? 1 : 2} · ${say(Ncb)}`,
    (hef < 2.5 ? 1 : 2) * Ncb,
    '17.5.3.1',
  );

/** Tension and shear together, over 1.2 unless one of them is under a fifth (17.6): demand over limit. */
export function anchorInteraction(tension: number, shear: number, rec?: Recorder): number {
  const value = tension <= 0.2 || shear <= 0.2 ? Math.max(tension, shear) : (tension + shear) / 1.2;
  return step(
    rec,
    'i',
    'tension and shear together',
    'max(N, V) when one is at most 0.2, else (N + V)/1.2',
    () => `N = ${say(tension)}, V = ${say(shear)}`,
    value,
    '17.6',
    '',
  );
}
