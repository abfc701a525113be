// How surely a variant keeps its limits: run again with every uncertain input varied, on the same samples as all others.

import { assumedInputs } from '../../cabinet/assumed-inputs.ts';
import type { Edit } from '../../cabinet/cabinet.ts';
import { readCabinet } from '../../cabinet/read-cabinet.ts';
import type { ReadSource } from '../../judge/judge.ts';
import { sampleInputs, sampleVariants } from '../../judge/sample-variants.ts';
import type { EvaluateSearch, SearchOutcome, SearchTask } from './run-search.ts';
import type { SearchVariant } from './search-study.ts';
import type { NamedLimit } from './why.ts';

const SURE = 0.9;

interface Asked {
  readonly samples: number;
  readonly seed: number;
  readonly run: (tasks: readonly SearchTask[], count: boolean) => ReturnType<EvaluateSearch>;
  /** Limits that no variant keeps: they are left out of the chance. */
  readonly given: ReadonlySet<string>;
  readonly named: (id: string) => NamedLimit;
}

export async function chanceOf(
  { file, text }: ReadSource,
  edits: readonly Edit[],
  { samples, seed, run, given, named }: Asked,
): Promise<Pick<SearchVariant, 'chance' | 'unsure'>> {
  const answer = readCabinet(file, text, edits);
  if (!answer.ok) return {};
  const columns = sampleInputs(assumedInputs(answer.origins), samples, seed);
  const outcomes = (await run(sampleVariants(edits, columns, samples), false)).filter(
    (outcome): outcome is SearchOutcome => outcome !== undefined && outcome.fault === undefined,
  );
  if (outcomes.length === 0) return {};
  const counted = (outcome: SearchOutcome): string[] => Object.keys(outcome.broken).filter((id) => !given.has(id));
  const times = new Map<string, number>();
  for (const id of outcomes.flatMap(counted)) times.set(id, (times.get(id) ?? 0) + 1);
  const unsure = [...times]
    .map(([id, count]) => ({ ...named(id), chance: 1 - count / outcomes.length }))
    .filter(({ chance }) => chance < SURE)
    .sort((a, b) => a.chance - b.chance);
  const keeping = outcomes.filter((outcome) => counted(outcome).length === 0).length;
  return { chance: keeping / outcomes.length, unsure };
}
