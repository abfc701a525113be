import { describe, expect, it } from 'vitest';
import { placedColumn, shiftOf, withReadings } from './given-log.ts';
import type { Log } from './log.ts';

describe('what is said of a log beside its text', () => {
  it.each([
    ['1 h', 3600],
    ['-30 min', -1800],
    ['−30 min', -1800],
    ['+90 s', 90],
    ['soon', undefined],
  ])('exact: its clock is moved by %j', (text, seconds) => {
    expect(shiftOf(text)).toBe(seconds);
  });

  it('exact: a column hangs where the last sign of equality says', () => {
    expect(placedColumn('Temp = 1=top')).toEqual(['Temp = 1', 'top']);
    expect(placedColumn('=top')).toBeUndefined();
    expect(placedColumn('Temp 1')).toBeUndefined();
  });

  it('exact: readings by hand stand behind its columns, and say what they are', () => {
    const column = (name: string): Log['columns'][number] => ({ name }) as Log['columns'][number];
    const log = { file: 'log.csv', columns: [column('top')] } as unknown as Log;
    expect(withReadings(log, { columns: [column('top')] })).toMatchObject({
      file: 'log.csv',
      columns: [{ name: 'top' }, { name: 'top by hand' }],
    });
  });
});
