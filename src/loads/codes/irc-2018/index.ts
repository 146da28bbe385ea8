export * from './roof-live.js';
