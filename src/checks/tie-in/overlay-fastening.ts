/** Joints of an overlay, each with the fastening that the professional's statement gives it. */
import type { OverlayPlaced } from '../../structure/model.js';
import type { CheckContext } from '../contract.js';
import { overlayOf } from './overlay-loads.js';

export const NOT_STATED = 'not stated';

export interface OverlayJoint {
  /** The two parts, by mark. */
  readonly what: string;
  /** Fastening in the statement's words; empty: not stated. */
  readonly how: string;
  /** Whose statement. */
  readonly from: string;
}

/** Mark of the frame of the cover nearest to the house, which carries the outer end of the ridge board; empty: none found. */
function lastFrame(ctx: Pick<CheckContext, 'structure'>, o: OverlayPlaced): string {
  const { x, y } = o.frame.origin;
  const distance = (m: CheckContext['structure']['members'][number]): number =>
    Math.hypot((m.start.x + m.end.x) / 2 - x, (m.start.y + m.end.y) / 2 - y);
  return ctx.structure.members
    .filter((m) => m.roof === o.roof && m.truss !== undefined)
    .reduce<{ readonly mark: string; readonly away: number }>(
      (best, m) => (distance(m) < best.away ? { mark: m.mark, away: distance(m) } : best),
      { mark: '', away: Number.POSITIVE_INFINITY },
    ).mark;
}

/** Every joint of an overlay: fill rafters, valley plates, ridge board, to each other, to the cover and to the house. */
export function overlayJointsOf(
  ctx: Pick<CheckContext, 'project' | 'structure'>,
  o: OverlayPlaced,
): readonly OverlayJoint[] {
  const s = overlayOf(ctx, o.roof)?.statement;
  const from = s?.down.from ?? '';
  const marks = o.fills.map((f) => f.mark);
  const fills = marks.length > 1 ? `${marks[0]} to ${marks.at(-1)}` : (marks[0] ?? 'fill rafters');
  const [plate, board] = [o.plates.mark, o.board.mark];
  const frame = lastFrame(ctx, o);
  const joint = (what: string, how: string | undefined): OverlayJoint => ({ what, how: how?.trim() ?? '', from });
  return [
    joint(`Fill rafters ${fills} to valley plates ${plate}`, s?.rafterToPlate),
    joint(`Fill rafters ${fills} to ridge board ${board}`, s?.rafterToRidge),
    joint(`Ridge board ${board} to ${frame === '' ? 'the last frame' : `frame ${frame}`}`, s?.ridgeToFrame),
    joint(`Valley plates ${plate} and end of ridge board ${board} to the old framing`, s?.fastening),
  ];
}
