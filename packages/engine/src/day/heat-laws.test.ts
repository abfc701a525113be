import { exchangeUnderPressure, filmLaw, floodingPressure, shelfHoleExchange, slabCooling } from '@stillair/physics';
import { describe, expect, it } from 'vitest';
import type { Network, Wall } from '../network/network.ts';
import { fanOf, fanPath, freeZone, heldZone, networkOf, solid } from './network-of.ts';
import { seriesOf, temperatureSeries, valueAt } from './series.ts';
import { simulateDay } from './simulate-day.ts';
import { gridWall } from './wall-grid.ts';

const SIGMA = 5.670374419e-8;
const endOf = (network: Network, name: string): number => {
  const record = simulateDay(network, { tolerance: 1e-3 });
  return valueAt(temperatureSeries(record, name), network.duration);
};

/** Root of a rising function by halving: the steady states below are found so, away from the integrator. */
function rootOf(excess: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let k = 0; k < 200; k += 1) {
    const middle = 0.5 * (low + high);
    if (excess(middle) < 0) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}

describe('convection', () => {
  const plate = (parts: Partial<Network['convections'][number]>, more: Partial<Network> = {}): Network =>
    networkOf({
      duration: 40000,
      zones: [heldZone('air', 20), heldZone('high', 20)],
      nodes: [solid('plate', 20, 800)],
      heatSources: [{ name: 'lamp', node: 'plate', watts: 30, active: 'always' }],
      convections: [
        { surface: 'plate', air: 'air', area: 0.2, faces: 'up', length: 0.1, factor: 1, forced: [], ...parts },
      ],
      ...more,
    });
  const law = filmLaw('faces-up', 0.1, 308.15);

  it('cross: a plate settles where the film law gives off its watts', () => {
    for (const factor of [0.8, 1, 1.25]) {
      const rise = rootOf((dT) => factor * law(dT) * 0.2 * dT - 30, 0, 200);
      expect(Math.abs(endOf(plate({ factor }), 'plate') - 293.15 - rise)).toBeLessThan(0.01);
    }
  });

  it("cross: forced parts join by their cubes, only while active, and go with a fan's speed to the power 0.8", () => {
    const mixed = (film: number): number => rootOf((dT) => Math.cbrt(law(dT) ** 3 + film ** 3) * 0.2 * dT - 30, 0, 200);
    expect(endOf(plate({ forced: [{ film: 6, active: 'always' }] }), 'plate') - 293.15).toBeCloseTo(mixed(6), 2);
    const idle = plate({ forced: [{ film: 6, active: { windows: [[0, 10]] } }] });
    expect(endOf(idle, 'plate') - 293.15).toBeCloseTo(mixed(0), 2);
    const fan = fanOf('f', { kind: 'poly', p0: 10, a: 100, b: 0 }, { speed: 0.5 });
    const stirred = plate(
      { forced: [{ film: 6, active: 'always', fan: 'f' }] },
      { paths: [fanPath('x', 'air', 'high', [fan])] },
    );
    expect(endOf(stirred, 'plate') - 293.15).toBeCloseTo(mixed(6 * 0.5 ** 0.8), 2);
  });

  it('exact: heat handed to another zone leaves the near air alone', () => {
    const network = plate(
      { heatTo: 'high' },
      {
        zones: [freeZone('air', 20, 500), freeZone('high', 20, 500), heldZone('room', 20)],
        conductances: [
          { a: 'air', b: 'room', conductance: 1 },
          { a: 'high', b: 'room', conductance: 2 },
        ],
      },
    );
    expect(endOf(network, 'air')).toBeCloseTo(293.15, 6);
    expect(endOf(network, 'high')).toBeCloseTo(293.15 + 15, 3);
  });
});

describe('radiation', () => {
  it('exact: a body cools to a cold surround by its fourth power', () => {
    const [C, area, T0] = [500, 0.1, 400];
    const network = networkOf({
      duration: 3000,
      zones: [heldZone('space', -273.15 + 1e-3)],
      nodes: [{ name: 'body', heatCapacity: C, initial: T0 }],
      radiation: [{ a: 'body', b: 'space', area, emissivity: 1, factor: 1 }],
      density: { model: 'constant', value: 1.2 },
    });
    expect(endOf(network, 'body')).toBeCloseTo((T0 ** -3 + (3 * SIGMA * area * 3000) / C) ** (-1 / 3), 2);
  });

  it('exact: a star of surfaces settles at its weighted mean of T^4 and creates no heat', () => {
    const weights = { a: 0.3, b: 0.1, c: 0.6 };
    const starts = { a: 350, b: 420, c: 300 };
    const members = Object.entries(weights).map(([node, weight]) => ({ node, weight }));
    const nodes = Object.entries(starts).map(([name, initial]) => ({ name, initial, heatCapacity: 1000 }));
    const network = networkOf({
      duration: 200000,
      zones: [heldZone('room', 20)],
      nodes,
      stars: [{ name: 's', members }],
    });
    for (const name of ['a', 'b', 'c']) expect(endOf(network, name)).toBeCloseTo((350 + 420 + 300) / 3, 3);
    // Held by strong links instead, each gives off w σ (T⁴ - M).
    const record = simulateDay({ ...network, duration: 1 }, { tolerance: 1e-6 });
    const mean = Object.entries(weights).reduce((sum, [name, w]) => sum + w * starts[name as 'a'] ** 4, 0);
    const slope = record.slopes.values[record.slopes.names.indexOf('b')]!;
    expect(slope * 1000).toBeCloseTo(-0.1 * SIGMA * (420 ** 4 - mean), 6);
  });
});

