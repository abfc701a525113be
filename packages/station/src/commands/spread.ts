// stillair spread FILE: how sure everything is, and which measurement would make it surer.

import { type SpreadStudy, spreadPicture, spread as studySpread, type UnitSystem } from '@stillair/engine';
import { inkFor } from '../ink.ts';
import type { ExitCode, Io } from '../io.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { longStudy } from '../long-study.ts';
import { unknownName } from '../unknown-name.ts';
import { exitCodeOf } from '../verdict-words.ts';
import { openEvaluator } from '../workers.ts';
import { printsTwice, writeOut } from '../write-out.ts';
import { spreadText } from './spread-text.ts';

export interface SpreadOptions {
  readonly day?: string;
  readonly option?: string;
  readonly seed: number;
  readonly shares: number;
  readonly svg?: string;
  readonly json?: boolean;
  readonly units: UnitSystem;
  readonly samples: number;
  readonly workers?: number;
}

export async function spread(file: string, options: SpreadOptions, io: Io): Promise<ExitCode> {
  if (printsTwice('spread', options, io)) return 2;
  const source = await loadCabinet(file, 'spread', io);
  if (source === undefined) return 2;
  const { cabinet } = source;
  const { day, option, samples, seed, shares } = options;
  const fault =
    notThere('day', day, Object.keys(cabinet.days)) ?? notThere('option', option, Object.keys(cabinet.options));
  if (fault !== undefined) {
    io.err(`stillair spread: ${fault}`);
    return 2;
  }
  const evaluator = openEvaluator(source, { workers: options.workers, stop: io.stop });
  const study = await longStudy(evaluator, 'varying inputs', io, (hooks) =>
    studySpread(source, {
      ...hooks,
      ...(day === undefined ? {} : { days: [day] }),
      ...(option === undefined ? {} : { options: [option] }),
      samples,
      seed,
      shares,
    }),
  );
  if (options.svg !== undefined) {
    const how = await writeOut('spread', options.svg, spreadPicture(study, cabinet.title, options.units), io);
    if (how === undefined) return 2;
    if (how === 'written') io.err(`wrote ${options.svg}`);
  }
  if (options.json) io.out(JSON.stringify({ ...study, file, cabinet: cabinet.title }, null, 2));
  else if (options.svg !== '-')
    io.out(spreadText(cabinet.title, study, { units: options.units, width: io.columns, ink: inkFor(io) }));
  tellRun(study, io);
  return io.stop.aborted ? 130 : exitCodeOf(study.findings);
}

function notThere(what: string, name: string | undefined, known: readonly string[]): string | undefined {
  if (name === undefined || known.includes(name)) return undefined;
  return known.length === 0 ? `there is no ${what} "${name}"; the file has none` : unknownName(what, name, known);
}

function tellRun({ stopped, samples: { asked, ran, faults } }: SpreadStudy, io: Io): void {
  if (stopped) io.err(`Stopped: ${ran} of ${asked} samples ran; everything is told from these.`);
  else if (ran < asked) io.err(`${asked - ran} of ${asked} samples could not be run: ${faults.join('; ')}`);
}
