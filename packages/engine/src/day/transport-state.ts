// What of the contaminants changes during a day.

import type { TransportNetwork } from './transport-network.ts';

export interface TransportState {
  /** Concentrations by contaminant and zone, then loads of carbon beds. */
  readonly recirculationOn: Uint8Array;
  /** Units/s that do not change between switches, by contaminant and zone. */
  readonly emission: Float64Array;
  /** Bursts and tails that are fading: rate·share·exp(-(t - start)/time) into a cell. */
  fadingCount: number;
  fadingCell: Int32Array;
  fadingRate: Float64Array;
  fadingStart: Float64Array;
  fadingTime: Float64Array;
  /** Rate of held zones, units/(m³ s), by cell. */
  readonly outsideRate: Float64Array;
  outsideMoves: boolean;
  /** Equilibrium concentration over each carbon bed at the last evaluation. */
  readonly carbonStar: Float64Array;
  readonly frozenConcentration: Float64Array;
  readonly matrix: Float64Array;
}

export function newTransportState(network: TransportNetwork, recirculations: number): TransportState {
  const cells = network.count * network.zones;
  return {
    recirculationOn: new Uint8Array(recirculations),
    emission: new Float64Array(cells),
    fadingCount: 0,
    fadingCell: new Int32Array(16),
    fadingRate: new Float64Array(16),
    fadingStart: new Float64Array(16),
    fadingTime: new Float64Array(16),
    outsideRate: new Float64Array(cells),
    outsideMoves: false,
    carbonStar: new Float64Array(network.carbon.length),
    frozenConcentration: new Float64Array(cells),
    matrix: new Float64Array(network.count * network.valueCount),
  };
}

/** Adds a course that fades from `rate` with the time constant `time` since `start`. */
export function addFading(state: TransportState, cell: number, rate: number, start: number, time: number): void {
  const at = state.fadingCount;
  if (at === state.fadingCell.length) {
    state.fadingCell = grow(state.fadingCell, Int32Array);
    state.fadingRate = grow(state.fadingRate, Float64Array);
    state.fadingStart = grow(state.fadingStart, Float64Array);
    state.fadingTime = grow(state.fadingTime, Float64Array);
  }
  state.fadingCell[at] = cell;
  state.fadingRate[at] = rate;
  state.fadingStart[at] = start;
  state.fadingTime[at] = time;
  state.fadingCount = at + 1;
}

function grow<Numbers extends Int32Array | Float64Array>(old: Numbers, make: new (length: number) => Numbers): Numbers {
  const wide = new make(2 * old.length);
  wide.set(old);
  return wide;
}
