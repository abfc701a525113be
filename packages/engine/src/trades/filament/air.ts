// The air in which a spool hangs on a day: too warm for its windings, too damp for its plastic; and whether it lasts.

import { saturationPressure, strandTime, vapourDensity, vapourPressure } from '@stillair/physics';
import type { SpoolPart } from '../../cabinet/filament.ts';
import { formatClock } from '../../units/format.ts';
import { levelOf, temperatureOf } from '../air-ways.ts';
import { causes } from '../causes.ts';
import { type Course, largest, meanOf } from '../course.ts';
import { keptWith } from '../kept.ts';
import type { DayRun, Measure, Step } from '../measure.ts';
import { type Print, printsOf } from '../prints.ts';
import { zeros } from '../zeros.ts';
import { restLimit, spoolAirLimit, spoolHumidityLimit } from './limits.ts';
import { drierSpool, fullerSpool, spoolOutside } from './remedies.ts';

/** Diffusivity of water in filament, m²/s, from glassy to soft polymers: orders of magnitude, from memory. */
const DIFFUSIVITY = [1e-12, 1e-11] as const;
const WATER = 'water';

export function air(run: DayRun): Measure[] {
  return Object.entries(run.cabinet.spools)
    .filter(([, spool]) => spool.written || jobsFrom(run, spool).length > 0)
    .flatMap(([id, spool]) => [warmth(run, id, spool), damp(run, id, spool), ...rest(run, id, spool)]);
}

function jobsFrom(run: DayRun, { machine, material }: SpoolPart): Print[] {
  return printsOf(run).filter((print) => print.machineId === machine && print.job.material === material);
}

/** The zone in which it hangs: spools hang high. A drier's air is not simulated. */
function zoneOf({ cabinet, assembly }: DayRun, { where }: SpoolPart): string | undefined {
  if (cabinet.bays[where] !== undefined) return assembly.bays[where]!.zones.at(-1)!;
  return cabinet.heats[where] === undefined ? assembly.room : undefined;
}

function warmth(run: DayRun, id: string, spool: SpoolPart): Measure {
  const { cabinet } = run;
  const zone = zoneOf(run, spool);
  const peak = zone === undefined ? undefined : largest(temperatureOf(run, zone));
  const value = spool.temperature ?? peak?.value;
  const material = cabinet.materials[spool.material]!;
  return {
    trade: 'filament',
    quantity: 'spool-air',
    part: id,
    title: 'hottest air around the spool',
    ...(value === undefined
      ? { missing: `say how warm ${spool.where} keeps it: spools.${id}.temperature, such as 50 °C` }
      : { value }),
    unit: 'temperature',
    limit: spoolAirLimit(cabinet, spool.material, material),
    ...(spool.temperature === undefined && peak !== undefined ? { at: peak.time } : {}),
    get steps(): readonly Step[] {
      return [
        {
          text:
            spool.temperature === undefined && peak !== undefined
              ? `${placeOf(spool)}, where it is warmest, at ${formatClock(peak.time)}`
              : `as given for ${spool.where}`,
          ...(value === undefined ? {} : { value, unit: 'temperature' }),
          inputs: [`spools.${id}.where`],
        },
        {
          text: `${spool.material} softens at`,
          value: material.glassTransition,
          unit: 'temperature',
          inputs: [`materials.${spool.material}.glassTransition`],
        },
        { text: 'long before that, windings stick and set in the spool’s curve' },
      ];
    },
    get remedies() {
      return spoolOutside(cabinet, id);
    },
    cause: causes.warmSpool,
    weight: 0.5,
    better: 'lower',
  };
}

const placeOf = ({ where }: SpoolPart): string => (where === 'outside' ? 'air of the room' : `air of ${where}`);

