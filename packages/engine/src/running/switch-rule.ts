// A rule for any switch that measures power: off when less than so many watts were drawn for so long. It must tell a machine at rest
// from a bed that only rests between two heatings.

import { settlingTime } from '@stillair/physics';
import type { Cabinet } from '../cabinet/cabinet.ts';
import { temperatureOf } from '../trades/air-ways.ts';
import { courseOf, meanOf, within } from '../trades/course.ts';
import type { DayRun } from '../trades/measure.ts';
import type { Print } from '../trades/prints.ts';
import { BED_BAND, TELL_APART } from './shut-off-limits.ts';

export interface SwitchRule {
  /** W drawn at rest after a job. */
  readonly rest: number;
  /** Least drawn while printing: motors and board, bed and hot end between two heatings, W. */
  readonly least: number;
  /** W; absent when no threshold lies far enough from both. */
  readonly threshold?: number;
  /** s below the threshold before it switches. */
  readonly delay?: number;
  /** Longest that a bed rests between two heatings, s. */
  readonly lull?: number;
  /** W above which it must have been before the rule counts, so that a machine that waits is not cut off. */
  readonly armed?: number;
  /** Why there is no threshold. */
  readonly why?: string;
}

const MINUTE = 60;
/** A rest of the bed must end well within the delay. */
const LULLS = 2;

/** Draws of a machine at its socket, W. */
export function drawsOf({ machines }: Cabinet, id: string): { readonly rest: number; readonly least: number } {
  const { motors, electronics, supply, standby } = machines[id]!;
  return { rest: standby, least: (motors + electronics) / supply.efficiency + supply.idle };
}

/** Longest rest of the bed while it holds its temperature in this bay, s. */
export function lullOf(run: DayRun, { machineId, machine, job, start, end }: Print): number | undefined {
  const { record, assembly } = run;
  if (!record.bedPowers.names.includes(machineId)) return undefined;
  const settled = start + (end - start) / 2;
  const power = meanOf(within(courseOf(record, record.bedPowers, machineId), settled, end));
  const air = meanOf(within(temperatureOf(run, assembly.machines[machineId]!.printAir), settled, end));
  const rise = job.bed - air;
  if (!(power > 0) || rise <= BED_BAND.value) return undefined;
  const tau = (machine.bed.heatCapacity * rise) / power;
  const half = BED_BAND.value / 2;
  return settlingTime(tau, job.bed + half, job.bed - half, air);
}

/** `wait`: the longest wait after any of its jobs, s. `most`: what it draws while it heats, W. */
export function switchRule(
  draws: { readonly rest: number; readonly least: number },
  wait: number | undefined,
  lull: number | undefined,
  most: number,
): SwitchRule {
  const { rest, least } = draws;
  const base = { rest, least, ...(lull === undefined ? {} : { lull }) };
  if (wait === undefined) return { ...base, why: 'one of its jobs is not seen to cool down' };
  if (least < TELL_APART.value ** 2 * rest)
    return {
      ...base,
      why: 'it draws nearly as much at rest as between two heatings: a switch cannot tell them apart, take the time',
    };
  const threshold = rounded(Math.sqrt(rest * least), rest, least);
  const delay = Math.ceil(Math.max(wait, LULLS * (lull ?? 0), 5 * MINUTE) / (5 * MINUTE)) * 5 * MINUTE;
  return { ...base, threshold, delay, armed: Math.round(Math.max(most / 2, Math.min(2 * least, 0.8 * most))) };
}

/** Half watts or whole ones, as far as that leaves it between both. */
function rounded(threshold: number, rest: number, least: number): number {
  const step = threshold < 10 ? 0.5 : 1;
  const nearest = Math.round(threshold / step) * step;
  return nearest > rest && nearest < least ? nearest : threshold;
}
