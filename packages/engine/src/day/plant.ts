// A network made ready to run: everything that does not change during its day. Cheap for variants of one topology, because the
// structure of the heat matrix is analysed once per topology (layout.ts).

import type { Network } from '../network/network.ts';
import { type AirNetwork, compileAir } from './air-network.ts';
import { type Controls, compileControls } from './controls.ts';
import { compileHeat, type HeatNetwork } from './heat-network.ts';
import { compileTransport, type TransportNetwork } from './transport-network.ts';

export interface Plant {
  readonly network: Network;
  readonly air: AirNetwork;
  readonly heat: HeatNetwork;
  readonly transport: TransportNetwork;
  readonly controls: Controls;
}

/** @throws Error when the network contradicts itself (names that nothing has, capacities of nothing): its maker checks that first. */
export function compile(network: Network): Plant {
  const air = compileAir(network);
  const heat = compileHeat(network, air);
  const transport = compileTransport(network, air, heat);
  return { network, air, heat, transport, controls: compileControls(network, air, heat, transport) };
}
