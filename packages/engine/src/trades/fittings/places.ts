// Where fittings hang: out of the way of what moves, and within reach of a hand.

import { type Solid, solidGap } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { FittingPart } from '../../cabinet/fittings.ts';
import { causes } from '../causes.ts';
import type { Measure, Step } from '../measure.ts';
import { sweptMachines } from '../standing-machines.ts';
import { fittingGap, fittingReach } from './limits.ts';

export function places(cabinet: Cabinet): Measure[] {
  return Object.entries(cabinet.fittings).flatMap(([id, fitting]) => {
    if (cabinet.bays[fitting.where] === undefined) return [];
    return [...gap(cabinet, id, fitting), ...(fitting.reached ? [reach(cabinet, id, fitting)] : [])];
  });
}

/** Only of what says where it is and how large: a place nobody has thought of is no finding. */
function gap(cabinet: Cabinet, id: string, { at, size, where }: FittingPart): Measure[] {
  if (at === undefined || size === undefined) return [];
  const half = [size.width / 2, size.depth / 2, size.height / 2] as const;
  const solid: Solid = {
    from: [at[0] - half[0], at[1] - half[1], at[2] - half[2]],
    to: [at[0] + half[0], at[1] + half[1], at[2] + half[2]],
  };
  let nearest: { gap: number; text: string; inputs: readonly string[] } | undefined;
  for (const { machine, part } of sweptMachines(cabinet, where)) {
    const found = solidGap(solid, part);
    if (nearest === undefined || found < nearest.gap)
      nearest = { gap: found, text: `${part.what} of ${machine} (${part.when})`, inputs: part.inputs };
  }
  if (nearest === undefined) return [];
  const { gap: value, text, inputs } = nearest;
  return [
    {
      trade: 'fittings',
      quantity: 'fitting-gap',
      part: id,
      title: 'distance to the nearest machine, in full motion',
      value,
      unit: 'length',
      limit: fittingGap(cabinet),
      better: 'higher',
      get steps(): readonly Step[] {
        return [
          { text: 'its place and size', inputs: [`fittings.${id}`] },
          { text: `nearest: ${text}`, value, unit: 'length', inputs },
        ];
      },
      remedies: [],
      cause: causes.bayTooSmall,
      weight: 0.6,
    },
  ];
}

function reach(cabinet: Cabinet, id: string, { at, where }: FittingPart): Measure {
  const shared = {
    trade: 'fittings',
    quantity: 'fitting-reach',
    part: id,
    title: 'reach from the opening',
    unit: 'length',
    better: 'lower',
    cause: causes.outOfReach,
    weight: 0.3,
    remedies: [],
  } as const;
  if (at === undefined)
    return { ...shared, missing: `give fittings.${id}.at, its centre in bay ${where}: right, back, up`, steps: [] };
  const faces = Object.values(cabinet.doors).flatMap(({ face, bays }) => (bays.includes(where) ? [face] : []));
  const value =
    faces.length > 0 && !faces.includes('front') && faces.includes('back') ? cabinet.inside.depth - at[1] : at[1];
  return {
    ...shared,
    value,
    limit: fittingReach(cabinet),
    get steps(): readonly Step[] {
      return [{ text: 'its middle from the opening', value, unit: 'length', inputs: [`fittings.${id}`] }];
    },
  };
}
