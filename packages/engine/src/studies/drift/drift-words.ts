// Where to look first, by what would explain a drift.

import type { DriftStudy } from './drift.ts';

const ADVICE: readonly (readonly [RegExp, string])[] = [
  [/^loading\./, 'Look at the filter, and change it if it is due.'],
  [/^leakage/, 'Look at seals, doors and joints.'],
  [/^fan-flow/, 'Look at the fan, its grille and what stands before it.'],
  [/^room-temperature/, 'Log the room as well: then a warm day is told from a drift.'],
  [/^offset\./, 'Hold a second thermometer beside the sensor.'],
];

export function driftAdvice({ explanations, notToldApart }: Pick<DriftStudy, 'explanations' | 'notToldApart'>): string {
  const told = explanations.filter(({ id, explains }) => notToldApart.includes(id) && explains >= 0.1);
  const advice = told.flatMap(({ id }) => ADVICE.find(([pattern]) => pattern.test(id))?.[1] ?? []);
  return [
    ...new Set(advice),
    'What the file says of jobs and doors is taken for true: a print that was not in it looks like a drift too.',
  ].join(' ');
}
