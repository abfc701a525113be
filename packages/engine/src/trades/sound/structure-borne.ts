// Shaking that a machine hands to the shell: outside every figure of this trade, so that it is told on its own.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Measure } from '../measure.ts';

/** How thick the soft layer is on which each machine stands. */
export function structureBorne({ machines }: Cabinet): Measure[] {
  return Object.entries(machines).map(([id, { standsOn }]) => {
    const soft = standsOn?.foam?.thickness ?? 0;
    return {
      trade: 'sound',
      quantity: 'soft-layer',
      part: id,
      title: 'soft layer between the machine and the shell',
      value: soft,
      unit: 'length',
      steps: [
        soft > 0
          ? { text: 'it stands on foam: little of its shaking gets into the shell' }
          : {
              text: 'it stands on the board itself, or nobody has said on what: then shelf and panels sound with its motors, and the levels here are too low',
              source: 'common practice, no source',
              inputs: [`machines.${id}.standsOn`],
            },
      ],
      remedies: [],
      weight: 0.1,
      better: 'higher',
    };
  });
}
