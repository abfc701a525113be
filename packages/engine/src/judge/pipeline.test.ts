// Numbers alone are the numbers of the full answer, on every day of every example.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Cabinet } from '../cabinet/cabinet.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { measureAll, numbersOfDay, numbersOfDays, runDay, runDayOnce } from './pipeline.ts';

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
    for (const [id, { value, limit }] of measureAll(cabinet)) {
      expect(all.values[id], id).toBe(value);
      expect(all.limits[id], id).toBe(limit?.value);
      if (value !== undefined) ids.push(id);
    }
    expect(Object.keys(all.values)).toEqual(ids);
    expect(ids.length).toBeGreaterThan(40);
  });

  it('property: a run that was asked twice says the same', () => {
    const run = runDay(cabinet, Object.keys(cabinet.days)[0]!);
    expect(numbersOfDay(run)).toEqual(numbersOfDay(run));
  });

  it('exact: what does not change the air is not simulated again, and comes to the same numbers', () => {
    const once = runDayOnce();
    const day = Object.keys(cabinet.days)[0]!;
    const people = Object.fromEntries(
      Object.entries(cabinet.people).map(([id, person]) => [id, { ...person, at: [9, 9, 9] as const }]),
    );
    const [first, moved] = [once(cabinet, day), once({ ...cabinet, people }, day)];
    expect(moved.record.temperatures).toBe(first.record.temperatures);
    expect(numbersOfDay(once(cabinet, day))).toEqual(numbersOfDay(runDay(cabinet, day)));
    const warmer = { ...cabinet, factors: { ...cabinet.factors, insideFilm: 2 } };
    expect(once(warmer, day).record.temperatures).not.toBe(first.record.temperatures);
  });
});
