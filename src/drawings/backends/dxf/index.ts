export { dxfModelPlan, dxfOf } from './sheet.js';
