// What a fault does to the findings: which limits it breaks, or breaks further, how badly and when.

import { type Band, shiftedBand } from '../judge/bands.ts';
import type { Finding, Verdict } from '../judge/finding.ts';
import { verdictWith } from '../judge/remedies-tried.ts';
import { rankOf, verdictOf } from '../judge/verdict.ts';
import type { Limit } from '../trades/measure.ts';
import { faultReach } from './fault-reach.ts';
import type { FaultOutcome } from './run-fault.ts';
import { rankOfSeverity, type Severity, severityOf } from './severity.ts';

export interface Effect extends Partial<Band> {
  /** Finding id. */
  readonly id: string;
  readonly day: string;
  readonly title: string;
  readonly part: string;
  readonly unit: string;
  readonly severity: Severity;
  readonly value: number;
  readonly verdict: Verdict;
  readonly limit: Limit;
  /** Without the fault. */
  readonly before?: number;
  readonly was: Verdict;
  /** When the limit is passed first, s; of means over hours it is not known. */
  readonly passed?: number;
  /** When it is worst, s. */
  readonly worst?: number;
}

/** A limit that becomes tight counts this many classes less than one that is broken. */
const TIGHT = 1.5;
/** What fails already gets worse by this share of it, or by this many kelvins, before it is told. */
const SHARE = 0.1;
const KELVINS = 1;

/**
 * Worst first.
 *
 * @param ends - The same fault with the input that it hangs on most at the ends of its spread. What a fault alone comes to takes its
 * band from there: without the fault it hardly moves.
 */
export function effectsOf(
  outcome: FaultOutcome,
  findings: readonly Finding[],
  ends: readonly FaultOutcome[] = [],
): Effect[] {
  return findings
    .flatMap((finding) => effectOn(finding, outcome, ends) ?? [])
    .sort((a, b) => scoreOf(a) - scoreOf(b) || excess(b) - excess(a));
}

/** 0 for a broken limit of the worst class, and up. */
export function scoreOf({ severity, verdict }: Pick<Effect, 'severity' | 'verdict'>): number {
  return rankOfSeverity(severity) + (verdict === 'fails' ? 0 : TIGHT);
}

function effectOn(finding: Finding, outcome: FaultOutcome, ends: readonly FaultOutcome[]): Effect | undefined {
  const { id, limit, value: before, verdict: was, day, title, part, unit, logarithmic } = finding;
  const value = outcome.values[id];
  const limitNow = outcome.limits[id];
  if (limit === undefined || value === undefined || limitNow === undefined) return undefined;
  const held = { ...limit, value: limitNow };
  const own = finding.trade === faultReach.id ? ends.flatMap(({ values }) => values[id] ?? []) : [];
  const wide = own.length < 2 ? undefined : { p10: Math.min(value, ...own), p50: value, p90: Math.max(value, ...own) };
  const verdict =
    wide === undefined ? verdictWith({ ...finding, value: before ?? value }, outcome) : verdictOf(value, wide, held);
  if (rankOf(verdict) <= rankOf(was) && !(verdict === 'fails' && getsFurther(finding, held, value))) return undefined;
  const { p10, p50, p90 } = finding;
  const shifted =
    p10 === undefined || before === undefined
      ? {}
      : shiftedBand({ p10, p50: p50!, p90: p90! }, before, value, logarithmic);
  const [passed, worst] = [outcome.passed[id], outcome.worst[id]];
  return {
    id,
    day,
    title,
    part,
    unit,
    severity: severityOf(finding),
    value,
    ...(wide ?? shifted),
    verdict,
    limit: held,
    ...(before === undefined ? {} : { before }),
    was,
    ...(passed === undefined ? {} : { passed }),
    ...(worst === undefined ? {} : { worst }),
  };
}

export function getsFurther({ value: before, unit }: Finding, { kind }: Limit, value: number): boolean {
  if (before === undefined) return false;
  const worse = kind === 'at-most' ? value - before : before - value;
  return worse > (unit === 'temperature' ? KELVINS : SHARE * Math.abs(before) + 1e-12);
}

/** How far beyond its limit, as a share of it; temperatures in hundreds of kelvins. */
function excess({ value, limit, unit }: Effect): number {
  const beyond = limit.kind === 'at-most' ? value - limit.value : limit.value - value;
  return beyond / (unit.startsWith('temperature') ? 100 : Math.max(Math.abs(limit.value), 1e-12));
}
