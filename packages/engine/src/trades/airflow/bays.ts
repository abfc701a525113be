// How much air passes each bay, with fans and without.

import { bayInflow, insideZones } from '../air-ways.ts';
import { type Course, courseOf, integralOf, integralOfProduct } from '../course.ts';
import type { DayRun, Measure, Step } from '../measure.ts';
import { anyTurns } from '../moments.ts';

export function bays(run: DayRun): Measure[] {
  const { record } = run;
  const fansOn = anyTurns(
    record,
    record.fanSpeeds.names.map((name) => courseOf(record, record.fanSpeeds, name)),
  );
  const fansOff = { times: fansOn.times, values: fansOn.values.map((on) => 1 - on) };
  return Object.keys(run.cabinet.bays).flatMap((bay) => airChange(run, bay, fansOn, fansOff));
}

/** Mean inflow of a bay over the times at which `when` is 1, without what comes through open doors, m³/s. */
function meanInflow(
  run: DayRun,
  bay: string,
  when: Course,
): { all: number; fromOutside: () => number; time: number } | undefined {
  const time = integralOf(when);
  if (!(time > 0)) return undefined;
  const meanOf = (inflow: Course): number => integralOfProduct(inflow, when) / time;
  return {
    all: meanOf(bayInflow(run, bay)),
    fromOutside: () => {
      return meanOf(bayInflow(run, bay, insideZones(run)));
    },
    time,
  };
}

function airChange(run: DayRun, bay: string, fansOn: Course, fansOff: Course): Measure[] {
  const volume = run.assembly.bays[bay]!.volumes.reduce((a, b) => a + b, 0);
  return (
    [
      ['air-change', 'air changes while a fan runs', fansOn],
      ['passive-air-change', 'air changes while all fans rest', fansOff],
    ] as const
  ).flatMap(([quantity, title, when]) => {
    const inflow = meanInflow(run, bay, when);
    if (inflow === undefined) return [];
    return [
      {
        trade: 'airflow',
        quantity,
        part: bay,
        title,
        value: (3600 * inflow.all) / volume,
        unit: 'air-change',
        get steps(): readonly Step[] {
          return [
            {
              text: 'air volume of the bay',
              value: volume,
              unit: 'volume',
              inputs: [`bays.${bay}.x`, `bays.${bay}.z`],
            },
            { text: 'air entering, mean, doors shut', value: inflow.all, unit: 'flow', formula: 'n = 3600 V̇ / V' },
            { text: 'of which straight from outside the cabinet', value: inflow.fromOutside(), unit: 'flow' },
            { text: 'time over which this is the mean', value: inflow.time, unit: 'duration' },
          ];
        },
        remedies: [],
        weight: 0.1,
        better: 'higher',
        compared: quantity === 'air-change',
      },
    ];
  });
}
