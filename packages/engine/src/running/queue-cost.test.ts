import { beforeAll, describe, expect, it } from 'vitest';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import type { ReadSource } from '../judge/judge.ts';
import { partCosts } from './part-cost.ts';
import { type QueueCosts, queueCosts } from './queue-cost.ts';

const HOUR = 3600;
const DAY = 24 * HOUR;

/** One printer with a filter, a price of electricity by the hour; everything invented. */
const text = (more: string): string => `
stillair: 1
people: { desk: { at: [400 mm, -1500 mm, 1200 mm], hours: 8:00 to 18:00 } }
cabinet: { inside: 800 mm x 600 mm x 840 mm, made-of: plywood 18 mm, door: glass 4 mm }
bays: { lower: { z: 0 mm to 840 mm } }
machines: { left: { kind: moving bed 220, bay: lower } }
air: { exhaust: { from: lower, to: room, parts: [{ fan: axial 120 mm quiet }, { filter: pleated E11 100 mm }] }, intake: { from: room, to: lower, hole: 80 mm round } }
prices: { PLA: 25 EUR, ABS: 28 EUR }
power: { tariff: { 0:00: 0.20 EUR/kWh, 8:00: 0.40 EUR/kWh } }
costs: { failures: 5 %, waste: 6 %, times: { usual: 200 } }
days: { usual: { repeated: no, jobs: { bracket: { machine: left, material: ABS, start: 9:00, for: 4 h, mass: 60 g } } } }
${more}`;

const queue = `queue:
  from: 2026-11-30 0:00
  length: 1 d
  present: { daily: 0:00 to 24:00 }
  jobs: { bracket: { material: ABS, for: 4 h, mass: 60 g, part-size: 100 mm, copies: 2 } }`;

function read(more: string): ReadSource {
  const answer = readCabinet('test.yaml', text(more));
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return { file: 'test.yaml', text: text(more), cabinet: answer.cabinet, origins: answer.origins };
}

const rowOf = ({ rows }: Pick<QueueCosts, 'rows'>, id: string): number => rows.find((row) => row.id === id)!.value!;

describe('what a planned week costs', () => {
  let week: QueueCosts;
  beforeAll(async () => {
    const starts = [
      { id: 'bracket', machine: 'left', start: 2 * HOUR },
      { id: 'bracket (2)', machine: 'left', start: 9 * HOUR },
    ];
    week = await queueCosts(read(queue), { starts, samples: 8 });
  }, 60_000);

  it('cross: a week of one day with one job costs what that job costs on a day of the file', async () => {
    const source = read(queue);
    const one = await queueCosts(source, { starts: [{ id: 'bracket', machine: 'left', start: 9 * HOUR }], samples: 0 });
    const { parts, days } = await partCosts(source, { samples: 0 });
    expect(one.until).toBe(DAY);
    for (const row of parts[0]!.rows) expect(rowOf(one, row.id) ?? 0, row.id).toBeCloseTo(row.value ?? 0, 6);
    expect(one.total.value).toBeCloseTo(parts[0]!.total.value!, 6);
    expect(one.running.week).toBeCloseTo(days[0]!.running, 6);
  });

  it('property: nothing is forgotten or counted twice: jobs add up to rows, rows to the week, jobs bear what running costs', () => {
    const { jobs, rows, total, running, eachJob, month } = week;
    expect(jobs.map(({ job }) => job)).toEqual(['bracket', 'bracket (2)']);
    for (const { id, value } of rows) {
      const own = jobs.map((job) => job.rows.find((row) => row.id === id)!.value);
      if (value !== undefined)
        expect(
          own.reduce((sum, each) => sum! + each!, 0),
          id,
        ).toBeCloseTo(value, 9);
    }
    expect(rows.reduce((sum, { value = 0 }) => sum + value, 0)).toBeCloseTo(total.value!, 9);
    expect(running.jobs).toBeCloseTo(running.week, 9);
    expect(eachJob.value).toBeCloseTo(total.value! / 2, 9);
    expect(month.value).toBeCloseTo(total.value! * 30.4375, 6);
    for (const { trade } of jobs) expect(trade.sum).toBeCloseTo(trade.value, 9);
  });

  it('property: a job by day costs more electricity than at half the price at night, and bands hold the middle', () => {
    const [night, day] = week.jobs.map(({ rows }) => rows.find(({ id }) => id === 'electricity')!.value!);
    expect(day! / night!).toBeGreaterThan(1.6);
    expect(day! / night!).toBeLessThan(2.1);
    const { p10, p50, p90 } = week.total;
    expect(p10! < p50! && p50! < p90!).toBe(true);
    expect(week.samples).toEqual({ asked: 8, ran: 8 });
  });

  it('limit: what the plan leaves out is not counted, and what has no price is named', async () => {
    const source = read(queue.replace('copies: 2 }', '}, strap: { material: TPU, for: 1 h }'));
    const none = await queueCosts(source, { starts: [], samples: 0 });
    expect(none.jobs).toEqual([]);
    const starts = ['bracket', 'strap'].map((id, at) => ({ id, machine: 'left', start: (2 + 8 * at) * HOUR }));
    const some = await queueCosts(source, { starts, samples: 0 });
    expect(some.jobs.map(({ job }) => job)).toEqual(['bracket']);
    expect(some.remarks).toEqual(['not counted, as nobody said what their filament costs: strap']);
    expect(none.total).toMatchObject({ missing: expect.stringContaining('give prices:') });
  });
});
