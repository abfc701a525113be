// Which parts no finding would miss: each taken out alone, then together, the dearest first, as long as nothing gets worse.

import type { Cabinet, Edit } from '../cabinet/cabinet.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import type { Finding, Verdict } from '../judge/finding.ts';
import { judge, type ReadSource, USUAL_SAMPLES } from '../judge/judge.ts';
import { type DayMeasure, measureAll } from '../judge/pipeline.ts';
import { verdictWith } from '../judge/remedies-tried.ts';
import { countedHooks, type Evaluate, evaluateHere, type Outcome, type Variant } from '../judge/variants.ts';
import { rankOf } from '../judge/verdict.ts';
import type { Trade } from '../trades/measure.ts';
import { rangeText } from '../units/words.ts';
import { getsFurther } from './effects.ts';
import { editsWithout, type PareablePart, pareableParts } from './pare-parts.ts';
import { type PriceRange, priceDifference } from './price-difference.ts';

export interface Miss {
  /** Finding that gets worse without the part. */
  readonly id: string;
  readonly title: string;
  readonly part: string;
  readonly day: string;
  readonly unit: string;
  readonly before?: number;
  /** Absent when it cannot be told without the part. */
  readonly value?: number;
  readonly was: Verdict;
  readonly verdict: Verdict;
}

export interface PareRow {
  readonly id: string;
  readonly says: string;
  /** As under an option; absent when the file cannot do without the part. */
  readonly edits?: readonly Edit[];
  /** What it would have cost. */
  readonly saves?: PriceRange;
  /** Worst first; empty when no finding misses it. */
  readonly misses: readonly Miss[];
  /** Why it cannot be taken out alone. */
  readonly fault?: string;
  readonly notRun?: true;
}

export interface Paring {
  readonly version: 1;
  readonly currency: string;
  readonly parts: readonly PareRow[];
  /** Ids of parts that can go together, in the order in which they were taken; nothing is worse without all of them. */
  readonly together: readonly string[];
  /** All of them as one list of edits. */
  readonly edits: readonly Edit[];
  /** Findings that cannot be told: they miss nothing. */
  readonly unknown: number;
  readonly samples: { readonly asked: number; readonly ran: number; readonly faults: readonly string[] };
  readonly stopped: boolean;
}

export interface PareOptions {
  readonly samples?: number;
  readonly seed?: number;
  readonly evaluate?: Evaluate;
  readonly trades?: readonly Trade[];
  readonly progress?: (done: number, all: number) => void;
  readonly stop?: () => boolean;
}

interface Taken {
  readonly edits: readonly Edit[];
  readonly cabinet: Cabinet;
}

export async function pare(source: ReadSource, options: PareOptions = {}): Promise<Paring> {
  const { samples = USUAL_SAMPLES, seed = 1, trades, progress, stop = () => false } = options;
  const evaluate = options.evaluate ?? evaluateHere(source, trades);
  const parts = inTheFile(source, pareableParts(source.cabinet));
  let all = samples + parts.length;
  const hooks = countedHooks(() => all, progress, stop);
  const run = (variants: readonly Variant[]): ReturnType<Evaluate> => evaluate(variants, hooks);
  const { findings, samples: sampled } = await judge(source, {
    samples,
    seed,
    remedies: false,
    ...(trades === undefined ? {} : { trades }),
    evaluate: run,
    stop,
  });

  const missed = (by: readonly PareablePart[], { cabinet }: Taken, outcome: Outcome): Miss[] =>
    missesOf(
      findings,
      outcome,
      by,
      lazily(() => measureAll(cabinet, trades)),
    );

  const alone = parts.map((part) => ({ part, taken: takenOut(source, [part]) }));
  const can = alone.flatMap(({ part, taken }) => (typeof taken === 'string' ? [] : [{ id: part.id, taken }]));
  const ran = await run(can.map(({ taken: { edits } }) => ({ edits, inputs: {} })));
  const outcomes = new Map(can.map(({ id }, at) => [id, ran[at]] as const));
  const rows = alone.map(({ part, taken }): PareRow => {
    const { id, says } = part;
    if (typeof taken === 'string') return { id, says, misses: [], fault: taken };
    const outcome = outcomes.get(id);
    const known = { id, says, edits: taken.edits, saves: priceDifference(taken.cabinet, source.cabinet) };
    if (outcome === undefined) return { ...known, misses: [], notRun: true };
    if (outcome.fault !== undefined) return { ...known, misses: [], fault: outcome.fault };
    return { ...known, misses: missed([part], taken, outcome) };
  });

  const idle = rows
    .filter(({ misses, fault, notRun }) => misses.length === 0 && fault === undefined && notRun !== true)
    .sort((a, b) => middle(b) - middle(a));
  all += Math.max(idle.length - 1, 0);
  const together: PareablePart[] = [];
  for (const { id } of idle) {
    const tried = [...together, parts.find((part) => part.id === id)!];
    const taken = takenOut(source, tried);
    if (typeof taken === 'string') continue;
    const outcome = together.length === 0 ? outcomes.get(id) : (await run([{ edits: taken.edits, inputs: {} }]))[0];
    if (outcome === undefined || outcome.fault !== undefined) continue;
    if (missed(tried, taken, outcome).length === 0) together.push(tried.at(-1)!);
  }
  const whole = takenOut(source, together);
  return {
    version: 1,
    currency: source.cabinet.currency,
    parts: rows,
    together: together.map(({ id }) => id),
    edits: together.length === 0 || typeof whole === 'string' ? [] : whole.edits,
    unknown: findings.filter(({ verdict }) => verdict === 'unknown').length,
    samples: sampled,
    stopped: stop(),
  };
}

