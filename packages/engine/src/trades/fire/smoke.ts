// Fans that cool also thin the smoke that a detector waits for; and how long machines print with nobody there.

import { bayVolume } from '../../cabinet/geometry.ts';
import { bayInflow } from '../air-ways.ts';
import { largest } from '../course.ts';
import type { DayRun, Measure, Step } from '../measure.ts';
import { printsOf } from '../prints.ts';
import { caution } from './limits.ts';

const DAY = 86_400;
const MINUTE = 60;

export function smoke(run: DayRun): Measure[] {
  return [...dilution(run), ...alone(run)];
}

function dilution(run: DayRun): Measure[] {
  const { cabinet } = run;
  return Object.entries(cabinet.bays).flatMap(([id, bay]) => {
    const most = largest(bayInflow(run, id));
    if (!(most.value > 0)) return [];
    const volume = bayVolume(bay, cabinet.inside.depth);
    return [
      {
        trade: 'fire',
        quantity: 'smoke-dilution',
        part: id,
        title: 'time in which fans carry smoke out of the bay at their strongest',
        value: volume / most.value,
        unit: 'duration',
        logarithmic: true,
        at: most.time,
        get steps(): readonly Step[] {
          return [
            { text: 'air of the bay', value: volume, unit: 'volume', inputs: ['inside'] },
            { text: 'air that enters it at most', value: most.value, unit: 'flow', source: 'the day as simulated' },
            {
              text: 'a smoulder builds up no more smoke than it gives off in this time: the fan that cools also hides it',
              formula: 'C → S/Q with the time V/Q',
              source: 'balance of a well mixed space',
            },
            caution('detection'),
          ];
        },
        remedies: [],
        weight: 0.2,
      } satisfies Measure,
    ];
  });
}

/** Printing time during which nobody of the file is in the room. */
function alone(run: DayRun): Measure[] {
  const prints = printsOf(run);
  if (prints.length === 0) return [];
  const people = Object.values(run.cabinet.people).flatMap(({ hours }) => hours);
  const last = run.record.times[run.record.times.length - 1]!;
  const printing = (time: number): boolean => prints.some((print) => print.start <= time && time < print.end);
  const there = (clock: number): boolean => people.some((hours) => clock >= hours[0] && clock < hours[1]);
  let value = 0;
  for (let time = MINUTE / 2; time < last; time += MINUTE)
    if (printing(time) && !there(time % DAY) && !there((time % DAY) + DAY)) value += MINUTE;
  return [
    {
      trade: 'fire',
      quantity: 'alone',
      part: 'cabinet',
      title: 'printing with nobody in the room',
      value,
      unit: 'duration',
      get steps(): readonly Step[] {
        return [
          ...Object.keys(run.cabinet.people).map((id) => ({ text: `hours of ${id}`, inputs: [`people.${id}.hours`] })),
          {
            text: 'in that time only detectors notice and only the chain acts: a closed box of boards does not make a fire in it harmless',
          },
          {
            text: 'never leave the first print of a new file, a new machine or a repaired one alone, and never sleep beside it',
          },
          caution('fire'),
        ];
      },
      remedies: [],
      weight: 0.3,
      better: 'lower',
    },
  ];
}
