import { describe, expect, it } from 'vitest';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Power, Wire } from '../../cabinet/power.ts';
import { verdictOf } from '../../judge/verdict.ts';
import { causes } from '../causes.ts';
import type { DayRun, Measure } from '../measure.ts';
import { cabinetByHand, type RunByHand, runByHand } from '../run-by-hand.ts';
import { costOf } from '../tariff.ts';
import { measuresOf } from '../trades.ts';
import { power } from './power.ts';
import { socketsFor } from './strips.ts';

const HOUR = 3600;
const C = 273.15;
const HAIR = 1e-6;

const withPower = (changes: Partial<Power>, cabinet: Cabinet = cabinetByHand): Cabinet => ({
  ...cabinet,
  power: { ...cabinet.power, ...changes },
});

/** The one measure of a quantity. */
function measured(run: DayRun, quantity: string): Measure {
  const found = measuresOf(run, [power]).filter((measure) => measure.quantity === quantity);
  expect(found.map(({ part }) => part)).toHaveLength(1);
  return found[0]!;
}

const verdict = ({ value, limit }: Measure): string => verdictOf(value, undefined, limit);

function of(quantity: string, changes: Partial<Power> = {}, told: RunByHand = {}): Measure {
  return measured(runByHand({ ...told, cabinet: withPower(changes, told.cabinet) }), quantity);
}

/** A bed that draws this much all through the job. */
const bed = (watts: number): RunByHand => ({
  bedPowers: { left: (t) => (t >= 9 * HOUR && t < 15 * HOUR ? watts : 0) },
});

describe('the circuit', () => {
  it('exact: watts over volts and power factor, supplies with their loss', () => {
    // Printing: bed 100 W and 43 W of the machine's parts, each with what the supply of 88 % loses; the fan 3 W at 86 %.
    const { record } = runByHand(bed(100));
    const { modes } = record.network.machines[0]!;
    const parts = modes.find(({ name }) => name === 'bracket')!.powers.reduce((sum, { watts }) => sum + watts, 0);
    const watts = 100 / 0.88 + parts;
    const expected = watts / (230 * 0.65) + 3 / 0.86 / (230 * 0.65);
    expect(of('circuit-current', {}, bed(100)).value).toBeCloseTo(expected, 9);
  });

  it.each(['circuit', 'strip'] as const)(
    'exact: the current of the %s holds a hair below its rating and fails a hair above',
    (what) => {
      const value = of(`${what}-current`, {}, bed(250)).value!;
      const strips = (rating: number): Power['strips'] => ({
        strip: { ...cabinetByHand.power.strips['strip']!, rating },
      });
      const at = (rating: number): string =>
        verdict(of(`${what}-current`, what === 'circuit' ? { circuit: rating } : { strips: strips(rating) }, bed(250)));
      expect(at(value * (1 + HAIR))).toBe('holds');
      expect(at(value * (1 - HAIR))).toBe('fails');
    },
  );

  it('exact: the rule for three hours counts in the USA only, and only what lasts three hours', () => {
    const american = { region: 'US', voltage: 120, circuit: 15 } as const;
    expect(measuresOf(runByHand(bed(250)), [power]).some(({ quantity }) => quantity === 'circuit-continuous')).toBe(
      false,
    );
    const long = of('circuit-continuous', american, bed(600));
    expect(long.limit!.value).toBe(12);
    const short = of('circuit-continuous', american, {
      bedPowers: { left: (t) => (t >= 9 * HOUR && t < 10 * HOUR ? 600 : 0) },
    });
    expect(short.value!).toBeLessThan(0.6 * long.value!);
  });

  it('exact: 10 A for long on the continent, 80 % of the strip in the USA, the fuse of the plug in the UK', () => {
    expect(of('strip-long', {}, bed(10)).limit!.value).toBe(10);
    expect(of('strip-long', { region: 'US' }, bed(10)).limit!.value).toBeCloseTo(12.8, 9);
    expect(of('strip-long', { region: 'UK' }, bed(10)).limit!.value).toBe(16);
  });

  it('property: what else the circuit feeds adds its amperes', () => {
    const [without, withOthers] = [of('circuit-current'), of('circuit-current', { others: 460 })];
    expect(withOthers.value! - without.value!).toBeCloseTo(2, 9);
  });
});

