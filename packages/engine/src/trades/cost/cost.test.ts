import { describe, expect, it } from 'vitest';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Costs } from '../../cabinet/costs.ts';
import { readCabinet } from '../../cabinet/read-cabinet.ts';
import { cutListOf } from '../../joinery/cut-list.ts';
import { measureAll } from '../../judge/pipeline.ts';
import { verdictOf } from '../../judge/verdict.ts';
import type { DayRun, Measure } from '../measure.ts';
import { cabinetByHand, runByHand } from '../run-by-hand.ts';
import { costOf } from '../tariff.ts';
import { cost } from './cost.ts';

const KWH = 3.6e6;
const HOUR = 3600;

function cabinetWith(costs: Partial<Costs>, more: Partial<Cabinet> = {}): Cabinet {
  return { ...cabinetByHand, ...more, costs: { ...cabinetByHand.costs, ...costs } };
}

function standing(cabinet: Cabinet, quantity: string): Measure {
  const found = cost.standing(cabinet).filter((measure) => measure.quantity === quantity);
  expect(found.map(({ part }) => part)).toHaveLength(1);
  return found[0]!;
}

function onDay(run: DayRun, quantity: string): Measure {
  const found = cost.measure(run).filter((measure) => measure.quantity === quantity);
  expect(found.map(({ part }) => part)).toHaveLength(1);
  return found[0]!;
}

describe('bill', () => {
  it('exact: six parts of plywood on whole sheets, 10 % set aside, own time at nothing', () => {
    const { lots } = cutListOf(cabinetByHand);
    expect(lots.map(({ parts }) => parts.map(({ of }) => of))).toEqual([
      ['faces.top', 'faces.bottom', 'faces.left', 'faces.right', 'faces.back', 'doors.front'],
    ]);
    const sheets = standing(cabinetByHand, 'sheets');
    expect(sheets.value).toBeGreaterThanOrEqual(2);
    expect(standing(cabinetByHand, 'bill').value).toBeCloseTo(sheets.value! * 2.5 * 1.25 * 35 * 1.1, 6);
  });

  it('exact: hours cost what the joiner asks; a carcass that is bought has neither sheets nor hours of its own', () => {
    const own = standing(cabinetByHand, 'bill').value!;
    const seconds = standing(cabinetByHand, 'hours').value!;
    const made = standing(cabinetWith({ hour: { low: 40, high: 50 } }), 'bill').value!;
    expect(made - own).toBeCloseTo((seconds / HOUR) * 45, 6);
    const bought = cabinetWith({ carcass: { low: 200, high: 300 } });
    expect(standing(bought, 'bill').value).toBeCloseTo(250 * 1.1, 9);
    expect(cost.standing(bought).some(({ quantity }) => quantity === 'sheets')).toBe(false);
    expect(standing(bought, 'hours').value).toBe(0);
  });

  it('cross: hours by the rule, written out: 6 parts, joints, one door, three to set up, 20 % for the forgotten', () => {
    const joints = 2 * (0.836 + 0.886) + 4 * 0.6;
    expect(standing(cabinetByHand, 'hours').value! / HOUR).toBeCloseTo((0.2 * 6 + 0.35 * joints + 0.5 + 3) * 1.2, 6);
  });

  it('exact: a budget holds a hair above the bill and fails a hair below', () => {
    const value = standing(cabinetByHand, 'bill').value!;
    const at = (bill: number): string => {
      const { value: sum, limit } = standing(cabinetWith({}, { limits: { bill } }), 'bill');
      return verdictOf(sum, undefined, limit);
    };
    expect(at(value * (1 + 1e-9))).toBe('holds');
    expect(at(value * (1 - 1e-9))).toBe('fails');
    expect(standing(cabinetByHand, 'bill').limit).toBeUndefined();
  });

  it('exact: a part that fits no sheet is told, and turning it may help', () => {
    const sheets: Costs['sheets'] = { plywood: [1.2, 2.6] };
    const inside = { width: 1, depth: 0.6, height: 1.4 };
    const of = (turned: boolean): Measure => standing(cabinetWith({ sheets, turned }, { inside }), 'sheets');
    expect(of(false).value).toBeUndefined();
    expect(of(false).missing).toContain('costs.turned');
    expect(of(true).value).toBeGreaterThan(0);
  });

  it('property: dearer prices, wider cuts and more set aside never make it cheaper', () => {
    const of = (costs: Partial<Costs>): number => standing(cabinetWith(costs), 'bill').value!;
    expect(of({ pricePosition: 0.9 })).toBeGreaterThan(of({ pricePosition: 0.1 }));
    expect(of({ kerf: 0.02 })).toBeGreaterThanOrEqual(of({ kerf: 0 }));
    expect(of({ contingencyMaterial: 0.2 })).toBeGreaterThan(of({ contingencyMaterial: 0 }));
  });

  it('limit: in another money nothing of the catalogue counts, and it says so', () => {
    const text = `stillair: 1
currency: CHF
cabinet: { inside: 800 mm x 600 mm x 850 mm, made-of: plywood 18 mm, door: glass 4 mm }
machines: { left: { kind: moving bed 220 } }
days: { usual: { jobs: { bracket: { machine: left, material: ABS, start: 9:00, for: 6 h } } } }
`;
    const of = (more: string): Measure => {
      const answer = readCabinet('cabinet.yaml', text + more);
      if (!answer.ok) throw new Error(answer.complaints[0]!.what);
      return standing(answer.cabinet, 'bill');
    };
    expect(of('').value).toBeUndefined();
    expect(of('').missing).toContain('not converted');
    expect(of('prices: { plywood: 40 CHF/m2, glass: 50 CHF/m2 }\n').value).toBeGreaterThan(100);
  });
});

