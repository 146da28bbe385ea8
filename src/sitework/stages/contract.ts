/**
 * A stage of the work at which somebody looks, as a card with this project's own numbers. One file a stage; what a stage
 * needs of the model it reads as properties.
 */
import type { JointDemand } from '../../checks/joints/demands.js';
import type { LotResult } from '../../lot/model.js';
import type { Inspection, Project, StageId } from '../../project/model.js';
import type { Structure } from '../../structure/model.js';
import type { AsBuilt } from '../asbuilt/index.js';
import type { Layout } from '../layout/index.js';

export interface StageInput {
  readonly project: Project;
  readonly structure: Structure;
  readonly lot?: LotResult | undefined;
  /** What each joint must carry; empty while the forces are not known. */
  readonly demands: readonly JointDemand[];
  /** What was measured, to fill the cards' columns. */
  readonly built?: AsBuilt | undefined;
}

export interface StageContext extends StageInput {
  readonly layout: Layout;
  /** Lengths as this project prints them. */
  len(inches: number): string;
}

export interface StageTable {
  readonly title: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A line to tick; its id is what the log calls it. */
export interface StageItem {
  readonly id: string;
  readonly text: string;
  /** Whether a measured value belongs beside the tick. */
  readonly measure?: true;
}

export interface Told {
  readonly text: string;
  readonly source: string;
}

export interface StageBody {
  /** When to call, in one line. */
  readonly when: string;
  readonly tables: readonly StageTable[];
  readonly atHand: readonly string[];
  readonly items: readonly StageItem[];
  /** What is usually failed, and who says so. */
  readonly failures: readonly Told[];
  readonly cautions: readonly string[];
}

export interface Stage {
  readonly title: string;
  /** Who looks: an inspector by rule, or only the owner. Local offices differ. */
  readonly looks: 'inspector' | 'owner';
  applies(ctx: StageContext): boolean;
  body(ctx: StageContext): StageBody;
}

export interface StageCard extends StageBody {
  readonly id: StageId;
  readonly title: string;
  readonly looks: Stage['looks'];
  /** What the log has of it, oldest first. */
  readonly log: readonly Inspection[];
  /** As the last visit left it. */
  readonly result: Inspection['result'] | 'open';
}
