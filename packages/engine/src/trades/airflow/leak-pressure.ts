// Which way the gaps of a bay leak while something is printed in it and fans draw.

import type { CabinetPath } from '../../cabinet/cabinet.ts';
import { formatClock } from '../../units/format.ts';
import { pathOf, pressureBetween } from '../air-ways.ts';
import { causes } from '../causes.ts';
import { integralOf } from '../course.ts';
import type { DayRun, Measure, Remedy, Step } from '../measure.ts';
import { doorsOpen, fansDraw } from '../moments.ts';
import { fansIn, hasFilter, OUTSIDE } from '../plant.ts';
import { printsOf } from '../prints.ts';
import { inwardLeaks } from '../remedies.ts';
import { leakPressureLimit } from './limits.ts';

export function leakPressures(run: DayRun): Measure[] {
  return Object.keys(run.cabinet.bays).flatMap((bay) => leakPressure(run, bay));
}

/** Pressure of the bay against the room at its highest gap, doors shut. */
function leakPressure(run: DayRun, bay: string): Measure[] {
  const { cabinet, assembly, record } = run;
  const highest = assembly.leaks.filter((leak) => leak.bay === bay).sort((a, b) => b.z - a.z)[0];
  if (highest === undefined) return [];
  const counts = countedRows(run, bay);
  if (!counts.includes(1)) return [];
  const { from, to } = pathOf(run, highest.name);
  const inner = assembly.bays[bay]!.zones.includes(from) ? from : to;
  const pressure = pressureBetween(run, inner, assembly.room, highest.z).values;
  let worst = -1;
  for (let row = 0; row < counts.length; row += 1)
    if (counts[row] === 1 && (worst < 0 || pressure[row]! > pressure[worst]!)) worst = row;
  const value = pressure[worst]!;
  const at = record.times[worst]!;
  return [
    {
      trade: 'airflow',
      quantity: 'leak-pressure',
      part: bay,
      title: 'pressure above the room’s at the bay’s highest gap, while it prints and a fan draws',
      value,
      unit: 'pressure',
      ...(isContained(cabinet.paths) ? { limit: leakPressureLimit(cabinet) } : {}),
      at,
      get steps(): readonly Step[] {
        const pushing = blowingIn(cabinet.paths);
        return [
          {
            text: `highest gap: ${highest.part}; above 0 air leaks out there, past any filter`,
            value: highest.z,
            unit: 'length',
          },
          {
            text: `largest, at ${formatClock(at)}`,
            value,
            unit: 'pressure',
            formula: 'p(z) = p_ref − ρ g (z − z_ref), bay less room',
            inputs: ['factors.leakage', 'factors.fanFlow'],
          },
          {
            text: 'time during which it leaks outward there',
            value: timeOutward(record.times, counts, pressure),
            unit: 'duration',
          },
          {
            text: 'out of the time asked about: something is printed here, a fan draws, doors are shut',
            value: integralOf({ times: record.times, values: Float64Array.from(counts) }),
            unit: 'duration',
          },
          ...(pushing.length > 0
            ? [
                {
                  text: `${pushing.join(', ')} blows into the cabinet: that raises its pressure, and leaks bypass the filter`,
                },
              ]
            : []),
        ];
      },
      get remedies(): readonly Remedy[] {
        return inwardLeaks(cabinet, bay);
      },
      cause: causes.leaksOut,
      weight: 0.6,
      better: 'lower',
    },
  ];
}

/** 1 where a job runs in the bay, a fan draws on the cabinet and no door is open. */
function countedRows(run: DayRun, bay: string): Uint8Array {
  const { times } = run.record;
  const draws = fansDraw(run).values;
  const open = doorsOpen(run).values;
  const counts = new Uint8Array(times.length);
  for (const { machine, start, end } of printsOf(run)) {
    if (machine.bay !== bay) continue;
    // The left side of a job's start and the right side of its end belong to it as well: the air is the same there.
    for (let row = 0; row < times.length; row += 1)
      if (times[row]! >= start && times[row]! <= end && draws[row]! > 0 && open[row] === 0) counts[row] = 1;
  }
  return counts;
}

/** Of the intervals whose both ends count, the part above 0, on straight lines. */
function timeOutward(times: Float64Array, counts: Uint8Array, pressure: Float64Array): number {
  let sum = 0;
  for (let row = 1; row < times.length; row += 1) {
    if (counts[row] === 0 || counts[row - 1] === 0) continue;
    const [before, after] = [pressure[row - 1]!, pressure[row]!];
    const span = times[row]! - times[row - 1]!;
    if (before > 0 && after > 0) sum += span;
    else if (before > 0 !== after > 0) sum += (span * Math.max(before, after)) / Math.abs(after - before);
  }
  return sum;
}

/** Only where what leaves is filtered or led outdoors is a leak a fault. */
function isContained(paths: DayRun['cabinet']['paths']): boolean {
  return Object.values(paths).some((path) => OUTSIDE.includes(path.to) && (hasFilter(path) || path.to === 'outdoors'));
}

function blowingIn(paths: Readonly<Record<string, CabinetPath>>): string[] {
  return Object.keys(paths).filter((id) => {
    const path = paths[id]!;
    return OUTSIDE.includes(path.from) && !OUTSIDE.includes(path.to) && fansIn(path).length > 0;
  });
}
