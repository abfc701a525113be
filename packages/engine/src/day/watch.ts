// Finds the moment inside a step at which a thermostat or a bed has to switch: the first crossing of the cubic between the
// step's ends.

import { COASTING, type Day, HEATING, HOLDING } from './day.ts';
import { hermite, hermiteCrossing, hermiteTurns } from './hermite.ts';
import type { Step } from './step.ts';
import { readingOf } from './switching.ts';

/** Events nearer than this to the first one are simultaneous with it, s. */
export const SAME_TIME = 1e-6;

export interface Watch {
  /** Share of the step at which each thermostat, then each bed, switches; above 1: not in this step. */
  readonly share: Float64Array;
  readonly turns: Float64Array;
}

export function newWatch(day: Day): Watch {
  return {
    share: new Float64Array(day.plant.controls.thermostats.length + day.bedState.length),
    turns: new Float64Array(2),
  };
}

const NEVER = 2;

/** First share at which something switches, or 2. Fills `watch.share`. `startPower`: bed powers at the step's start. */
export function findEvents(day: Day, step: Step, watch: Watch, length: number, startPower: Float64Array): number {
  const { thermostats, machines } = day.plant.controls;
  let first = NEVER;
  for (let i = 0; i < thermostats.length; i += 1) {
    const { sense, on, off, sensed } = thermostats[i]!;
    const isOn = day.moment.thermostats[i] === 1;
    const rising = (sense === 'above') !== isOn;
    const share =
      sensed.slot >= 0
        ? slotCrossing(day, step, watch, length, sensed.slot, isOn ? off : on, rising)
        : cellCrossing(day, step, watch, length, sensed.cell, isOn ? off : on, rising);
    watch.share[i] = share;
    if (share < first) first = share;
  }
  for (let m = 0; m < machines.length; m += 1) {
    const { bedSlot, powerMax } = machines[m]!;
    let share = NEVER;
    const state = day.bedState[m];
    // Where another bed holds the place, it neither warms nor cools.
    if (state !== HOLDING && bedSlot >= 0 && day.holder[bedSlot]! >= 0) share = NEVER;
    else if (state === HEATING) share = slotCrossing(day, step, watch, length, bedSlot, day.bedSet[m]!, true);
    else if (state === COASTING) share = slotCrossing(day, step, watch, length, bedSlot, day.bedSet[m]!, false);
    else if (state === HOLDING) share = powerCrossing(startPower[m]!, day.bedPower[m]!, powerMax);
    watch.share[thermostats.length + m] = share;
    if (share < first) first = share;
  }
  return first;
}

function slotCrossing(
  day: Day,
  step: Step,
  watch: Watch,
  length: number,
  slot: number,
  level: number,
  rising: boolean,
): number {
  const capacity = day.plant.heat.capacity[slot]!;
  const s0 = day.heatRate[slot]! / capacity;
  const s1 = step.endHeat[slot]! / capacity;
  return firstCrossing(watch, level, rising, length, day.y[slot]!, s0, step.endY[slot]!, s1);
}

function cellCrossing(
  day: Day,
  step: Step,
  watch: Watch,
  length: number,
  cell: number,
  level: number,
  rising: boolean,
): number {
  const volume = day.plant.transport.volume[cell]!;
  const s0 = day.transportRate[cell]! / volume;
  const s1 = step.endCells[cell]! / volume;
  return firstCrossing(watch, level, rising, length, day.c[cell]!, s0, step.endC[cell]!, s1);
}

/** First share at which the cubic reaches the level from its own side; a start on the level does not count. */
export function firstCrossing(
  watch: Watch,
  level: number,
  rising: boolean,
  length: number,
  y0: number,
  s0: number,
  y1: number,
  s1: number,
): number {
  const reached = rising ? y1 >= level : y1 <= level;
  const towards = rising ? s0 > 0 : s0 < 0;
  const away = rising ? s1 < 0 : s1 > 0;
  const starts = rising ? y0 >= level : y0 <= level;
  if (!reached && !(towards && away)) return NEVER;
  // Inside, the cubic may come back: look at its turns in order.
  const turns = hermiteTurns(length, y0, s0, y1, s1, watch.turns);
  let from = 0;
  let outside = !starts;
  for (let k = 0; k <= turns; k += 1) {
    const to = k < turns ? watch.turns[k]! : 1;
    const value = k < turns ? hermite(to, length, y0, s0, y1, s1) : y1;
    const inside = rising ? value >= level : value <= level;
    if (inside && outside) return hermiteCrossing(level, length, y0, s0, y1, s1, from, to, rising);
    if (!inside) outside = true;
    from = to;
  }
  // It starts on the level and never leaves it the right way: it has to switch at once.
  return starts && reached ? 0 : NEVER;
}

function powerCrossing(start: number, end: number, most: number): number {
  const limit = end > most ? most : end < 0 ? 0 : Number.NaN;
  if (Number.isNaN(limit)) return NEVER;
  if (start === end) return 1;
  return Math.min(Math.max((limit - start) / (end - start), 0), 1);
}

/**
 * How far watched thing `index` lies beyond its level at a state, as a share of the tolerance; negative before it.
 * `powers`: what the beds need at that state, W.
 */
export function missOf(
  day: Day,
  y: Float64Array,
  c: Float64Array,
  powers: Float64Array,
  index: number,
  tolerance: number,
  relative: number,
): number {
  const { thermostats, machines } = day.plant.controls;
  if (index < thermostats.length) {
    const { sense, on, off, sensed } = thermostats[index]!;
    const isOn = day.moment.thermostats[index] === 1;
    const rising = (sense === 'above') !== isOn;
    const level = isOn ? off : on;
    const unit = sensed.slot >= 0 ? tolerance : relative * Math.max(Math.abs(level), Number.MIN_VALUE);
    return ((rising ? 1 : -1) * (readingOf(sensed, y, c) - level)) / unit;
  }
  const m = index - thermostats.length;
  const { bedSlot, powerMax } = machines[m]!;
  const state = day.bedState[m];
  // A watt more or less on a bed is worth about a hundredth of a kelvin of its surroundings.
  if (state === HOLDING) return Math.max(powers[m]! - powerMax, -powers[m]!) / (100 * tolerance);
  const beyond = y[bedSlot]! - day.bedSet[m]!;
  return (state === HEATING ? beyond : -beyond) / tolerance;
}
