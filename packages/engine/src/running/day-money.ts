// What one day comes to in money, with everything that a sum over parts or months asks of it; once by the middle of everything, and
// again with the uncertain inputs at other places. Plain data, so that sums are made of numbers alone.

import { assumedInputs } from '../cabinet/assumed-inputs.ts';
import type { Cabinet, Edit } from '../cabinet/cabinet.ts';
import { cabinetLifePractice, handPractice } from '../cabinet/fill-costs.ts';
import type { Origin, Origins } from '../cabinet/origin.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { setInputs } from '../cabinet/set-input.ts';
import { runDay } from '../judge/pipeline.ts';
import { sampleColumn, valueAt } from '../judge/samples.ts';
import { type BatchHooks, type CabinetSource, inTurn } from '../judge/variants.ts';
import { bill } from '../trades/cost/bill.ts';
import { middleOf } from '../trades/cost/money.ts';
import { busyTime, electricity, filterRate, type PrintPieces, piecesOf } from '../trades/cost/pieces.ts';
import type { DayRun } from '../trades/measure.ts';
import { printsOf } from '../trades/prints.ts';

export interface PrintMoney extends PrintPieces {
  readonly machine: string;
  readonly material: string;
  /** s */
  readonly duration: number;
  /** kg */
  readonly mass: number;
}

export interface DayMoney {
  /** By job; those whose filament has no price are left out. */
  readonly prints: Readonly<Record<string, PrintMoney>>;
  /** Of everything in the cabinet. */
  readonly electricity: number;
  /** By the hours in which anything prints, and by those of each machine. */
  readonly filters: number;
  readonly wear: number;
  /** Money for each second in which anything prints. */
  readonly filterRate: number;
  /** Parts and hours of the cabinet; absent when no price is known. */
  readonly bill?: number;
  readonly failures: number;
  /** Of hands on one job, s, and money for each second of them. */
  readonly hand: number;
  readonly handRate?: number;
  /** Over which the cabinet is written off, s. */
  readonly cabinetLife: number;
}

export interface MoneyTask {
  readonly edits: readonly Edit[];
  readonly day: string;
  /** Which sample; the middle of everything unless given. */
  readonly sample?: number;
}

export interface MoneyRuns {
  readonly middle: DayMoney;
  readonly samples: readonly DayMoney[];
}

/** What was wrong with the edited file, or with running it. */
export interface MoneyFault {
  readonly fault: string;
}

export interface MoneyOptions {
  readonly samples: number;
  readonly seed: number;
  readonly hooks: BatchHooks;
}

/** Days of one file, each as it stands and sampled; common inputs have common samples. Left out: those after a stop. */
export async function runMoney(
  source: CabinetSource,
  days: readonly Pick<MoneyTask, 'edits' | 'day'>[],
  { samples, seed, hooks }: MoneyOptions,
): Promise<readonly (MoneyRuns | MoneyFault | undefined)[]> {
  const columns = new Map<string, readonly number[]>();
  const share = (path: string, at: number): number => {
    const column = columns.get(path) ?? sampleColumn(path, samples, seed);
    columns.set(path, column);
    return column[at]!;
  };
  const cabinets = days.map(({ edits }) => readCabinet(source.file, source.text, edits));
  const tasks = cabinets.flatMap((_, at) =>
    Array.from({ length: 1 + samples }, (__, sample) => ({ at, sample: sample - 1 })),
  );
  const run = inTurn(({ at, sample }: (typeof tasks)[number]): DayMoney | MoneyFault => {
    const answer = cabinets[at]!;
    if (!answer.ok) return { fault: answer.complaints[0]?.what ?? 'the edited file cannot be read' };
    const { cabinet, origins } = answer;
    try {
      const inputs = sample < 0 ? {} : moneyInputs(cabinet, origins, (path) => share(path, sample));
      return moneyOf(runDay(setInputs(cabinet, inputs), days[at]!.day));
    } catch (error) {
      return { fault: error instanceof Error ? error.message : String(error) };
    }
  });
  const outcomes = await run(tasks, hooks);
  return days.map((_, at) => {
    const [middle, ...others] = outcomes.slice(at * (1 + samples), (at + 1) * (1 + samples));
    if (middle === undefined || 'fault' in middle) return middle;
    return { middle, samples: others.filter((one): one is DayMoney => one !== undefined && !('fault' in one)) };
  });
}

/** Numbers of one sample by path: what is uncertain, and of the costs what rests on common practice. */
export function moneyInputs(
  { costs }: Cabinet,
  origins: Origins,
  share: (path: string) => number,
): Readonly<Record<string, number>> {
  const own = (path: string, value: number, { low, high }: { readonly low: number; readonly high: number }): number =>
    isGiven(origins.get(path)) ? value : valueAt({ p10: low, p50: value, p90: high, shape: 'log-normal' }, share(path));
  return {
    ...Object.fromEntries(
      assumedInputs(origins).map(({ path, spread }) => [path, valueAt(spread, share(path))] as const),
    ),
    'costs.hand': own('costs.hand', costs.hand, handPractice),
    'costs.cabinetLife': own('costs.cabinetLife', costs.cabinetLife, cabinetLifePractice),
  };
}

const isGiven = (origin: Origin | undefined): boolean => origin?.kind === 'given';

export function moneyOf(run: DayRun): DayMoney {
  const prints = printsOf(run);
  const { cabinet } = run;
  const { costs } = cabinet;
  const total = bill(cabinet).find(({ quantity }) => quantity === 'bill')?.value;
  const busy = busyTime(prints);
  const printing = prints.reduce((sum, { start, end }) => sum + end - start, 0);
  return {
    prints: Object.fromEntries(
      prints.flatMap((print) => {
        const pieces = piecesOf(run, prints, print);
        const { id, machineId, job, start, end } = print;
        return pieces === undefined
          ? []
          : [[id, { ...pieces, machine: machineId, material: job.material, duration: end - start, mass: job.mass }]];
      }),
    ),
    electricity: electricity(run),
    filters: filterRate(cabinet) * busy,
    wear: costs.wear * printing,
    filterRate: filterRate(cabinet),
    ...(total === undefined ? {} : { bill: total }),
    failures: costs.failures,
    hand: costs.hand,
    ...(costs.handHour === undefined ? {} : { handRate: middleOf(cabinet, costs.handHour) / 3600 }),
    cabinetLife: costs.cabinetLife,
  };
}
