// A log from its text: which column is the time, what the others measure and where, all of it tidied, and all that was done told.

import { formatDate } from '../units/calendar.ts';
import { type CsvRow, hasDecimalComma, numberOf, readCsv } from './csv.ts';
import type { Log, LogColumn, LogFault, LogRemark } from './log.ts';
import { type LogUnit, splitHeader, unitGuessed, unitNamed } from './log-unit.ts';
import { knownPlaces, type Place, type Places, placeOf, wordsOf } from './places.ts';
import { orderOf, type Stamp, stampOf } from './stamp.ts';
import { withoutStuck } from './stuck.ts';
import { gapsIn, inOrder, type RawReading, tidied } from './tidy.ts';

export interface LogOptions {
  /** Place of a column by its header (with or without its unit): a sensor, bay or machine, `room`, `outdoors`, `cabinet`. */
  readonly columns?: Readonly<Record<string, string>>;
  /** Added to every time, s: for a log on another clock than the days of the file. */
  readonly shift?: number;
}

const DAY = 86_400;
/** Rows looked at to tell what a column is. */
const LOOK = 200;

export function readLog(file: string, text: string, places: Places, options: LogOptions = {}): Log | LogFault {
  const { header, rows } = readCsv(text);
  if (header === undefined)
    return {
      fault: `${file} has no header line`,
      mend: 'name its columns in the first line: time, top (°C), room (°C)',
    };
  if (rows.length === 0) return { fault: `${file} has no rows`, mend: 'write at least one row below the header' };
  const remarks: LogRemark[] = [];
  const width = header.cells.length;
  const short = rows.filter(({ cells }) => cells.length !== width);
  if (short.length > 0)
    remarks.push({
      code: 'row-length',
      what: `rows with another number of values than the header's ${width}`,
      done: 'missing values count as none, further ones are left out',
      line: short[0]!.line,
      count: short.length,
    });
  const timed = timesOf(header, rows, remarks, options.shift ?? 0);
  if ('fault' in timed) return timed;
  const asked = new Set(Object.keys(options.columns ?? {}));
  const series = longForm(header) ? fromLongForm(header, timed, remarks) : fromColumns(header, timed);
  const found: LogColumn[] = [];
  for (const { title, name, unit, strange, cells } of series) {
    const given = options.columns?.[title] ?? options.columns?.[name];
    asked.delete(title);
    asked.delete(name);
    const column = columnOf(name, unit, strange, cells, given, places, remarks);
    if (column !== undefined) found.push(column);
  }
  if (asked.size > 0)
    return {
      fault: `there is no column ${[...asked].map((each) => `"${each}"`).join(', ')} in ${file}`,
      mend: `its columns are ${series.map(({ name }) => `"${name}"`).join(', ')}`,
    };
  const { columns, remarks: stuck } = withoutStuck(found.filter(({ readings }) => readings.length > 0));
  const gaps = columns.flatMap(({ readings, name }) => gapsIn(readings, name));
  if (columns.length === 0)
    return {
      fault: `no column of ${file} could be placed in the cabinet`,
      mend: 'give columns the names of sensors or bays of the file, or say so: --column "Temp 1=top"',
    };
  return {
    version: 1,
    file,
    ...(timed.firstDay === undefined ? {} : { firstDay: formatDate(timed.firstDay) }),
    columns,
    remarks: [...remarks, ...stuck, ...gaps],
  };
}

interface TimedRow {
  readonly time: number;
  readonly row: CsvRow;
}

interface Timed {
  readonly rows: readonly TimedRow[];
  readonly columns: ReadonlySet<number>;
  readonly firstDay: number | undefined;
}

