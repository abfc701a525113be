import { shelfHoleExchange } from '@stillair/physics';
import { describe, expect, it } from 'vitest';
import type { Bay, CabinetPath, PathPart } from '../cabinet/cabinet.ts';
import { heldZone, networkOf } from '../day/network-of.ts';
import { seriesOf, valueAt } from '../day/series.ts';
import { simulateDay } from '../day/simulate-day.ts';
import { holeExchange } from './hole-exchange.ts';

const bay = (x: readonly [number, number], z: readonly [number, number]): Bay => ({ x, z, airZones: 1 });
const low = { bay: bay([0, 1], [0, 0.9]), zone: 'low' };
const high = { bay: bay([0, 1], [0.92, 1.8]), zone: 'high' };
const beside = { bay: bay([1.02, 2], [0, 0.9]), zone: 'beside' };
const pathOf = (...parts: PathPart[]): CabinetPath => ({
  from: 'low',
  to: 'high',
  place: { face: 'bottom', along: 0.5, z: 0.91 },
  blows: 'in',
  parts,
  windCoefficient: 0,
});
const hole = (diameter: number, count = 1): PathPart => ({
  part: 'hole',
  section: { shape: 'round', diameter },
  count,
  dischargeCoefficient: 0.61,
});

/** m³/s each way between two bays held at these temperatures. */
function exchanged(
  path: CabinetPath,
  ends: Parameters<typeof holeExchange>[2],
  celsius: readonly [number, number],
): number {
  const [one, other] = ends.map(({ zone }, index) => heldZone(zone, celsius[index]!));
  const exchange = { ...holeExchange('way', path, ends)! };
  const still = exchange.law.kind === 'horizontal-opening' ? { ...exchange.law, path: undefined } : exchange.law;
  const network = networkOf({ zones: [one!, other!], exchanges: [{ ...exchange, law: still as typeof exchange.law }] });
  const record = simulateDay(network);
  return valueAt(seriesOf(record.times, record.exchanges, exchange.name), 0);
}

describe('holeExchange', () => {
  it('cross: a hole in a shelf exchanges what Cooper says, whichever bay is named first', () => {
    const area = (Math.PI / 4) * 0.1 ** 2;
    const [warm, cold] = [303.15, 293.15];
    // Density difference over the mean density.
    const difference = (2 * (warm - cold)) / (warm + cold);
    const expected = shelfHoleExchange(area, difference);
    expect(exchanged(pathOf(hole(0.1)), [low, high], [30, 20]) / expected).toBeCloseTo(1, 2);
    expect(exchanged(pathOf(hole(0.1)), [high, low], [20, 30]) / expected).toBeCloseTo(1, 2);
  });

  it('limit: no exchange while the upper air is warmer', () => {
    expect(exchanged(pathOf(hole(0.1)), [low, high], [20, 30])).toBe(0);
  });

  it('exact: four holes exchange four times as much as one', () => {
    const one = exchanged(pathOf(hole(0.05)), [low, high], [30, 20]);
    expect(exchanged(pathOf(hole(0.05, 4)), [low, high], [30, 20])).toBeCloseTo(4 * one, 12);
  });

  it('cross: a hole between bays side by side exchanges as a doorway without net flow', () => {
    const window: PathPart = {
      part: 'hole',
      section: { shape: 'rectangular', width: 0.3, height: 0.4 },
      count: 1,
      dischargeCoefficient: 0.61,
    };
    const expected = (0.62 / 3) * 0.3 * 0.4 * Math.sqrt((9.80665 * 0.4 * 10) / 298.15);
    expect(exchanged(pathOf(window), [low, beside], [30, 20])).toBeCloseTo(expected, 6);
    expect(exchanged(pathOf(window), [low, beside], [20, 30])).toBeCloseTo(expected, 6);
  });

  it('limit: a fan or filter in the way leaves no exchange', () => {
    expect(
      holeExchange('way', pathOf(hole(0.1), { part: 'flap', opensAt: 3, leakArea: 0 }), [low, high]),
    ).toBeUndefined();
  });
});
