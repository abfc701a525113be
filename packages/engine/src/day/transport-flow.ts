// Contaminant into every zone at given concentrations and flows, units/s. Hot loop: no checks, no allocation.
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
  const { count, zones, carbon } = net;
  const cells = count * zones;
  into.set(state.emission);
  for (let i = 0; i < state.fadingCount; i += 1) {
    const cell = state.fadingCell[i]!;
    into[cell] = into[cell]! + state.fadingRate[i]! * Math.exp((state.fadingStart[i]! - time) / state.fadingTime[i]!);
  }
  for (let l = 0; l < carbon.length; l += 1) {
    const { law, slot } = carbon[l]!;
    state.carbonStar[l] = law(c[cells + l]!, y[slot]!);
    into[cells + l] = 0;
  }
  for (let k = 0; k < count; k += 1) {
    const base = k * zones;
    alongPaths(net, state, air, c, into, k, base);
    betweenZones(net, heat, c, into, base);
    for (let z = 0; z < zones; z += 1) {
      const cell = base + z;
      const lost = (net.deposition[cell]! + net.coagulation[cell]! * c[cell]!) * c[cell]!;
      into[cell] = into[cell]! - lost;
    }
    recirculate(net, state, c, into, k, base);
  }
  for (let k = 0; k < count; k += 1) {
    for (let z = 0; z < zones; z += 1) {
      if (net.free[z] === 0) into[k * zones + z] = state.outsideRate[k * zones + z]!;
    }
  }
}

function alongPaths(
  net: TransportNetwork,
  state: TransportState,
  air: AirState,
  c: Float64Array,
  into: Float64Array,
  k: number,
  base: number,
): void {
  const { a, b } = net.pathAt;
  const end = air.openCount + air.fixedCount;
  for (let i = 0; i < end; i += 1) {
    const p = air.openList[i]!;
    const flow = air.flow[p]!;
    const back = air.counter[p]!;
    const forward = (flow > 0 ? flow + back : back) / net.referenceDensity;
    const backward = (flow < 0 ? back - flow : back) / net.referenceDensity;
    if (forward > 0) pass(net, state, c, into, k, p, base + a[p]!, base + b[p]!, forward);
    if (backward > 0) pass(net, state, c, into, k, p, base + b[p]!, base + a[p]!, backward);
  }
}

function pass(
  net: TransportNetwork,
  state: TransportState,
  c: Float64Array,
  into: Float64Array,
  k: number,
  p: number,
  source: number,
  target: number,
  volume: number,
): void {
  const leaving = volume * c[source]!;
  let arriving = leaving * net.pass[k * net.paths + p]!;
  const load = net.carbonOnPath[k * net.paths + p]!;
  if (load >= 0) {
    const { efficiency, perUnit } = net.carbon[load]!;
    const caught = efficiency * (arriving - volume * state.carbonStar[load]!);
    arriving -= caught;
    const at = net.count * net.zones + load;
    into[at] = into[at]! + perUnit * caught;
  }
  into[source] = into[source]! - leaving;
  into[target] = into[target]! + arriving;
}

function betweenZones(net: TransportNetwork, heat: HeatState, c: Float64Array, into: Float64Array, base: number): void {
  const { exchangeAt, changeAt, referenceDensity } = net;
  for (let i = 0; i < exchangeAt.a.length; i += 1) {
    const one = base + exchangeAt.a[i]!;
    const other = base + exchangeAt.b[i]!;
    const moved = heat.exchangeFlow[i]! * (c[one]! - c[other]!);
    into[one] = into[one]! - moved;
    into[other] = into[other]! + moved;
  }
  for (let i = 0; i < changeAt.a.length; i += 1) {
    const zone = base + changeAt.a[i]!;
    const other = base + changeAt.b[i]!;
    const enters = (heat.changeIn[i]! / referenceDensity) * c[other]!;
    const leaves = (heat.changeOut[i]! / referenceDensity) * c[zone]!;
    into[zone] = into[zone]! + enters - leaves;
    into[other] = into[other]! + leaves - enters;
  }
}

function recirculate(
  net: TransportNetwork,
  state: TransportState,
  c: Float64Array,
  into: Float64Array,
  k: number,
  base: number,
): void {
  const count = net.recirculationFlow.length;
  for (let r = 0; r < count; r += 1) {
    if (state.recirculationOn[r] === 0) continue;
    const cell = base + net.recirculationZone[r]!;
    const volume = net.recirculationFlow[r]!;
    let removed = volume * net.recirculationEfficiency[k * count + r]! * c[cell]!;
    const load = net.carbonOnRecirculation[k * count + r]!;
    if (load >= 0) {
      const { efficiency, perUnit } = net.carbon[load]!;
      const caught = efficiency * (volume * c[cell]! - removed - volume * state.carbonStar[load]!);
      removed += caught;
      const at = net.count * net.zones + load;
      into[at] = into[at]! + perUnit * caught;
    }
    into[cell] = into[cell]! - removed;
  }
}