function timesOf(header: CsvRow, rows: readonly CsvRow[], remarks: LogRemark[], shift: number): Timed | LogFault {
  const look = rows.slice(0, LOOK);
  const share = (at: number): number =>
    look.filter(({ cells }) => stampOf(cells[at] ?? '', 'day first') ?? stampOf(cells[at] ?? '', 'month first'))
      .length / look.length;
  const candidates = header.cells.map((_, at) => at).filter((at) => share(at) > 0.5);
  const [first, second] = candidates;
  if (first === undefined)
    return { fault: 'no column has times', mend: 'a time is written as 2026-11-20 14:05, 20.11.2026 14:05 or 14:05' };
  // A date and a time of day in columns of their own.
  const apart =
    second !== undefined && second === first + 1 && look.every(({ cells }) => !/:/.test(cells[first] ?? ''));
  const columns = new Set(apart ? [first, second] : [first]);
  const textOf = ({ cells }: CsvRow): string => [...columns].map((at) => cells[at] ?? '').join(' ');
  const order = orderOf(rows.map(textOf));
  if (order === undefined)
    remarks.push({
      code: 'date-order',
      what: 'dates fit day/month and month/day alike',
      done: 'the day was taken to come first',
    });
  const stamps = rows.map((row) => ({ row, stamp: stampOf(textOf(row), order) }));
  const read = stamps.filter((each): each is { row: CsvRow; stamp: Stamp } => each.stamp !== undefined);
  if (read.length < stamps.length)
    remarks.push({
      code: 'time-wrong',
      what: 'rows without a time that can be read',
      done: 'left out',
      line: stamps.find(({ stamp }) => stamp === undefined)!.row.line,
      count: stamps.length - read.length,
    });
  const offset = read[0]!.stamp.offset;
  if (offset !== undefined)
    remarks.push({
      code: 'clock-zone',
      what: `times say their distance from UTC (${offset === 0 ? 'UTC itself' : `${offset / 3600} h`})`,
      done: `the clock of the first row was kept for all of them${shift === 0 ? '; --shift moves it to the clock on your wall' : ' and shifted as asked'}`,
    });
  const firstDay = read[0]!.stamp.day === undefined ? undefined : Math.min(...read.map(({ stamp }) => stamp.day ?? 0));
  let turns = 0;
  let before = 0;
  const timedRows = read.map(({ row, stamp }) => {
    // Times of day alone that fall by half a day have gone past midnight.
    if (stamp.day === undefined && before - stamp.seconds > DAY / 2) turns += 1;
    before = stamp.seconds;
    const zone = offset === undefined || stamp.offset === undefined ? 0 : offset - stamp.offset;
    const days = stamp.day === undefined ? turns : stamp.day - firstDay!;
    return { row, time: days * DAY + stamp.seconds + zone + shift };
  });
  return { rows: timedRows, columns, firstDay };
}

interface Series {
  readonly title: string;
  readonly name: string;
  readonly unit: LogUnit | undefined;
  /** What stood where a unit should, and is none. */
  readonly strange?: string | undefined;
  readonly cells: readonly { readonly time: number; readonly text: string; readonly line: number }[];
}

function fromColumns(header: CsvRow, { rows, columns }: Timed): Series[] {
  return header.cells.flatMap((title, at) => {
    if (columns.has(at) || title === '') return [];
    const { name, unit, strange } = splitHeader(title);
    return [
      {
        title,
        name,
        unit,
        strange,
        cells: rows.map(({ time, row }) => ({ time, text: row.cells[at] ?? '', line: row.line })),
      },
    ];
  });
}

const PLACE = new Set(['place', 'where', 'sensor', 'at']);
const VALUE = new Set(['value', 'reading']);

/** One reading a row: time, place, value. */
function longForm({ cells }: CsvRow): boolean {
  const words = cells.map((cell) => wordsOf(splitHeader(cell).name));
  return (
    words.some(([word, more]) => more === undefined && PLACE.has(word ?? '')) &&
    words.some(([word]) => VALUE.has(word ?? ''))
  );
}

