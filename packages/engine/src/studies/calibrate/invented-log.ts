// Invented logs: a cabinet with known values of its unknowns, simulated and read with noise that remembers. For examples, and for
// asking whether calibration finds what was put in.

import type { CabinetSource } from '../../judge/variants.ts';
import type { LogKind } from '../../logs/log.ts';
import type { Place } from '../../logs/places.ts';
import { normalQuantile } from '../../numerics/normal.ts';
import { randomStream } from '../../numerics/random.ts';
import { formatDate } from '../../units/calendar.ts';
import type { Profile } from '../../units/profile.ts';
import { logRunner } from './expected.ts';

export interface InventedColumn {
  readonly header: string;
  readonly place: Place;
  readonly kind: LogKind;
  /** Standard deviation of its noise, in the kind's unit (of the logarithm for a concentration), and correlation over an hour. */
  readonly spread: number;
  readonly carry: number;
  /** Steps that the sensor shows, SI; 0.1 unless given. */
  readonly step?: number;
}

export interface Invention {
  readonly day: string;
  readonly seed: number;
  /** Days since 1970-01-01 of its first date. */
  readonly firstDay: number;
  readonly dates: number;
  /** s between rows, and hours of the day that are logged. */
  readonly every: number;
  readonly hours: readonly [number, number];
  readonly columns: readonly InventedColumn[];
  /** True values of unknowns on a date. */
  readonly truth: (date: number) => Readonly<Record<string, number>>;
  /** Course of the room on a date, K, where it is not the file's own. */
  readonly room?: (date: number) => Profile;
}

/** Readings of every column at every time, SI, concentrations in logarithms; and the times, s after the first midnight. */
function inventedReadings(
  source: CabinetSource,
  invention: Invention,
): { readonly times: readonly number[]; readonly values: readonly (readonly number[])[] } {
  const { day, seed, dates, every, hours, columns, truth, room } = invention;
  const times = Array.from(
    { length: Math.floor(((hours[1] - hours[0]) * 3600) / every) },
    (_, at) => hours[0] * 3600 + at * every,
  );
  const days = Array.from({ length: dates }, (_, date) => ({
    ...(room === undefined ? {} : { room: room(date) }),
    probes: columns.map(({ place, kind }) => ({ place, kind, times })),
  }));
  const run = logRunner(source, { day, days, grid: { places: [], times: [] } });
  const random = randomStream(seed);
  const normal = (): number => normalQuantile(random());
  const clean = days.map((_, date) => {
    const { values, fault } = run({ date, values: truth(date), grid: false });
    if (fault !== undefined) throw new RangeError(`inventedReadings: truth cannot be run: ${fault}`);
    return values;
  });
  const noises = columns.map(({ spread, carry }) => {
    const kept = carry ** (every / 3600);
    let last = normal();
    return (): number => {
      last = kept * last + Math.sqrt(1 - kept * kept) * normal();
      return spread * last;
    };
  });
  return {
    times: days.flatMap((_, date) => times.map((time) => date * 86_400 + time)),
    values: columns.map((column, at) =>
      clean.flatMap((values) =>
        values[at]!.map((value) => {
          const step = column.step ?? (column.kind === 'humidity' ? 0.001 : 0.1);
          return column.kind === 'concentration' || step === 0
            ? value + noises[at]!()
            : Math.round((value + noises[at]!()) / step) * step;
        }),
      ),
    ),
  };
}

const WRITTEN: Readonly<Record<LogKind, (value: number) => string>> = {
  temperature: (value) => (value - 273.15).toFixed(1),
  humidity: (value) => (100 * value).toFixed(1),
  power: (value) => value.toFixed(1),
  concentration: (value) => Math.exp(value).toPrecision(3),
};

/** The same as the text of a CSV file, with a first line that says what it is. */
export function inventedLog(source: CabinetSource, invention: Invention, says: string): string {
  const { times, values } = inventedReadings(source, invention);
  const rows = times.map((time, row) => {
    const day = formatDate(invention.firstDay + Math.floor(time / 86_400));
    const clock = time % 86_400;
    const two = (number: number): string => String(Math.floor(number)).padStart(2, '0');
    const cells = invention.columns.map(({ kind }, at) => WRITTEN[kind](values[at]![row]!));
    return [`${day} ${two(clock / 3600)}:${two((clock / 60) % 60)}`, ...cells].join(',');
  });
  return [`# ${says}`, ['time', ...invention.columns.map(({ header }) => header)].join(','), ...rows, ''].join('\n');
}
