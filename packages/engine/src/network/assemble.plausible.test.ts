// What any such cabinet does, against figures that were known before: handbook losses, published powers of beds, flows of stacks.

import { describe, expect, it } from 'vitest';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import type { DayRecord, Table } from '../day/record.ts';
import { concentrationSeries, mean, seriesOf, temperatureSeries, valueAt } from '../day/series.ts';
import { simulateDay } from '../day/simulate-day.ts';
import { assemble } from './assemble.ts';
import type { Network } from './network.ts';

const CELSIUS = 273.15;
const END = 4 * 86400;

/** The usual size: 0.8 x 0.6 x 1.75 m of 18 mm plywood with a door of 4 mm glass, tight, free on all sides. */
const shell = (bays: string, rest: string, room = 22): string => `
stillair: 1
room: { size: 4 m x 3.5 m x 2.5 m, temperature: ${room} °C, held: yes, air-changes: 0.5 /h, background: { particles: 0 /cm3, PM2.5: 0 µg/m3, TVOC: 0 µg/m3 } }
outdoors: { temperature: ${room} °C, wind: 0 m/s, background: { particles: 0 /cm3 } }
cabinet: { inside: 800 mm x 600 mm x 1750 mm, made-of: plywood 18 mm, joint-gap: 0 mm, faces: { bottom: { against: room } }, door: { made-of: glass 4 mm, seal-gap: SEAL } }
bays: ${bays}
${rest}
`;

function networkOf(text: string, seal = '0 mm'): Network {
  const answer = readCabinet('usual.yaml', text.replace('SEAL', seal));
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('\n'));
  return assemble(answer.cabinet, 'd').network;
}

const at = (record: DayRecord, name: string, time: number): number => valueAt(temperatureSeries(record, name), time);
const of = (record: DayRecord, table: Table, name: string, time: number): number =>
  valueAt(seriesOf(record.times, table, name), time);

/** The same network with the air of these zones held, K. */
const holding = (network: Network, held: Readonly<Record<string, number>>): Network => ({
  ...network,
  zones: network.zones.map((zone) =>
    held[zone.name] === undefined
      ? zone
      : { ...zone, temperature: { kind: 'fixed', profile: [[0, held[zone.name]!]] } },
  ),
});

