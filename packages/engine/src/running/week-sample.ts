// The planned week once more, with the uncertain inputs at other places. Plain data both ways, so that samples can be spread over workers.

import type { Cabinet } from '../cabinet/cabinet.ts';
import { setInputs } from '../cabinet/set-input.ts';
import { type Band, bandOf, chanceInside } from '../judge/bands.ts';
import { measureDay } from '../judge/pipeline.ts';
import { verdictOf } from '../judge/verdict.ts';
import { type DayMoney, moneyOf } from './day-money.ts';
import { planTrades } from './queue-trial.ts';
import { byVerdict, hoursOf, type Placed, type PlanCheck, type PlanHour, runWeek } from './week-run.ts';

export interface WeekTask {
  readonly week: readonly Placed[];
  /** Numbers of the cabinet that are replaced, by path. */
  readonly inputs: Readonly<Record<string, number>>;
  readonly asks: 'limits' | 'money';
  /** Money is counted until then, s after the origin's midnight. */
  readonly until: number;
}

export interface WeekOutcome {
  /** By `trade/quantity/part`. */
  readonly values?: Readonly<Record<string, number>>;
  readonly hours?: readonly PlanHour[];
  readonly money?: DayMoney;
  /** Simulated, s. */
  readonly length?: number;
  /** Why it could not be run. */
  readonly fault?: string;
}

export function runWeekTask(cabinet: Cabinet, { week, inputs, asks, until }: WeekTask): WeekOutcome {
  try {
    const made = runWeek(setInputs(cabinet, inputs), week, asks === 'money' ? until : undefined);
    const length = made.run.record.times.at(-1)!;
    if (asks === 'money') return { money: moneyOf(made.run), length };
    const measures = [...measureDay(made.run, planTrades).values()];
    const { from } = cabinet.queue!;
    return {
      values: Object.fromEntries(
        measures.flatMap(({ trade, quantity, part, value }) =>
          value === undefined ? [] : [[`${trade}/${quantity}/${part}`, value] as const],
        ),
      ),
      hours: hoursOf(made, from, until),
      length,
    };
  } catch (error) {
    // Far samples of several inputs together may make a network that no day can be run on; that is an answer, not an end.
    return { fault: error instanceof Error ? error.message : String(error) };
  }
}

/** Checks with their bands and the verdicts that follow; worst first. */
export function bandedChecks(checks: readonly PlanCheck[], outcomes: readonly WeekOutcome[]): PlanCheck[] {
  return byVerdict(
    checks.map((check) => {
      const { id, value, limit } = check;
      const values = outcomes.flatMap((outcome) => outcome.values?.[id] ?? []);
      const band = bandOf(values);
      if (band === undefined) return check;
      const verdict = verdictOf(value, band, limit);
      return {
        ...check,
        ...band,
        chance: chanceInside(limit, values),
        verdict,
        alone: verdict === 'fails' && check.alone,
      };
    }),
  );
}

export function bandedHours(hours: readonly PlanHour[], outcomes: readonly WeekOutcome[]): PlanHour[] {
  const sampled = outcomes.flatMap(({ hours: own }) => (own === undefined ? [] : [own]));
  return hours.map((hour, at) => {
    const own = sampled.flatMap((one) => one[at] ?? []);
    const band = (of: (one: PlanHour) => number): Band | undefined => bandOf(own.map(of));
    const power = band((one) => one.power);
    if (power === undefined) return hour;
    const each = (of: 'air' | 'noise'): Readonly<Record<string, Band>> =>
      Object.fromEntries(Object.keys(hour[of]).map((name) => [name, band((one) => one[of][name]!)!]));
    const bands = { power, current: band((one) => one.current)!, air: each('air'), noise: each('noise') };
    return { ...hour, bands };
  });
}
