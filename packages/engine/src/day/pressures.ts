// Zone pressures at which every solved zone's flows sum to zero: Newton's method with a line search.
// The sums are the gradient of a convex function of the pressures (every path's flow rises with its pressure difference), so
// going down that function always arrives; along a step only the slope of the function is asked for, never its value.

import { type AirNetwork, type AirState, CRACK, FAN } from './air-network.ts';
import { branches, nearestBranch } from './fan-branch.ts';
import { branchResistance, evaluatePaths } from './path-flow.ts';
import { factor, solve } from './sparse-lu.ts';

/** kg/s that count as nothing. */
const NOTHING = 1e-15;
const MOST_ROUNDS = 200;

/** Solves for the pressures, warm from the last ones. Densities and heads are set before. Leaves flows that balance. */
export function solvePressures(air: AirNetwork, state: AirState): void {
  let stalling = false;
  for (let i = 0; i < air.fanPaths.length; i += 1) {
    const p = air.fanPaths[i]!;
    if (state.open[p] === 1 && state.curves[p]!.rising) {
      stalling = true;
      state.trialFlow[p] = state.branchFlow[p]!;
    }
  }
  if (state.predictable) predict(air, state);
  descend(air, state);
  if (stalling) {
    state.predictable = false;
    for (let change = 0; change < 16 && leaveBranches(air, state); change += 1) descend(air, state);
  } else keepForPrediction(state);
  fillDucts(air, state);
}

/** Adds up what passes each duct both ways. */
function fillDucts({ ductOf, ductSign }: AirNetwork, state: AirState): void {
  const { along, against, openList, flow, counter } = state;
  for (let d = 0; d < along.length; d += 1) along[d] = against[d] = 0;
  const end = state.openCount + state.fixedCount;
  let i = 0;
  while (i < end) {
    // Neighbours in the list mostly share their duct.
    const d = ductOf[openList[i]!]!;
    let forward = 0;
    let backward = 0;
    for (; i < end && ductOf[openList[i]!] === d; i += 1) {
      const p = openList[i]!;
      const amount = ductSign[p]! * flow[p]!;
      if (amount > 0) forward += amount;
      else backward -= amount;
      forward += counter[p]!;
      backward += counter[p]!;
    }
    along[d] = along[d]! + forward;
    against[d] = against[d]! + backward;
  }
}

/**
 * Moves the pressures to where the last matrix expects them after the change of heads and densities: then mostly one round is
 * enough. Only a better start; nothing depends on it.
 */
function predict(air: AirNetwork, state: AirState): void {
  const { step, unknownOf, openList, flow, slope, head, keptHead, density, keptDensity, denser, pressure } = state;
  const { ductOf, from, to, kind, pattern } = air;
  const known = pattern.size;
  for (let u = 0; u <= known; u += 1) step[u] = 0;
  for (let z = 0; z < air.zoneCount; z += 1) denser[z] = density[z]! / keptDensity[z]! - 1;
  let i = 0;
  while (i < state.openCount) {
    const d = ductOf[openList[i]!]!;
    const a = air.ducts.a[d]!;
    const b = air.ducts.b[d]!;
    let sum = 0;
    for (; i < state.openCount && ductOf[openList[i]!] === d; i += 1) {
      const p = openList[i]!;
      const passing = flow[p]!;
      const source = passing >= 0 ? from[p]! : to[p]!;
      // Flow through holes grows with the root of the density, through cracks with the density itself.
      const change = slope[p]! * (head[p]! - keptHead[p]!) + (kind[p] === CRACK ? 1 : 0.5) * passing * denser[source]!;
      sum += air.ductSign[p]! * change;
    }
    step[unknownOf[a]!] = step[unknownOf[a]!]! - sum;
    step[unknownOf[b]!] = step[unknownOf[b]!]! + sum;
  }
  step[known] = 0;
  solve(pattern, state.matrix, step, 0);
  for (let z = 0; z < air.zoneCount; z += 1) pressure[z] = pressure[z]! + step[unknownOf[z]!]!;
}

function keepForPrediction(state: AirState): void {
  const { keptHead, keptDensity, head, density } = state;
  for (let p = 0; p < head.length; p += 1) keptHead[p] = head[p]!;
  for (let z = 0; z < density.length; z += 1) keptDensity[z] = density[z]!;
  state.predictable = state.unknowns > 0 && state.factored;
}

/** Moves every fan that ended beyond its branch to the next one; false when all are at home. */
function leaveBranches(air: AirNetwork, state: AirState): boolean {
  let moved = false;
  for (const p of air.fanPaths) {
    if (state.open[p] === 0 || !state.curves[p]!.rising || state.beyond[p] === 0) continue;
    const list = branches(branchResistance(air, state, p));
    const next = nearestBranch(list, state.trialFlow[p]!) + state.beyond[p]!;
    const branch = list[next];
    if (branch === undefined) continue;
    const low = Number.isFinite(branch.from) ? branch.from : branch.to - 1;
    const high = Number.isFinite(branch.to) ? branch.to : branch.from + 1;
    state.trialFlow[p] = 0.5 * (low + high);
    moved = true;
  }
  return moved;
}

/** Remembers on which branch each fan runs, once a state is accepted. */
export function keepBranches(state: AirState): void {
  state.branchFlow.set(state.volume);
}

