// Contaminant into every place at given concentrations and flows, units/s. Hot loop: no checks, no allocation.
// Air that moves m kg/s carries m/rho_ref m³/s at the concentration of the zone it comes from; filters work both ways.

import type { AirState } from './air-network.ts';
import type { HeatState } from './heat-state.ts';
import type { PlacePairs, TransportNetwork } from './transport-network.ts';
import type { Streams, TransportState } from './transport-state.ts';

/** `c`: concentrations by cell, then loads. `into`: units/s by cell (rates where held), then kg/(kg s). `y`: temperatures. */
export function evaluateTransport(
  net: TransportNetwork,
  state: TransportState,
  air: AirState,
  heat: HeatState,
  c: Float64Array,
  y: Float64Array,
  time: number,
  into: Float64Array,
): void {
  const { count, zones, solved } = net;
  into.set(state.emission);
  for (let i = 0; i < state.fadingCount; i += 1) {
    const cell = state.fadingCell[i]!;
    into[cell] = into[cell]! + state.fadingRate[i]! * Math.exp((state.fadingStart[i]! - time) / state.fadingTime[i]!);
  }
  findStreams(net, state.streams, air, heat);
  const { from, to, volume, filter, count: streams } = state.streams;
  const { pass } = net;
  const width = net.paths + 1;
  for (let k = 0; k < count; k += 1) {
    const base = k * zones;
    const filters = k * width;
    for (let s = 0; s < streams; s += 1) {
      const source = base + from[s]!;
      const target = base + to[s]!;
      const leaving = volume[s]! * c[source]!;
      into[source] = into[source]! - leaving;
      into[target] = into[target]! + leaving * pass[filters + filter[s]!]!;
    }
    for (let cell = base; cell < base + solved; cell += 1) {
      into[cell] = into[cell]! - (net.deposition[cell]! + net.coagulation[cell]! * c[cell]!) * c[cell]!;
    }
  }
  recirculate(net, state, c, into);
  catchOnCarbon(net, state, air, c, y, into);
  for (let k = 0; k < count; k += 1) {
    for (let cell = k * zones + solved; cell < (k + 1) * zones; cell += 1) into[cell] = state.outsideRate[cell]!;
  }
}

/** Lists what moves, once for all contaminants. Between held zones nothing needs to be known. */
function findStreams(net: TransportNetwork, streams: Streams, air: AirState, heat: HeatState): void {
  const { pathAt, exchangeAt, changeAt, paths } = net;
  const perMass = 1 / net.referenceDensity;
  streams.count = 0;
  const end = air.openCount + air.fixedCount;
  for (let i = 0; i < end; i += 1) {
    const p = air.openList[i]!;
    const flow = air.flow[p]!;
    const back = air.counter[p]!;
    addStreams(
      net,
      streams,
      pathAt,
      p,
      p,
      perMass * (flow > 0 ? flow + back : back),
      perMass * (flow < 0 ? back - flow : back),
    );
  }
  for (let i = 0; i < exchangeAt.count; i += 1) {
    const flow = heat.exchangeFlow[i]!;
    addStreams(net, streams, exchangeAt, i, paths, flow, flow);
  }
  for (let i = 0; i < changeAt.count; i += 1) {
    addStreams(net, streams, changeAt, i, paths, perMass * heat.changeOut[i]!, perMass * heat.changeIn[i]!);
  }
}

function addStreams(
  net: TransportNetwork,
  streams: Streams,
  pairs: PlacePairs,
  i: number,
  filter: number,
  forward: number,
  backward: number,
): void {
  const a = pairs.a[i]!;
  const b = pairs.b[i]!;
  if (a >= net.solved && b >= net.solved) return;
  if (forward > 0) {
    const s = streams.count++;
    streams.from[s] = a;
    streams.to[s] = b;
    streams.volume[s] = forward;
    streams.filter[s] = filter;
    streams.entry[s] = pairs.ba[i]!;
  }
  if (backward > 0) {
    const s = streams.count++;
    streams.from[s] = b;
    streams.to[s] = a;
    streams.volume[s] = backward;
    streams.filter[s] = filter;
    streams.entry[s] = pairs.ab[i]!;
  }
}

function recirculate(net: TransportNetwork, state: TransportState, c: Float64Array, into: Float64Array): void {
  const many = net.recirculationFlow.length;
  for (let r = 0; r < many; r += 1) {
    if (state.recirculationOn[r] === 0) continue;
    for (let k = 0; k < net.count; k += 1) {
      const cell = k * net.zones + net.recirculationPlace[r]!;
      into[cell] = into[cell]! - net.recirculationFlow[r]! * net.recirculationEfficiency[k * many + r]! * c[cell]!;
    }
  }
}

/** Carbon stands behind the filter of its path or recirculation. */
function catchOnCarbon(
  net: TransportNetwork,
  state: TransportState,
  air: AirState,
  c: Float64Array,
  y: Float64Array,
  into: Float64Array,
): void {
  const { carbon, cells, zones } = net;
  for (let l = 0; l < carbon.length; l += 1) {
    const { law, slot, contaminant: k, path, recirculation, efficiency, perUnit } = carbon[l]!;
    state.carbonStar[l] = law(c[cells + l]!, y[slot]!);
    let caught = 0;
    if (path >= 0) {
      const flow = air.flow[path]! / net.referenceDensity;
      const source = k * zones + (flow >= 0 ? net.pathAt.a[path]! : net.pathAt.b[path]!);
      const target = k * zones + (flow >= 0 ? net.pathAt.b[path]! : net.pathAt.a[path]!);
      const arriving = net.pass[k * (net.paths + 1) + path]! * c[source]!;
      caught = Math.abs(flow) * efficiency * (arriving - state.carbonStar[l]!);
      into[target] = into[target]! - caught;
    } else if (state.recirculationOn[recirculation] === 1) {
      const cell = k * zones + net.recirculationPlace[recirculation]!;
      const filter = net.recirculationEfficiency[k * net.recirculationFlow.length + recirculation]!;
      caught = net.recirculationFlow[recirculation]! * efficiency * ((1 - filter) * c[cell]! - state.carbonStar[l]!);
      into[cell] = into[cell]! - caught;
    }
    into[cells + l] = perUnit * caught;
  }
}
