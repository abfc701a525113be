// Sensors that are stuck: one value for hours while others of their kind move.

import { formatClock, formatDuration } from '../units/format.ts';
import type { LogColumn, LogRemark, Reading } from './log.ts';

/** How long one value may stand, s, and how far another must have moved meanwhile, K. */
const LONGEST = 2 * 3600;
const FEWEST = 10;
const MOVED = 2.5;
const OPEN: ReadonlySet<string> = new Set(['room', 'outdoors']);

/** Columns without the stretches in which they were stuck; what hangs in the open (the room, outdoors) may stand still. */
export function withoutStuck(columns: readonly LogColumn[]): {
  readonly columns: readonly LogColumn[];
  readonly remarks: readonly LogRemark[];
} {
  const remarks: LogRemark[] = [];
  const kept = columns.map((column): LogColumn => {
    if (column.kind !== 'temperature' || OPEN.has(column.place.what)) return column;
    const stretches = standing(column.readings).filter(({ from, to }) =>
      columns.some((other) => other !== column && other.kind === 'temperature' && moved(other, from, to) > MOVED),
    );
    if (stretches.length === 0) return column;
    for (const { from, to, count } of stretches)
      remarks.push({
        code: 'stuck',
        what: `one value for ${formatDuration(to - from)} from ${formatClock(from)}, while others moved`,
        done: 'left out',
        count,
        column: column.name,
      });
    return {
      ...column,
      readings: column.readings.filter(({ time }) => !stretches.some(({ from, to }) => time >= from && time <= to)),
    };
  });
  return { columns: kept, remarks };
}

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

function standing(readings: readonly Reading[]): Stretch[] {
  const found: Stretch[] = [];
  let first = 0;
  for (let at = 1; at <= readings.length; at += 1) {
    if (at < readings.length && readings[at]!.value === readings[first]!.value) continue;
    const [from, to] = [readings[first]!.time, readings[at - 1]!.time];
    if (to - from >= LONGEST && at - first >= FEWEST) found.push({ from, to, count: at - first });
    first = at;
  }
  return found;
}

function moved({ readings }: LogColumn, from: number, to: number): number {
  const values = readings.filter(({ time }) => time >= from && time <= to).map(({ value }) => value);
  return values.length < 2 ? 0 : Math.max(...values) - Math.min(...values);
}
