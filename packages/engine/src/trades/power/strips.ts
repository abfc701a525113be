// Strips of sockets: are there enough, what do they carry, what are they plugged into, how warm is it where they lie.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import { formatClock } from '../../units/format.ts';
import { causes } from '../causes.ts';
import { largest } from '../course.ts';
import { behindStrip, currentOf, warmestAt } from '../draws.ts';
import { largestMean } from '../largest-mean.ts';
import type { DayRun, Measure, Step } from '../measure.ts';
import {
  CAUTION,
  chainLimit,
  LONG,
  socketLimit,
  stripAirLimit,
  stripBreakerLimit,
  stripLimit,
  stripLongLimit,
} from './limits.ts';
import { moreSockets, stripOutside, stripToWall, strongerStrip, twoStrips } from './remedies.ts';

export function standingStrips(cabinet: Cabinet): Measure[] {
  return Object.keys(cabinet.power.strips).flatMap((id) => [
    sockets(cabinet, id),
    ...breaker(cabinet, id),
    ...chain(cabinet, id),
  ]);
}

/** Sockets that a plug takes: a bulky one covers its neighbour. */
export function socketsFor({ machines, power }: Cabinet, user: string): number {
  const plug = machines[user]?.mains.plug ?? power.supplies[user]?.plug ?? 'plain';
  return plug === 'bulky' ? 2 : 1;
}

function sockets(cabinet: Cabinet, id: string): Measure {
  const { strips } = cabinet.power;
  const strip = strips[id]!;
  const further = Object.keys(strips).filter((other) => strips[other]!.from === id);
  const needed = strip.feeds.reduce((sum, user) => sum + socketsFor(cabinet, user), further.length);
  const limit = socketLimit(cabinet, strip);
  return {
    trade: 'power',
    quantity: 'sockets',
    part: `strips.${id}`,
    title: 'sockets that the plugs take',
    value: needed,
    unit: 'number',
    ...(limit === undefined ? {} : { limit }),
    get steps(): readonly Step[] {
      const bulky = strip.feeds.filter((user) => socketsFor(cabinet, user) > 1);
      return [
        {
          text: `plugs: ${[...strip.feeds, ...further].join(', ') || 'none'}`,
          value: strip.feeds.length + further.length,
          unit: 'number',
          inputs: [`power.strips.${id}.feeds`],
        },
        ...(bulky.length === 0
          ? []
          : [
              {
                text: `bulky, covering the socket beside them: ${bulky.join(', ')}`,
                value: bulky.length,
                unit: 'number',
              },
            ]),
        ...(strip.sockets === 0 ? [{ text: `give power.strips.${id}.sockets and it is held against them` }] : []),
      ];
    },
    get remedies() {
      return moreSockets(cabinet, id, needed);
    },
    cause: causes.socketsRunOut,
    weight: 0.3,
    better: 'lower',
  };
}

/** A strip below its breaker carries more than it bears before anything cuts it off. */
function breaker(cabinet: Cabinet, id: string): Measure[] {
  const { strips, circuit } = cabinet.power;
  const strip = strips[id]!;
  const limit = stripBreakerLimit(cabinet, strip);
  if (limit === undefined) return [];
  return [
    {
      trade: 'power',
      quantity: 'strip-breaker',
      part: `strips.${id}`,
      title: 'breaker before the strip, against what is printed on the strip',
      value: circuit,
      unit: 'electric-current',
      limit,
      get steps(): readonly Step[] {
        return [
          { text: 'rating of the breaker', value: circuit, unit: 'electric-current', inputs: ['power.circuit'] },
          {
            text: 'printed on the strip',
            value: strip.rating,
            unit: 'electric-current',
            inputs: [`power.strips.${id}.rating`],
          },
          ...(circuit > strip.rating
            ? [{ text: 'between the two nothing cuts off: only what is plugged in keeps the strip within its rating' }]
            : []),
          { text: CAUTION },
        ];
      },
      get remedies() {
        return circuit > strip.rating ? strongerStrip(cabinet, id) : [];
      },
      cause: causes.weakStrip,
      weight: 0.5,
      better: 'lower',
    },
  ];
}

