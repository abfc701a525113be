// What a person says of a log beside its text: where columns hang, by how much its clock is off, readings typed by hand.

import { isFault, parseQuantity } from '../units/quantity.ts';
import type { Log } from './log.ts';

/** s, back in time below 0, of `1 h` or `-30 min`; undefined when it is no time. */
export function shiftOf(text: string): number | undefined {
  const back = /^\s*[-−]/.test(text);
  const read = parseQuantity('duration', text.replace(/^\s*[-−+]\s*/, ''));
  return isFault(read) ? undefined : back ? -read.value : read.value;
}

/** Name of a column, and its place, of `Temp 1=top`; undefined when it says none. */
export function placedColumn(text: string): readonly [column: string, place: string] | undefined {
  const at = text.lastIndexOf('=');
  return at <= 0 ? undefined : [text.slice(0, at).trim(), text.slice(at + 1).trim()];
}

/** A log with readings that were typed: one log. */
export function withReadings(log: Log, { columns }: Pick<Log, 'columns'>): Log {
  return { ...log, columns: [...log.columns, ...columns.map((each) => ({ ...each, name: `${each.name} by hand` }))] };
}
