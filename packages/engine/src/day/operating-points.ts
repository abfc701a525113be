// Every flow at which a fan path can run, with the rest of the network answering: what the search for pressures takes one of.

import type { AirPath, FixedFlow, Network } from '../network/network.ts';
import { type Day, newDay } from './day.ts';
import { crossings, type OperatingPoint, resistanceAt } from './fan-branch.ts';
import { branchResistance, setDensities } from './path-flow.ts';
import { compile } from './plant.ts';
import { solvePressures } from './pressures.ts';
import { settle } from './switching.ts';

export interface FanPoints {
  readonly path: string;
  /** In rising order of flow: m³/s at the density where the air comes from, kg/s, and whether the fan stays there. */
  readonly points: readonly (OperatingPoint & { readonly massFlow: number })[];
}

/** Flows tried between the two ends of what a fan can do. */
const TRIALS = 600;
const HALVINGS = 80;

/** Operating points of every open fan path at the network's first moment. */
export function operatingPoints(network: Network): readonly FanPoints[] {
  const day = newDay(compile(network));
  settle(day, true);
  return network.paths.flatMap((path, p) => {
    if (path.type !== 'fan-path' || day.air.open[p] === 0) return [];
    const held = [path.from, path.to].every((name) => isHeld(network, name));
    const points = held ? betweenHeldZones(day, p) : withTheRest(network, day, p);
    return [{ path: path.name, points: points.map((point) => ({ ...point, massFlow: massOf(day, p, point.flow) })) }];
  });
}

function isHeld(network: Network, name: string): boolean {
  return network.zones.some((zone) => zone.name === name && zone.pressure.kind === 'fixed');
}

function massOf({ plant, air }: Day, p: number, flow: number): number {
  return flow * air.density[flow >= 0 ? plant.air.from[p]! : plant.air.to[p]!]!;
}

function betweenHeldZones(day: Day, p: number): OperatingPoint[] {
  const { plant, air } = day;
  const law = branchResistance(plant.air, air, p);
  const dp = air.pressure[plant.air.from[p]!]! - air.pressure[plant.air.to[p]!]! + air.head[p]!;
  return crossings(law, dp + law.scale * law.curve.p0);
}

/** Puts a known flow in the path's place and looks where the pressures that it causes are those which the path needs. */
function withTheRest(network: Network, day: Day, p: number): OperatingPoint[] {
  const { plant, air } = day;
  const law = branchResistance(plant.air, air, p);
  const rest = restOf(network, day, p);
  // Where nothing can follow, the zone fills until the fan stands against its own pressure.
  if (rest === undefined) return [{ flow: 0, stable: true }];
  /** What the path needs at a flow less what the network gives it. */
  const excess = (flow: number): number => {
    const dp = rest(massOf(day, p, flow));
    return resistanceAt(law, flow) - law.scale * law.curve.p0 - dp;
  };
  const most = largestFlow(day, p);
  const points: OperatingPoint[] = [];
  let before = excess(-most);
  let from = -most;
  for (let k = 1; k <= 2 * TRIALS; k += 1) {
    const to = most * (k / TRIALS - 1);
    const after = excess(to);
    if (before === 0) points.push({ flow: from, stable: after > 0 });
    else if (before * after < 0) points.push({ flow: rootBetween(excess, from, to, before), stable: after > 0 });
    from = to;
    before = after;
  }
  return points;
}

/** Pressure difference that the rest of the network leaves the path when it passes a mass flow; undefined if it can pass none. */
function restOf(network: Network, day: Day, p: number): ((massFlow: number) => number) | undefined {
  const path: AirPath = network.paths[p]!;
  const { name, from, to, z, filterEfficiency } = path;
  const stand: FixedFlow = { type: 'fixed-flow', name, from, to, z, filterEfficiency, open: 'always', flow: 1 };
  const paths = network.paths.map((one, index) => (index === p ? stand : one));
  const other = newDay(compile({ ...network, paths }));
  settle(other, true);
  const { air, plant } = other;
  if (air.heldBack.includes(p)) return undefined;
  const head = day.air.head[p]!;
  return (massFlow) => {
    air.flow[p] = massFlow;
    setDensities(plant.air, air, other.y, plant.heat.zoneSlot);
    solvePressures(plant.air, air);
    return air.pressure[plant.air.from[p]!]! - air.pressure[plant.air.to[p]!]! + head;
  };
}

/** A flow beyond all that the fan can drive and the other paths can push back. */
function largestFlow({ plant, air }: Day, p: number): number {
  const curve = air.curves[p]!;
  const ends = [0.001, ...curve.knot.subarray(0, curve.count).map(Math.abs), 1.5 * Math.abs(air.volume[p]!)];
  if (curve.b > 0) ends.push(Math.sqrt(Math.abs(curve.p0) / curve.b));
  if (curve.a > 0) ends.push(Math.abs(curve.p0) / curve.a);
  // Other fans in parallel may drive more through this one than it would itself.
  for (let other = 0; other < plant.air.pathCount; other += 1) ends.push(Math.abs(air.volume[other]!));
  return 1.25 * Math.max(...ends);
}

function rootBetween(excess: (flow: number) => number, low: number, high: number, atLow: number): number {
  let [from, to] = [low, high];
  for (let k = 0; k < HALVINGS; k += 1) {
    const middle = 0.5 * (from + to);
    if (excess(middle) * atLow > 0) from = middle;
    else to = middle;
  }
  return 0.5 * (from + to);
}
