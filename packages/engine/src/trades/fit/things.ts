// Lamps and cameras that hang in a bay: does a machine in motion hit them?

import { type Solid, solidGap } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Lamp } from '../../cabinet/light.ts';
import { causes } from '../causes.ts';
import { movedTo } from '../machine-solids.ts';
import type { Measure, Remedy, Step } from '../measure.ts';
import { standingIn } from '../standing-machines.ts';
import { machineGap } from './limits.ts';
import { moveMachine, spoolElsewhere } from './remedies.ts';

/** Half the thickness of a lamp, and half the side of a small camera in its case, m. */
const LAMP_HALF = 0.008;
const CAMERA_HALF = 0.02;

type Place = readonly [number, number, number];

const around = ([x, y, z]: Place, [a, b, c]: Place): Solid => ({
  from: [x - a, y - b, z - c],
  to: [x + a, y + b, z + c],
});

function lampSolid({ at, shape, faces, along }: Lamp): Solid {
  if (shape.kind === 'point') return around(at, [LAMP_HALF, LAMP_HALF, LAMP_HALF]);
  if (shape.kind === 'strip') {
    const half = shape.length / 2;
    return around(at, [
      along === 'x' ? half : LAMP_HALF,
      along === 'y' ? half : LAMP_HALF,
      along === 'z' ? half : LAMP_HALF,
    ]);
  }
  const [w, h] = [shape.width / 2, shape.height / 2];
  if (faces === 'left' || faces === 'right') return around(at, [LAMP_HALF, w, h]);
  return faces === 'up' || faces === 'down' ? around(at, [w, h, LAMP_HALF]) : around(at, [w, LAMP_HALF, h]);
}

export function things(cabinet: Cabinet): Measure[] {
  const hanging = [
    ...Object.entries(cabinet.light.lamps).map(([id, lamp]) => ({
      id,
      bay: lamp.bay,
      what: 'lamp',
      solid: lampSolid(lamp),
      input: `light.lamps.${id}.at`,
    })),
    ...Object.entries(cabinet.cameras).flatMap(([id, { bay, at }]) =>
      at === undefined
        ? []
        : [
            {
              id,
              bay,
              what: 'camera',
              solid: around(at, [CAMERA_HALF, CAMERA_HALF, CAMERA_HALF]),
              input: `cameras.${id}.at`,
            },
          ],
    ),
  ];
  return hanging.flatMap(({ id, bay, what, solid, input }) => {
    const machines = standingIn(cabinet, bay);
    if (machines.length === 0) return [];
    let [gap, machine, part] = [Infinity, machines[0]!, machines[0]!.parts[0]!];
    for (const standing of machines) {
      const from = movedTo(solid, [-standing.at[0], -standing.at[1]]);
      for (const candidate of standing.parts) {
        const found = solidGap(from, candidate);
        if (found < gap) [gap, machine, part] = [found, standing, candidate];
      }
    }
    return [
      {
        trade: 'fit',
        quantity: `${what}-gap`,
        part: id,
        title: `distance from the ${what} to the nearest machine, in full motion`,
        value: gap,
        unit: 'length',
        limit: machineGap(cabinet),
        better: 'higher',
        get steps(): readonly Step[] {
          return [
            { text: `where the ${what} hangs`, inputs: [input] },
            {
              text: `nearest: ${part.what} of ${machine.id} (${part.when})`,
              value: gap,
              unit: 'length',
              inputs: part.inputs,
            },
          ];
        },
        get remedies(): readonly Remedy[] {
          return [...moveMachine(cabinet, bay, machine), ...(part.what === 'spool' ? spoolElsewhere(machine.id) : [])];
        },
        cause: causes.bayTooSmall,
        weight: 0.6,
      } satisfies Measure,
    ];
  });
}
