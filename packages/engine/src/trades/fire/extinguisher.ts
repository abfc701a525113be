// The extinguisher at hand: whether its agent suits live equipment, and what its gas does to those in the room.

import { GAS_CONSTANT_AIR } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import { causes } from '../causes.ts';
import type { Measure, Step } from '../measure.ts';
import { agentLimit, caution, gasLimit } from './limits.ts';

const SUITS: ReadonlySet<string> = new Set(['carbon dioxide', 'clean agent', 'powder']);

/** Molar mass of carbon dioxide by that of air, and a room at 20 °C and standard pressure. */
const CARBON_DIOXIDE = 44.01 / 28.9644;
const ROOM = { temperature: 293.15, pressure: 101_325 };

export function extinguisher(cabinet: Cabinet): Measure[] {
  const { extinguisher: given } = cabinet.protection;
  if (given === undefined) return [];
  const { agent, mass } = given;
  const base = { trade: 'fire', part: 'room', remedies: [], cause: causes.wrongExtinguisher } as const;
  const suits: Measure = {
    ...base,
    quantity: 'extinguisher-agent',
    title: 'extinguisher whose agent suits electrical equipment',
    value: SUITS.has(agent) ? 1 : 0,
    unit: 'number',
    limit: agentLimit(cabinet),
    steps: [
      { text: agent, inputs: ['protection.extinguisher'] },
      {
        text: 'only at the first flame, with the power off, the exit behind you and the door opened a crack; else out, shut the room, call',
      },
      caution('smoke'),
      caution('fire'),
    ],
    weight: 0.6,
    better: 'higher',
  };
  if (agent !== 'carbon dioxide') return [suits];
  const { width, depth, height } = cabinet.room.size;
  const density = (ROOM.pressure / (GAS_CONSTANT_AIR * ROOM.temperature)) * CARBON_DIOXIDE;
  const volume = width * depth * height;
  return [
    suits,
    {
      ...base,
      quantity: 'extinguisher-gas',
      title: 'carbon dioxide in the room after the extinguisher was emptied',
      value: mass / density / volume,
      unit: 'share',
      limit: gasLimit(cabinet),
      get steps(): readonly Step[] {
        return [
          { text: 'its gas', value: mass / density, unit: 'volume', formula: 'm/ρ at 20 °C, 1.84 kg/m³' },
          { text: 'room', value: volume, unit: 'volume', inputs: ['room.size'] },
          { text: 'no air change counted; near the floor it is more. Leave after use, and air the room' },
          caution('smoke'),
        ];
      },
      weight: 0.8,
      better: 'lower',
    },
  ];
}
