// When each filter and carbon stage is spent, at this day's use.

import { carbonCapacity, type SolventName, solvents } from '@stillair/physics';
import type { PathPart } from '../../cabinet/cabinet.ts';
import { fanShares, levelOf, pathOf, temperatureOf, volumeFlow } from '../air-ways.ts';
import { causes } from '../causes.ts';
import {
  type Course,
  courseFrom,
  courseOf,
  integralOfProduct,
  largest,
  lengthOf,
  meanOf,
  smallest,
} from '../course.ts';
import type { DayRun, Measure, Step } from '../measure.ts';
import { ownLimit } from '../person-limit.ts';
import { zeros } from '../zeros.ts';
import { contaminantKey, contaminantWords } from './contaminants.ts';

const DAY = 86400;
/** Lives beyond this say "years": other things end a filter's life first, s. */
const LONGEST = 20 * 365 * DAY;
/** Of the capacity by the isotherm, far below where it was tested: a third to a tenth is to be planned with. */
const PLANNED = 1 / 3;

export function stages(run: DayRun): Measure[] {
  return Object.entries(run.cabinet.paths).flatMap(([id, path]) =>
    path.parts.flatMap((part, at) => {
      if (part.part === 'filter') return [filterLife(run, id, part, at)];
      return part.part === 'carbon' ? carbonLife(run, id, part, at) : [];
    }),
  );
}

/** m³/s through a path that the bay's or room's air takes, either way. */
function flowThrough(run: DayRun, id: string): Course {
  const places = run.assembly.paths[id]!;
  if (places.kind === 'path') {
    const { times, values: flow } = volumeFlow(run, pathOf(run, places.name));
    const values = zeros(times.length);
    for (let row = 0; row < values.length; row += 1) values[row] = Math.abs(flow[row]!);
    return { times, values };
  }
  const [share] = fanShares(run, id);
  return courseFrom(run.record, (row) => (places.flow ?? 0) * (share?.values[row] ?? 1));
}

/** Zone whose air enters a path. */
function entering(run: DayRun, id: string): string {
  const places = run.assembly.paths[id]!;
  return places.kind === 'path'
    ? pathOf(run, places.name).from
    : run.record.network.recirculations.find(({ name }) => name === places.name)!.zone;
}

function filterLife(run: DayRun, id: string, part: Extract<PathPart, { part: 'filter' }>, at: number): Measure {
  const { record } = run;
  const dust = Object.keys(record.concentrations).find((name) => contaminantKey(name) === 'pm25');
  const flow = flowThrough(run, id);
  const level = dust === undefined ? undefined : levelOf(run, dust, entering(run, id));
  const shareCaught =
    Object.entries(part.efficiency).find(([name]) => contaminantKey(name) === 'pm25')?.[1] ??
    part.efficiency['particles'] ??
    1;
  // µg/m³ of PM2.5, the room's and the prints' own; coarse dust comes on top where nothing stops it before.
  const caught = level === undefined ? 0 : 1e-9 * shareCaught * integralOfProduct(flow, level);
  const perDay = (caught * DAY) / lengthOf(flow);
  const left = Math.max(1 - part.loading, 0) * part.dustCapacity;
  const own = ownLimit(run.cabinet, 'filter-life', 'at-least');
  return {
    trade: 'air-quality',
    quantity: 'filter-life',
    part: `air.${id}.${at}`,
    title: `until the filter (${part.kind}) has doubled its pressure loss, every day like this`,
    value: perDay > 0 ? Math.min((left / perDay) * DAY, LONGEST) : LONGEST,
    unit: 'duration',
    logarithmic: true,
    ...(own === undefined ? {} : { limit: own }),
    get steps(): readonly Step[] {
      return [
        {
          text: 'dust that it can still take',
          value: left,
          unit: 'mass',
          inputs: [`paths.${id}.parts.${at}.dustCapacity`, `paths.${id}.parts.${at}.loading`],
        },
        { text: 'mean flow over the day', value: meanOf(flow), unit: 'flow' },
        {
          text: 'fine dust caught a day, the room’s and the prints’',
          value: perDay,
          unit: 'mass',
          inputs: ['room.background.pm25'],
        },
        { text: 'a dusty room fills it sooner by far; a coarse filter before it is cheap insurance' },
      ];
    },
    remedies: [],
    cause: causes.spentStage,
    weight: 0.3,
    better: 'higher',
  };
}

function carbonLife(run: DayRun, id: string, part: Extract<PathPart, { part: 'carbon' }>, at: number): Measure[] {
  const { record } = run;
  const lives = record.network.carbonBeds
    .filter((bed) => bed.in === run.assembly.paths[id]!.name)
    .flatMap((bed) => bed.vapours.map((vapour) => ({ bed, vapour, column: `${bed.name}/${vapour.contaminant}` })))
    .filter(({ column, vapour }) => record.carbonLoads.names.includes(column) && isSolvent(vapour.vapour))
    .map(({ bed, vapour, column }) => {
      const load = courseOf(record, record.carbonLoads, column);
      const air = meanOf(levelOf(run, vapour.contaminant, entering(run, id)));
      const kelvin = meanOf(temperatureOf(run, bed.at));
      const capacity =
        PLANNED *
        carbonCapacity(solvents[vapour.vapour as SolventName], Math.max(air, 0) * vapour.kilogramsPerUnit, kelvin);
      const start = load.values[0]!;
      const perDay = ((load.values[load.values.length - 1]! - start) * DAY) / lengthOf(load);
      const givenBack = largest(load).value - load.values[load.values.length - 1]!;
      const life = perDay > 0 ? Math.min((Math.max(capacity - start, 0) / perDay) * DAY, LONGEST) : LONGEST;
      return {
        vapour,
        capacity,
        kelvin,
        air,
        perDay,
        start,
        givenBack: Math.max(givenBack, start - smallest(load).value),
        life,
      };
    });
  if (lives.length === 0) return [];
  const first = lives.reduce((a, b) => (b.life < a.life ? b : a));
  const own = ownLimit(run.cabinet, 'carbon-life', 'at-least');
  const perCarbon = (text: string, value: number): Step => ({ text, value, unit: 'share' });
  return [
    {
      trade: 'air-quality',
      quantity: 'carbon-life',
      part: `air.${id}.${at}`,
      title: `until the carbon (${part.kind}) is spent for ${contaminantWords(first.vapour.contaminant)}, every day like this`,
      value: Math.max(first.life, 3600),
      unit: 'duration',
      logarithmic: true,
      ...(own === undefined ? {} : { limit: own }),
      get steps(): readonly Step[] {
        return [
          { text: 'mean of the carbon’s temperature', value: first.kelvin, unit: 'temperature' },
          { text: 'mean level of the air that enters it', value: first.air, unit: 'mass-concentration' },
          {
            ...perCarbon('holds at that level, by mass of carbon; a third of the isotherm', first.capacity),
            formula: 'Dubinin-Radushkevich in Wood’s form',
            source: 'Wood 1994; at room levels extrapolated by three to four decades: plan with a third to a tenth',
          },
          perCarbon('holds already', first.start),
          perCarbon('takes up a day', first.perDay),
          ...(first.givenBack > 0
            ? [perCarbon('gave back during the day: warm carbon holds less; put it at the cool end', first.givenBack)]
            : []),
          {
            text: 'a carbon through which room air passes is spent by the room’s own vapours more than by the prints’',
          },
        ];
      },
      remedies: [],
      cause: causes.spentStage,
      weight: 0.3,
      better: 'higher',
    },
  ];
}

function isSolvent(name: string): name is SolventName {
  return Object.hasOwn(solvents, name);
}
