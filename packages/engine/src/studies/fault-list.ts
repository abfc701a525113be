// The single faults that a cabinet can have, by kind of part.

import type { Cabinet } from '../cabinet/cabinet.ts';
import type { Fault } from './fault.ts';
import { faultsAround, faultsOfDoors, faultsOfMachines } from './faults-of-days.ts';
import { faultsOfHeats, faultsOfPaths, faultsOfSensors } from './faults-of-parts.ts';

/** @param asked - Days in which faults of a day are written; all unless given. */
export function faultsOf(cabinet: Cabinet, asked: readonly string[] = Object.keys(cabinet.days)): Fault[] {
  const days = Object.fromEntries(asked.map((id) => [id, cabinet.days[id]!]));
  const those = { ...cabinet, days };
  return [
    ...faultsOfPaths(cabinet),
    ...faultsOfSensors(cabinet),
    ...faultsOfHeats(cabinet),
    ...faultsOfMachines(those),
    ...faultsOfDoors(those),
    ...faultsAround(those),
  ];
}
