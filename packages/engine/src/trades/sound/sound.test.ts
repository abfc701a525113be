import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { aLevel, roomTransfer } from '@stillair/physics';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cabinet, Layer } from '../../cabinet/cabinet.ts';
import { readCabinet } from '../../cabinet/read-cabinet.ts';
import { runDay } from '../../judge/pipeline.ts';
import { verdictOf } from '../../judge/verdict.ts';
import type { DayRun, Measure } from '../measure.ts';
import { cabinetByHand, exhaustFan, filter, hole, pathByHand, runByHand } from '../run-by-hand.ts';
import { boxesOf } from './boxes.ts';
import { partsLoss } from './parts.ts';
import { constantOf, heardBy, weighted } from './places.ts';
import { sound } from './sound.ts';
import { turnsOf } from './sources.ts';

const HOUR = 3600;

function measuresOf(run: DayRun, quantity: string): Measure[] {
  return sound.measure!(run).filter((measure) => measure.quantity === quantity);
}

function measureOf(run: DayRun, quantity: string): Measure {
  const found = measuresOf(run, quantity);
  expect(found.map(({ part }) => part)).toHaveLength(1);
  return found[0]!;
}

/** Without fans: the machine alone, in a closed box. */
const closed: Cabinet = { ...cabinetByHand, paths: {} };
const machineOf = (printingDbA: number, idleDbA = -20): Cabinet['sound']['machines'] => ({
  left: { ...cabinetByHand.sound.machines['left']!, printingDbA, idleDbA },
});
const withSound = (cabinet: Cabinet, told: Partial<Cabinet['sound']>): Cabinet => ({
  ...cabinet,
  sound: { ...cabinet.sound, ...told },
});
const loudest = (cabinet: Cabinet): number => measureOf(runByHand({ cabinet }), 'loudest').value!;

describe('a machine in a closed box', () => {
  it('exact: 10 dB more of the machine is 10 dB more at the desk', () => {
    const at = (level: number): number => loudest(withSound(closed, { machines: machineOf(level) }));
    expect(at(60) - at(50)).toBeCloseTo(10, 9);
  });

  it('exact: power is kept: what the box does not swallow is let out', () => {
    const { inside, ways, absorbed } = boxesOf(closed);
    for (const [band, octaves] of inside.entries()) {
      const out = ways.reduce((sum, { letThrough }) => sum + letThrough[band]!, 0);
      expect(octaves[0]![0]! * (out + absorbed[0]![band]!)).toBeCloseTo(1, 9);
    }
  });

  it('cross: level at the desk is power, less what the box takes off, and the room', () => {
    const run = runByHand({ cabinet: closed });
    const taken = measureOf(run, 'cabinet-loss').value!;
    const [x, y, z] = closed.people['desk']!.at;
    const middle = Math.hypot(x - 0.4, y - 0, z - 0.425);
    const rough = 48 + 8 - taken + roomTransfer(middle, 2, constantOf(closed));
    expect(Math.abs(measureOf(run, 'loudest').value! - rough)).toBeLessThan(1);
  });

  it('property: a box never makes it louder, and takes off less than its boards promise', () => {
    const taken = measureOf(runByHand({ cabinet: closed }), 'cabinet-loss').value!;
    expect(taken).toBeGreaterThan(0);
    expect(taken).toBeLessThan(30);
  });

  it('property: a sealed door also quietens, and a wider gap never does', () => {
    const door = closed.doors['front']!;
    const at = (sealGap: number): number => loudest({ ...closed, doors: { front: { ...door, sealGap } } });
    expect(at(0.0001)).toBeLessThan(at(0.003) - 0.5);
    fc.assert(
      fc.property(fc.double({ min: 0.0005, max: 0.006, noNaN: true }), (gap) => {
        expect(at(1.5 * gap)).toBeGreaterThanOrEqual(at(gap) - 1e-9);
      }),
      { numRuns: 30 },
    );
  });

  it('property: a lining, a thicker door and a softer room are each quieter; a hole and a nearer ear louder', () => {
    const before = loudest(closed);
    const wool: Layer = {
      material: 'wool',
      thickness: 0.05,
      conductivity: 0.036,
      density: 30,
      heatCapacity: 840,
      lining: true,
    };
    const boards = {
      ...closed.sound.boards,
      wool: {
        coincidence: 23,
        damping: 0.03,
        transmission: [],
        absorption: [{ thickness: 0.05, octaves: [0.1, 0.2, 0.6, 0.9, 0.9, 0.9, 0.9, 0.9] }],
      },
    };
    const { back } = closed.faces;
    const lined = {
      ...closed,
      faces: { ...closed.faces, back: { ...back, build: { ...back.build, layers: [wool, ...back.build.layers] } } },
    };
    expect(loudest(withSound(lined, { boards }))).toBeLessThan(before - 1);
    const front = closed.doors['front']!;
    const [leaf] = front.build.layers;
    const thick = { ...front, build: { ...front.build, layers: [{ ...leaf!, thickness: 0.036 }] } };
    expect(loudest({ ...closed, doors: { front: thick } })).toBeLessThan(before);
    const soft = withSound(closed, { room: { ...closed.sound.room, reverberation: 0.3 } });
    expect(loudest(soft)).toBeLessThan(before);
    expect(loudest({ ...closed, paths: { vent: pathByHand('room', 'lower', 0.1, [hole(0.12)]) } })).toBeGreaterThan(
      before,
    );
    const near = { ...closed.people['desk']!, at: [0.4, -0.4, 0.5] as const };
    expect(loudest({ ...closed, people: { desk: near } })).toBeGreaterThan(before);
  });

  it('limit: boards that let nothing through leave only the gaps', () => {
    const silent = withSound(closed, { doubt: { ...closed.sound.doubt, panelsDb: 200, lowBandsDb: 200 } });
    const { ways } = boxesOf(silent);
    const boards = ways.filter(({ kind }) => kind === 'board').flatMap(({ letThrough }) => letThrough);
    expect(Math.max(...boards)).toBeLessThan(1e-15);
    const shut = { ...silent, doors: { front: { ...silent.doors['front']!, sealGap: 0 } } };
    expect(loudest(shut)).toBe(0);
  });
});

