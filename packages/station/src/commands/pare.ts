// stillair pare FILE: which parts no finding would miss.

import { type Miss, type Paring, pare as pareParts, savesText, type UnitSystem } from '@stillair/engine';
import { aboutText, quantity } from '../finding-text.ts';
import { inkFor } from '../ink.ts';
import type { ExitCode, Io } from '../io.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { longStudy } from '../long-study.ts';
import { table } from '../table.ts';
import { hanging } from '../text.ts';
import { verdictWords } from '../verdict-words.ts';
import { withOption } from '../with-option.ts';
import { openEvaluator } from '../workers.ts';

export interface PareOptions {
  readonly option?: string;
  readonly json?: boolean;
  readonly units: UnitSystem;
  readonly samples: number;
  readonly workers?: number;
}

export async function pare(file: string, options: PareOptions, io: Io): Promise<ExitCode> {
  const loaded = await loadCabinet(file, 'pare', io);
  if (loaded === undefined) return 2;
  const source = withOption(loaded, options.option);
  if (typeof source === 'string') {
    io.err(`stillair pare: ${source}`);
    return 2;
  }
  const evaluator = openEvaluator(source, { workers: options.workers, stop: io.stop });
  const paring = await longStudy(evaluator, 'taking parts out', io, (hooks) =>
    pareParts(source, { ...hooks, samples: options.samples }),
  );
  const { title } = source.cabinet;
  if (options.json)
    io.out(
      JSON.stringify(
        { ...paring, file, cabinet: title, ...(options.option === undefined ? {} : { option: options.option }) },
        null,
        2,
      ),
    );
  else io.out(inWords(title, paring, Object.keys(source.cabinet.days).length, options, io));
  if (paring.stopped) io.err('Stopped: parts that were not taken out are missing, and so are bands.');
  return io.stop.aborted ? 130 : 0;
}

function inWords(title: string, paring: Paring, days: number, { units }: PareOptions, io: Io): string {
  const ink = inkFor(io);
  const { parts, together, unknown, currency } = paring;
  const ran = parts.filter(({ fault, notRun }) => fault === undefined && notRun !== true);
  const idle = ran.filter(({ misses }) => misses.length === 0);
  const called = (id: string): string => parts.find((part) => part.id === id)!.says;
  const opening = `Of ${ran.length} parts that were taken out, each alone, no finding misses ${idle.length}.${
    together.length > 1 ? ` These can go together: ${together.map(called).join('; ')}.` : ''
  }`;
  const caution = `A part that no finding misses may still be there for a fault (stillair faults), for a day that the file does not have, or for what no trade asks.${
    unknown > 0 ? ` ${unknown} finding${unknown === 1 ? '' : 's'} cannot be told and can miss nothing.` : ''
  } Protection is never taken out.`;
  const columns = [
    { head: 'part', least: 20 },
    { head: `saves ${currency}`, least: 9 },
    { head: 'what misses it', least: 30 },
  ] as const;
  const sorted = [...ran].sort((a, b) => Math.min(a.misses.length, 1) - Math.min(b.misses.length, 1));
  const rows = sorted.map((row) => [
    row.says,
    savesText(row),
    row.misses.length === 0 ? 'no finding' : missText(row.misses, days, units),
  ]);
  return [
    `${ink.strong(title)}\n${hanging('', opening, io.columns)}\n${hanging('', caution, io.columns)}`,
    rows.length === 0 ? '' : table(columns, rows, io.columns),
    ...parts
      .filter(({ fault }) => fault !== undefined)
      .map(({ says, fault }) => hanging('', `Cannot be taken out alone: ${says}: ${fault}`, io.columns)),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

function missText(misses: readonly Miss[], days: number, units: UnitSystem): string {
  const [worst] = misses as [Miss, ...Miss[]];
  const { title, unit, before, value, was, verdict } = worst;
  const told = (number: number | undefined): string =>
    number === undefined ? 'unknown' : quantity(unit, number, units);
  const words =
    was === verdict ? `${verdictWords[verdict]} the more` : `${verdictWords[was]}, then ${verdictWords[verdict]}`;
  const more = misses.length > 1 ? `; and ${misses.length - 1} more` : '';
  return `${title}, ${aboutText(worst, days)}: ${told(before)}, then ${told(value)} (${words})${more}`;
}
