// The coldest inner surface against the dew point, and the hottest outer one against a hand.

import { dewPoint, saturationPressure, vapourPressure } from '@stillair/physics';
import type { SurfacePlace } from '../../network/assembly.ts';
import { formatClock } from '../../units/format.ts';
import { causes } from '../causes.ts';
import { columnOf, largestInColumn } from '../course.ts';
import type { DayRun, Measure, Remedy, Step } from '../measure.ts';
import { dryBay, insulateFace } from '../remedies.ts';
import { dewLimit, touchLimit } from './limits.ts';

const WATER = 'water';

export function surfaces(run: DayRun): Measure[] {
  return [...Object.keys(run.cabinet.bays).flatMap((bay) => condensation(run, bay)), ...touch(run)];
}

function condensation(run: DayRun, bay: string): Measure[] {
  const water = run.record.concentrations[WATER];
  const inner = run.assembly.surfaces.filter((surface) => surface.bay === bay && surface.zone !== 'room');
  if (water === undefined || inner.length === 0) return [];
  const zones = [...new Set(inner.map(({ zone }) => zone))];
  const worst = zones
    .map((zone) =>
      nearestToDew(
        run,
        zone,
        inner.filter((surface) => surface.zone === zone),
      ),
    )
    .reduce((a, b) => (b.margin < a.margin ? b : a));
  const { margin: value, time } = worst;
  return [
    {
      trade: 'heat',
      quantity: 'dew-margin',
      part: bay,
      title: 'coldest inner surface above the dew point',
      value,
      unit: 'temperature-difference',
      limit: dewLimit(run.cabinet),
      at: time,
      get steps(): readonly Step[] {
        return [
          {
            text: `coldest against its air: inside of ${worst.surface.part}, at ${formatClock(time)}`,
            value: worst.wall,
            unit: 'temperature',
            inputs: [`${worst.surface.part}.build`],
          },
          {
            text: 'dew point of the air before it',
            value: worst.wall - value,
            unit: 'temperature',
            formula: 'dew point of p_w = p W/(0.622 + W)',
            source: 'ASHRAE Handbook of Fundamentals (2017), chapter 1',
            inputs: ['room.humidity'],
          },
        ];
      },
      get remedies(): readonly Remedy[] {
        return dryBay(run.cabinet, bay);
      },
      cause: causes.dampAir,
      weight: 0.5,
      better: 'higher',
    },
  ];
}

interface DewMargin {
  readonly surface: SurfacePlace;
  readonly time: number;
  /** K */
  readonly wall: number;
  readonly margin: number;
}

/**
 * The moment at which the air at one of a zone's surfaces is nearest to saturation, and its dew point then. The zone's water is
 * in kg per m³ of dry air at the reference density.
 */
function nearestToDew(run: DayRun, zone: string, surfaces: readonly SurfacePlace[]): DewMargin {
  const { record } = run;
  const { referenceDensity, atmosphere } = record.network.constants;
  const water = columnOf(record.concentrations[WATER]!, zone);
  const walls = surfaces.map(({ node }) => columnOf(record.temperatures, node));
  const pressureAt = (row: number): number =>
    vapourPressure(Math.max(water[row]!, 1e-6) / referenceDensity, atmosphere);
  const coldest = lowestOf(walls);
  let [worst, most] = [0, Number.NEGATIVE_INFINITY];
  for (let row = 0; row < water.length; row += 1) {
    const saturation = pressureAt(row) / saturationPressure(coldest[row]!);
    if (saturation > most) {
      worst = row;
      most = saturation;
    }
  }
  const wall = coldest[worst]!;
  return {
    surface: surfaces[walls.findIndex((temperatures) => temperatures[worst] === wall)]!,
    time: record.times[worst]!,
    wall,
    margin: wall - dewPoint(pressureAt(worst)),
  };
}

/** The lowest of several columns, row by row. */
function lowestOf([first, ...others]: readonly Float64Array[]): Float64Array {
  const lowest = first!.slice();
  for (const column of others)
    for (let row = 0; row < lowest.length; row += 1) if (column[row]! < lowest[row]!) lowest[row] = column[row]!;
  return lowest;
}

/** The hottest surface that a hand in the room can touch. */
function touch(run: DayRun): Measure[] {
  const { record, assembly } = run;
  const sheets = new Map(assembly.surfaces.map(({ node, part }) => [sheetOf(node), part]));
  const outer = record.network.convections
    .filter(({ air, surface }) => air === assembly.room && sheets.has(sheetOf(surface)))
    .map(({ surface }) => ({
      part: sheets.get(sheetOf(surface))!,
      peak: largestInColumn(record, record.temperatures, surface),
    }));
  if (outer.length === 0) return [];
  const worst = outer.reduce((a, b) => (b.peak.value > a.peak.value ? b : a));
  return [
    {
      trade: 'heat',
      quantity: 'touch-temperature',
      part: worst.part,
      title: 'hottest outer surface that can be touched',
      value: worst.peak.value,
      unit: 'temperature',
      limit: touchLimit(run.cabinet),
      at: worst.peak.time,
      get steps(): readonly Step[] {
        return [
          {
            text: `outside of ${worst.part}, mean of its area, at ${formatClock(worst.peak.time)}; a spot above a bed may be hotter`,
            value: worst.peak.value,
            unit: 'temperature',
            inputs: [`${worst.part}.build`],
          },
        ];
      },
      get remedies(): readonly Remedy[] {
        return insulateFace(run.cabinet, worst.part);
      },
      cause: causes.hotSurface,
      weight: 0.8,
      better: 'lower',
    },
  ];
}

/** Sheets with several nodes are called NAME.1 … NAME.n, thin ones NAME. */
function sheetOf(node: string): string {
  return node.replace(/\.\d+$/, '');
}
