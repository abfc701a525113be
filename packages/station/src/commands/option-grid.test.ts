import type { Verdict } from '@stillair/engine';
import { describe, expect, it } from 'vitest';
import { inkFor } from '../ink.ts';
import { sourceNotes } from '../source-notes.ts';
import { textWidth } from '../text.ts';
import { type GridRow, optionGrid } from './option-grid.ts';

const letters = 'ABCDEFGHIJ';
const limit = { id: 'made-up', kind: 'at-most', value: 318.15, source: 'made up', standing: 'own' } as const;

/** One row of temperatures, °C, each with the verdict that is given. */
function rowOf(
  cells: readonly (readonly [celsius: number, verdict: Verdict])[],
  best: readonly string[] = [],
): GridRow {
  return {
    title: 'hottest air in the bay',
    unit: 'temperature',
    best,
    cells: Object.fromEntries(
      cells.map(([celsius, verdict], at) => {
        const value = celsius + 273.15;
        const place = at < 2 ? 'upper, usual' : 'lower, usual';
        return [letters[at]!, { value, verdict, limit, place, p10: value - 2, p90: value + 2, chance: 0.5 }];
      }),
    ),
  };
}

function grid(rows: readonly GridRow[], count: number, { width = 80, bands = false } = {}): string[] {
  const columns = Array.from(letters.slice(0, count), (letter) => ({ id: letter, letter }));
  const look = { units: 'metric', width, ink: inkFor({ colour: false }), notes: sourceNotes(), bands } as const;
  return optionGrid(rows, columns, look).split('\n');
}

const four = rowOf(
  [
    [52, 'fails'],
    [46.5, 'tight'],
    [49, 'fails'],
    [31, 'holds'],
  ],
  ['D'],
);

describe('optionGrid', () => {
  it('exact: tells limit and unit once, each verdict by a sign, and where it fails', () => {
    const lines = grid([four], 4);
    expect(lines[0]).toBe('Fails in some option');
    expect(lines[1]!.trim().split(/ +/)).toEqual(['A', 'B', 'C', 'D']);
    expect(lines[2]).toBe('hottest air in the bay, °C, at most 45 [1]');
    expect(lines[3]!.trim()).toMatch(/^52 x +46\.5 ~ +49 x +31 \*$/);
    expect(lines[4]).toBe('  fails at A: upper, usual; C: lower, usual');
    expect(lines).toHaveLength(5);
  });

  it('exact: letters stand over the last digit of their numbers', () => {
    const [, head, , values] = grid([four], 4);
    for (const [letter, number] of [
      ['A', '52'],
      ['B', '46.5'],
      ['D', '31'],
    ] as const)
      expect(head!.indexOf(letter)).toBe(values!.indexOf(number) + number.length - 1);
  });

  it('exact: bands and chances come beneath when they are wanted', () => {
    const lines = grid([four], 4, { bands: true });
    expect(lines[4]!.split(/ {2,}/)).toEqual(['90 %', '54', '48.5', '51', '33']);
    expect(lines[5]!.split(/ {2,}/)).toEqual(['10 %', '50', '44.5', '47', '29']);
    expect(lines[6]!.split(/ {2,}/)).toEqual(['kept', '50 %', '50 %', '50 %', '50 %']);
  });

  it('exact: a thing that an option has not is a dash; an unknown value has a sign and no number', () => {
    const { cells, ...row } = four;
    const { value: _, ...unknown } = { ...cells['B']!, verdict: 'unknown' as const };
    expect(grid([{ ...row, cells: { A: cells['A']!, B: unknown } }], 3)[3]!.trim()).toMatch(/^52 x +\? +–$/);
  });

  it('order: rows that fail come before those that are tight and those that hold', () => {
    const rows = [rowOf([[20, 'holds']]), rowOf([[46, 'tight']]), rowOf([[60, 'fails']]), rowOf([[20, 'told']])];
    expect(grid(rows, 1).filter((line) => /^[A-Z]\w+ (in|a) /.test(line))).toEqual([
      'Fails in some option',
      'Tight in some option, fails in none',
      'Holds in all options',
      'Without a limit',
    ]);
  });

  const ten = rowOf(Array.from({ length: 10 }, (_, at) => [20 + at, 'holds'] as const));
  it.each([
    [8, 80, [1, 1]],
    [9, 80, [2, 2]],
    [10, 100, [2, 2]],
    [8, 40, [2, 3]],
  ])(
    'limit: %d options on %d columns stand in %j blocks without and with bands, none too wide',
    (count, width, blocks) => {
      for (const [at, bands] of [false, true].entries()) {
        const lines = grid([ten], count, { width, bands });
        expect(lines.filter((line) => line.startsWith('Holds in all'))).toHaveLength(blocks[at]!);
        for (const line of lines) expect(textWidth(line)).toBeLessThanOrEqual(width);
      }
    },
  );
});
