import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { table } from './table.ts';
import { textWidth } from './text.ts';

const columns = [{ head: 'What' }, { head: 'Value', align: 'right', least: 5 }] as const;

describe('table', () => {
  it('exact: is as narrow as its cells when there is room', () => {
    expect(table(columns, [['air', '31 °C']], 80)).toBe('What  Value\n────  ─────\nair   31 °C');
  });

  it('exact: wraps the widest column, keeps the number whole, and trims line ends', () => {
    const text = table(columns, [['hottest air at the print', '31 °C']], 17);
    expect(text).toBe('What        Value\n──────────  ─────\nhottest     31 °C\nair at the\nprint');
  });

  it('exact: heads of several lines stand on the rule, and their words stay whole', () => {
    const heads = [{ head: 'what' }, { head: 'particles, room\n1/cm³', align: 'right' }] as const;
    expect(table(heads, [['0:00', '3000']], 16)).toBe(
      '      particles,\n            room\nwhat       1/cm³\n────  ──────────\n0:00        3000',
    );
  });

  it('exact: hands finished cells to the ink by row and column, heads and rule excepted', () => {
    const inked: string[] = [];
    table(columns, [['air', '31 °C']], 80, (text, row, column) => {
      inked.push(`${row},${column}:${text}`);
      return text;
    });
    expect(inked).toEqual(['0,0:air ', '0,1:31 °C']);
  });

  it('property: no line is wider than the terminal, whatever the cells hold', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', ' ', '温', '-', '°', '🔥') });
    fc.assert(
      fc.property(fc.array(fc.array(cell, { maxLength: 4 })), fc.integer({ min: 30, max: 100 }), (rows, width) => {
        const text = table(
          [{ head: 'one' }, { head: 'two', align: 'right' }, { head: 'three' }, { head: 'four' }],
          rows,
          width,
        );
        for (const line of text.split('\n')) expect(textWidth(line)).toBeLessThanOrEqual(width);
      }),
    );
  });
});
