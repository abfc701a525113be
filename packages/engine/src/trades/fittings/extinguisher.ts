// An extinguisher that is listed: does its agent suit equipment that may be live, and does it hang outside the cabinet?

import type { Cabinet } from '../../cabinet/cabinet.ts';
import { causes } from '../causes.ts';
import type { Measure, Step } from '../measure.ts';
import { extinguisherLimit } from './limits.ts';

const SUITS: Readonly<Record<string, string>> = {
  'carbon dioxide':
    'does not conduct and leaves nothing; in a small room it takes the air to breathe: leave after using it',
  'clean agent': 'does not conduct and leaves nothing',
  powder: 'does not conduct, and ruins every machine that it reaches',
};

const REFUSED: Readonly<Record<string, string>> = {
  foam: 'conducts unless its label allows live equipment (EN 3-7, dielectric test)',
  water: 'conducts unless its label allows live equipment (EN 3-7, dielectric test)',
  blanket: 'covers a pan, not a machine that is fed from the mains',
};

export function extinguishers(cabinet: Cabinet): Measure[] {
  return Object.entries(cabinet.fittings).flatMap(([id, { what, agent, where }]): Measure[] => {
    if (what !== 'extinguisher') return [];
    const shared = {
      trade: 'fittings',
      quantity: 'extinguisher',
      part: id,
      title: 'extinguisher that suits live equipment and can be reached past a fire',
      unit: 'number',
      better: 'higher',
      cause: causes.extinguisherUnfit,
      weight: 0.9,
      remedies: [],
    } as const;
    if (agent === undefined) return [{ ...shared, missing: `give fittings.${id}.agent, what it holds`, steps: [] }];
    const suits = SUITS[agent];
    const outside = where === 'room';
    return [
      {
        ...shared,
        value: suits !== undefined && outside ? 1 : 0,
        limit: extinguisherLimit(cabinet),
        get steps(): readonly Step[] {
          return [
            { text: `${agent} ${suits ?? REFUSED[agent]!}`, inputs: [`fittings.${id}`] },
            {
              text: outside
                ? 'it hangs in the room: best by the way out, not behind the cabinet'
                : 'it lies in the cabinet, behind the fire that it is for: hang it in the room, by the way out',
            },
            {
              text: 'Cut the power first. Only a first flame, with the way out behind you and somebody called; any burnt smell or smoke: leave, shut the room, call. No substitute for the local fire code and training.',
            },
          ];
        },
      },
    ];
  });
}