describe('starting', () => {
  const left = cabinetByHand.machines['left']!;
  const job = cabinetByHand.days['usual']!.jobs['bracket']!;
  const two: Cabinet = {
    ...cabinetByHand,
    machines: { left, right: left },
    days: {
      usual: { ...cabinetByHand.days['usual']!, jobs: { a: job, b: { ...job, machine: 'right', start: 12 * HOUR } } },
    },
  };
  // Each heats with 250 W for ten minutes and holds with 100 W.
  const heats =
    (start: number) =>
    (t: number): number =>
      t < start || t >= start + 6 * HOUR ? 0 : t < start + 600 ? 250 : 100;
  const times = [
    0,
    9 * HOUR,
    9 * HOUR,
    9 * HOUR + 600,
    9 * HOUR + 600,
    12 * HOUR,
    12 * HOUR,
    12 * HOUR + 600,
    12 * HOUR + 600,
    15 * HOUR,
    15 * HOUR,
    18 * HOUR,
    18 * HOUR,
    24 * HOUR,
  ];
  const told = { cabinet: two, times, bedPowers: { left: heats(9 * HOUR), right: heats(12 * HOUR) } };

  it('exact: all at once is the sum; a lock as long as a heat-up spares the second bed’s difference', () => {
    const [once, apart] = [of('start-current', {}, told), of('start-current', { stagger: 600 }, told)];
    expect(once.value! - apart.value!).toBeCloseTo(150 / 0.88 / (230 * 0.65), 6);
    expect(once.remedies.map(({ edits }) => edits[0]!.set)).toEqual([{ 'power.stagger': '10 min' }]);
    expect(apart.remedies).toEqual([]);
  });

  it('exact: the first half cycle against the magnet of the breaker', () => {
    const inrush = of('inrush');
    expect(inrush.value).toBeCloseTo(55 / (Math.SQRT2 * 4 * 16), 12);
    expect(inrush.limit!.value).toBe(1);
    expect(inrush.limit!.source).toContain('from a peak of 68 A on and must above 113 A');
    expect(of('inrush', { switched: 'one by one' }).value).toBeCloseTo(40 / (Math.SQRT2 * 4 * 16), 12);
    expect(of('inrush', { magnet: 7.5 }).value).toBeCloseTo(55 / (Math.SQRT2 * 7.5 * 16), 12);
    const american = of('inrush', { region: 'US' });
    expect(american).toMatchObject({ value: 55, unit: 'electric-current' });
    expect(american.limit).toBeUndefined();
  });

  it('exact: leakage against three tenths of the trip current, 4 mA for a Class A device, no limit without one', () => {
    expect(of('earth-leakage').value).toBeCloseTo(0.0008, 12);
    expect(of('earth-leakage').limit!.value).toBeCloseTo(0.009, 12);
    expect(of('earth-leakage', { region: 'US', rcd: 0.005 }).limit!.value).toBe(0.004);
    expect(of('earth-leakage', { rcd: 0 }).limit).toBeUndefined();
    const many = Object.fromEntries(Array.from({ length: 13 }, (_, at) => [`m${at}`, left]));
    expect(
      verdict(measured(runByHand({ cabinet: { ...cabinetByHand, machines: { left, ...many } } }), 'earth-leakage')),
    ).toBe('holds');
    const leaky = { ...left, mains: { ...left.mains, leakage: 0.0035 } };
    const three = { left: leaky, b: leaky, c: leaky };
    expect(verdict(measured(runByHand({ cabinet: { ...cabinetByHand, machines: three } }), 'earth-leakage'))).toBe(
      'fails',
    );
  });
});

describe('strips', () => {
  const strip = cabinetByHand.power.strips['strip']!;

  it('exact: bulky plugs count twice, so that a strip of two is too small for two plugs', () => {
    expect(socketsFor(cabinetByHand, 'low-voltage')).toBe(2);
    expect(of('sockets').value).toBe(3);
    expect(verdict(of('sockets', { strips: { strip: { ...strip, sockets: 3 } } }))).toBe('holds');
    const small = of('sockets', { strips: { strip: { ...strip, sockets: 2 } } });
    expect(verdict(small)).toBe('fails');
    expect(small.cause).toBe(causes.socketsRunOut);
    expect(of('sockets', { strips: { strip: { ...strip, sockets: 0 } } }).limit).toBeUndefined();
  });

  it('exact: a strip in a strip fails, and the first carries both', () => {
    const strips = { strip: { ...strip, feeds: ['low-voltage'] }, far: { ...strip, from: 'strip', feeds: ['left'] } };
    const run = runByHand({ ...bed(200), cabinet: withPower({ strips }) });
    const chains = measuresOf(run, [power]).filter(({ quantity }) => quantity === 'plug-chain');
    expect(chains.map((chain) => [chain.part, chain.value, verdict(chain)])).toEqual([
      ['strips.strip', 1, 'holds'],
      ['strips.far', 2, 'fails'],
    ]);
    const [first, second] = measuresOf(run, [power]).filter(({ quantity }) => quantity === 'strip-current');
    expect(first!.value!).toBeGreaterThan(second!.value!);
    expect(measured(runByHand({ ...bed(200) }), 'strip-current').value).toBeCloseTo(first!.value!, 9);
  });

  it('exact: a strip of 10 A behind a breaker of 16 A fails, one of 16 A holds; in the UK and the USA it has its own cut-off', () => {
    const rated = (rating: number): Partial<Power> => ({ strips: { strip: { ...strip, rating } } });
    const weak = of('strip-breaker', rated(10));
    expect([weak.value, weak.limit!.value, verdict(weak)]).toEqual([16, 10, 'fails']);
    expect(weak.remedies.map(({ edits }) => JSON.stringify(edits))).toEqual([
      expect.stringContaining('"rating":"16 A"') as string,
    ]);
    expect(verdict(of('strip-breaker', rated(16)))).toBe('holds');
    for (const region of ['UK', 'US'] as const)
      expect(
        measuresOf(runByHand({ cabinet: withPower({ ...rated(10), region }) }), [power]).some(
          ({ quantity }) => quantity === 'strip-breaker',
        ),
      ).toBe(false);
  });

  it('exact: a strip in a bay holds at 40 °C and fails above', () => {
    const strips = { strip: { ...strip, where: 'lower' } };
    const at = (kelvin: number): string => verdict(of('strip-air', { strips }, { temperatures: { lower: kelvin } }));
    expect(at(C + 40 - HAIR)).toBe('holds');
    expect(at(C + 40 + HAIR)).toBe('fails');
  });
});

