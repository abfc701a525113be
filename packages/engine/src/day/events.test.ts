import { describe, expect, it } from 'vitest';
import type { Network, Thermostat } from '../network/network.ts';
import { freeZone, heldZone, networkOf, solid } from './network-of.ts';
import { seriesOf, temperatureSeries, valueAt } from './series.ts';
import { simulateDay } from './simulate-day.ts';

const thermostat = (
  name: string,
  sensor: Thermostat['sensor'],
  on: number,
  off: number,
  parts: Partial<Thermostat> = {},
): Thermostat => ({
  name,
  sensor,
  on: on + 273.15,
  off: off + 273.15,
  sense: 'above',
  initial: false,
  ...parts,
});

/** A heated mass in a room at 20 °C: C 2000 J/K, G 2 W/K, so a time constant of 1000 s. */
const heated = (watts: number, parts: Partial<Network> = {}): Network =>
  networkOf({
    duration: 20000,
    zones: [heldZone('room', 20)],
    nodes: [solid('mass', 20, 2000)],
    conductances: [{ a: 'mass', b: 'room', conductance: 2 }],
    heatSources: [{ name: 'lamp', node: 'mass', watts, active: 'always' }],
    ...parts,
  });

/** Time at which a mass that starts at `from` and tends to `to` passes `at`. */
const passes = (from: number, to: number, at: number, constant = 1000): number =>
  -constant * Math.log((at - to) / (from - to));

const heater = (name: string, powerMax: number, bedSet: number): Network['machines'][number] => ({
  name,
  bed: { node: 'mass', powerMax },
  modes: [{ name: 'on', bedSet, powers: [], emissions: [] }],
});

describe('two heaters that warm one mass', () => {
  /** The first one's job begins anew at 8000 s, long after the second took over. */
  const both = (first: readonly [number, number], second: readonly [number, number], parts: Partial<Network> = {}) =>
    simulateDay(
      heated(0, {
        ...parts,
        machines: [heater('first', ...first), heater('second', ...second)],
        schedule: [
          { machine: 'first', mode: 'on', start: 0, end: 4000 },
          { machine: 'first', mode: 'on', start: 8000, end: 20000 },
          { machine: 'second', mode: 'on', start: 0, end: 16000 },
        ],
      }),
      { ledger: true },
    );

  it('exact: the one with the higher set-point holds alone, whatever the other begins', () => {
    const record = both([40, 303.15], [100, 318.15], {
      nodes: [solid('mass', 20, 2000), solid('slow', 20, 20000)],
      conductances: [
        { a: 'mass', b: 'room', conductance: 2 },
        { a: 'slow', b: 'mass', conductance: 1 },
      ],
    });
    const mass = temperatureSeries(record, 'mass');
    for (const time of [4000, 7900, 8000, 8100, 12000]) expect(valueAt(mass, time)).toBe(318.15);
    expect(valueAt(mass, 19900)).toBe(303.15);
    expect(Math.abs(record.ledger!.heat.closure)).toBeLessThan(1e-12);
    // Held at 45 °C it needs 2 W/K · 25 K and what the slow mass takes: 1 W/K.
    const row = record.times.findIndex((time) => time > 9000);
    const powerOf = (name: string): number => record.bedPowers.values[row * 2 + record.bedPowers.names.indexOf(name)]!;
    const slow = valueAt(temperatureSeries(record, 'slow'), record.times[row]!);
    expect(powerOf('second')).toBeCloseTo(50 + (318.15 - slow), 6);
    expect(powerOf('first')).toBe(0);
  });

  it('exact: at one set-point both hold it together, each within its power', () => {
    const record = both([30, 318.15], [40, 318.15]);
    const mass = temperatureSeries(record, 'mass');
    const power = (name: string, time: number): number => valueAt(seriesOf(record.times, record.bedPowers, name), time);
    expect(valueAt(mass, 3999)).toBe(318.15);
    for (const time of [3900, 12000]) {
      expect(power('first', time) + power('second', time)).toBeCloseTo(50, 6);
      expect(power('first', time)).toBeLessThanOrEqual(30 + 1e-6);
      expect(power('second', time)).toBeLessThanOrEqual(40 + 1e-6);
    }
    // Alone, the second sinks towards 20 + 40/2.
    expect(valueAt(mass, 7900) - 273.15).toBeCloseTo(40 + 5 * Math.exp(-3900 / 1000), 2);
    expect(Math.abs(record.ledger!.heat.closure)).toBeLessThan(1e-12);
    expect(record.events.length).toBeLessThan(30);
  });
});

