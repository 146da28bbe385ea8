import type { Issue } from '../../base/issue.js';
import type { Project } from '../../project/model.js';
import type { Structure } from '../model.js';
import type { LaidRoof } from '../supports/place.js';

/** A fault told from the project alone. */
export type ProjectRule = (project: Project) => readonly Issue[];

export interface Placed {
  readonly project: Project;
  readonly structure: Structure;
  readonly roofs: readonly LaidRoof[];
  readonly site: { readonly lotCorners?: readonly { readonly x: number; readonly y: number }[] };
}

/** A fault of the placed structure. Geometry only: strength is for the checks. */
export type StructureRule = (placed: Placed) => readonly Issue[];