/** Relative humidity of a zone, row by row. */
export function humidityOf(run: DayRun, zone: string): Course | undefined {
  const { record, cabinet } = run;
  if (record.concentrations[WATER] === undefined) return undefined;
  return keptWith(run, `relative humidity:${zone}`, () => {
    const { referenceDensity, atmosphere } = record.network.constants;
    const water = levelOf(run, WATER, zone).values;
    const warm = temperatureOf(run, zone).values;
    const given = cabinet.room.humidity;
    const values = zeros(water.length);
    for (let row = 0; row < values.length; row += 1)
      values[row] = Number.isFinite(water[row]!)
        ? vapourPressure(Math.max(water[row]!, 0) / referenceDensity, atmosphere) / saturationPressure(warm[row]!)
        : given;
    return { times: record.times, values };
  });
}

function damp(run: DayRun, id: string, spool: SpoolPart): Measure {
  const { cabinet } = run;
  const zone = zoneOf(run, spool);
  const course = zone === undefined ? undefined : humidityOf(run, zone);
  const value = spool.humidity ?? (course === undefined ? undefined : meanOf(course));
  const material = cabinet.materials[spool.material]!;
  const diameter = cabinet.machines[spool.machine]?.drive.filament ?? 0.00175;
  return {
    trade: 'filament',
    quantity: 'spool-humidity',
    part: id,
    title: 'humidity around the spool, mean of the day',
    ...(value === undefined
      ? { missing: `say how dry ${spool.where} keeps it: spools.${id}.humidity, such as 15 %` }
      : { value }),
    unit: 'share',
    limit: spoolHumidityLimit(cabinet, spool.material, material),
    get steps(): readonly Step[] {
      const warm = spool.temperature ?? (zone === undefined ? undefined : meanOf(temperatureOf(run, zone)));
      return [
        {
          text:
            spool.humidity === undefined
              ? `${placeOf(spool)}: the room’s water in the air of that bay; warmer air is relatively drier`
              : `as given for ${spool.where}`,
          ...(value === undefined ? {} : { value, unit: 'share' }),
          inputs: ['room.humidity', `spools.${id}.where`],
        },
        ...(value === undefined || warm === undefined
          ? []
          : [
              {
                text: 'water in that air',
                value: 1e9 * vapourDensity(warm, Math.min(value, 1)),
                unit: 'mass-concentration',
                formula: 'φ p_s/(R_v T)',
                source: 'ASHRAE Fundamentals 2017 chapter 1',
              },
            ]),
        ...DIFFUSIVITY.map((diffusivity, at) => ({
          text:
            at === 0
              ? 'a bare strand has followed by nine tenths after, at the slowest'
              : 'and at the fastest; windings below others take longer',
          value: strandTime(diameter / 2, diffusivity),
          unit: 'duration',
          formula: '0.334 r²/D',
          source: 'Crank 1975, section 5.3; D of 1e-12 to 1e-11 m²/s, from memory',
        })),
      ];
    },
    get remedies() {
      return drierSpool(cabinet, id);
    },
    cause: causes.dampSpool,
    weight: 0.4,
    better: 'lower',
  };
}

/** What is left on it after the day’s jobs of its machine and material. */
function rest(run: DayRun, id: string, spool: SpoolPart): Measure[] {
  const jobs = jobsFrom(run, spool);
  const alike = Object.values(run.cabinet.spools).filter(
    ({ machine, material }) => machine === spool.machine && material === spool.material,
  );
  // Of several spools alike, nobody knows which one a job takes.
  if (jobs.length === 0 || alike.length > 1) return [];
  const used = jobs.reduce((sum, { job }) => sum + job.mass, 0);
  return [
    {
      trade: 'filament',
      quantity: 'spool-rest',
      part: id,
      title: 'filament left on the spool after the day',
      value: spool.mass - used,
      unit: 'mass',
      limit: restLimit(run.cabinet),
      get steps(): readonly Step[] {
        return [
          { text: 'on it at the start', value: spool.mass, unit: 'mass', inputs: [`spools.${id}.mass`] },
          ...jobs.map(({ id: name, job }) => ({
            text: `used by ${name}`,
            value: job.mass,
            unit: 'mass',
            inputs: [`days.${run.day}.jobs.${name}.mass`],
          })),
        ];
      },
      get remedies() {
        return fullerSpool(run.cabinet, id, used);
      },
      cause: causes.spoolRunsOut,
      weight: 0.4,
      better: 'higher',
    },
  ];
}
