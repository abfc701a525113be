// Each door on its hinges: how heavy its leaf is for them, and what it pulls at the upper one.

import { hingePull } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import { causes } from '../causes.ts';
import type { Measure, Step } from '../measure.ts';
import { leafOf } from './leaf.ts';
import { hingeLimit } from './limits.ts';
import { lighterDoor } from './remedies.ts';

export function doorHinges(cabinet: Cabinet): Measure[] {
  return Object.keys(cabinet.doors).flatMap((id): Measure[] => {
    const { mass, width, height, hinge } = leafOf(cabinet, id);
    if (hinge === 'slides' || hinge === 'lifts off') return [];
    const { count, carries, spacing } = cabinet.structure.hinges[id]!;
    const value = mass / count;
    const glass = cabinet.doors[id]!.build.layers.some(({ material }) => material.includes('glass'));
    return [
      {
        trade: 'structure',
        quantity: 'hinge-load',
        part: id,
        title: 'mass of the door on each hinge',
        value,
        unit: 'mass',
        limit: hingeLimit(cabinet, carries),
        get steps(): readonly Step[] {
          const path = `structure.hinges.${id}`;
          const upright = hinge === 'left' || hinge === 'right';
          return [
            {
              text: 'area times what its layers weigh',
              value: mass,
              unit: 'mass',
              inputs: [`doors.${id}.build.layers`],
            },
            { text: `on ${count} hinges`, value, unit: 'mass', inputs: [`${path}.count`, `${path}.carries`] },
            ...(upright
              ? [
                  {
                    text: 'pull of the open leaf at its upper hinge',
                    value: hingePull(mass, width, Math.min(spacing, height)),
                    unit: 'force',
                    formula: 'm g (w/2)/s',
                    source: 'statics',
                    inputs: [`${path}.spacing`],
                  } satisfies Step,
                ]
              : []),
            ...(glass
              ? [
                  {
                    text: 'a door of glass is toughened (EN 12150) or laminated (EN 14449), and its hinges are made for its mass',
                  },
                ]
              : []),
          ];
        },
        get remedies() {
          return lighterDoor(cabinet, id);
        },
        cause: causes.heavyDoor,
        weight: 0.6,
        better: 'lower',
      },
    ];
  });
}