function fromLongForm(header: CsvRow, { rows }: Timed, remarks: LogRemark[]): Series[] {
  const heads = header.cells.map((cell) => ({ ...splitHeader(cell), word: wordsOf(splitHeader(cell).name)[0] ?? '' }));
  const placeAt = heads.findIndex(({ word }) => PLACE.has(word));
  const valueAt = heads.findIndex(({ word }) => VALUE.has(word));
  const unitAt = heads.findIndex(({ word }) => word === 'unit');
  const series = new Map<string, { name: string; unit: LogUnit | undefined; cells: Series['cells'][number][] }>();
  const bare: number[] = [];
  for (const { time, row } of rows) {
    const name = row.cells[placeAt] ?? '';
    const match = /^([-+−]?[\d.,]+)\s*(.*)$/.exec(row.cells[valueAt] ?? '');
    const written = match?.[2] === '' || match === null ? (row.cells[unitAt] ?? '') : match[2]!;
    const unit = unitNamed(written) ?? heads[valueAt]!.unit;
    if (unit === undefined) bare.push(row.line);
    const key = `${name}|${unit?.text ?? ''}`;
    const one = series.get(key) ?? { name, unit, cells: [] };
    one.cells.push({ time, text: match?.[1] ?? row.cells[valueAt] ?? '', line: row.line });
    series.set(key, one);
  }
  if (bare.length > 0)
    remarks.push({
      code: 'unit-missing',
      what: 'values without a unit',
      done: 'taken as °C',
      line: bare[0]!,
      count: bare.length,
    });
  return [...series.values()].map((one) => ({ ...one, title: one.name }));
}

function columnOf(
  name: string,
  written: LogUnit | undefined,
  strange: string | undefined,
  cells: Series['cells'],
  given: string | undefined,
  places: Places,
  remarks: LogRemark[],
): LogColumn | undefined {
  if (strange !== undefined && strange !== '' && given === undefined) {
    remarks.push({
      code: 'unit-unknown',
      what: `"${strange}" is no unit of a temperature, humidity, power or concentration`,
      done: 'the column is not used',
      column: name,
    });
    return undefined;
  }
  const unit = written ?? unitGuessed(name);
  const place: Place | undefined = placeOf(given ?? name, unit.kind, places) ?? carriedBy(given, name, unit, places);
  if (place === undefined) {
    remarks.push({
      code: 'not-placed',
      what: `its name fits no place of the cabinet (${knownPlaces(places, unit.kind).join(', ')})`,
      done: `not used; --column "${name}=..." says where it hangs`,
      column: name,
    });
    return undefined;
  }
  if (written === undefined)
    remarks.push({ code: 'unit-missing', what: 'its header has no unit', done: `taken as ${unit.text}`, column: name });
  const comma = hasDecimalComma(cells.map(({ text }) => text));
  const raw: RawReading[] = [];
  const unread: Series['cells'][number][] = [];
  for (const cell of cells) {
    const value = numberOf(cell.text, comma);
    if (value === undefined) unread.push(cell);
    else raw.push({ time: cell.time, written: value, line: cell.line });
  }
  if (unread.length > 0)
    remarks.push({
      code: 'no-number',
      what: unread.every(({ text }) => text === '')
        ? 'empty cells'
        : `"${unread.find(({ text }) => text !== '')!.text}" is no number`,
      done: 'left out',
      line: unread[0]!.line,
      count: unread.length,
      column: name,
    });
  const ordered = inOrder(raw, name);
  const tidy = tidied(ordered.raw, unit, name, written !== undefined);
  remarks.push(...ordered.remarks, ...tidy.remarks);
  return { name, kind: unit.kind, place, readings: tidy.readings };
}

/** `--column "PM2.5 left=upper"`: the place is given, what the air carries is in the name. */
function carriedBy(given: string | undefined, name: string, unit: LogUnit, places: Places): Place | undefined {
  return given === undefined ? undefined : placeOf(`${given} ${name}`, unit.kind, places);
}
