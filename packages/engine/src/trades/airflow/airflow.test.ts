import { describe, expect, it } from 'vitest';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { DayRun, Measure } from '../measure.ts';
import type { FanPart } from '../plant.ts';
import { cabinetByHand, exhaustFan, filter, hole, pathByHand, runByHand } from '../run-by-hand.ts';
import { airflow } from './airflow.ts';

const HOUR = 3600;
const RHO = 101325 / (287.055 * 294.15);

function measuresOf(run: DayRun, quantity: string): Measure[] {
  return airflow.measure(run).filter((measure) => measure.quantity === quantity);
}

function measureOf(run: DayRun, quantity: string): Measure {
  const found = measuresOf(run, quantity);
  expect(found.map(({ part }) => part)).toHaveLength(1);
  return found[0]!;
}

/** Pressure of the bay at its floor when it differs by this from the room, whose own pressure is given at half its height. */
const level = (difference: number): number => 9.80665 * RHO * 1.25 + difference;

const withPaths = (paths: Cabinet['paths']): Cabinet => ({ ...cabinetByHand, paths });

describe('a fan with its path', () => {
  // 36 m³/h through a filter of 1500 Pa s/m³: 15 Pa; the bay lies 2 Pa below the room.
  const run = runByHand({ flows: { exhaust: 0.01 * RHO, intake: 0.01 * RHO }, pressures: { lower: level(-2) } });

  it('exact: flow, pressure and what takes it', () => {
    const { value, steps } = measureOf(run, 'fan-flow');
    expect(value).toBeCloseTo(0.01, 9);
    const pressure = (words: string): number | undefined => steps.find(({ text }) => text.includes(words))?.value;
    expect(pressure('for filter')).toBeCloseTo(15, 9);
    expect(pressure('between its ends')).toBeCloseTo(2, 9);
  });

  it('exact: filter’s 15 Pa are the larger part of what the fan gives, the way in and out taking the rest beside the bay’s 2 Pa', () => {
    const wayInAndOut = (1.5 * RHO * 0.01 ** 2) / (2 * ((Math.PI / 4) * 0.092 ** 2) ** 2);
    expect(measureOf(run, 'stage-pressure-share').value).toBeCloseTo(15 / (15 + 2 + wayInAndOut), 6);
  });

  it('exact: its share of free delivery follows the speed it runs at', () => {
    expect(measureOf(run, 'fan-share').value).toBeCloseTo(0.4, 9);
    const slow = runByHand({ flows: { exhaust: 0.01 * RHO }, fanSpeeds: { 'exhaust.fan': 0.8 } });
    expect(measureOf(slow, 'fan-share').value).toBeCloseTo(0.5, 9);
  });

  it('exact: of two fans in series the weaker of those that run counts, and one that rests does not', () => {
    const fans = [exhaustFan(), exhaustFan({ kind: 'never' })];
    const cabinet = withPaths({
      ...cabinetByHand.paths,
      exhaust: pathByHand('lower', 'room', 0.75, [filter, ...fans]),
    });
    const { fans: names } = runByHand({ cabinet }).assembly.paths['exhaust']!;
    const share = (second: number): number | undefined =>
      measureOf(
        runByHand({ cabinet, flows: { exhaust: 0.01 * RHO }, fanSpeeds: { [names[0]!]: 1, [names[1]!]: second } }),
        'fan-share',
      ).value;
    expect(share(0)).toBeCloseTo(0.4, 9);
    expect(share(0.8)).toBeCloseTo(0.5, 9);
  });

  it('property: names the filter where the filter takes most, the inlet where the bay’s under-pressure does', () => {
    expect(measureOf(run, 'fan-share').cause).toBe('the fan is too weak for its filter');
    const starved = runByHand({ flows: { exhaust: 0.002 * RHO }, pressures: { lower: level(-30) } });
    expect(measureOf(starved, 'fan-share').cause).toBe('the fan is starved by its inlet');
    const none = runByHand({
      cabinet: withPaths({ exhaust: cabinetByHand.paths['exhaust']! }),
      flows: { exhaust: 0.002 * RHO },
      pressures: { lower: level(-30) },
    });
    expect(measureOf(none, 'fan-share').steps.at(-1)!.text).toContain('there is no inlet, the fan starves');
  });

  it('property: only an axial fan has the limit of stalling; a blower’s share is told', () => {
    const axial = exhaustFan() as FanPart;
    const curves: Record<string, FanPart['curve']> = {
      axial: [
        [0, 40],
        [0.01, 25],
        [0.025, 0],
      ],
      blower: [
        [0, 180],
        [0.0056, 169],
        [0.0097, 119],
        [0.0139, 0],
      ],
    };
    const limitOf = (kind: string): unknown => {
      const fan = { ...axial, curve: curves[kind]! };
      const cabinet = withPaths({ ...cabinetByHand.paths, exhaust: pathByHand('lower', 'room', 0.75, [filter, fan]) });
      return measureOf(runByHand({ cabinet, flows: { exhaust: 0.002 * RHO } }), 'fan-share').limit;
    };
    expect(limitOf('axial')).toMatchObject({ value: 0.3 });
    expect(limitOf('blower')).toBeUndefined();
  });

  it('limit: a fan that never runs moves nothing and is not called starved', () => {
    const idle = runByHand({ fanSpeeds: { 'exhaust.fan': 0 } });
    expect(measureOf(idle, 'fan-flow').value).toBe(0);
    expect(measuresOf(idle, 'fan-share')).toEqual([]);
  });

  it('exact: only the time while it runs counts', () => {
    const on = (t: number): number => (t >= 9 * HOUR && t < 15 * HOUR ? 1 : 0);
    const half = runByHand({ flows: { exhaust: (t) => on(t) * 0.01 * RHO }, fanSpeeds: { 'exhaust.fan': on } });
    expect(measureOf(half, 'fan-flow').value).toBeCloseTo(0.01, 9);
  });

  it('property: tells a fan that may settle at several flows', () => {
    const warned = runByHand({
      warnings: [{ code: 'several-operating-points', what: 'exhaust', message: 'three crossings' }],
    });
    expect(measureOf(warned, 'operating-points').value).toBe(2);
    expect(measuresOf(run, 'operating-points')).toEqual([]);
  });

  it('exact: air that runs backwards counts only while the fan rests', () => {
    const back = runByHand({ flows: { exhaust: -0.001 * RHO }, fanSpeeds: { 'exhaust.fan': 0 } });
    expect(measureOf(back, 'back-flow').value).toBeCloseTo(0.001, 9);
    expect(measuresOf(runByHand({ flows: { exhaust: -0.001 * RHO } }), 'back-flow')).toEqual([]);
  });
});

