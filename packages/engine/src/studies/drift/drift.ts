// Has the cabinet drifted since its file was put right? A newer log is held against the file: control charts on what is new in each
// hour say whether and since when, and a fit of each candidate says what would explain it.

import type { ReadSource } from '../../judge/judge.ts';
import type { Log, LogKind, LogRemark } from '../../logs/log.ts';
import type { Place } from '../../logs/places.ts';
import { cusum, ewma, onsetOf } from '../../numerics/charts.ts';
import { cusumLimitFor, ewmaLimitFor } from '../../numerics/run-length.ts';
import type { Noise } from '../../numerics/serial-noise.ts';
import { type EvaluateLog, evaluateLogHere, type LogPlan } from '../calibrate/expected.ts';
import { rowsOf } from '../calibrate/fit-log.ts';
import { type Channel, type LaidLog, laidOut } from '../calibrate/log-days.ts';
import { type LogHooks, LogStopped, type Seen, seeing } from '../calibrate/seeing.ts';
import { filterAt, type Unknown, unknownNamed, widthsAway } from '../calibrate/unknowns.ts';
import { type Explanation, explanation } from './explain-drift.ts';
import { byTheHour, type Hourly, innovations, settledNoise } from './hourly.ts';

export interface DriftColumn {
  readonly name: string;
  readonly place: Place;
  readonly kind: LogKind;
  readonly hours: number;
  /** Residuals while all was well: from the calibration of the file, or from the first part of this log. */
  readonly noise: {
    readonly mean: number;
    readonly spread: number;
    readonly carry: number;
    readonly from: 'calibration' | 'this log';
  };
  readonly cusum: {
    readonly limit: number;
    readonly most: number;
    readonly alarm?: number;
    readonly side?: 'up' | 'down';
  };
  readonly ewma: { readonly limit: number; readonly alarm?: number };
  /** Chance of an alarm in a log of this length although nothing drifted. */
  readonly falseAlarm: number;
  /** For a picture: hours after the log's first midnight, mean residual of the hour. */
  readonly course: { readonly hours: readonly number[]; readonly residuals: readonly number[] };
}

export interface DriftStudy {
  readonly version: 1;
  readonly day: string;
  readonly log: {
    readonly file: string;
    readonly firstDay?: string;
    readonly dates: number;
    readonly remarks: readonly LogRemark[];
    readonly roomLogged: boolean;
  };
  /** Name of the log that the file was calibrated with. */
  readonly calibratedWith?: string;
  readonly columns: readonly DriftColumn[];
  readonly drifted: boolean;
  /** Nothing alarmed, but no column has hours enough for an alarm to be likely: that is no answer. */
  readonly tooShort: boolean;
  /** Most likely first hour after the onset, and an interval of about 95 %, in s after the log's first midnight. */
  readonly onset?: {
    readonly time: number;
    readonly from: number;
    readonly to: number;
    readonly column: string;
    readonly shift: number;
  };
  /** A chart alarmed, but what stays since then is less than any hour of a log is known to: odd hours, no drift. */
  readonly passing?: { readonly column: string; readonly time: number };
  /** Best first. */
  readonly explanations: readonly Explanation[];
  /** Candidates that explain it about as well as the best. */
  readonly notToldApart: readonly string[];
  readonly stopped: boolean;
}

export interface DriftOptions {
  readonly day: string;
  /** First part of the log in which all was well, s; the first quarter unless given, where the file's own calibration does not say. */
  readonly settled?: number;
  readonly evaluate?: (plan: LogPlan) => EvaluateLog;
  readonly progress?: (done: number, all: number) => void;
  readonly stop?: () => boolean;
}

/** Reference value of the CUSUM: shifts of one deviation are found soonest. */
const K = 0.5;
const LAMBDA = 0.1;
/** A log gives an alarm without a cause in one of twenty. */
const LENGTHS = 20;
/** Fall of the sum of squares within which two explanations count as equal: 1 in 7 by likelihood. */
const EQUAL = 4;

/** A chart takes some ten new hours to find a shift of one deviation, and has to know the usual before it. Judgement. */
export const LEAST_HOURS = 24;

