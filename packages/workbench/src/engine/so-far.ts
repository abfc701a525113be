// What a study says half way. A study is a function of its outcomes, so it is asked again with those that are there; whatever is
// missing counts as not run, as it does when a person stops it.

import type { Spread } from './hands.ts';

export interface SoFar<Task, Result> {
  readonly heard: (task: Task, outcome: Result) => void;
  /** Answers at once, with what is known. */
  readonly evaluate: Spread<Task, Result>;
}

export function keepOutcomes<Task, Result>(): SoFar<Task, Result> {
  const known = new Map<string, Result>();
  return {
    heard: (task, outcome) => void known.set(JSON.stringify(task), outcome),
    evaluate: (tasks) => Promise.resolve(tasks.map((task) => known.get(JSON.stringify(task)))),
  };
}

/** ms before a person is shown the first part of a study. */
const FIRST = 1500;
/** Telling takes at most one part in this of all the time. */
const SHARE = 6;

/** A function to be called often, that seldom does what it is given: it leaves room between in proportion to what that costs. */
export function seldom(does: () => Promise<void>, now: () => number): () => void {
  let next = now() + FIRST;
  let busy = false;
  return () => {
    const began = now();
    if (busy || began < next) return;
    busy = true;
    void does().finally(() => {
      busy = false;
      next = now() + Math.max(FIRST, SHARE * (now() - began));
    });
  };
}
