// Which moments of a day count: those in which fans draw on the cabinet, those in which doors are shut.

import { fanShares } from './air-ways.ts';
import type { Course } from './course.ts';
import { keptWith } from './kept.ts';
import type { DayRun } from './measure.ts';
import { exhaustsOf } from './plant.ts';
import { courseOn } from './switched.ts';
import { zeros } from './zeros.ts';

/** 1 while any fan blows out of the cabinet, else 0. Fans that blow in or turn the air round draw nothing. */
export function fansDraw(run: DayRun): Course {
  return keptWith(run, 'fans draw:', () =>
    anyTurns(
      run.record,
      exhaustsOf(run.cabinet).flatMap((id) => fanShares(run, id)),
    ),
  );
}

/** 1 while any of these fans turns. */
export function anyTurns(record: DayRun['record'], shares: readonly Course[]): Course {
  const values = zeros(record.times.length);
  for (const share of shares)
    for (let row = 0; row < values.length; row += 1) if (share.values[row]! > 0) values[row] = 1;
  return { times: record.times, values };
}

/** 1 while any door is open, else 0; of one bay's doors when a bay is named. */
export function doorsOpen(run: DayRun, bay?: string): Course {
  return keptWith(run, `doors open:${bay ?? ''}`, () => {
    const { doors, days } = run.cabinet;
    const windows = days[run.day]!.doorOpenings.filter(
      ({ door }) => bay === undefined || doors[door]?.bays.includes(bay),
    ).map(({ start, duration }) => [start, start + duration] as const);
    return courseOn(run, { windows });
  });
}
