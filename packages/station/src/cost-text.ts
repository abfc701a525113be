// What parts and months cost, laid out for a terminal and as lines of data.

import {
  type CostRow,
  csvCell,
  formatClock,
  formatDate,
  formatDay,
  formatDuration,
  formatMoment,
  formatQuantity,
  type MonthCost,
  type PartCost,
  type PartCosts,
  type QueueCosts,
  type QueuePart,
  type UnitSystem,
} from '@stillair/engine';
import { inkFor } from './ink.ts';
import type { Io } from './io.ts';
import { table } from './table.ts';
import { hanging } from './text.ts';

const DAY = 86_400;
const CAUTION =
  'Prices of the catalogue are invented, typical, and never a quote; each print that fails is taken to fail at its end.';

export function partsText(title: string, costs: PartCosts, units: UnitSystem, io: Io): string {
  const ink = inkFor(io);
  const { parts, currency } = costs;
  const [only] = parts;
  const body =
    parts.length === 1 && only !== undefined
      ? onePart(only, currency, units, io)
      : parts.length === 0
        ? hanging('', 'No job has a filament with a price: give prices: for its material, for a kilogram.', io.columns)
        : manyParts(parts, currency, units, io.columns);
  return [
    `${ink.strong(title)}\n${hanging('', CAUTION, io.columns)}`,
    body,
    ...costs.days.map(({ day, jobs, running }) =>
      hanging(
        '',
        `Running ${day} costs ${money(running)} without filament; its jobs bear ${money(jobs)} of it in electricity, wear and filters.`,
        io.columns,
      ),
    ),
    notes(costs.remarks, io.columns),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

function onePart(part: PartCost, currency: string, units: UnitSystem, io: Io): string {
  const { job, machine, material, day, duration, mass, rows, total, part: each, parts, hand, trade } = part;
  const head = `${job} on ${machine}, ${formatQuantity('mass', mass, units)} of ${material} in ${formatDuration(duration)}, on the day ${day}.`;
  const last = parts === 1 ? [total] : [total, { ...each, says: `one good part of ${parts}` }];
  const hands = `Hands take ${formatDuration(hand.value ?? 0)} for a good one${bandWords(hand, formatDuration)}.`;
  const held =
    Math.abs(trade.value - trade.sum) < 0.005
      ? `Without hands and the cabinet's share it is ${money(trade.sum)}, as the cost trade says (${trade.id}).`
      : `Without hands and the cabinet's share it is ${money(trade.sum)}; the cost trade says ${money(trade.value)} (${trade.id}).`;
  return [
    hanging('', head, io.columns),
    rowsTable(rows, last, currency, io.columns),
    hanging('', `${hands} ${held}`, io.columns),
    missingText(rows, io.columns),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

function manyParts(parts: readonly PartCost[], currency: string, units: UnitSystem, width: number): string {
  const columns = [
    { head: 'job', least: 12 },
    { head: 'day', least: 6 },
    { head: 'filament', align: 'right', least: 8 },
    { head: 'electricity', align: 'right', least: 11 },
    { head: 'the rest', align: 'right', least: 8 },
    { head: `one good job, ${currency}`, align: 'right', least: 14 },
  ] as const;
  const cells = parts.map((part) => {
    const [filament, electricity] = [sumOf(part, 'filament', 'waste'), sumOf(part, 'electricity', 'standby')];
    return [
      `${part.machine}.${part.job}, ${formatQuantity('mass', part.mass, units)} of ${part.material}`,
      part.day,
      money(filament),
      money(electricity),
      money((part.total.value ?? 0) - filament - electricity),
      `${money(part.total.value ?? 0)}${bandWords(part.total, money)}`,
    ];
  });
  return table(columns, cells, width);
}

function sumOf({ rows }: PartCost, ...ids: readonly string[]): number {
  return rows.filter(({ id }) => ids.includes(id)).reduce((sum, { value = 0 }) => sum + value, 0);
}

/** Each job of a planned week, all of them together, and a month of such weeks. */
export function queueText(title: string, costs: QueueCosts, units: UnitSystem, io: Io): string {
  const ink = inkFor(io);
  const { jobs, rows, total, eachJob, month, hand, running, currency, origin, from, until, remarks, unpriced } = costs;
  const head = `The week as planned, ${formatDay(origin + Math.floor(from / DAY))} to ${formatDay(origin + Math.floor((until - 1) / DAY))}, simulated whole: ${jobs.length === 1 ? '1 job' : `${jobs.length} jobs`}${unpriced.length === 0 ? '' : ` of ${jobs.length + unpriced.length}`}, each as one good job.`;
  return [
    `${ink.strong(title)}\n${hanging('', head, io.columns)}\n${hanging('', CAUTION, io.columns)}`,
    ...(jobs.length === 0 ? [] : [queueTable(jobs, origin, currency, units, io.columns)]),
    rowsTable(rows, [total, eachJob, month], currency, io.columns),
    hanging(
      '',
      `Running the week costs ${money(running.week)} without filament; its jobs bear ${money(running.jobs)} of it in electricity, wear and filters. A month is taken as 30.4 days like these.${hand.value === undefined ? '' : ` Hands take ${formatDuration(hand.value)}${bandWords(hand, formatDuration)}.`}`,
      io.columns,
    ),
    missingText(rows, io.columns),
    notes(remarks, io.columns),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

function queueTable(
  jobs: readonly QueuePart[],
  origin: number,
  currency: string,
  units: UnitSystem,
  width: number,
): string {
  const columns = [
    { head: 'job', least: 12 },
    { head: 'starts', least: 9 },
    { head: 'filament', align: 'right', least: 8 },
    { head: 'electricity', align: 'right', least: 11 },
    { head: 'the rest', align: 'right', least: 8 },
    { head: `one good job, ${currency}`, align: 'right', least: 14 },
  ] as const;
  const cells = jobs.map((part) => {
    const [filament, electricity] = [sumOf(part, 'filament', 'waste'), sumOf(part, 'electricity', 'standby')];
    return [
      `${part.machine}.${part.job}, ${formatQuantity('mass', part.mass, units)} of ${part.material}`,
      formatMoment(origin, part.start),
      money(filament),
      money(electricity),
      money((part.total.value ?? 0) - filament - electricity),
      `${money(part.total.value ?? 0)}${bandWords(part.total, money)}`,
    ];
  });
  return table(columns, cells, width);
}

export function monthText(title: string, cost: MonthCost, path: string, io: Io): string {
  const ink = inkFor(io);
  const { rows, total, goodJob, hand, kinds, currency, first, last, jobs, failed, printing } = cost;
  const head = `${first} to ${last} by ${path}: ${count(jobs)} jobs, of which ${count(failed)} failed, in ${formatDuration(printing)} of printing (${kinds
    .map(({ job, times }) => `${count(times)} ${job}`)
    .join(', ')}).`;
  return [
    `${ink.strong(title)}\n${hanging('', head, io.columns)}\n${hanging('', CAUTION, io.columns)}`,
    rowsTable(rows, [total, ...(goodJob === undefined ? [] : [goodJob])], currency, io.columns),
    hand.value === undefined
      ? ''
      : hanging('', `Hands took about ${formatDuration(hand.value)}${bandWords(hand, formatDuration)}.`, io.columns),
    missingText(rows, io.columns),
    notes(cost.remarks, io.columns),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

function rowsTable(rows: readonly CostRow[], last: readonly CostRow[], currency: string, width: number): string {
  const columns = [
    { head: 'what', least: 24 },
    { head: currency, align: 'right', least: 7 },
    { head: '10 to 90 %', align: 'right', least: 12 },
  ] as const;
  const cells = [...rows.filter(({ value }) => value !== undefined), ...last].map((row) => [
    row.says,
    row.value === undefined ? 'unknown' : money(row.value),
    bandWords(row, money).replaceAll(/[()]/g, '').trim(),
  ]);
  return table(columns, cells, width);
}

function missingText(rows: readonly CostRow[], width: number): string {
  return rows
    .filter(({ value }) => value === undefined)
    .map(({ says, missing = '' }) => hanging('', `Not counted: ${says} (${missing}).`, width))
    .join('\n');
}

function notes(remarks: readonly string[], width: number): string {
  return remarks.map((text) => hanging('note: ', text, width)).join('\n');
}

/** ` (0.9 to 1.4)`, empty without a band. */
function bandWords({ p10, p90 }: CostRow, say: (value: number) => string): string {
  if (p10 === undefined || p90 === undefined) return '';
  const [low, high] = [say(p10), say(p90)];
  return low === high ? '' : ` (${low} to ${high})`;
}

/** To the cent; small sums keep two digits that say something. */
function money(value: number): string {
  return value !== 0 && Math.abs(value) < 0.1 ? String(Number(value.toPrecision(2))) : value.toFixed(2);
}

function count(value: number): string {
  return String(Math.round(10 * value) / 10);
}

/** A line a row (RFC 4180): numbers as they are, in the money of the file. */
export function partsCsv({ parts, currency }: PartCosts): string {
  const head = [
    'job',
    'machine',
    'material',
    'day',
    'what',
    `value [${currency}]`,
    'p10',
    'p50',
    'p90',
    `a part [${currency}]`,
  ];
  const lines = parts.flatMap(({ job, machine, material, day, rows, total, parts: each }) =>
    [...rows, total].map(({ id, value, p10, p50, p90 }) => [
      job,
      machine,
      material,
      day,
      id,
      value,
      p10,
      p50,
      p90,
      value === undefined ? undefined : value / each,
    ]),
  );
  return csv([head, ...lines]);
}

/** Each job's rows, then those of the week, whose job is empty. */
export function queueCsv({ jobs, rows, total, eachJob, month, currency, origin }: QueueCosts): string {
  const head = ['job', 'machine', 'material', 'starts', 'what', `value [${currency}]`, 'p10', 'p50', 'p90'];
  const line = (about: readonly string[], { id, value, p10, p50, p90 }: CostRow) => [
    ...about,
    id,
    value,
    p10,
    p50,
    p90,
  ];
  const day = (time: number): string =>
    `${formatDate(origin + Math.floor(time / DAY))} ${formatClock(((time % DAY) + DAY) % DAY)}`;
  return csv([
    head,
    ...jobs.flatMap(({ job, machine, material, start, rows: own, total: sum }) =>
      [...own, sum].map((row) => line([job, machine, material, day(start)], row)),
    ),
    ...[...rows, total, eachJob, month].map((row) => line(['', '', '', ''], row)),
  ]);
}

export function monthCsv({ month, rows, total, currency }: MonthCost): string {
  const head = ['month', 'what', `value [${currency}]`, 'p10', 'p50', 'p90'];
  return csv([head, ...[...rows, total].map(({ id, value, p10, p50, p90 }) => [month, id, value, p10, p50, p90])]);
}

function csv(lines: readonly (readonly (string | number | undefined)[])[]): string {
  return lines.map((line) => `${line.map(field).join(',')}\r\n`).join('');
}

function field(value: string | number | undefined): string {
  if (value === undefined) return '';
  const text = typeof value === 'number' ? String(Number(value.toPrecision(8))) : value;
  return csvCell(text);
}
