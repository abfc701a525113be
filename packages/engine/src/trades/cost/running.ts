// What a day costs to run, and what one good part costs all in.

import { causes } from '../causes.ts';
import type { DayRun, Measure, Step } from '../measure.ts';
import { type Print, printsOf } from '../prints.ts';
import { budget } from './limits.ts';
import { INVENTED, inMoney } from './money.ts';
import { busyTime, electricity, filterRate, piecesOf } from './pieces.ts';

export function running(run: DayRun): Measure[] {
  const prints = printsOf(run);
  return [...prints.map((print) => costOfPrint(run, prints, print)), ...dayCost(run, prints)];
}

function costOfPrint(run: DayRun, prints: readonly Print[], print: Print): Measure {
  const { cabinet } = run;
  const { currency } = cabinet;
  const { job, machine } = print;
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
  const pieces = piecesOf(run, prints, print);
  if (pieces === undefined)
    return {
      ...shared,
      missing: `no price of ${job.material} is known in ${currency}: give prices.${job.material}, for a kilogram`,
      steps: [],
    };
  return {
    ...shared,
    value: pieces.total,
    get steps(): readonly Step[] {
      return [
        {
          text: `filament with what is wasted, at ${pieces.kilogram.toFixed(0)} for a kilogram`,
          value: pieces.filament + pieces.waste,
          unit: 'money',
          source: INVENTED,
          inputs: [`days.${run.day}.jobs.${print.id}.mass`, `costs.filament.${job.material}`, 'costs.waste'],
        },
        {
          text: 'electricity of its machine during the job, as simulated',
          value: pieces.own,
          unit: 'money',
          formula: '∫ P(t) price(t) dt',
          inputs: ['power.tariff'],
        },
        { text: 'its share of standby, fans and lamps of the day', value: pieces.shared, unit: 'money' },
        { text: 'wear of nozzle, belts and plate', value: pieces.wear, unit: 'money', inputs: ['costs.wear'] },
        {
          text: 'its share of filters, by their life',
          value: pieces.filters,
          unit: 'money',
          inputs: ['costs.filterLife', 'costs.carbonLife'],
        },
        pieces.ageing === undefined
          ? { text: `the machine growing old is not counted: give prices.${machine.kind}` }
          : { text: 'the machine growing old', value: pieces.ageing, unit: 'money', inputs: ['costs.machineLife'] },
        {
          text: 'prints that fail, each taken to fail at its end',
          value: pieces.failures,
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
