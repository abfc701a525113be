// Each bay's air over the day: how hot, when, and how long above what stands in it can bear.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import { formatClock } from '../../units/format.ts';
import { bayCourse, temperatureOf } from '../air-ways.ts';
import { causes } from '../causes.ts';
import { type Course, largest, meanOf, smallest, timeAbove } from '../course.ts';
import type { DayRun, Measure, Remedy, Step } from '../measure.ts';
import { ownLimit } from '../person-limit.ts';
import { machinesIn } from '../plant.ts';
import { coolerBay } from '../remedies.ts';
import { balanceSteps } from './balance.ts';

export function bayAir(run: DayRun): Measure[] {
  return Object.keys(run.cabinet.bays).flatMap((bay) => {
    const zones = run.assembly.bays[bay]!.zones.map((zone) => temperatureOf(run, zone));
    const top = zones.at(-1)!;
    const warmest = warmestOf(zones);
    const peak = largest(warmest);
    const own = ownLimit(run.cabinet, 'bay-air', 'at-most');
    const lowest = lowestLimit(run.cabinet, bay, run.day);
    const shared = { trade: 'heat', part: bay, better: 'lower', compared: true } as const;
    const peakMeasure: Measure = {
      ...shared,
      quantity: 'peak-air',
      title: 'hottest air in the bay',
      value: peak.value,
      unit: 'temperature',
      ...(own === undefined ? {} : { limit: own }),
      at: peak.time,
      get steps(): readonly Step[] {
        return [
          { text: `hottest at ${formatClock(peak.time)}`, value: peak.value, unit: 'temperature' },
          ...(zones.length > 1
            ? [
                {
                  text: 'mean of the bay over the day',
                  value: meanOf(bayCourse(run, bay, (zone) => temperatureOf(run, zone))),
                  unit: 'temperature',
                } satisfies Step,
              ]
            : []),
          { text: 'coldest at the top of the bay over the day', value: smallest(top).value, unit: 'temperature' },
          ...balanceSteps(run, bay, peak.time),
        ];
      },
      get remedies(): readonly Remedy[] {
        return coolerBay(run.cabinet, bay);
      },
      cause: causes.notEnoughAir,
      weight: 0.4,
    };
    if (lowest === undefined) return [peakMeasure];
    return [
      peakMeasure,
      {
        ...shared,
        quantity: 'time-above-limit',
        title: 'time above what the bay’s machines and materials bear',
        value: timeAbove(warmest, lowest.value),
        unit: 'duration',
        get steps(): readonly Step[] {
          return [
            {
              text: `lowest limit in this bay: ${lowest.what}`,
              value: lowest.value,
              unit: 'temperature',
              inputs: [lowest.input],
            },
            { text: `hottest air, at ${formatClock(peak.time)}`, value: peak.value, unit: 'temperature' },
          ];
        },
        remedies: [],
        weight: 0.4,
      },
    ];
  });
}

function warmestOf(zones: readonly Course[]): Course {
  const [first, ...others] = zones;
  if (others.length === 0) return { times: first!.times, values: first!.values };
  const values = first!.values.slice();
  for (const other of others)
    for (let row = 0; row < values.length; row += 1)
      if (other.values[row]! > values[row]!) values[row] = other.values[row]!;
  return { times: first!.times, values };
}

/** The lowest upper limit of anything that stands or is printed in a bay on a day. */
function lowestLimit(
  cabinet: Cabinet,
  bay: string,
  day: string,
): { value: number; what: string; input: string } | undefined {
  const machines = machinesIn(cabinet, bay);
  const candidates = machines.flatMap((id) => {
    const { electronicsInside, electronicsLimit, frameLimit, chamber } = cabinet.machines[id]!;
    const frame = { value: frameLimit, what: `frame of ${id}`, input: `machines.${id}.frameLimit` };
    const electronics = {
      value: electronicsLimit,
      what: `electronics of ${id}`,
      input: `machines.${id}.electronicsLimit`,
    };
    const printed = Object.values(cabinet.days[day]!.jobs)
      .filter(({ machine }) => machine === id && chamber === undefined)
      .map(({ material }) => ({
        value: cabinet.materials[material]!.bandWell[1],
        what: `${material} printed on ${id}`,
        input: `materials.${material}.bandWell.1`,
      }));
    return [...(chamber === undefined ? [frame] : []), ...(electronicsInside ? [electronics] : []), ...printed];
  });
  return candidates.sort((a, b) => a.value - b.value)[0];
}
