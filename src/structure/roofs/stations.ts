import type { CoverRoof } from '../../project/model.js';
import { MEETS, SLACK } from '../constants.js';
import { error } from '../issues.js';
import type { Kit } from '../kit.js';
import { inches } from '../text.js';

/**
 * Frame centres: at `from`, then every spacing, and the last at `to` however short the remaining bay is.
 * Reports `framing-spacing` when that cannot be built.
 */
export function stationsOf(roof: CoverRoof, kit: Kit): number[] | undefined {
  const { from, to } = roof;
  const { spacing } = roof.framing;
  const refuse = (path: string, message: string, expected: string): undefined => {
    kit.issues.push(error('framing-spacing', path, message, { subject: roof.mark, expected }));
    return undefined;
  };
  if (!(spacing >= 6 && spacing <= 48))
    return refuse(
      `${roof.path}/framing/spacing`,
      `Frames at ${inches(spacing)} are outside the program's range.`,
      '6 in to 48 in on centre, e.g. "24 in"',
    );
  if (!(to > from))
    return refuse(`${roof.path}/to`, 'The last frame stands before the first.', '"to" greater than "from"');
  const out: number[] = [];
  for (let k = 0; from + k * spacing < to - SLACK; k++) out.push(from + k * spacing);
  const last = to - out[out.length - 1]!;
  // A bay narrower than the frame itself would have two frames in one place.
  if (out.length > 1 && last < 1.5 + MEETS)
    return refuse(
      `${roof.path}/to`,
      `The last two frames stand ${inches(last)} apart and run into each other.`,
      `"to" a little nearer or farther, e.g. a whole number of ${inches(spacing)} bays`,
    );
  out.push(to);
  return out;
}
