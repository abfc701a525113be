// What only some people ask for, some of the time: loaded into the worker when it is first asked for.

export { courseRunner, faultRunner, searchRunner } from '@stillair/engine';
export { inspect } from './inspect.ts';
export { study } from './studies.ts';
export { bandsOfDay } from './study-day.ts';
export { vocabulary } from './vocabulary.ts';
