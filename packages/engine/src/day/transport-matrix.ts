// The matrices of a step, one a contaminant: volumes over γh less the derivative of the transport, with the flows frozen.

import type { AirState } from './air-network.ts';
import type { HeatState } from './heat-state.ts';
import { factor } from './sparse-lu.ts';
import type { TransportNetwork } from './transport-network.ts';
import type { TransportState } from './transport-state.ts';

/** Assembles and factors; flows are those frozen in `heat`, concentrations those of the step's start. */
export function assembleTransport(
  net: TransportNetwork,
  state: TransportState,
  air: AirState,
  heat: HeatState,
  c: Float64Array,
  inverse: number,
): void {
  const { matrix } = state;
  state.frozenConcentration.set(c.subarray(0, net.count * net.zones));
  matrix.fill(0);
  for (let k = 0; k < net.count; k += 1) {
    const offset = k * net.valueCount;
    addZones(net, state, k, offset, inverse);
    addPaths(net, state, air, heat, k, offset);
    addMixing(net, heat, matrix, offset);
    factor(net.pattern, matrix, offset);
  }
}

function addZones(net: TransportNetwork, state: TransportState, k: number, offset: number, inverse: number): void {
  const { matrix } = state;
  for (let z = 0; z < net.zones; z += 1) {
    const cell = k * net.zones + z;
    const at = offset + net.diagonal[z]!;
    const losses = net.deposition[cell]! + 2 * net.coagulation[cell]! * state.frozenConcentration[cell]!;
    matrix[at] = matrix[at]! + net.volume[z]! * inverse + losses;
  }
  const count = net.recirculationFlow.length;
  for (let r = 0; r < count; r += 1) {
    if (state.recirculationOn[r] === 0) continue;
    const at = offset + net.diagonal[net.recirculationZone[r]!]!;
    matrix[at] = matrix[at]! + recirculationLoss(net, k, r);
  }
}

/** m³/s of air that the recirculation cleans entirely. */
export function recirculationLoss(net: TransportNetwork, k: number, r: number): number {
  const count = net.recirculationFlow.length;
  const filter = net.recirculationEfficiency[k * count + r]!;
  const load = net.carbonOnRecirculation[k * count + r]!;
  const carbon = load < 0 ? 0 : net.carbon[load]!.efficiency;
  return net.recirculationFlow[r]! * (filter + (1 - filter) * carbon);
}

function addPaths(
  net: TransportNetwork,
  state: TransportState,
  air: AirState,
  heat: HeatState,
  k: number,
  offset: number,
): void {
  const { matrix } = state;
  const { aa, bb, ab, ba } = net.pathAt;
  const end = air.openCount + air.fixedCount;
  for (let i = 0; i < end; i += 1) {
    const p = air.openList[i]!;
    const flow = heat.frozenFlow[p]! / net.referenceDensity;
    const back = heat.frozenCounter[p]! / net.referenceDensity;
    const forward = flow > 0 ? flow + back : back;
    const backward = flow < 0 ? back - flow : back;
    const through = passShare(net, k, p);
    const leaveA = offset + aa[p]!;
    const leaveB = offset + bb[p]!;
    const enterB = offset + ba[p]!;
    const enterA = offset + ab[p]!;
    matrix[leaveA] = matrix[leaveA]! + forward;
    matrix[enterB] = matrix[enterB]! - through * forward;
    matrix[leaveB] = matrix[leaveB]! + backward;
    matrix[enterA] = matrix[enterA]! - through * backward;
  }
}

/** Share of a path's concentration that comes out behind its filter and carbon (what the carbon gives back aside). */
export function passShare(net: TransportNetwork, k: number, p: number): number {
  const load = net.carbonOnPath[k * net.paths + p]!;
  return net.pass[k * net.paths + p]! * (load < 0 ? 1 : 1 - net.carbon[load]!.efficiency);
}

function addMixing(net: TransportNetwork, heat: HeatState, matrix: Float64Array, offset: number): void {
  const { exchangeAt, changeAt, referenceDensity } = net;
  for (let i = 0; i < exchangeAt.a.length; i += 1) {
    const flow = heat.frozenExchangeFlow[i]!;
    addAt(matrix, offset + exchangeAt.aa[i]!, flow);
    addAt(matrix, offset + exchangeAt.bb[i]!, flow);
    addAt(matrix, offset + exchangeAt.ab[i]!, -flow);
    addAt(matrix, offset + exchangeAt.ba[i]!, -flow);
  }
  for (let i = 0; i < changeAt.a.length; i += 1) {
    const enters = heat.frozenChangeIn[i]! / referenceDensity;
    const leaves = heat.frozenChangeOut[i]! / referenceDensity;
    addAt(matrix, offset + changeAt.aa[i]!, leaves);
    addAt(matrix, offset + changeAt.ab[i]!, -enters);
    addAt(matrix, offset + changeAt.bb[i]!, enters);
    addAt(matrix, offset + changeAt.ba[i]!, -leaves);
  }
}

function addAt(matrix: Float64Array, at: number, value: number): void {
  matrix[at] = matrix[at]! + value;
}
