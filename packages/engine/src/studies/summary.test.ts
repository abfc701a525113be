import { describe, expect, it } from 'vitest';
import type { Verdict } from '../judge/finding.ts';
import type { Limit } from '../trades/measure.ts';
import { answerOf } from './answer.ts';
import type { Cell, Comparison, Row, Sheet } from './compare.ts';
import { marginOf, summaryOf } from './summary.ts';

const limit = (value: number, kind: Limit['kind'] = 'at-most'): Limit => ({
  id: 'made-up',
  kind,
  value,
  source: 'made up for this test',
  standing: 'own',
});

function row(id: string, cells: Readonly<Record<string, readonly [number, Verdict]>>, more: Partial<Row> = {}): Row {
  const [, quantity, part, day] = id.split('/') as [string, string, string, string];
  const made = Object.entries(cells).map(([sheet, [value, verdict]]): [string, Cell] => [sheet, { value, verdict }]);
  return {
    id,
    title: quantity,
    part,
    day,
    unit: 'speed',
    logarithmic: false,
    limit: limit(1),
    weight: 0.5,
    better: 'lower',
    compared: true,
    cells: Object.fromEntries(made),
    best: [],
    differs: true,
    ...more,
  };
}

describe('summary of a comparison', () => {
  it('exact: holds for each sheet the finding with least room to its own limit, and says where', () => {
    const rows = [
      row('draught/air-speed/left/monday', { a: [0.9, 'holds'], b: [0.1, 'holds'] }),
      row('draught/air-speed/right/sunday', { a: [0.19, 'holds'], b: [0.15, 'holds'] }, { limit: limit(0.2) }),
    ];
    const [only, ...none] = summaryOf(rows, ['a', 'b']);
    expect(none).toEqual([]);
    expect(only!.id).toBe('draught/air-speed');
    expect(only!.cells['a']).toMatchObject({ part: 'right', day: 'sunday', value: 0.19, limit: { value: 0.2 } });
    expect(only!.cells['b']).toMatchObject({ part: 'right', finding: 'draught/air-speed/right/sunday' });
  });

  it('order: a worse verdict comes before less room', () => {
    const rows = [row('heat/x/left/d', { a: [0.99, 'holds'] }), row('heat/x/right/d', { a: [0.9, 'tight'] })];
    expect(summaryOf(rows, ['a'])[0]!.cells['a']).toMatchObject({ part: 'right', verdict: 'tight' });
  });

  it('exact: without a limit the worst is the worst value, either way round', () => {
    const rows = [
      row('airflow/flow/one/d', { a: [5, 'told'], b: [7, 'told'] }, { better: 'higher' }),
      row('airflow/flow/two/d', { a: [3, 'told'], b: [9, 'told'] }, { better: 'higher' }),
    ].map((made) => Object.fromEntries(Object.entries(made).filter(([key]) => key !== 'limit')) as unknown as Row);
    const [only] = summaryOf(rows, ['a', 'b']);
    expect([only!.cells['a']!.value, only!.cells['b']!.value]).toEqual([3, 7]);
    expect(only!.best).toEqual(['b']);
  });

  it('order: what fails comes first, then what differs; equal rows that hold are left out', () => {
    const rows = [
      row('heat/equal/p/d', { a: [0.5, 'holds'], b: [0.5, 'holds'] }, { weight: 1 }),
      row('heat/differs/p/d', { a: [0.5, 'holds'], b: [0.6, 'holds'] }, { weight: 1 }),
      row('heat/fails/p/d', { a: [2, 'fails'], b: [2, 'fails'] }, { weight: 0.1 }),
    ];
    expect(summaryOf(rows, ['a', 'b']).map(({ id }) => id)).toEqual(['heat/fails', 'heat/differs']);
  });

  it('exact: room is a share of the limit, but kelvins for temperatures and the unit itself for a limit of 0', () => {
    expect(marginOf({ value: 0.15 }, limit(0.2), 'speed', 'lower')).toBeCloseTo(0.25, 12);
    expect(marginOf({ value: 300 }, limit(310), 'temperature', 'lower')).toBe(10);
    expect(marginOf({ value: 300 }, limit(310, 'at-least'), 'temperature', 'higher')).toBe(-10);
    expect(marginOf({ value: 0.4 }, limit(0), 'pressure', 'lower')).toBe(-0.4);
  });
});

describe('the answer', () => {
  const sheet = (id: string, broken: string[], costs: Sheet['comesTo'] = {}, price = 0): Sheet => ({
    id,
    title: id,
    edits: [],
    price: { low: price, high: price, sources: [], unknown: [] },
    broken,
    comesTo: costs,
    warnings: [],
  });
  const speed = row('draught/air-speed/left/d', {}, { title: 'air speed at the print' });
  const leak = row('airflow/leak/west/d', {}, { title: 'leak' });
  const comparison = (sheets: readonly Sheet[]): Comparison => ({
    version: 2,
    currency: 'EUR',
    sheets,
    summary: [],
    rows: [speed, leak],
    rest: [],
    wants: [],
    meetAll: sheets.filter(({ broken }) => broken.length === 0).map(({ id }) => id),
    samples: { asked: 0, faults: [] },
    stopped: false,
  });
  const told = (...sheets: Sheet[]): string[] => answerOf(comparison(sheets), (id) => id.toUpperCase());

  it('exact: names the one that meets every limit at the least cost of all three kinds', () => {
    const lines = told(
      sheet('a', [speed.id]),
      sheet('b', [], { cheap: 10, quiet: 30, clean: 0.5 }, 10),
      sheet('c', [], { cheap: 20, quiet: 33, clean: 0.6 }, 20),
    );
    expect(lines).toEqual([
      'B and C meet every limit, air speed at each print included.',
      'At the least cost in money, noise and clean air: B; 10 EUR to buy, 30 dB(A) where it is loudest.',
    ]);
  });

  it('exact: says so when the cheapest is not the quietest', () => {
    const lines = told(
      sheet('b', [], { cheap: 10, quiet: 33, clean: 0.5 }),
      sheet('c', [], { cheap: 20, quiet: 30, clean: 0.5 }),
    );
    expect(lines[1]).toBe('Of these none is least in money, noise and clean air at once: cheapest B; quietest C.');
  });

  it('exact: when none meets all, says what all break and what each breaks besides', () => {
    expect(told(sheet('a', [speed.id, leak.id]), sheet('b', [leak.id]))).toEqual([
      'No option meets every limit; B breaks the fewest, 1.',
      'Air speed at each print is kept by B.',
      'All break: leak.',
      'A breaks besides: air speed at the print.',
    ]);
  });
});
