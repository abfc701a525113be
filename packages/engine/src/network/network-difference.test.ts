import { describe, expect, it } from 'vitest';
import { freeZone, heldZone, networkOf, solid } from '../day/network-of.ts';
import { networkDifferences } from './network-difference.ts';

const network = networkOf({
  zones: [heldZone('room', 20), freeZone('bay', 20, 1000)],
  nodes: [solid('board', 20, 5000)],
});

describe('networkDifferences', () => {
  it('exact: order does not matter, and shares below the bound do not', () => {
    const turned = { ...network, title: 'other', zones: [...network.zones].reverse() };
    expect(networkDifferences(network, turned, 0)).toEqual([]);
    const near = { ...network, nodes: [{ ...network.nodes[0]!, heatCapacity: 5000 * (1 + 1e-10) }] };
    expect(networkDifferences(network, near, 1e-9)).toEqual([]);
  });

  it('exact: every other number, name or item is told', () => {
    const heavier = { ...network, nodes: [{ ...network.nodes[0]!, heatCapacity: 5001 }] };
    expect(networkDifferences(network, heavier, 1e-9)).toHaveLength(1);
    const renamed = { ...network, nodes: [{ ...network.nodes[0]!, name: 'plank' }] };
    expect(networkDifferences(network, renamed, 1e-9)).toHaveLength(2);
    expect(networkDifferences(network, { ...network, zones: network.zones.slice(1) }, 1e-9)).toHaveLength(2);
  });
});
