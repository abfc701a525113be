// Is what switches the fan a good proxy for what the job gives off? How much is released before it starts and after it stops.

import type { Control } from '../../cabinet/cabinet.ts';
import { fanShares } from '../air-ways.ts';
import { causes } from '../causes.ts';
import { type Course, valueAt } from '../course.ts';
import type { DayRun, Measure, Remedy, Step } from '../measure.ts';
import { anyTurns } from '../moments.ts';
import { limitFor } from '../person-limit.ts';
import { connectedBays, exhaustsOf, fansIn, hasFilter, turnsAirRound } from '../plant.ts';
import { type Print, printsOf } from '../prints.ts';
import { fanWithJob } from '../remedies.ts';
import { contaminantWords } from './contaminants.ts';
import type { Release } from './emitted.ts';
import { unguardedLimit } from './limits.ts';

export function timing(run: DayRun, releases: readonly Release[]): Measure[] {
  return printsOf(run).flatMap((print) => unguarded(run, print, releases));
}

function unguarded(run: DayRun, print: Print, releases: readonly Release[]): Measure[] {
  const { cabinet } = run;
  const reached = connectedBays(cabinet, print.machine.bay);
  const guards = [
    ...exhaustsOf(cabinet).filter((id) => reached.includes(cabinet.paths[id]!.from)),
    ...Object.keys(cabinet.paths).filter((id) => {
      const path = cabinet.paths[id]!;
      return turnsAirRound(path) && hasFilter(path) && path.from === print.machine.bay;
    }),
  ];
  const fans = guards.flatMap((id) => fansIn(cabinet.paths[id]!));
  if (fans.some(({ control }) => control.kind === 'always')) return [];
  const own = releases.filter(({ machine, mode }) => machine === print.machineId && mode === print.id);
  if (own.length === 0) return [];
  const what = {
    trade: 'air-quality',
    quantity: 'unguarded-release',
    part: print.part,
    title: 'share of what the job gives off while no fan draws it away',
    unit: 'share',
    cause: causes.lateFan,
    weight: 0.5,
    better: 'lower',
  } as const;
  // Whoever has no fan did not choose what switches it: told, so that taking the last fan out is seen, and not judged.
  if (fans.length === 0)
    return [{ ...what, value: 1, steps: [{ text: `no fan draws air out of ${print.machine.bay}` }], remedies: [] }];
  const turns = anyTurns(
    run.record,
    guards.flatMap((id) => fanShares(run, id)),
  );
  // What is given off with the same burst and tail falls into the same moments.
  const splits = new Map(
    [...new Set(own.map(({ shape }) => shape))].map((shape) => [shape, split(shape, print, turns)]),
  );
  const parts = own.map((release) => ({ release, ...splits.get(release.shape)! }));
  const worst = parts.reduce((a, b) => (b.before + b.during + b.after > a.before + a.during + a.after ? b : a));
  const controls = [...new Set(fans.map(({ control }) => controlWords(control)))].join(' or ');
  const step = (text: string, value: number): Measure['steps'][number] => ({ text, value, unit: 'share' });
  return [
    {
      ...what,
      value: worst.before + worst.during + worst.after,
      limit: limitFor(cabinet, unguardedLimit),
      get steps(): readonly Step[] {
        return [
          { text: `${guards.join(', ')} is switched ${controls}`, inputs: guards.map((id) => `paths.${id}.parts`) },
          { text: `worst for ${contaminantWords(worst.release.contaminant)}` },
          step('given off before the fan first runs', worst.before),
          step('given off in pauses of the fan during the job', worst.during),
          step('given off after the job while the fan rests', worst.after),
          { text: 'particles come most in the first minutes; vapours go on from the warm part after the end' },
        ];
      },
      get remedies(): readonly Remedy[] {
        return fanWithJob(cabinet, guards, print.machineId);
      },
    },
  ];
}

/** Shares of a release with no fan running: before it first runs in the job, later in the job, after the job. */
function split(
  { times, values }: Course,
  { job }: Print,
  turns: Course,
): { before: number; during: number; after: number } {
  const [start, end] = [job.start, job.start + job.duration];
  let [before, during, after, total] = [0, 0, 0, 0];
  let started = valueAt(turns, Math.max(start, 0) - 1) > 0;
  let row = 0;
  for (let at = 1; at < times.length; at += 1) {
    const span = times[at]! - times[at - 1]!;
    if (!(span > 0)) continue;
    const middle = (times[at]! + times[at - 1]!) / 2;
    const amount = ((values[at]! + values[at - 1]!) / 2) * span;
    total += amount;
    while (row + 1 < turns.times.length && turns.times[row + 1]! <= middle) row += 1;
    // A fan turns on the whole interval between two rows or not at all: what switches it has rows on both its sides.
    if (turns.values[row]! > 0) started = true;
    else if (middle >= end) after += amount;
    else if (started) during += amount;
    else before += amount;
  }
  return { before: before / total, during: during / total, after: after / total };
}

function controlWords(control: Control): string {
  switch (control.kind) {
    case 'always':
      return 'on for good';
    case 'never':
      return 'off for good';
    case 'timer':
      return 'by the clock';
    case 'job':
      return 'by the job itself';
    case 'thermostat':
    case 'stages':
      return 'by temperature, which follows the job late';
    case 'proportional':
      return 'by temperature, faster as it gets warmer';
    case 'air-quality':
      return `by ${control.contaminant} in ${control.place}`;
  }
}
