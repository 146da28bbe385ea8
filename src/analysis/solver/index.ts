/** Linear-elastic frame in space. Knows nothing of building; imports base only. Signs: see model.ts. */
export { appliedResultant, type Resultant, reactionResultant } from './balance.js';
export { type FactoredFrame, type Factoring, factorFrame } from './factor.js';
export {
  type CaseResult,
  type DistributedLoad,
  type EndRelease,
  FREEDOMS,
  type FrameCase,
  type FrameElement,
  type FrameModel,
  type Freedom,
  type LoadIndex,
  type Measure,
  type Mechanism,
  type MemberPointLoad,
  type NodalLoad,
  type Settlement,
  type Support,
} from './model.js';
export { breakpoints, makeSamples, type Samples, sampleElement } from './sample.js';
export { solveCase } from './solve.js';
