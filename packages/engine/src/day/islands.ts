// Which zones' pressures are unknown. Zones tied to one another by open paths form an island; an island without a zone of
// fixed pressure has no net flow and one arbitrary pressure. Fixed flows tie nothing: they pass whatever the pressures,
// unless they would pump an island up or empty it. Then they are held back to what the island's other fixed flows allow.

import type { AirNetwork, AirState } from './air-network.ts';
import { CRACK, FIXED, ORIFICE } from './air-network.ts';
import { entryAt } from './sparse-lu.ts';

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
  state.unknowns = 0;
  state.blank.fill(0);
  for (let z = 0; z < zoneCount; z += 1) {
    const row = air.rowOf[z]!;
    const known = row < 0 || (root(z) === z && anchored[z] === 0);
    state.unknownOf[z] = known ? air.pattern.size : row;
    if (!known) state.unknowns += 1;
    // The row of a zone that leads has no flows: its pressure stays.
    else if (row >= 0) state.blank[row] = 1;
  }
  placeDucts(air, state);
  setFixedFlows(air, state, (zone) => (anchored[root(zone)] === 1 ? -1 : root(zone)));
}

/** Where the slopes of each duct's flows go in the matrix. */
function placeDucts({ pattern, ducts }: AirNetwork, { unknownOf, ductAt }: AirState): void {
  const place = (row: number, column: number): number =>
    row === pattern.size || column === pattern.size ? pattern.length : entryAt(pattern, row, column);
  for (let d = 0; d < ducts.count; d += 1) {
    const a = unknownOf[ducts.a[d]!]!;
    const b = unknownOf[ducts.b[d]!]!;
    ductAt.aa[d] = place(a, a);
    ductAt.bb[d] = place(b, b);
    ductAt.ab[d] = place(a, b);
    ductAt.ba[d] = place(b, a);
  }
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
