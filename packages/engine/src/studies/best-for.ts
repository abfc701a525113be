// Which sheet is best for one want, how surely, and what would settle it where two are tied.

import { centredRanks, driversOf } from '../judge/drivers.ts';
import type { Want, WantRule } from './wants.ts';

export interface Settling {
  /** Input whose measurement would tell most about the difference, by path and in words. */
  readonly path: string;
  readonly label: string;
  /** Rank correlation with the difference, −1 to 1. */
  readonly correlation: number;
}

export interface BestFor {
  readonly want: Want;
  readonly measuredBy: string;
  /** Share of samples in which each sheet is best; sheets that are alike share it. */
  readonly chances: Readonly<Record<string, number>>;
  /** The sheet with the highest chance. */
  readonly best?: string;
  /** Sheets that nothing known keeps apart from the best. */
  readonly tied: readonly string[];
  /** The tied ones differ too little to matter: any will do. */
  readonly alike: boolean;
  readonly settle?: Settling;
}

/** From this chance on a sheet is the best one, without a tie. */
const SURE = 0.8;
/** A sheet with less than this share of the best one's chance is not tied with it. */
const RIVAL = 0.25;

/**
 * @param values - By sheet: the want's number in each sample; undefined where the run failed.
 * @param inputs - By path: one value a sample, common to all sheets; only those that can move this want.
 */
export function bestFor(
  { want, measuredBy, matters }: WantRule,
  values: ReadonlyMap<string, readonly (number | undefined)[]>,
  inputs: ReadonlyMap<string, readonly number[]>,
  labelOf: (path: string) => string,
): BestFor {
  const sheets = [...values.keys()];
  const count = values.get(sheets[0] ?? '')?.length ?? 0;
  const whole = Array.from({ length: count }, (_, at) => at).filter((at) =>
    sheets.every((sheet) => values.get(sheet)![at] !== undefined),
  );
  const chances: Record<string, number> = Object.fromEntries(sheets.map((sheet) => [sheet, 0]));
  for (const at of whole) {
    const lowest = Math.min(...sheets.map((sheet) => values.get(sheet)![at]!));
    const winners = sheets.filter((sheet) => values.get(sheet)![at]! <= lowest + matters);
    for (const winner of winners) chances[winner]! += 1 / winners.length / whole.length;
  }
  const ranked = [...sheets].sort((a, b) => chances[b]! - chances[a]!);
  const [best] = ranked;
  if (best === undefined || whole.length === 0) return { want, measuredBy, chances, tied: [], alike: false };
  const tied =
    chances[best]! >= SURE ? [] : ranked.slice(1).filter((sheet) => chances[sheet]! >= RIVAL * chances[best]!);
  const [rival] = tied;
  if (rival === undefined) return { want, measuredBy, chances, best, tied, alike: false };
  const difference = whole.map((at) => values.get(best)![at]! - values.get(rival)![at]!);
  const alike = difference.filter((value) => Math.abs(value) <= matters).length >= SURE * difference.length;
  const settle = alike ? undefined : strongest(difference, whole, inputs, labelOf);
  return { want, measuredBy, chances, best, tied, alike, ...(settle === undefined ? {} : { settle }) };
}

/** The strongest driver of the difference, if one stands out from what luck gives. */
function strongest(
  difference: readonly number[],
  whole: readonly number[],
  inputs: ReadonlyMap<string, readonly number[]>,
  labelOf: (path: string) => string,
): Settling | undefined {
  const present = new Map([...inputs].map(([path, column]) => [path, whole.map((at) => column[at]!)] as const));
  const [driver] = driversOf(present, difference, 1);
  if (driver === undefined) return undefined;
  const correlation = correlationOf(centredRanks(difference), centredRanks(present.get(driver.path)!));
  return { path: driver.path, label: labelOf(driver.path), correlation };
}

function correlationOf(a: readonly number[], b: readonly number[]): number {
  const dot = (x: readonly number[], y: readonly number[]): number =>
    x.reduce((sum, value, at) => sum + value * y[at]!, 0);
  const size = Math.sqrt(dot(a, a) * dot(b, b));
  return size > 0 ? dot(a, b) / size : 0;
}
