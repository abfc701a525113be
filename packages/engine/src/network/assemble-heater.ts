// A heater that holds its air at a temperature, as a bed is held: full power until then, afterwards what the air loses. Switching
// it about a set-point instead would turn a bay's kilogram of air on and off every few seconds, all day long.

import type { Draft } from './draft.ts';

type Window = readonly [start: number, end: number];

/** @param windows - When it may heat, s. */
export function holdAir(
  draft: Draft,
  {
    name,
    zone,
    watts,
    set,
  }: { readonly name: string; readonly zone: string; readonly watts: number; readonly set: number },
  windows: readonly Window[],
): void {
  draft.machines.push({
    name,
    bed: { node: zone, powerMax: watts },
    modes: [
      { name: 'idle', powers: [], emissions: [] },
      { name: 'holding', bedSet: set, powers: [], emissions: [] },
    ],
  });
  for (const [start, end] of windows) draft.schedule.push({ machine: name, mode: 'holding', start, end });
}
