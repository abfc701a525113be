import { describe, expect, it } from 'vitest';
import type { DayRun, Measure } from '../measure.ts';
import { cabinetByHand, runByHand } from '../run-by-hand.ts';
import { heat } from './heat.ts';

const C = 273.15;
const HOUR = 3600;

function measureOf(run: DayRun, quantity: string, part?: string): Measure {
  const found = heat
    .measure(run)
    .filter((measure) => measure.quantity === quantity && (part ?? measure.part) === measure.part);
  expect(found.map(({ part: of }) => of)).toHaveLength(1);
  return found[0]!;
}

/** Rises from 21 to 41 °C over the six hours of the job that starts at 9:00, falls back after it. */
const tent = (time: number): number => C + 21 + Math.max(0, 20 - Math.abs(time - 15 * HOUR) / 1080);

describe('heat of a print', () => {
  const run = runByHand({ temperatures: { lower: tent } });

  it('exact: the hottest air at the print is the job’s end, and says when', () => {
    expect(measureOf(run, 'print-air-high')).toMatchObject({ at: 15 * HOUR, part: 'left.bracket' });
    expect(measureOf(run, 'print-air-high').value).toBeCloseTo(C + 41, 6);
  });

  it('exact: the coldest air counts from half an hour after the start', () => {
    expect(measureOf(run, 'print-air-low').value).toBeCloseTo(C + 21 + 1800 / 1080, 9);
  });

  it('exact: the warm-up ends where the air reaches the band’s lower end', () => {
    expect(measureOf(run, 'warm-up').value).toBeCloseTo(9 * 1080, 6);
  });

  it('limit: a band that is never reached is a warm-up as long as the job, and says so', () => {
    const cold = measureOf(runByHand(), 'warm-up');
    expect(cold.value).toBe(6 * HOUR);
    expect(cold.steps[0]!.text).toContain('not reached');
  });

  it('exact: the two bands are held against the same air', () => {
    expect(measureOf(run, 'print-air-best-high').limit?.value).toBe(C + 65);
    expect(measureOf(run, 'print-air-best-low').limit?.value).toBe(C + 45);
    expect(measureOf(run, 'print-air-best-low').weight).toBe(0.5); // the part is 150 mm long
  });

  it('limit: a part below 100 mm is not held against what large ones want', () => {
    const sized = (partSize: number): ReturnType<typeof measureOf> => {
      const day = cabinetByHand.days['usual']!;
      const jobs = { bracket: { ...day.jobs['bracket']!, partSize } };
      return measureOf(
        runByHand({ cabinet: { ...cabinetByHand, days: { usual: { ...day, jobs } } } }),
        'print-air-best-low',
      );
    };
    expect(sized(0.1).limit?.value).toBe(C + 45);
    expect(sized(0.0999).limit).toBeUndefined();
  });
});

describe('heat of machine and bay', () => {
  it('exact: electronics inside feel the bay, electronics outside the room', () => {
    const inside = runByHand({ temperatures: { lower: tent } });
    expect(measureOf(inside, 'electronics-air').value).toBeCloseTo(C + 41, 9);
    const machine = { ...cabinetByHand.machines['left']!, electronicsInside: false };
    const outside = runByHand({
      cabinet: { ...cabinetByHand, machines: { left: machine } },
      temperatures: { lower: tent },
    });
    expect(measureOf(outside, 'electronics-air').value).toBeCloseTo(C + 21, 9);
    expect(measureOf(outside, 'electronics-air').remedies).toEqual([]);
  });

  it('exact: time above the lowest limit in the bay: 45 °C of the electronics, for a bay at 46 °C from 10:00 to 12:00', () => {
    const times = [0, 10, 10, 12, 12, 24].map((hour) => hour * HOUR);
    const run = runByHand({ times, temperatures: { lower: (t) => C + (t >= 10 * HOUR && t < 12 * HOUR ? 46 : 30) } });
    expect(measureOf(run, 'time-above-limit').value).toBeCloseTo(2 * HOUR, 6);
    expect(measureOf(run, 'time-above-limit').steps[0]!.text).toContain('electronics of left');
    expect(measureOf(run, 'peak-air').value).toBe(C + 46);
  });

  it('exact: the steps of a peak tell the heat that the air carries off', () => {
    const run = runByHand({
      temperatures: { lower: C + 31 },
      flows: { intake: 0.01, exhaust: 0.01 },
      bedPowers: { left: 80 },
    });
    const steps = measureOf(run, 'peak-air').steps;
    expect(steps.find(({ text }) => text.startsWith('carried off'))?.value).toBeCloseTo(0.01 * 1006 * 10, 9);
    expect(steps.find(({ text }) => text.startsWith('heat of the beds'))?.value).toBe(80);
  });
});

it('exact: a peak at the end of a job tells what ran until then, not the silence after', () => {
  const bedPowers = { left: (t: number): number => (t >= 9 * HOUR && t < 15 * HOUR ? 80 : 0) };
  const { steps, at } = measureOf(runByHand({ temperatures: { lower: tent }, bedPowers }), 'peak-air');
  expect(at).toBe(15 * HOUR);
  expect(steps.find(({ text }) => text.startsWith('heat of the beds'))?.value).toBeCloseTo(80, 1);
  expect(steps.find(({ text }) => text.startsWith('heat of nozzles'))!.value!).toBeGreaterThan(40);
});

