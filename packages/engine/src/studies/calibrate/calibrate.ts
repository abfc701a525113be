// What a log of the real cabinet puts right: a few unknowns fitted to it, how surely, which of them it cannot tell apart, and what to
// read next. The simulated day is the model; nothing is learnt that is not physics of the file.

import type { Edit } from '../../cabinet/cabinet.ts';
import type { ReadSource } from '../../judge/judge.ts';
import type { Log, LogKind, LogRemark } from '../../logs/log.ts';
import type { Place } from '../../logs/places.ts';
import { type Matrix, ofColumns } from '../../numerics/dense.ts';
import { whitenedMatrix } from '../../numerics/serial-noise.ts';
import { chosen, strongest } from './choose.ts';
import { type EvaluateLog, evaluateLogHere, type Grid, type LogPlan, logarithm } from './expected.ts';
import { considered, fitLog, halvesOf, type LogFit, rowsOf, startNoises } from './fit-log.ts';
import { type Channel, type LaidLog, laidOut } from './log-days.ts';
import { nextReading } from './next-reading.ts';
import { LogStopped, type Seen, seeing } from './seeing.ts';
import { type Unknown, unknownNamed, usualUnknowns, valueAway } from './unknowns.ts';
import { type Told, writeBack } from './write-back.ts';

export interface CalibratedColumn {
  readonly name: string;
  readonly place: Place;
  readonly kind: LogKind;
  /** Values after means over slots were taken. */
  readonly values: number;
  /** Root mean square of measured less computed, K, W, shares, or of logarithms. */
  readonly before: number;
  readonly after: number;
  /** Deviation of its noise, and correlation over an hour; absent where too few values told it and it was taken as known. */
  readonly noise?: { readonly spread: number; readonly carry: number };
  readonly assumedNoise?: number;
  /** For a picture: s after midnight of the log's first day, SI (concentrations too). */
  readonly course: {
    readonly times: readonly number[];
    readonly measured: readonly number[];
    readonly before: readonly number[];
    readonly after: readonly number[];
  };
}

export interface CalibratedUnknown {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly was: number;
  readonly value: number;
  /** 95 % interval, if all that was not fitted is as the file says. */
  readonly low: number;
  readonly high: number;
  /** 95 % interval, counting the doubt of what was not fitted. */
  readonly lowAll: number;
  readonly highAll: number;
  /** Standard deviation that is left, as a share of what was unknown before. */
  readonly left: number;
  readonly atBound: boolean;
  /** Where what was known before comes from. */
  readonly knownFrom: Unknown['from'];
}

export interface CalibrationStudy {
  readonly version: 1;
  readonly day: string;
  readonly log: {
    readonly file: string;
    readonly firstDay?: string;
    readonly dates: number;
    readonly slot: number;
    readonly remarks: readonly LogRemark[];
    readonly roomLogged: boolean;
  };
  readonly columns: readonly CalibratedColumn[];
  readonly unknowns: readonly CalibratedUnknown[];
  readonly notFitted: readonly { readonly id: string; readonly label: string; readonly why: string }[];
  /** Pairs and groups that the log cannot tell apart. */
  readonly apart: readonly { readonly ids: readonly string[]; readonly correlation: number }[];
  readonly next?: {
    readonly place: Place;
    readonly kind: LogKind;
    readonly time: number;
    readonly noise: number;
    readonly narrows: { readonly id: string; readonly before: number; readonly after: number };
  };
  /** What the file says of the unknowns counted as an observation. */
  readonly prior: boolean;
  readonly converged: boolean;
  /** Changes of the file that keep the values. */
  readonly edits: readonly Edit[];
  readonly stopped: boolean;
}

export interface CalibrateOptions {
  readonly day: string;
  /** Ids of unknowns; those that the log shows unless given. */
  readonly fit?: readonly string[];
  /** Count what the file says as an observation: for few readings unless said. */
  readonly prior?: boolean;
  readonly evaluate?: (plan: LogPlan) => EvaluateLog;
  readonly progress?: (done: number, all: number) => void;
  readonly stop?: () => boolean;
}

