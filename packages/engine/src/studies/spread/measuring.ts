// Which single measurement would settle most: for every uncertain input, how many verdicts, and how many orders between options, one would
// expect to call rightly that are wrong now, once it had been read with the accuracy that is to be had.

import type { AssumedInput } from '../../cabinet/assumed-inputs.ts';
import type { AdditivePart } from '../../numerics/additive-expansion.ts';
import { jackknifeError } from '../../numerics/jackknife.ts';
import { normalScores, scoreOfLimit } from '../../numerics/normal-scores.ts';
import { readingCorrelation, varianceTakenAway, wrongCalls } from '../../numerics/value-of-measuring.ts';
import { exactlyInWords, readingError, wayToMeasure } from '../how-to-measure.ts';
import type { Estimate } from './estimate.ts';
import { BLOCKS, withoutBlock } from './even-samples.ts';
import { type Expanded, expanded, rowsOf, type ScoresAt } from './finding-spread.ts';

/** Something that may be called wrongly: whether a limit is kept, or whether an option is better. */
export interface Question {
  readonly kind: 'limit' | 'order';
  /** Finding id. */
  readonly id: string;
  /** The option that is set against the cabinet as it stands. */
  readonly option?: string;
  readonly title: string;
  readonly part: string;
  readonly day: string;
  readonly weight: number;
  /** One a sample: up to 0 the limit is kept, or the option is no worse. */
  readonly beyond: readonly (number | undefined)[];
  /** Inputs that can move it. */
  readonly inputs: readonly AssumedInput[];
}

export interface Helped {
  readonly kind: Question['kind'];
  readonly id: string;
  readonly option?: string;
  readonly title: string;
  readonly part: string;
  readonly day: string;
  /** Chance of a wrong call now, and after the measurement. */
  readonly before: number;
  readonly after: number;
}

export interface Measurement {
  readonly path: string;
  readonly label: string;
  /** How it is made, and one standard deviation of what it is wrong by. */
  readonly how: string;
  readonly exactly: string;
  /** That error, in standard deviations of what is assumed of the input. */
  readonly error: number;
  /** Wrong calls fewer, as one must expect: of limits, and of orders between options. */
  readonly verdicts: Estimate;
  readonly orders: Estimate;
  /** Share of the variance that it takes away, on average over the findings whose verdict is open. */
  readonly variance: number;
  /** What it helps most, first. */
  readonly helps: readonly Helped[];
}

/** A call that is seldom wrong is not asked about. */
const OPEN = 0.02;
const MOST_HELPED = 5;
/** What changes a chance by less is not told. */
const LEAST_GAIN = 1e-3;

interface Gain {
  readonly path: string;
  readonly question: Question;
  readonly before: number;
  readonly after: number;
  /** Without each block of the samples. */
  readonly without: readonly number[];
}

/**
 * Best first, by wrong calls fewer times the weight of what they are about.
 *
 * @param expansions - Of findings' values, by id: those whose verdict is open.
 */
export function measurementsFor(
  questions: readonly Question[],
  expansions: ReadonlyMap<string, Expanded>,
  scoresAt: ScoresAt,
): Measurement[] {
  const gains = questions.flatMap((question) => gainsIn(question, scoresAt));
  const byPath = grouped(gains);
  return [...byPath.values()]
    .map((own) => ({
      own,
      worth: own.reduce((sum, { question, before, after }) => sum + question.weight * (before - after), 0),
    }))
    .sort((a, b) => b.worth - a.worth)
    .map(({ own }) => measurementOf(own, expansions));
}

function grouped(gains: readonly Gain[]): Map<string, Gain[]> {
  const made = new Map<string, Gain[]>();
  for (const gain of gains) made.set(gain.path, [...(made.get(gain.path) ?? []), gain]);
  return made;
}

