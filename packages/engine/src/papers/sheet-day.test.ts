import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { runDay } from '../judge/pipeline.ts';
import { dayTable } from './day-table.ts';
import { sheetDay } from './sheet-day.ts';

const text = readFileSync(new URL('../../../../examples/tool-library.yaml', import.meta.url), 'utf8');
const answer = readCabinet('tool-library.yaml', text);
if (!answer.ok) throw new Error('the example must be read');
const run = runDay(answer.cabinet, 'repair');
const shown = sheetDay(run);

describe('the day of a sheet', () => {
  it('cross: at whole hours it is what the table of the day says', () => {
    const { columns, rows } = dayTable(run);
    for (const [id, of] of [
      ['air.room', (at: number) => shown.room[at]],
      ['air.loft.top', (at: number) => shown.bays['loft']!.at(-1)![at]],
      ['power', (at: number) => Object.values(shown.machines).reduce((sum, watts) => sum + watts[at]!, 0)],
    ] as const) {
      const column = columns.findIndex((each) => each.id === id);
      expect(column, id).toBeGreaterThanOrEqual(0);
      for (const hour of [0, 6, 13])
        expect(of(hour * 12), `${id} at ${hour}`).toBeCloseTo(rows[hour]!.values[column]!, 1);
    }
  });

  it('property: every bay, path and machine is there, at every moment', () => {
    expect(Object.keys(shown.bays)).toEqual(Object.keys(answer.cabinet.bays));
    expect(Object.keys(shown.flows)).toEqual(Object.keys(answer.cabinet.paths));
    for (const list of [shown.room, ...Object.values(shown.flows), ...Object.values(shown.fans)]) {
      expect(list).toHaveLength(shown.times.length);
      expect(list.every(Number.isFinite)).toBe(true);
    }
    expect(Math.max(...shown.fans['exhaust']!)).toBeLessThanOrEqual(1);
    expect(Math.max(...shown.flows['exhaust']!)).toBeGreaterThan(0.005);
  });
});