describe('fans', () => {
  const only = (parts: Parameters<typeof pathByHand>[3], to = 'room'): Cabinet =>
    withSound(
      { ...cabinetByHand, paths: { exhaust: pathByHand('lower', to, 0.75, parts) } },
      { machines: machineOf(-100, -200) },
    );

  it('exact: half speed is 15.1 dB quieter, two equal fans 3.0 dB louder', () => {
    const cabinet = only([filter, exhaustFan()]);
    const at = (share: number): number =>
      measureOf(runByHand({ cabinet, fanSpeeds: { 'exhaust.fan': share } }), 'loudest').value!;
    expect(at(1) - at(0.5)).toBeCloseTo(-50 * Math.log10(0.5), 9);
    const { exhaust } = cabinet.paths;
    const twice = { ...cabinet, paths: { exhaust: exhaust!, second: exhaust! } };
    // The second fan's hole lets a little more of both out: not quite twice.
    expect(loudest(twice) - at(1)).toBeGreaterThan(10 * Math.log10(2) - 0.01);
    expect(loudest(twice) - at(1)).toBeLessThan(10 * Math.log10(2) + 1);
  });

  it('exact: a fan in the wall gives half its power straight out, whatever the box does', () => {
    const cabinet = only([exhaustFan()]);
    const [heard] = heardBy(cabinet, 'desk').filter(({ source }) => source.kind === 'fan');
    const own = heard!.comings.filter(({ kind }) => kind === 'fan’s own mouth');
    const straight = own.reduce((sum, { heard: octaves }) => sum + weighted(octaves), 0);
    const [x, y, z] = cabinet.people['desk']!.at;
    const gain = roomTransfer(Math.hypot(x - 0.4, y - 0.6, z - 0.75), 2, constantOf(cabinet));
    const built = 30 + 11 + cabinet.sound.doubt.builtInDb;
    expect(10 * Math.log10(straight)).toBeCloseTo(built - 3.01 + gain, 1);
    expect(heard!.power).toBeGreaterThan(straight);
  });

  it('property: one that blows outdoors, or turns the bay’s air round, is quieter than one in the wall to the room', () => {
    const wall = loudest(only([exhaustFan()]));
    expect(loudest(only([exhaustFan()], 'outdoors'))).toBeLessThan(wall - 1);
    const round = withSound(
      { ...cabinetByHand, paths: { round: pathByHand('lower', 'lower', 0.5, [filter, exhaustFan()]) } },
      { machines: machineOf(-100, -200) },
    );
    expect(loudest(round)).toBeLessThan(wall - 3);
  });

  it('property: a lined duct behind it quietens it', () => {
    const muffler = {
      part: 'loss',
      what: 'muffler: lined duct',
      loss: 0.5,
      area: 0.0066,
      muffler: { how: 'lined duct', length: 0.6, absorption: [0.1, 0.1, 0.2, 0.45, 0.7, 0.8, 0.8, 0.8] },
    } as const;
    expect(loudest(only([exhaustFan(), muffler]))).toBeLessThan(loudest(only([exhaustFan()])) - 3);
    expect(Math.min(...partsLoss([muffler], 0.0066).slice(2, 6))).toBeGreaterThan(3);
  });

  it('limit: turns of a usual 120 mm fan of 85 m³/h are about 1200 a minute', () => {
    const fan = exhaustFan() as Extract<ReturnType<typeof exhaustFan>, { part: 'fan' }>;
    const curve = [
      [0, 14],
      [85 / 3600, 0],
    ] as const;
    expect(Math.abs(turnsOf({ ...fan, diameter: 0.12, curve }) / 1200 - 1)).toBeLessThan(0.05);
  });
});

