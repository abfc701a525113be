// The matrices of a step: volumes over γh less the derivative of the transport, with the flows frozen. Contaminants that are
// lost alike share one.

import { factor } from './sparse-lu.ts';
import type { TransportNetwork } from './transport-network.ts';
import type { TransportState } from './transport-state.ts';

/** Assembles and factors with the frozen streams; `c` are the concentrations of the step's start. */
export function assembleTransport(
  net: TransportNetwork,
  state: TransportState,
  c: Float64Array,
  inverse: number,
): void {
  const { matrix, frozenConcentration } = state;
  const { zones, solved, matrixLeader, valueCount, through } = net;
  const { from, volume, filter, entry, count } = state.frozenStreams;
  for (let cell = 0; cell < net.cells; cell += 1) frozenConcentration[cell] = c[cell]!;
  matrix.fill(0);
  for (let group = 0; group < matrixLeader.length; group += 1) {
    const k = matrixLeader[group]!;
    const offset = group * valueCount;
    const unused = offset + valueCount - 1;
    const filters = k * (net.paths + 1);
    for (let row = 0; row < solved; row += 1) {
      const cell = k * zones + row;
      const losses = net.deposition[cell]! + 2 * net.coagulation[cell]! * frozenConcentration[cell]!;
      matrix[offset + row] = net.volume[cell]! * inverse + losses;
    }
    for (let s = 0; s < count; s += 1) {
      const flow = volume[s]!;
      const leaves = from[s]! < solved ? offset + from[s]! : unused;
      const enters = offset + entry[s]!;
      matrix[leaves] = matrix[leaves]! + flow;
      matrix[enters] = matrix[enters]! - flow * through[filters + filter[s]!]!;
    }
    for (let r = 0; r < net.recirculationFlow.length; r += 1) {
      const place = net.recirculationPlace[r]!;
      if (state.recirculationOn[r] === 0 || place >= solved) continue;
      matrix[offset + place] = matrix[offset + place]! + recirculationLoss(net, k, r);
    }
    factor(net.pattern, matrix, offset);
  }
}

/** m³/s of air that the recirculation cleans entirely. */
function recirculationLoss(net: TransportNetwork, k: number, r: number): number {
  const filter = net.recirculationEfficiency[k * net.recirculationFlow.length + r]!;
  let passes = 1 - filter;
  for (const { contaminant, recirculation, efficiency } of net.carbon) {
    if (contaminant === k && recirculation === r) passes *= 1 - efficiency;
  }
  return net.recirculationFlow[r]! * (1 - passes);
}
