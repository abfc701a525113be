// Every single fault of a cabinet, run on its days: what it comes to, when limits are passed, what in the file catches it and with
// how much time to spare. A table of failure modes and their effects by severity, as IEC 60812 describes; what nothing catches first.

import { assumedInputs } from '../cabinet/assumed-inputs.ts';
import type { Finding } from '../judge/finding.ts';
import { judge, type ReadSource } from '../judge/judge.ts';
import { countedHooks } from '../judge/variants.ts';
import { STANDING, type Trade } from '../trades/measure.ts';
import { type Effect, effectsOf, scoreOf } from './effects.ts';
import type { Fault } from './fault.ts';
import { faultsOf } from './fault-list.ts';
import {
  type EvaluateFaults,
  evaluateFaultsHere,
  type FaultOutcome,
  type FaultTask,
  faultTrades,
} from './run-fault.ts';
import type { Severity } from './severity.ts';
import { type Trip, tripsAtOnce } from './trips.ts';

export interface Catch extends Trip {
  readonly day: string;
  /** From when it has surely acted until the worst effect's limit is passed, s; below 0 it is late. Absent when either is unknown. */
  readonly leaves?: number;
}

export type Caught = 'nothing' | 'late' | 'in time';

export interface FaultRow extends Fault {
  /** Of its worst effect; absent when it has none. */
  readonly severity?: Severity;
  /** Worst first. */
  readonly effects: readonly Effect[];
  /** What acts in this fault and not without it. */
  readonly catches: readonly Catch[];
  readonly caught: Caught;
  /** Why it could not be run. */
  readonly fault?: string;
  /** The person stopped before it was run. */
  readonly notRun?: true;
}

export interface FaultStudy {
  readonly version: 1;
  readonly days: readonly string[];
  /** What nothing catches first, then what is caught too late, then what is caught; each by severity. */
  readonly faults: readonly FaultRow[];
  /** Devices of `protection:` that can act by themselves; empty when the file names none, absent when it does not say. */
  readonly protection?: readonly string[];
  readonly samples: { readonly asked: number; readonly ran: number; readonly faults: readonly string[] };
  readonly stopped: boolean;
}

export interface FaultOptions {
  /** All days of the file unless given. */
  readonly days?: readonly string[];
  readonly samples?: number;
  readonly seed?: number;
  readonly evaluate?: EvaluateFaults;
  readonly trades?: readonly Trade[];
  readonly progress?: (done: number, all: number) => void;
  readonly stop?: () => boolean;
}

export const FAULT_SAMPLES = 24;

export async function faults(source: ReadSource, options: FaultOptions = {}): Promise<FaultStudy> {
  const { cabinet } = source;
  const { days = Object.keys(cabinet.days), samples = FAULT_SAMPLES, seed = 1, progress, stop = () => false } = options;
  const evaluate = options.evaluate ?? evaluateFaultsHere(source, options.trades);
  const list = faultsOf(cabinet, days);
  const ends = endsOf(source);
  const stuck = list.filter(({ kind }) => kind === 'bed stuck on');
  const all = samples + list.length + 1 + ends.length * stuck.length;
  const hooks = countedHooks(() => all, progress, stop);
  const run = (tasks: readonly FaultTask[]): Promise<readonly (FaultOutcome | undefined)[]> => evaluate(tasks, hooks);

  const judgement = await judge(source, {
    samples,
    seed,
    remedies: false,
    trades: faultTrades(options.trades),
    evaluate: (variants) => run(variants.map((variant) => ({ ...variant, days }))),
    stop,
  });
  const findings = judgement.findings.filter(({ day }) => day === STANDING || days.includes(day));
  const [well, ...outcomes] = await run([
    { edits: [], inputs: {}, days },
    ...list.map(({ edits, otherwise }) => ({
      edits,
      ...(otherwise === undefined ? {} : { otherwise }),
      inputs: {},
      days,
    })),
    ...stuck.flatMap(({ edits }) => ends.map((inputs) => ({ edits, inputs, days }))),
  ]);
  const rows = list.map((fault, at) => {
    const first = list.length + ends.length * stuck.indexOf(fault);
    const own = stuck.includes(fault) ? outcomes.slice(first, first + ends.length) : [];
    return rowOf(
      fault,
      outcomes[at],
      well,
      own.filter((outcome) => outcome !== undefined),
      findings,
      source,
    );
  });
  const { chain, detectors } = cabinet.protection;
  const said = chain !== undefined || detectors !== undefined;
  return {
    version: 1,
    days,
    faults: rows.sort((a, b) => order(a) - order(b)),
    ...(said ? { protection: [...Object.keys(chain ?? {}), ...Object.keys(detectors ?? {})] } : {}),
    samples: judgement.samples,
    stopped: stop(),
  };
}

