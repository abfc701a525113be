// What several measures ask of one record is worked out once and kept with it.

import type { DayRecord } from '../day/record.ts';

const kept = new WeakMap<DayRecord, Map<string, unknown>>();

/** The value of a key, made when it is first asked for. A key stands for one kind of value, named before its first colon. */
export function keptWith<Value>(record: DayRecord, key: string, make: () => Value): Value {
  let values = kept.get(record);
  if (values === undefined) {
    values = new Map();
    kept.set(record, values);
  }
  if (values.has(key)) return values.get(key) as Value;
  const value = make();
  values.set(key, value);
  return value;
}
