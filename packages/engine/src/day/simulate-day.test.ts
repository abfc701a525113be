import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Network } from '../network/network.ts';
import { readNetwork } from '../network/read-network.ts';
import { freeZone, heldZone, networkOf, orifice, solid } from './network-of.ts';
import type { DayRecord } from './record.ts';
import { greatest, temperatureSeries, valueAt } from './series.ts';
import { DayStopped, simulateDay } from './simulate-day.ts';

const cases = new URL('../../cases/', import.meta.url);

function read(path: string): Network {
  const file = readNetwork(path, readFileSync(new URL(path, cases), 'utf8'));
  if ('complaints' in file) throw new Error(file.complaints.map(({ what }) => what).join('; '));
  return file.network;
}

const celsiusAt = (record: DayRecord, name: string, time: number): number =>
  valueAt(temperatureSeries(record, name), time) - 273.15;

/** exp(A t) x by halving the time until Taylor's series is short: independent of the integrator. */
function matrixExponential(matrix: readonly (readonly number[])[], time: number, start: readonly number[]): number[] {
  const size = start.length;
  const halvings = 20;
  const small = matrix.map((row) => row.map((value) => (value * time) / 2 ** halvings));
  const times = (a: number[][], b: readonly (readonly number[])[]): number[][] =>
    a.map((row) => Array.from({ length: size }, (_, j) => row.reduce((sum, value, k) => sum + value * b[k]![j]!, 0)));
  let term: number[][] = small.map((_, i) => small.map((__, j) => (i === j ? 1 : 0)));
  let sum = term;
  for (let k = 1; k < 12; k += 1) {
    term = times(term, small).map((row) => row.map((value) => value / k));
    sum = sum.map((row, i) => row.map((value, j) => value + term[i]![j]!));
  }
  for (let k = 0; k < halvings; k += 1) sum = times(sum, sum);
  return sum.map((row) => row.reduce((total, value, j) => total + value * start[j]!, 0));
}