/** Correlation from which two unknowns count as not told apart. */
const ALIKE = 0.95;

/** @throws RangeError when the day or an unknown is not of this cabinet, or no value of the log lies in the day. */
export async function calibrate(source: ReadSource, log: Log, options: CalibrateOptions): Promise<CalibrationStudy> {
  const { cabinet } = source;
  const { day, progress, stop = () => false } = options;
  const length = cabinet.days[day]?.length;
  if (length === undefined) throw new RangeError(`calibrate: day is "${day}"; it must be one of the file`);
  const laid = laidOut(log, length);
  if (laid.channels.length === 0)
    throw new RangeError('calibrate: the log has nothing within the day but room and outdoors; log a bay or a sensor');
  const candidates = candidatesOf(source, laid, options.fit);
  const plan: LogPlan = { day, days: laid.days, grid: gridOf(source, laid, length) };
  const evaluate = (options.evaluate ?? ((each) => evaluateLogHere(source, each)))(plan);
  const hooks = { evaluate, stop, ...(progress === undefined ? {} : { progress }) };
  try {
    const seen = await seeing(candidates, laid, plan, hooks);
    return await fitted(source, log, laid, candidates, seen, options, hooks);
  } catch (error) {
    if (!(error instanceof LogStopped)) throw error;
    return {
      ...opening(log, laid, day),
      columns: [],
      unknowns: [],
      notFitted: [],
      apart: [],
      prior: false,
      converged: false,
      edits: [],
      stopped: true,
    };
  }
}

function opening(log: Log, laid: LaidLog, day: string): Pick<CalibrationStudy, 'version' | 'day' | 'log'> {
  return {
    version: 1,
    day,
    log: {
      file: log.file,
      ...(log.firstDay === undefined ? {} : { firstDay: log.firstDay }),
      dates: laid.days.length,
      slot: laid.slotLength,
      remarks: log.remarks,
      roomLogged: laid.roomLogged,
    },
  };
}

function candidatesOf(source: ReadSource, laid: LaidLog, asked: readonly string[] | undefined): Unknown[] {
  const air = laid.channels.some(({ kind }) => kind === 'concentration');
  const usual = usualUnknowns(source, { air, room: laid.roomLogged });
  if (asked === undefined) return usual;
  const named = asked.map((id) => {
    const unknown = unknownNamed(id, source);
    if (unknown === undefined) throw new RangeError(`calibrate: fit is "${id}"; this cabinet has no such unknown`);
    return unknown;
  });
  return [...named, ...usual.filter(({ id }) => !named.some((other) => other.id === id))];
}

/** Places that the log does not have yet, and a dial in every bay, every hour. */
function gridOf({ cabinet }: ReadSource, { channels, roomLogged }: LaidLog, length: number): Grid {
  const logged = new Set(channels.map(({ place, kind }) => `${kind} ${place.what} ${place.id}`));
  const places = [
    ...Object.keys(cabinet.bays).map((id) => ({ place: { what: 'bay', id } as const, kind: 'temperature' as const })),
    ...Object.keys(cabinet.sensors).map((id) => ({
      place: { what: 'sensor', id } as const,
      kind: 'temperature' as const,
    })),
    ...(roomLogged ? [] : [{ place: { what: 'room', id: '' } as const, kind: 'temperature' as const }]),
    ...Object.keys(cabinet.machines).map((id) => ({ place: { what: 'machine', id } as const, kind: 'power' as const })),
  ].filter(({ place, kind }) => place.what === 'bay' || !logged.has(`${kind} ${place.what} ${place.id}`));
  return { places, times: Array.from({ length: Math.floor(length / 3600) }, (_, hour) => hour * 3600) };
}

