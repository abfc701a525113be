// Which sheet is best for one want, how surely, and what would settle it where two are tied.

import type { AssumedInput } from '../cabinet/assumed-inputs.ts';
import { type Settling, settlingOf } from './settling.ts';
import type { Want, WantRule } from './wants.ts';

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
  /** Absent where no one measurement would settle it between the best and the first of the tied. */
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
  inputOf: (path: string) => AssumedInput,
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
  const present = (): Map<string, readonly number[]> =>
    new Map([...inputs].map(([path, column]) => [path, whole.map((at) => column[at]!)] as const));
  const settle = alike ? undefined : settlingOf([best, rival], difference, present(), inputOf);
  return { want, measuredBy, chances, best, tied, alike, ...(settle === undefined ? {} : { settle }) };
}
