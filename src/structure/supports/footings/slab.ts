import type { FootingForm } from './contract.js';

/** No footing: the post base stands on the kept or new slab. Whether it may is a check. */
export const slab: FootingForm<'slab'> = {
  shape(_, surface, place) {
    if (!place.slab)
      return {
        code: 'no-slab-here',
        key: 'kind',
        message: 'No slab lies under this post.',
        found: 0,
        expected: 'a kept or new slab at this point, or a footing',
      };
    const { thickness, mark } = place.slab;
    const side = Math.max(place.post.width, place.post.depth);
    return {
      top: surface,
      bottom: surface - thickness,
      bearingArea: place.post.width * place.post.depth,
      size: side,
      round: false,
      pierDiameter: 0,
      padThickness: thickness,
      // The slab's own weight holds nothing down: how much of it would come along is not known.
      concrete: 0,
      soilOver: 0,
      onSlab: { slab: mark, thickness },
    };
  },
};
