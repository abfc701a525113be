// A measured heat of everything on a machine but its bed.

import type { Machine } from './cabinet.ts';

/** Hot end, motors and electronics scaled so that they give these watts together; a machine without any stays as it is. */
export function measuredHeat(machine: Machine, watts: number): Machine {
  const { hotEnd, motors, electronics } = machine;
  const sum = hotEnd + motors + electronics;
  if (sum <= 0) return machine;
  const factor = watts / sum;
  return { ...machine, hotEnd: hotEnd * factor, motors: motors * factor, electronics: electronics * factor };
}
