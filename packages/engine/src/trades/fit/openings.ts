// Holes and fans of a bay: is what they blow or draw covered by a machine that moves before them?

import { type Solid, solidGap } from '@stillair/physics';
import type { Cabinet, CabinetPath } from '../../cabinet/cabinet.ts';
import { causes } from '../causes.ts';
import { movedTo } from '../machine-solids.ts';
import type { Measure, Remedy, Step } from '../measure.ts';
import { fansIn, OUTSIDE } from '../plant.ts';
import { standingIn } from '../standing-machines.ts';
import { openingGap } from './limits.ts';
import { moveMachine } from './remedies.ts';

export function openings(cabinet: Cabinet): Measure[] {
  return Object.entries(cabinet.paths).flatMap(([id, path]) => {
    const outer = OUTSIDE.includes(path.from) ? path.to : path.from;
    const bay = cabinet.bays[outer];
    if (bay === undefined || !(OUTSIDE.includes(path.from) || OUTSIDE.includes(path.to))) return [];
    const machines = standingIn(cabinet, outer);
    if (machines.length === 0) return [];
    const hole = openingSolid(cabinet, path, bay.x[0], bay.z[0]);
    let [gap, machine, part] = [Infinity, machines[0]!, machines[0]!.parts[0]!];
    for (const standing of machines) {
      const from = movedTo(hole, [-standing.at[0], -standing.at[1]]);
      for (const candidate of standing.parts) {
        const found = solidGap(from, candidate);
        if (found < gap) [gap, machine, part] = [found, standing, candidate];
      }
    }
    const fan = Math.max(0, ...fansIn(path).map(({ diameter }) => diameter));
    return [
      {
        trade: 'fit',
        quantity: 'opening-gap',
        part: id,
        title: 'distance from the opening to the nearest machine, in full motion',
        value: gap,
        unit: 'length',
        limit: openingGap(
          cabinet,
          fan,
          Math.min(
            hole.to[0] - hole.from[0] || Infinity,
            hole.to[1] - hole.from[1] || Infinity,
            hole.to[2] - hole.from[2] || Infinity,
          ),
        ),
        better: 'higher',
        get steps(): readonly Step[] {
          return [
            { text: `opening in the ${path.place.face}`, inputs: [`paths.${id}.place`] },
            {
              text: `nearest: ${part.what} of ${machine.id} (${part.when})`,
              value: gap,
              unit: 'length',
              inputs: part.inputs,
            },
          ];
        },
        get remedies(): readonly Remedy[] {
          return moveMachine(cabinet, outer, machine);
        },
        cause: causes.openingCovered,
        weight: 0.4,
      } satisfies Measure,
    ];
  });
}

/** Half the side of an opening whose parts do not say how large it is, m. */
const HALF = 0.03;

/** The opening as a thin box in the bay's own corner. */
function openingSolid({ inside }: Cabinet, { place, parts }: CabinetPath, x0: number, z0: number): Solid {
  const [hole] = parts;
  const [across, up] =
    hole?.part !== 'hole'
      ? [HALF, HALF]
      : hole.section.shape === 'round'
        ? [hole.section.diameter / 2, hole.section.diameter / 2]
        : [hole.section.width / 2, hole.section.height / 2];
  const { face, along } = place;
  const z = place.z - z0;
  const flat = (y: number): Solid => ({ from: [along - x0 - across, y, z - up], to: [along - x0 + across, y, z + up] });
  switch (face) {
    case 'front':
      return flat(0);
    case 'back':
      return flat(inside.depth);
    case 'left':
    case 'right': {
      const x = (face === 'left' ? 0 : inside.width) - x0;
      return { from: [x, along - across, z - up], to: [x, along + across, z + up] };
    }
    default: {
      const level = face === 'top' ? inside.height - z0 : 0;
      return {
        from: [along - x0 - across, inside.depth / 2 - up, level],
        to: [along - x0 + across, inside.depth / 2 + up, level],
      };
    }
  }
}
