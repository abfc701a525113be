import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Network } from '../network/network.ts';
import { readNetwork } from '../network/read-network.ts';
import { hermiteIntegral } from './hermite.ts';
import { freeZone, heldZone, networkOf, orifice, solid } from './network-of.ts';
import { simulateDay } from './simulate-day.ts';

/** A warm bay with everything that moves heat and matter: every kind of link at least once. */
const everything = networkOf({
  duration: 20000,
  zones: [
    heldZone('outdoor', 5, {
      temperature: {
        kind: 'fixed',
        profile: [
          [0, 278],
          [10000, 288],
          [20000, 280],
        ],
      },
    }),
    heldZone('room', 20, {
      temperature: { kind: 'free', initial: 293.15, heatCapacity: 2e5 },
      volume: 40,
      concentrations: 'free',
    }),
    freeZone('low', 25, 1500, { volume: 0.2, concentrations: 'free' }),
    freeZone('high', 25, 1500, { zRef: 0.8, volume: 0.2, concentrations: 'free' }),
  ],
  nodes: [solid('bed', 25, 900), solid('frame', 25, 4000), solid('supply', 25, 500)],
  conductances: [
    { a: 'frame', b: 'low', conductance: 3 },
    { a: 'bed', b: 'frame', conductance: 0.3 },
    { a: 'supply', b: 'low', conductance: 0.6 },
    { a: 'room', b: 'outdoor', conductance: 15 },
    { a: 'high', b: 'room', conductance: 5, active: { windows: [[3000, 4000]] } },
  ],
  walls: [
    {
      name: 'side',
      a: 'low',
      b: 'room',
      area: 1,
      filmA: 5,
      filmB: 8,
      grid: 'middles',
      initial: 295,
      layers: [{ thickness: 0.018, conductivity: 0.13, density: 600, heatCapacity: 1600, nodes: 2 }],
    },
    {
      name: 'lid',
      a: 'high',
      b: 'room',
      area: 0.5,
      grid: 'faces',
      initial: 295,
      layers: [{ thickness: 0.018, conductivity: 0.13, density: 600, heatCapacity: 1600, nodes: 2 }],
    },
  ],
  convections: [
    {
      surface: 'bed',
      air: 'low',
      heatTo: 'high',
      area: 0.06,
      faces: 'up',
      length: 0.06,
      factor: 1,
      forced: [{ film: 4, active: 'always', fan: 'f' }],
    },
    { surface: 'lid.1', air: 'high', area: 0.5, faces: 'down', length: 0.2, factor: 1.1, forced: [] },
    { surface: 'lid.3', air: 'outdoor', area: 0.5, faces: 'up', length: 0.2, factor: 1, forced: [] },
  ],
  radiation: [{ a: 'lid.3', b: 'outdoor', area: 0.5, emissivity: 0.9, factor: 0.5 }],
  stars: [
    {
      name: 'inside',
      members: [
        { node: 'bed', weight: 0.05 },
        { node: 'lid.1', weight: 0.4 },
        { node: 'frame', weight: 0.2 },
      ],
    },
  ],
  heatSources: [
    {
      name: 'sun',
      node: 'room',
      watts: 100,
      active: 'always',
      profile: [
        [0, 0],
        [8000, 1],
        [16000, 0],
      ],
    },
  ],
  paths: [
    orifice('in', 'room', 'low', 0.1, 0.004, { filterEfficiency: { dust: 0.3 } }),
    orifice('shelf', 'low', 'high', 0.7, 0.006),
    {
      type: 'tall-opening',
      name: 'door',
      from: 'room',
      to: 'high',
      z: 0.8,
      open: { windows: [[5000, 5300]] },
      filterEfficiency: {},
      dischargeCoefficient: 0.6,
      width: 0.5,
      height: 0.7,
      linearBelow: 0.01,
    },
    {
      type: 'fan-path',
      name: 'exhaust',
      from: 'high',
      to: 'outdoor',
      z: 1.5,
      open: 'always',
      filterEfficiency: { dust: 0.9 },
      fans: [
        {
          name: 'f',
          curve: { kind: 'poly', p0: 60, a: 900, b: 1e5 },
          control: { thermostat: 't' },
          stopped: { linear: 0, quadratic: 0, minor: [{ loss: 3, area: 0.006 }] },
          speed: { proportional: { sensor: 'probe', from: 303, to: 320, low: 0.4, high: 1 } },
        },
      ],
      resistances: [{ name: 'filter', linear: 2000, quadratic: 5e4 }],
      minor: [],
    },
  ],
  exchanges: [
    {
      name: 'hole',
      a: 'low',
      b: 'high',
      active: 'always',
      law: { kind: 'horizontal-opening', area: 0.006, round: true, coefficient: 0.1, path: 'shelf' },
    },
    {
      name: 'gap',
      a: 'high',
      b: 'outdoor',
      active: 'always',
      law: { kind: 'vertical-opening', dischargeCoefficient: 0.5, width: 0.01, height: 0.3 },
    },
    {
      name: 'plume',
      a: 'low',
      b: 'high',
      active: 'always',
      law: { kind: 'plume', coefficient: 0.002, sources: ['bed'] },
    },
  ],
  airChanges: [{ zone: 'room', with: 'outdoor', perSecond: 0.5 / 3600 }],
  machines: [
    {
      name: 'm',
      bed: { node: 'bed', powerMax: 300, supply: { node: 'supply', share: 0.12 } },
      modes: [
        {
          name: 'print',
          bedSet: 370,
          powers: [
            { node: 'frame', watts: 30 },
            { node: 'outdoor', watts: 9 },
          ],
          emissions: [
            {
              contaminant: 'dust',
              zone: 'low',
              rate: 50,
              burst: { ratio: 4, time: 500 },
              tail: { share: 0.2, time: 900 },
            },
          ],
        },
      ],
    },
  ],
  schedule: [{ machine: 'm', mode: 'print', start: 1000, end: 12000 }],
  sensors: [{ name: 'probe', at: 'high', lag: 60, offset: 0.3 }],
  thermostats: [{ name: 't', sensor: 'probe', on: 306, off: 304, sense: 'above', initial: false }],
  contaminants: [
    {
      name: 'dust',
      unit: '1',
      scale: 100,
      initial: { outdoor: 5, room: 10 },
      deposition: { room: 1e-4, low: 4e-4 },
      coagulation: 1e-7,
    },
    {
      name: 'voc',
      unit: '1',
      scale: 100,
      initial: { outdoor: 20, room: 60 },
      deposition: {},
      outside: {
        outdoor: [
          [0, 20],
          [20000, 40],
        ],
      },
    },
  ],
  recirculations: [{ name: 'cleaner', zone: 'high', flow: 0.004, efficiency: { dust: 0.8 }, active: 'always' }],
  carbonBeds: [
    {
      name: 'c',
      in: 'exhaust',
      at: 'high',
      mass: 0.3,
      vapours: [{ contaminant: 'voc', efficiency: 0.8, vapour: 'toluene', kilogramsPerUnit: 1e-9, load: 0.01 }],
    },
  ],
  emissions: [{ contaminant: 'voc', zone: 'high', rate: 3, active: { thermostat: 't' } }],
});