/** A bed that nothing stops gets as hot as what it loses lets it: this input at the ends of its spread. */
function endsOf({ origins }: ReadSource): Readonly<Record<string, number>>[] {
  const loss = assumedInputs(origins).find(({ path }) => path === 'factors.bedLoss');
  return loss === undefined ? [] : [loss.spread.p10, loss.spread.p90].map((value) => ({ [loss.path]: value }));
}

function rowOf(
  fault: Fault,
  outcome: FaultOutcome | undefined,
  well: FaultOutcome | undefined,
  ends: readonly FaultOutcome[],
  findings: readonly Finding[],
  { cabinet }: ReadSource,
): FaultRow {
  const nothing = { ...fault, effects: [], catches: [], caught: 'nothing' } as const;
  if (outcome === undefined || well === undefined) return { ...nothing, notRun: true };
  if (outcome.fault !== undefined) return { ...nothing, fault: outcome.fault };
  const effects = effectsOf(outcome, findings, ends);
  const [worst] = effects;
  if (worst === undefined) return nothing;
  const catches = catchesOf(outcome, well, effects).concat(
    tripsAtOnce(cabinet.protection, fault.kind).map((trip) => ({ ...trip, day: worst.day, leaves: 0 })),
  );
  return { ...nothing, severity: worst.severity, effects, catches, caught: caughtBy(catches) };
}

/** What acts with the fault and does not without it, on the days of the effects. */
function catchesOf(outcome: FaultOutcome, well: FaultOutcome, effects: readonly Effect[]): Catch[] {
  const [worst] = effects;
  const days = worst!.day === STANDING ? Object.keys(outcome.trips) : [worst!.day];
  const when = effects
    .filter((effect) => effect.severity === worst!.severity && effect.day === worst!.day)
    .flatMap(({ passed, worst: at }) => passed ?? at ?? []);
  const first = when.length === 0 ? undefined : Math.min(...when);
  return days.flatMap((day) =>
    (outcome.trips[day] ?? [])
      .filter(
        ({ device }) => !(well.trips[day] ?? []).some((trip) => trip.device === device && trip.latest !== undefined),
      )
      .map((trip) => ({
        ...trip,
        day,
        ...(first === undefined || trip.latest === undefined ? {} : { leaves: first - trip.latest }),
      })),
  );
}

/** A device that may act, or may not, catches nothing for sure. */
function caughtBy(catches: readonly Catch[]): Caught {
  const sure = catches.filter(({ latest }) => latest !== undefined);
  if (sure.length === 0) return 'nothing';
  return sure.some(({ leaves = 0 }) => leaves >= 0) ? 'in time' : 'late';
}

const PLACES: Readonly<Record<Caught, number>> = { nothing: 0, late: 1, 'in time': 2 };

/** Faults that change nothing come last, and last of all those that were not run. */
function order({ caught, effects, notRun, fault }: FaultRow): number {
  if (notRun === true || fault !== undefined) return 100;
  const [worst] = effects;
  return worst === undefined ? 90 : 10 * PLACES[caught] + scoreOf(worst);
}
