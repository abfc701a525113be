// What a finding comes to over all samples, how surely its limit is kept, and which inputs its variance comes from.

import type { AssumedInput } from '../../cabinet/assumed-inputs.ts';
import type { Verdict } from '../../judge/finding.ts';
import type { DayMeasure } from '../../judge/pipeline.ts';
import { verdictOf } from '../../judge/verdict.ts';
import { type AdditiveExpansion, expandAdditively, varianceOf } from '../../numerics/additive-expansion.ts';
import { normalQuantile } from '../../numerics/normal.ts';
import type { Limit } from '../../trades/measure.ts';
import { chanceOf, type Estimate, type EstimatedBand, estimatedBand } from './estimate.ts';
import { keptIn, type SpreadRun, valuesIn } from './spread-runs.ts';

export interface FindingSpread extends Partial<EstimatedBand> {
  readonly id: string;
  readonly trade: string;
  readonly quantity: string;
  readonly part: string;
  readonly day: string;
  readonly title: string;
  readonly unit: string;
  readonly weight: number;
  readonly logarithmic: boolean;
  /** With the nominal inputs. */
  readonly value?: number;
  /** Which input is missing, when there is no value. */
  readonly missing?: string;
  readonly limit?: Limit;
  readonly verdict: Verdict;
  /** That the limit is kept. */
  readonly chance?: Estimate;
  /** What each input alone explains of the variance (first order), largest first; in logarithms where values span decades. */
  readonly shares: readonly { readonly path: string; readonly label: string; readonly share: number }[];
  /** What no input alone explains: inputs too weak to tell with so many samples, and what they do only together. */
  readonly unexplained: number;
}

/** How far the ends of a band may be off for want of samples, as share of its width (in logarithms where it spans decades). */
export function bandError({ p10, p90, errors, logarithmic }: FindingSpread): number | undefined {
  if (p10 === undefined || p90 === undefined || errors === undefined || !(p90 > p10)) return undefined;
  return logarithmic && p10 > 0
    ? (errors.p10 / p10 + errors.p90 / p90) / 2 / Math.log(p90 / p10)
    : (errors.p10 + errors.p90) / 2 / (p90 - p10);
}

/** Normal scores of the inputs in the samples that ran, by path. */
export type ScoresAt = (rows: readonly number[]) => ReadonlyMap<string, readonly number[]>;

/** @param shares - Where each sample lies in each input's distribution. */
export function scoresOf(shares: ReadonlyMap<string, readonly number[]>): ScoresAt {
  const whole = new Map([...shares].map(([path, column]) => [path, column.map(normalQuantile)] as const));
  const kept = new Map<string, ReadonlyMap<string, readonly number[]>>();
  return (rows) => {
    const count = shares.values().next().value?.length ?? 0;
    if (rows.length === count) return whole;
    const key = rows.join();
    const known = kept.get(key);
    if (known !== undefined) return known;
    const made = new Map([...whole].map(([path, column]) => [path, rows.map((row) => column[row]!)] as const));
    kept.set(key, made);
    return made;
  };
}

/** An expansion of what happened in some rows, with the inputs that it was offered. */
export interface Expanded extends AdditiveExpansion {
  readonly inputs: readonly AssumedInput[];
  /** Scores of these inputs in these rows. */
  readonly scores: readonly (readonly number[])[];
}

export function expanded(
  values: readonly number[],
  rows: readonly number[],
  inputs: readonly AssumedInput[],
  scoresAt: ScoresAt,
): Expanded {
  const all = scoresAt(rows);
  const scores = inputs.map(({ path }) => all.get(path)!);
  return { ...expandAdditively(scores, values), inputs, scores };
}

/** Rows of the samples that ran. */
export function rowsOf(samples: readonly (number | undefined)[]): number[] {
  return samples.flatMap((value, at) => (value === undefined ? [] : [at]));
}

export interface JudgedSpread {
  readonly finding: FindingSpread;
  /** Of its values; absent where they do not vary. */
  readonly expansion?: Expanded;
}

/** @param inputs - Those that can move this finding. */
export function findingSpread(
  measure: DayMeasure,
  run: SpreadRun,
  inputs: readonly AssumedInput[],
  scoresAt: ScoresAt,
): JudgedSpread {
  const { id, trade, quantity, part, day, title, unit, weight, value, missing, limit, logarithmic = false } = measure;
  const samples = valuesIn(run, id);
  const band = estimatedBand(samples, logarithmic);
  const chance = limit === undefined || band === undefined ? undefined : chanceOf(keptIn(run, id));
  const rows = rowsOf(samples);
  const values = rows.map((row) => samples[row]!);
  const inLogarithms = logarithmic && values.every((each) => each > 0);
  const expansion =
    band === undefined || band.p10 === band.p90
      ? undefined
      : expanded(inLogarithms ? values.map(Math.log) : values, rows, inputs, scoresAt);
  return {
    finding: {
      id,
      trade,
      quantity,
      part,
      day,
      title,
      unit,
      weight,
      logarithmic,
      ...(value === undefined ? {} : { value }),
      ...(missing === undefined ? {} : { missing }),
      ...(limit === undefined ? {} : { limit }),
      verdict: verdictOf(value, band, limit),
      ...band,
      ...(chance === undefined ? {} : { chance }),
      shares: expansion === undefined ? [] : sharesOf(expansion),
      unexplained: expansion === undefined || expansion.variance === 0 ? 0 : expansion.residual / expansion.variance,
    },
    ...(expansion === undefined ? {} : { expansion }),
  };
}

function sharesOf({ parts, inputs, variance, excess }: Expanded): FindingSpread['shares'] {
  return parts
    .map(({ input, coefficients }) => ({
      path: inputs[input]!.path,
      label: inputs[input]!.label,
      share: varianceOf(coefficients, excess) / variance,
    }))
    .filter(({ share }) => share > 0)
    .sort((a, b) => b.share - a.share);
}
