// One fault run: numbers of every finding, when limits are passed, and when protection acts. Plain data both ways, so that faults can
// be spread over workers.

import type { Cabinet } from '../cabinet/cabinet.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { setInput } from '../cabinet/set-input.ts';
import { findingId, measureStanding, type RunDay, runDay, runDayOnce } from '../judge/pipeline.ts';
import type { BatchHooks, CabinetSource, Outcome, Variant } from '../judge/variants.ts';
import type { Trade } from '../trades/measure.ts';
import { trades as allTrades } from '../trades/trades.ts';
import { faultReach } from './fault-reach.ts';
import { firstPassed } from './first-passed.ts';
import { type Trip, tripsOn } from './trips.ts';

export interface FaultTask extends Variant {
  /** What is tried where the file cannot take `edits`. */
  readonly otherwise?: Variant['edits'];
  readonly days: readonly string[];
}

export interface FaultOutcome extends Outcome {
  /** When each limit is passed first, by finding id, s. */
  readonly passed: Readonly<Record<string, number>>;
  /** When it is worst, s. */
  readonly worst: Readonly<Record<string, number>>;
  readonly trips: Readonly<Record<string, readonly Trip[]>>;
}

export type EvaluateFaults = (
  tasks: readonly FaultTask[],
  hooks: BatchHooks,
) => Promise<readonly (FaultOutcome | undefined)[]>;

/** Trades of a study of faults: all, and what only a fault makes worth asking. */
export const faultTrades = (trades: readonly Trade[] = allTrades): readonly Trade[] => [...trades, faultReach];

/** A function that runs faults, and samples of the cabinet without any, of one file. */
export function faultRunner(source: CabinetSource, trades?: readonly Trade[]): (task: FaultTask) => FaultOutcome {
  const asked = faultTrades(trades);
  const once = runDayOnce();
  return ({ edits, otherwise, inputs, days }) => {
    const empty: FaultOutcome = { values: {}, limits: {}, unknown: [], passed: {}, worst: {}, trips: {} };
    const base = cabinetOf(source, edits, otherwise);
    if (typeof base === 'string') return { ...empty, fault: base };
    try {
      // Sampled days are all unlike: only faults may leave a network as it was.
      const runOf = Object.keys(inputs).length === 0 ? once : runDay;
      return measured(
        runOf,
        Object.entries(inputs).reduce((made, [path, value]) => setInput(made, path, value), base),
      );
    } catch (error) {
      return { ...empty, fault: error instanceof Error ? error.message : String(error) };
    }
    function measured(runOf: RunDay, cabinet: Cabinet): FaultOutcome {
      const [values, limits, passed, worst]: Record<string, number>[] = [{}, {}, {}, {}];
      const trips: Record<string, readonly Trip[]> = {};
      const unknown: string[] = [];
      for (const [id, { value, limit }] of measureStanding(cabinet, asked)) {
        if (value === undefined) unknown.push(id);
        else values![id] = value;
        if (limit !== undefined) limits![id] = limit.value;
      }
      for (const day of days) {
        const run = runOf(cabinet, day);
        trips[day] = tripsOn(run);
        for (const measure of asked.flatMap((trade) => trade.measure?.(run) ?? [])) {
          const id = findingId(measure, day);
          const first = firstPassed(run, measure);
          if (measure.value === undefined) unknown.push(id);
          else values![id] = measure.value;
          if (measure.limit !== undefined) limits![id] = measure.limit.value;
          if (first !== undefined) passed![id] = first;
          if (measure.at !== undefined) worst![id] = measure.at;
        }
      }
      return { values: values!, limits: limits!, unknown, passed: passed!, worst: worst!, trips };
    }
  };
}

function cabinetOf(
  { file, text }: CabinetSource,
  edits: FaultTask['edits'],
  otherwise: FaultTask['otherwise'],
): Cabinet | string {
  const answer = readCabinet(file, text, edits);
  if (answer.ok) return answer.cabinet;
  const second = otherwise === undefined ? answer : readCabinet(file, text, otherwise);
  return second.ok ? second.cabinet : (answer.complaints[0]?.what ?? 'the edited file cannot be read');
}

// Browsers and Node have it, the language's own library does not.
declare function setTimeout(run: () => void, milliseconds: number): unknown;

/** Runs faults in this process and lets others have their turn between them. */
export function evaluateFaultsHere(source: CabinetSource, trades?: readonly Trade[]): EvaluateFaults {
  const run = faultRunner(source, trades);
  return async (tasks, { finished, stop }) => {
    const outcomes: (FaultOutcome | undefined)[] = [];
    for (const task of tasks) {
      outcomes.push(stop() ? undefined : run(task));
      if (!stop()) finished();
      await new Promise<void>((resolve) => setTimeout(resolve, 0));
    }
    return outcomes;
  };
}