function chain(cabinet: Cabinet, id: string): Measure[] {
  const { strips } = cabinet.power;
  let depth = 1;
  for (
    let here = strips[id]!.from;
    strips[here] !== undefined && depth <= Object.keys(strips).length;
    here = strips[here]!.from
  )
    depth += 1;
  if (Object.keys(strips).length < 2) return [];
  const { from } = strips[id]!;
  return [
    {
      trade: 'power',
      quantity: 'plug-chain',
      part: `strips.${id}`,
      title: 'strips one after another up to the wall',
      value: depth,
      unit: 'number',
      limit: chainLimit(cabinet),
      get steps(): readonly Step[] {
        return [
          {
            text: depth === 1 ? 'it is plugged into the wall' : `it is plugged into ${from}, whose plug carries both`,
            inputs: [`power.strips.${id}.from`],
          },
          { text: CAUTION },
        ];
      },
      get remedies() {
        return depth === 1 ? [] : stripToWall(cabinet, id);
      },
      cause: causes.plugInPlug,
      weight: 0.9,
      better: 'lower',
    },
  ];
}

export function stripsOnDay(run: DayRun): Measure[] {
  return Object.keys(run.cabinet.power.strips).flatMap((id) => [...carried(run, id), ...air(run, id)]);
}

function carried(run: DayRun, id: string): Measure[] {
  const { cabinet, day } = run;
  const strip = cabinet.power.strips[id]!;
  const users = behindStrip(cabinet, id);
  if (users.length === 0) return [];
  const current = currentOf(run, `strip ${id}`, users);
  const peak = largest(current);
  const long = largestMean(current, LONG, cabinet.days[day]!.repeated);
  const limit = stripLongLimit(cabinet, strip);
  const steps = (text: string, value: number): readonly Step[] => [
    { text: `behind it: ${users.join(', ')}`, inputs: [`power.strips.${id}.feeds`] },
    {
      text,
      value,
      unit: 'electric-current',
      formula: 'I = P/(V pf)',
      source: 'definition of the power factor, IEC 60050-131',
    },
    { text: CAUTION },
  ];
  const about = { trade: 'power', part: `strips.${id}`, unit: 'electric-current', better: 'lower' as const };
  return [
    {
      ...about,
      quantity: 'strip-current',
      title: 'largest current of the strip',
      value: peak.value,
      limit: stripLimit(cabinet, strip),
      at: peak.time,
      get steps() {
        return steps(`at ${formatClock(peak.time)}`, peak.value);
      },
      get remedies() {
        return twoStrips(cabinet, id);
      },
      cause: causes.overloaded,
      weight: 0.9,
    },
    {
      ...about,
      quantity: 'strip-long',
      title: 'largest current of the strip over three hours',
      value: long.value,
      ...(limit === undefined ? {} : { limit }),
      at: long.time,
      get steps() {
        return steps(`mean of the three hours until ${formatClock(long.time)}`, long.value);
      },
      get remedies() {
        return twoStrips(cabinet, id);
      },
      cause: causes.overloaded,
      weight: 0.8,
    },
  ];
}

function air(run: DayRun, id: string): Measure[] {
  const { cabinet } = run;
  const { where } = cabinet.power.strips[id]!;
  if (cabinet.bays[where] === undefined) return [];
  const value = warmestAt(run, where);
  return [
    {
      trade: 'power',
      quantity: 'strip-air',
      part: `strips.${id}`,
      title: 'hottest air around the strip',
      value,
      unit: 'temperature',
      limit: stripAirLimit(cabinet),
      get steps(): readonly Step[] {
        return [
          { text: `hottest air of ${where}`, value, unit: 'temperature', inputs: [`power.strips.${id}.where`] },
          { text: CAUTION },
        ];
      },
      get remedies() {
        return stripOutside(cabinet, id);
      },
      cause: causes.warmWiring,
      weight: 0.8,
      better: 'lower',
    },
  ];
}
