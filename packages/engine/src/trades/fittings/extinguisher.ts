// An extinguisher that is listed: can it be reached past the fire that it is for? What it holds is asked by the fire trade.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import { causes } from '../causes.ts';
import type { Measure, Remedy, Step } from '../measure.ts';
import { set } from '../remedy-edits.ts';
import { extinguisherLimit } from './limits.ts';

export function extinguishers(cabinet: Cabinet): Measure[] {
  return Object.entries(cabinet.fittings).flatMap(([id, { what, where }]): Measure[] => {
    if (what !== 'extinguisher') return [];
    const outside = where === 'room';
    return [
      {
        trade: 'fittings',
        quantity: 'extinguisher',
        part: id,
        title: 'extinguisher that can be reached past a fire',
        value: outside ? 1 : 0,
        unit: 'number',
        limit: extinguisherLimit(cabinet),
        get steps(): readonly Step[] {
          return [
            {
              text: outside
                ? 'it hangs in the room: best by the way out, not behind the cabinet'
                : 'it lies in the cabinet, behind the fire that it is for: hang it in the room, by the way out',
              inputs: [`fittings.${id}`],
            },
            {
              text: 'Cut the power first. Only a first flame, with the way out behind you and somebody called; any burnt smell or smoke: leave, shut the room, call. No substitute for the local fire code and training.',
            },
          ];
        },
        get remedies(): readonly Remedy[] {
          return outside
            ? []
            : [{ says: `hang ${id} in the room, by the way out`, edits: [set(['fittings', id, 'where'], 'room')] }];
        },
        cause: causes.extinguisherUnfit,
        weight: 0.9,
        better: 'higher',
      },
    ];
  });
}
