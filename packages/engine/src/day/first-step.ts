// How long the first step after a jump may be. Something has switched, so the rates have jumped, and the quickest temperatures and
// concentrations will run through a transient that no earlier step knows of. What a lone value that relaxes would be allowed is known
// beforehand, and saves the steps that would be tried in vain.

import type { Day } from './day.ts';
import { diagonalOfHeat } from './heat-matrix.ts';
import type { Step } from './step.ts';
import { AIR_SHARE, OWN_ERROR } from './step-control.ts';
import { diagonalOfTransport } from './transport-matrix.ts';

/**
 * The error estimate of a value that relaxes with the time constant τ towards a place J τ away is J τ E(h/τ), E = R - R̂ of the
 * method. E(z) lies below all of STEEP z³, LINEAR z and MOST (a test computes it).
 */
export const STEEP = 0.04;
export const LINEAR = 0.0309;
export const MOST = 0.48;

/** Nothing relaxes quite alone. */
const SAFETY = 0.8;
/** A time constant below this is short, s: errors do not outlast the transient they belong to. */
const SHORT = 600;

export interface Rates {
  readonly heat: Float64Array;
  readonly cells: Float64Array;
}

/** s; the day's rates are those after the jump, `before` those until it. Infinite when nothing jumped. */
export function firstLength(day: Day, step: Step, before: Rates, tolerance: number, relative: number): number {
  const { plant, heat, transport, c } = day;
  const { capacity } = plant.heat;
  let length = Number.POSITIVE_INFINITY;
  diagonalOfHeat(plant.heat, heat, day.y, step.diagonal);
  weigh(day, step);
  for (let slot = 0; slot < plant.heat.layout.unknowns; slot += 1) {
    const jump = Math.abs(day.heatRate[slot]! - before.heat[slot]!) / capacity[slot]!;
    // A bed that is held has no transient, and a star has no temperature of its own.
    if (!(jump > 0) || day.holder[slot]! >= 0 || step.watchedSlot[slot] === 0) continue;
    length = Math.min(length, allowed(jump / tolerance, 1 / step.pace[slot]!, step.watchedSlot[slot]!, AIR_SHARE));
  }
  const { count, solved, volume, scale } = plant.transport;
  if (count > 0) diagonalOfTransport(plant.transport, transport, step.diagonal);
  for (let cell = 0; cell < solved * count; cell += 1) {
    const jump = Math.abs(day.transportRate[cell]! - before.cells[cell]!) / volume[cell]!;
    const unit = relative * Math.max(scale[cell % count]!, Math.abs(c[cell]!));
    length = Math.min(length, allowed(jump / unit, volume[cell]! / step.diagonal[cell]!, 1, 1));
  }
  return SAFETY * length;
}

/** Sets how fast each temperature forgets, by what it loses now (`step.diagonal`, W/K), and how much air and what reads it is minded. */
function weigh({ plant }: Day, { diagonal, pace, watchedSlot }: Step): void {
  const { zoneSlot, capacity, layout } = plant.heat;
  for (let slot = 0; slot < layout.unknowns; slot += 1) {
    pace[slot] = watchedSlot[slot] === 0 ? 0 : diagonal[slot]! / capacity[slot]!;
  }
  for (const slot of zoneSlot) {
    if (slot < layout.firstFixed) watchedSlot[slot] = pace[slot]! * SHORT > 1 ? AIR_SHARE : 1;
  }
  for (const { slot, lag } of plant.controls.sensors) {
    pace[slot] = 1 / lag;
    watchedSlot[slot] = lag < SHORT ? AIR_SHARE : 1;
  }
}

/**
 * Longest step whose error stays within one tolerance. `jump`: of the rate, tolerances/s. `time`: time constant, s. `most`, `least`: how
 * much the error is minded at most and at least.
 */
function allowed(jump: number, time: number, most: number, least: number): number {
  if (most * jump * time * MOST <= 1) return Number.POSITIVE_INFINITY;
  const cube = (time * time) / (STEEP * jump);
  const slow = Math.min(Math.cbrt(cube / least), Math.sqrt(Math.sqrt((cube * time) / OWN_ERROR)));
  return Math.max(1 / (most * LINEAR * jump), Math.cbrt(cube / most), slow);
}
