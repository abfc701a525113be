// What several measures ask of one run is worked out once and kept with it.

import type { DayRun } from './measure.ts';

const kept = new WeakMap<DayRun, Map<string, unknown>>();

/** The value of a key, made when it is first asked for. A key stands for one kind of value, named before its first colon. */
export function keptWith<Value>(run: DayRun, key: string, make: () => Value): Value {
  let values = kept.get(run);
  if (values === undefined) {
    values = new Map();
    kept.set(run, values);
  }
  if (values.has(key)) return values.get(key) as Value;
  const value = make();
  values.set(key, value);
  return value;
}

/** Values that depend on nothing but a key are kept for the next who asks; the oldest go when there are too many. */
export function keptByKey<Value>(most: number = 64): (key: string, make: () => Value) => Value {
  const values = new Map<string, Value>();
  return (key, make) => {
    const known = values.get(key);
    if (known !== undefined) return known;
    const value = make();
    if (values.size >= most) values.delete(values.keys().next().value!);
    values.set(key, value);
    return value;
  };
}
