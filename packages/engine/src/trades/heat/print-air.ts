// The air around each part while it is printed, against its material's two bands, and how long it takes to get there.

import { formatClock } from '../../units/format.ts';
import { temperatureOf } from '../air-ways.ts';
import { causes } from '../causes.ts';
import { type Course, firstReaching, largest, type Moment, smallest, timeAbove, within } from '../course.ts';
import type { DayRun, Measure, Remedy, Step } from '../measure.ts';
import { type Print, printsOf } from '../prints.ts';
import { coolerBay, warmerBay } from '../remedies.ts';
import { balanceSteps } from './balance.ts';
import { bandLimit } from './limits.ts';

/** First layers lie on the hot bed: the air counts against the band's lower end from here on, s, or from half of a short job. */
const SETTLING = 1800;
/** After a door was shut the air is given this long to come back before it counts again, s; `door-recovery` tells how long it takes. */
const COMING_BACK = 900;
/** From this span on a part is large: corners lift and layers part if the air is cooler than best, m. Trade practice, from memory. */
const LARGE_PART = 0.1;

export function printAir(run: DayRun): Measure[] {
  return printsOf(run).flatMap((print) => {
    const air = within(temperatureOf(run, run.assembly.machines[print.machineId]!.printAir), print.start, print.end);
    const settled = within(air, print.start + Math.min(SETTLING, (print.end - print.start) / 2), print.end);
    const hottest = largest(air);
    const coldest = coldestUndisturbed(run, print, settled);
    return [
      bandMeasure(run, print, 'bandWell', 'high', hottest),
      bandMeasure(run, print, 'bandWell', 'low', coldest),
      bandMeasure(run, print, 'bandBest', 'high', hottest),
      bandMeasure(run, print, 'bandBest', 'low', coldest),
      warmUp(print, air),
    ];
  });
}

/** Coldest without the minutes in which a door of the bay is open and those in which the air comes back. */
function coldestUndisturbed({ cabinet, day }: DayRun, { machine }: Print, course: Course): Moment {
  const openings = cabinet.days[day]!.doorOpenings.filter(({ door }) =>
    cabinet.doors[door]?.bays.includes(machine.bay),
  );
  if (openings.length === 0) return smallest(course);
  const { times, values } = course;
  let best = -1;
  for (let row = 0; row < times.length; row += 1) {
    if (best >= 0 && values[row]! >= values[best]!) continue;
    const time = times[row]!;
    if (openings.every(({ start, duration }) => time <= start || time >= start + duration + COMING_BACK)) best = row;
  }
  return best < 0 ? smallest(course) : { value: values[best]!, time: times[best]! };
}

function bandMeasure(
  run: DayRun,
  print: Print,
  band: 'bandWell' | 'bandBest',
  end: 'low' | 'high',
  { value, time }: Moment,
): Measure {
  const limit = bandLimit(print.material, print.job.material, band, end);
  const { bay } = print.machine;
  const well = band === 'bandWell';
  const large = print.job.partSize >= LARGE_PART;
  return {
    trade: 'heat',
    quantity: limit.id,
    part: print.part,
    title: `${end === 'high' ? 'hottest' : 'coldest'} air at the print, ${well ? 'to print well when the air is still' : 'best for large parts'}`,
    value,
    unit: 'temperature',
    // Nobody who prints a small part is held to what large ones want.
    ...(well || large ? { limit } : {}),
    at: time,
    get steps(): readonly Step[] {
      return [
        bandStep(print, band),
        ...(well || large
          ? []
          : [
              {
                text: 'the part is not large: this band is told and not held against it; the part measures',
                value: print.job.partSize,
                unit: 'length',
                inputs: [`days.${run.day}.jobs.${print.id}.partSize`],
              },
            ]),
        {
          text:
            end === 'high'
              ? `hottest air around the print between ${formatClock(print.start)} and ${formatClock(print.end)}, at ${formatClock(time)}`
              : `coldest air around the print from half an hour after its start (or its middle) to its end, doors shut, at ${formatClock(time)}`,
          value,
          unit: 'temperature',
          source: 'heat balance of the day, by the network of walls, sources and air paths',
          inputs: [`days.${run.day}.jobs.${print.id}.start`, `days.${run.day}.jobs.${print.id}.duration`],
        },
        ...balanceSteps(run, bay, time),
      ];
    },
    get remedies(): readonly Remedy[] {
      return end === 'high' ? coolerBay(run.cabinet, bay) : warmerBay(run.cabinet, bay);
    },
    cause: end === 'high' ? causes.notEnoughAir : causes.bayTooCool,
    weight: well ? 0.7 : large ? 0.5 : 0.2,
    better: end === 'high' ? 'lower' : 'higher',
    compared: well && end === 'high',
  };
}

function bandStep({ job, material, machine }: Print, band: 'bandWell' | 'bandBest'): Step {
  const [low, high] = material[band];
  return {
    text: `${job.material} on ${machine.kind} wants air between this and ${Math.round(high - 273.15)} °C`,
    value: low,
    unit: 'temperature',
    source: 'trade practice, from memory, no printed source',
    inputs: [`materials.${job.material}.${band}.0`, `materials.${job.material}.${band}.1`],
  };
}

/** Time from the job's start until the air reaches the band's lower end. */
function warmUp(print: Print, air: Course): Measure {
  const [low] = print.material.bandWell;
  const reached = firstReaching(air, low, 'below');
  const below = print.end - print.start - timeAbove(air, low);
  const base = {
    trade: 'heat',
    quantity: 'warm-up',
    part: print.part,
    title: 'warm-up: from the start until the air reaches its material’s band',
    unit: 'duration',
    remedies: [],
    weight: 0.2,
    better: 'lower',
  } as const;
  if (reached === undefined) {
    return {
      ...base,
      value: print.end - print.start,
      get steps(): readonly Step[] {
        return [
          { text: 'the band’s lower end is not reached during the whole job', value: low, unit: 'temperature' },
          { text: 'warmest it gets', value: largest(air).value, unit: 'temperature' },
        ];
      },
    };
  }
  return {
    ...base,
    value: reached - print.start,
    at: reached,
    get steps(): readonly Step[] {
      return [
        { text: 'air around the print at the start', value: air.values[0]!, unit: 'temperature' },
        { text: `the band’s lower end, reached at ${formatClock(reached)}`, value: low, unit: 'temperature' },
        { text: 'time below it during the whole job, door openings included', value: below, unit: 'duration' },
      ];
    },
  };
}
