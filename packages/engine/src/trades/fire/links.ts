// Thermal links and thermostats of the chain against the hottest air of the day where they sit.

import { LINK_TOLERANCE } from '@stillair/physics';
import { formatClock } from '../../units/format.ts';
import { temperatureOf } from '../air-ways.ts';
import { causes } from '../causes.ts';
import { largest } from '../course.ts';
import type { DayRun, Measure, Remedy, Step } from '../measure.ts';
import { setOpensAt } from '../remedy-edits.ts';
import { caution, linkLimit, thermostatLimit } from './limits.ts';

const CELSIUS = 273.15;
/** Ratings in which links are commonly sold, °C, from memory. */
const RATINGS = [72, 77, 84, 94, 98, 104, 110, 117, 121, 128, 133, 142, 152, 167, 184];

export function links(run: DayRun): Measure[] {
  const { cabinet, assembly } = run;
  return Object.entries(cabinet.protection.chain ?? {}).flatMap(
    ([id, { what, bay: named, opensAt, holds }]): Measure[] => {
      const link = what === 'thermal link';
      if (!link && what !== 'reset thermostat' && what !== 'self-reset thermostat') return [];
      const bay = named ?? (Object.keys(cabinet.bays).length === 1 ? Object.keys(cabinet.bays)[0] : undefined);
      const shared = {
        trade: 'fire',
        quantity: link ? 'link-margin' : 'thermostat-margin',
        part: `protection.${id}`,
        title: link
          ? 'what the thermal link holds, above the hottest air at it'
          : 'where the thermostat opens, above the hottest air at it',
        unit: 'temperature-difference',
        limit: link ? linkLimit(cabinet) : thermostatLimit(cabinet),
        cause: causes.linkTooLow,
        weight: 0.7,
        better: 'higher',
      } as const;
      const held = link ? holds : opensAt;
      if (bay === undefined || held === undefined || opensAt === undefined)
        return [
          {
            ...shared,
            missing:
              bay === undefined
                ? `where ${id} sits is not said: give protection.chain.${id}.bay`
                : `at what ${id} opens is not said: give protection.chain.${id}.opens-at`,
            steps: [caution('chain')],
            remedies: [],
          },
        ];
      const peak = largest(temperatureOf(run, assembly.bays[bay]!.zones.at(-1)!));
      const wanted = RATINGS.find(
        (rating) => CELSIUS + rating - (opensAt - held) >= peak.value + shared.limit.value + 1,
      );
      return [
        {
          ...shared,
          value: held - peak.value,
          at: peak.time,
          get steps(): readonly Step[] {
            return [
              {
                text: `hottest air at the top of ${bay}, at ${formatClock(peak.time)}`,
                value: peak.value,
                unit: 'temperature',
              },
              ...(link
                ? [
                    {
                      text: 'temperature that the link carries for good',
                      value: held,
                      unit: 'temperature',
                      inputs: [`protection.chain.${id}.holds`],
                    },
                    {
                      text: `it opens once, between this and its mark ${LINK_TOLERANCE} K higher`,
                      value: opensAt - LINK_TOLERANCE,
                      unit: 'temperature',
                      source: 'IEC 60691: +0/−10 °C of the rated functioning temperature, second-hand',
                    },
                    {
                      text: 'clamped where the fault would be, near the bed’s terminals; solder would open it before it is in use',
                    },
                  ]
                : [
                    {
                      text: 'it opens at',
                      value: opensAt,
                      unit: 'temperature',
                      inputs: [`protection.chain.${id}.opensAt`],
                    },
                  ]),
              { text: 'in view of a hot bed it may feel 3 to 10 K more than the air' },
              caution('chain'),
            ];
          },
          get remedies(): readonly Remedy[] {
            return wanted === undefined || CELSIUS + wanted <= opensAt
              ? []
              : [{ says: `${id} that opens at ${wanted} °C`, edits: [setOpensAt(id, wanted)] }];
          },
        },
      ];
    },
  );
}