describe('heat', () => {
  // 200 W for four days, a share of it from a body that only radiates and the rest into the air.
  const empty = networkOf(
    shell(
      '{ all: { air-zones: 1 } }',
      'machines: { m: { kind: moving bed 220, bay: all, standby: 0 W } }\ndays: { d: { length: 4 d } }',
    ),
  );
  const warmed = (share: number): DayRecord =>
    simulateDay({
      ...empty,
      convections: empty.convections.filter(({ surface }) => !surface.startsWith('m.')),
      conductances: empty.conductances.filter(({ a }) => !a.startsWith('m.')),
      heatSources: [
        { name: 'body', node: 'm.frame', watts: 200 * share, active: 'always' },
        { name: 'air', node: 'all', watts: 200 * (1 - share), active: 'always' },
      ],
    });
  /** Mean radiant temperature by the star's own rule. */
  const radiant = (record: DayRecord): number => {
    const { members } = record.network.stars[0]!;
    const sum = members.reduce((total, { weight }) => total + weight, 0);
    return (members.reduce((total, { node, weight }) => total + weight * at(record, node, END) ** 4, 0) / sum) ** 0.25;
  };

  it('cross: loses 16.5 W/K (ISO 6946 films) when air and surfaces seen are equally warm', () => {
    let [low, high] = [0, 1];
    for (let step = 0; step < 12; step += 1) {
      const middle = (low + high) / 2;
      const record = warmed(middle);
      if (radiant(record) < at(record, 'all', END)) low = middle;
      else high = middle;
    }
    const record = warmed((low + high) / 2);
    expect(radiant(record)).toBeCloseTo(at(record, 'all', END), 1);
    const loss = 200 / (at(record, 'all', END) - CELSIUS - 22);
    expect(loss / 16.5).toBeGreaterThan(0.9);
    expect(loss / 16.5).toBeLessThan(1.1);
  });

  it('property: air warmed directly is warmer than ISO 6946 says, by about a half: its walls get no radiation', () => {
    const loss = 200 / (at(warmed(0), 'all', END) - CELSIUS - 22);
    expect(loss).toBeGreaterThan(0.6 * 16.5);
    expect(loss).toBeLessThan(0.75 * 16.5);
  });

  // Bed of 235 mm, edge 6 mm, 10 mm of foam, McAdams, surroundings as warm as the air; published correlations lie -38 to +30 % around.
  const published = [
    [60, 25, 34],
    [60, 35, 24],
    [100, 25, 86],
    [100, 35, 74],
    [110, 45, 77],
  ] as const;
  it.each(published)('cross: a bed at %d °C in air of %d °C takes %d W', (bed, air, watts) => {
    const machine =
      '{ kind: fixed-frame 250, bay: all, bed: { size: 235 mm x 235 mm, thickness: 6 mm, underside: foam 10 mm, motion: 0 m/s } }';
    const job = `{ machine: m, material: ABS, start: 1:00, for: 6 h, bed: ${bed} °C }`;
    const network = networkOf(
      shell('{ all: { air-zones: 1 } }', `machines: { m: ${machine} }\ndays: { d: { jobs: { j: ${job} } } }`, air),
    );
    const record = simulateDay(holding(network, { all: air + CELSIUS }));
    expect(Math.abs(of(record, record.bedPowers, 'm', 6.5 * 3600) / watts - 1)).toBeLessThan(0.05);
  });

  it('property: in a closed bay of 0.86 m a bed at 100 °C parts low and high air as 2 to 10 K from floor to ceiling do', () => {
    const network = networkOf(
      shell(
        '{ all: { z: 0 mm to 860 mm, air-zones: 2 } }',
        'machines: { m: { kind: moving bed 220, bay: all } }\ndays: { d: { jobs: { j: { machine: m, material: ABS, start: 1:00, for: 20 h } } } }',
      ),
    );
    const record = simulateDay(network);
    const halves = at(record, 'all.high', 20 * 3600) - at(record, 'all.low', 20 * 3600);
    // The means of two halves differ by half of a straight course from floor to ceiling.
    expect(2 * halves).toBeGreaterThan(2);
    expect(2 * halves).toBeLessThan(10);
  });

  it('property: a filter that turns the air round warms it by its motor, less than a lamp that stirs nothing', () => {
    const days = 'days: { d: { length: 1 d } }';
    const fan =
      'air: { round: { from: all, to: all, parts: [{ filter: pleated H13 150 mm }, { fan: axial 92 mm quiet, power: 4 W, control: { timer: 8:00 to 12:00 } }] } }';
    const lamp = 'heats: { motor: { what: other, bay: all, power: 4 W, control: { timer: 8:00 to 12:00 } } }';
    const [one, other] = [fan, lamp].map((part) =>
      simulateDay(networkOf(shell('{ all: { air-zones: 1 } }', `${part}\n${days}`))),
    );
    for (let time = 8.5 * 3600; time <= 12 * 3600; time += 1800) {
      const share = (at(one!, 'all', time) - 22 - CELSIUS) / (at(other!, 'all', time) - 22 - CELSIUS);
      expect(share).toBeGreaterThan(0.6);
      expect(share).toBeLessThan(1);
    }
  });

  it('property: a motor at half its speed warms the air by an eighth, and not at all where its air goes outdoors', () => {
    const watts = (to: string, speed: string): [string, number][] =>
      networkOf(
        shell(
          '{ all: { air-zones: 1 } }',
          `air: { way: { from: all, to: ${to}, parts: [{ fan: axial 92 mm quiet, power: 4 W, speed: ${speed} }] } }\ndays: { d: { length: 1 d } }`,
        ),
      ).heatSources.map(({ node, watts: power }) => [node, power]);
    expect(watts('room', '50 %')).toEqual([['room', 0.5]]);
    expect(watts('all', '100 %')).toEqual([['all', 4]]);
    expect(watts('outdoors', '100 %')).toEqual([]);
  });

  it('order: a machine that prints alone in the quiet bay has cooler air when a fan turns it round as well', () => {
    const day = (air: string): number => {
      const record = simulateDay(
        networkOf(
          shell(
            '{ all: { z: 0 mm to 860 mm, air-zones: 1 } }',
            `machines: { m: { kind: moving bed 220, bay: all } }\n${air}\ndays: { d: { jobs: { j: { machine: m, material: ABS, start: 1:00, for: 20 h } } } }`,
          ),
        ),
      );
      return at(record, 'all', 20 * 3600);
    };
    const quiet = day('');
    const stirred = day('air: { round: { from: all, to: all, parts: [{ fan: axial 92 mm quiet, power: 0 W }] } }');
    // Fans of 2 to 5 W/(m²K) on top of natural films are told of; they leave the radiation, which carries more, as it is.
    expect(quiet - stirred).toBeGreaterThan(0.3);
    expect(quiet - stirred).toBeLessThan(4);
  });
});

