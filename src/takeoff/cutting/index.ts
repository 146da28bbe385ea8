export type {
  Board,
  Cut,
  CuttingPlan,
  CuttingProblem,
  Method,
  Solve,
  SolveAnswer,
  SolveOptions,
  Stock,
} from './model.js';
export { planCutting } from './plan.js';
