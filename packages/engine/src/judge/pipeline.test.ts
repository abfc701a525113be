// Numbers alone are the numbers of the full answer, on every day of every example.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Cabinet } from '../cabinet/cabinet.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { measureDay, numbersOfDay, numbersOfDays, runDay } from './pipeline.ts';

function example(name: string): Cabinet {
  const url = new URL(`../../../../examples/${name}.yaml`, import.meta.url);
  const answer = readCabinet(`${name}.yaml`, readFileSync(url, 'utf8'));
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return answer.cabinet;
}

describe.each(['tool-library', 'school-locker', 'winter-shed'])('the numbers of %s', (name) => {
  const cabinet = example(name);

  it('cross: are those of the full answer, by the same ids, and in the same order', () => {
    const all = numbersOfDays(cabinet);
    const ids: string[] = [];
    for (const day of Object.keys(cabinet.days)) {
      const measures = measureDay(runDay(cabinet, day));
      for (const [id, { value, limit }] of measures) {
        expect(all.values[id], id).toBe(value);
        expect(all.limits[id], id).toBe(limit?.value);
        if (value !== undefined) ids.push(id);
      }
    }
    expect(Object.keys(all.values)).toEqual(ids);
    expect(ids.length).toBeGreaterThan(40);
  });

  it('property: a run that was asked twice says the same', () => {
    const run = runDay(cabinet, Object.keys(cabinet.days)[0]!);
    expect(numbersOfDay(run)).toEqual(numbersOfDay(run));
  });
});
