/** Hand statics of one knee-braced post with pinned base and pinned top, all in inches, pounds, pound-inches. */
export interface KneeBraceForces {
  /** Horizontal part of the brace force, lb. */
  readonly horizontal: number;
  /** Axial force in the brace, lb; tension or compression with the sense of the shear. */
  readonly axial: number;
  /** Moment in the post where the brace meets it, lb·in. */
  readonly postMoment: number;
  /** Horizontal reaction at the top of the post, opposite to the brace's, lb. */
  readonly topReaction: number;
}

/**
 * `V` shear at the base of the post, `h` base to beam, `a` drop from the beam to the brace on the post (both in), `angle`
 * of the brace from the horizontal (radians).
 * Statics.
 */
export function kneeBraceForces(V: number, h: number, a: number, angle: number): KneeBraceForces {
  const horizontal = (V * h) / a;
  return {
    horizontal,
    axial: horizontal / Math.cos(angle),
    postMoment: V * (h - a),
    topReaction: (V * (h - a)) / a,
  };
}
