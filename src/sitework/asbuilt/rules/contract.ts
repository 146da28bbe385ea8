import type { Vec2 } from '../../../base/vec.js';
import type { Project } from '../../../project/model.js';
import type { Member, Structure } from '../../../structure/model.js';
import type { Layout } from '../../layout/index.js';
import type { FitFinding, MeasuredPoint, PostNow } from '../model.js';

/** How far a post stands off, seen along and across the beam it carries; undefined parts were not measured. */
export interface PostOff {
  readonly post: Member;
  readonly footing: string;
  readonly point: MeasuredPoint;
  /** House axes. */
  readonly off: Vec2 | undefined;
}

/** A beam line with the posts under it: its own and those it shares. */
export interface BeamOff {
  readonly mark: string;
  readonly dir: Vec2;
  readonly heldByHouse: boolean;
  readonly posts: readonly {
    readonly off: PostOff;
    readonly at: number;
    readonly along: number;
    readonly across: number;
  }[];
  /** How far the straight line through its posts stands off across, at a distance along the beam. */
  acrossAt(at: number): number;
}

export interface FitContext {
  readonly project: Project;
  readonly structure: Structure;
  readonly layout: Layout;
  readonly posts: readonly PostOff[];
  readonly beams: readonly BeamOff[];
  readonly lengths: readonly PostNow[];
  /** How far a base can be moved on its anchor; 0 while nobody has said. */
  readonly slot: number;
  /** Lengths in words, to a sixteenth. */
  len(inches: number): string;
}

/** One question asked of every part it concerns. */
export interface FitRule {
  readonly id: string;
  readonly title: string;
  run(ctx: FitContext): readonly Omit<FitFinding, 'rule'>[];
}
