// What electricity costs: each job, the day, thirty such days; and what the warm cabinet saves on the bed.

import { bedLoss } from '@stillair/physics';
import { describedBed } from '../../cabinet/bed-description.ts';
import { formatClock } from '../../units/format.ts';
import type { Profile } from '../../units/profile.ts';
import { temperatureOf } from '../air-ways.ts';
import { causes } from '../causes.ts';
import { courseOf, integralOf, meanOf, within } from '../course.ts';
import { cabinetPower, powerOf } from '../draws.ts';
import type { DayRun, Measure, Step } from '../measure.ts';
import { ownLimit } from '../person-limit.ts';
import { type Print, printsOf } from '../prints.ts';
import { costOf } from '../tariff.ts';

const DAY = 86_400;
const HOUR = 3600;
/** Days of a month, for a round sum. */
const MONTH = 30;

export function cost(run: DayRun): Measure[] {
  const prints = printsOf(run);
  return [
    ...prints.map((print) => jobCost(run, print)),
    ...prints.flatMap((print) => bedSaving(run, print)),
    ...dayCost(run),
  ];
}

/** Money for one joule of a job of even power that starts then. */
function evenPrice(tariff: Profile, start: number, length: number): number {
  const times = Float64Array.of(start, start + length);
  return costOf({ times, values: Float64Array.of(1, 1) }, tariff) / length;
}

function jobCost(run: DayRun, print: Print): Measure {
  const { tariff } = run.cabinet.power;
  const power = within(powerOf(run, print.machineId), print.start, print.end);
  const value = costOf(power, tariff);
  const limit = ownLimit(run.cabinet, 'job-cost', 'at-most');
  return {
    trade: 'power',
    quantity: 'job-cost',
    part: print.part,
    title: `electricity of the job, ${run.cabinet.currency}`,
    value,
    unit: 'money',
    ...(limit === undefined ? {} : { limit }),
    get steps(): readonly Step[] {
      const energy = integralOf(power);
      return [
        { text: 'drawn by the machine from start to end', value: energy, unit: 'energy' },
        { text: 'mean power', value: meanOf(power), unit: 'power' },
        {
          text: 'mean price',
          value: value / energy,
          unit: 'energy-price',
          formula: 'Σ P(t) price(t)',
          inputs: ['power.tariff'],
        },
        ...cheapest(tariff, print, energy),
      ];
    },
    remedies: [],
    cause: causes.dearHours,
    weight: 0.1,
    better: 'lower',
  };
}

/** The start of the cheapest full hour, where prices differ. */
function cheapest(tariff: Profile, { start, end }: Print, energy: number): Step[] {
  if (new Set(tariff.map(([, price]) => price)).size < 2) return [];
  const starts = Array.from({ length: 24 }, (_, hour) => hour * HOUR);
  const priced = starts.map((at) => ({ at, price: evenPrice(tariff, at, end - start) }));
  const best = priced.reduce((a, b) => (b.price < a.price - 1e-15 ? b : a));
  return [
    {
      text: `started at ${formatClock(best.at)} it would cost least; cheap hours are often quiet hours, and hours without anybody near`,
      value: best.price * energy,
      unit: 'money',
    },
  ];
}

function dayCost(run: DayRun): Measure[] {
  const { cabinet, record } = run;
  const { tariff } = cabinet.power;
  const power = cabinetPower(run);
  const whole = costOf(power, tariff);
  const length = (record.times.at(-1)! - record.times[0]!) / DAY;
  const month = (whole * MONTH) / length;
  const row = (quantity: string, title: string, value: number, steps: () => readonly Step[]): Measure => {
    const limit = ownLimit(cabinet, quantity, 'at-most');
    return {
      trade: 'power',
      quantity,
      part: 'cabinet',
      title: `${title}, ${cabinet.currency}`,
      value,
      unit: 'money',
      ...(limit === undefined ? {} : { limit }),
      get steps() {
        return steps();
      },
      remedies: [],
      cause: causes.dearHours,
      weight: 0.1,
      better: 'lower',
      compared: quantity === 'month-cost',
    };
  };
  return [
    row('day-cost', 'electricity of the day', whole, () => [
      { text: 'drawn by all of it', value: integralOf(power), unit: 'energy' },
      {
        text: 'mean price',
        value: integralOf(power) > 0 ? whole / integralOf(power) : tariff[0]![1],
        unit: 'energy-price',
        formula: 'Σ P(t) price(t)',
        inputs: ['power.tariff'],
      },
    ]),
    row('month-cost', `electricity of ${MONTH} such days`, month, () => [
      { text: 'a day', value: whole / length, unit: 'money', inputs: ['power.tariff'] },
      {
        text: 'against a kilogram of filament at 15 to 45 for each, it is mostly small money (common practice, no source)',
      },
    ]),
  ];
}

/** What holding the bed would take more in the open room than in the air that it stands in. */
function bedSaving(run: DayRun, { part, machineId, machine, job, start, end }: Print): Measure[] {
  const { record, assembly, cabinet } = run;
  if (!record.bedPowers.names.includes(machineId)) return [];
  const air = meanOf(within(temperatureOf(run, assembly.machines[machineId]!.printAir), start, end));
  const room = meanOf(within(temperatureOf(run, assembly.room), start, end));
  if (job.bed <= Math.max(air, room) + 1) return [];
  const bed = describedBed(machine.bed);
  const more = bedLoss(bed, job.bed, room, room).total / bedLoss(bed, job.bed, air, air).total - 1;
  const taken = integralOf(within(courseOf(record, record.bedPowers, machineId), start, end));
  return [
    {
      trade: 'power',
      quantity: 'bed-saving',
      part,
      title: 'electricity that the warm bay saves on the bed',
      value: more * taken,
      unit: 'energy',
      get steps(): readonly Step[] {
        return [
          { text: 'taken by the bed here', value: taken, unit: 'energy', inputs: ['factors.bedLoss'] },
          { text: 'mean air around it, and of the room', value: air, unit: 'temperature' },
          { text: 'room', value: room, unit: 'temperature' },
          {
            text: 'what the open room would take more',
            value: more,
            unit: 'share',
            formula: 'loss(room)/loss(bay) − 1',
            source: 'McAdams 1954, Churchill and Chu 1975; the ratio is surer than either',
          },
          {
            text: `in money, ${cabinet.currency}`,
            value: more * taken * evenPrice(cabinet.power.tariff, start, end - start),
            unit: 'money',
            inputs: ['power.tariff'],
          },
        ];
      },
      remedies: [],
      weight: 0.1,
      better: 'higher',
    },
  ];
}
