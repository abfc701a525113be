// Which zones' pressures are unknown. Zones tied to one another by open paths form an island; an island without a zone of
// fixed pressure has no net flow and one arbitrary pressure. Fixed flows tie nothing: they pass whatever the pressures,
// unless they would pump an island up or empty it. Then they are held back to what the island's other fixed flows allow.

import type { AirNetwork, AirState } from './air-network.ts';
import { CRACK, FIXED, ORIFICE } from './air-network.ts';

/** Shares below this count as held back. */
const FULL = 1 - 1e-9;

/** To be called whenever a path has opened or shut. */
export function findIslands(air: AirNetwork, state: AirState): void {
  const { zoneCount, order, kind, from, to } = air;
  const island = new Int32Array(zoneCount);
  for (let z = 0; z < zoneCount; z += 1) island[z] = z;
  const root = (zone: number): number => {
    let z = zone;
    while (island[z] !== z) z = island[z] = island[island[z]!]!;
    return z;
  };
  state.openCount = state.fixedCount = 0;
  for (const p of order) {
    state.flow[p] = state.counter[p] = state.slope[p] = 0;
    if (state.open[p] === 0 || kind[p] === FIXED || resists(air, p)) continue;
    state.openList[state.openCount++] = p;
    const a = root(from[p]!);
    const b = root(to[p]!);
    // The lower number leads, so that the leader does not depend on the order of the paths.
    if (a !== b) island[Math.max(a, b)] = Math.min(a, b);
  }
  for (const p of order) {
    if (state.open[p] === 1 && kind[p] === FIXED) state.openList[state.openCount + state.fixedCount++] = p;
  }
  const anchored = new Uint8Array(zoneCount);
  for (let z = 0; z < zoneCount; z += 1) if (air.fixedPressure[z] === 1) anchored[root(z)] = 1;
  let unknowns = 0;
  for (let z = 0; z < zoneCount; z += 1) {
    const leads = root(z) === z && anchored[z] === 0;
    state.unknownOf[z] = air.fixedPressure[z] === 1 || leads ? -1 : unknowns++;
  }
  for (let z = 0; z < zoneCount; z += 1) if (state.unknownOf[z] === -1) state.unknownOf[z] = unknowns;
  state.unknowns = unknowns;
  setFixedFlows(air, state, (zone) => (anchored[root(zone)] === 1 ? -1 : root(zone)));
}

/** A hole of no size is no path. */
function resists(air: AirNetwork, p: number): boolean {
  return (air.kind[p] === ORIFICE || air.kind[p] === CRACK) && !(air.coefficient[p]! > 0);
}

function setFixedFlows(air: AirNetwork, state: AirState, sealedIsland: (zone: number) => number): void {
  const { from, to, coefficient, zoneCount } = air;
  const list = state.openList.subarray(state.openCount, state.openCount + state.fixedCount);
  const share = new Float64Array(list.length).fill(1);
  const into = new Float64Array(zoneCount);
  const out = new Float64Array(zoneCount);
  // Every round can only lower shares; flows in a row need as many rounds as the row is long.
  for (let round = 0; round < 200; round += 1) {
    into.fill(0);
    out.fill(0);
    for (let i = 0; i < list.length; i += 1) {
      const p = list[i]!;
      const amount = coefficient[p]! * share[i]!;
      const a = sealedIsland(amount > 0 ? from[p]! : to[p]!);
      const b = sealedIsland(amount > 0 ? to[p]! : from[p]!);
      if (a === b) continue;
      if (a >= 0) out[a] = out[a]! + Math.abs(amount);
      if (b >= 0) into[b] = into[b]! + Math.abs(amount);
    }
    let changed = false;
    for (let i = 0; i < list.length; i += 1) {
      const p = list[i]!;
      const amount = coefficient[p]!;
      const a = sealedIsland(amount > 0 ? from[p]! : to[p]!);
      const b = sealedIsland(amount > 0 ? to[p]! : from[p]!);
      if (a === b) continue;
      const leaving = a >= 0 && out[a]! > into[a]! ? into[a]! / out[a]! : 1;
      const entering = b >= 0 && into[b]! > out[b]! ? out[b]! / into[b]! : 1;
      const factor = Math.min(leaving, entering);
      if (factor < 1 && share[i]! > 0) {
        share[i] = factor < 1e-12 ? 0 : share[i]! * factor;
        changed ||= factor < 1 - 1e-15;
      }
    }
    if (!changed) break;
  }
  const held: number[] = [];
  for (let i = 0; i < list.length; i += 1) {
    const p = list[i]!;
    state.flow[p] = coefficient[p]! * share[i]!;
    if (share[i]! < FULL && coefficient[p] !== 0) held.push(p);
  }
  state.heldBack = held;
}
