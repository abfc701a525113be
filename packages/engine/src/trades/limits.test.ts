// Every limit of every trade, a hair inside and a hair outside it, averaging windows included.

import { describe, expect, it } from 'vitest';
import type { Cabinet, Material } from '../cabinet/cabinet.ts';
import { limitKinds } from '../cabinet/limits.ts';
import { verdictOf } from '../judge/verdict.ts';
import { contaminantKey } from './air-quality/contaminants.ts';
import { guidelines } from './air-quality/limits.ts';
import type { DayRun, Measure } from './measure.ts';
import { cabinetByHand, exhaustFan, filter, pathByHand, runByHand } from './run-by-hand.ts';
import { measuresOf } from './trades.ts';

const HAIR = 1e-6;
const HOUR = 3600;
const DAY = 86400;
const C = 273.15;
const RHO = 101325 / (287.055 * 294.15);

function judged(run: DayRun, limitId: string): { measure: Measure; verdict: string } {
  const found = measuresOf(run).filter(({ limit }) => limit?.id === limitId);
  expect(found.map(({ part }) => part)).toHaveLength(1);
  const measure = found[0]!;
  return { measure, verdict: verdictOf(measure.value, undefined, measure.limit) };
}

describe('guidelines for the room', () => {
  const emits: Material = {
    ...cabinetByHand.materials['ABS']!,
    emissions: Object.fromEntries(
      ['particles', 'styrene', 'ethylbenzene', 'caprolactam', 'formaldehyde', 'acetaldehyde'].map((name) => [
        name,
        { p10: 1, p50: 1, p90: 1 },
      ]),
    ),
  };
  const cabinet: Cabinet = { ...cabinetByHand, materials: { ABS: emits } };
  const names = runByHand({ cabinet }).record.network.contaminants.map(({ name }) => name);

  it.each(guidelines.map((guideline) => [guideline.id, guideline] as const))(
    'exact: %s holds a hair below its value, fails a hair above, and averages over its own window',
    (id, { contaminant, value, window }) => {
      const name = names.find((candidate) => contaminantKey(candidate) === contaminant)!;
      const steady = (level: number): string =>
        judged(runByHand({ cabinet, concentrations: { [name]: { room: level } } }), id).verdict;
      expect(steady(value * (1 - HAIR))).toBe('holds');
      expect(steady(value * (1 + HAIR))).toBe('fails');

      // A pulse as long as the window counts in full; one of half its length with less than twice the value does not break it.
      const pulse = (length: number, level: number): string => {
        const start = 6 * HOUR;
        const times = [0, start, start, start + length, start + length, 2 * DAY];
        const room = (t: number): number => (t >= start && t < start + length ? level : 0);
        return judged(runByHand({ cabinet, times, concentrations: { [name]: { room } } }), id).verdict;
      };
      expect(pulse(window, value * (1 + HAIR))).toBe('fails');
      expect(pulse(window / 2, 2 * value * (1 - HAIR))).toBe('holds');
      expect(pulse(window / 2, 2 * value * (1 + HAIR))).toBe('fails');
    },
  );
});

describe('limits of temperature', () => {
  it.each([
    ['print-air-high', 60],
    ['print-air-best-high', 65],
    ['electronics-air', 45],
    ['frame-air', 60],
  ] as const)('exact: %s: the air may be as warm as %d °C', (id, celsius) => {
    const at = (kelvin: number): string => judged(runByHand({ temperatures: { lower: kelvin } }), id).verdict;
    expect(at(C + celsius - HAIR)).toBe('holds');
    expect(at(C + celsius + HAIR)).toBe('fails');
  });

  it.each([
    ['print-air-low', 30],
    ['print-air-best-low', 45],
  ] as const)('exact: %s: the air may be as cool as %d °C', (id, celsius) => {
    const at = (kelvin: number): string => judged(runByHand({ temperatures: { lower: kelvin } }), id).verdict;
    expect(at(C + celsius + HAIR)).toBe('holds');
    expect(at(C + celsius - HAIR)).toBe('fails');
  });

  it('exact: bands and limits of the machines hold at any one moment, not on average', () => {
    const spike = (t: number): number => (t === 12 * HOUR ? C + 45.001 : C + 20);
    expect(judged(runByHand({ temperatures: { lower: spike } }), 'electronics-air').verdict).toBe('fails');
  });

  it('exact: touch-temperature: 48 °C outside', () => {
    const outer = runByHand()
      .record.temperatures.names.filter((name) => name.startsWith('lower.top'))
      .at(-1)!;
    const at = (kelvin: number): string =>
      judged(runByHand({ temperatures: { [outer]: kelvin } }), 'touch-temperature').verdict;
    expect(at(C + 48 - HAIR)).toBe('holds');
    expect(at(C + 48 + HAIR)).toBe('fails');
  });

  it('exact: dew-margin: a wall at the dew point', () => {
    const inner = runByHand().record.temperatures.names.find(
      (name) => name.startsWith('lower.back') && name.endsWith('.1'),
    )!;
    const wall = C + 5;
    const { measure } = judged(runByHand({ temperatures: { [inner]: wall } }), 'dew-margin');
    const dew = wall - measure.value!;
    const at = (kelvin: number): string =>
      judged(runByHand({ temperatures: { [inner]: kelvin } }), 'dew-margin').verdict;
    expect(at(dew + 1e-4)).toBe('holds');
    expect(at(dew - 1e-4)).toBe('fails');
  });
});