/** @throws RangeError when the day is not of this cabinet, or no value of the log lies in it. */
export async function drift(source: ReadSource, log: Log, options: DriftOptions): Promise<DriftStudy> {
  const { cabinet } = source;
  const { day, progress, stop = () => false } = options;
  const length = cabinet.days[day]?.length;
  if (length === undefined) throw new RangeError(`drift: day is "${day}"; it must be one of the file`);
  const laid = laidOut(log, length, SLOT);
  if (laid.channels.length === 0)
    throw new RangeError('drift: the log has nothing within the day but room and outdoors; log a bay or a sensor');
  const plan: LogPlan = { day, days: laid.days, grid: { places: [], times: [] } };
  const evaluate = (options.evaluate ?? ((each) => evaluateLogHere(source, each)))(plan);
  const hooks: LogHooks = { evaluate, stop, ...(progress === undefined ? {} : { progress }) };
  const opening = {
    version: 1,
    day,
    log: {
      file: log.file,
      ...(log.firstDay === undefined ? {} : { firstDay: log.firstDay }),
      dates: laid.days.length,
      remarks: log.remarks,
      roomLogged: laid.roomLogged,
    },
    ...(cabinet.calibration === undefined ? {} : { calibratedWith: cabinet.calibration.log }),
  } as const;
  try {
    const seen = await seeing([], laid, plan, hooks);
    const charts = laid.channels.map((channel, at) => chartOf(channel, at, laid, seen, source, options.settled));
    const columns = charts.map(({ column }) => column);
    const alarmed = alarmsOf(charts);
    const onsets = alarmed.map(onsetIn);
    const onset = onsets.find(({ shift }, at) => Math.abs(shift) >= LEAST[alarmed[at]!.column.kind]);
    if (onset === undefined)
      return {
        ...opening,
        columns,
        drifted: false,
        ...(onsets.length === 0 ? {} : { passing: { column: onsets[0]!.column, time: onsets[0]!.time } }),
        tooShort: columns.every(({ hours }) => hours < LEAST_HOURS),
        explanations: [],
        notToldApart: [],
        stopped: stop(),
      };
    const explanations = await explained(source, laid, seen, charts, onset.time, hooks);
    const [best] = explanations;
    return {
      ...opening,
      columns,
      drifted: true,
      tooShort: false,
      onset,
      explanations,
      notToldApart: explanations
        .filter(({ fall }) => best !== undefined && best.fall - fall < EQUAL)
        .map(({ id }) => id),
      stopped: stop(),
    };
  } catch (error) {
    if (!(error instanceof LogStopped)) throw error;
    return {
      ...opening,
      columns: [],
      drifted: false,
      tooShort: true,
      explanations: [],
      notToldApart: [],
      stopped: true,
    };
  }
}

/** Slots in which the log is read, s; charts then take means over the hour, over which noise averages out and little is carried. */
const SLOT = 900;
const IN_AN_HOUR: number = 3600 / SLOT;

interface Chart {
  readonly column: DriftColumn;
  readonly hourly: Hourly;
  readonly fresh: Float64Array;
}

function chartOf(
  channel: Channel,
  at: number,
  laid: LaidLog,
  seen: Seen,
  { cabinet }: ReadSource,
  settled: number | undefined,
): Chart {
  const { from, to } = rowsOf(laid.channels)[at]!;
  const times = channel.date.map((date, row) => laid.dates[date]! * laid.span + channel.time[row]!);
  // Seen holds computed less measured.
  const hourly = byTheHour(
    times,
    Array.from(seen.nominal.subarray(from, to), (each) => -each),
  );
  const kept = cabinet.calibration?.residuals[channel.name];
  const [start = 0, end = 0] = [hourly.hours[0], hourly.hours.at(-1)];
  const until = settled === undefined ? start + (end - start + 1) / 4 : start + settled / 3600;
  const early = settledNoise(hourly, until);
  const noise =
    kept === undefined || settled !== undefined
      ? {
          mean: early.mean,
          spread: Math.max(early.spread, LEAST[channel.kind]),
          carry: early.carry,
          from: 'this log' as const,
        }
      : {
          mean: 0,
          spread: Math.max(hourSpread(kept), LEAST[channel.kind]),
          carry: Math.max(0, kept.carry),
          from: 'calibration' as const,
        };
  const fresh = innovations(hourly, noise, noise.mean);
  const count = Math.max(fresh.length, 8);
  const runLength = LENGTHS * count * laid.channels.length;
  const limit = cusumLimitFor(K, runLength);
  const width = ewmaLimitFor(LAMBDA, runLength);
  const sums = cusum(fresh, K, limit);
  const means = ewma(fresh, LAMBDA, width);
  return {
    hourly,
    fresh,
    column: {
      name: channel.name,
      place: channel.place,
      kind: channel.kind,
      hours: fresh.length,
      noise,
      cusum: {
        limit,
        most: Math.max(...sums.up, ...sums.down),
        ...(sums.alarm === undefined ? {} : { alarm: hourly.hours[sums.alarm]! * 3600, side: sums.side! }),
      },
      ewma: { limit: width, ...(means.alarm === undefined ? {} : { alarm: hourly.hours[means.alarm]! * 3600 }) },
      falseAlarm: 1 - Math.exp(-2 / (LENGTHS * laid.channels.length)),
      course: { hours: hourly.hours, residuals: hourly.values },
    },
  };
}

