// What only some people ask for, some of the time: loaded into the worker when it is first asked for.

export { compare } from '@stillair/engine';
export { inspect } from './inspect.ts';
export { vocabulary } from './vocabulary.ts';
