// The judge: measures of the nominal day, of sampled days and of days with each remedy, made into findings.

import { type AssumedInput, assumedInputs } from '../cabinet/assumed-inputs.ts';
import type { Cabinet } from '../cabinet/cabinet.ts';
import type { Origins } from '../cabinet/origin.ts';
import type { Trade } from '../trades/measure.ts';
import { bandOf, chanceInside } from './bands.ts';
import { driversOf } from './drivers.ts';
import type { Finding } from './finding.ts';
import { type CabinetMeasures, type DayMeasure, measureDays, type RunDay } from './pipeline.ts';
import { relevanceIn } from './relevance.ts';
import { remediesToTry, triedRemedies } from './remedies-tried.ts';
import { sampleInputs, sampleVariants } from './sample-variants.ts';
import { type CabinetSource, type Evaluate, evaluateHere, type Outcome, type Variant } from './variants.ts';
import { verdictOf } from './verdict.ts';

/** A cabinet file that was read, with its text: variants start from the text. */
export interface ReadSource extends CabinetSource {
  readonly cabinet: Cabinet;
  readonly origins: Origins;
}

export interface JudgeOptions {
  /** Days run with other inputs; 0 gives verdicts from the nominal value alone. */
  readonly samples?: number;
  readonly seed?: number;
  /** Try remedies of what is tight or fails. */
  readonly remedies?: boolean;
  readonly evaluate?: Evaluate;
  readonly trades?: readonly Trade[];
  /** How the nominal days are simulated: a face that shows them keeps them. */
  readonly run?: RunDay;
  readonly progress?: (done: number, all: number) => void;
  /** Called with the findings of the nominal day, by its values alone, before anything is varied. */
  readonly first?: (findings: readonly Finding[]) => void;
  /** Called with findings and their bands, before anything is tried that might mend them. */
  readonly sampled?: (findings: readonly Finding[]) => void;
  readonly stop?: () => boolean;
}

export interface Judgement {
  readonly version: 1;
  readonly findings: readonly Finding[];
  readonly samples: {
    readonly asked: number;
    readonly ran: number;
    /** What stopped samples from running, each said once. */
    readonly faults: readonly string[];
  };
  /** What the simulation of the nominal days warned of. */
  readonly warnings: CabinetMeasures['warnings'];
  readonly remediesTried: number;
  /** The person stopped it: samples or remedies are missing. */
  readonly stopped: boolean;
}

export const USUAL_SAMPLES = 24;

export async function judge(source: ReadSource, options: JudgeOptions = {}): Promise<Judgement> {
  const { samples = USUAL_SAMPLES, seed = 1, remedies = true, trades, progress, stop = () => false } = options;
  const evaluate = options.evaluate ?? evaluateHere(source, trades);
  const { measures: nominal, warnings } = measureDays(source.cabinet, trades, options.run);
  const inputs = assumedInputs(source.origins);
  const columns = sampleInputs(inputs, samples, seed);
  options.first?.([...nominal.values()].map(byItsValue));

  let done = 1;
  let all = 1 + samples;
  const run = (variants: readonly Variant[]): Promise<readonly (Outcome | undefined)[]> =>
    evaluate(variants, {
      finished: () => {
        done += 1;
        progress?.(done, all);
      },
      stop,
    });
  const sampled = await run(sampleVariants([], columns, samples));
  const matters = relevanceIn(source.cabinet);
  const judged = [...nominal.values()].map((measure) => {
    const asked = inputs.filter(({ path }) => matters(path, measure));
    return judgedMeasure(measure, sampled, columns, asked);
  });
  options.sampled?.(judged);

  const trials = remedies && !stop() ? remediesToTry(judged) : [];
  all += trials.length;
  const outcomes = await run(trials.map(({ edits }) => ({ edits, inputs: {} })));
  const tried = triedRemedies(judged, trials, outcomes);
  const findings = judged.map((finding) => ({ ...finding, tried: tried(finding) }));

  const ran = sampled.filter((outcome) => outcome !== undefined && outcome.fault === undefined).length;
  return {
    version: 1,
    findings,
    samples: { asked: samples, ran, faults: [...new Set(sampled.flatMap((outcome) => outcome?.fault ?? []))] },
    warnings,
    remediesTried: outcomes.filter((outcome) => outcome !== undefined).length,
    stopped: stop(),
  };
}

/** What the nominal value alone says of a measure. */
function byItsValue(measure: DayMeasure): Finding {
  return judgedMeasure(measure, [], new Map(), []);
}

/** One finding from its nominal measure and its values in the samples, without remedies. `inputs` are those that can move it. */
function judgedMeasure(
  measure: DayMeasure,
  sampled: readonly (Outcome | undefined)[],
  columns: ReadonlyMap<string, readonly number[]>,
  inputs: readonly AssumedInput[],
): Finding {
  const { id, value, limit, logarithmic = false } = measure;
  const present = sampled.flatMap((outcome, at) => {
    const found = outcome?.values[id];
    return found === undefined ? [] : [{ at, value: found }];
  });
  const values = present.map(({ value: found }) => found);
  const band = bandOf(values, logarithmic);
  const whole = present.length === sampled.length;
  const presentInputs = (): Map<string, readonly number[]> =>
    new Map(
      inputs.map(({ path }) => {
        const column = columns.get(path)!;
        return [path, whole ? column : present.map(({ at }) => column[at]!)] as const;
      }),
    );
  return {
    ...measure,
    verdict: verdictOf(value, band, limit),
    ...band,
    ...(limit !== undefined && band !== undefined ? { chance: chanceInside(limit, values) } : {}),
    drivers:
      band === undefined
        ? []
        : driversOf(presentInputs(), values).map(({ path, share }) => ({
            path,
            share,
            label: inputs.find((input) => input.path === path)?.label ?? path,
          })),
    tried: [],
  };
}