async function fitted(
  source: ReadSource,
  log: Log,
  laid: LaidLog,
  candidates: readonly Unknown[],
  seen: Seen,
  options: CalibrateOptions,
  hooks: Parameters<typeof seeing>[3],
): Promise<CalibrationStudy> {
  const { channels } = laid;
  const rows = rowsOf(channels);
  const values = rows.at(-1)!.to;
  const few = values < 8 * (options.fit?.length ?? 3);
  const prior = options.prior ?? few;
  // Before noise is known, neighbours within three quarters of an hour count as one.
  const carry = few ? 0 : Math.exp(-laid.slotLength / 2700);
  const guess = startNoises(channels).map((noise) => ({ ...noise, carry }));
  const shown = whitenedMatrix(seen.slopes, rows, guess);
  const first = prior ? strongest(shown) : chosen(shown, candidates);
  const taken = options.fit === undefined ? first.taken : options.fit.map((_, at) => at);
  if (taken.length === 0) return nothingShown(log, laid, candidates, seen, first.left, options);
  const unknowns = taken.map((at) => candidates[at]!);
  const fit = await fitLog((points) => seen.residualsAt(points, unknowns, hooks), unknowns, laid, { prior });
  const others = candidates.map((_, at) => at).filter((at) => !taken.includes(at));
  const white = whitenedMatrix(seen.slopes, rows, fit.noises);
  const more = considered(fit, padded(columnsOf(white, others), fit.white.rows));
  const told = toldOf(unknowns, fit, more);
  const residuals = Object.fromEntries(
    channels.flatMap(({ name, value }, at) =>
      value.length < 24
        ? []
        : [
            [
              name,
              { spread: round(fit.noises[at]!.spread), carry: round(hourly(fit.noises[at]!.carry, laid.slotLength)) },
            ] as const,
          ],
    ),
  );
  const next = nextReading(
    columnsOf(white, [...taken, ...others]),
    seen.grid,
    seen.gridSlopes.map((place) => place.map((slope) => picked(slope, [...taken, ...others]))),
    taken.map((_, at) => at),
  );
  return {
    ...opening(log, laid, options.day),
    columns: columnsTold(channels, laid, seen, fit.residuals, fit.noises),
    unknowns: told.map(({ unknown, value, low, high, lowAll, highAll, left, atBound }) => ({
      id: unknown.id,
      label: unknown.label,
      unit: unknown.unit,
      was: unknown.nominal,
      value,
      low,
      high,
      lowAll,
      highAll,
      left,
      atBound,
      knownFrom: unknown.from,
    })),
    notFitted: (options.fit === undefined ? first.left : []).map(({ at, why }) => ({
      id: candidates[at]!.id,
      label: candidates[at]!.label,
      why,
    })),
    apart: apartOf(unknowns, fit),
    ...(next === undefined
      ? {}
      : {
          next: {
            ...next,
            narrows: { id: unknowns[next.narrows.at]!.id, before: next.narrows.before, after: next.narrows.after },
          },
        }),
    prior,
    converged: fit.converged,
    edits: writeBack(
      told.map((each): Told => ({ unknown: each.unknown, value: each.value, low: each.lowAll, high: each.highAll })),
      source.cabinet,
      {
        log: log.file,
        day: options.day,
        ...(log.firstDay === undefined ? {} : { from: log.firstDay }),
        residuals,
      },
    ),
    stopped: false,
  };
}

function nothingShown(
  log: Log,
  laid: LaidLog,
  candidates: readonly Unknown[],
  seen: Seen,
  left: readonly { readonly at: number; readonly why: string }[],
  { day }: CalibrateOptions,
): CalibrationStudy {
  const noises = startNoises(laid.channels);
  return {
    ...opening(log, laid, day),
    columns: columnsTold(laid.channels, laid, seen, seen.nominal, noises),
    unknowns: [],
    notFitted: left.map(({ at, why }) => ({ id: candidates[at]!.id, label: candidates[at]!.label, why })),
    apart: [],
    prior: false,
    converged: true,
    edits: [],
    stopped: false,
  };
}

const round = (value: number): number => Number(value.toPrecision(3));

