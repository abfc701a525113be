import { describe, expect, it } from 'vitest';
import { fanOf, fanPath, heldZone, networkOf, orifice } from './network-of.ts';
import { operatingPoints } from './operating-points.ts';
import { simulateDay } from './simulate-day.ts';
import { solveFlows } from './solve-flows.ts';

const constant = { density: { model: 'constant', value: 1.2 } } as const;
const dip = {
  kind: 'points',
  points: [
    [0, 60],
    [0.002, 46],
    [0.003, 30],
    [0.004, 36],
    [0.005, 42],
    [0.006, 39],
    [0.008, 24],
    [0.0105, 0],
  ],
} as const;
const system = { resistances: [{ name: 'r', linear: 2500, quadratic: 100000 }] };
const against = (pa: number) => [
  heldZone('bay', 21),
  heldZone('room', 21, { pressure: { kind: 'fixed' as const, value: pa } }),
];

describe('operatingPoints', () => {
  it('exact: a falling curve alone, without any resistance, meets its back pressure where its straight piece does', () => {
    const falling = {
      kind: 'points',
      points: [
        [0, 60],
        [0.01, 0],
      ],
    } as const;
    const paths = [fanPath('x', 'bay', 'room', [fanOf('f', falling)])];
    const network = networkOf({ ...constant, zones: against(25), paths });
    expect(operatingPoints(network)[0]!.points.map(({ flow }) => flow)).toEqual([expect.closeTo(0.035 / 6, 14)]);
    expect(solveFlows(network).flows['x']).toBeCloseTo((1.2 * 0.035) / 6, 12);
  });

  it('exact: three crossings against 25 Pa, root of each straight piece', () => {
    const paths = [fanPath('x', 'bay', 'room', [fanOf('f', dip)], system)];
    const [{ path, points } = { path: '', points: [] }] = operatingPoints(
      networkOf({ ...constant, zones: against(25), paths }),
    );
    expect(path).toBe('x');
    expect(points.map(({ stable }) => stable)).toEqual([true, false, true]);
    // On a piece P = p0 + k (Q - q0): 1e5 Q² + (2500 - k) Q + 25 - p0 + k q0 = 0.
    const root = (q0: number, p0: number, k: number, sign = 1): number => {
      const b = 2500 - k;
      return (-b + sign * Math.sqrt(b * b - 4e5 * (25 - p0 + k * q0))) / 2e5;
    };
    expect(points[0]!.flow).toBeCloseTo(root(0.002, 46, -16000), 14);
    expect(points[1]!.flow).toBeCloseTo(root(0.004, 36, 6000, -1), 14);
    expect(points[2]!.flow).toBeCloseTo(root(0.005, 42, -3000), 14);
    expect(points[0]!.massFlow).toBeCloseTo(1.2 * points[0]!.flow, 14);
  });

  it('cross: behind a solved zone, the points are those of the path with the other openings as resistance', () => {
    // The bay's inlet hole of Cd A 0.002 m² in series with the fan: loss ρ/(2 (Cd A)²) more in the quadratic.
    const inlet = orifice('in', 'room', 'bay', 0, 0.002, { dischargeCoefficient: 1, linearBelow: 1e-6 });
    const bay = heldZone('bay', 21, { pressure: { kind: 'solved' } });
    const behind = operatingPoints(
      networkOf({
        ...constant,
        zones: [heldZone('room', 21), bay],
        paths: [
          inlet,
          fanPath('x', 'bay', 'room', [fanOf('f', dip)], { resistances: [{ name: 'r', linear: 6000, quadratic: 0 }] }),
        ],
      }),
    )[0]!.points;
    const alone = operatingPoints(
      networkOf({
        ...constant,
        zones: against(0),
        paths: [
          fanPath('x', 'bay', 'room', [fanOf('f', dip)], {
            resistances: [{ name: 'r', linear: 6000, quadratic: 1.2 / (2 * 0.002 ** 2) }],
          }),
        ],
      }),
    )[0]!.points;
    expect(behind.map(({ stable }) => stable)).toEqual(alone.map(({ stable }) => stable));
    behind.forEach(({ flow }, i) => {
      expect(flow).toBeCloseTo(alone[i]!.flow, 6);
    });
  });

  it('exact: a shut flap gives the fan a point of its own, at the flow that leaks through', () => {
    // Through the leak of a flap that opens at 25 Pa against 33 Pa: R Q² = 60 - 7500 Q - 33 on the first piece, R = ρ/(2 (0.6 A)²).
    const parts = { resistances: [{ name: 'r', linear: 500, quadratic: 0 }], flap: { opensAt: 25, leakArea: 3e-4 } };
    const paths = [fanPath('x', 'bay', 'room', [fanOf('f', dip)], parts)];
    const points = operatingPoints(networkOf({ ...constant, zones: against(33), paths }))[0]!.points;
    const leak = 1.2 / (2 * (0.6 * 3e-4) ** 2);
    const wanted = (-7500 + Math.sqrt(7500 ** 2 + 4 * leak * 27)) / (2 * leak);
    expect(points.map(({ stable }) => stable)).toEqual([true]);
    expect(points[0]!.flow).toBeCloseTo(wanted, 12);
    expect(leak * wanted ** 2).toBeLessThan(25);
    expect(solveFlows(networkOf({ ...constant, zones: against(33), paths })).flows['x']).toBeCloseTo(1.2 * wanted, 12);
  });

  it('exact: a sealed bay leaves the fan one point, at rest', () => {
    const zones = [heldZone('room', 21), heldZone('bay', 21, { pressure: { kind: 'solved' } })];
    const paths = [fanPath('x', 'bay', 'room', [fanOf('f', { kind: 'poly', p0: 50, a: 100, b: 1e5 })])];
    expect(operatingPoints(networkOf({ zones, paths }))[0]!.points.map(({ flow }) => flow)).toEqual([0]);
  });
});

