/** Special Design Provisions for Wind and Seismic: wood-frame diaphragms. */
export * from './ch4-diaphragms.js';
export * from './table-4-2.js';