describe('walls', () => {
  const board: Wall = {
    name: 'board',
    a: 'in',
    b: 'out',
    area: 2,
    filmA: 1 / 0.13,
    filmB: 1 / 0.13,
    grid: 'middles',
    initial: 1 + 273.15,
    layers: [{ thickness: 0.018, conductivity: 0.13, density: 500, heatCapacity: 1600, nodes: 18 }],
  };

  it('exact: a board cooled on both faces follows the slab series', () => {
    const biot = ((1 / 0.13) * 0.009) / 0.13;
    for (const grid of ['middles', 'faces'] as const) {
      const convection = (surface: string, air: string) => ({ a: surface, b: air, conductance: 2 / 0.13 });
      const { filmA, filmB, ...bare } = board;
      const network = networkOf({
        duration: 900,
        zones: [heldZone('in', 0), heldZone('out', 0)],
        walls: [grid === 'middles' ? board : { ...bare, grid }],
        conductances: grid === 'middles' ? [] : [convection('board.1', 'in'), convection('board.19', 'out')],
      });
      expect([filmA, filmB]).toEqual([1 / 0.13, 1 / 0.13]);
      const record = simulateDay(network, { tolerance: 1e-5 });
      const fourier = ((0.13 / (500 * 1600)) * 900) / 0.009 ** 2;
      const { centre, surface } = slabCooling(biot, fourier);
      const at = (name: string): number => valueAt(temperatureSeries(record, name), 900) - 273.15;
      if (grid === 'faces') {
        expect(at('board.1')).toBeCloseTo(surface, 2);
        expect(at('board.10')).toBeCloseTo(centre, 2);
        expect(at('board.19')).toBeCloseTo(at('board.1'), 9);
      } else {
        expect(0.5 * (at('board.9') + at('board.10'))).toBeCloseTo(centre, 2);
      }
    }
  });

  it("exact: both grids have the wall's resistance and capacity", () => {
    const layers = [
      { thickness: 0.01, conductivity: 0.2, density: 700, heatCapacity: 1500, nodes: 2 },
      { thickness: 0.03, conductivity: 0.04, density: 30, heatCapacity: 1000, nodes: 3 },
    ];
    const capacity = 2 * (0.01 * 700 * 1500 + 0.03 * 30 * 1000);
    const resistance = (0.01 / 0.2 + 0.03 / 0.04) / 2;
    const sum = (list: readonly number[]): number => list.reduce((total, value) => total + value, 0);
    const { filmA: _a, filmB: _b, ...bare } = board;
    for (const wall of [
      { ...board, layers },
      { ...bare, grid: 'faces' as const, layers },
    ]) {
      const { capacities, links } = gridWall(wall);
      expect(sum(capacities)).toBeCloseTo(capacity, 6);
      const films = wall.grid === 'middles' ? 0.13 : 0;
      expect(sum(links.map(({ conductance }) => 1 / conductance))).toBeCloseTo(resistance + films, 9);
    }
  });
});