describe('the ledger', () => {
  it('property: heat and contaminants close to rounding with every kind of link at work', () => {
    for (const tolerance of [0.5, 0.02]) {
      const { ledger, events } = simulateDay(everything, { ledger: true, tolerance });
      expect(events.length).toBeGreaterThan(8);
      expect(Math.abs(ledger!.heat.closure)).toBeLessThan(1e-12);
      expect(ledger!.airClosure).toBeLessThan(1e-9);
      for (const { closure } of ledger!.contaminants) expect(Math.abs(closure)).toBeLessThan(1e-12);
    }
  });

  it('property: closes over the frozen days, with beds that hold and hundreds of switches', () => {
    for (const path of ['day-43.yaml', 'day-43-switching.yaml']) {
      const file = readNetwork(path, readFileSync(new URL(`../../cases/frozen/${path}`, import.meta.url), 'utf8'));
      if ('complaints' in file) throw new Error(path);
      const { ledger } = simulateDay(file.network, { ledger: true });
      expect(Math.abs(ledger!.heat.closure)).toBeLessThan(1e-12);
      expect(ledger!.heat.beds).toBeGreaterThan(1e6);
    }
  });

  it("cross: its border fluxes are those that the record's own rows integrate to", () => {
    // Conduction to the room through one link and air through two paths, summed here from temperatures and flows.
    const network: Network = networkOf({
      duration: 7200,
      zones: [heldZone('room', 20), freeZone('bay', 60, 4000)],
      conductances: [{ a: 'bay', b: 'room', conductance: 2.5 }],
      heatSources: [{ name: 'lamp', node: 'bay', watts: 40, active: { windows: [[1000, 3000]] } }],
      paths: [orifice('low', 'room', 'bay', 0, 0.002), orifice('high', 'bay', 'room', 1, 0.002)],
    });
    const record = simulateDay(network, { ledger: true, tolerance: 1e-5 });
    const { heat } = record.ledger!;
    expect(heat.sources).toBeCloseTo(80000, 6);
    const width = record.temperatures.names.length;
    let conducted = 0;
    let carried = 0;
    for (let row = 0; row + 1 < record.times.length; row += 1) {
      const length = record.times[row + 1]! - record.times[row]!;
      const of = (table: Float64Array, at: number, column: number): number => table[at * width + column]!;
      const [y0, y1] = [row, row + 1].map((at) => of(record.temperatures.values, at, 1) - 293.15);
      const [s0, s1] = [row, row + 1].map((at) => of(record.slopes.values, at, 1));
      conducted += length === 0 ? 0 : (2.5 * length * hermiteIntegral(1, length, y0!, s0!, y1!, s1!)) / length;
      const [m0, m1] = [row, row + 1].map((at) => record.flows.values[2 * at]!);
      carried += (1006 * length * (m0! * y0! + m1! * y1!)) / 2;
    }
    expect(Math.abs(heat.conducted / conducted - 1)).toBeLessThan(1e-6);
    expect(Math.abs(heat.carriedByAir / carried - 1)).toBeLessThan(1e-3);
    expect(heat.stored).toBeCloseTo(4000 * (record.temperatures.values.at(-1)! - 333.15), 4);
  });

  it('property: random plants close', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const plant = fc.record({
      capacities: fc.tuple(number(200, 1e5), number(200, 1e5), number(200, 1e5)),
      starts: fc.tuple(number(-5, 90), number(-5, 90), number(-5, 90)),
      links: fc.tuple(number(0, 20), number(0, 20), number(0, 20)),
      holes: fc.tuple(number(1e-5, 0.05), number(1e-5, 0.05), number(1e-5, 0.05)),
      watts: number(-50, 300),
      set: number(20, 110),
    });
    fc.assert(
      fc.property(plant, ({ capacities, starts, links, holes, watts, set }) => {
        const record = simulateDay(
          networkOf({
            duration: 5000,
            zones: [
              heldZone('room', 20),
              freeZone('a', starts[0], capacities[0]),
              freeZone('b', starts[1], capacities[1], { zRef: 1 }),
            ],
            nodes: [solid('bed', starts[2], capacities[2])],
            conductances: [
              { a: 'a', b: 'room', conductance: links[0] },
              { a: 'bed', b: 'a', conductance: links[1] },
              { a: 'bed', b: 'b', conductance: links[2] },
            ],
            heatSources: [{ name: 'lamp', node: 'a', watts, active: { windows: [[700, 3100]] } }],
            paths: [
              orifice('in', 'room', 'a', 0, holes[0]),
              orifice('mid', 'a', 'b', 0.9, holes[1]),
              orifice('out', 'b', 'room', 1.8, holes[2]),
            ],
            machines: [
              {
                name: 'm',
                bed: { node: 'bed', powerMax: 250 },
                modes: [{ name: 'on', bedSet: set + 273.15, powers: [], emissions: [] }],
              },
            ],
            schedule: [{ machine: 'm', mode: 'on', start: 500, end: 4000 }],
          }),
          { ledger: true },
        );
        expect(record.temperatures.values.every(Number.isFinite)).toBe(true);
        expect(Math.abs(record.ledger!.heat.closure)).toBeLessThan(1e-9);
        expect(record.times.at(-1)).toBe(5000);
      }),
      { numRuns: 150 },
    );
  });
});
