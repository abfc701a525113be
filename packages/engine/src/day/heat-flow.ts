// Heat into every slot at given temperatures and flows, W. Hot loop: no checks, no allocation.
// Air brings heat to the zone it enters and takes none from the zone it leaves, whose temperature it has.

import type { AirState } from './air-network.ts';
import { filmAt } from './film-table.ts';
import type { HeatNetwork } from './heat-network.ts';
import type { HeatState } from './heat-state.ts';

/** Natural films grow about as the difference to the power 0.3: d(h ΔT)/dΔT = 1.3 h. Only the matrix uses it. */
const FILM_STEEPNESS = 0.3;

/** Sums all heat into `into`; flows were solved for the same temperatures. */
export function evaluateHeat(
  heat: HeatNetwork,
  state: HeatState,
  air: AirState,
  y: Float64Array,
  time: number,
  into: Float64Array,
): void {
  into.set(state.steady);
  for (let i = 0; i < state.courseCount; i += 1) {
    const slot = state.courseSlot[i]!;
    into[slot] = into[slot]! + state.courseStart[i]! + state.courseRate[i]! * (time - state.courseTime);
  }
  conduct(heat, state, y, into);
  if (heat.radiation.count > 0) radiate(heat, y, into);
  if (heat.stars.length > 0) meetAtStars(heat, y, into);
  if (heat.convection.count > 0) convect(heat, state, y, into);
  carry(heat, air, y, into);
  if (heat.exchange.count > 0) exchange(heat, state, air, y, into);
  if (heat.change.count > 0) change(heat, state, air, y, into);
}

function conduct(heat: HeatNetwork, state: HeatState, y: Float64Array, into: Float64Array): void {
  const { a, b, count } = heat.conduction;
  const { conductance } = state;
  for (let i = 0; i < count; i += 1) {
    const one = a[i]!;
    const other = b[i]!;
    const watts = conductance[i]! * (y[one]! - y[other]!);
    into[one] = into[one]! - watts;
    into[other] = into[other]! + watts;
  }
}

function radiate(heat: HeatNetwork, y: Float64Array, into: Float64Array): void {
  const { a, b, count } = heat.radiation;
  for (let i = 0; i < count; i += 1) {
    const one = a[i]!;
    const other = b[i]!;
    const square = y[one]! * y[one]!;
    const otherSquare = y[other]! * y[other]!;
    const watts = heat.radiance[i]! * (square - otherSquare) * (square + otherSquare);
    into[one] = into[one]! - watts;
    into[other] = into[other]! + watts;
  }
}

function meetAtStars(heat: HeatNetwork, y: Float64Array, into: Float64Array): void {
  for (const { members, weights, total } of heat.stars) {
    let mean = 0;
    for (let i = 0; i < members.length; i += 1) {
      const square = y[members[i]!]! * y[members[i]!]!;
      mean += weights[i]! * square * square;
    }
    mean /= total;
    for (let i = 0; i < members.length; i += 1) {
      const slot = members[i]!;
      const square = y[slot]! * y[slot]!;
      into[slot] = into[slot]! - weights[i]! * (square * square - mean);
    }
  }
}

function convect(heat: HeatNetwork, state: HeatState, y: Float64Array, into: Float64Array): void {
  const { a, b, count } = heat.convection;
  const { landing, film, filmFactor, filmArea } = heat;
  for (let i = 0; i < count; i += 1) {
    const surface = a[i]!;
    const difference = y[surface]! - y[b[i]!]!;
    const natural = filmFactor[i]! * filmAt(film[i]!, difference);
    let h = natural;
    let steepness = FILM_STEEPNESS;
    const forced = state.forced[i]!;
    if (forced > 0) {
      const cube = natural * natural * natural;
      h = Math.cbrt(cube + forced);
      steepness *= cube / (cube + forced);
    }
    const conductance = h * filmArea[i]!;
    const watts = conductance * difference;
    state.filmConductance[i] = conductance;
    state.filmHeat[i] = watts;
    state.filmSlope[i] = conductance * (1 + steepness);
    into[surface] = into[surface]! - watts;
    const lands = landing[i]!;
    into[lands] = into[lands]! + watts;
  }
}

