import { carbonEquilibrium, solvents } from '@stillair/physics';
import { describe, expect, it } from 'vitest';
import type { AirPath, CarbonBed, Contaminant, Network } from '../network/network.ts';
import { freeZone, heldZone, networkOf } from './network-of.ts';
import { concentrationSeries, mean, seriesOf, valueAt } from './series.ts';
import { simulateDay } from './simulate-day.ts';

const dust = (parts: Partial<Contaminant> = {}): Contaminant => ({
  name: 'dust',
  unit: '1/m3',
  scale: 1,
  initial: {},
  deposition: {},
  ...parts,
});
const stream = (
  name: string,
  from: string,
  to: string,
  flow: number,
  filters: Record<string, number> = {},
): AirPath => ({
  type: 'fixed-flow',
  name,
  from,
  to,
  z: 0,
  open: 'always',
  filterEfficiency: filters,
  flow,
});
const box = freeZone('box', 20, 1000, { volume: 0.5, concentrations: 'free' });
const room = heldZone('room', 20);
const boxOf = (parts: Partial<Network>): Network => networkOf({ zones: [room, box], contaminants: [dust()], ...parts });

function inBox(network: Network, time: number, tolerance = 2e-5): number {
  return valueAt(concentrationSeries(simulateDay(network, { tolerance }), network.contaminants[0]!.name, 'box'), time);
}

describe('contaminants', () => {
  it('exact: dilution by filtered air from a room that is held', () => {
    const network = boxOf({
      contaminants: [dust({ initial: { room: 8, box: 50 }, deposition: { box: 1e-4 } })],
      paths: [stream('in', 'room', 'box', 0.006, { dust: 0.75 }), stream('out', 'box', 'room', 0.006)],
    });
    // V dC/dt = q (0.25·8) - (q + λV) C, q = 0.006/1.2
    const [q, loss] = [0.005, 0.005 / 0.5 + 1e-4];
    const steady = (q * 2) / 0.5 / loss;
    for (const t of [60, 300, 3600])
      expect(inBox(network, t)).toBeCloseTo(steady + (50 - steady) * Math.exp(-loss * t), 3);
  });

  it('exact: particles that join die by the hyperbola 1/(1/C0 + Kt)', () => {
    const network = boxOf({ contaminants: [dust({ initial: { box: 100 }, coagulation: 1e-4 })] });
    for (const t of [100, 1000, 3600]) expect(inBox(network, t)).toBeCloseTo(1 / (0.01 + 1e-4 * t), 2);
  });

  it('exact: a burst that fades, and a tail after the end', () => {
    const emission = {
      contaminant: 'dust',
      zone: 'box',
      rate: 2,
      burst: { ratio: 5, time: 400 },
      tail: { share: 0.1, time: 700 },
    };
    const network = boxOf({ emissions: [{ ...emission, active: { windows: [[500, 2000]] } }] });
    const given = (t: number): number => 2 * (t + 4 * 400 * (1 - Math.exp(-t / 400)));
    const after = (t: number): number => 0.2 * 700 * (1 - Math.exp(-t / 700));
    expect(inBox(network, 500)).toBe(0);
    expect(inBox(network, 1300)).toBeCloseTo(given(800) / 0.5, 1);
    expect(inBox(network, 3600)).toBeCloseTo((given(1500) + after(1600)) / 0.5, 1);
  });

  it('exact: every job of a machine bursts anew', () => {
    const mode = {
      name: 'print',
      powers: [],
      emissions: [{ contaminant: 'dust', zone: 'box', rate: 1, burst: { ratio: 3, time: 100 } }],
    };
    const network = boxOf({
      machines: [{ name: 'm', modes: [mode] }],
      schedule: [
        { machine: 'm', mode: 'print', start: 0, end: 1000 },
        { machine: 'm', mode: 'print', start: 1000, end: 2000 },
      ],
    });
    const job = 1000 + 2 * 100 * (1 - Math.exp(-10));
    expect(inBox(network, 3600)).toBeCloseTo((2 * job) / 0.5, 1);
  });

  it('exact: outdoor air change with make-up for what an exhaust takes', () => {
    const network = networkOf({
      duration: 40000,
      zones: [heldZone('outdoor', 5), { ...room, volume: 50, concentrations: 'free' }],
      contaminants: [dust({ initial: { outdoor: 2 } })],
      airChanges: [{ zone: 'room', with: 'outdoor', perSecond: 0.5 / 3600 }],
      paths: [stream('exhaust', 'room', 'outdoor', 0.012)],
      emissions: [{ contaminant: 'dust', zone: 'room', rate: 0.3, active: 'always' }],
    });
    const record = simulateDay(network);
    const fresh = (50 * 0.5) / 3600 + 0.01;
    expect(valueAt(concentrationSeries(record, 'dust', 'room'), 40000)).toBeCloseTo(2 + 0.3 / fresh, 2);
  });

  it("exact: air pushed into a room leaves it outdoors, at the room's concentration", () => {
    const network = networkOf({
      duration: 40000,
      zones: [heldZone('outdoor', 5), { ...room, volume: 50, concentrations: 'free' }],
      contaminants: [dust({ initial: { outdoor: 2 } })],
      airChanges: [{ zone: 'room', with: 'outdoor', perSecond: 0 }],
      paths: [stream('supply', 'outdoor', 'room', 0.012, { dust: 0.5 })],
    });
    const record = simulateDay(network, { tolerance: 0.008 });
    expect(valueAt(concentrationSeries(record, 'dust', 'room'), 40000)).toBeCloseTo(1, 3);
  });

  it('exact: a concentration outside that follows a course', () => {
    const network = boxOf({
      contaminants: [
        dust({
          outside: {
            room: [
              [0, 0],
              [3600, 36],
            ],
          },
        }),
      ],
      paths: [stream('in', 'room', 'box', 0.006), stream('out', 'box', 'room', 0.006)],
    });
    // Ramp of 0.01/s behind a lag of V/q = 100 s.
    expect(inBox(network, 3600)).toBeCloseTo(0.01 * (3600 - 100 * (1 - Math.exp(-36))), 3);
  });

  it('limit: without filter or deposition a steady source leaves the room at E/Q whatever the box', () => {
    const network = (exhaust: number): Network =>
      networkOf({
        duration: 200000,
        zones: [heldZone('outdoor', 5), { ...room, volume: 30, concentrations: 'free' }, box],
        contaminants: [dust()],
        airChanges: [{ zone: 'room', with: 'outdoor', perSecond: 1 / 3600 }],
        paths: [stream('in', 'room', 'box', exhaust), stream('out', 'box', 'room', exhaust)],
        emissions: [{ contaminant: 'dust', zone: 'box', rate: 0.5, active: 'always' }],
      });
    for (const exhaust of [0.001, 0.02]) {
      const record = simulateDay(network(exhaust));
      expect(valueAt(concentrationSeries(record, 'dust', 'room'), 200000)).toBeCloseTo(0.5 / (30 / 3600), 2);
    }
  });

  it("property: means over the record's cubics are those of the exact course", () => {
    const network = boxOf({ contaminants: [dust({ initial: { box: 80 }, deposition: { box: 1 / 500 } })] });
    const series = concentrationSeries(simulateDay(network, { tolerance: 0.008 }), 'dust', 'box');
    expect(mean(series)).toBeCloseTo((80 * 500 * (1 - Math.exp(-7.2))) / 3600, 1);
  });
});