describe('limits', () => {
  /** A day at one level from the machine alone: found by what it is at 48 dB(A). */
  const cabinetAt = (wanted: number, hours: readonly (readonly [number, number])[]): Cabinet => {
    const shape = withSound(closed, { machines: machineOf(48, 48) });
    const now = measureOf(runByHand({ cabinet: shape }), 'loudest').value!;
    const people = { desk: { ...closed.people['desk']!, hours } };
    return withSound({ ...closed, people }, { machines: machineOf(48 + wanted - now, 48 + wanted - now) });
  };

  it.each([
    ['noise', 35, [[9 * HOUR, 17 * HOUR]]],
    ['noise-night', 30, [[22 * HOUR, 30 * HOUR]]],
  ] as const)('exact: %s holds a hair below %d dB(A) and fails a hair above', (quantity, value, hours) => {
    const verdict = (level: number): string => {
      const measure = measureOf(runByHand({ cabinet: cabinetAt(level, hours) }), quantity);
      return verdictOf(measure.value, undefined, measure.limit);
    };
    expect(verdict(value - 1e-6)).toBe('holds');
    expect(verdict(value + 1e-6)).toBe('fails');
  });

  it('exact: only the hours in which somebody is there count, and the mean is one of powers', () => {
    // The job runs from 9:00 to 15:00: half of the hours from 12:00 to 18:00.
    const people = { desk: { ...closed.people['desk']!, hours: [[12 * HOUR, 18 * HOUR]] as const } };
    const cabinet = withSound({ ...closed, people }, { machines: machineOf(60, -40) });
    const run = runByHand({ cabinet });
    expect(measureOf(run, 'loudest').value! - measureOf(run, 'noise').value!).toBeCloseTo(10 * Math.log10(2), 3);
    expect(measuresOf(run, 'noise-night')).toEqual([]);
  });

  it('exact: what a person wants holds at any moment of its hours, whether they are there or not', () => {
    const people = { desk: [{ hours: [14 * HOUR, 20 * HOUR], limitDbA: 20 }] } as const;
    const cabinet = withSound(closed, { machines: machineOf(60, -40), people });
    const wish = measureOf(runByHand({ cabinet }), 'quiet');
    expect(wish).toMatchObject({ part: 'desk.1', limit: { value: 20, standing: 'own' } });
    expect(wish.value).toBeCloseTo(loudest(cabinet), 9);
    const later = { desk: [{ hours: [16 * HOUR, 20 * HOUR], limitDbA: 20 }] } as const;
    expect(measureOf(runByHand({ cabinet: withSound(cabinet, { people: later }) }), 'quiet').value).toBe(0);
  });

  it('exact: a limit of one’s own takes the place of the guideline', () => {
    const measure = measureOf(runByHand({ cabinet: { ...closed, limits: { noise: 40 } } }), 'noise');
    expect(measure.limit).toMatchObject({ value: 40, standing: 'own' });
    expect(measure.limit!.source).toContain('in place of WHO');
  });
});

