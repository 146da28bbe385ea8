/**
 * Dowel bearing strength of a steel piece `t` thick (in) of tensile strength Fu, psi: 1.5·Fu from 1/4 in. (hot-rolled),
 * 1.375·Fu below (cold-formed). NDS 2018 I.2, 12.3.4.
 */
export const FeSteel = (t: number, Fu: number): number => (t >= 0.25 ? 1.5 : 1.375) * Fu;
