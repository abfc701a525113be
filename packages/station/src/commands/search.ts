// stillair search FILE --want …: the best variant of what the file leaves free, why it is the best, and what more would cost.

import {
  comesToText,
  editText,
  frontPicture,
  type ReadSource,
  type SearchProgress,
  type SearchStudy,
  type SearchVariant,
  searchRunner,
  search as searchVariants,
  type UnitSystem,
  type Want,
  withFree,
} from '@stillair/engine';
import type { ExitCode, Io } from '../io.ts';
import { loadCabinet, readSource } from '../load-cabinet.ts';
import { longStudy } from '../long-study.ts';
import { searchText } from '../search-text.ts';
import { openTasks } from '../workers.ts';
import { printsTwice, writeOut } from '../write-out.ts';

export interface SearchOptions {
  readonly want: readonly Want[];
  readonly free?: readonly string[];
  readonly most: number;
  readonly seed: number;
  readonly write?: string | true;
  readonly svg?: string;
  readonly json?: boolean;
  readonly units: UnitSystem;
  readonly samples: number;
  readonly workers?: number;
}

export async function search(file: string, options: SearchOptions, io: Io): Promise<ExitCode> {
  if (printsTwice('search', options, io)) return 2;
  const loaded = await loadCabinet(file, 'search', io);
  if (loaded === undefined) return 2;
  const source = freed(loaded, options.free ?? [], io);
  if (source === undefined) return 2;
  const wants = [...new Set(options.want)];
  const evaluator = openTasks({ runs: 'search', source }, searchRunner(source), {
    workers: options.workers,
    stop: io.stop,
  });
  const study = await longStudy(evaluator, 'searching', io, ({ progress, ...hooks }) =>
    searchVariants(source, {
      ...hooks,
      wants,
      most: options.most,
      seed: options.seed,
      samples: options.samples,
      progress: (done, all, best) => progress(done, all, best === undefined ? '' : bestText(best, source, options)),
    }),
  );
  if (study.choices.length === 0) {
    io.err('stillair search: nothing is free to change; say what may change under search: or with --free PATH=VALUES');
    return 2;
  }
  const { title } = source.cabinet;
  if (options.json === true) io.out(JSON.stringify({ ...study, file, cabinet: title }, null, 2));
  else io.out(searchText(title, study, Object.keys(source.cabinet.days).length, options.units, io));
  const failed = (await draw(study, title, options, io)) ?? (await write(loaded, study, options, io));
  if (failed !== undefined) return failed;
  if (study.stopped) io.err(`Stopped: ${study.ran} variants were run; this is the best of them.`);
  return io.stop.aborted ? 130 : exitOf(study);
}

/** The file with what the command line frees, or undefined after complaints. */
function freed(source: ReadSource, words: readonly string[], io: Io): ReadSource | undefined {
  if (words.length === 0) return source;
  const answer = withFree(source.text, words);
  if ('text' in answer) return readSource(source.file, answer.text, io);
  io.err(`stillair search: --free: ${answer.problem}`);
  return undefined;
}

/** 0 when the winner keeps every limit, surely; 1 when it breaks one, be it one that no variant keeps; 3 when it is not sure. */
function exitOf({ winner, keepsAll, givenUp }: SearchStudy): ExitCode {
  if (winner === undefined || !keepsAll || givenUp.length > 0) return 1;
  return (winner.unsure ?? []).length > 0 ? 3 : 0;
}

function bestText(
  { keepsAll, comesTo, front }: SearchProgress,
  { cabinet }: ReadSource,
  options: SearchOptions,
): string {
  const numbers = options.want
    .map((want) => comesToText(want, comesTo[want], cabinet.currency, options.units))
    .join(', ');
  const of = options.want.length > 1 ? `, front of ${front}` : '';
  return `; best so far ${numbers}${of}${keepsAll ? '' : ', breaks a limit'}`;
}

async function draw(
  study: SearchStudy,
  title: string,
  { svg, units }: SearchOptions,
  io: Io,
): Promise<ExitCode | undefined> {
  if (svg === undefined) return undefined;
  const how = await writeOut('search', svg, frontPicture(study, title, units), io);
  if (how === 'written') io.err(`wrote ${svg}`);
  return how === undefined ? 2 : undefined;
}

/** Adds the winner to the file as an option; all else in the file stays as it was. */
async function write(
  { file, text, cabinet }: ReadSource,
  { winner, wants }: SearchStudy,
  options: SearchOptions,
  io: Io,
): Promise<ExitCode | undefined> {
  if (options.write === undefined) return undefined;
  if (winner === undefined || winner.edits.length === 0) {
    io.err('Nothing was written: the cabinet as it stands is the best that was found.');
    return undefined;
  }
  const id = freeId(options.write === true ? `found-${wants.join('-')}` : options.write, Object.keys(cabinet.options));
  const option = { title: titleOf(winner, wants), edits: winner.edits };
  let edited: string;
  try {
    edited = editText(text, [{ add: { [`options.${id}`]: option } }]);
  } catch {
    io.err(`stillair search: "${id}" cannot be the id of an option: letters, digits, spaces and hyphens can`);
    return 2;
  }
  const problem = await io.write(file, edited, 'whole');
  io.err(
    problem === undefined ? `wrote option ${id} into ${file}` : `stillair search: cannot write ${file}: ${problem}`,
  );
  return problem === undefined ? undefined : 2;
}

function titleOf({ changes }: SearchVariant, wants: readonly Want[]): string {
  return `found by a search for ${wants.join(' and ')}: ${changes.length} change${changes.length === 1 ? '' : 's'}`;
}

function freeId(wanted: string, taken: readonly string[]): string {
  if (!taken.includes(wanted)) return wanted;
  let number = 2;
  while (taken.includes(`${wanted}-${number}`)) number += 1;
  return `${wanted}-${number}`;
}
