import type { FootingForm } from './contract.js';

/** A post in a drilled hole: concrete under it where asked for, and concrete, sand or soil round it up to the surface. */
export const embeddedPost: FootingForm<'embedded-post'> = {
  shape(c, surface, { post }) {
    if (!(c.diameter > 0 && c.under >= 0 && c.bottom > c.under))
      return {
        code: 'footing-without-size',
        key: 'bottom',
        message: 'The post does not reach into the hole.',
        found: c.bottom,
        expected: `deeper than the concrete under the post, ${c.under} in`,
      };
    const diagonal = Math.hypot(post.width, post.depth);
    if (c.diameter < diagonal)
      return {
        code: 'hole-narrower-than-post',
        key: 'diameter',
        message: 'The post does not fit into the hole.',
        found: c.diameter,
        expected: `${Math.ceil(diagonal)} in or wider`,
      };
    const hole = (Math.PI * c.diameter ** 2) / 4;
    const wood = post.width * post.depth;
    const cast = c.backfill === 'concrete';
    const round = (hole - wood) * (c.bottom - c.under);
    return {
      top: cast ? surface : surface - c.bottom + c.under,
      bottom: surface - c.bottom,
      // Without concrete under it the post itself is all that bears.
      bearingArea: c.under > 0 ? hole : wood,
      size: c.diameter,
      round: true,
      pierDiameter: c.diameter,
      padThickness: 0,
      concrete: hole * c.under + (cast ? round : 0),
      soilOver: cast ? 0 : round,
      embedded: {
        foot: surface - c.bottom + c.under,
        width: cast ? c.diameter : diagonal,
        diagonal,
        cast,
        backfill: c.backfill,
      },
    };
  },
};
