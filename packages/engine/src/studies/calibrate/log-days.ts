// A log laid on the days of the file: each date of the log is one run of that day, with the room's own course where the log has it;
// values are means over slots, so that minutes of a logger do not count as so many proofs.

import type { Log, LogColumn, LogKind, Reading } from '../../logs/log.ts';
import type { Place } from '../../logs/places.ts';
import type { Profile } from '../../units/profile.ts';

/** One column on one date: times within the day, s. */
export interface Probe {
  readonly place: Place;
  readonly kind: LogKind;
  readonly times: readonly number[];
}

/** What has to be simulated for one date. */
export interface LogDay {
  /** Measured course of the room, K; the file's own without it. */
  readonly room?: Profile;
  readonly outdoors?: Profile;
  readonly probes: readonly Probe[];
}

/** A column in slots, over all dates. */
export interface Channel {
  readonly name: string;
  readonly kind: LogKind;
  readonly place: Place;
  /** Date of each value, counted from 0, its time within the day and its slot counted over all dates. */
  readonly date: readonly number[];
  readonly time: readonly number[];
  readonly slot: readonly number[];
  readonly value: readonly number[];
  /** Readings in each slot. */
  readonly count: readonly number[];
}

export interface LaidLog {
  readonly days: readonly LogDay[];
  readonly channels: readonly Channel[];
  readonly slotLength: number;
  /** Dates of the log that have values, as offsets from its first day. */
  readonly dates: readonly number[];
  readonly roomLogged: boolean;
  /** s from one date to the next: whole days that the day of the file takes. */
  readonly span: number;
}

const DAY = 86_400;
/** Values a column beyond which slots are lengthened, and the slots that are tried, s. */
const MOST_VALUES = 300;
/** Readings from which on those of the room are a course. */
const FEWEST = 4;
const SLOTS = [300, 600, 900, 1800, 3600];

/** Air around the cabinet is what the day is run with; a reading or two of the room, and what its air carries, are values like others. */
function isGiven({ place, kind, readings }: LogColumn): boolean {
  if (place.what === 'outdoors') return true;
  return place.what === 'room' && kind !== 'concentration' && readings.length >= FEWEST;
}

/** `length`: of the day; a day longer than 24 h takes its readings from the dates that follow too. `slot`: asked for, s. */
export function laidOut(log: Log, length: number, slot?: number): LaidLog {
  const span = Math.max(1, Math.ceil(length / DAY)) * DAY;
  const columns = log.columns.map((column) => ({
    ...column,
    readings: column.readings.filter(({ time }) => time >= 0 && time % span <= length),
  }));
  const fitted = columns.filter((column) => !isGiven(column));
  const slotLength = slot ?? slotFor(fitted);
  const dates = [
    ...new Set(columns.flatMap(({ readings }) => readings.map(({ time }) => Math.floor(time / span)))),
  ].sort((a, b) => a - b);
  // Air that the log knows outside is not fitted but given; what it carries (humidity, dust) is left to the file.
  const given = (what: 'room' | 'outdoors', date: number): Profile | undefined =>
    courseOf(
      columns.find((column) => column.place.what === what && column.kind === 'temperature' && isGiven(column)),
      date * span,
      span,
    );
  const channels = fitted
    .map((column) => channelOf(column, span, slotLength, dates))
    .filter(({ value }) => value.length > 0);
  const days = dates.map((date, at): LogDay => {
    const room = given('room', date);
    const outdoors = given('outdoors', date);
    return {
      ...(room === undefined ? {} : { room }),
      ...(outdoors === undefined ? {} : { outdoors }),
      probes: channels.map(({ place, kind, date: own, time }) => ({
        place,
        kind,
        times: time.filter((_, row) => own[row] === at),
      })),
    };
  });
  return {
    days,
    channels,
    slotLength,
    dates,
    span,
    roomLogged: days.length > 0 && days.every(({ room }) => room !== undefined),
  };
}

function slotFor(columns: readonly LogColumn[]): number {
  return SLOTS.find((slot) => columns.every(({ readings }) => slotsOf(readings, slot) <= MOST_VALUES)) ?? SLOTS.at(-1)!;
}

function slotsOf(readings: readonly Reading[], slot: number): number {
  return new Set(readings.map(({ time }) => Math.floor(time / slot))).size;
}

function channelOf(
  { name, kind, place, readings }: LogColumn,
  span: number,
  slotLength: number,
  dates: readonly number[],
): Channel {
  const groups = new Map<number, { time: number; value: number; count: number }>();
  for (const { time, value } of readings) {
    const slot = Math.floor(time / slotLength);
    const group = groups.get(slot) ?? { time: 0, value: 0, count: 0 };
    groups.set(slot, { time: group.time + time, value: group.value + value, count: group.count + 1 });
  }
  const slots = [...groups].sort(([a], [b]) => a - b);
  const means = slots.map(([, { time, count }]) => time / count);
  return {
    name,
    kind,
    place,
    date: means.map((time) => dates.indexOf(Math.floor(time / span))),
    time: means.map((time) => time % span),
    slot: slots.map(([slot]) => slot),
    value: slots.map(([, { value, count }]) => value / count),
    count: slots.map(([, { count }]) => count),
  };
}

/** A measured course within one date, in quarters of an hour. */
function courseOf(column: LogColumn | undefined, from: number, span: number): Profile | undefined {
  const inside = column?.readings.filter(({ time }) => time >= from && time < from + span) ?? [];
  if (inside.length < FEWEST) return undefined;
  const groups = new Map<number, { time: number; value: number; count: number }>();
  for (const { time, value } of inside) {
    const slot = Math.floor((time - from) / 900);
    const group = groups.get(slot) ?? { time: 0, value: 0, count: 0 };
    groups.set(slot, { time: group.time + time - from, value: group.value + value, count: group.count + 1 });
  }
  return [...groups]
    .sort(([a], [b]) => a - b)
    .map(([, { time, value, count }]) => [time / count, value / count] as const);
}
