// How much of a filter's or a carbon's life each kind of job takes, by what the air-quality trade says of a day with it and of the
// same day without. Shares of a life add up: what one day takes of it is taken from the next.

import type { Finding } from '../judge/finding.ts';
import type { Numbers } from '../judge/pipeline.ts';
import type { JobRun } from './diary.ts';
import { type JobKind, keyOfRun } from './job-kinds.ts';
import type { StageUse } from './load.ts';

const DAY = 86_400;
const LIVES = ['filter-life', 'carbon-life'] as const;

export interface KindRun {
  /** Absent for the day with nothing to print. */
  readonly kind?: JobKind;
  readonly day: string;
  readonly numbers: Numbers;
}

/** Lives of stages on a day, s, by the stage as findings name it. */
export function livesOn({ values }: Numbers, day: string): Readonly<Record<string, number>> {
  return Object.fromEntries(
    Object.entries(values).flatMap(([id, value]) => {
      const [trade, quantity, part, on] = id.split('/');
      return trade === 'air-quality' && LIVES.some((life) => life === quantity) && on === day
        ? [[part!, value] as const]
        : [];
    }),
  );
}

export function stageUseOf(runs: readonly KindRun[]): StageUse {
  const rests = new Map(
    runs.filter(({ kind }) => kind === undefined).map(({ day, numbers }) => [day, livesOn(numbers, day)] as const),
  );
  const [ofRest = {}] = [...rests.values()];
  const perSecond = new Map(
    runs.flatMap(({ kind, day, numbers }) => {
      if (kind === undefined) return [];
      const rest = rests.get(day) ?? {};
      const shares = Object.entries(livesOn(numbers, day)).map(([stage, life]) => {
        const added = DAY / life - DAY / (rest[stage] ?? Number.POSITIVE_INFINITY);
        return [stage, Math.max(added, 0) / kind.duration] as const;
      });
      return [[kind.key, Object.fromEntries(shares)] as const];
    }),
  );
  return {
    ofRest: Object.fromEntries(Object.entries(ofRest).map(([stage, life]) => [stage, DAY / life])),
    ofRun: (run: JobRun) => {
      const shares = perSecond.get(keyOfRun(run)) ?? {};
      const seconds = run.times * run.duration;
      return Object.fromEntries(Object.entries(shares).map(([stage, share]) => [stage, share * seconds]));
    },
  };
}

export interface LifeBand {
  /** Ends of a life over its middle. */
  readonly low: number;
  readonly high: number;
}

/** How uncertain the life of each stage is: the widest band of its findings, over their middle. */
export function lifeBands(findings: readonly Finding[]): ReadonlyMap<string, LifeBand> {
  const bands = new Map<string, LifeBand>();
  for (const { trade, quantity, part, value, p10, p90 } of findings) {
    if (trade !== 'air-quality' || !LIVES.some((life) => life === quantity)) continue;
    if (value === undefined || p10 === undefined || p90 === undefined || !(value > 0)) continue;
    const known = bands.get(part);
    const [low, high] = [Math.min(p10 / value, 1), Math.max(p90 / value, 1)];
    bands.set(part, { low: Math.min(low, known?.low ?? 1), high: Math.max(high, known?.high ?? 1) });
  }
  return bands;
}
