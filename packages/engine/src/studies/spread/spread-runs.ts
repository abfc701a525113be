// The cabinet as it stands and its options, each with its own uncertain inputs, run on common samples.

import { type AssumedInput, assumedInputs } from '../../cabinet/assumed-inputs.ts';
import type { Edit } from '../../cabinet/cabinet.ts';
import { readCabinet } from '../../cabinet/read-cabinet.ts';
import { keeps } from '../../judge/bands.ts';
import type { ReadSource } from '../../judge/judge.ts';
import { type DayMeasure, measureDay, measureStanding, runDay } from '../../judge/pipeline.ts';
import { valueAt } from '../../judge/samples.ts';
import type { Outcome, Variant } from '../../judge/variants.ts';
import type { Trade } from '../../trades/measure.ts';
import { AS_IT_STANDS } from '../compare.ts';

export interface SpreadCandidate {
  readonly id: string;
  readonly title: string;
  readonly edits: readonly Edit[];
  /** Why it cannot be run. */
  readonly fault?: string;
  readonly inputs: readonly AssumedInput[];
  /** Those that are asked for and that it has. */
  readonly days: readonly string[];
  /** With the nominal inputs. */
  readonly measures: ReadonlyMap<string, DayMeasure>;
}

/** A candidate with what came of each sample; undefined where it did not run, or could not. */
export interface SpreadRun extends SpreadCandidate {
  readonly outcomes: readonly (Outcome | undefined)[];
}

/** The cabinet as it stands first, then the options that are asked for. */
export function candidatesOf(
  { file, text, cabinet, origins }: ReadSource,
  options: readonly string[],
  days: readonly string[],
  trades: readonly Trade[] | undefined,
): SpreadCandidate[] {
  const measured = (of: typeof cabinet): Pick<SpreadCandidate, 'days' | 'measures'> => {
    const own = days.filter((day) => of.days[day] !== undefined);
    const measures = [measureStanding(of, trades), ...own.map((day) => measureDay(runDay(of, day), trades))];
    return { days: own, measures: new Map(measures.flatMap((each) => [...each])) };
  };
  const base = {
    id: AS_IT_STANDS,
    title: 'the cabinet as it stands',
    edits: [],
    inputs: assumedInputs(origins),
    ...measured(cabinet),
  };
  return [
    base,
    ...options.map((id): SpreadCandidate => {
      const { title, edits } = cabinet.options[id]!;
      const answer = readCabinet(file, text, edits);
      const named = { id, title, edits };
      if (!answer.ok) {
        const fault = answer.complaints[0]?.what ?? 'its edits cannot be done';
        return { ...named, fault, inputs: [], days: [], measures: new Map() };
      }
      return { ...named, inputs: assumedInputs(answer.origins), ...measured(answer.cabinet) };
    }),
  ];
}

/** Paths of all uncertain inputs: those of the cabinet as it stands first, then what options bring with them. */
export function pathsOf(candidates: readonly SpreadCandidate[]): string[] {
  return [...new Set(candidates.flatMap(({ inputs }) => inputs.map(({ path }) => path)))];
}

/** One sample of a candidate: where it lies in the distribution of each of its own inputs. */
export function variantAt({ edits, inputs, days }: SpreadCandidate, shareOf: (path: string) => number): Variant {
  return {
    edits,
    inputs: Object.fromEntries(inputs.map(({ path, spread }) => [path, valueAt(spread, shareOf(path))])),
    days,
  };
}

/** Value of a finding in each sample. */
export function valuesIn({ outcomes }: SpreadRun, id: string): (number | undefined)[] {
  return outcomes.map((outcome) => outcome?.values[id]);
}

/** Whether the limit of a finding is kept, in each sample; undefined where there is none. */
export function keptIn({ outcomes, measures }: SpreadRun, id: string): (boolean | undefined)[] {
  const limit = measures.get(id)?.limit;
  return outcomes.map((outcome) => {
    const value = outcome?.values[id];
    if (limit === undefined || value === undefined) return undefined;
    return keeps({ ...limit, value: outcome!.limits[id] ?? limit.value }, value);
  });
}

/** How many limits are broken, in each sample. */
export function brokenIn(run: SpreadRun): (number | undefined)[] {
  const limited = [...run.measures.values()].filter(({ limit }) => limit !== undefined);
  const kept = limited.map(({ id }) => keptIn(run, id));
  return run.outcomes.map((outcome, at) =>
    outcome === undefined ? undefined : kept.filter((each) => each[at] === false).length,
  );
}
