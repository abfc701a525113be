// The circuit: what it carries at any moment, for hours, and when everything heats at once.

import { lineCurrent, peakOfLoads } from '@stillair/physics';
import { formatClock, formatDuration } from '../../units/format.ts';
import { causes } from '../causes.ts';
import { largest } from '../course.ts';
import { cabinetPower, circuitCurrent, powerFactorOf, powerOf, usersOf } from '../draws.ts';
import { largestMean } from '../largest-mean.ts';
import type { DayRun, Measure, Step } from '../measure.ts';
import { ownLimit } from '../person-limit.ts';
import { heatUps } from './heat-ups.ts';
import { CAUTION, circuitLimit, continuousLimit, LONG, startLimit } from './limits.ts';
import { staggerStarts } from './remedies.ts';

const CURRENT = 'I = P/(V pf)';
const CURRENT_SOURCE = 'definition of the power factor, IEC 60050-131';
export function circuit(run: DayRun): Measure[] {
  if (usersOf(run.cabinet).length === 0) return [];
  return [peakCurrent(run), ...longCurrent(run), peakPower(run), ...startCurrent(run)];
}

function peakCurrent(run: DayRun): Measure {
  const { cabinet } = run;
  const peak = largest(circuitCurrent(run));
  return {
    trade: 'power',
    quantity: 'circuit-current',
    part: 'circuit',
    title: 'largest current of the circuit',
    value: peak.value,
    unit: 'electric-current',
    limit: circuitLimit(cabinet),
    at: peak.time,
    get steps(): readonly Step[] {
      return [
        ...usersOf(cabinet).map((user) => ({
          text: `${user}, at ${formatClock(peak.time)}`,
          value: powerOf(run, user).values[peak.row]!,
          unit: 'power',
          inputs: cabinet.machines[user] === undefined ? [] : [`machines.${user}.mains.powerFactor`],
        })),
        ...(cabinet.power.others > 0
          ? [
              {
                text: 'what else the circuit feeds',
                value: cabinet.power.others,
                unit: 'power',
                inputs: ['power.others'],
              },
            ]
          : [{ text: 'nothing else is known to be on this circuit', inputs: ['power.others'] }]),
        {
          text: 'their current together, uncorrected supplies drawing more than their watts say',
          value: peak.value,
          unit: 'electric-current',
          formula: CURRENT,
          source: CURRENT_SOURCE,
          inputs: ['power.voltage'],
        },
        { text: CAUTION },
      ];
    },
    get remedies() {
      return staggerStarts(run.cabinet, heatUps(run));
    },
    cause: causes.allAtOnce,
    weight: 0.9,
    better: 'lower',
    compared: true,
  };
}

/** A rule of the National Electrical Code; other codes have none of the kind. */
function longCurrent(run: DayRun): Measure[] {
  const { cabinet, day } = run;
  const limit = continuousLimit(cabinet);
  if (limit === undefined) return [];
  const most = largestMean(circuitCurrent(run), LONG, cabinet.days[day]!.repeated);
  return [
    {
      trade: 'power',
      quantity: 'circuit-continuous',
      part: 'circuit',
      title: 'largest current of the circuit over three hours',
      value: most.value,
      unit: 'electric-current',
      limit,
      at: most.time,
      get steps(): readonly Step[] {
        return [
          {
            text: `mean of the three hours until ${formatClock(most.time)}`,
            value: most.value,
            unit: 'electric-current',
            formula: CURRENT,
            source: CURRENT_SOURCE,
          },
          { text: 'only what is on for three hours or more counts so; a short peak does not' },
          { text: CAUTION },
        ];
      },
      remedies: [],
      cause: causes.overloaded,
      weight: 0.9,
      better: 'lower',
    },
  ];
}

function peakPower(run: DayRun): Measure {
  const peak = largest(cabinetPower(run));
  const limit = ownLimit(run.cabinet, 'circuit-load', 'at-most');
  return {
    trade: 'power',
    quantity: 'circuit-load',
    part: 'cabinet',
    title: 'largest power of the cabinet',
    value: peak.value,
    unit: 'power',
    ...(limit === undefined ? {} : { limit }),
    at: peak.time,
    get steps(): readonly Step[] {
      return [
        {
          text: `machines, supplies and heaters together, at ${formatClock(peak.time)}`,
          value: peak.value,
          unit: 'power',
        },
        { text: 'a bed is taken at the power that holds it, not at its switching: a meter shows more for seconds' },
      ];
    },
    remedies: [],
    weight: 0.2,
    better: 'lower',
    compared: true,
  };
}

/** Whatever the day's plan says, power may come back to all machines at once, or somebody may start them so. */
function startCurrent(run: DayRun): Measure[] {
  const { cabinet } = run;
  const { stagger, others, voltage } = cabinet.power;
  const loads = heatUps(run);
  if (loads.length === 0) return [];
  const rest = usersOf(cabinet)
    .filter((user) => cabinet.machines[user] === undefined)
    .reduce(
      (sum, user) => sum + lineCurrent(largest(powerOf(run, user)).value, voltage, powerFactorOf(cabinet, user)),
      others / voltage,
    );
  const peakWith = (apart: number): number =>
    rest + peakOfLoads(loads.map(({ steps }, at) => ({ start: at * apart, steps }))).power;
  const value = peakWith(stagger);
  return [
    {
      trade: 'power',
      quantity: 'start-current',
      part: 'circuit',
      title:
        stagger > 0 ? 'current when all machines start, one after another' : 'current when all machines start at once',
      value,
      unit: 'electric-current',
      limit: startLimit(cabinet),
      get steps(): readonly Step[] {
        const longest = Math.max(...loads.map(({ seconds }) => seconds));
        return [
          ...loads.map(({ machine, seconds, steps }) => ({
            text: `${machine} heats at full power for ${formatDuration(seconds)}`,
            value: steps[0]![1],
            unit: 'electric-current',
            inputs: [`machines.${machine}.bed.powerMax`, `machines.${machine}.mains.powerFactor`],
          })),
          {
            text: 'all at once',
            value: peakWith(0),
            unit: 'electric-current',
            formula: 'largest sum of loads that heat first and hold then',
          },
          {
            text: `each after the one before has warmed up, ${formatDuration(longest)} apart`,
            value: peakWith(longest),
            unit: 'electric-current',
            inputs: ['power.stagger'],
          },
          { text: CAUTION },
        ];
      },
      get remedies() {
        return staggerStarts(run.cabinet, heatUps(run));
      },
      cause: causes.allAtOnce,
      weight: 0.6,
      better: 'lower',
    },
  ];
}
