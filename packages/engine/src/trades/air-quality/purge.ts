// How long to wait after a job before the door is opened.

import { purgeTime } from '@stillair/physics';
import { bayInflow } from '../air-ways.ts';
import { causes } from '../causes.ts';
import { lengthOf, meanOf, valueAt, within } from '../course.ts';
import type { DayRun, Measure, Remedy, Step } from '../measure.ts';
import { printsOf } from '../prints.ts';
import { runOn } from '../remedies.ts';
import { courseOn } from '../switched.ts';

/** Share that is to be gone, and the mixing factor between 1 (perfect) and 10 (very poor). */
const GONE = 0.99;
const MIXING = 3;
/** Air is looked at for this long after the job, s. */
const AFTER = 600;

export function purge(run: DayRun): Measure[] {
  const last = run.record.times[run.record.times.length - 1]!;
  return Object.keys(run.cabinet.bays).flatMap((bay) => {
    const ends = printsOf(run)
      .filter(({ machine }) => machine.bay === bay)
      .map(({ end }) => end)
      .filter((end) => end + 60 < last);
    if (ends.length === 0) return [];
    const times = ends.map((end) => ({ end, ...removal(run, bay, end, Math.min(end + AFTER, last)) }));
    const slowest = times.reduce((a, b) => (b.rate < a.rate ? b : a));
    const value = slowest.rate > 0 ? purgeTime(1 / (1 - GONE), slowest.rate, MIXING) : undefined;
    return [
      {
        trade: 'air-quality',
        quantity: 'purge-time',
        part: bay,
        title: 'wait after a job before the door is opened, until 99 % of the particles are gone',
        ...(value === undefined
          ? { missing: 'no air passes the bay after the job: nothing is carried away' }
          : { value }),
        unit: 'duration',
        logarithmic: true,
        at: slowest.end,
        get steps(): readonly Step[] {
          return [
            { text: 'air volume of the bay', value: slowest.volume, unit: 'volume' },
            { text: 'air entering in the ten minutes after the job, door shut', value: slowest.through, unit: 'flow' },
            { text: 'clean air from filters that turn the air round', value: slowest.cleaned, unit: 'flow' },
            { text: 'together with what settles', value: slowest.rate * 3600, unit: 'air-change' },
            {
              text: 'mixing factor 3 of 1 (perfect) to 10 (very poor): judgement',
              ...(value === undefined ? {} : { value, unit: 'duration' }),
              formula: 't = m ln(C0/C)/λ',
              source: 'CDC, MMWR 28 October 1994, table S3-1, and its footnote on mixing',
            },
            { text: 'the warm part goes on giving off vapours: the table knows no source' },
          ];
        },
        get remedies(): readonly Remedy[] {
          return runOn(run.cabinet, bay);
        },
        cause: causes.lateFan,
        weight: 0.3,
        better: 'lower',
        compared: true,
      } satisfies Measure,
    ];
  });
}

/** First-order removal of particles from a bay between two times, 1/s. */
function removal(
  run: DayRun,
  bay: string,
  start: number,
  end: number,
): { rate: number; through: number; cleaned: number; volume: number } {
  const { record, assembly } = run;
  const { network } = record;
  const { zones, volumes } = assembly.bays[bay]!;
  const here = new Set(zones);
  const volume = volumes.reduce((a, b) => a + b, 0);
  const chambers = new Set(Object.values(assembly.machines).flatMap(({ chamber }) => chamber ?? []));
  // Air from the machine's own chamber is not clean; from another bay it counts as such.
  const entering = bayInflow(run, bay, chambers);
  const through = meanOf(within(entering, start, end));
  const cleaned = network.recirculations
    .filter(({ zone }) => here.has(zone))
    .reduce((sum, { flow, efficiency, active }) => {
      const on = within(courseOn(run, active), start, end);
      return sum + flow * (efficiency['particles'] ?? 0) * (lengthOf(on) > 0 ? meanOf(on) : valueAt(on, start));
    }, 0);
  const settling = network.contaminants.find(({ name }) => name === 'particles')?.deposition[zones[0]!] ?? 0;
  return { rate: (through + cleaned) / volume + settling, through, cleaned, volume };
}