/** Correlation of neighbours an hour apart. */
export function hourly(carry: number, slot: number): number {
  const kept = carry <= 0 ? 0 : carry ** (3600 / slot);
  return kept < 1e-3 ? 0 : kept;
}

function toldOf(unknowns: readonly Unknown[], fit: LogFit, more: Matrix) {
  const narrow = halvesOf(fit);
  const wide = halvesOf(fit, more);
  return unknowns.map((unknown, at) => {
    const [u, half, whole] = [fit.at[at]!, narrow[at]!, wide[at]!];
    const within = (widths: number): number =>
      Math.min(Math.max(valueAway(unknown, widths), unknown.bounds[0]), unknown.bounds[1]);
    const deviation = Math.sqrt(fit.covariance.values[at * unknowns.length + at]!);
    return {
      unknown,
      value: valueAway(unknown, u),
      low: within(u - half),
      high: within(u + half),
      lowAll: within(u - whole),
      highAll: within(u + whole),
      left: deviation,
      atBound: fit.atBound[at]!,
    };
  });
}

function apartOf(unknowns: readonly Unknown[], { correlations, blind }: LogFit): CalibrationStudy['apart'] {
  const pairs = unknowns.flatMap((a, i) =>
    unknowns.slice(i + 1).flatMap((b, k) => {
      const correlation = correlations.values[i * unknowns.length + i + 1 + k]!;
      return Math.abs(correlation) >= ALIKE ? [{ ids: [a.id, b.id], correlation }] : [];
    }),
  );
  const groups = blind
    .filter(({ members }) => members.length > 1)
    .map(({ members }) => ({ ids: members.map(({ at }) => unknowns[at]!.id), correlation: 1 }))
    .filter(({ ids }) => !pairs.some((pair) => pair.ids.every((id) => ids.includes(id))));
  return [...pairs, ...groups];
}

function columnsTold(
  channels: readonly Channel[],
  { slotLength, dates, span }: LaidLog,
  { nominal }: Seen,
  residuals: Float64Array,
  noises: LogFit['noises'],
): CalibratedColumn[] {
  const rows = rowsOf(channels);
  return channels.map((channel, at) => {
    const { from, to } = rows[at]!;
    const [before, after] = [nominal.subarray(from, to), residuals.subarray(from, to)];
    const rms = (values: Float64Array): number =>
      Math.sqrt(values.reduce((sum, each) => sum + each * each, 0) / values.length);
    const { kind, place, value, time, date, name } = channel;
    const measured = (row: number): number =>
      kind === 'concentration' ? logarithm(value[row]!, place.contaminant) : value[row]!;
    const shown = (each: number): number => (kind === 'concentration' ? Math.exp(each) : each);
    const { spread, carry } = noises[at]!;
    return {
      name,
      place,
      kind,
      values: value.length,
      before: rms(before),
      after: rms(after),
      ...(value.length < 24 ? { assumedNoise: spread } : { noise: { spread, carry: hourly(carry, slotLength) } }),
      course: {
        times: time.map((each, row) => dates[date[row]!]! * span + each),
        measured: [...value],
        // Residuals are computed less measured.
        before: time.map((_, row) => shown(measured(row) + before[row]!)),
        after: time.map((_, row) => shown(measured(row) + after[row]!)),
      },
    };
  });
}

function columnsOf({ rows, columns, values }: Matrix, which: readonly number[]): Matrix {
  if (which.length === 0) return { rows, columns: 0, values: new Float64Array() };
  return ofColumns(which.map((at) => Float64Array.from({ length: rows }, (_, row) => values[row * columns + at]!)));
}

/** Rows of 0 behind, for what was known before. */
function padded({ rows, columns, values }: Matrix, wanted: number): Matrix {
  const wide = new Float64Array(wanted * columns);
  wide.set(values.subarray(0, Math.min(rows, wanted) * columns));
  return { rows: wanted, columns, values: wide };
}

function picked(slope: Float64Array, which: readonly number[]): Float64Array {
  return Float64Array.from(which, (at) => slope[at]!);
}