describe('fans at 1 m, where a file limits them', () => {
  const wished = { ...cabinetByHand, limits: { 'fan-noise': 25, 'fan-noise-night': 25 } };

  it('exact: two equal fans are 3.0 dB louder than one, half speed 15.1 dB quieter, and only if asked', () => {
    expect(measuresOf(runByHand(), 'fan-noise')).toEqual([]);
    expect(measureOf(runByHand({ cabinet: wished }), 'fan-noise').value).toBeCloseTo(30, 9);
    const half = runByHand({ cabinet: wished, fanSpeeds: { 'exhaust.fan': 0.5 } });
    expect(measureOf(half, 'fan-noise').value).toBeCloseTo(30 + 50 * Math.log10(0.5), 9);
    const paths = { ...wished.paths, second: pathByHand('lower', 'room', 0.75, [filter, exhaustFan()]) };
    expect(measureOf(runByHand({ cabinet: { ...wished, paths } }), 'fan-noise').value).toBeCloseTo(33.01, 2);
    const inRow = {
      ...wished,
      paths: { ...wished.paths, exhaust: pathByHand('lower', 'room', 0.75, [exhaustFan(), exhaustFan()]) },
    };
    const { steps } = measureOf(runByHand({ cabinet: inRow }), 'fan-noise');
    expect(steps.flatMap(({ inputs = [] }) => inputs)).toEqual([
      'paths.exhaust.parts.0.noiseDbA',
      'paths.exhaust.parts.1.noiseDbA',
    ]);
  });

  it('exact: the night is from 22:00 to 6:00', () => {
    const day = (t: number): number => (t >= 9 * HOUR && t < 15 * HOUR ? 1 : 0.5);
    const run = runByHand({ cabinet: wished, fanSpeeds: { 'exhaust.fan': day } });
    expect(measureOf(run, 'fan-noise').value).toBeCloseTo(30, 9);
    expect(measureOf(run, 'fan-noise-night').value).toBeCloseTo(30 + 50 * Math.log10(0.5), 9);
    const silent = runByHand({
      cabinet: wished,
      fanSpeeds: { 'exhaust.fan': (t) => (t > 10 * HOUR && t < 12 * HOUR ? 1 : 0) },
    });
    expect(measureOf(silent, 'fan-noise-night')).toMatchObject({ value: 0, steps: [{ text: 'no fan runs then' }] });
  });
});

describe('reasons and remedies', () => {
  const run = runByHand({ cabinet: { ...cabinetByHand, limits: { noise: 20 } } });

  it('property: sources and ways are told loudest first, and add up to the whole', () => {
    const { steps } = measureOf(run, 'loudest');
    const heard = steps.filter(({ text }) => text.endsWith('heard there')).map(({ value }) => value!);
    expect(heard.length).toBeGreaterThan(1);
    expect([...heard].sort((a, b) => b - a)).toEqual(heard);
    const together = steps.find(({ text }) => text === 'together')!.value!;
    expect(Math.abs(10 * Math.log10(heard.reduce((sum, one) => sum + 10 ** (one / 10), 0)) - together)).toBeLessThan(
      0.05,
    );
    expect(steps.some(({ text }) => text.startsWith('9:00 to 15:00: '))).toBe(true);
  });

  it('property: no more than four remedies, each an edit, the cheap ones with a price', () => {
    const { remedies } = measureOf(run, 'noise');
    expect(remedies.length).toBeGreaterThan(1);
    expect(remedies.length).toBeLessThanOrEqual(4);
    expect(new Set(remedies.map(({ says }) => says)).size).toBe(remedies.length);
    expect(remedies.some(({ says }) => says.includes('exhaust'))).toBe(true);
  });

  it('exact: a machine on the bare board is told, one on foam too', () => {
    expect(sound.standing!(cabinetByHand)).toMatchObject([{ quantity: 'soft-layer', part: 'left', value: 0 }]);
  });
});

describe('order of magnitude', () => {
  const file = join(import.meta.dirname, '../../../../../examples/winter-shed.yaml');
  const answer = readCabinet('winter-shed.yaml', readFileSync(file, 'utf8'));
  if (!answer.ok) throw new Error('the example must be readable');

  it('property: a printer of 48 dB(A) in a closed box is between 25 and 50 dB(A) to a gardener', () => {
    const found = sound.measure!(runDay(answer.cabinet, 'frost'));
    const value = found.find(({ quantity }) => quantity === 'loudest')!.value!;
    expect(value).toBeGreaterThan(25);
    expect(value).toBeLessThan(50);
    const taken = found.find(({ quantity }) => quantity === 'cabinet-loss')!.value!;
    expect(taken).toBeGreaterThan(6);
    expect(taken).toBeLessThan(25);
  });

  it('cross: octaves of all its sources stay below the source itself', () => {
    for (const { source, octaves } of heardBy(answer.cabinet, 'gardener')) {
      const level = (powers: readonly number[]): number => aLevel(powers.map((one) => 10 * Math.log10(one)));
      expect(level(octaves)).toBeLessThan(level(source.power) + 3);
    }
  });
});
