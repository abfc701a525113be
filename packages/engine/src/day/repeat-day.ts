// A day that repeats itself: its end is the start of the next one, until both are the same.

import { type Day, newDay } from './day.ts';
import type { Warning } from './record.ts';

/** Share by which concentrations may still differ. */
const SAME_SHARE = 0.01;

interface State {
  readonly y: Float64Array;
  readonly c: Float64Array;
}

/** Whether the day ended as it began: temperatures to `tolerance` K, concentrations to a hundredth. */
export function comesBack(began: State, { plant, y, c }: Day, tolerance: number): boolean {
  const { layout, capacity } = plant.heat;
  for (let slot = 0; slot < y.length; slot += 1) {
    const fixed = slot >= layout.firstFixed && slot < layout.firstSensor;
    if (fixed || capacity[slot] === 0) continue;
    if (Math.abs(y[slot]! - began.y[slot]!) > tolerance) return false;
  }
  const { count, solved, scale } = plant.transport;
  for (let cell = 0; cell < solved * count; cell += 1) {
    const size = Math.max(scale[cell % count]!, Math.abs(c[cell]!));
    if (Math.abs(c[cell]! - began.c[cell]!) > SAME_SHARE * size) return false;
  }
  return true;
}

/** A new day that begins where the given one ended; loads of carbon beds begin anew, or no two days would be alike. */
export function carryOver(ended: Day): Day {
  const day = newDay(ended.plant);
  const { layout } = day.plant.heat;
  const { count, solved } = day.plant.transport;
  for (let slot = 0; slot < day.y.length; slot += 1) {
    if (slot < layout.firstFixed || slot >= layout.firstSensor) day.y[slot] = ended.y[slot]!;
  }
  for (let cell = 0; cell < solved * count; cell += 1) day.c[cell] = ended.c[cell]!;
  day.moment.thermostats.set(ended.moment.thermostats);
  day.air.pressure.set(ended.air.pressure);
  return day;
}

export function notPeriodic(days: number): Warning {
  return {
    code: 'outside-validity',
    what: 'day',
    message: `After ${days} days the day still did not end as it began; the last one is shown.`,
  };
}
