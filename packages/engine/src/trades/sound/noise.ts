// How loud it is where people are: the mean over their hours, the loudest moment, and the hours in which they want quiet.

import { formatClock } from '../../units/format.ts';
import { causes } from '../causes.ts';
import type { DayRun, Limit, Measure, Remedy, Step } from '../measure.ts';
import { inHours, levelOf, loudestOf, meanLevel, type Stretch, stretchesOf, type Window } from './levels.ts';
import { BY_DAY, meanNoiseLimit, NIGHT, quietLimit } from './limits.ts';
import { hourSteps, rankedSources, rankedWays, stepsAt } from './reasons.ts';
import { quieter } from './remedies.ts';

export function noise(run: DayRun): Measure[] {
  if (Object.keys(run.cabinet.machines).length === 0 && Object.keys(run.cabinet.paths).length === 0) return [];
  return Object.keys(run.cabinet.people).flatMap((person) => [
    ...means(run, person),
    loudest(run, person),
    ...wishes(run, person),
  ]);
}

/** Hours that two windows share; either may run beyond midnight. */
function shared([from, to]: Window, [start, end]: Window): Window[] {
  return [-1, 0, 1].flatMap((day): Window[] => {
    const [a, b] = [Math.max(from, start + day * 86_400), Math.min(to, end + day * 86_400)];
    return b - a > 1 ? [[a, b]] : [];
  });
}

function means(run: DayRun, person: string): Measure[] {
  const { hours } = run.cabinet.people[person]!;
  return (
    [
      ['noise', 'day', BY_DAY, 'mean noise there by day, while they are there'],
      ['noise-night', 'night', NIGHT, 'mean noise there at night, while they are there'],
    ] as const
  ).flatMap(([quantity, when, part, title]) => {
    const there = hours.flatMap((window) => shared(window, part));
    const stretches = inHours(stretchesOf(run, person), there);
    if (stretches.length === 0) return [];
    const hoursText = there.map(([from, to]) => `${formatClock(from)} to ${formatClock(to % 86_400)}`).join(', ');
    return [
      measure(run, person, {
        quantity,
        part: person,
        title,
        value: meanLevel(stretches),
        limit: meanNoiseLimit(run.cabinet, when),
        loudest: loudestOf(stretches),
        more: () => [{ text: `mean over ${hoursText}; above, the loudest moment of it` }],
      }),
    ];
  });
}

function loudest(run: DayRun, person: string): Measure {
  const moment = loudestOf(stretchesOf(run, person));
  return measure(run, person, {
    quantity: 'loudest',
    part: person,
    title: 'loudest at their place, whole day',
    value: levelOf(moment.power),
    loudest: moment,
    compared: true,
    more: () => hourSteps(run, person),
  });
}

function wishes(run: DayRun, person: string): Measure[] {
  return (run.cabinet.sound.people[person] ?? []).flatMap(({ hours, limitDbA }, index) => {
    const stretches = inHours(stretchesOf(run, person), [hours]);
    if (stretches.length === 0) return [];
    const moment = loudestOf(stretches);
    return [
      measure(run, person, {
        quantity: 'quiet',
        part: `${person}.${index + 1}`,
        title: `loudest at their place from ${formatClock(hours[0])} to ${formatClock(hours[1] % 86_400)}`,
        value: levelOf(moment.power),
        limit: quietLimit(person, limitDbA),
        loudest: moment,
      }),
    ];
  });
}

interface Told {
  readonly quantity: string;
  readonly part: string;
  readonly title: string;
  readonly value: number;
  readonly limit?: Limit;
  readonly loudest: Stretch;
  readonly compared?: boolean;
  readonly more?: () => readonly Step[];
}

function measure(run: DayRun, person: string, { quantity, part, title, value, limit, ...told }: Told): Measure {
  const { loudest: moment, compared, more } = told;
  return {
    trade: 'sound',
    quantity,
    part,
    title,
    value: Math.max(Number.isFinite(value) ? value : 0, 0),
    unit: 'sound-level',
    ...(limit === undefined ? {} : { limit }),
    ...(moment.power > 0 ? { at: moment.start } : {}),
    get steps(): readonly Step[] {
      return [...stepsAt(run, person, moment), ...(more?.() ?? [])];
    },
    get remedies(): readonly Remedy[] {
      if (limit === undefined) return [];
      const sources = rankedSources(run, person, moment);
      return quieter(run.cabinet, sources, rankedWays(sources));
    },
    cause: causes.noise,
    weight: 0.3,
    better: 'lower',
    ...(compared === undefined ? {} : { compared }),
  };
}
