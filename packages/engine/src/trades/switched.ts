// When things were on during the day, row by row of its record.

import type { DayRecord } from '../day/record.ts';
import { compileWhen } from '../day/when.ts';
import type { When } from '../network/network.ts';
import { type Course, courseFrom, integralOf } from './course.ts';
import { keptWith } from './kept.ts';
import type { DayRun } from './measure.ts';

/** 1 while on, 0 while off; on the left side of a jump, what it was before. */
export function courseOn({ record }: DayRun, when: When): Course {
  return keptWith(record, `on:${JSON.stringify(when)}`, () => whenCourse(record, when));
}

function whenCourse(record: DayRecord, when: When): Course {
  if (when === 'always') return courseFrom(record, () => 1);
  const { network, times, thermostats } = record;
  const machines = network.machines.map(({ name }) => name);
  const condition = compileWhen(when, { thermostats: thermostats.names, machines });
  const count = thermostats.names.length;
  const asksMachines = JSON.stringify(when).includes('machine');
  const moment = { time: 0, thermostats: new Uint8Array(count), modes: machines.map(() => 'idle') };
  return courseFrom(record, (row) => {
    moment.time = momentOfRow(times, row);
    for (let at = 0; at < count; at += 1) moment.thermostats[at] = thermostats.values[row * count + at]!;
    for (let at = 0; asksMachines && at < machines.length; at += 1) {
      const machine = machines[at];
      moment.modes[at] =
        network.schedule.find(
          (entry) => entry.machine === machine && entry.start <= moment.time && moment.time < entry.end,
        )?.mode ?? 'idle';
    }
    return condition(moment) ? 1 : 0;
  });
}

/** A row's own time; a hair earlier on the left side of a jump and at the day's end, where the next thing has not begun. */
function momentOfRow(times: Float64Array, row: number): number {
  const time = times[row]!;
  const next = times[row + 1];
  return next === undefined || next === time ? time - 1e-6 : time;
}

/** How long something was on, s. */
export function timeOn(run: DayRun, when: When): number {
  return integralOf(courseOn(run, when));
}
