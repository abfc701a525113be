// How loud the fans are at 1 m in the free field, all together: what their catalogue says, corrected for speed. Told where a
// file limits it; where people hear it is told for everyone.

import { fanNoise as levelAtSpeed } from '@stillair/physics';
import { formatClock } from '../../units/format.ts';
import { fanShares } from '../air-ways.ts';
import { causes } from '../causes.ts';
import { courseFrom, largest, type RowMoment } from '../course.ts';
import type { DayRun, Limit, Measure, Remedy, Step } from '../measure.ts';
import { fansIn } from '../plant.ts';
import { quieterFan } from '../remedies.ts';
import { fanNoiseLimit, NIGHT } from './limits.ts';

const DAY = 86400;

interface Source {
  readonly input: string;
  readonly kind: string;
  readonly levelAtRow: (row: number) => number;
}

export function fanNoise(run: DayRun): Measure[] {
  const limits = { day: fanNoiseLimit(run.cabinet, 'day'), night: fanNoiseLimit(run.cabinet, 'night') };
  const sources = limits.day === undefined && limits.night === undefined ? [] : sourcesOf(run);
  if (sources.length === 0) return [];
  const { times } = run.record;
  const isNight = (row: number): boolean => {
    const clock = times[row]! % DAY;
    return clock < NIGHT[1] - DAY || clock >= NIGHT[0];
  };
  const loudest = (counts: (row: number) => boolean): RowMoment =>
    largest(courseFrom(run.record, (row) => (counts(row) ? levelOf(sources, row) : Number.NEGATIVE_INFINITY)));
  return [
    ...limited(
      run,
      'fan-noise',
      'fans together at 1 m, loudest of the day',
      sources,
      loudest(() => true),
      limits.day,
    ),
    ...limited(
      run,
      'fan-noise-night',
      'fans together at 1 m, loudest between 22:00 and 6:00',
      sources,
      loudest(isNight),
      limits.night,
    ),
  ];
}

function sourcesOf(run: DayRun): Source[] {
  return Object.entries(run.cabinet.paths).flatMap(([id, path]) => {
    const shares = fanShares(run, id);
    const places = path.parts.flatMap(({ part }, at) => (part === 'fan' ? [at] : []));
    return fansIn(path).map(({ kind, noiseDbA, speed }, at) => ({
      kind: `${kind} in ${id}`,
      input: `paths.${id}.parts.${places[at]}.noiseDbA`,
      levelAtRow: (row: number) => {
        const share = speed * shares[at]!.values[row]!;
        return share > 0 ? levelAtSpeed(noiseDbA, { speed: share }) : Number.NEGATIVE_INFINITY;
      },
    }));
  });
}

/** Levels add as powers. */
function levelOf(sources: readonly Source[], row: number): number {
  return 10 * Math.log10(sources.reduce((sum, { levelAtRow }) => sum + 10 ** (levelAtRow(row) / 10), 0));
}

function limited(
  run: DayRun,
  quantity: string,
  title: string,
  sources: readonly Source[],
  { value, time, row }: RowMoment,
  limit: Limit | undefined,
): Measure[] {
  if (limit === undefined) return [];
  const runs = Number.isFinite(value);
  const measure: Measure = {
    trade: 'sound',
    quantity,
    part: 'cabinet',
    title,
    value: runs ? Math.max(value, 0) : 0,
    unit: 'sound-level',
    limit,
    ...(runs ? { at: time } : {}),
    get steps(): readonly Step[] {
      return runs
        ? [
            ...sources
              .filter(({ levelAtRow }) => Number.isFinite(levelAtRow(row)))
              .map(({ kind, input, levelAtRow }) => ({
                text: `${kind}, at its speed at ${formatClock(time)}`,
                value: levelAtRow(row),
                unit: 'sound-level',
                formula: 'L = L_catalogue + 50 lg(speed share)',
                source: 'fan laws of sound, from memory',
                inputs: [input],
              })),
            {
              text: 'together, in the free field at 1 m; boards, mufflers, room and distance are not in this figure',
              value,
              unit: 'sound-level',
              formula: 'L = 10 lg Σ 10^(L_i/10)',
            },
          ]
        : [{ text: 'no fan runs then' }];
    },
    get remedies(): readonly Remedy[] {
      return quieterFan(run.cabinet);
    },
    cause: causes.noise,
    weight: 0.3,
    better: 'lower',
  };
  return [measure];
}
