// How much air passes each bay, with fans and without, and which way its gaps leak.

import { formatClock } from '../../units/format.ts';
import { inflowOf, insideZones, pathOf, pathsAround, pressureBetween } from '../air-ways.ts';
import { causes } from '../causes.ts';
import { type Course, courseFrom, integralOf, integralOfProduct, largest, timeAbove } from '../course.ts';
import type { DayRun, Measure } from '../measure.ts';
import { hasFilter, OUTSIDE } from '../plant.ts';
import { printsOf } from '../prints.ts';
import { inwardLeaks } from '../remedies.ts';
import { leakPressureLimit } from './limits.ts';

export function bays(run: DayRun): Measure[] {
  const fansOn = courseFrom(run.record, (row) => {
    const { names, values } = run.record.fanSpeeds;
    for (let at = 0; at < names.length; at += 1) if (values[row * names.length + at]! > 0) return 1;
    return 0;
  });
  return Object.keys(run.cabinet.bays).flatMap((bay) => [
    ...airChange(run, bay, fansOn),
    ...leakPressure(run, bay, fansOn),
  ]);
}

/** Mean inflow of a bay over the times at which `when` is 1, without what comes through open doors, m³/s. */
function meanInflow(
  run: DayRun,
  bay: string,
  when: Course,
): { all: number; fromOutside: number; time: number } | undefined {
  const time = integralOf(when);
  if (!(time > 0)) return undefined;
  const here = new Set(run.assembly.bays[bay]!.zones);
  const enclosed = insideZones(run);
  const inflows = pathsAround(run, here).map((path) => ({
    outside: !enclosed.has(here.has(path.to) ? path.from : path.to),
    mean: integralOfProduct(inflowOf(run, path, here), when) / time,
  }));
  return {
    all: inflows.reduce((sum, inflow) => sum + inflow.mean, 0),
    fromOutside: inflows.reduce((sum, inflow) => sum + (inflow.outside ? inflow.mean : 0), 0),
    time,
  };
}

function airChange(run: DayRun, bay: string, fansOn: Course): Measure[] {
  const volume = run.assembly.bays[bay]!.volumes.reduce((a, b) => a + b, 0);
  const fansOff = courseFrom(run.record, (row) => 1 - fansOn.values[row]!);
  return (
    [
      ['air-change', 'air changes while a fan runs', fansOn],
      ['passive-air-change', 'air changes while all fans rest', fansOff],
    ] as const
  ).flatMap(([quantity, title, when]) => {
    const inflow = meanInflow(run, bay, when);
    if (inflow === undefined) return [];
    return [
      {
        trade: 'airflow',
        quantity,
        part: bay,
        title,
        value: (3600 * inflow.all) / volume,
        unit: 'air-change',
        steps: [
          { text: 'air volume of the bay', value: volume, unit: 'volume', inputs: [`bays.${bay}.x`, `bays.${bay}.z`] },
          { text: 'air entering, mean, doors shut', value: inflow.all, unit: 'flow', formula: 'n = 3600 V̇ / V' },
          { text: 'of which straight from outside the cabinet', value: inflow.fromOutside, unit: 'flow' },
          { text: 'time over which this is the mean', value: inflow.time, unit: 'duration' },
        ],
        remedies: [],
        weight: 0.1,
        better: 'higher',
        compared: quantity === 'air-change',
      },
    ];
  });
}

/** Pressure of the bay against the room at its highest gap while something is printed in it and a fan runs. */
function leakPressure(run: DayRun, bay: string, fansOn: Course): Measure[] {
  const { cabinet, assembly } = run;
  const highest = assembly.leaks.filter((leak) => leak.bay === bay).sort((a, b) => b.z - a.z)[0];
  const prints = printsOf(run).filter(({ machine }) => machine.bay === bay);
  if (highest === undefined || prints.length === 0) return [];
  const { from, to } = pathOf(run, highest.name);
  const inner = assembly.bays[bay]!.zones.includes(from) ? from : to;
  const pressure = pressureBetween(run, inner, assembly.room, highest.z);
  const { times } = run.record;
  // The left side of a job's start and the right side of its end belong to it as well: the air is the same there.
  const asked = courseFrom(run.record, (row) =>
    fansOn.values[row]! > 0 && prints.some(({ start, end }) => start <= times[row]! && times[row]! <= end) ? 1 : 0,
  ).values;
  if (!asked.includes(1)) return [];
  const worst = largest(
    courseFrom(run.record, (row) => (asked[row] === 1 ? pressure.values[row]! : Number.NEGATIVE_INFINITY)),
  );
  const outward = timeAbove(
    courseFrom(run.record, (row) => (asked[row] === 1 ? pressure.values[row]! : -1)),
    0,
  );
  const contained = Object.values(cabinet.paths).some(
    (path) => OUTSIDE.includes(path.to) && (hasFilter(path) || path.to === 'outdoors'),
  );
  const blownIn = Object.entries(cabinet.paths).filter(
    ([, path]) =>
      OUTSIDE.includes(path.from) && !OUTSIDE.includes(path.to) && path.parts.some(({ part }) => part === 'fan'),
  );
  return [
    {
      trade: 'airflow',
      quantity: 'leak-pressure',
      part: bay,
      title: 'pressure against the room at the bay’s highest gap while printing, fans running',
      value: worst.value,
      unit: 'pressure',
      ...(contained ? { limit: leakPressureLimit(cabinet) } : {}),
      at: worst.time,
      steps: [
        {
          text: `highest gap: ${highest.part}; above 0 air leaks out there, past any filter`,
          value: highest.z,
          unit: 'length',
        },
        {
          text: `largest, at ${formatClock(worst.time)}`,
          value: worst.value,
          unit: 'pressure',
          formula: 'p(z) = p_ref − ρ g (z − z_ref), bay less room',
          inputs: ['factors.leakage', 'factors.fanFlow'],
        },
        { text: 'time during which it leaks outward', value: outward, unit: 'duration' },
        ...(blownIn.length > 0
          ? [
              {
                text: `${blownIn.map(([id]) => id).join(', ')} blows into the cabinet: that raises its pressure, and leaks bypass the filter`,
              },
            ]
          : []),
      ],
      remedies: inwardLeaks(cabinet, bay),
      cause: causes.leaksOut,
      weight: 0.6,
      better: 'lower',
    },
  ];
}
