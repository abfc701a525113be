export * from './constants.ts';
export type { Knowledge, OutsideCheck } from './outside-check.ts';
