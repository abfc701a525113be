// Variants of one cabinet file: edits to the file, and inputs set to other numbers. Variants and their outcomes are plain data,
// so that a batch can be spread over workers; the outcome does not depend on who ran it, or in which order.

import type { Cabinet, Edit } from '../cabinet/cabinet.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { setInputs } from '../cabinet/set-input.ts';
import { sharingParts } from '../cabinet/sharing-parts.ts';
import type { Trade } from '../trades/measure.ts';
import { type Numbers, numbersOfDays, runDay, runDayOnce, standingOfMany } from './pipeline.ts';

/** A cabinet file's name and text. */
export interface CabinetSource {
  readonly file: string;
  readonly text: string;
}

export interface Variant {
  /** Applied to the file, in order. */
  readonly edits: readonly Edit[];
  /** Then these numbers of the resolved cabinet are replaced, by path. */
  readonly inputs: Readonly<Record<string, number>>;
  /** Days to run; all of the file unless given. */
  readonly days?: readonly string[];
}

export interface Outcome extends Numbers {
  /** Why there is none: what was wrong with the edited file, or that the day could not be run. */
  readonly fault?: string;
}

export interface BatchHooks {
  /** Called after each variant. */
  readonly finished: () => void;
  /** True when no further variant is wanted; what is left out is undefined in the answer. */
  readonly stop: () => boolean;
}

/** Hooks for all batches of a study: they tell how many of `all` have run, which may still grow. */
export function countedHooks(
  all: () => number,
  progress: ((done: number, all: number) => void) | undefined,
  stop: () => boolean,
): BatchHooks {
  let done = 0;
  return {
    finished: () => {
      done += 1;
      progress?.(done, all());
    },
    stop,
  };
}

/** Runs a batch; outcomes in the order of the variants. */
export type Evaluate = (variants: readonly Variant[], hooks: BatchHooks) => Promise<readonly (Outcome | undefined)[]>;

/** A function that runs variants of one file; cabinets are kept by their edits. */
export function variantRunner(source: CabinetSource, trades?: readonly Trade[]): (variant: Variant) => Outcome {
  const read = new Map<string, Cabinet | string>();
  const once = runDayOnce();
  const shared = sharingParts();
  const standing = standingOfMany(trades);
  const cabinetOf = (edits: readonly Edit[]): Cabinet | string => {
    const key = JSON.stringify(edits);
    const known = read.get(key);
    if (known !== undefined) return known;
    const answer = readCabinet(source.file, source.text, edits);
    const cabinet = answer.ok
      ? shared(answer.cabinet)
      : (answer.complaints[0]?.what ?? 'the edited file cannot be read');
    read.set(key, cabinet);
    return cabinet;
  };
  return ({ edits, inputs, days }) => {
    const base = cabinetOf(edits);
    if (typeof base === 'string') return { values: {}, limits: {}, unknown: [], fault: base };
    try {
      const cabinet = setInputs(base, inputs);
      // Inputs are sampled all together: no two of those days are alike.
      return numbersOfDays(cabinet, trades, Object.keys(inputs).length === 0 ? once : runDay, days, standing);
    } catch (error) {
      // Far samples of several inputs together may make a network that no day can be run on; that is an answer, not an end.
      return { values: {}, limits: {}, unknown: [], fault: error instanceof Error ? error.message : String(error) };
    }
  };
}

// Browsers and Node have it, the language's own library does not: it is all that this package asks of its surroundings.
declare function setTimeout(run: () => void, milliseconds: number): unknown;

/** Runs a batch in this process and lets others have their turn between variants. */
export function evaluateHere(source: CabinetSource, trades?: readonly Trade[]): Evaluate {
  return inTurn(variantRunner(source, trades));
}

export function inTurn<Task, Result>(
  run: (task: Task) => Result,
): (tasks: readonly Task[], hooks: BatchHooks) => Promise<readonly (Result | undefined)[]> {
  return async (tasks, { finished, stop }) => {
    const outcomes: (Result | undefined)[] = [];
    for (const task of tasks) {
      if (stop()) {
        outcomes.push(undefined);
        continue;
      }
      outcomes.push(run(task));
      finished();
      await new Promise<void>((resolve) => setTimeout(resolve, 0));
    }
    return outcomes;
  };
}
