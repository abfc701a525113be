// What is to be scheduled, in whole slots of time: tasks, the ways in which each may be done, what they draw from shared
// resources, which waits for which, and what a start costs. Mathematics only: no hours, watts or printers.

/** An amount drawn from a resource in the slots `from` (included) to `to` (left out), counted from the task's start. */
export interface Draw {
  readonly resource: number;
  readonly from: number;
  readonly to: number;
  readonly amount: number;
}

/** One way of doing a task: on this machine or on that one. */
export interface Way {
  /** Slots from its start to its end, 0 or more. */
  readonly length: number;
  readonly draws: readonly Draw[];
  /** 1 for each slot in which it may start; unless given, wherever it ends within the horizon. */
  readonly starts?: Uint8Array;
  /** By aim: what a start in each slot costs. An aim left out costs nothing. */
  readonly costs?: readonly (ArrayLike<number> | undefined)[];
}

export interface Task {
  readonly ways: readonly Way[];
}

/** What there is of a resource in every slot; draws beyond the horizon are not counted. */
export interface Resource {
  readonly capacity: number | ArrayLike<number>;
}

/** Task `after` starts at least `lag` slots after `before` has ended, or has started. */
export interface Order {
  readonly before: number;
  readonly after: number;
  readonly lag: number;
  readonly from: 'end' | 'start';
}

export interface ScheduleProblem {
  /** Slots; every task ends within them. */
  readonly horizon: number;
  readonly tasks: readonly Task[];
  readonly resources: readonly Resource[];
  readonly orders?: readonly Order[];
  /** How many costs each start has; they are made least one after the other. 1 unless given. */
  readonly aims?: number;
}

/** A way and a start for every task. */
export interface Placing {
  readonly way: number;
  readonly start: number;
}

/**
 * A share of a capacity that sums of draws may exceed it by: rounding of sums, nothing else. A watt of a thousand is far more
 * than it.
 */
export const ROUNDING = 1e-9;
