// What only those ask for who let jobs wait in a queue, or who count money: loaded into the worker when it is first asked for.

export { planRunner } from '@stillair/engine';
export { costsOf } from './study-cost.ts';
export { planWeek } from './study-plan.ts';
export { shutOffBy } from './study-shut-off.ts';
