import { type ReadSource, readCabinet } from '@stillair/engine';
import { describe, expect, it } from 'vitest';
import { measuredOver } from './measured.ts';
import { logOf } from './study-log.ts';

const text = `
stillair: 1
cabinet: { inside: 700 mm x 600 mm x 800 mm, made-of: plywood 12 mm, door: glass 4 mm }
machines: { left: { kind: moving bed 220 } }
sensors: { top: { bay: inside, height: 700 mm } }
days: { usual: {} }
`;
const answer = readCabinet('cabinet', text);
if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
const source: ReadSource = { file: 'cabinet', text, cabinet: answer.cabinet, origins: answer.origins };
const csv = 'time,Probe 1 (°C)\n2026-11-20 14:00,31\n2026-11-20 14:05,32\n';
const file = new File([csv], 'box.csv');

describe('a log that was picked', () => {
  it('exact: a column hangs where the person says, on the clock that they say', async () => {
    const log = await logOf(source, { file, columns: ['Probe 1=top'], shift: '-1 h' });
    if ('fault' in log) throw new Error(log.fault);
    expect(log.columns[0]!.place).toEqual({ what: 'sensor', id: 'top' });
    expect(log.columns[0]!.readings[0]).toEqual({ time: 13 * 3600, value: 31 + 273.15 });
  });

  it('exact: readings typed join the log as columns of their own', async () => {
    const log = await logOf(source, { file, columns: ['Probe 1=top'], readings: ['14:05 top 40 °C'] });
    if ('fault' in log) throw new Error(log.fault);
    expect(log.columns.map(({ name }) => name)).toEqual(['Probe 1', 'top by hand']);
  });

  it('exact: what cannot be read says so, and how to mend it', async () => {
    for (const wishes of [
      {},
      { readings: ['half past two, warm'] },
      { file, columns: ['Probe 1'] },
      { file, shift: 'later' },
      { file },
    ])
      expect(await logOf(source, wishes)).toMatchObject({ fault: expect.any(String), mend: expect.any(String) });
  });
});

describe('a log over the day', () => {
  const column = { name: 'Probe 1', kind: 'temperature', values: 2, before: 1, after: 1 } as const;
  const course = { times: [50_000, 86_400 + 50_000], measured: [304.15, 305.15], before: [], after: [] };

  it('exact: dates fold onto the day, in the panel of its bay and the unit drawn there', () => {
    const study = { day: 'usual', columns: [{ ...column, place: { what: 'sensor', id: 'top' } as const, course }] };
    const [metric] = measuredOver(source.cabinet, study, 'metric');
    expect(metric).toMatchObject({ name: 'Probe 1', panel: 'Air in bay inside', unit: '°C' });
    expect(metric!.points.map(([time]) => time)).toEqual([50_000, 50_000]);
    expect(metric!.points[0]![1]).toBeCloseTo(31, 9);
    expect(measuredOver(source.cabinet, study, 'imperial')[0]!.points[0]![1]).toBeCloseTo(87.8, 9);
  });

  it('exact: what the strip does not draw is left out', () => {
    const place = { what: 'bay', id: 'inside' } as const;
    const study = { day: 'usual', columns: [{ ...column, kind: 'humidity' as const, place, course }] };
    expect(measuredOver(source.cabinet, study, 'metric')).toEqual([]);
  });
});
