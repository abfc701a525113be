// What a day costs to run, and what one good part costs all in.

import { printCost } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import { causes } from '../causes.ts';
import { within } from '../course.ts';
import { cabinetPower, powerOf } from '../draws.ts';
import { keptWith } from '../kept.ts';
import type { DayRun, Measure, Step } from '../measure.ts';
import { type Print, printsOf } from '../prints.ts';
import { costOf } from '../tariff.ts';
import { budget } from './limits.ts';
import { INVENTED, inMoney, middleOf } from './money.ts';

export function running(run: DayRun): Measure[] {
  const prints = printsOf(run);
  return [...prints.map((print) => costOfPrint(run, prints, print)), ...dayCost(run, prints)];
}

/** Money for each second during which anything prints: particle filters and carbon by their lives. */
function filterRate(cabinet: Cabinet): number {
  const { paths, prices, costs } = cabinet;
  return Object.entries(paths).reduce(
    (sum, [id, { parts }]) =>
      sum +
      parts.reduce((of, { part }, at) => {
        const price = prices[`paths.${id}.parts.${at}`];
        if (price === undefined || (part !== 'filter' && part !== 'carbon')) return of;
        return of + middleOf(cabinet, price) / (part === 'filter' ? costs.filterLife : costs.carbonLife);
      }, 0),
    0,
  );
}

/** Time during which at least one machine prints, s. */
function busyTime(prints: readonly Print[]): number {
  const sorted = [...prints].sort((a, b) => a.start - b.start);
  let [sum, until] = [0, Number.NEGATIVE_INFINITY];
  for (const { start, end } of sorted) {
    sum += Math.max(end - Math.max(start, until), 0);
    until = Math.max(until, end);
  }
  return sum;
}

/** Electricity of the whole day, money. */
function electricity(run: DayRun): number {
  return keptWith(run.record, `electricity:${JSON.stringify(run.cabinet.power.tariff)}`, () =>
    costOf(cabinetPower(run), run.cabinet.power.tariff),
  );
}

function costOfPrint(run: DayRun, prints: readonly Print[], print: Print): Measure {
  const { cabinet } = run;
  const { costs, currency, prices } = cabinet;
  const { job, machineId, machine, start, end } = print;
  const limit = budget(cabinet, 'print-cost');
  const shared = {
    trade: 'cost',
    quantity: 'print-cost',
    part: print.part,
    title: inMoney('what one good part costs, all in', cabinet),
    unit: 'money',
    ...(limit === undefined ? {} : { limit }),
    remedies: [],
    cause: causes.dear,
    weight: 0.2,
    better: 'lower',
  } as const;
  const kilogram = costs.filament[job.material];
  if (kilogram === undefined)
    return {
      ...shared,
      missing: `no price of ${job.material} is known in ${currency}: give prices.${job.material}, for a kilogram`,
      steps: [],
    };
  const duration = end - start;
  const share = duration / prints.reduce((sum, other) => sum + other.end - other.start, 0);
  const { tariff } = cabinet.power;
  const ofMachine = (one: Print): number => costOf(within(powerOf(run, one.machineId), one.start, one.end), tariff);
  const own = ofMachine(print);
  const others = Math.max(electricity(run) - prints.reduce((sum, one) => sum + ofMachine(one), 0), 0);
  const busy = busyTime(prints);
  const filters = filterRate(cabinet) * busy * share;
  const price = prices[`machines.${machineId}`];
  const ageing = price === undefined ? 0 : middleOf(cabinet, price) / costs.machineLife;
  const { waste, failures, wear } = costs;
  const filamentPrice = middleOf(cabinet, kilogram);
  const cost = printCost({
    mass: job.mass,
    filamentPrice,
    waste,
    failures,
    electricity: own + others * share,
    duration,
    perSecond: wear + ageing + filters / duration,
  });
  return {
    ...shared,
    value: cost.total,
    get steps(): readonly Step[] {
      return [
        {
          text: `filament with what is wasted, at ${filamentPrice.toFixed(0)} for a kilogram`,
          value: cost.filament,
          unit: 'money',
          source: INVENTED,
          inputs: [`days.${run.day}.jobs.${print.id}.mass`, `costs.filament.${job.material}`, 'costs.waste'],
        },
        {
          text: 'electricity of its machine during the job, as simulated',
          value: own,
          unit: 'money',
          formula: '∫ P(t) price(t) dt',
          inputs: ['power.tariff'],
        },
        { text: 'its share of standby, fans and lamps of the day', value: others * share, unit: 'money' },
        { text: 'wear of nozzle, belts and plate', value: wear * duration, unit: 'money', inputs: ['costs.wear'] },
        {
          text: 'its share of filters, by their life',
          value: filters,
          unit: 'money',
          inputs: ['costs.filterLife', 'costs.carbonLife'],
        },
        price === undefined
          ? { text: `the machine growing old is not counted: give prices.${machine.kind}` }
          : { text: 'the machine growing old', value: ageing * duration, unit: 'money', inputs: ['costs.machineLife'] },
        {
          text: 'prints that fail, each taken to fail at its end',
          value: cost.failures,
          unit: 'money',
          formula: 'sum/(1 − f)',
          source: 'mean of a geometric number of trials',
          inputs: ['costs.failures'],
        },
        { text: 'the time of whoever prints it is not counted' },
      ];
    },
  };
}

function dayCost(run: DayRun, prints: readonly Print[]): Measure[] {
  const { cabinet, day } = run;
  const { costs } = cabinet;
  const busy = busyTime(prints);
  const printing = prints.reduce((sum, { start, end }) => sum + end - start, 0);
  const power = electricity(run);
  const filters = filterRate(cabinet) * busy;
  const wear = costs.wear * printing;
  const value = power + filters + wear;
  const steps = (): readonly Step[] => [
    {
      text: 'electricity of everything in the cabinet',
      value: power,
      unit: 'money',
      formula: '∫ P(t) price(t) dt',
      inputs: ['power.tariff'],
    },
    {
      text: 'filters and carbon, by the hours during which anything prints',
      value: filters,
      unit: 'money',
      source: 'lives are common practice: a year, and 200 to 500 hours',
      inputs: ['costs.filterLife', 'costs.carbonLife'],
    },
    { text: 'wear of the machines', value: wear, unit: 'money', inputs: ['costs.wear'] },
  ];
  const base = {
    trade: 'cost',
    part: 'cabinet',
    unit: 'money',
    remedies: [],
    cause: causes.dear,
    better: 'lower',
  } as const;
  const times = costs.times[day];
  const limit = budget(cabinet, 'running-year');
  return [
    {
      ...base,
      quantity: 'running-day',
      title: inMoney('running the day, without filament', cabinet),
      value,
      get steps(): readonly Step[] {
        return steps();
      },
      weight: 0.2,
      compared: true,
    },
    ...(times === undefined
      ? []
      : [
          {
            ...base,
            quantity: 'running-year',
            title: inMoney('running this day as often as it comes in a year, without filament', cabinet),
            value: value * times,
            ...(limit === undefined ? {} : { limit }),
            get steps(): readonly Step[] {
              return [
                ...steps(),
                { text: 'times in a year', value: times, unit: 'number', inputs: [`costs.times.${day}`] },
              ];
            },
            weight: 0.2,
          } satisfies Measure,
        ]),
  ];
}
