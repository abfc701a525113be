// The matrix of a step: capacities over γh less the derivative of the heat flows, with the air flows frozen.
// Every interior link is entered the same with opposite signs, so that what a step takes from one slot it gives to another.

import type { AirState } from './air-network.ts';
import type { HeatNetwork, Pairs } from './heat-network.ts';
import type { HeatState } from './heat-state.ts';
import { factor } from './sparse-lu.ts';

function addPair(matrix: Float64Array, pairs: Pairs, i: number, slopeA: number, slopeB: number): void {
  const aa = pairs.aa[i]!;
  const bb = pairs.bb[i]!;
  const ab = pairs.ab[i]!;
  const ba = pairs.ba[i]!;
  matrix[aa] = matrix[aa]! + slopeA;
  matrix[bb] = matrix[bb]! + slopeB;
  matrix[ab] = matrix[ab]! - slopeB;
  matrix[ba] = matrix[ba]! - slopeA;
}

/** After conductances have been switched. */
export function setConductionMatrix(heat: HeatNetwork, state: HeatState): void {
  state.conductionMatrix.fill(0);
  for (let i = 0; i < heat.conduction.count; i += 1) {
    addPair(state.conductionMatrix, heat.conduction, i, state.conductance[i]!, state.conductance[i]!);
  }
}

/** Keeps the coefficients of the state that a step starts from; the last evaluation was there. */
export function freeze(heat: HeatNetwork, state: HeatState, air: AirState, y: Float64Array): void {
  state.frozenFlow.set(air.flow);
  state.frozenCounter.set(air.counter);
  state.frozenAlong.set(air.along);
  state.frozenAgainst.set(air.against);
  const { a, b, count } = heat.radiation;
  for (let i = 0; i < count; i += 1) {
    const one = y[a[i]!]!;
    const other = y[b[i]!]!;
    state.frozenRadiationA[i] = 4 * heat.radiance[i]! * one * one * one;
    state.frozenRadiationB[i] = 4 * heat.radiance[i]! * other * other * other;
  }
  if (heat.convection.count > 0) state.frozenFilm.set(state.filmSlope);
  if (heat.exchange.count > 0) {
    state.frozenExchange.set(state.exchangeSlope);
    state.frozenExchangeFlow.set(state.exchangeFlow);
  }
  if (heat.change.count > 0) {
    state.frozenChangeIn.set(state.changeIn);
    state.frozenChangeOut.set(state.changeOut);
  }
}

/** Assembles the matrix for 1/(γh) = `inverse`, keeps the slots that have a `holder` where they are, and factors it. */
export function assembleHeat(
  heat: HeatNetwork,
  state: HeatState,
  y: Float64Array,
  inverse: number,
  holder: Int32Array,
): void {
  fill(heat, state, y, inverse);
  for (let m = 0; m < heat.bedRows.length; m += 1) {
    const { row } = heat.bedRows[m]!;
    if (row >= 0 && holder[row] === m) holdBedRow(heat, state, m);
  }
  factor(heat.layout.pattern, state.matrix);
}

/** What each slot loses per kelvin of its own, W/K, with the coefficients of the last `freeze`. Leaves no matrix to solve with. */
export function diagonalOfHeat(heat: HeatNetwork, state: HeatState, y: Float64Array, into: Float64Array): void {
  fill(heat, state, y, 0);
  for (let row = 0; row < heat.layout.unknowns; row += 1) into[row] = state.matrix[row]!;
}

function fill(heat: HeatNetwork, state: HeatState, y: Float64Array, inverse: number): void {
  const { matrix } = state;
  const { layout, capacity } = heat;
  matrix.set(state.conductionMatrix);
  for (let row = 0; row < layout.unknowns; row += 1) matrix[row] = matrix[row]! + capacity[row]! * inverse;
  for (let i = 0; i < heat.radiation.count; i += 1) {
    addPair(matrix, heat.radiation, i, state.frozenRadiationA[i]!, state.frozenRadiationB[i]!);
  }
  if (heat.stars.length > 0) addStars(heat, matrix, y);
  if (heat.convection.count > 0) addFilms(heat, state);
  addCarried(heat, state);
  for (let i = 0; i < heat.exchange.count; i += 1) {
    addPair(matrix, heat.exchange, i, state.frozenExchange[i]!, state.frozenExchange[i]!);
  }
  for (let i = 0; i < heat.change.count; i += 1) {
    const enters = heat.heatCapacity * state.frozenChangeIn[i]!;
    const leaves = heat.heatCapacity * state.frozenChangeOut[i]!;
    const { aa, ab, bb, ba } = heat.change;
    matrix[aa[i]!] = matrix[aa[i]!]! + enters;
    matrix[ab[i]!] = matrix[ab[i]!]! - enters;
    matrix[bb[i]!] = matrix[bb[i]!]! + leaves;
    matrix[ba[i]!] = matrix[ba[i]!]! - leaves;
  }
}

function addStars(heat: HeatNetwork, matrix: Float64Array, y: Float64Array): void {
  for (const { members, weights, total, mm, ms, sm, ss } of heat.stars) {
    // The star's own unknown is the change of its mean T⁴: total·δM = Σ weight·4T³ δT.
    matrix[ss] = total;
    for (let i = 0; i < members.length; i += 1) {
      const temperature = y[members[i]!]!;
      const slope = 4 * weights[i]! * temperature * temperature * temperature;
      matrix[mm[i]!] = matrix[mm[i]!]! + slope;
      matrix[sm[i]!] = matrix[sm[i]!]! - slope;
      matrix[ms[i]!] = matrix[ms[i]!]! - weights[i]!;
    }
  }
}

function addFilms(heat: HeatNetwork, state: HeatState): void {
  const { matrix, frozenFilm } = state;
  const { aa, ab, count } = heat.convection;
  for (let i = 0; i < count; i += 1) {
    const slope = frozenFilm[i]!;
    matrix[aa[i]!] = matrix[aa[i]!]! + slope;
    matrix[ab[i]!] = matrix[ab[i]!]! - slope;
    const landingSurface = heat.landingSurface[i]!;
    const landingAir = heat.landingAir[i]!;
    matrix[landingSurface] = matrix[landingSurface]! - slope;
    matrix[landingAir] = matrix[landingAir]! + slope;
  }
}

function addCarried(heat: HeatNetwork, state: HeatState): void {
  const { matrix, frozenAlong, frozenAgainst } = state;
  const { aa, bb, ab, ba, count } = heat.carried;
  for (let d = 0; d < count; d += 1) {
    const toB = heat.heatCapacity * frozenAlong[d]!;
    const toA = heat.heatCapacity * frozenAgainst[d]!;
    matrix[bb[d]!] = matrix[bb[d]!]! + toB;
    matrix[ba[d]!] = matrix[ba[d]!]! - toB;
    matrix[aa[d]!] = matrix[aa[d]!]! + toA;
    matrix[ab[d]!] = matrix[ab[d]!]! - toA;
  }
}

/** Row of a bed that holds its temperature: its change is nothing. What it was is kept for the bed's power. */
function holdBedRow(heat: HeatNetwork, state: HeatState, m: number): void {
  const { matrix } = state;
  const { row, positions } = heat.bedRows[m]!;
  const kept = state.frozenBedRows[m]!;
  matrix[row] = 1;
  for (let k = 0; k < positions.length; k += 1) {
    kept[k] = matrix[positions[k]!]!;
    matrix[positions[k]!] = 0;
  }
}