/** Less than these no hour of a log is known to: what the model itself leaves open. Judgement. */
const LEAST: Readonly<Record<LogKind, number>> = { temperature: 0.1, humidity: 0.01, power: 1, concentration: 0.05 };

/** Deviation of a mean over an hour from that of single slots: what is carried over does not average out. */
function hourSpread({ spread, carry }: { readonly spread: number; readonly carry: number }): number {
  if (carry <= 0) return spread / Math.sqrt(12);
  const rate = -Math.log(carry);
  return spread * Math.sqrt((2 / rate ** 2) * (rate - 1 + carry));
}

/** Noise of slots whose means over the hour have this noise. */
function slotNoise({ spread, carry }: Noise): Noise {
  const kept = Math.max(0, carry) ** (1 / IN_AN_HOUR);
  let sum = IN_AN_HOUR;
  for (let apart = 1; apart < IN_AN_HOUR; apart += 1) sum += 2 * (IN_AN_HOUR - apart) * kept ** apart;
  return { spread: (spread * IN_AN_HOUR) / Math.sqrt(sum), carry: kept };
}

/** The charts that alarm, first things first. */
function alarmsOf(charts: readonly Chart[]): Chart[] {
  const when = ({ column }: Chart): number =>
    Math.min(column.cusum.alarm ?? Number.POSITIVE_INFINITY, column.ewma.alarm ?? Number.POSITIVE_INFINITY);
  return charts.filter((chart) => Number.isFinite(when(chart))).sort((a, b) => when(a) - when(b));
}

function onsetIn({ column, hourly, fresh }: Chart): NonNullable<DriftStudy['onset']> {
  const { hours } = hourly;
  // A shift shows whole in its first hour, and only as far as it is new in those that follow.
  const { at, from, to, shift } = onsetOf(fresh, (first) =>
    innovations({ hours, values: hours.map((_, each) => (each < first ? 0 : 1)) }, column.noise),
  );
  const time = (each: number): number => hours[each]! * 3600;
  return { time: time(at), from: time(from), to: time(to), column: column.name, shift };
}

/** What may drift in a cabinet like this one. */
function candidatesOf(source: ReadSource, roomLogged: boolean): Unknown[] {
  const { cabinet } = source;
  const ids = [
    ...Object.keys(cabinet.paths)
      .filter((id) => filterAt(cabinet, id) !== undefined)
      .map((id) => `loading.${id}`),
    'leakage',
    'fan-flow',
    ...(roomLogged ? [] : ['room-temperature']),
    ...Object.keys(cabinet.sensors).map((id) => `offset.${id}`),
  ];
  return ids.flatMap((id) => unknownNamed(id, source) ?? []);
}

/** Drifts go further than doubts: a seal may open a tenfold, a filter clog whole. */
function boundsOf(unknown: Unknown): readonly [number, number] {
  const [low, high] = unknown.bounds;
  if (unknown.id.startsWith('loading.')) return [widthsAway(unknown, low), widthsAway(unknown, high)];
  if (unknown.id === 'fan-flow')
    return [widthsAway(unknown, 0.1 * unknown.nominal), widthsAway(unknown, 1.5 * unknown.nominal)];
  if (unknown.id === 'leakage')
    return [widthsAway(unknown, 0.2 * unknown.nominal), widthsAway(unknown, 30 * unknown.nominal)];
  return [-15, 15];
}

async function explained(
  source: ReadSource,
  laid: LaidLog,
  seen: Seen,
  charts: readonly Chart[],
  onset: number,
  hooks: LogHooks,
): Promise<Explanation[]> {
  const after = laid.channels.map(({ date, time }) =>
    date.flatMap((each, row) => (laid.dates[each]! * laid.span + time[row]! >= onset ? [row] : [])),
  );
  const rows = rowsOf(laid.channels);
  let from = 0;
  const kept = laid.channels.map(({ slot }, at) => {
    const slots = after[at]!.map((row) => slot[row]!);
    const one = { from, to: from + slots.length, slots };
    from += slots.length;
    return one;
  });
  const cut = (all: Float64Array): Float64Array =>
    Float64Array.from(after.flatMap((each, at) => each.map((row) => all[rows[at]!.from + row]!)));
  const noises = charts.map(({ column }) => slotNoise(column.noise));
  const first = Math.max(
    0,
    laid.dates.findIndex((date) => (date + 1) * laid.span > onset),
  );
  const found: Explanation[] = [];
  for (const unknown of candidatesOf(source, laid.roomLogged)) {
    const residualsAt = async (points: readonly Float64Array[]): Promise<readonly Float64Array[]> =>
      (await seen.residualsAt(points, [unknown], hooks, first)).map(cut);
    const usual = charts.map(({ column }) => -column.noise.mean);
    found.push(await explanation(unknown, residualsAt, kept, noises, usual, boundsOf(unknown)));
  }
  return found.sort((a, b) => b.fall - a.fall);
}
