// What a print costs: plain sums, kept in one place so that nothing is forgotten or counted twice.

import { mustBePositive, mustNotBeNegative } from './argument.ts';

/** A print's inputs; money in any one currency. */
export interface PrintCost {
  /** Filament of the part itself, kg. */
  readonly mass: number;
  /** For a kilogram. */
  readonly filamentPrice: number;
  /** Filament beyond the part itself, share of it. */
  readonly waste: number;
  /** Share of prints that fail, below 1. */
  readonly failures: number;
  /** Electricity, money. */
  readonly electricity: number;
  /** s */
  readonly duration: number;
  /** Money for each second of printing: wear, machine, filters. */
  readonly perSecond: number;
}

/** Money for one good part, in its pieces. */
export interface PrintCostParts {
  readonly filament: number;
  readonly electricity: number;
  readonly time: number;
  /** What failed prints add to all of it. */
  readonly failures: number;
  readonly total: number;
}

/**
 * What one good part costs: filament with its waste, electricity and time at the machine, all of it again for each print that fails.
 *
 *     total = (m p (1 + w) + e + t c)/(1 − f)
 *
 * | symbol | meaning                                  | unit     |
 * | ------ | ---------------------------------------- | -------- |
 * | m, p   | filament of the part, and its price      | kg, 1/kg |
 * | w, f   | share wasted, share of prints that fail  | -        |
 * | e      | electricity                              | money    |
 * | t, c   | duration, wear + machine + filters       | s, 1/s   |
 *
 * @param inputs - Masses, prices, durations and shares 0 or more; failures below 1.
 * @returns Money, in its pieces.
 * @throws RangeError when an input is nonsense.
 *
 * @remarks
 * Valid: a failed print is taken to fail at its very end: most fail earlier, so this is the most they cost.
 * Source: mean of a geometric number of trials. Checked: exact.
 *
 * @example 100 g at 25 for a kilogram, 5 % wasted, one in ten fails, 0.20 of electricity, 6 h at 0.10 an hour
 * ```ts
 * printCost({ mass: 0.1, filamentPrice: 25, waste: 0.05, failures: 0.1, electricity: 0.2, duration: 21600, perSecond: 0.1 / 3600 }).total; // => 3.81
 * ```
 */
export function printCost(inputs: PrintCost): PrintCostParts {
  const { mass, filamentPrice, waste, failures, electricity, duration, perSecond } = inputs;
  for (const [name, value] of Object.entries(inputs) as [string, number][]) mustNotBeNegative('printCost', name, value);
  mustBePositive('printCost', '1 - failures', 1 - failures);
  const filament = mass * filamentPrice * (1 + waste);
  const time = duration * perSecond;
  const once = filament + electricity + time;
  const total = once / (1 - failures);
  return { filament, electricity, time, failures: total - once, total };
}