function descend(air: AirNetwork, state: AirState): void {
  const { residual, step, pressure, startPressure } = state;
  const n = air.pattern.size;
  evaluatePaths(air, state);
  if (state.unknowns === 0) return;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    state.rounds += 1;
    const largest = balance(air, state);
    state.factored = false;
    let worst = 0;
    for (let u = 0; u < n; u += 1) worst = Math.max(worst, Math.abs(residual[u]!));
    if (worst === 0) return;
    newtonStep(air, state);
    if (worst <= NOTHING || worst <= state.nearly * largest) {
      finishLinearly(air, state);
      return;
    }
    let start = 0;
    let reach = 0;
    for (let u = 0; u < n; u += 1) {
      start += residual[u]! * step[u]!;
      reach = Math.max(reach, Math.abs(step[u]!));
    }
    if (reach <= 1e-13) {
      finishLinearly(air, state);
      return;
    }
    startPressure.set(pressure);
    // Slope along the step: negative at 0 by construction; a large positive slope at the end means the step went too far.
    let low = 0;
    let lowSlope = start;
    let high = 1;
    let highSlope = slopeAt(air, state, 1);
    for (let trial = 0; trial < 40 && highSlope > -0.1 * start; trial += 1) {
      // Regula falsi, drawn towards the middle so that the bracket shrinks from both ends.
      const secant = low - (lowSlope * (high - low)) / (highSlope - lowSlope);
      const share = Math.min(Math.max(secant, low + 0.1 * (high - low)), low + 0.9 * (high - low));
      const slope = slopeAt(air, state, share);
      if (slope > -0.1 * start) {
        high = share;
        highSlope = slope;
      } else if (slope < 0.5 * start && trial < 6) {
        low = share;
        lowSlope = slope;
      } else break;
    }
  }
  for (let z = 0; z < air.zoneCount; z += 1) {
    if (!Number.isFinite(pressure[z]!)) throw new Error('The air network has no finite solution');
  }
}

/** Moves the pressures to `share` of the step, evaluates there and returns the slope of the convex function. */
function slopeAt(air: AirNetwork, state: AirState, share: number): number {
  const { pressure, startPressure, step, unknownOf } = state;
  for (let z = 0; z < air.zoneCount; z += 1) pressure[z] = startPressure[z]! + share * step[unknownOf[z]!]!;
  evaluatePaths(air, state);
  // Σ (net outflow of zone) · (its step), summed path by path.
  let slope = 0;
  const end = state.openCount + state.fixedCount;
  for (let i = 0; i < end; i += 1) {
    const p = state.openList[i]!;
    slope += state.flow[p]! * (step[unknownOf[air.from[p]!]!]! - step[unknownOf[air.to[p]!]!]!);
  }
  return slope;
}

/** Sums flows and slopes into residual (net outflow) and matrix; returns the largest flow. */
function balance(air: AirNetwork, state: AirState): number {
  const { residual, matrix, unknownOf, openList, flow, slope } = state;
  const { ductOf, ductSign, ducts, pattern } = air;
  const { aa, bb, ab, ba } = state.ductAt;
  for (let u = 0; u <= pattern.size; u += 1) residual[u] = 0;
  matrix.set(state.blank);
  let largest = 0;
  const driven = state.openCount;
  const end = driven + state.fixedCount;
  let i = 0;
  while (i < end) {
    const d = ductOf[openList[i]!]!;
    let sum = 0;
    let g = 0;
    for (; i < end && ductOf[openList[i]!] === d; i += 1) {
      const p = openList[i]!;
      const amount = ductSign[p]! * flow[p]!;
      const size = amount < 0 ? -amount : amount;
      if (size > largest) largest = size;
      sum += amount;
      if (i < driven) g += slope[p]!;
    }
    const a = unknownOf[ducts.a[d]!]!;
    const b = unknownOf[ducts.b[d]!]!;
    residual[a] = residual[a]! + sum;
    residual[b] = residual[b]! - sum;
    matrix[aa[d]!] = matrix[aa[d]!]! + g;
    matrix[bb[d]!] = matrix[bb[d]!]! + g;
    matrix[ab[d]!] = matrix[ab[d]!]! - g;
    matrix[ba[d]!] = matrix[ba[d]!]! - g;
  }
  return largest;
}

/** Solves matrix · step = -residual; the last place of the step belongs to the known pressures. */
function newtonStep({ pattern }: AirNetwork, state: AirState): void {
  const { matrix, residual, step } = state;
  factor(pattern, matrix);
  state.factored = true;
  for (let u = 0; u < pattern.size; u += 1) step[u] = -residual[u]!;
  step[pattern.size] = 0;
  solve(pattern, matrix, step, 0);
}

/** Takes the step and lets the flows follow on their slopes: the balances then close to rounding. */
function finishLinearly(air: AirNetwork, state: AirState): void {
  const { pressure, step, unknownOf, flow, slope, openList } = state;
  for (let z = 0; z < air.zoneCount; z += 1) pressure[z] = pressure[z]! + step[unknownOf[z]!]!;
  for (let i = 0; i < state.openCount; i += 1) {
    const p = openList[i]!;
    const change = slope[p]! * (step[unknownOf[air.from[p]!]!]! - step[unknownOf[air.to[p]!]!]!);
    if (air.kind[p] === FAN && flow[p] !== 0) state.volume[p] = state.volume[p]! * (1 + change / flow[p]!);
    flow[p] = flow[p]! + change;
  }
}