describe('limits of air', () => {
  it('exact: fan-share: 30 % of 90 m³/h', () => {
    const at = (flow: number): string => judged(runByHand({ flows: { exhaust: flow * RHO } }), 'fan-share').verdict;
    expect(at(0.3 * 0.025 * (1 + HAIR))).toBe('holds');
    expect(at(0.3 * 0.025 * (1 - HAIR))).toBe('fails');
  });

  it('exact: leak-pressure: the room’s own pressure at the highest gap', () => {
    const level = 9.80665 * RHO * 1.25;
    const at = (difference: number): string =>
      judged(runByHand({ pressures: { lower: level + difference } }), 'leak-pressure').verdict;
    expect(at(-HAIR)).toBe('holds');
    expect(at(HAIR)).toBe('fails');
  });

  it('exact: print-draught: the material’s 0.2 m/s, of any moment of the job', () => {
    const flows = (factor: number): Record<string, (t: number) => number> => ({
      intake: (t) => (t === 12 * HOUR ? factor * 0.003 : 0),
    });
    const value = judged(runByHand({ flows: flows(1) }), 'print-draught').measure.value!;
    const at = (factor: number): string => judged(runByHand({ flows: flows(factor) }), 'print-draught').verdict;
    expect(at((0.2 / value) * (1 - HAIR))).toBe('holds');
    expect(at((0.2 / value) * (1 + HAIR))).toBe('fails');
  });

  it('exact: operating-points: two are too many', () => {
    const warning = { code: 'several-operating-points', what: 'exhaust', message: 'two crossings' } as const;
    expect(judged(runByHand({ warnings: [warning] }), 'operating-points').verdict).toBe('fails');
  });

  it('exact: unguarded-release: a tenth of what the job gives off', () => {
    // Styrene comes evenly: with the fan on from a moment to the day's end, what was given off before is unguarded.
    const emissions = { styrene: { p10: 0.5, p50: 0.5, p90: 0.5 } };
    const lateBy = (delay: number): string => {
      const start = 9 * HOUR + delay;
      const exhaust = pathByHand('lower', 'room', 0.75, [
        filter,
        exhaustFan({ kind: 'timer', windows: [[start, DAY]] }),
      ]);
      const cabinet = {
        ...cabinetByHand,
        materials: { ABS: { ...cabinetByHand.materials['ABS']!, emissions } },
        paths: { ...cabinetByHand.paths, exhaust },
      };
      const times = [0, 9 * HOUR, 9 * HOUR, start, start, 15 * HOUR, 15 * HOUR, DAY];
      return judged(
        runByHand({ cabinet, times, fanSpeeds: { 'exhaust.fan': (t) => (t >= start ? 1 : 0) } }),
        'unguarded-release',
      ).verdict;
    };
    const whole = 6 * HOUR + 0.1 * 7200 * (1 - Math.exp((-9 * HOUR) / 7200));
    expect(lateBy(0.1 * whole - 60)).toBe('holds');
    expect(lateBy(0.1 * whole + 60)).toBe('fails');
  });
});

describe('limits that only the person can set', () => {
  it.each([
    ['bay-air', C + 30, { temperatures: { lower: C + 31 } }],
    ['room-rise', 1, { temperatures: { room: C + 22.5 } }],
    ['energy-day', 1e6, {}],
    ['fan-noise', 29.9, {}],
    ['fan-noise-night', 29.9, {}],
    ['filter-life', 1e12, {}],
  ] as const)('property: %s exists only under limits: of the file, and then counts', (id, value, told) => {
    const without = measuresOf(runByHand(told));
    expect(without.filter(({ limit }) => limit?.id === id)).toEqual([]);
    const cabinet = { ...cabinetByHand, limits: { [id]: value } };
    const { measure, verdict } = judged(runByHand({ ...told, cabinet }), id);
    expect(measure.limit).toMatchObject({ value, standing: 'own' });
    expect(verdict).toBe('fails');
  });

  it('property: a person’s own value takes the place of a guideline and says so', () => {
    const cabinet = { ...cabinetByHand, limits: { 'room-styrene-long': 10 } };
    const { measure } = judged(runByHand({ cabinet }), 'room-styrene-long');
    expect(measure.limit).toMatchObject({ value: 10, standing: 'own' });
    expect(measure.limit!.source).toContain('in place of German indoor guide value');
  });
});

it('cross: every limit that a person may set can be written in the cabinet file', () => {
  const notSettable = /^(print-air-|operating-points$)/; // bands stand under materials
  const used = measuresOf(runByHand()).flatMap(({ limit }) => limit?.id ?? []);
  const ids = [
    ...used.filter((id) => !notSettable.test(id)),
    'bay-air',
    'room-rise',
    'energy-day',
    'fan-noise',
    'fan-noise-night',
    'filter-life',
    'carbon-life',
  ];
  expect(ids.filter((id) => limitKinds[id] === undefined)).toEqual([]);
  expect(guidelines.map(({ id }) => id).filter((id) => limitKinds[id] === undefined)).toEqual([]);
});

it('property: every limit has an id, a source and a standing; every measure with a limit says which way is better', () => {
  for (const { limit, better, quantity: id } of measuresOf(runByHand())) {
    if (limit === undefined) continue;
    expect(limit.id, id).toMatch(/^[a-z0-9-]+$/);
    expect(limit.source.length, id).toBeGreaterThan(10);
    expect(better, id).toBe(limit.kind === 'at-most' ? 'lower' : 'higher');
  }
});