describe('the low-voltage side', () => {
  const wire: Wire = {
    supply: 'low-voltage',
    feeds: ['exhaust'],
    current: 2.5,
    section: 0.75e-6,
    length: 3,
    insulation: 'PVC',
    where: 'lower',
    fuse: 4,
    fuseAt: 0.2,
  };
  const withWire = (changes: Partial<Wire> = {}): Partial<Power> => ({ wires: { fan: { ...wire, ...changes } } });
  const warm = (celsius: number): RunByHand => ({ temperatures: { lower: C + celsius } });

  it('cross: 2.5 A through 3 m of 0.75 mm² lose 1.6 % of 24 V in cool air and more in a warm bay', () => {
    const cool = of('wire-drop', withWire(), warm(10)).value!;
    expect(100 * cool).toBeCloseTo(1.62, 1);
    expect(of('wire-drop', withWire(), warm(50)).value!).toBeGreaterThan(1.1 * cool);
  });

  it('exact: 3 % at 24 V, 5 % at 12 V', () => {
    const value = of('wire-drop', withWire()).value!;
    const at = (length: number): string => verdict(of('wire-drop', withWire({ length })));
    expect(at(3 * (0.03 / value) * (1 - HAIR))).toBe('holds');
    expect(at(3 * (0.03 / value) * (1 + HAIR))).toBe('fails');
    const supplies = { 'low-voltage': { ...cabinetByHand.power.supplies['low-voltage']!, voltage: 12 } };
    expect(of('wire-drop', { ...withWire(), supplies }).limit!.value).toBe(0.05);
  });

  it('cross: in a bay of 50 °C the wire may carry 4.24 A: a fuse of 4 A protects it, one of 5 A does not', () => {
    expect(of('fuse-current', withWire(), warm(50)).limit!.value).toBeCloseTo(4.24, 2);
    expect(verdict(of('fuse-current', withWire(), warm(50)))).toBe('holds');
    expect(verdict(of('fuse-current', withWire({ fuse: 5 }), warm(50)))).toBe('fails');
  });

  it('cross: 2.5 A are 83 % of a fuse of 3 A, too much for long, and 63 % of one of 4 A', () => {
    expect(of('fuse-share', withWire({ fuse: 3 })).value).toBeCloseTo(0.833, 3);
    expect(verdict(of('fuse-share', withWire({ fuse: 3 })))).toBe('fails');
    expect(verdict(of('fuse-share', withWire()))).toBe('holds');
  });

  it('exact: a wire without a fuse is unknown and says what to give; a fuse far from the supply fails', () => {
    const { fuse: _, ...bare } = wire;
    const missing = of('fuse-current', { wires: { fan: bare } });
    expect(verdict(missing)).toBe('unknown');
    expect(missing.missing).toContain('power.wires.fan.fuse');
    expect(verdict(of('fuse-place', withWire({ fuseAt: 0.3 })))).toBe('holds');
    expect(verdict(of('fuse-place', withWire({ fuseAt: 0.301 })))).toBe('fails');
  });

  it('exact: a gauge is held against the American table', () => {
    expect(
      of('fuse-current', withWire({ gauge: 18, section: 0.823e-6, where: 'outside', fuse: 8 }), {
        temperatures: { room: C + 30 },
      }).limit!.value,
    ).toBeCloseTo(10, 9);
  });

  it('property: what a wire may carry and what it loses names its table with an edition or a year', () => {
    const dated = /\b(?:19|20)\d\d\b/;
    for (const gauge of [undefined, 18]) {
      const run = runByHand({ cabinet: withPower(withWire(gauge === undefined ? {} : { gauge })) });
      const tabled = measuresOf(run, [power])
        .filter(({ quantity }) => /^(?:wire-|fuse-(?:current|share))/.test(quantity))
        .flatMap(({ steps, limit }) => [...steps, ...(limit === undefined ? [] : [limit])])
        .flatMap(({ source }) => (source !== undefined && /table|IEC 60(?:028|228)/.test(source) ? [source] : []));
      expect(tabled.length).toBeGreaterThan(3);
      for (const source of tabled) expect(source).toMatch(dated);
    }
  });

  it('exact: a supply gives all to 45 °C and half at 65 °C', () => {
    const supplies = { 'low-voltage': { ...cabinetByHand.power.supplies['low-voltage']!, where: 'lower', watts: 6 } };
    expect(of('supply-share', { supplies }, warm(45)).value).toBeCloseTo(0.5, 9);
    expect(of('supply-share', { supplies }, warm(65)).value).toBeCloseTo(1, 9);
    expect(verdict(of('supply-share', { supplies }, warm(66)))).toBe('fails');
  });

  it('property: nothing said of its wires gives the section that they need', () => {
    expect(of('wire-section').value).toBe(0.25e-6);
  });
});