describe('a fan with a stall dip', () => {
  const paths = [fanPath('x', 'bay', 'room', [fanOf('f', dip)], system)];

  it('exact: runs at the largest stable flow and says that it could run elsewhere', () => {
    const network = networkOf({ ...constant, zones: against(25), paths });
    const { flows, warnings } = solveFlows(network);
    expect(flows['x']).toBeCloseTo(1.2 * operatingPoints(network)[0]!.points[2]!.flow, 14);
    expect(warnings.map(({ code, what }) => [code, what])).toEqual([['several-operating-points', 'x']]);
    expect(warnings[0]!.message).toContain('10.2 m3/h, 15.2 m3/h (unstable), 19.1 m3/h');
  });

  it('exact: runs on the only branch that is left when there is one crossing', () => {
    for (const pa of [0, 40]) {
      const network = networkOf({ ...constant, zones: against(pa), paths });
      const points = operatingPoints(network)[0]!.points;
      expect(points).toHaveLength(1);
      expect(solveFlows(network).flows['x']).toBeCloseTo(points[0]!.massFlow, 13);
    }
  });

  it('property: stays on its branch until that ends, up and down again (hysteresis)', () => {
    // The room's air, warm and cold again, raises and lowers the pressure 6.5 m up against which the fan blows: 1.5 to 39 Pa.
    const warm = {
      kind: 'fixed',
      profile: [
        [0, 300],
        [5000, 600],
        [10000, 300],
      ],
    } as const;
    const zones = [
      heldZone('bay', 21),
      heldZone('room', 21, { temperature: warm, zRef: 0, pressure: { kind: 'fixed', value: 0 } }),
    ];
    const high = paths.map((path) => ({ ...path, z: 6.5 }));
    const record = simulateDay(
      networkOf({
        duration: 10000,
        density: { model: 'ideal-gas' },
        zones,
        paths: high,
        breaks: Array.from({ length: 99 }, (_, i) => (i + 1) * 100),
      }),
    );
    const flow = (time: number): number => record.flows.values[record.times.indexOf(time)]!;
    const rising = Array.from({ length: 49 }, (_, i) => flow((i + 1) * 100));
    const falling = Array.from({ length: 49 }, (_, i) => flow(10000 - (i + 1) * 100));
    const jumps = (list: readonly number[]): number[] =>
      list.flatMap((q, i) => (i > 0 && Math.abs(q - list[i - 1]!) > 1e-3 ? [i] : []));
    expect(jumps(rising)).toHaveLength(1);
    expect(jumps(falling)).toHaveLength(1);
    expect(jumps(rising)[0]).not.toBe(jumps(falling)[0]);
  });
});