describe('the air of a bay', () => {
  it('exact: air changes are what enters over the volume: 36 m³/h into 0.408 m³', () => {
    const run = runByHand({ flows: { exhaust: 0.01 * RHO, intake: 0.01 * RHO } });
    expect(measureOf(run, 'air-change').value).toBeCloseTo(36 / (0.8 * 0.6 * 0.85), 6);
    expect(measuresOf(run, 'passive-air-change')).toEqual([]);
  });

  it('exact: passive air changes are told for the hours without any fan', () => {
    const run = runByHand({ flows: { exhaust: 0.001 * RHO, intake: 0.001 * RHO }, fanSpeeds: { 'exhaust.fan': 0 } });
    expect(measureOf(run, 'passive-air-change').value).toBeCloseTo(3.6 / (0.8 * 0.6 * 0.85), 6);
  });

  it('exact: the pressure at the highest gap is the room’s difference plus what the lighter column gains', () => {
    const run = runByHand({ pressures: { lower: level(-2) }, temperatures: { lower: 294.15 * 1.05 } });
    // 5 % warmer air is lighter by 1/21: at 0.85 m above its floor the bay has gained that share of the column.
    expect(measureOf(run, 'leak-pressure').value).toBeCloseTo(-2 + (9.80665 * RHO * 0.85) / 21, 6);
  });

  it('property: a filtered exhaust makes outward leaks a fault; without filter they are only told', () => {
    const up = { pressures: { lower: 20 } };
    expect(measureOf(runByHand(up), 'leak-pressure').limit?.value).toBe(0);
    const bare = withPaths({ ...cabinetByHand.paths, exhaust: pathByHand('lower', 'room', 0.75, [exhaustFan()]) });
    expect(measureOf(runByHand({ ...up, cabinet: bare }), 'leak-pressure').limit).toBeUndefined();
  });

  it('property: says that a fan blowing in raises the pressure', () => {
    const pushed = withPaths({
      ...cabinetByHand.paths,
      push: pathByHand('room', 'lower', 0.1, [hole(0.08), exhaustFan()]),
    });
    const { steps } = measureOf(runByHand({ cabinet: pushed }), 'leak-pressure');
    expect(steps.at(-1)!.text).toBe(
      'push blows into the cabinet: that raises its pressure, and leaks bypass the filter',
    );
  });
});
