// How sure all findings are: the cabinet as it stands and its options run on common samples that fill the space of all uncertain inputs
// evenly. What the options change comes first, because an order is often certain where no level is; then the chance that each limit is
// kept, where its variance comes from, and which single measurement would settle most.

import type { ReadSource } from '../../judge/judge.ts';
import { relevanceIn } from '../../judge/relevance.ts';
import { countedHooks, type Evaluate, evaluateHere, type Outcome, type Variant } from '../../judge/variants.ts';
import type { Trade } from '../../trades/measure.ts';
import { evenShares } from './even-samples.ts';
import { bandError, type FindingSpread, findingSpread, scoresOf } from './finding-spread.ts';
import { type Measurement, measurementsFor, type Question } from './measuring.ts';
import {
  differencesOf,
  isBetween,
  type OptionDifference,
  type OptionSpread,
  type Orders,
  optionSpread,
  ordersOf,
  worseBy,
} from './option-differences.ts';
import { candidatesOf, pathsOf, type SpreadRun, valuesIn, variantAt } from './spread-runs.ts';
import { exchangeSets, exchanges, type TotalShares, totalShares } from './total-shares.ts';

export interface SpreadStudy {
  readonly version: 1;
  readonly days: readonly string[];
  /** Uncertain inputs of the cabinet and of the options. */
  readonly inputs: number;
  readonly samples: { readonly asked: number; readonly ran: number; readonly faults: readonly string[] };
  /** The cabinet as it stands, then the options. */
  readonly options: readonly OptionSpread[];
  /** Of every option and limit that it changes. */
  readonly differences: readonly OptionDifference[];
  /** How much surer differences are than levels. */
  readonly orders: Orders;
  readonly findings: readonly FindingSpread[];
  /** How far the ends of a band may be off for want of samples, as share of its width: the middle of the open verdicts. */
  readonly bandError?: number;
  /** Verdicts of limits that one must expect to be wrong, each by the better guess. */
  readonly wrong: number;
  /** Best first. */
  readonly measurements: readonly Measurement[];
  /** Absent unless asked for. */
  readonly shares?: TotalShares;
  readonly stopped: boolean;
}

export interface SpreadOptions {
  readonly samples?: number;
  readonly seed?: number;
  /** All days of the file unless given. */
  readonly days?: readonly string[];
  /** All options of the file unless given. */
  readonly options?: readonly string[];
  /** Sets of runs for shares of first and total order, about one for each input of the finding that has most; none unless given. */
  readonly shares?: number;
  readonly evaluate?: Evaluate;
  readonly trades?: readonly Trade[];
  readonly progress?: (done: number, all: number) => void;
  readonly stop?: () => boolean;
}

export const SPREAD_SAMPLES = 128;

