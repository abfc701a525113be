// How long each machine of a day heats at full power, and what it draws then and after.

import { lineCurrent, type SteppedLoad } from '@stillair/physics';
import { courseOf, largest, meanOf, within } from '../course.ts';
import { powerFactorOf, powerOf } from '../draws.ts';
import type { DayRun } from '../measure.ts';
import { printsOf } from '../prints.ts';

/** A bed has warmed up when it takes less than this share of its full power. */
const WARM = 0.9;

export interface HeatUp {
  readonly machine: string;
  /** At full power, s. */
  readonly seconds: number;
  /** Current while it heats and while it holds, A. */
  readonly steps: SteppedLoad['steps'];
}

/** One of each machine that prints: its first job of the day. */
export function heatUps(run: DayRun): HeatUp[] {
  const { cabinet, record } = run;
  const seen = new Set<string>();
  return printsOf(run).flatMap(({ machineId: machine, machine: { bed }, start, end }) => {
    if (seen.has(machine) || !record.bedPowers.names.includes(machine)) return [];
    seen.add(machine);
    const heat = within(courseOf(record, record.bedPowers, machine), start, end);
    const warm = heat.values.findIndex((watts) => watts < WARM * bed.powerMax);
    const seconds = warm < 0 ? end - start : heat.times[warm]! - start;
    const draw = within(powerOf(run, machine), start, end);
    const after = start + seconds < end ? meanOf(within(draw, start + seconds, end)) : 0;
    const ampere = (watts: number): number =>
      lineCurrent(watts, cabinet.power.voltage, powerFactorOf(cabinet, machine));
    const steps = [
      [seconds, ampere(largest(draw).value)],
      [end - start - seconds, ampere(after)],
    ] as const;
    return [{ machine, seconds, steps }];
  });
}
