// The matrices of a step: volumes over γh less the derivative of the transport, with the flows frozen; one for each contaminant,
// interleaved. The loads of carbon beds are eliminated beforehand: each touches one contaminant in one place only.

import type { AirState } from './air-network.ts';
import { factorMany } from './sparse-lu.ts';
import type { TransportNetwork } from './transport-network.ts';
import type { TransportState } from './transport-state.ts';

/** Share of a load, and least load, by which the slope of the equilibrium is found. */
const NUDGE = 1e-4;
const LEAST_NUDGE = 1e-9;

/** The last evaluation, at `c` and `y`, becomes what the step's matrix has. */
export function freezeTransport(
  net: TransportNetwork,
  state: TransportState,
  air: AirState,
  c: Float64Array,
  y: Float64Array,
): void {
  const { streams, frozenConcentration } = state;
  state.streams = state.frozenStreams;
  state.frozenStreams = streams;
  for (let cell = 0; cell < net.cells; cell += 1) frozenConcentration[cell] = c[cell]!;
  for (let l = 0; l < net.carbon.length; l += 1) freezeCarbon(net, state, air, c, y, l);
}

function freezeCarbon(
  net: TransportNetwork,
  state: TransportState,
  air: AirState,
  c: Float64Array,
  y: Float64Array,
  l: number,
): void {
  const { contaminant: k, path, recirculation, efficiency, law, slot } = net.carbon[l]!;
  const { count } = net;
  const frozen = state.frozenCarbon[l]!;
  if (path >= 0) {
    const { a, b, ab, ba } = net.pathAt;
    const flow = air.flow[path]! / net.referenceDensity;
    const forward = flow >= 0;
    frozen.from = (forward ? a[path]! : b[path]!) * count + k;
    frozen.to = (forward ? b[path]! : a[path]!) * count + k;
    frozen.position = (forward ? ba[path]! : ab[path]!) * count + k;
    frozen.cleaned = Math.abs(flow) * efficiency;
    frozen.pass = net.pass[path * count + k]!;
  } else {
    const place = net.recirculationPlace[recirculation]!;
    const on = state.recirculationOn[recirculation] === 1;
    frozen.from = frozen.to = place * count + k;
    frozen.position = (place < net.solved ? place : net.valueCount - 1) * count + k;
    frozen.cleaned = on ? net.recirculationFlow[recirculation]! * efficiency : 0;
    frozen.pass = 1 - net.recirculationEfficiency[recirculation * count + k]!;
  }
  const load = Math.max(c[net.cells + l]!, 0);
  const nudge = NUDGE * load + LEAST_NUDGE;
  const steepness = (law(load + nudge, y[slot]!) - law(load, y[slot]!)) / nudge;
  frozen.steepness = steepness > 0 && Number.isFinite(steepness) ? steepness : 0;
}

/** Assembles and factors what was frozen. */
export function assembleTransport(net: TransportNetwork, state: TransportState, inverse: number): void {
  fill(net, state, inverse);
  for (let l = 0; l < net.carbon.length; l += 1) {
    const { position, cleaned, pass } = state.frozenCarbon[l]!;
    const back = givenBack(net, state, l, inverse) * net.carbon[l]!.perUnit * cleaned * pass;
    state.matrix[position] = state.matrix[position]! - back;
  }
  factorMany(net.pattern, state.matrix, net.count);
}

/**
 * m³/s·C*: what carbon gives back into the air for each kg/kg/s that its load is fed from outside, with the load's own equation
 * (1/γh + perUnit cleaned dC*) δload = fed solved.
 */
export function givenBack(net: TransportNetwork, state: TransportState, l: number, inverse: number): number {
  const { cleaned, steepness } = state.frozenCarbon[l]!;
  return (cleaned * steepness) / (inverse + net.carbon[l]!.perUnit * cleaned * steepness);
}

/** What each cell loses per unit of its own concentration, m³/s. Leaves no matrix to solve with. */
export function diagonalOfTransport(net: TransportNetwork, state: TransportState, into: Float64Array): void {
  fill(net, state, 0);
  for (let cell = 0; cell < net.solved * net.count; cell += 1) into[cell] = state.matrix[cell]!;
}

function fill(net: TransportNetwork, state: TransportState, inverse: number): void {
  const { matrix, frozenConcentration } = state;
  const { solved, count, valueCount, through, volume, deposition, coagulation } = net;
  const { from, volume: flows, filter, entry, count: streams } = state.frozenStreams;
  matrix.fill(0);
  for (let cell = 0; cell < solved * count; cell += 1) {
    const losses = deposition[cell]! + 2 * coagulation[cell]! * frozenConcentration[cell]!;
    matrix[cell] = volume[cell]! * inverse + losses;
  }
  const unused = (valueCount - 1) * count;
  for (let s = 0; s < streams; s += 1) {
    const flow = flows[s]!;
    const leaves = from[s]! < solved ? from[s]! * count : unused;
    const enters = entry[s]! * count;
    const filters = filter[s]! * count;
    for (let k = 0; k < count; k += 1) {
      matrix[leaves + k] = matrix[leaves + k]! + flow;
      matrix[enters + k] = matrix[enters + k]! - flow * through[filters + k]!;
    }
  }
  for (let r = 0; r < net.recirculationFlow.length; r += 1) {
    const place = net.recirculationPlace[r]!;
    if (state.recirculationOn[r] === 0 || place >= solved) continue;
    for (let k = 0; k < count; k += 1) {
      matrix[place * count + k] = matrix[place * count + k]! + recirculationLoss(net, k, r);
    }
  }
}

/** m³/s of air that the recirculation cleans entirely. */
function recirculationLoss(net: TransportNetwork, k: number, r: number): number {
  let passes = 1 - net.recirculationEfficiency[r * net.count + k]!;
  for (let l = 0; l < net.carbon.length; l += 1) {
    const { contaminant, recirculation, efficiency } = net.carbon[l]!;
    if (contaminant === k && recirculation === r) passes *= 1 - efficiency;
  }
  return net.recirculationFlow[r]! * (1 - passes);
}
