// What of the contaminants changes during a day.

import type { TransportNetwork } from './transport-network.ts';

/** Air that carries from one place to another, as the flows of one moment have it. */
export interface Streams {
  count: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** m³/s at the reference density. */
  readonly volume: Float64Array;
  /** Column of the filter that it passes. */
  readonly filter: Int32Array;
  /** Matrix position (to, from). */
  readonly entry: Int32Array;
}

export interface FrozenCarbon {
  /** Cell the air comes from and cell it goes to, and the matrix position (to, from) of the contaminant. */
  from: number;
  to: number;
  position: number;
  /** m³/s of air that is cleaned entirely, and the share of it that passes the filter before. */
  cleaned: number;
  pass: number;
  /** dC* over dload. */
  steepness: number;
}

export interface TransportState {
  readonly recirculationOn: Uint8Array;
  /** Units/s that do not change between switches, by cell, then zeros for the carbon loads. */
  readonly emission: Float64Array;
  /** Bursts and tails that are fading: rate·exp(-(t - start)/time) into a cell. */
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
  /** m³/s through each duct at the last evaluation. */
  readonly forward: Float64Array;
  readonly backward: Float64Array;
  /** Of the last evaluation; and of the state that the step starts from. */
  streams: Streams;
  frozenStreams: Streams;
  readonly frozenConcentration: Float64Array;
  /** Of each carbon bed as the step's matrix has it: what couples its load to the air. */
  readonly frozenCarbon: readonly FrozenCarbon[];
  readonly matrix: Float64Array;
}

export function newTransportState(net: TransportNetwork): TransportState {
  return {
    recirculationOn: new Uint8Array(net.recirculationFlow.length),
    emission: new Float64Array(net.cells + net.carbon.length),
    fadingCount: 0,
    fadingCell: new Int32Array(16),
    fadingRate: new Float64Array(16),
    fadingStart: new Float64Array(16),
    fadingTime: new Float64Array(16),
    outsideRate: new Float64Array(net.cells),
    outsideMoves: false,
    carbonStar: new Float64Array(net.carbon.length),
    forward: new Float64Array(net.ducts.count),
    backward: new Float64Array(net.ducts.count),
    streams: newStreams(net),
    frozenStreams: newStreams(net),
    frozenConcentration: new Float64Array(net.cells),
    frozenCarbon: net.carbon.map(() => ({ from: 0, to: 0, position: 0, cleaned: 0, pass: 0, steepness: 0 })),
    matrix: new Float64Array(net.count * net.valueCount),
  };
}

function newStreams(net: TransportNetwork): Streams {
  const most = 2 * net.ducts.count;
  return {
    count: 0,
    from: new Int32Array(most),
    to: new Int32Array(most),
    volume: new Float64Array(most),
    filter: new Int32Array(most),
    entry: new Int32Array(most),
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
