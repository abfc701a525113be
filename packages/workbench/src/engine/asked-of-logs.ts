// What only those ask for who have a log of the real cabinet: loaded into the worker when it is first asked for.

export { logRunner } from '@stillair/engine';
export { calibrateBy, driftBy } from './study-log.ts';