describe('thermostats', () => {
  it('exact: a heater cycles between two levels at the times of its exponentials', () => {
    const network = heated(100, {
      heatSources: [{ name: 'lamp', node: 'mass', watts: 100, active: { thermostat: 't' } }],
      thermostats: [thermostat('t', 'mass', 40, 45, { sense: 'below', initial: true })],
    });
    for (const [tolerance, accuracy] of [
      [0.02, 2],
      [1e-4, 0.02],
      [1e-6, 3e-4],
    ] as const) {
      const { events } = simulateDay(network, { tolerance });
      const up = passes(20, 70, 45);
      const down = passes(45, 20, 40);
      const again = passes(40, 70, 45);
      const wanted = [up, up + down];
      while (wanted.length < 12) wanted.push(wanted.at(-2)! + again + down);
      expect(events.map(({ to }) => to).slice(0, 4)).toEqual(['off', 'on', 'off', 'on']);
      events.slice(0, 12).forEach(({ time }, i) => {
        expect(Math.abs(time - wanted[i]!)).toBeLessThan(accuracy * (1 + i / 4));
      });
    }
  });

  it('exact: the state sits on the level when it switches, and switches once', () => {
    const record = simulateDay(
      heated(100, {
        heatSources: [{ name: 'lamp', node: 'mass', watts: 100, active: { thermostat: 't' } }],
        thermostats: [thermostat('t', 'mass', 40, 45, { sense: 'below', initial: true })],
      }),
    );
    const mass = temperatureSeries(record, 'mass');
    record.events.forEach(({ time, to }) => {
      expect(Math.abs(valueAt(mass, time) - 273.15 - (to === 'on' ? 40 : 45))).toBeLessThan(1.01e-3);
      expect([...record.times].filter((other) => other === time)).toHaveLength(2);
    });
    record.events.forEach(({ to }, i) => {
      expect(to).toBe(i % 2 === 0 ? 'off' : 'on');
    });
  });

  it('exact: thousands of switches, none lost, none doubled, all of one length', () => {
    const record = simulateDay(
      heated(100, {
        duration: 86400,
        heatSources: [{ name: 'lamp', node: 'mass', watts: 100, active: { thermostat: 't' } }],
        thermostats: [thermostat('t', 'mass', 40, 40.5, { sense: 'below', initial: true })],
      }),
      { tolerance: 1e-4 },
    );
    const period = passes(40, 70, 40.5) + passes(40.5, 20, 40);
    const first = passes(20, 70, 40.5);
    expect(record.events.length).toBeGreaterThan(4000);
    expect(Math.abs(record.events.length - (2 * (86400 - first)) / period)).toBeLessThan(3);
    const drift = record.events[4000]!.time - (first + 2000 * period);
    expect(Math.abs(drift)).toBeLessThan(5);
  });

  it('exact: switches at once when it starts beyond its level, and where a break takes it beyond', () => {
    const start = simulateDay(
      heated(0, { nodes: [solid('mass', 50, 2000)], thermostats: [thermostat('t', 'mass', 45, 30)] }),
    );
    expect(start.events[0]).toEqual({ time: 0, what: 't', to: 'on' });
    expect(start.events[1]!.to).toBe('off');
    const profile = [
      [0, 293],
      [500, 293],
      [500, 320],
      [900, 320],
      [900, 293],
    ] as const;
    const jump = simulateDay(
      networkOf({
        duration: 1000,
        zones: [heldZone('room', 20, { temperature: { kind: 'fixed', profile } })],
        thermostats: [thermostat('t', 'room', 40, 30)],
      }),
    );
    expect(jump.events).toEqual([
      { time: 500, what: 't', to: 'on' },
      { time: 900, what: 't', to: 'off' },
    ]);
  });

  it('exact: a lagging sensor with an offset switches later than the air it hangs in', () => {
    // Room ramps at r; a sensor of lag L reads r (t - L (1 - e^(-t/L))) + offset above the start.
    const [rate, lag, offset] = [0.01, 120, -0.5];
    const record = simulateDay(
      networkOf({
        duration: 2000,
        zones: [
          heldZone('room', 20, {
            temperature: {
              kind: 'fixed',
              profile: [
                [0, 293.15],
                [2000, 313.15],
              ],
            },
          }),
        ],
        sensors: [{ name: 'probe', at: 'room', lag, offset }],
        thermostats: [thermostat('t', 'probe', 30, 10)],
      }),
      { tolerance: 1e-4 },
    );
    const time = record.events[0]!.time;
    expect(20 + rate * (time - lag * (1 - Math.exp(-time / lag))) + offset).toBeCloseTo(30, 4);
  });

  it('exact: a contaminant switches a cleaner', () => {
    const network = networkOf({
      duration: 3000,
      zones: [heldZone('room', 20), freeZone('bay', 20, 1000, { volume: 0.5, concentrations: 'free' })],
      contaminants: [{ name: 'voc', unit: 'ug/m3', scale: 10, initial: {}, deposition: {} }],
      emissions: [{ contaminant: 'voc', zone: 'bay', rate: 0.1, active: 'always' }],
      recirculations: [
        { name: 'cleaner', zone: 'bay', flow: 0.005, efficiency: { voc: 0.8 }, active: { thermostat: 't' } },
      ],
      thermostats: [
        { name: 't', sensor: { contaminant: 'voc', zone: 'bay' }, on: 100, off: 60, sense: 'above', initial: false },
      ],
    });
    const { events } = simulateDay(network, { tolerance: 1e-4 });
    // Up at 0.2 per second; down towards 0.1/(0.8·0.005) = 25 with 125 s.
    expect(events[0]!.time).toBeCloseTo(500, 2);
    expect(events[1]!.time - events[0]!.time).toBeCloseTo(passes(100, 25, 60, 125), 1);
  });

  it('exact: what happens at one moment is told in the order of the file, thermostats before beds', () => {
    const twin = (name: string) => thermostat(name, 'mass', 40, 30);
    const { events } = simulateDay(
      heated(100, {
        nodes: [solid('mass', 20, 2000), solid('bed', 20, 2000)],
        conductances: [
          { a: 'mass', b: 'room', conductance: 2 },
          { a: 'bed', b: 'room', conductance: 2 },
        ],
        thermostats: [twin('second'), twin('first')],
        machines: [
          {
            name: 'm',
            bed: { node: 'bed', powerMax: 100 },
            modes: [{ name: 'print', bedSet: 313.15, powers: [], emissions: [] }],
          },
        ],
        schedule: [{ machine: 'm', mode: 'print', start: 0, end: 1e5 }],
      }),
    );
    const together = events.filter(({ time }) => time > 0).slice(0, 3);
    expect(together.map(({ what, to }) => `${what} ${to}`)).toEqual(['second on', 'first on', 'm holding']);
    expect(together[2]!.time - together[0]!.time).toBeLessThanOrEqual(1e-3);
  });
});