describe('carbon beds', () => {
  const voc = dust({ name: 'voc', unit: 'ug/m3', scale: 10, initial: { room: 300, box: 300 } });
  const bed = (load: number, mass = 0.2): CarbonBed => ({
    name: 'carbon',
    in: 'out',
    at: 'box',
    mass,
    vapours: [{ contaminant: 'voc', efficiency: 0.9, vapour: 'styrene', kilogramsPerUnit: 1e-9, load }],
  });
  const through = (load: number, mass?: number): Network =>
    networkOf({
      duration: 7200,
      zones: [room, box, heldZone('hall', 20, { volume: 20, concentrations: 'free' })],
      contaminants: [voc],
      paths: [
        stream('in', 'room', 'box', 0.006),
        stream('out', 'box', 'hall', 0.006),
        stream('on', 'hall', 'room', 0.006),
      ],
      carbonBeds: [bed(load, mass)],
    });

  it('exact: fresh carbon passes one tenth and gains what it caught', () => {
    const record = simulateDay(through(0));
    const caught = 0.005 * 300 * 0.9 * 7200 * 1e-9;
    const loads = seriesOf(record.times, record.carbonLoads, 'carbon/voc');
    expect(valueAt(loads, 7200) / (caught / 0.2)).toBeCloseTo(1, 4);
    const steady = 30 * (1 - Math.exp((-0.005 * 7200) / 20));
    expect(valueAt(concentrationSeries(record, 'voc', 'hall'), 7200)).toBeCloseTo(steady, 1);
  });

  it('limit: carbon loaded beyond its balance gives vapour back', () => {
    const load = 0.2;
    const star = carbonEquilibrium(solvents.styrene, load, 293.15) / 1e-9;
    expect(star).toBeGreaterThan(300);
    const record = simulateDay(through(load, 50));
    // Heavy bed: its load hardly changes, so what comes out is 300 - 0.9 (300 - C*).
    const out = 300 - 0.9 * (300 - star);
    const steady = out * (1 - Math.exp((-0.005 * 7200) / 20));
    expect(valueAt(concentrationSeries(record, 'voc', 'hall'), 7200) / steady).toBeCloseTo(1, 2);
    const loads = record.carbonLoads.values;
    expect(loads.at(-1)!).toBeLessThan(load);
  });

  it('property: vapour in the air and on the carbon of a closed box is conserved', () => {
    const network = networkOf({
      duration: 86400,
      zones: [room, box],
      contaminants: [dust({ name: 'voc', scale: 10, initial: { box: 5000 } })],
      recirculations: [{ name: 'fan', zone: 'box', flow: 0.003, efficiency: {}, active: 'always' }],
      carbonBeds: [{ ...bed(0, 1e-6), in: 'fan' }],
    });
    const record = simulateDay(network, { tolerance: 0.008 });
    const left = valueAt(concentrationSeries(record, 'voc', 'box'), 86400);
    const load = valueAt(seriesOf(record.times, record.carbonLoads, 'carbon/voc'), 86400);
    expect((0.5 * left + (load * 1e-6) / 1e-9) / 2500).toBeCloseTo(1, 9);
    // In the end the air is in balance with the carbon.
    // So little carbon follows the air at once, which its explicit coupling only follows to a hundredth.
    expect(Math.abs(left / (carbonEquilibrium(solvents.styrene, load, 293.15) / 1e-9) - 1)).toBeLessThan(0.02);
  });

  it('property: filter and carbon in one path act one after the other', () => {
    const network = through(0);
    const paths = network.paths.map((path) =>
      path.name === 'out' ? { ...path, filterEfficiency: { voc: 0.5 } } : path,
    );
    const hall = (one: Network): number =>
      valueAt(concentrationSeries(simulateDay(one, { tolerance: 2e-3 }), 'voc', 'hall'), 7200);
    expect(hall({ ...network, paths }) / hall(network)).toBeCloseTo(0.5, 4);
  });
});