function gainsIn(question: Question, scoresAt: ScoresAt): Gain[] {
  const rows = rowsOf(question.beyond);
  if (!isOpen(question, rows)) return [];
  const found = callsIn(question, rows, question.inputs, scoresAt);
  const inputs = [...found.keys()];
  if (inputs.length === 0) return [];
  // Only the inputs that were found are offered again: it is how strong they are that is asked here.
  const without = Array.from({ length: BLOCKS }, (_, block) =>
    callsIn(question, withoutBlock(rows, block), inputs, scoresAt),
  );
  return inputs.map((input) => ({
    path: input.path,
    question,
    ...found.get(input)!,
    without: without.map((each) => gainOf(each.get(input))),
  }));
}

function gainOf(calls: { readonly before: number; readonly after: number } | undefined): number {
  return calls === undefined ? 0 : Math.max(calls.before - calls.after, 0);
}

function isOpen({ beyond }: Question, rows: readonly number[]): boolean {
  const inside = rows.filter((row) => beyond[row]! <= 0).length / rows.length;
  return Math.min(inside, 1 - inside) >= OPEN;
}

/** Chance of a wrong call before and after each input that plays a part was read. */
function callsIn(
  { beyond }: Question,
  rows: readonly number[],
  inputs: readonly AssumedInput[],
  scoresAt: ScoresAt,
): Map<AssumedInput, { before: number; after: number }> {
  const values = rows.map((row) => beyond[row]!);
  const scores = normalScores(values);
  const limit = scoreOfLimit(values, scores, 0);
  const inside = values.filter((value) => value <= 0).length / values.length;
  const before = Math.min(inside, 1 - inside);
  const { parts, scores: inputScores } = expanded(scores, rows, inputs, scoresAt);
  return new Map(
    parts.flatMap((part: AdditivePart) => {
      const input = inputs[part.input]!;
      const { exactly } = wayToMeasure(input.path);
      if (exactly === undefined) return [];
      const correlation = readingCorrelation(readingError(input.spread, exactly));
      const calls = wrongCalls(scores, inputScores[part.input]!, part, limit, correlation);
      if (!(calls.after < calls.before - LEAST_GAIN)) return [];
      // How often it is wrong now is counted, not modelled.
      return [[input, { before, after: (before * calls.after) / calls.before }] as const];
    }),
  );
}

function measurementOf(own: readonly Gain[], expansions: ReadonlyMap<string, Expanded>): Measurement {
  const { path, question } = own[0]!;
  const input = question.inputs.find((each) => each.path === path)!;
  const { how, exactly } = wayToMeasure(path);
  const error = readingError(input.spread, exactly!);
  const correlation = readingCorrelation(error);
  const sum = (kind: Question['kind']): Estimate => {
    const of = own.filter((gain) => gain.question.kind === kind);
    const without = Array.from({ length: BLOCKS }, (_, block) =>
      of.reduce((all, gain) => all + gain.without[block]!, 0),
    );
    return { value: of.reduce((all, gain) => all + gainOf(gain), 0), error: jackknifeError(without) };
  };
  const taken = [...expansions.values()].map((expansion) => {
    const part = expansion.parts.find((each) => expansion.inputs[each.input]!.path === path);
    return part === undefined ? 0 : varianceTakenAway(expansion, part, correlation);
  });
  return {
    path,
    label: input.label,
    how,
    exactly: exactlyInWords(exactly!),
    error,
    verdicts: sum('limit'),
    orders: sum('order'),
    variance: taken.reduce((all, each) => all + each, 0) / Math.max(taken.length, 1),
    helps: [...own]
      .sort((a, b) => gainOf(b) * b.question.weight - gainOf(a) * a.question.weight)
      .slice(0, MOST_HELPED)
      .map(({ question: { kind, id, option, title, part, day }, before, after }) => ({
        kind,
        id,
        ...(option === undefined ? {} : { option }),
        title,
        part,
        day,
        before,
        after,
      })),
  };
}
