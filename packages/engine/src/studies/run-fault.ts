// One fault run: numbers of every finding, when limits are passed, and when protection acts. Plain data both ways, so that faults can
// be spread over workers.

import type { Cabinet } from '../cabinet/cabinet.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { setInputs } from '../cabinet/set-input.ts';
import { sharingParts } from '../cabinet/sharing-parts.ts';
import {
  addNumbers,
  askDay,
  type GatheredNumbers,
  type RunDay,
  runDay,
  runDayOnce,
  standingOfMany,
} from '../judge/pipeline.ts';
import { type BatchHooks, type CabinetSource, inTurn, type Outcome, type Variant } from '../judge/variants.ts';
import { STANDING, type Trade } from '../trades/measure.ts';
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
  const shared = sharingParts();
  const standing = standingOfMany(asked);
  return ({ edits, otherwise, inputs, days }) => {
    const empty: FaultOutcome = { values: {}, limits: {}, unknown: [], passed: {}, worst: {}, trips: {} };
    const base = cabinetOf(source, edits, otherwise);
    if (typeof base === 'string') return { ...empty, fault: base };
    try {
      // Sampled days are all unlike: only faults may leave a network as it was.
      const runOf = Object.keys(inputs).length === 0 ? once : runDay;
      return measured(runOf, setInputs(shared(base), inputs));
    } catch (error) {
      return { ...empty, fault: error instanceof Error ? error.message : String(error) };
    }
    function measured(runOf: RunDay, cabinet: Cabinet): FaultOutcome {
      const numbers: GatheredNumbers = { values: {}, limits: {}, unknown: [] };
      const passed: Record<string, number> = {};
      const worst: Record<string, number> = {};
      const trips: Record<string, readonly Trip[]> = {};
      addNumbers(numbers, standing(cabinet), STANDING);
      for (const day of days) {
        const run = runOf(cabinet, day);
        trips[day] = tripsOn(run);
        const measures = askDay(run, asked);
        addNumbers(numbers, [...measures.values()], day);
        for (const [id, measure] of measures) {
          const first = firstPassed(run, measure);
          if (first !== undefined) passed[id] = first;
          if (measure.at !== undefined) worst[id] = measure.at;
        }
      }
      return { ...numbers, passed, worst, trips };
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

/** Runs faults in this process and lets others have their turn between them. */
export function evaluateFaultsHere(source: CabinetSource, trades?: readonly Trade[]): EvaluateFaults {
  return inTurn(faultRunner(source, trades));
}
