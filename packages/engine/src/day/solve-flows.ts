// The air network alone: flows and pressures at the network's first moment.

import type { Network } from '../network/network.ts';
import { newDay } from './day.ts';
import { compile } from './plant.ts';
import type { Warning } from './record.ts';
import { settle } from './switching.ts';

export interface FlowSolution {
  /** Pa at each zone's own height. */
  readonly pressures: Readonly<Record<string, number>>;
  /** kg/s, + from `from` to `to`. */
  readonly flows: Readonly<Record<string, number>>;
  /** kg/s against the net flow of tall openings. */
  readonly counterFlows: Readonly<Record<string, number>>;
  /** Share of full speed, by fan. */
  readonly fanSpeeds: Readonly<Record<string, number>>;
  readonly warnings: readonly Warning[];
}

/**
 * Solves the flows at the network's own temperatures, or with some zones at others.
 *
 * @param temperatures - K, by zone; zones that are not named keep what the network says.
 * @throws Error when a zone is named that the network does not have.
 */
export function solveFlows(network: Network, temperatures: Readonly<Record<string, number>> = {}): FlowSolution {
  for (const name of Object.keys(temperatures)) {
    if (!network.zones.some((zone) => zone.name === name)) throw new Error(`The network has no zone "${name}"`);
  }
  const zones = network.zones.map((zone) => {
    const kelvin = temperatures[zone.name];
    return kelvin === undefined
      ? zone
      : { ...zone, temperature: { kind: 'fixed' as const, profile: [[0, kelvin] as const] } };
  });
  const day = newDay(compile({ ...network, zones }));
  settle(day, true);
  const { air, plant } = day;
  const byPath = (values: Float64Array): Record<string, number> =>
    Object.fromEntries(network.paths.map(({ name }, p) => [name, values[p]!]));
  return {
    pressures: Object.fromEntries(network.zones.map(({ name }, z) => [name, air.pressure[z]!])),
    flows: byPath(air.flow),
    counterFlows: byPath(air.counter),
    fanSpeeds: Object.fromEntries(plant.air.fans.flat().map(({ name }, f) => [name, air.speed[f]!])),
    warnings: day.warnings,
  };
}
