/** Load provisions of ASCE 7-16 and 7-22; the edition is an argument wherever they differ. */
import type { ClauseRecord } from '../support.js';
import { COMBINATION_RECORDS } from './ch2-combinations.js';
import { LIVE_RECORDS } from './ch4-live.js';
import { SNOW_RECORDS } from './ch7-drift.js';
import { SEISMIC_RECORDS } from './ch11-12-seismic.js';
import { WIND_26_RECORDS } from './ch26-wind.js';
import { WIND_27_RECORDS } from './ch27-free-roofs.js';
import { WIND_OVERHANG_RECORDS } from './ch27-overhang.js';
import { WIND_28_RECORDS } from './ch28-longitudinal.js';
import { WIND_30_RECORDS } from './ch30-cc.js';

export * from '../support.js';
export * from './ch2-combinations.js';
export * from './ch4-live.js';
export * from './ch7-drift.js';
export * from './ch7-snow.js';
export * from './ch11-12-seismic.js';
export * from './ch26-wind.js';
export type { FlowCondition, FreeRoofShape, LoadCaseAB } from './ch27-cn-data.js';
export * from './ch27-free-roofs.js';
export * from './ch27-overhang.js';
export * from './ch28-longitudinal.js';
export * from './ch30-cc.js';

/** Where every clause of this folder was read, for the list of values to confirm. */
export const ASCE7_RECORDS: readonly ClauseRecord[] = [
  ...COMBINATION_RECORDS,
  ...LIVE_RECORDS,
  ...SNOW_RECORDS,
  ...SEISMIC_RECORDS,
  ...WIND_26_RECORDS,
  ...WIND_27_RECORDS,
  ...WIND_OVERHANG_RECORDS,
  ...WIND_28_RECORDS,
  ...WIND_30_RECORDS,
];
