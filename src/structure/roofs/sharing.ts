/**
 * A beam that carries one roof on each of its sides: over the length where both lie on it, each framing ends at the
 * beam's centre line and bears on its own half.
 */
import type { Vec2 } from '../../base/vec.js';
import type { CoverRoof } from '../../project/model.js';
import { fallAxes, type RoofAxes, roofAxes, toRoof } from '../axes.js';
import { SLACK } from '../constants.js';
import type { BeamPlan, Kit } from '../kit.js';
import type { Bearing } from './contract.js';

/** Direction from a beam to the roof on it, for one bearing of the roof; undefined when the roof does not end on it. */
export function sideOn(roof: CoverRoof, mark: string, kit: Kit): Vec2 | undefined {
  // A hip lies on all sides of its ring and shares no beam.
  if (roof.kind === 'hip') return undefined;
  const axes = roof.kind === 'gable' ? roofAxes(roof.ridge) : fallAxes(roof.fall ?? '+y');
  const toward = (sign: number): Vec2 => ({ x: sign * axes.across.x, y: sign * axes.across.y });
  if (roof.kind === 'shed')
    return roof.low === mark ? toward(1) : 'beam' in roof.high && roof.high.beam === mark ? toward(-1) : undefined;
  const i = roof.beams.indexOf(mark);
  const [mine, other] = [kit.beams.get(mark), kit.beams.get(roof.beams[1 - i] ?? '')];
  if (i < 0 || !mine || !other) return undefined;
  return toward(Math.sign(toRoof(axes, other.line.from).a - toRoof(axes, mine.line.from).a));
}

const opposite = (p: Vec2, q: Vec2): boolean => p.x * q.x + p.y * q.y < -0.5;
const apart = (p: CoverRoof, q: CoverRoof): boolean =>
  p.to + p.rake <= q.from - q.rake + SLACK || q.to + q.rake <= p.from - p.rake + SLACK;

/** The roofs that lie on the other side of a beam over some of the same length. */
export function acrossFrom(roof: CoverRoof, mark: string, kit: Kit): CoverRoof[] {
  const mine = sideOn(roof, mark, kit);
  if (mine === undefined) return [];
  return kit.project.cover.roofs.filter((other) => {
    const theirs = other.mark === roof.mark ? undefined : sideOn(other, mark, kit);
    return theirs !== undefined && opposite(mine, theirs) && !apart(roof, other);
  });
}

/** A beam as a bearing of a roof that lies towards growing `a` (`inward` 1) or falling `a` (−1) of it. */
export function beamBearing(roof: CoverRoof, plan: BeamPlan, axes: RoofAxes, inward: 1 | -1, kit: Kit): Bearing {
  const at = (toRoof(axes, plan.line.from).a + toRoof(axes, plan.line.to).a) / 2;
  const { width } = plan.section;
  const shared = acrossFrom(roof, plan.line.mark, kit).length > 0;
  return {
    part: plan.line.mark,
    kind: 'beam',
    at,
    section: plan.section,
    seat: shared ? { at: at + (inward * width) / 4, width: width / 2 } : { at, width },
  };
}
