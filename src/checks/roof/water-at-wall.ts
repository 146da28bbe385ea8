/** Water that runs against a wall of the house. A cricket can turn it aside; better is a roof that does not bring it there. */
import { crickets } from '../../structure/tie-in/crickets.js';
import type { Check } from '../contract.js';
import { notApplicable, outsideScope } from '../finding.js';

const SOURCE = 'common practice, no source';
const feet = (x: number): string => `${(x / 12).toFixed(1)} ft`;

export const waterAtWall: Check = {
  id: 'water-at-wall',
  title: 'Roof water against the house wall',
  subjects: (ctx) => ctx.project.cover.roofs.map((r) => ({ id: r.mark, path: r.path })),
  run(subject, ctx) {
    const c = crickets(ctx.structure).find((x) => x.roof === subject.id);
    if (!c) return notApplicable(SOURCE, 'no slope of this roof falls against a wall');
    const built = c.fits
      ? `A cricket before it would stand ${feet(c.shape.rise)} high at the wall, its ridge ${feet(c.shape.run)} long, both valleys ${feet(c.shape.valley)} at ${((c.shape.planAngle * 180) / Math.PI).toFixed(0)} degrees on plan, ${(c.area / 144).toFixed(0)} sq ft`
      : `A cricket before it would be longer than the slope it stands on (${feet(c.shape.run)})`;
    return outsideScope(
      SOURCE,
      `${c.roof} falls against ${feet(c.width)} of the ${c.wall} wall: its water stands there. Turn the ridge so that it runs to the wall. ${built}; its framing and flashing are for a licensed professional.`,
    );
  },
};