describe('heat of surfaces', () => {
  it('exact: the dew margin is the coldest inner surface less the dew point of 21 °C and 50 % (10.2 °C, ASHRAE form)', () => {
    const { names } = runByHand().record.temperatures;
    const inner = names.find((name) => name.startsWith('lower.back') && name.endsWith('.1'))!;
    const measure = measureOf(runByHand({ temperatures: { [inner]: C + 8.2 } }), 'dew-margin');
    expect(measure.value).toBeCloseTo(-2, 1);
    expect(measure.steps[0]!.text).toContain('faces.back');
  });

  it('exact: the hottest outer surface is found and named', () => {
    const { names } = runByHand().record.temperatures;
    const outer = names.filter((name) => name.startsWith('lower.top')).at(-1)!;
    const measure = measureOf(runByHand({ temperatures: { [outer]: C + 49 } }), 'touch-temperature');
    expect(measure).toMatchObject({ part: 'faces.top', value: C + 49 });
    expect(measure.limit?.value).toBe(C + 48);
  });
});

describe('heat over the day', () => {
  it('exact: bed energy is power times time', () => {
    const run = runByHand({ bedPowers: { left: (t) => (t >= 9 * HOUR && t < 15 * HOUR ? 80 : 0) } });
    expect(measureOf(run, 'bed-energy').value).toBeCloseTo(80 * 6 * HOUR, 3);
  });

  it('cross: a bay at 35 °C saves a bed at 60 °C about 30 % of what it takes at 25 °C (34 W against 24 W, independent script)', () => {
    const { machines, days } = cabinetByHand;
    const job = { ...days['usual']!.jobs['bracket']!, bed: C + 60 };
    const cabinet = { ...cabinetByHand, days: { usual: { ...days['usual']!, jobs: { bracket: job } } } };
    const run = runByHand({ cabinet, temperatures: { lower: C + 35, room: C + 25 } });
    expect(machines['left']!.bed.width).toBe(0.235);
    const saved = measureOf(run, 'bed-energy').steps.find(({ text }) => text.includes('the warm bay saves'));
    expect(saved?.value).toBeCloseTo(1 - 24 / 34, 1);
  });

  it('exact: the day’s electricity is the sum of its users', () => {
    const run = runByHand({
      bedPowers: { left: (t) => (t >= 9 * HOUR && t < 15 * HOUR ? 88 : 0) },
      fanSpeeds: { 'exhaust.fan': 0.5 },
    });
    const bed = 88 * 6 * HOUR;
    const supply = bed * (1 / 0.88 - 1);
    const printing = (20 + 15 + 8 + 3 + 43 * (1 / 0.88 - 1)) * 6 * HOUR;
    const standby = 5 * 18 * HOUR;
    const fan = 3 * 0.5 ** 3 * 24 * HOUR;
    expect(measureOf(run, 'energy-day').value).toBeCloseTo(bed + supply + printing + standby + fan, 0);
  });

  it('exact: heat blown away is mass flow times heat capacity times rise', () => {
    const run = runByHand({ temperatures: { lower: C + 31 }, flows: { exhaust: 0.01 } });
    expect(measureOf(run, 'exhaust-heat').value).toBeCloseTo(0.01 * 1006 * 10 * 86400, 0);
    expect(measureOf(run, 'exhaust-heat').part).toBe('air.exhaust');
  });

  it('exact: the room’s rise is against its own course', () => {
    const run = runByHand({ temperatures: { room: (t) => C + 21 + t / 86400 } });
    expect(measureOf(run, 'room-rise')).toMatchObject({ at: 86400 });
    expect(measureOf(run, 'room-rise').value).toBeCloseTo(1, 9);
  });
});

describe('a door opened during a print', () => {
  it('exact: its dip does not count as the coldest air of the print, nor the quarter of an hour after it', () => {
    const doorOpenings = [{ door: 'front', start: 12 * HOUR, duration: 300 }];
    const cabinet = { ...cabinetByHand, days: { usual: { ...cabinetByHand.days['usual']!, doorOpenings } } };
    const times = [0, 9 * HOUR, 9 * HOUR, 12 * HOUR, 12 * HOUR + 300, 12 * HOUR + 1200, 13 * HOUR, 15 * HOUR, 86400];
    const dip = (t: number): number => C + (t > 12 * HOUR && t < 12 * HOUR + 1200 ? 25 : t >= 13 * HOUR ? 34 : 35);
    expect(measureOf(runByHand({ cabinet, times, temperatures: { lower: dip } }), 'print-air-low').value).toBe(C + 34);
  });

  it('exact: comes back when nine tenths of the fall are made good', () => {
    const opened = {
      ...cabinetByHand,
      days: {
        usual: { ...cabinetByHand.days['usual']!, doorOpenings: [{ door: 'front', start: 10 * HOUR, duration: 300 }] },
      },
    };
    const closes = 10 * HOUR + 300;
    const air = (t: number): number =>
      (t < 10 * HOUR ? 40 : t < closes ? 40 - (t - 10 * HOUR) / 30 : Math.min(40, 30 + (t - closes) / 100)) + C;
    const times = [0, 9 * HOUR, 9 * HOUR, 10 * HOUR, closes, closes + 1000, 15 * HOUR, 15 * HOUR, 86400];
    const measure = measureOf(runByHand({ cabinet: opened, times, temperatures: { lower: air } }), 'door-recovery');
    expect(measure.value).toBeCloseTo(900, 6);
    expect(measure.part).toBe('left.bracket.front-1');
  });
});