describe('carcasses', () => {
  const carcass = {
    title: 'wardrobe',
    inside: { width: 0.9, depth: 0.56, height: 1.9 },
    opening: [0.88, 1.88],
    board: 'plywood',
    thickness: 0.018,
    changes: { back: { low: 20, high: 30 } },
  } as const;

  it('exact: bought: its price and its changes; without a price unknown', () => {
    const of = (price?: { low: number; high: number }): Measure =>
      standing(
        cabinetWith(
          {},
          { carcasses: { it: { ...carcass, from: 'bought', ...(price === undefined ? {} : { price }) } } },
        ),
        'carcass-price',
      );
    expect(of({ low: 60, high: 80 }).value).toBe(70 + 25);
    expect(of().missing).toContain('carcasses.it.price');
  });

  it('exact: built: whole sheets, and hours where somebody asks for money', () => {
    const of = (costs: Partial<Costs>): number =>
      standing(cabinetWith(costs, { carcasses: { it: { ...carcass, from: 'built' } } }), 'carcass-price').value!;
    expect((of({}) - 25) / (2.5 * 1.25 * 35 * 1.1)).toBeCloseTo(Math.round((of({}) - 25) / (2.5 * 1.25 * 35 * 1.1)), 9);
    expect(of({ hour: { low: 30, high: 30 } })).toBeGreaterThan(of({}) + 100);
  });
});

