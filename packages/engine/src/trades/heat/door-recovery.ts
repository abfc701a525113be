// What an open door does to the air of a bay in which something is printed, and how long the air takes to come back.

import { formatClock } from '../../units/format.ts';
import { temperatureOf } from '../air-ways.ts';
import { causes } from '../causes.ts';
import { firstReaching, smallest, valueAt, within } from '../course.ts';
import type { DayRun, Measure, Step } from '../measure.ts';
import { printsOf } from '../prints.ts';

/** The air has come back when nine tenths of its fall are made good. */
const BACK = 0.9;

export function doorRecovery(run: DayRun): Measure[] {
  const { cabinet, day, record } = run;
  const last = record.times[record.times.length - 1]!;
  return cabinet.days[day]!.doorOpenings.flatMap(({ door, start, duration }, index) =>
    printsOf(run)
      .filter(({ machine }) => cabinet.doors[door]?.bays.includes(machine.bay))
      .filter((print) => print.start < start && start < print.end)
      .flatMap((print): Measure[] => {
        const air = temperatureOf(run, run.assembly.machines[print.machineId]!.printAir);
        const closed = Math.min(start + duration, last);
        const before = valueAt(air, start);
        const lowest = smallest(within(air, start, Math.min(closed + 600, last)));
        const fall = before - lowest.value;
        if (!(fall > 0.1) || closed >= last) return [];
        const until = Math.max(print.end, closed);
        const coming = within(air, Math.min(Math.max(closed, lowest.time), until), until);
        const back = firstReaching(coming, lowest.value + BACK * fall, 'below');
        return [
          {
            trade: 'heat',
            quantity: 'door-recovery',
            part: `${print.part}.${door}-${index + 1}`,
            title: 'time until the air at the print has come back after the door was open',
            value: Math.max((back ?? until) - closed, 0),
            unit: 'duration',
            at: start,
            get steps(): readonly Step[] {
              return [
                {
                  text: `air at the print when the door opens, at ${formatClock(start)}`,
                  value: before,
                  unit: 'temperature',
                },
                {
                  text: 'the door stays open',
                  value: duration,
                  unit: 'duration',
                  inputs: [`days.${day}.doorOpenings.${index}.duration`],
                },
                { text: `coldest, at ${formatClock(lowest.time)}`, value: lowest.value, unit: 'temperature' },
                ...(back === undefined ? [{ text: 'it does not come back before the job ends' }] : []),
                {
                  text: 'come back when nine tenths of the fall are made good',
                  value: lowest.value + BACK * fall,
                  unit: 'temperature',
                },
              ];
            },
            remedies: [],
            cause: causes.doorOpened,
            weight: 0.2,
            better: 'lower',
          },
        ];
      }),
  );
}