describe('simulateDay', () => {
  it('exact: one zone, one conductance, constant power', () => {
    const record = simulateDay(
      networkOf({
        duration: 3600,
        zones: [heldZone('room', 21), freeZone('bay', 21, 2500)],
        conductances: [{ a: 'bay', b: 'room', conductance: 3.2 }],
        heatSources: [{ name: 'lamp', node: 'bay', watts: 55, active: 'always' }],
      }),
    );
    for (const time of [600, 1800, 3600]) {
      const exact = 21 + (55 / 3.2) * (1 - Math.exp((-3.2 * time) / 2500));
      expect(Math.abs(celsiusAt(record, 'bay', time) - exact)).toBeLessThan(0.01);
    }
  });

  it('exact: five coupled capacities against a matrix exponential', () => {
    const names = ['a', 'b', 'c', 'd', 'e'];
    const capacities = [500, 2000, 800, 5000, 1200];
    const starts = [90, 20, 60, 30, 45];
    const links = [
      [0, 1, 3],
      [1, 2, 1.5],
      [2, 3, 4],
      [3, 4, 0.7],
      [4, 0, 2.2],
      [1, 3, 0.4],
    ] as const;
    const network = networkOf({
      duration: 2400,
      zones: [heldZone('room', 0)],
      nodes: names.map((name, i) => solid(name, starts[i]!, capacities[i]!)),
      conductances: [
        ...links.map(([a, b, conductance]) => ({ a: names[a]!, b: names[b]!, conductance })),
        { a: 'd', b: 'room', conductance: 1.1 },
      ],
    });
    const matrix = capacities.map(() => new Array<number>(5).fill(0));
    for (const [a, b, g] of links) {
      for (const [i, j] of [
        [a, b],
        [b, a],
      ] as const) {
        matrix[i]![i]! -= g / capacities[i]!;
        matrix[i]![j]! += g / capacities[i]!;
      }
    }
    matrix[3]![3]! -= 1.1 / capacities[3]!;
    const record = simulateDay(network, { tolerance: 1e-5 });
    for (const time of [100, 700, 2400]) {
      matrixExponential(matrix, time, starts).forEach((exact, i) => {
        expect(Math.abs(celsiusAt(record, names[i]!, time) - exact)).toBeLessThan(2e-4);
      });
    }
  });

  it('exact: a zone follows a room that warms steadily, lag behind and all', () => {
    const profile = [
      [0, 290],
      [600, 290],
      [4200, 302],
      [9000, 302],
    ] as const;
    const record = simulateDay(
      networkOf({
        duration: 9000,
        zones: [heldZone('room', 0, { temperature: { kind: 'fixed', profile } }), freeZone('bay', 16.85, 1000)],
        conductances: [{ a: 'bay', b: 'room', conductance: 2 }],
      }),
      { tolerance: 1e-3 },
    );
    const [lag, rate] = [500, 12 / 3600];
    const ramp = (t: number): number => 290 + rate * (t - 600 - lag * (1 - Math.exp(-(t - 600) / lag)));
    expect(valueAt(temperatureSeries(record, 'bay'), 600)).toBeCloseTo(290, 6);
    for (const t of [700, 2000, 4200])
      expect(Math.abs(valueAt(temperatureSeries(record, 'bay'), t) - ramp(t))).toBeLessThan(3e-3);
    const after = 302 + (ramp(4200) - 302) * Math.exp(-(9000 - 4200) / lag);
    expect(Math.abs(valueAt(temperatureSeries(record, 'bay'), 9000) - after)).toBeLessThan(3e-3);
    // The room itself is exact everywhere, and steep at its break.
    for (const t of [0, 599, 2400, 8999])
      expect(valueAt(temperatureSeries(record, 'room'), t)).toBeCloseTo(
        t < 600 ? 290 : Math.min(290 + rate * (t - 600), 302),
        9,
      );
  });

  it('exact: a room that jumps at a break, and a source that follows a course', () => {
    const record = simulateDay(
      networkOf({
        duration: 2000,
        zones: [
          heldZone('room', 0, {
            temperature: {
              kind: 'fixed',
              profile: [
                [0, 290],
                [1000, 290],
                [1000, 300],
              ],
            },
          }),
        ],
        nodes: [solid('plate', 16.85, 4000)],
        heatSources: [
          {
            name: 'sun',
            node: 'plate',
            watts: 2,
            active: { windows: [[0, 1000]] },
            profile: [
              [0, 0],
              [1000, 100],
            ],
          },
        ],
      }),
    );
    // ∫ 2 · 0.1 t dt = 0.1 t²
    expect(valueAt(temperatureSeries(record, 'plate'), 500)).toBeCloseTo(290 + (0.1 * 500 ** 2) / 4000, 6);
    expect(valueAt(temperatureSeries(record, 'plate'), 2000)).toBeCloseTo(290 + 1e5 / 4000, 6);
    const room = temperatureSeries(record, 'room');
    expect([999.999, 1000].map((t) => valueAt(room, t))).toEqual([290, 300]);
  });

  it('exact: steps land on every break of windows and courses, and on those of the outside', () => {
    const record = simulateDay(
      networkOf({
        duration: 1000,
        zones: [heldZone('room', 21), freeZone('bay', 30, 1000)],
        conductances: [{ a: 'bay', b: 'room', conductance: 1 }],
        paths: [orifice('door', 'room', 'bay', 0, 0.1, { open: { windows: [[100.1, 200.3]] } })],
        breaks: [333.3, 777.7],
      }),
    );
    for (const time of [0, 100.1, 200.3, 333.3, 777.7, 1000]) expect([...record.times]).toContain(time);
    for (let row = 1; row < record.times.length; row += 1)
      expect(record.times[row]!).toBeGreaterThanOrEqual(record.times[row - 1]!);
  });

  it('exact: heat that air carries in steady state', () => {
    // 100 W into air that passes at 0.01 kg/s: 100/(0.01·1006) K warmer.
    const flow = { z: 0, open: 'always', filterEfficiency: {}, flow: 0.01, type: 'fixed-flow' } as const;
    const record = simulateDay(
      networkOf({
        duration: 20000,
        zones: [heldZone('room', 21), freeZone('bay', 21, 2000)],
        paths: [
          { ...flow, name: 'in', from: 'room', to: 'bay' },
          { ...flow, name: 'out', from: 'bay', to: 'room' },
        ],
        heatSources: [{ name: 'lamp', node: 'bay', watts: 100, active: 'always' }],
      }),
    );
    expect(celsiusAt(record, 'bay', 20000)).toBeCloseTo(21 + 100 / 10.06, 5);
  });

  it('exact: air that a step too long would take below 0 K ends as warm as its heat makes it', () => {
    // Two closed zones over one another, which a hole turns over the faster the more they differ: not at all at first.
    const network = networkOf({
      duration: 7200,
      zones: [freeZone('low', 21, 554), freeZone('high', 21, 554, { zRef: 0.96 })],
      heatSources: [{ name: 'lamp', node: 'low', watts: 104, active: { windows: [[1800, 2800]] } }],
      paths: [orifice('hole', 'low', 'high', 0.96, 0.286)],
      exchanges: [
        {
          name: 'turning over',
          a: 'low',
          b: 'high',
          active: 'always',
          law: { kind: 'horizontal-opening', area: 0.286, round: false, coefficient: 0.1 },
        },
      ],
    });
    const record = simulateDay(network, { ledger: true });
    const wanted = 21 + (104 * 1000) / (2 * 554);
    expect(celsiusAt(record, 'low', 7200)).toBeCloseTo(wanted, 1);
    expect(0.5 * (celsiusAt(record, 'low', 7200) + celsiusAt(record, 'high', 7200))).toBeCloseTo(wanted, 9);
    expect(Math.abs(record.ledger!.heat.closure)).toBeLessThan(1e-12);
  });

  it('property: a duration of nothing gives the first moment', () => {
    const record = simulateDay(networkOf({ duration: 0, zones: [heldZone('room', 21), freeZone('bay', 40, 100)] }));
    expect([...record.times]).toEqual([0]);
  });

  it('property: default days keep their peaks within 0.02 K of days a hundred times tighter', () => {
    for (const path of ['frozen/day-43.yaml', 'frozen/day-43-switching.yaml']) {
      const network = read(path);
      const [usual, tight] = [simulateDay(network), simulateDay(network, { tolerance: 0.0002 })];
      for (const name of usual.temperatures.names) {
        const [a, b] = [usual, tight].map((record) => greatest(temperatureSeries(record, name)).value);
        expect(Math.abs(a! - b!)).toBeLessThan(0.02);
      }
      expect(usual.events.length).toBe(tight.events.length);
      // Work is bounded, and thousands of solutions of the air network cost few rounds each.
      expect(usual.work.steps).toBeLessThan(path.includes('switching') ? 700 : 300);
      expect(usual.work.newton).toBeLessThan(usual.work.steps * 14);
    }
  });

  it('property: stops when told, tells how far it is, refuses a tolerance of nothing', () => {
    const network = read('frozen/day-43.yaml');
    const shares: number[] = [];
    simulateDay(network, { progress: (share) => shares.push(share) });
    expect(shares.length).toBeGreaterThan(1);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
    expect(() => simulateDay(network, { stop: () => true })).toThrow(DayStopped);
    expect(() => simulateDay(network, { tolerance: 0 })).toThrow('tolerance is 0; it must be above 0');
    expect(() => simulateDay(network, { periodic: { maxDays: 0 } })).toThrow('maxDays is 0');
  });

  it('exact: a repeated day ends as it began: a slow mass finds its periodic swing', () => {
    // C dT/dt = P(t) - G (T - Troom), P on for half the day: T at the start solves T0 = Tmax e^-a + ... in closed form.
    const [C, G, P, half] = [3e5, 5, 100, 43200];
    const network = networkOf({
      duration: 86400,
      zones: [heldZone('room', 20)],
      nodes: [solid('mass', 20, C)],
      conductances: [{ a: 'mass', b: 'room', conductance: G }],
      heatSources: [{ name: 'lamp', node: 'mass', watts: P, active: { windows: [[0, half]] } }],
    });
    const record = simulateDay(network, { periodic: { maxDays: 20 }, tolerance: 1e-3 });
    const fade = Math.exp((-G * half) / C);
    const start = 20 + ((P / G) * (1 - fade) * fade) / (1 - fade * fade);
    expect(Math.abs(celsiusAt(record, 'mass', 0) - start)).toBeLessThan(5e-3);
    expect(Math.abs(celsiusAt(record, 'mass', 86400) - celsiusAt(record, 'mass', 0))).toBeLessThan(2e-3);
    expect(record.warnings).toEqual([]);
    const slow = simulateDay({ ...network, nodes: [solid('mass', 20, 1e8)] }, { periodic: { maxDays: 2 } });
    expect(slow.warnings.map(({ code }) => code)).toEqual(['outside-validity']);
  });
});