describe('running', () => {
  it('cross: what prices that change over the day make of 8 h at 160 W (separate calculation)', () => {
    const tariff = [
      [0, 0.15 / KWH],
      [7 * HOUR, 0.22 / KWH],
      [17 * HOUR, 0.4 / KWH],
      [21 * HOUR, 0.22 / KWH],
      [23 * HOUR, 0.15 / KWH],
    ] as const;
    const at = (hour: number): number =>
      costOf({ times: Float64Array.of(hour * HOUR, (hour + 8) * HOUR), values: Float64Array.of(160, 160) }, tariff);
    expect([15, 18, 21, 22, 23].map((hour) => Number(at(hour).toFixed(4)))).toEqual([
      0.3968, 0.3344, 0.2144, 0.2032, 0.192,
    ]);
  });

  const bed = { left: (t: number): number => (t >= 9 * HOUR && t < 15 * HOUR ? 88 : 0) };

  it('exact: a day is its electricity, its wear, and filters by the hours in which anything prints', () => {
    const run = runByHand({ bedPowers: bed });
    const power = onDay(run, 'running-day').steps[0]!.value!;
    expect(power).toBeGreaterThan((88 * 6 * HOUR * 0.3) / KWH);
    expect(onDay(run, 'running-day').value).toBeCloseTo(power + 6 * 0.05, 9);
    const priced = { ...cabinetByHand, prices: { 'paths.exhaust.parts.0': { low: 20, high: 30, source: 'test' } } };
    const filtered = onDay(runByHand({ bedPowers: bed, cabinet: priced }), 'running-day').value!;
    expect(filtered).toBeCloseTo(power + 6 * 0.05 + (25 * 6 * HOUR) / 3.6e6, 9);
  });

  it('exact: a year is as many days as come', () => {
    const run = runByHand({ bedPowers: bed, cabinet: cabinetWith({ times: { usual: 200 } }) });
    expect(onDay(run, 'running-year').value).toBeCloseTo(200 * onDay(run, 'running-day').value!, 9);
    expect(cost.measure(runByHand()).some(({ quantity }) => quantity === 'running-year')).toBe(false);
  });

  it('exact: the only part of a day bears all of its electricity; 100 g at 25, 5 % wasted, one in ten fails', () => {
    const run = runByHand({ bedPowers: bed });
    const day = onDay(run, 'running-day').steps[0]!.value!;
    expect(onDay(run, 'print-cost').value).toBeCloseTo((0.1 * 25 * 1.05 + day + 6 * 0.05) / 0.9, 9);
  });

  it('exact: a filament without a price is unknown and names the key', () => {
    expect(onDay(runByHand({ cabinet: cabinetWith({ filament: {} }) }), 'print-cost').missing).toContain('prices.ABS');
  });

  it('property: of two prints of one length each bears half of what is shared', () => {
    const { left } = cabinetByHand.machines;
    const day = cabinetByHand.days['usual']!;
    const job = day.jobs['bracket']!;
    const cabinet = cabinetWith(
      {},
      {
        machines: { left: left!, right: { ...left!, at: [0.2, 0.3] } },
        days: { usual: { ...day, jobs: { bracket: job, twin: { ...job, machine: 'right' } } } },
      },
    );
    const [one, two] = cost.measure(runByHand({ cabinet })).filter(({ quantity }) => quantity === 'print-cost');
    expect(one!.value).toBeCloseTo(two!.value!, 9);
  });
});

it('property: every measure of cost is told with its money in the title, and none claims a pay-back', () => {
  for (const measure of [...cost.standing(cabinetByHand), ...cost.measure(runByHand())]) {
    if (measure.unit === 'money') expect(measure.title).toMatch(/, EUR$/);
    expect(measure.title).not.toMatch(/pay-?back|saves/i);
  }
});

it('property: a short file has a bill with a band wide enough for what nobody knows', () => {
  const answer = readCabinet(
    'short.yaml',
    `stillair: 1
cabinet: { inside: 800 mm x 600 mm x 850 mm, made-of: plywood 18 mm, door: glass 4 mm }
machines: { left: { kind: moving bed 220 } }
days: { usual: { jobs: { bracket: { machine: left, material: ABS, start: 9:00, for: 6 h } } } }
`,
  );
  if (!answer.ok) throw new Error('not read');
  const measures = measureAll(answer.cabinet, [cost]);
  const bill = measures.get('cost/bill/cabinet/standing')!.value!;
  expect(bill).toBeGreaterThan(100);
  expect(bill).toBeLessThan(600);
  expect(measures.get('cost/print-cost/left.bracket/usual')!.value).toBeGreaterThan(1);
  expect(answer.origins.get('costs.pricePosition')).toMatchObject({ kind: 'assumed' });
});