function carry(heat: HeatNetwork, air: AirState, y: Float64Array, into: Float64Array): void {
  const { a, b, count } = heat.carried;
  const { along, against } = air;
  for (let d = 0; d < count; d += 1) {
    const from = a[d]!;
    const to = b[d]!;
    const drop = heat.heatCapacity * (y[from]! - y[to]!);
    into[to] = into[to]! + along[d]! * drop;
    into[from] = into[from]! - against[d]! * drop;
  }
}

function exchange(heat: HeatNetwork, state: HeatState, air: AirState, y: Float64Array, into: Float64Array): void {
  const { a, b, count } = heat.exchange;
  const perFlow = heat.referenceDensity * heat.heatCapacity;
  for (let i = 0; i < count; i += 1) {
    if (state.exchangeOn[i] === 0) {
      state.exchangeFlow[i] = 0;
      state.exchangeSlope[i] = 0;
      continue;
    }
    const one = a[i]!;
    const other = b[i]!;
    const difference = y[one]! - y[other]!;
    const law = heat.exchangeLaws[i]!;
    let flow = 0;
    // d(Q ΔT)/dΔT is 1.5 Q where Q grows with the root of ΔT.
    let steepness = 1;
    if (law.kind === 'constant') flow = law.flow;
    else if (law.kind === 'vertical-opening') {
      const size = difference < 0 ? -difference : difference;
      flow = law.factor * Math.sqrt((2 * size) / (y[one]! + y[other]!));
      steepness = 1.5;
    } else if (law.kind === 'horizontal-opening') {
      if (difference > 0) {
        flow = law.factor * Math.sqrt((2 * difference) / (y[one]! + y[other]!));
        steepness = 1.5;
        if (law.path >= 0) {
          const rho = heat.referenceDensity;
          const heavier = (rho * 2 * difference) / (y[one]! + y[other]!);
          const passing = air.flow[law.path]!;
          const left = 1 - (law.loss * passing * passing) / rho / (law.flooding * heavier);
          flow *= Math.max(left, 0);
        }
      }
    } else {
      let roots = 0;
      for (let k = 0; k < law.convections.length; k += 1) {
        const watts = state.filmHeat[law.convections[k]!]!;
        // cbrt(W) without its infinite slope at 0: a plume below a watt hardly moves.
        if (watts > 0) roots += watts / Math.cbrt(watts * watts + 1);
      }
      flow = law.coefficient * roots;
    }
    const conductance = perFlow * flow;
    const watts = conductance * difference;
    state.exchangeFlow[i] = flow;
    state.exchangeSlope[i] = steepness * conductance;
    into[one] = into[one]! - watts;
    into[other] = into[other]! + watts;
  }
}

function change(heat: HeatNetwork, state: HeatState, air: AirState, y: Float64Array, into: Float64Array): void {
  const { a, b, count } = heat.change;
  for (let i = 0; i < count; i += 1) {
    let taken = 0;
    const paths = heat.changePaths[i]!;
    for (let k = 0; k < paths.length; k += 1) taken += paths[k]!.sign * air.flow[paths[k]!.path]!;
    const enters = heat.changeFlow[i]! + Math.max(taken, 0);
    const leaves = heat.changeFlow[i]! - Math.min(taken, 0);
    state.changeIn[i] = enters;
    state.changeOut[i] = leaves;
    const zone = a[i]!;
    const other = b[i]!;
    const drop = heat.heatCapacity * (y[other]! - y[zone]!);
    into[zone] = into[zone]! + enters * drop;
    into[other] = into[other]! - leaves * drop;
  }
}
