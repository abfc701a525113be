// What a worker thread loads for this kind of task, and nothing beside it.

export { planRunner } from '@stillair/engine';
