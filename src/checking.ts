/**
 * The door for apps that draw nothing: text in, results out. It is a part of `index.ts`, which loads the sheets and the
 * makers of files as well; a command that only checks starts faster without them.
 */
import * as aci318_14 from './checks/codes/aci-318-14/index.js';
import * as aisc360_16 from './checks/codes/aisc-360-16/index.js';
import * as ibc2018 from './checks/codes/ibc-2018/index.js';
import * as irc2018 from './checks/codes/irc-2018/index.js';
import * as nds2018 from './checks/codes/nds-2018/index.js';
import * as roofDrainage from './checks/codes/roof-drainage/index.js';
import * as sdpws2015 from './checks/codes/sdpws-2015/index.js';
import * as statics from './checks/codes/statics/index.js';
import * as asce7 from './loads/codes/asce7/index.js';
import * as irc2018Loads from './loads/codes/irc-2018/index.js';

export type * from './analysis/model.js';
export { hasErrors, type Issue, type Outcome, type Severity } from './base/issue.js';
export * from './base/quantity/index.js';
export type { Step, TraceLine } from './base/trace.js';
export type { Vec2, Vec3 } from './base/vec.js';
export type { CheckResult, Status } from './checks/contract.js';
export { type Demand, type JointDemand, jointDemands } from './checks/joints/demands.js';
export { derive, deriveProject, drawingInput } from './derive.js';
export type { Combination, LoadBasis, LoadCase, Loads } from './loads/model.js';
export type { LotResult } from './lot/model.js';
export * from './project/index.js';
export { type CheckJson, checkJson, countByStatus, nearestToLimit } from './report/check-json.js';
export type { Derived } from './report/derived.js';
export { explain } from './report/explain.js';
export { pathOf } from './report/path/chain.js';
export type * from './report/path/model.js';
export { pathText } from './report/path/text.js';
export { type TrussOrder, trussOrders } from './report/truss-order.js';
export { type Why, type WhyForce, why, whyText } from './report/why.js';
export type { Verdict } from './review/model.js';
export type { Footing, Joint, Member, Piece, Structure, Surface } from './structure/model.js';
export { piecesOf } from './structure/pieces/index.js';

/**
 * The clauses themselves, one function each: plain numbers in, plain numbers out, a recorder last for the steps.
 *
 * - `aci318_14`: plain concrete footings and pedestals, pier bars, cast-in anchors
 * - `aisc360_16`: flat steel in tension, bolts in tension
 * - `asce7`: loads and their combinations, 7-16 and 7-22 (live, snow, wind, earthquake)
 * - `ibc2018`: soil values, shallow footings, embedded posts
 * - `irc2018`: footings, grading, patio covers, and the roof live load of its Table R301.6
 * - `nds2018`: wood members and connections
 * - `roofDrainage`: runoff, gutters, leaders
 * - `sdpws2015`: wood diaphragms, 2015 and 2021
 * - `statics`: beams, footings under moment, knee braces in closed form; no standard
 */
export const codes = {
  aci318_14,
  aisc360_16,
  asce7,
  ibc2018,
  irc2018: { ...irc2018, ...irc2018Loads },
  nds2018,
  roofDrainage,
  sdpws2015,
  statics,
} as const;