describe('air', () => {
  const STACKED = '{ lower: { z: 0 mm to 870 mm, air-zones: 1 }, upper: { z: 880 mm to 1750 mm, air-zones: 1 } }';
  const holes = `
shelves: { s: { between: [lower, upper], made-of: plywood 18 mm, holes: { h: { hole: 100 mm x 80 mm, discharge: 0.65, at: { z: 875 mm } } } } }
air:
  in: { from: room, to: lower, parts: [{ hole: 100 mm x 60 mm, discharge: 0.65 }], at: { face: back, z: 100 mm } }
  out: { from: upper, to: room, parts: [{ hole: 100 mm x 60 mm, discharge: 0.65 }], at: { face: back, z: 1650 mm } }
days: { d: { length: 1 h } }`;

  // 60 cm² low and high, 80 cm² in the shelf, 1.55 m apart: an independent solution in m³/h.
  const stack = [
    [25, 26, 5.2],
    [30, 32, 8.3],
    [35, 38, 10.3],
    [45, 48, 13.1],
  ] as const;
  it.each(stack)('cross: bays held at %d and %d °C draw %d m³/h in', (lower, upper, expected) => {
    const record = simulateDay(
      holding(networkOf(shell(STACKED, holes)), { lower: lower + CELSIUS, upper: upper + CELSIUS }),
    );
    const density = 101325 / (287.055 * (22 + CELSIUS));
    const flow = (3600 * of(record, record.flows, 'in', 1800)) / density;
    expect(Math.abs(flow / expected - 1)).toBeLessThan(0.1);
  });

  const blown = (from: string, to: string): DayRecord =>
    simulateDay(
      networkOf(
        shell(
          '{ all: { air-zones: 1 } }',
          `
air:
  fan: { from: ${from}, to: ${to}, at: { face: back, z: 900 mm }, parts: [{ fan: axial 92 mm quiet }] }
  hole: { from: ${to}, to: ${from}, hole: 60 mm round, at: { face: back, z: 200 mm } }
days: { d: { length: 1 h } }`,
        ),
        '0.5 mm',
      ),
    );
  const leaks = (record: DayRecord): number[] =>
    record.flows.names.filter((name) => name.startsWith('leak')).map((name) => of(record, record.flows, name, 1800));

  it('property: a fan that blows in pushes every leak out; one that sucks draws every leak in', () => {
    expect(Math.min(...leaks(blown('room', 'all')))).toBeGreaterThan(0);
    expect(Math.max(...leaks(blown('all', 'room')))).toBeLessThan(0);
  });

  it('property: an exhaust led outdoors takes nearly all particles out of the room that the same one blown into it leaves', () => {
    const day = (to: string): DayRecord =>
      simulateDay(
        networkOf(
          shell(
            '{ all: { air-zones: 1 } }',
            `
machines: { m: { kind: moving bed 220, bay: all } }
air:
  out: { from: all, to: ${to}, at: { face: back, z: 1650 mm }, parts: [{ fan: axial 92 mm quiet }] }
  in: { from: room, to: all, hole: 90 mm round, at: { face: back, z: 100 mm } }
days: { d: { jobs: { j: { machine: m, material: ABS, start: 8:00, for: 6 h } } } }`,
          ),
          '0.5 mm',
        ),
      );
    const [inside, outdoors] = ['room', 'outdoors'].map((to) =>
      mean(concentrationSeries(day(to), 'particles', 'room')),
    );
    expect(outdoors!).toBeLessThan(0.1 * inside!);
  });
});
