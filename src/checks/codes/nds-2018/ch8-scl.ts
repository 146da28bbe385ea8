/**
 * Structural composite lumber. NDS 2018 chapter 8 leaves the volume factor to the producer's evaluation report; the
 * form below is the one such reports use, with their exponent handed in.
 */

/** Volume factor on Fb of laminated veneer lumber, (12/d)^(1/m), d in. NDS 2018 8.3.6: from the evaluation report. */
export const CVScl = (d: number, m: number): number => (12 / d) ** (1 / m);

/** Repetitive member factor, three or more members as in 4.3.9. NDS 2018 8.3.7 (recalled). */
export const CrScl = (members: number, spacing: number, distributing: boolean): number =>
  members >= 3 && spacing <= 24 && distributing ? 1.04 : 1;

/**
 * Wet service factor: 1 in dry service (under 16 % moisture). Undefined when wet: the product's report must allow it,
 * and gives the factor. NDS 2018 8.1.4, 8.3.3.
 */
export const CMScl = (wet: boolean): number | undefined => (wet ? undefined : 1);
