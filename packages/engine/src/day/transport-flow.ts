// Contaminant into every place at given concentrations and flows, units/s. Hot loop: no checks, no allocation.
// Air that moves m kg/s carries m/rho_ref m³/s at the concentration of the zone it comes from; filters work both ways.

import type { AirState } from './air-network.ts';
import type { HeatState } from './heat-state.ts';
import type { TransportNetwork } from './transport-network.ts';
import type { TransportState } from './transport-state.ts';

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
  const { count, solved } = net;
  into.set(state.emission);
  for (let i = 0; i < state.fadingCount; i += 1) {
    const cell = state.fadingCell[i]!;
    into[cell] = into[cell]! + state.fadingRate[i]! * Math.exp((state.fadingStart[i]! - time) / state.fadingTime[i]!);
  }
  findStreams(net, state, air, heat);
  const { from, to, volume, filter, count: streams } = state.streams;
  const { pass, deposition, coagulation, paths } = net;
  for (let s = 0; s < streams; s += 1) {
    const source = from[s]! * count;
    const target = to[s]! * count;
    const flow = volume[s]!;
    if (filter[s] === paths) {
      for (let k = 0; k < count; k += 1) {
        const leaving = flow * c[source + k]!;
        into[source + k] = into[source + k]! - leaving;
        into[target + k] = into[target + k]! + leaving;
      }
      continue;
    }
    const filters = filter[s]! * count;
    for (let k = 0; k < count; k += 1) {
      const leaving = flow * c[source + k]!;
      into[source + k] = into[source + k]! - leaving;
      into[target + k] = into[target + k]! + leaving * pass[filters + k]!;
    }
  }
  const firstHeld = solved * count;
  for (let cell = 0; cell < firstHeld; cell += 1) {
    into[cell] = into[cell]! - (deposition[cell]! + coagulation[cell]! * c[cell]!) * c[cell]!;
  }
  recirculate(net, state, c, into);
  catchOnCarbon(net, state, air, c, y, into);
  for (let cell = firstHeld; cell < net.cells; cell += 1) into[cell] = state.outsideRate[cell]!;
}

/** Lists what moves, once for all contaminants. */
function findStreams(net: TransportNetwork, state: TransportState, air: AirState, heat: HeatState): void {
  const { airDucts, exchangeDuct, changeDuct, ducts } = net;
  const { forward, backward, streams } = state;
  const perMass = 1 / net.referenceDensity;
  for (let d = 0; d < ducts.count; d += 1) {
    forward[d] = d < airDucts ? perMass * air.along[d]! : 0;
    backward[d] = d < airDucts ? perMass * air.against[d]! : 0;
  }
  for (let i = 0; i < exchangeDuct.length; i += 1) {
    fill(state, exchangeDuct[i]!, heat.exchangeFlow[i]!, heat.exchangeFlow[i]!);
  }
  for (let i = 0; i < changeDuct.length; i += 1) {
    fill(state, changeDuct[i]!, perMass * heat.changeOut[i]!, perMass * heat.changeIn[i]!);
  }
  let count = 0;
  for (let d = 0; d < ducts.count; d += 1) {
    if (forward[d]! > 0) {
      streams.from[count] = ducts.a[d]!;
      streams.to[count] = ducts.b[d]!;
      streams.volume[count] = forward[d]!;
      streams.filter[count] = ducts.filter[d]!;
      streams.entry[count] = ducts.ba[d]!;
      count += 1;
    }
    if (backward[d]! > 0) {
      streams.from[count] = ducts.b[d]!;
      streams.to[count] = ducts.a[d]!;
      streams.volume[count] = backward[d]!;
      streams.filter[count] = ducts.filter[d]!;
      streams.entry[count] = ducts.ab[d]!;
      count += 1;
    }
  }
  streams.count = count;
}

function fill({ forward, backward }: TransportState, duct: number, along: number, against: number): void {
  if (duct >= 0) {
    forward[duct] = forward[duct]! + along;
    backward[duct] = backward[duct]! + against;
  } else {
    forward[-1 - duct] = forward[-1 - duct]! + against;
    backward[-1 - duct] = backward[-1 - duct]! + along;
  }
}

function recirculate(net: TransportNetwork, state: TransportState, c: Float64Array, into: Float64Array): void {
  const { count, recirculationFlow, recirculationPlace, recirculationEfficiency } = net;
  for (let r = 0; r < recirculationFlow.length; r += 1) {
    if (state.recirculationOn[r] === 0) continue;
    const place = recirculationPlace[r]! * count;
    for (let k = 0; k < count; k += 1) {
      const cleaned = recirculationFlow[r]! * recirculationEfficiency[r * count + k]!;
      into[place + k] = into[place + k]! - cleaned * c[place + k]!;
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
  const { carbon, cells, count } = net;
  for (let l = 0; l < carbon.length; l += 1) {
    const { law, slot, contaminant: k, path, recirculation, efficiency, perUnit } = carbon[l]!;
    state.carbonStar[l] = law(c[cells + l]!, y[slot]!);
    let caught = 0;
    if (path >= 0) {
      const flow = air.flow[path]! / net.referenceDensity;
      const source = (flow >= 0 ? net.pathAt.a[path]! : net.pathAt.b[path]!) * count + k;
      const target = (flow >= 0 ? net.pathAt.b[path]! : net.pathAt.a[path]!) * count + k;
      const arriving = net.pass[path * count + k]! * c[source]!;
      caught = Math.abs(flow) * efficiency * (arriving - state.carbonStar[l]!);
      into[target] = into[target]! - caught;
    } else if (state.recirculationOn[recirculation] === 1) {
      const cell = net.recirculationPlace[recirculation]! * count + k;
      const filter = net.recirculationEfficiency[recirculation * count + k]!;
      caught = net.recirculationFlow[recirculation]! * efficiency * ((1 - filter) * c[cell]! - state.carbonStar[l]!);
      into[cell] = into[cell]! - caught;
    }
    into[cells + l] = perUnit * caught;
  }
}
