// Readings taken by eye and typed by hand: `14:05 top 41 °C`, a time, a place and a value with its unit.

import type { Log, LogColumn, LogFault, Reading } from './log.ts';
import { unitNamed } from './log-unit.ts';
import { knownPlaces, type Places, placeOf } from './places.ts';
import { stampOf } from './stamp.ts';

const FORM = /^\s*(\S+)\s+(.+?)\s+([-+−]?\d+(?:[.,]\d+)?)\s*(\S.*?)?\s*$/;
const EXAMPLE = 'a reading is a time, a place and a value with its unit, such as "14:05 top 41 °C"';

export function dialReadings(texts: readonly string[], places: Places): Log | LogFault {
  const columns = new Map<string, { column: LogColumn; readings: Reading[] }>();
  for (const text of texts) {
    const match = FORM.exec(text);
    const stamp = match === null ? undefined : stampOf(match[1]!);
    if (match === null || stamp === undefined) return { fault: `"${text}" cannot be read`, mend: EXAMPLE };
    const unit = unitNamed(match[4] ?? '');
    if (unit === undefined)
      return {
        fault: `"${text}" has ${match[4] === undefined ? 'no unit' : `"${match[4]}" for a unit`}`,
        mend: EXAMPLE,
      };
    const place = placeOf(match[2]!, unit.kind, places);
    if (place === undefined)
      return {
        fault: `there is no place "${match[2]!}"`,
        mend: `name one of ${knownPlaces(places, unit.kind).join(', ')}`,
      };
    const key = `${place.what} ${place.id} ${place.contaminant ?? ''} ${unit.kind}`;
    const one = columns.get(key) ?? {
      column: { name: match[2]!, kind: unit.kind, place, readings: [] },
      readings: [],
    };
    one.readings.push({
      time: stamp.seconds,
      value: Number(match[3]!.replace(',', '.').replace('−', '-')) * unit.scale + unit.shift,
    });
    columns.set(key, one);
  }
  return {
    version: 1,
    file: 'readings by hand',
    columns: [...columns.values()].map(({ column, readings }) => ({
      ...column,
      readings: readings.sort((a, b) => a.time - b.time),
    })),
    remarks: [],
  };
}