describe('beds', () => {
  const bedIn = (powerMax: number, parts: Partial<Network> = {}): Network =>
    networkOf({
      duration: 12000,
      zones: [heldZone('room', 20)],
      nodes: [solid('bed', 20, 1000)],
      conductances: [{ a: 'bed', b: 'room', conductance: 2 }],
      machines: [
        {
          name: 'm',
          bed: { node: 'bed', powerMax },
          modes: [
            { name: 'hot', bedSet: 373.15, powers: [], emissions: [] },
            { name: 'warm', bedSet: 333.15, powers: [], emissions: [] },
          ],
        },
      ],
      schedule: [
        { machine: 'm', mode: 'hot', start: 0, end: 4000 },
        { machine: 'm', mode: 'warm', start: 4000, end: 8000 },
      ],
      ...parts,
    });

  it('exact: full power, hold, coast, hold, off, each when its exponential says', () => {
    const record = simulateDay(bedIn(300), { tolerance: 1e-4 });
    expect(record.events.map(({ to }) => to)).toEqual([
      'hot',
      'heating',
      'holding',
      'warm',
      'coasting',
      'holding',
      'idle',
      'off',
    ]);
    expect(record.events[2]!.time).toBeCloseTo(passes(20, 170, 100, 500), 2);
    expect(record.events[5]!.time).toBeCloseTo(4000 + passes(100, 20, 60, 500), 2);
    const power = seriesOf(record.times, record.bedPowers, 'm');
    for (const [time, watts] of [
      [0, 300],
      [2000, 160],
      [4100, 0],
      [7000, 80],
      [9000, 0],
    ] as const) {
      expect(valueAt(power, time)).toBeCloseTo(watts, 9);
    }
    const bed = temperatureSeries(record, 'bed');
    // Held exactly, not nearly.
    for (const time of [1000, 2500, 3999]) expect(valueAt(bed, time)).toBe(373.15);
  });

  it('exact: a bed too weak for its set-point never holds', () => {
    const record = simulateDay(bedIn(120));
    expect(record.events.slice(0, 3).map(({ to }) => to)).toEqual(['hot', 'heating', 'warm']);
    expect(valueAt(temperatureSeries(record, 'bed'), 4000)).toBeCloseTo(273.15 + 80, 1);
  });

  it('exact: loses its hold when the losses outgrow it, and takes it again', () => {
    // A lid opens for a while: losses at 100 °C go from 160 W to 240 W, the bed gives at most 200.
    const network = bedIn(200, {
      conductances: [
        { a: 'bed', b: 'room', conductance: 2 },
        { a: 'bed', b: 'room', conductance: 1, active: { windows: [[2000, 2600]] } },
      ],
    });
    const record = simulateDay(network, { tolerance: 1e-4 });
    const seen = record.events.filter(({ time }) => time > 1000 && time < 4000);
    expect(seen.map(({ to }) => to)).toEqual(['heating', 'holding']);
    expect(seen[0]!.time).toBe(2000);
    // It sinks towards 20 + 200/3, then climbs towards 20 + 200/2.
    const lowest = 20 + 200 / 3 + (80 - 200 / 3) * Math.exp(-600 / (1000 / 3));
    expect(valueAt(temperatureSeries(record, 'bed'), 2600) - 273.15).toBeCloseTo(lowest, 2);
    expect(seen[1]!.time).toBeCloseTo(2600 + passes(lowest, 120, 100, 500), 1);
  });

  it('exact: stops heating when its surroundings are warmer, within a step', () => {
    const profile = [
      [0, 293.15],
      [2000, 293.15],
      [4000, 413.15],
    ] as const;
    const network = bedIn(400, { zones: [heldZone('room', 20, { temperature: { kind: 'fixed', profile } })] });
    const record = simulateDay({ ...network, duration: 3900 }, { tolerance: 1e-4 });
    const last = record.events.at(-1)!;
    expect(last.to).toBe('coasting');
    // The room reaches the bed's 100 °C at 2000 + 80/120·2000.
    expect(last.time).toBeCloseTo(2000 + (80 / 120) * 2000, 2);
  });

  it("exact: the supply gives off its share of the bed's power", () => {
    const network = bedIn(300, {
      nodes: [solid('bed', 20, 1000), solid('supply', 20, 100)],
      conductances: [
        { a: 'bed', b: 'room', conductance: 2 },
        { a: 'supply', b: 'room', conductance: 0.5 },
      ],
      machines: [
        {
          name: 'm',
          bed: { node: 'bed', powerMax: 300, supply: { node: 'supply', share: 0.12 } },
          modes: [
            { name: 'hot', bedSet: 373.15, powers: [{ node: 'supply', watts: 3 }], emissions: [] },
            { name: 'warm', powers: [], emissions: [] },
          ],
        },
      ],
    });
    const record = simulateDay(network);
    expect(valueAt(temperatureSeries(record, 'supply'), 4000) - 293.15).toBeCloseTo((3 + 0.12 * 160) / 0.5, 2);
  });

  it('property: two jobs in a row at one set-point keep the bed held, without an event between', () => {
    const network = bedIn(300, {
      schedule: [
        { machine: 'm', mode: 'hot', start: 0, end: 3000 },
        { machine: 'm', mode: 'hot', start: 3000, end: 6000 },
      ],
    });
    expect(simulateDay(network).events.map(({ to }) => to)).toEqual(['hot', 'heating', 'holding', 'idle', 'off']);
  });

  it('property: a bed at the very end of its power does not chatter', () => {
    // Losses swing slowly about the greatest power: hold is lost and found, a few times, not thousands.
    const swing = Array.from({ length: 41 }, (_, i) => [i * 250, 293.15 + (i % 2 === 0 ? 0.4 : -0.4)] as const);
    const network = bedIn(160, {
      duration: 10000,
      zones: [heldZone('room', 20, { temperature: { kind: 'fixed', profile: swing } })],
    });
    const record = simulateDay({
      ...network,
      nodes: [solid('bed', 99.9, 1000)],
      schedule: [{ machine: 'm', mode: 'hot', start: 0, end: 10000 }],
    });
    expect(record.events.length).toBeLessThan(100);
    expect(record.times.at(-1)).toBe(10000);
  });
});
