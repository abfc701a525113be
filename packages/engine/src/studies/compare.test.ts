import { describe, expect, it } from 'vitest';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import type { ReadSource } from '../judge/judge.ts';
import { sampleColumn } from '../judge/samples.ts';
import type { Trade } from '../trades/measure.ts';
import { bestFor } from './best-for.ts';
import { AS_IT_STANDS, compare } from './compare.ts';
import { priceDifference } from './price-difference.ts';
import type { WantRule } from './wants.ts';

const EMPTY = `
stillair: 1
title: empty
cabinet: { inside: 800 mm x 600 mm x 900 mm, made-of: plywood 18 mm, door: glass 4 mm }
bays: { only: { z: 0 mm to 900 mm } }
air: { hole: { from: room, to: only, hole: 80 mm round } }
days: { usual: {} }
options:
  airy: { title: air the room well, edits: [ { set: { room.air-changes: 2 /h } } ] }
  same: { title: another title, edits: [ { set: { title: another } } ] }
  fan: { title: a fan, edits: [ { set: { air.hole.parts: [ { fan: axial 80 mm quiet } ] } } ] }
`;

function sourceOf(text: string): ReadSource {
  const answer = readCabinet('test.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return { file: 'test.yaml', text, cabinet: answer.cabinet, origins: answer.origins };
}

/** Says how still the room is as if it were the air at a print: one over its air changes. Made up. */
const madeUp: Trade = {
  id: 'draught',
  title: 'made up',
  measure: ({ cabinet: { room } }) => [
    {
      trade: 'draught',
      quantity: 'air-speed',
      part: 'room',
      title: 'made-up speed',
      value: 1 / room.airChangesPerHour,
      unit: 'speed',
      logarithmic: true,
      limit: { id: 'made-up', kind: 'at-most', value: 1, source: 'made up for this test', standing: 'own' },
      steps: [],
      remedies: [],
      weight: 0.5,
      better: 'lower',
      compared: true,
    },
  ],
};

const id = 'draught/air-speed/room/usual';

describe('compare', async () => {
  const source = sourceOf(EMPTY);
  const comparison = await compare(source, { trades: [madeUp], samples: 20 });

  it('exact: the cabinet as it stands comes first, then every option in the file’s order', () => {
    expect(comparison.sheets.map((sheet) => sheet.id)).toEqual([AS_IT_STANDS, 'airy', 'same', 'fan']);
    expect(comparison.version).toBe(2);
  });

  it('exact: a row holds value, band and verdict of every sheet and marks the best', () => {
    const row = comparison.rows.find((candidate) => candidate.id === id)!;
    expect(row.cells['airy']!.value).toBeCloseTo(0.5, 12);
    expect(row.cells['airy']!.verdict).toBe('holds');
    expect(row.cells[AS_IT_STANDS]!.value).toBeCloseTo(1 / source.cabinet.room.airChangesPerHour, 12);
    expect(row.best).toEqual(['airy']);
  });

  it('exact: an option that changes nothing has the same numbers to the last digit: common samples', () => {
    const { cells } = comparison.rows.find((candidate) => candidate.id === id)!;
    expect(cells['same']).toEqual(cells[AS_IT_STANDS]);
  });

  it('exact: the best for still air is the airy option, for certain; the others are alike for its price', () => {
    const still = comparison.wants.find(({ want }) => want === 'still')!;
    expect(still).toMatchObject({ best: 'airy', tied: [], alike: false });
    expect(still.chances['airy']).toBeGreaterThan(0.9);
    const cheap = comparison.wants.find(({ want }) => want === 'cheap')!;
    expect(cheap.alike).toBe(true);
    expect(cheap.chances['fan']).toBe(0);
  });

  it('exact: only sheets without a broken limit meet all', () => {
    expect(comparison.meetAll).toEqual(['airy']);
    expect(comparison.sheets[0]!.broken).toEqual([id]);
    expect(comparison.sheets[1]!.chanceOfAll).toBe(1);
  });

  it('exact: a bought part costs what the catalogue says, what stays costs nothing', () => {
    const fan = comparison.sheets.find((sheet) => sheet.id === 'fan')!;
    expect(fan.price).toMatchObject({ low: 6, high: 16 });
    expect(comparison.sheets.find((sheet) => sheet.id === 'airy')!.price).toEqual({
      low: 0,
      high: 0,
      sources: [],
      unknown: [],
    });
  });

  it('property: plain data', () => {
    expect(JSON.parse(JSON.stringify(comparison))).toEqual(comparison);
  });
});

describe('price of a change', () => {
  const { cabinet } = sourceOf(EMPTY);
  const priced = (prices: Record<string, [number, number]>) => ({
    ...cabinet,
    prices: Object.fromEntries(
      Object.entries(prices).map(([path, [low, high]]) => [path, { low, high, source: 'made up' }]),
    ),
  });

  it('exact: a part that only moves in its path is not bought again; a second one of its kind is', () => {
    const before = priced({ 'paths.out.parts.0': [10, 20] });
    const moved = priced({ 'paths.out.parts.0': [3, 4], 'paths.out.parts.1': [10, 20] });
    expect(priceDifference(before, moved)).toMatchObject({ low: 3, high: 4 });
    const two = priced({ 'paths.out.parts.0': [10, 20], 'paths.out.parts.1': [10, 20] });
    expect(priceDifference(before, two)).toMatchObject({ low: 10, high: 20 });
  });

  it('exact: what is added without a price makes the whole unknown, and no candidate for the cheapest', async () => {
    const heater = 'heats.own: { what: heater, bay: only, power: 150 W, holds: 38 °C }';
    const source = sourceOf(`${EMPTY}  warm: { title: a heater, edits: [ { add: { ${heater} } } ] }\n`);
    const { sheets, wants } = await compare(source, { trades: [madeUp], samples: 2 });
    expect(sheets.map(({ price }) => price.unknown)).toEqual([[], [], [], [], ['heats.own']]);
    expect(sheets.find(({ id }) => id === 'warm')!.comesTo).not.toHaveProperty('cheap');
    expect(Object.keys(wants.find(({ want }) => want === 'cheap')!.chances)).toEqual([
      AS_IT_STANDS,
      'airy',
      'same',
      'fan',
    ]);
  });

  it('limit: what becomes useless is not paid back', () => {
    expect(priceDifference(priced({ 'paths.out.parts.0': [10, 20] }), priced({}))).toMatchObject({ low: 0, high: 0 });
  });
});

describe('best for a want', () => {
  const rule: WantRule = {
    want: 'cool',
    measuredBy: 'made up',
    unit: 'number',
    matters: 0.01,
    about: { trade: 'heat', quantity: 'peak-air' },
    of: () => undefined,
  };
  const count = 200;
  const inputs = new Map(['leak', 'power', 'humidity'].map((path) => [path, sampleColumn(path, count, 1)] as const));
  const best = (values: Record<string, (number | undefined)[]>) =>
    bestFor(rule, new Map(Object.entries(values)), inputs, (path) => ({
      path,
      label: `the ${path}`,
      spread: { p10: 1, p50: 2, p90: 3, shape: 'normal' },
    }));

  it('exact: tied sheets are told with the input that would settle it', () => {
    const leak = inputs.get('leak')!;
    const { tied, settle, chances } = best({ a: leak.map((u) => u), b: leak.map(() => 0.5) });
    expect(tied).toHaveLength(1);
    expect(settle).toMatchObject({ path: 'leak', label: 'the leak' });
    expect(Math.abs(settle!.correlation)).toBeCloseTo(1, 6);
    // a is the input itself and b its middle, 2: the choice turns there, and half way to 1 or 3 is near enough.
    expect(settle).toMatchObject({ below: 'a', above: 'b', turnsAt: { kind: 'times' }, settles: 1 });
    expect(settle!.turnsAt.value).toBeCloseTo(1, 1);
    expect(settle!.within).toBeCloseTo(0.25, 1);
    expect(chances['a']!).toBeCloseTo(0.5, 1);
  });

  it('limit: an input that moves the difference but leaves most of the choice open settles nothing', () => {
    const luck = sampleColumn('luck itself', count, 9);
    const leak = inputs.get('leak')!;
    const { tied, settle } = best({ a: leak.map((u, at) => 0.3 * u + luck[at]!), b: leak.map(() => 0.65) });
    expect(tied).toHaveLength(1);
    expect(settle).toBeUndefined();
  });

  it('exact: sheets that differ by less than matters are alike and share the chance', () => {
    const flat = new Array<number>(count).fill(1);
    const { chances, alike, settle } = best({ a: flat, b: flat.map((value) => value + 0.005) });
    expect(chances).toEqual({ a: expect.closeTo(0.5, 9) as number, b: expect.closeTo(0.5, 9) as number });
    expect(alike).toBe(true);
    expect(settle).toBeUndefined();
  });

  it('property: a tie that follows no input is not settled by one that luck picks', () => {
    const luck = sampleColumn('luck itself', count, 9);
    const { tied, settle } = best({ a: luck, b: luck.map(() => 0.5) });
    expect(tied).toHaveLength(1);
    expect(settle).toBeUndefined();
  });

  it('property: a sample in which one sheet failed counts for none', () => {
    const { chances } = best({ a: [1, undefined, 1], b: [2, 0, 2] });
    expect(chances).toEqual({ a: 1, b: 0 });
  });

  it('limit: no sheet, no best', () => {
    expect(best({}).best).toBeUndefined();
  });
});