describe('exchanges', () => {
  it('exact: a conductance that is there only while a door is open', () => {
    const network = networkOf({
      duration: 3000,
      zones: [heldZone('room', 20)],
      nodes: [solid('mass', 60, 1000)],
      conductances: [{ a: 'mass', b: 'room', conductance: 4, active: { windows: [[1000, 1500]] } }],
    });
    expect(endOf(network, 'mass')).toBeCloseTo(293.15 + 40 * Math.exp(-2), 2);
  });

  it('exact: cooling through a tall opening by the root of its own difference', () => {
    const [C, W, H, Cd] = [2000, 0.4, 0.8, 0.5];
    const network = networkOf({
      duration: 600,
      zones: [heldZone('room', 20), freeZone('bay', 22, C)],
      exchanges: [
        {
          name: 'door',
          a: 'bay',
          b: 'room',
          active: 'always',
          law: { kind: 'vertical-opening', dischargeCoefficient: Cd, width: W, height: H },
        },
      ],
    });
    // C dθ/dt = -k θ^1.5 with Tmean nearly constant: θ = (θ0^-0.5 + k t/(2C))^-2
    const k = ((1.2 * 1006 * Cd) / 3) * W * H ** 1.5 * Math.sqrt(9.80665 / 294.15);
    expect(endOf(network, 'bay') - 293.15).toBeCloseTo((2 ** -0.5 + (k * 600) / (2 * C)) ** -2, 2);
  });

  it('cross: a hole in a shelf mixes as the formulas say, only warm below, and not once it is flooded', () => {
    const [area, warm, cold] = [0.008, 318.15, 308.15];
    const flowAt = (below: number, above: number, through: number): number => {
      const record = simulateDay(
        networkOf({
          duration: 0,
          zones: [heldZone('low', below - 273.15), heldZone('high', above - 273.15)],
          paths: [
            {
              type: 'fixed-flow',
              name: 'shelf',
              from: 'low',
              to: 'high',
              z: 0,
              open: 'always',
              filterEfficiency: {},
              flow: through,
            },
          ],
          exchanges: [
            {
              name: 'hole',
              a: 'low',
              b: 'high',
              active: 'always',
              law: { kind: 'horizontal-opening', area, round: true, coefficient: 0.1, path: 'shelf' },
            },
          ],
        }),
      );
      return valueAt(seriesOf(record.times, record.exchanges, 'hole'), 0);
    };
    const relative = (2 * (warm - cold)) / (warm + cold);
    const still = shelfHoleExchange(area, relative);
    expect(flowAt(warm, cold, 0)).toBeCloseTo(still, 12);
    expect(flowAt(cold, warm, 0)).toBe(0);
    const passing = 2e-4;
    const dp = (passing / (0.68 * area)) ** 2 / (2 * 1.2);
    const left = exchangeUnderPressure(still, dp, floodingPressure(area, 1.2 * relative, 0.754));
    expect(left).toBeGreaterThan(0);
    expect(left).toBeLessThan(still);
    expect(flowAt(warm, cold, passing)).toBeCloseTo(left, 12);
    expect(flowAt(warm, cold, 0.01)).toBe(0);
  });

  it("exact: a plume carries by the cube root of each source's heat, faded below a watt", () => {
    const network = networkOf({
      duration: 40000,
      zones: [heldZone('low', 20), freeZone('high', 20, 400), heldZone('room', 20)],
      nodes: [solid('one', 20, 300), solid('two', 20, 300)],
      heatSources: [
        { name: 'a', node: 'one', watts: 8, active: 'always' },
        { name: 'b', node: 'two', watts: 27, active: 'always' },
      ],
      convections: ['one', 'two'].map((surface) => ({
        surface,
        air: 'low',
        area: 0.1,
        faces: 'up' as const,
        length: 0.1,
        factor: 1,
        forced: [],
      })),
      exchanges: [
        {
          name: 'plume',
          a: 'low',
          b: 'high',
          active: 'always',
          law: { kind: 'plume', coefficient: 0.001, sources: ['one', 'two'] },
        },
      ],
    });
    const record = simulateDay(network);
    expect(valueAt(seriesOf(record.times, record.exchanges, 'plume'), 40000)).toBeCloseTo(
      0.001 * (8 / Math.cbrt(65) + 27 / Math.cbrt(730)),
      7,
    );
  });
});

describe('a fan that follows a sensor', () => {
  it('cross: settles where its speed, its air and the heat agree', () => {
    const proportional = { sensor: 'bay', from: 298.15, to: 318.15, low: 0.2, high: 1 };
    const straight = (s: number): number => (s * s * 60) / (3000 + s * 2000);
    const fan = fanOf('f', { kind: 'poly', p0: 60, a: 2000, b: 0 }, { speed: { proportional } });
    const network = networkOf({
      duration: 30000,
      density: { model: 'constant', value: 1.2 },
      zones: [heldZone('room', 20), freeZone('bay', 20, 2000, { pressure: { kind: 'fixed', value: 0 } })],
      heatSources: [{ name: 'lamp', node: 'bay', watts: 150, active: 'always' }],
      paths: [fanPath('x', 'room', 'bay', [fan], { resistances: [{ name: 'r', linear: 3000, quadratic: 0 }] })],
    });
    const speedAt = (T: number): number => 0.2 + 0.8 * Math.min(Math.max((T - 298.15) / 20, 0), 1);
    const settled = rootOf((T) => 1.2 * straight(speedAt(T)) * 1006 * (T - 293.15) - 150, 293.15, 400);
    expect(Math.abs(endOf(network, 'bay') - settled)).toBeLessThan(0.01);
  });
});
