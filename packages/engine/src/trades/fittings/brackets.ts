// Printed brackets and mounts: does their material bear the warmth where they hang, on this day?

import { besideBed, creepLimit, factorToDisk, printedMaterials } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { FittingPart } from '../../cabinet/fittings.ts';
import { formatClock, formatQuantity } from '../../units/format.ts';
import { temperatureOf } from '../air-ways.ts';
import { causes } from '../causes.ts';
import { largest, type RowMoment } from '../course.ts';
import type { DayRun, Measure, Remedy, Step } from '../measure.ts';
import { machinesIn } from '../plant.ts';
import { set } from '../remedy-edits.ts';
import { printedOf } from './camera-arms.ts';
import { warmthLimit } from './limits.ts';

/** What a person prints in place of a material that softens. */
const PRINTED_FOR_WARMTH: ReadonlySet<string> = new Set(['PETG', 'ABS', 'ASA']);

export function brackets(run: DayRun): Measure[] {
  const { cabinet } = run;
  const hung = Object.entries(cabinet.fittings).filter(
    ([, { what, where, material }]) =>
      cabinet.bays[where] !== undefined && (material !== undefined || what === 'bracket' || what.endsWith('mount')),
  );
  return [
    ...hung.map(([id, fitting]) => warmth(run, id, fitting)),
    ...Object.keys(cabinet.bays)
      .filter((bay) => machinesIn(cabinet, bay).length > 0)
      .map((bay) => mayBe(run, bay)),
  ];
}

/** Hottest air at a height of a bay; the highest zone when no height is said. */
function hottestAt(run: DayRun, bay: string, height?: number): RowMoment {
  const { zones, split } = run.assembly.bays[bay]!;
  const z = height === undefined ? Infinity : run.cabinet.bays[bay]!.z[0] + height;
  return largest(temperatureOf(run, zones.length === 2 && z < split ? zones[0]! : zones.at(-1)!));
}

function warmth(run: DayRun, id: string, fitting: FittingPart): Measure {
  const { cabinet } = run;
  const { where, at, material, fromBed } = fitting;
  const printed = material === undefined ? undefined : printedOf(material);
  const shared = {
    trade: 'fittings',
    quantity: 'bracket-warmth',
    part: id,
    title: 'hottest that the printed part gets',
    unit: 'temperature',
    better: 'lower',
    cause: causes.bracketSoftens,
    weight: 0.7,
  } as const;
  if (material === undefined || printed === undefined)
    return {
      ...shared,
      missing: `give fittings.${id}.material${material === undefined ? ', of which it is printed' : ` as one of the catalogue: the glass transition of ${material} is not known`}`,
      steps: [],
      remedies: [],
    };
  const air = hottestAt(run, where, at?.[2]);
  const bed = fromBed === undefined ? undefined : hottestBed(cabinet, run.day, where);
  const view = bed === undefined ? 0 : factorToDisk(Math.sqrt((bed.width * bed.depth) / Math.PI), fromBed!);
  const rise = bed === undefined ? 0 : besideBed(view, Math.max(bed.temperature - air.value, 0));
  const value = air.value + rise;
  return {
    ...shared,
    value,
    at: air.time,
    limit: warmthLimit(cabinet, material, printed.glassTransition),
    get steps(): readonly Step[] {
      return [
        { text: `hottest air there, at ${formatClock(air.time)}`, value: air.value, unit: 'temperature' },
        ...(bed === undefined
          ? [{ text: 'its distance from a hot bed is not given (from-bed): only the air counts' }]
          : [
              {
                text: `bed of ${bed.machine}, which takes this share of its view`,
                value: view,
                unit: 'share',
                formula: 'R²/(R² + d²)',
                source: 'J. R. Howell, B-11',
                inputs: [`fittings.${id}.fromBed`],
              },
              {
                text: 'warmer than the air by',
                value: rise,
                unit: 'temperature-difference',
                formula: 'F h_r (T_bed - T_air)/(2 h_c + 2 h_r)',
              },
            ]),
      ];
    },
    get remedies(): readonly Remedy[] {
      return Object.entries(printedMaterials)
        .filter(
          ([name, { glassTransition }]) => PRINTED_FOR_WARMTH.has(name) && creepLimit(glassTransition) > value + 5,
        )
        .sort(([, a], [, b]) => a.glassTransition - b.glassTransition)
        .slice(0, 2)
        .map(([name]) => ({
          says: `print ${id} of ${name}`,
          edits: [set(['fittings', id, 'material'], name)],
        }));
    },
  };
}

/** The hottest bed that a job of the day holds in a bay. */
function hottestBed(
  cabinet: Cabinet,
  day: string,
  bay: string,
):
  | { readonly machine: string; readonly temperature: number; readonly width: number; readonly depth: number }
  | undefined {
  const beds = Object.values(cabinet.days[day]!.jobs)
    .filter(({ machine }) => cabinet.machines[machine]!.bay === bay)
    .map(({ machine, bed }) => {
      const { width, depth } = cabinet.machines[machine]!.bed;
      return { machine, temperature: bed, width, depth };
    });
  return beds.sort((a, b) => b.temperature - a.temperature)[0];
}

/** Which materials a loaded bracket may be of, anywhere in a bay's air. */
function mayBe(run: DayRun, bay: string): Measure {
  const air = hottestAt(run, bay);
  return {
    trade: 'fittings',
    quantity: 'bracket-air',
    part: bay,
    title: 'hottest air that a printed bracket meets',
    value: air.value,
    unit: 'temperature',
    better: 'lower',
    at: air.time,
    get steps(): readonly Step[] {
      return [
        { text: `hottest air of the bay, at ${formatClock(air.time)}`, value: air.value, unit: 'temperature' },
        ...Object.entries(printedMaterials)
          .filter(([, { modulus }]) => modulus > 1e9)
          .map(([name, { glassTransition }]) => {
            const limit = creepLimit(glassTransition);
            const verdict = limit >= air.value ? 'bears it' : 'creeps';
            return { text: `${name} under load ${verdict}: up to ${formatQuantity('temperature', limit)}` };
          }),
        { text: 'beside a hot bed it gets warmer than the air: give the bracket under fittings, with from-bed' },
      ];
    },
    remedies: [],
    weight: 0.2,
  };
}