describe('money', () => {
  const tariff = [
    [0, 0.15],
    [7 * HOUR, 0.22],
    [17 * HOUR, 0.4],
    [21 * HOUR, 0.22],
    [23 * HOUR, 0.15],
  ].map(([time, price]) => [time!, price! / 3.6e6] as const);

  it.each([
    [15, 0.3968],
    [18, 0.3344],
    [21, 0.2144],
    [22, 0.2032],
    [23, 0.192],
  ])('cross: 8 h of 160 W from %d o’clock cost %d', (start, money) => {
    const times = Float64Array.of(start * HOUR, (start + 8) * HOUR);
    expect(costOf({ times, values: Float64Array.of(160, 160) }, tariff)).toBeCloseTo(money, 6);
  });

  it('cross: 400 W for 10 min and 150 W for 10 h are 1.567 kWh, 0.47 at 0.30', () => {
    const times = Float64Array.of(0, 600, 600, 36_600);
    const course = { times, values: Float64Array.of(400, 400, 150, 150) };
    expect(costOf(course, [[0, 0.3 / 3.6e6]])).toBeCloseTo(0.47, 3);
    expect(costOf(course, [[0, 1]]) / 3.6e6).toBeCloseTo(1.567, 3);
  });

  it('property: jobs and standby make the day; thirty days make the month', () => {
    const run = runByHand(bed(100));
    const [job, day, month] = ['job-cost', 'day-cost', 'month-cost'].map((quantity) => measured(run, quantity).value!);
    expect(job).toBeLessThan(day!);
    expect(month).toBeCloseTo(30 * day!, 9);
  });

  it('exact: only where prices differ is the cheapest start told', () => {
    const cheapest = (of_: Partial<Power>): boolean =>
      of('job-cost', of_, bed(100)).steps.some(({ text }) => text.startsWith('started at'));
    expect(cheapest({})).toBe(false);
    expect(cheapest({ tariff })).toBe(true);
  });

  it('property: a bay as cool as the room saves nothing, a warm one something', () => {
    expect(of('bed-saving', {}, bed(100)).value).toBeCloseTo(0, 6);
    const warm = of('bed-saving', {}, { ...bed(100), temperatures: { lower: C + 45 } }).value!;
    expect(warm / (100 * 6 * HOUR)).toBeGreaterThan(0.2);
    expect(warm / (100 * 6 * HOUR)).toBeLessThan(0.9);
  });
});

it('property: whatever touches the mains says who may work on it', () => {
  const about = /^(?:circuit-(?:current|continuous)|start-current|inrush|earth-leakage|plug-chain|strip-)/;
  const strips = { strip: { ...cabinetByHand.power.strips['strip']!, where: 'lower' } };
  const found = measuresOf(runByHand({ cabinet: withPower({ strips, region: 'US' }) }), [power]).filter(
    ({ quantity }) => about.test(quantity),
  );
  expect(found.length).toBeGreaterThan(6);
  for (const { steps, quantity } of found)
    expect(
      steps.some(({ text }) => text.includes('qualified electrician')),
      quantity,
    ).toBe(true);
});

it('cross: electricity of a print is small money beside its filament (common practice)', () => {
  // Six hours of ABS, 100 g of it at 18 to 35 for a kilogram, a bed of 100 W.
  const { value } = of('job-cost', {}, bed(100));
  expect(value!).toBeLessThan(0.25 * 0.1 * 26.5);
  expect(value!).toBeGreaterThan(0.01);
});
