import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import type { ReadSource } from '../judge/judge.ts';
import { measureDays } from '../judge/pipeline.ts';
import { cost } from '../trades/cost/cost.ts';
import { parseDate } from '../units/calendar.ts';
import type { Diary, JobRun } from './diary.ts';
import { failuresOf } from './failures.ts';
import { monthCost } from './month-cost.ts';
import { type PartCost, type PartCosts, partCosts } from './part-cost.ts';
import { printingPerYear } from './printing-year.ts';

const HOUR = 3600;
const hall = readFileSync(join(import.meta.dirname, '../../../station/fixtures/hall.yaml'), 'utf8');
const priced = `${hall}costs: { times: { usual: 100 }, failures: 20 %, hand: 12 min, hand-hour: 30 EUR/h, cabinet-life: 5 years }\nprices: { moving bed 220: 300 EUR }\n`;
const today = parseDate('2026-11-28') as number;

function sourceOf(text: string): ReadSource {
  const answer = readCabinet('hall.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints[0]!.what);
  return { file: 'hall.yaml', text, cabinet: answer.cabinet, origins: answer.origins };
}
const source = sourceOf(priced);

const run = (on: string, more: Partial<JobRun> = {}): JobRun => ({
  first: parseDate(on) as number,
  last: parseDate(on) as number,
  times: 1,
  job: 'bracket',
  machine: 'left',
  material: 'ABS',
  duration: 6 * HOUR,
  mass: 0.1,
  failed: 0,
  ...more,
});
const diary = (jobs: readonly JobRun[]): Diary => ({ began: jobs[0]!.first, done: [], jobs, remarks: [] });
const row = ({ rows }: Pick<PartCost, 'rows'>, id: string): number => rows.find((one) => one.id === id)!.value!;

describe('what a part costs', () => {
  let costs: PartCosts;
  let part: PartCost;
  beforeAll(async () => {
    costs = await partCosts(source, { samples: 0, partsAJob: 4 });
    part = costs.parts[0]!;
  });

  it('exact: its rows add up to the job, and a part is its share of the job', () => {
    expect(part.rows.reduce((sum, { value = 0 }) => sum + value, 0)).toBeCloseTo(part.total.value!, 12);
    expect(part.part.value).toBeCloseTo(part.total.value! / 4, 12);
    expect(part.rows.every(({ value }) => value !== undefined && value >= 0)).toBe(true);
  });

  it('exact: hands of 12 min at 30 an hour; a 300 machine by its hours; one in five fails', () => {
    const { machineLife } = source.cabinet.costs;
    expect(row(part, 'hands')).toBeCloseTo(6, 12);
    expect(row(part, 'machine')).toBeCloseTo((300 * 6 * HOUR) / machineLife, 9);
    expect(row(part, 'failures')).toBeCloseTo(0.2 * part.total.value!, 9);
    expect(part.hand.value).toBeCloseTo((12 * 60) / 0.8, 9);
  });

  it('exact: the cabinet is written off over five years, by 600 h of printing in each', () => {
    const bill = measureDays(source.cabinet, [cost]).measures.get('cost/bill/cabinet/standing')!.value!;
    expect(row(part, 'cabinet')).toBeCloseTo((bill / 5) * (6 / 600), 9);
  });

  it('cross: without hands and the cabinet it is what the cost trade says, and the jobs bear what the day costs', () => {
    const { measures } = measureDays(source.cabinet, [cost]);
    expect(part.trade.value).toBe(measures.get(part.trade.id)!.value);
    expect(part.trade.sum).toBeCloseTo(part.trade.value, 12);
    expect(costs.days[0]!.running).toBeCloseTo(measures.get('cost/running-day/cabinet/usual')!.value!, 12);
    expect(costs.days[0]!.jobs).toBeCloseTo(costs.days[0]!.running, 12);
  });

  it('property: with samples every row has a band around its middle, the same for the same seed', async () => {
    const sampled = await partCosts(source, { samples: 8 });
    const { total } = sampled.parts[0]!;
    expect(total.p10!).toBeLessThan(total.p90!);
    expect(total.value!).toBeGreaterThan(total.p10! / 2);
    expect(await partCosts(source, { samples: 8 })).toEqual(sampled);
    expect(sampled.samples).toEqual({ asked: 8, ran: 8 });
  });

  it('limit: what nobody gave is not counted, and says so', async () => {
    const { parts } = await partCosts(sourceOf(hall), { samples: 0 });
    const missing = parts[0]!.rows.filter(({ value }) => value === undefined);
    expect(missing.map(({ id }) => id)).toEqual(['machine', 'cabinet', 'hands']);
    expect(missing.every((one) => one.missing !== undefined)).toBe(true);
    expect(parts[0]!.trade.sum).toBeCloseTo(parts[0]!.total.value!, 12);
  });

  it('exact: a job file goes in place of what its machine prints, with all that it feeds', async () => {
    const put = {
      entry: { name: 'clip', for: 3 * HOUR, mass: 0.05, nozzle: 518.15, bed: 373.15 },
      machine: 'left',
      material: 'ABS',
      start: 22 * HOUR,
    };
    const { parts, remarks } = await partCosts(source, { samples: 0, put });
    expect(parts.map(({ job }) => job)).toEqual(['clip']);
    expect(parts[0]).toMatchObject({ duration: 3 * HOUR, mass: 0.05, day: 'usual' });
    expect(row(parts[0]!, 'filament')).toBeCloseTo((row(part, 'filament') * 0.05) / part.mass, 9);
    expect(row(parts[0]!, 'waste') / row(parts[0]!, 'filament')).toBeCloseTo(0.02, 9);
    expect(remarks.join()).toContain('only tails of spools');
  });
});

describe('what a diary knows of costs', () => {
  it('exact: 12 failures in 96 prints; with few prints it says nothing', () => {
    expect(failuresOf([run('2026-01-01', { times: 96, failed: 12 })])!.share).toBe('12.9 (8.55 to 17.2) %');
    expect(failuresOf([run('2026-01-01', { times: 19, failed: 2 })])).toBeUndefined();
  });

  it('exact: a year of printing by the last year of the diary, else by costs.times', () => {
    expect(printingPerYear(source.cabinet, undefined, undefined)).toBe(600 * HOUR);
    const half = diary([run('2026-05-29', { last: today, times: 50 })]);
    const days = today - half.began;
    expect(printingPerYear(source.cabinet, half, today)! / HOUR).toBeCloseTo((300 * 365.25) / days, 6);
    expect(printingPerYear(sourceOf(hall).cabinet, undefined, undefined)).toBeUndefined();
  });

  it('exact: counted failures stand in place of the assumed share', async () => {
    const jobs = [run('2026-10-01', { last: today, times: 40, failed: 20 })];
    const { parts, remarks } = await partCosts(sourceOf(hall), { samples: 0, diary: diary(jobs), today });
    expect(remarks.join()).toContain('of 40 prints in the diary 20 failed');
    expect(row(parts[0]!, 'failures') / parts[0]!.total.value!).toBeCloseTo(0.5, 6);
  });
});

describe('what a month costs', () => {
  it('cross: a job on each day of it costs the electricity, wear and filters of as many such days', async () => {
    const jobs = [run('2026-10-01', { last: parseDate('2026-10-31') as number, times: 31, start: 9 * HOUR })];
    const month = await monthCost(source, { diary: diary(jobs), year: 2026, month: 10, today, samples: 0 });
    const alone = measureDays(source.cabinet, [cost]).measures.get('cost/running-day/cabinet/usual')!;
    const [power, filters, wear] = alone.steps.map(({ value }) => value!);
    expect(month).toMatchObject({ first: '2026-10-01', last: '2026-10-31', jobs: 31, failed: 0 });
    expect((row(month, 'electricity') + row(month, 'standby')) / 31).toBeCloseTo(power!, 6);
    expect(row(month, 'filters') / 31).toBeCloseTo(filters!, 9);
    expect(row(month, 'wear') / 31).toBeCloseTo(wear!, 9);
    expect(month.rows.reduce((sum, { value = 0 }) => sum + value, 0)).toBeCloseTo(month.total.value!, 9);
    expect(month.goodJob!.value).toBeCloseTo(month.total.value! / 31, 9);
  });

  it('limit: a month in which nothing ran costs what the cabinet takes by itself, and of this month only days that have come count', async () => {
    const jobs = [run('2026-10-01', { times: 3 })];
    const month = await monthCost(source, { diary: diary(jobs), year: 2026, month: 11, today, samples: 0 });
    expect(month).toMatchObject({ last: '2026-11-28', jobs: 0 });
    expect(month.goodJob).toBeUndefined();
    expect(row(month, 'filament') + row(month, 'electricity') + row(month, 'filters') + row(month, 'hands')).toBe(0);
    expect(row(month, 'standby')).toBeGreaterThan(0);
  });
});
