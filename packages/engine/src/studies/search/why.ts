// Why the winner wins: what each of its changes buys, which limits lie close, and what keeps from more.

import type { DayMeasure } from '../../judge/pipeline.ts';
import { type Want, wantRules } from '../wants.ts';
import { beyond, type SearchOutcome } from './run-search.ts';
import { breaksOf, comesTo, type Scored } from './scores.ts';

/** A change of the winner undone, all else as it is. */
export interface Undone {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  /** By how much each want is worse without it; below 0 it is better. Absent where it cannot be told. */
  readonly worse: Readonly<Partial<Record<Want, number>>>;
  /** Limits that are broken without it and not with it. */
  readonly breaks: readonly NamedLimit[];
  /** Nothing is worse without it. */
  readonly idle: boolean;
  readonly fault?: string;
}

export interface NamedLimit {
  readonly id: string;
  readonly title: string;
  readonly part: string;
  readonly day: string;
}

/** A limit that is kept with little to spare. */
export interface CloseLimit extends NamedLimit {
  readonly unit: string;
  readonly value: number;
  readonly limit: number;
  readonly source: string;
  /** What is left, as a share of the limit, of 10 K, of 10 dB. */
  readonly left: number;
}

const CLOSE = 0.1;
const MOST_CLOSE = 6;

/** Limits that are kept with less to spare than a tenth, the closest first; only those that the changes have moved. */
export function closeLimits(
  measures: ReadonlyMap<string, DayMeasure>,
  before: ReadonlyMap<string, DayMeasure>,
): CloseLimit[] {
  return [...measures.values()]
    .flatMap(({ id, title, part, day, unit, value, limit, logarithmic = false }): CloseLimit[] => {
      if (value === undefined || limit === undefined || limit.value === 0) return [];
      const was = before.get(id)?.value;
      if (was !== undefined && Math.abs(was - value) <= 1e-6 * Math.abs(value)) return [];
      if (beyond(limit, value, unit, logarithmic) !== undefined) return [];
      // What is left is what would be over, were the limit the other way round.
      const other = limit.kind === 'at-most' ? 'at-least' : 'at-most';
      const left = beyond({ ...limit, kind: other }, value, unit, logarithmic) ?? 0;
      return left < CLOSE
        ? [{ id, title, part, day, unit, value, limit: limit.value, source: limit.source, left }]
        : [];
    })
    .sort((a, b) => a.left - b.left)
    .slice(0, MOST_CLOSE);
}

/** All that was run, seen from the winner. */
export interface Seen {
  readonly outcomes: readonly SearchOutcome[];
  readonly scored: Scored;
  readonly winner: number;
  readonly given: ReadonlySet<string>;
  readonly named: (id: string) => NamedLimit;
}

export function undoneOf(
  change: Pick<Undone, 'id' | 'from' | 'to'>,
  without: SearchOutcome,
  { outcomes, scored, winner, given, named }: Seen,
): Undone {
  const nothing = { ...change, worse: {}, breaks: [], idle: false };
  if (without.fault !== undefined) return { ...nothing, fault: without.fault };
  const base = outcomes[0]!;
  const now = comesTo(outcomes[winner]!, scored);
  const then = comesTo(without, scored);
  const worse = Object.fromEntries(
    wantRules.flatMap(({ want, matters }) => {
      const [from, to] = [now[want], then[want]];
      if (from === undefined || to === undefined || Math.abs(to - from) < matters / 2) return [];
      return [[want, to - from] as const];
    }),
  );
  const kept = new Set(breaksOf(outcomes[winner]!, base, given));
  const breaks = breaksOf(without, base, given).filter((id) => !kept.has(id));
  return {
    ...nothing,
    worse,
    breaks: breaks.map(named),
    idle: breaks.length === 0 && Object.values(worse).every((by) => by <= 0),
  };
}

const MOST_IN_THE_WAY = 5;

/** Limits broken by variants that are better in the first want, the most frequent first. */
export function inTheWay({
  outcomes,
  scored,
  winner,
  given,
  named,
}: Seen): (NamedLimit & { readonly times: number })[] {
  const best = scored.scores[winner]!.costs[0]!;
  const times = new Map<string, number>();
  for (const [at, outcome] of outcomes.entries()) {
    if (outcome.fault !== undefined || outcome.abandoned === true || !(scored.scores[at]!.costs[0]! < best)) continue;
    for (const id of breaksOf(outcome, outcomes[0]!, given)) times.set(id, (times.get(id) ?? 0) + 1);
  }
  return [...times]
    .sort((a, b) => b[1] - a[1])
    .slice(0, MOST_IN_THE_WAY)
    .map(([id, count]) => ({ ...named(id), times: count }));
}

/** A finding that neither the cabinet as it stands nor the winner has. */
export function unnamed(id: string): NamedLimit {
  const [, quantity = id, part = '', day = ''] = id.split('/');
  return { id, title: quantity.replaceAll('-', ' '), part, day };
}
