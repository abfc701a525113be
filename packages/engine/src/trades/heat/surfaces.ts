// The coldest inner surface against the dew point, and the hottest outer one against a hand.

import { dewPoint, vapourPressure } from '@stillair/physics';
import { formatClock } from '../../units/format.ts';
import { temperatureOf } from '../air-ways.ts';
import { causes } from '../causes.ts';
import { type Course, courseFrom, courseOf, largest, smallest, valueAt } from '../course.ts';
import type { DayRun, Measure } from '../measure.ts';
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
  const dew = new Map<string, Course>();
  const margins = inner.map((surface) => {
    const dewCourse = dew.get(surface.zone) ?? dewPointOf(run, surface.zone);
    dew.set(surface.zone, dewCourse);
    const wall = temperatureOf(run, surface.node);
    return {
      surface,
      dewCourse,
      wall,
      margin: smallest(courseFrom(run.record, (row) => wall.values[row]! - dewCourse.values[row]!)),
    };
  });
  const worst = margins.reduce((a, b) => (b.margin.value < a.margin.value ? b : a));
  const { value, time } = worst.margin;
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
      steps: [
        {
          text: `coldest against its air: inside of ${worst.surface.part}, at ${formatClock(time)}`,
          value: valueAt(worst.wall, time),
          unit: 'temperature',
          inputs: [`${worst.surface.part}.build`],
        },
        {
          text: 'dew point of the air before it',
          value: valueAt(worst.dewCourse, time),
          unit: 'temperature',
          formula: 'dew point of p_w = p W/(0.622 + W)',
          source: 'ASHRAE Handbook of Fundamentals (2017), chapter 1',
          inputs: ['room.humidity'],
        },
      ],
      remedies: dryBay(run.cabinet, bay),
      cause: causes.dampAir,
      weight: 0.5,
      better: 'higher',
    },
  ];
}

/** Dew point of a zone's air from its water, kg per m³ of dry air at the reference density. */
function dewPointOf(run: DayRun, zone: string): Course {
  const { record } = run;
  const { referenceDensity, atmosphere } = record.network.constants;
  const water = courseOf(record, record.concentrations[WATER]!, zone);
  return courseFrom(record, (row) => {
    const ratio = Math.max(water.values[row]!, 1e-6) / referenceDensity;
    return dewPoint(vapourPressure(ratio, atmosphere));
  });
}

/** The hottest surface that a hand in the room can touch. */
function touch(run: DayRun): Measure[] {
  const { record, assembly } = run;
  const sheets = new Map(assembly.surfaces.map(({ node, part }) => [sheetOf(node), part]));
  const outer = record.network.convections
    .filter(({ air, surface }) => air === assembly.room && sheets.has(sheetOf(surface)))
    .map(({ surface }) => ({ part: sheets.get(sheetOf(surface))!, peak: largest(temperatureOf(run, surface)) }));
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
      steps: [
        {
          text: `outside of ${worst.part}, mean of its area, at ${formatClock(worst.peak.time)}; a spot above a bed may be hotter`,
          value: worst.peak.value,
          unit: 'temperature',
          inputs: [`${worst.part}.build`],
        },
      ],
      remedies: insulateFace(run.cabinet, worst.part),
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
