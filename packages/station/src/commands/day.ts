// stillair day FILE: the day hour by hour as a table, or as CSV, JSON, a picture, or the network behind it.

import {
  type DayRun,
  type DayTable,
  dayPicture,
  dayTable,
  formatClock,
  parseClock,
  recordCsv,
  runDay,
  shownUnitName,
  type UnitSystem,
  writeNetwork,
} from '@stillair/engine';
import { quantity, withoutUnit } from '../finding-text.ts';
import { inkFor } from '../ink.ts';
import type { ExitCode, Io } from '../io.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { type Column, table } from '../table.ts';
import { textWidth } from '../text.ts';
import { unknownName } from '../unknown-name.ts';
import { printsTwice, tellWritten, writeOut } from '../write-out.ts';

export interface DayOptions {
  readonly day?: string;
  readonly at?: string;
  readonly csv?: string;
  readonly json?: boolean;
  readonly svg?: string;
  readonly network?: boolean;
  readonly units: UnitSystem;
}

export async function day(file: string, options: DayOptions, io: Io): Promise<ExitCode> {
  const time = options.at === undefined ? undefined : parseClock(options.at);
  if (time !== undefined && typeof time !== 'number') {
    io.err(`stillair day: --at: ${time.what}; ${time.mend}`);
    return 2;
  }
  if (printsTwice('day', options, io)) return 2;
  const source = await loadCabinet(file, 'day', io);
  if (source === undefined) return 2;
  const { cabinet } = source;
  const days = Object.keys(cabinet.days);
  const id = options.day ?? days[0]!;
  if (!days.includes(id)) {
    io.err(`stillair day: ${unknownName('day', id, days)}`);
    return 2;
  }
  const length = cabinet.days[id]!.length;
  if (time !== undefined && time > length) {
    io.err(`stillair day: --at: ${options.at} is after the end of the day "${id}", ${formatClock(length)}`);
    return 2;
  }
  const run = runDay(cabinet, id);
  return print(run, time === undefined ? undefined : [time], options, io);
}

async function print(
  run: DayRun,
  times: readonly number[] | undefined,
  options: DayOptions,
  io: Io,
): Promise<ExitCode> {
  const files: (readonly [string, string])[] = [
    ...(options.csv === undefined ? [] : [[options.csv, recordCsv(run.record)] as const]),
    ...(options.svg === undefined ? [] : [[options.svg, dayPicture(run, { units: options.units })] as const]),
  ];
  for (const [path, text] of files) {
    const how = await writeOut('day', path, text, io);
    if (how === undefined) return 2;
    if (how === 'written') tellWritten(path, options, io);
  }
  if (options.network) io.out(writeNetwork(run.assembly.network).trimEnd());
  if (options.json) io.out(JSON.stringify(dayTable(run, times), null, 2));
  if (files.length === 0 && !options.network && !options.json)
    io.out(hours(run, dayTable(run, times), options.units, io));
  return 0;
}

function hours(run: DayRun, { columns, rows }: DayTable, units: UnitSystem, io: Io): string {
  const { title } = run.cabinet.days[run.day]!;
  const shown = columns.map(({ kind }, at) =>
    shownUnitName(kind, Math.max(...rows.map(({ values }) => values[at]!)), units),
  );
  const clocks = rows.map(({ time }) => formatClock(time));
  const numbers = columns.map(({ label, kind }, at): Told => {
    const cells = rows.map(({ values }) => withoutUnit(quantity(kind, values[at]!, units), shown[at]!));
    const head = `${label}\n${shown[at]}`;
    // Numbers stay whole, and so do the words above them.
    const least = Math.max(...[...cells, ...head.split(/\s/)].map(textWidth));
    return { column: { head, align: 'right', least }, cells };
  });
  const events: Told = {
    column: { head: 'what happens', least: LEAST_EVENTS },
    cells: rows.map(({ happens }) => happens.join('; ')),
  };
  const told = [...numbers, ...(events.cells.some((cell) => cell !== '') ? [events] : [])];
  const clock = Math.max(...clocks.map(textWidth));
  const tables = inBlocks(told, io.columns - clock).map((block) =>
    table(
      [{ head: 'time', align: 'right', least: clock }, ...block.map(({ column }) => column)],
      clocks.map((time, row) => [time, ...block.map(({ cells }) => cells[row]!)]),
      io.columns,
    ),
  );
  const notes = [...new Set(run.record.warnings.map(({ message }) => message))];
  const ink = inkFor(io);
  const head = `${ink.strong(run.cabinet.title)}\n${title}`;
  return [head, ...tables, ...notes.map((message) => `note: ${message}`)].join('\n\n');
}

interface Told {
  readonly column: Column & { readonly least: number };
  readonly cells: readonly string[];
}

/** Width in which an event can be read. */
const LEAST_EVENTS = 12;
const GAP = 2;

/** As many columns beside each other as fit; the rest in further tables beneath. */
function inBlocks(columns: readonly Told[], room: number): Told[][] {
  const blocks: Told[][] = [];
  let left = 0;
  for (const told of columns) {
    const needed = GAP + told.column.least;
    if (blocks.length === 0 || needed > left) {
      blocks.push([]);
      left = room;
    }
    blocks.at(-1)!.push(told);
    left -= needed;
  }
  return blocks;
}