export async function spread(source: ReadSource, asked: SpreadOptions = {}): Promise<SpreadStudy> {
  const { samples = SPREAD_SAMPLES, seed = 1, shares: singledOut = 0, trades, progress, stop = () => false } = asked;
  const { days = Object.keys(source.cabinet.days), options = Object.keys(source.cabinet.options) } = asked;
  const evaluate = asked.evaluate ?? evaluateHere(source, trades);
  const candidates = candidatesOf(source, options, days, trades);
  const paths = pathsOf(candidates);
  const columns = evenShares(paths, samples, seed);
  const able = candidates.filter(({ fault }) => fault === undefined);
  const all = able.length * samples + (singledOut > 0 ? samples * (singledOut + 2) : 0);
  const hooks = countedHooks(() => all, progress, stop);
  const run = (variants: readonly Variant[]): ReturnType<Evaluate> => evaluate(variants, hooks);

  // Sample by sample, so that whatever has run when somebody stops it is of all options alike.
  const rows = Array.from({ length: samples }, (_, row) => row);
  const outcomes = await run(
    rows.flatMap((row) => able.map((candidate) => variantAt(candidate, (path) => columns.get(path)![row]!))),
  );
  const runs = candidates.map((candidate): SpreadRun => {
    const at = able.indexOf(candidate);
    return { ...candidate, outcomes: at < 0 ? [] : rows.map((row) => ran(outcomes[row * able.length + at])) };
  });
  const base = runs[0]!;

  const matters = relevanceIn(source.cabinet);
  const scoresAt = scoresOf(columns);
  const judged = [...base.measures.values()].map((measure) =>
    findingSpread(
      measure,
      base,
      base.inputs.filter(({ path }) => matters(path, measure)),
      scoresAt,
    ),
  );
  const findings = judged.map(({ finding }) => finding);
  const differences = runs.slice(1).flatMap((option) => differencesOf(option, base));
  const open = findings.filter(isOpen);
  const expansions = new Map(
    judged.flatMap(({ finding, expansion }) =>
      expansion !== undefined && isOpen(finding) ? [[finding.id, expansion] as const] : [],
    ),
  );
  const questions = [...limitQuestions(findings, base, matters), ...orderQuestions(differences, runs, matters)];
  const measurements = measurementsFor(questions, expansions, scoresAt);

  const sets = stop() ? [] : exchangeSets(open, base.inputs, matters, singledOut);
  const exchanged = sets.length === 0 ? [] : await run(exchanges(base, columns, sets, samples, seed));
  const ends = open.flatMap((finding) => bandError(finding) ?? []).sort((a, b) => a - b);
  const offBy = ends[Math.floor(ends.length / 2)];
  return {
    version: 1,
    days,
    inputs: paths.length,
    samples: {
      asked: samples,
      ran: base.outcomes.filter((outcome) => outcome !== undefined).length,
      faults: [...new Set(outcomes.flatMap((outcome) => outcome?.fault ?? []))],
    },
    options: runs.map((each) => optionSpread(each, base)),
    differences,
    orders: ordersOf(differences),
    findings,
    ...(offBy === undefined ? {} : { bandError: offBy }),
    wrong: open.reduce((sum, { chance }) => sum + Math.min(chance!.value, 1 - chance!.value), 0),
    measurements,
    ...(sets.length === 0 ? {} : { shares: totalShares(base, sets, exchanged, open, matters) }),
    stopped: stop(),
  };
}

/** A sample that could not be run tells nothing. */
function ran(outcome: Outcome | undefined): Outcome | undefined {
  return outcome?.fault === undefined ? outcome : undefined;
}

/** Its verdict is open: neither certain to be kept nor certain to be broken. */
export function isOpen({ chance }: FindingSpread): boolean {
  return chance !== undefined && chance.value > 0 && chance.value < 1;
}

type Matters = ReturnType<typeof relevanceIn>;

function limitQuestions(findings: readonly FindingSpread[], base: SpreadRun, matters: Matters): Question[] {
  return findings.filter(isOpen).map(({ id, title, part, day, weight, limit, trade, quantity }) => {
    const sign = limit!.kind === 'at-most' ? 1 : -1;
    const limits = base.outcomes.map((outcome) => outcome?.limits[id] ?? limit!.value);
    return {
      kind: 'limit',
      id,
      title,
      part,
      day,
      weight,
      beyond: valuesIn(base, id).map((value, at) => (value === undefined ? undefined : sign * (value - limits[at]!))),
      inputs: base.inputs.filter(({ path }) => matters(path, { trade, quantity })),
    };
  });
}

function orderQuestions(
  differences: readonly OptionDifference[],
  runs: readonly SpreadRun[],
  matters: Matters,
): Question[] {
  const base = runs[0]!;
  return differences
    .filter(({ better, worse }) => isBetween(better) && isBetween(worse))
    .map(({ option, id, title, part, day, weight, trade, quantity }) => ({
      kind: 'order',
      id,
      option,
      title,
      part,
      day,
      weight,
      beyond: worseBy(runs.find((run) => run.id === option)!, base, id),
      inputs: base.inputs.filter(({ path }) => matters(path, { trade, quantity })),
    }));
}
