// The extinguisher at hand: whether its agent suits live equipment, and what its gas does to those in the room. One that is only
// listed among the fittings counts too, by its agent; how much it holds is not said there.

import { GAS_CONSTANT_AIR } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Agent } from '../../cabinet/protection.ts';
import { causes } from '../causes.ts';
import type { Measure, Remedy, Step } from '../measure.ts';
import { setAgent } from '../remedy-edits.ts';
import { agentLimit, caution, gasLimit } from './limits.ts';

/** Those that suit, and what comes with each. */
const SUITS: Partial<Readonly<Record<Agent, string>>> = {
  'carbon dioxide': 'it does not conduct and leaves nothing, but takes the air to breathe in a small room',
  'clean agent': 'it does not conduct and leaves nothing',
  powder: 'it does not conduct and leaves the air, but ruins every machine that it reaches',
};

/** Molar mass of carbon dioxide by that of air, and a room at 20 °C and standard pressure. */
const CARBON_DIOXIDE = 44.01 / 28.9644;
const ROOM = { temperature: 293.15, pressure: 101_325 };

export function extinguisher(cabinet: Cabinet): Measure[] {
  const told = toldOf(cabinet);
  if (told === undefined) return [];
  const { agent, mass, path } = told;
  const base = { trade: 'fire', part: 'room', cause: causes.wrongExtinguisher } as const;
  const instead = (other: Agent): readonly Remedy[] => [
    { says: `${other} in its place: ${SUITS[other]!}`, edits: [setAgent(path, other)] },
  ];
  const suits: Measure = {
    ...base,
    quantity: 'extinguisher-agent',
    title: 'extinguisher whose agent suits electrical equipment',
    value: SUITS[agent] === undefined ? 0 : 1,
    unit: 'number',
    limit: agentLimit(cabinet),
    steps: [
      {
        text: `${agent}: ${SUITS[agent] ?? 'it conducts, unless its label allows live equipment (EN 3-7, dielectric test), or covers only a pan'}`,
        inputs: [path.join('.')],
      },
      {
        text: 'only at the first flame, with the power off, the exit behind you and the door opened a crack; else out, shut the room, call',
      },
      caution('smoke'),
      caution('fire'),
    ],
    remedies: SUITS[agent] === undefined ? instead('clean agent') : [],
    weight: 0.6,
    better: 'higher',
  };
  if (agent !== 'carbon dioxide' || mass === undefined) return [suits];
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
      remedies: instead('powder'),
      weight: 0.8,
      better: 'lower',
    },
  ];
}

/** What the file says of one, where it says it. */
function toldOf({
  protection,
  fittings,
}: Cabinet): { readonly agent: Agent; readonly mass?: number; readonly path: readonly string[] } | undefined {
  if (protection.extinguisher !== undefined)
    return { ...protection.extinguisher, path: ['protection', 'extinguisher'] };
  const [first] = Object.entries(fittings).flatMap(([id, { what, agent }]) =>
    what === 'extinguisher' && agent !== undefined ? [{ agent: agent as Agent, path: ['fittings', id] }] : [],
  );
  return first;
}