/** A hole between two bays stands among the ways for air or in a shelf: only one of the two can be edited. */
function inTheFile(source: ReadSource, parts: readonly PareablePart[]): PareablePart[] {
  const twice = new Set(
    parts
      .filter(
        ({ own }, at) =>
          own !== '' &&
          parts.some((other, place) => place !== at && other.gone !== undefined && other.gone === parts[at]!.gone),
      )
      .map(({ id }) => id),
  );
  return parts.filter((part) => !twice.has(part.id) || typeof takenOut(source, [part]) !== 'string');
}

function takenOut({ file, text, cabinet }: ReadSource, parts: readonly PareablePart[]): Taken | string {
  let problem = '';
  for (const edits of editsWithout(cabinet, parts)) {
    const answer = readCabinet(file, text, edits);
    if (answer.ok) return { edits, cabinet: answer.cabinet };
    problem ||= answer.complaints[0]?.what ?? 'the file cannot do without it';
  }
  return problem;
}

function middle({ saves }: PareRow): number {
  return saves === undefined ? 0 : (saves.low + saves.high) / 2;
}

/**
 * Findings that get worse. A question that no longer arises (the load of a supply that feeds nothing) is not missed; one that arises and
 * cannot be answered any more is.
 *
 * @param measured - Every measure without the parts: asked only where a number is gone.
 */
function missesOf(
  findings: readonly Finding[],
  outcome: Outcome,
  parts: readonly PareablePart[],
  measured: () => ReadonlyMap<string, DayMeasure>,
): Miss[] {
  const own = new Set(parts.flatMap((part) => (part.own === '' ? [] : [part.own])));
  return [...findings]
    .sort((a, b) => b.weight - a.weight)
    .flatMap((finding): Miss[] => {
      const { id, title, part, day, unit, value: before, verdict: was, limit } = finding;
      const value = outcome.values[id];
      if (limit === undefined || before === undefined) return [];
      if (value === undefined && (part.split('.').some((segment) => own.has(segment)) || !measured().has(id)))
        return [];
      // A limit that is not asked of the cabinet without the part (when the last fan starts) still says what the part was for.
      const { [id]: limitNow = limit.value } = outcome.limits;
      const verdict =
        value === undefined ? 'unknown' : verdictWith(finding, { ...outcome, limits: { [id]: limitNow } });
      const further = rankOf(verdict) >= rankOf('tight') && value !== undefined && getsFurther(finding, limit, value);
      if (rankOf(verdict) <= rankOf(was) && !further) return [];
      return [{ id, title, part, day, unit, before, ...(value === undefined ? {} : { value }), was, verdict }];
    })
    .sort((a, b) => rankOf(b.verdict) - rankOf(a.verdict));
}

function lazily<Value>(make: () => Value): () => Value {
  let made: Value | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

/** What going without saves, in the money of the file; empty where nothing has a price. */
export function savesText({ saves }: PareRow): string {
  if (saves === undefined || (saves.high === 0 && saves.unknown.length === 0)) return '';
  return saves.high === 0 ? 'unknown' : rangeText(saves.low, saves.high);
}
