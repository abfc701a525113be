// When things were on during the day, row by row of its record.

import type { DayRecord } from '../day/record.ts';
import type { When } from '../network/network.ts';
import { type Course, columnOf, integralOf } from './course.ts';
import { keptWith } from './kept.ts';
import type { DayRun } from './measure.ts';
import { zeros } from './zeros.ts';

/** 1 while on, 0 while off; on the left side of a jump, what it was before. */
export function courseOn(run: DayRun, when: When): Course {
  const known = keptWith(run, 'on:', () => new Map<When, Course>());
  let course = known.get(when);
  if (course === undefined) {
    course = { times: run.record.times, values: rowsOn(run.record, when) };
    known.set(when, course);
  }
  return course;
}

function rowsOn(record: DayRecord, when: When): Float64Array {
  const { network, times, thermostats } = record;
  const rows = zeros(times.length);
  if (when === 'always') return rows.fill(1);
  if ('windows' in when) {
    for (const [start, end] of when.windows) putOn(rows, times, start, end);
    return rows;
  }
  if ('thermostat' in when) return columnOf(thermostats, when.thermostat).slice();
  if ('machine' in when) {
    const { machine, modes } = when;
    const counts = (mode: string): boolean => (modes === undefined ? mode !== 'idle' : modes.includes(mode));
    if (counts('idle')) rows.fill(1);
    // Of two entries at one time the first counts: it is put last.
    for (const entry of network.schedule.filter((each) => each.machine === machine).toReversed())
      putOn(rows, times, entry.start, entry.end, counts(entry.mode));
    return rows;
  }
  if ('not' in when) return rowsOn(record, when.not).map((on) => 1 - on);
  const parts = ('anyOf' in when ? when.anyOf : when.allOf).map((part) => rowsOn(record, part));
  const some = 'anyOf' in when;
  return rows.map((_, row) =>
    (some ? parts.some((part) => part[row] === 1) : parts.every((part) => part[row] === 1)) ? 1 : 0,
  );
}

/** Puts on (or off) the rows whose moments lie in a window. */
function putOn(rows: Float64Array, times: Float64Array, start: number, end: number, on = true): void {
  for (let row = 0; row < rows.length; row += 1) {
    const moment = momentOfRow(times, row);
    if (start <= moment && moment < end) rows[row] = on ? 1 : 0;
  }
}

/** A row's own time; a hair earlier on the left side of a jump and at the day's end, where the next thing has not begun. */
function momentOfRow(times: Float64Array, row: number): number {
  const time = times[row]!;
  const last = row + 1 === times.length || times[row + 1] === time;
  return last ? time - 1e-6 : time;
}

/** How long something was on, s. */
export function timeOn(run: DayRun, when: When): number {
  return integralOf(courseOn(run, when));
}
