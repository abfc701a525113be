import { describe, expect, it } from 'vitest';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { judge, type ReadSource } from '../judge/judge.ts';
import { courseRunner, dayBands } from './day-bands.ts';

/** A bay with nothing in it but a room that warms: a day of it takes a few milliseconds. */
const EMPTY = `
stillair: 1
title: empty
cabinet: { inside: 800 mm x 600 mm x 900 mm, made-of: plywood 18 mm, door: glass 4 mm }
bays: { only: { z: 0 mm to 900 mm } }
days: { usual: { room-temperature: { 6:00: 18 °C, 18:00: 24 °C } } }
`;

function sourceOf(text: string): ReadSource {
  const answer = readCabinet('test.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return { file: 'test.yaml', text, cabinet: answer.cabinet, origins: answer.origins };
}

const source = sourceOf(EMPTY);
const air = (bands: Awaited<ReturnType<typeof dayBands>>) => bands.bands.find(({ line }) => line === 'air in only')!;

describe('bands about the lines of a day', () => {
  it('property: at every moment the low end is no higher than the high end, and both are there for every line', async () => {
    const told = await dayBands(source, { day: 'usual', samples: 12 });
    expect(told.samples).toEqual({ asked: 12, ran: 12, faults: [] });
    expect(told.bands.length).toBeGreaterThan(1);
    expect(told.times).toHaveLength(289);
    for (const { low, high } of told.bands) {
      expect(low).toHaveLength(told.times.length);
      expect(low.every((value, at) => Number.isFinite(value) && value <= high[at]!)).toBe(true);
    }
    const { low, high } = air(told);
    expect(high.some((value, at) => value > low[at]! + 1e-6)).toBe(true);
  });

  it('cross: the samples are those that the judge varies: a greatest temperature lies in its band of the moment', async () => {
    const { findings } = await judge(source, { samples: 24, remedies: false });
    const greatest = findings.find(({ id }) => id === 'heat/peak-air/only/usual');
    const { high } = air(await dayBands(source, { day: 'usual', samples: 24 }));
    // The ninetieth of a hundred greatest values is at least the greatest of the ninetieths of all moments.
    expect(greatest!.p90! - 273.15).toBeGreaterThanOrEqual(Math.max(...high) - 0.05);
  });

  it('exact: degrees Fahrenheit are the same band in other words', async () => {
    const metric = air(await dayBands(source, { day: 'usual', samples: 9 }));
    const imperial = air(await dayBands(source, { day: 'usual', samples: 9, units: 'imperial' }));
    for (const at of [0, 100, 288]) expect(imperial.low[at]).toBeCloseTo(metric.low[at]! * 1.8 + 32, 6);
  });

  it('limit: with too few samples there is no band, and what was not run is counted', async () => {
    const told = await dayBands(source, { day: 'usual', samples: 12, stop: () => true });
    expect(told).toMatchObject({ bands: [], samples: { asked: 12, ran: 0 }, stopped: true });
    expect((await dayBands(source, { day: 'usual', samples: 7 })).bands).toEqual([]);
  });

  it('property: a sample that cannot be run is an outcome with its reason', () => {
    const run = courseRunner({ file: 'test.yaml', text: 'title: 3\n' });
    expect(run({ day: 'usual', units: 'metric', inputs: {} })).toHaveProperty('fault');
  });
});
