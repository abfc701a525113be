// From what variants break and come to, to scores: rules before wants. A limit that no variant keeps cannot be a rule; it may only
// not be broken further than it stands broken. As soon as one variant keeps it, it is a rule again for all.

import type { Score } from '../../numerics/fronts.ts';
import { type Want, wantRules } from '../wants.ts';
import type { SearchOutcome } from './run-search.ts';

/** A limit that no variant keeps may be broken by so much more than as it stands: a tenth, and a little. */
const FURTHER = 0.1;
const LITTLE = 0.02;
/** Where no variant keeps all rules, those count as equal that break hardly more than the best. */
const HARDLY = 0.03;
/** What was known and cannot be told any more counts like a broken rule of this weight. */
const UNTOLD = 0.5;

/** Findings that every variant breaks that was run to its end. */
export function brokenByAll(outcomes: readonly SearchOutcome[]): readonly string[] {
  const whole = outcomes.filter(({ fault, abandoned }) => fault === undefined && abandoned !== true);
  const [first] = whole;
  if (first === undefined) return [];
  return Object.keys(first.broken).filter((id) => whole.every(({ broken }) => broken[id] !== undefined));
}

/** Findings that count as broken in a variant, beside the cabinet as it stands. */
export function breaksOf(outcome: SearchOutcome, base: SearchOutcome, givenUp: ReadonlySet<string>): readonly string[] {
  return Object.entries(outcome.broken)
    .filter(([id, { by }]) => !givenUp.has(id) || by > (1 + FURTHER) * (base.broken[id]?.by ?? 0) + LITTLE)
    .map(([id]) => id);
}

function violationOf(outcome: SearchOutcome, base: SearchOutcome, givenUp: ReadonlySet<string>): number {
  if (outcome.fault !== undefined) return Number.POSITIVE_INFINITY;
  const untold = outcome.unknown.filter((id) => id in base.numbers || id in base.broken).length;
  return breaksOf(outcome, base, givenUp).reduce((sum, id) => {
    const { by, weight } = outcome.broken[id]!;
    return sum + weight * (1 + by / (1 + by));
  }, UNTOLD * untold);
}

/** Levels in the room that the variants do not move are no matter of choice. */
const MOVES = 0.01;

function movedNumbers(outcomes: readonly SearchOutcome[]): ReadonlySet<string> {
  const least = new Map<string, number>();
  const most = new Map<string, number>();
  for (const { numbers, fault } of outcomes) {
    if (fault !== undefined) continue;
    for (const [id, value] of Object.entries(numbers)) {
      least.set(id, Math.min(value, least.get(id) ?? value));
      most.set(id, Math.max(value, most.get(id) ?? value));
    }
  }
  return new Set([...most].filter(([id, value]) => value - least.get(id)! > MOVES * Math.abs(value)).map(([id]) => id));
}

/** What a variant comes to by a want; undefined when it cannot be told. */
export function cost(want: Want, { numbers, price }: SearchOutcome, moved: ReadonlySet<string>): number | undefined {
  const of = (start: string): number[] =>
    Object.entries(numbers).flatMap(([id, value]) => (id.startsWith(start) ? [value] : []));
  const most = (values: readonly number[]): number | undefined =>
    values.length === 0 ? undefined : Math.max(...values);
  switch (want) {
    case 'cool':
      return most(of('heat/peak-air/'));
    case 'still':
      return most(of('draught/air-speed/'));
    case 'quiet':
      return most(of('sound/loudest/'));
    case 'clean':
      return most(
        Object.entries(numbers).flatMap(([id, value]) =>
          id.startsWith('air-quality/room-') && moved.has(id) ? [value] : [],
        ),
      );
    case 'cheap':
      return price === undefined ? undefined : of('cost/running-year/').reduce((sum, value) => sum + value, price);
  }
}

export interface Scored {
  readonly scores: readonly Score[];
  readonly givenUp: readonly string[];
  readonly moved: ReadonlySet<string>;
  /** Violations as they are, before those that are hardly more than the best count as none. */
  readonly violations: readonly number[];
}

/** The first outcome is that of the cabinet as it stands. */
export function scored(outcomes: readonly SearchOutcome[], wants: readonly Want[]): Scored {
  const givenUp = brokenByAll(outcomes);
  const given = new Set(givenUp);
  const moved = movedNumbers(outcomes);
  const [base] = outcomes;
  const violations = outcomes.map((outcome) => violationOf(outcome, base!, given));
  const least = violations.reduce((low, value) => Math.min(low, value), Number.POSITIVE_INFINITY);
  const free = least > 0 ? least + HARDLY : 0;
  const scores = outcomes.map((outcome, at) => ({
    violation:
      outcome.abandoned === true
        ? Math.max(violations[at]!, least + 1e-9)
        : violations[at]! <= free
          ? 0
          : violations[at]!,
    costs: wants.map((want) => cost(want, outcome, moved) ?? Number.POSITIVE_INFINITY),
  }));
  return { scores, givenUp, moved, violations };
}

/** What a variant comes to by every want. */
export function comesTo(
  outcome: SearchOutcome,
  { moved }: Pick<Scored, 'moved'>,
): Readonly<Partial<Record<Want, number>>> {
  return Object.fromEntries(
    wantRules.flatMap(({ want }) => {
      const value = cost(want, outcome, moved);
      return value === undefined ? [] : [[want, value] as const];
    }),
  );
}
