// From SI to the text that people read: units of their trade, digits that mean something. The only place where this is done.

import { type KindName, kindOf } from './unit-table.ts';

export type UnitSystem = 'metric' | 'imperial';

/** A unit to show a kind in, from which size on, and with how many decimals at most. */
interface Shown {
  readonly unit: string;
  /** Spelling of the unit in the table, where it differs. */
  readonly plain?: string;
  readonly decimals: number;
  /** Smallest absolute value, in SI, that is shown in this unit. */
  readonly from?: number;
}

/** Largest first: the first whose `from` is reached is taken. */
const metric: Readonly<Partial<Record<KindName, readonly Shown[]>>> = {
  length: [
    { unit: 'm', decimals: 2, from: 10 },
    { unit: 'mm', decimals: 1 },
  ],
  area: [
    { unit: 'm²', plain: 'm2', decimals: 2, from: 0.1 },
    { unit: 'cm²', plain: 'cm2', decimals: 1, from: 1e-5 },
    { unit: 'mm²', plain: 'mm2', decimals: 2 },
  ],
  volume: [
    { unit: 'm³', plain: 'm3', decimals: 2, from: 0.1 },
    { unit: 'l', decimals: 1 },
  ],
  mass: [
    { unit: 'kg', decimals: 2, from: 1 },
    { unit: 'g', decimals: 1 },
  ],
  temperature: [{ unit: '°C', decimals: 1 }],
  'temperature-difference': [{ unit: 'K', decimals: 1 }],
  flow: [{ unit: 'm³/h', plain: 'm3/h', decimals: 1 }],
  pressure: [{ unit: 'Pa', decimals: 2 }],
  power: [
    { unit: 'kW', decimals: 2, from: 10_000 },
    { unit: 'W', decimals: 1 },
  ],
  energy: [
    { unit: 'kWh', decimals: 2, from: 360_000 },
    { unit: 'Wh', decimals: 1 },
  ],
  speed: [{ unit: 'm/s', decimals: 2 }],
  'u-value': [{ unit: 'W/(m² K)', plain: 'W/m2K', decimals: 2 }],
  'heat-loss': [{ unit: 'W/K', decimals: 1 }],
  'heat-capacity': [
    { unit: 'kJ/K', decimals: 1, from: 1000 },
    { unit: 'J/K', decimals: 0 },
  ],
  conductivity: [{ unit: 'W/(m K)', plain: 'W/mK', decimals: 3 }],
  density: [{ unit: 'kg/m³', plain: 'kg/m3', decimals: 0 }],
  'specific-heat': [{ unit: 'J/(kg K)', plain: 'J/kgK', decimals: 0 }],
  share: [{ unit: '%', decimals: 1 }],
  number: [{ unit: '', decimals: 3 }],
  'water-rate': [{ unit: 'g/h', decimals: 1 }],
  'print-rate': [{ unit: 'g/h', decimals: 1 }],
  'air-change': [{ unit: '/h', decimals: 2 }],
  'loss-rate': [{ unit: '/h', decimals: 2 }],
  'particle-rate': [{ unit: '/min', decimals: 1 }],
  'vapour-rate': [{ unit: 'µg/min', plain: 'ug/min', decimals: 2 }],
  'particle-concentration': [{ unit: '/cm³', plain: '/cm3', decimals: 0 }],
  'mass-concentration': [
    { unit: 'g/m³', plain: 'g/m3', decimals: 1, from: 1e6 },
    { unit: 'µg/m³', plain: 'ug/m3', decimals: 1 },
  ],
  irradiance: [{ unit: 'W/m²', plain: 'W/m2', decimals: 0 }],
  illuminance: [{ unit: 'lx', decimals: 0 }],
  'luminous-flux': [{ unit: 'lm', decimals: 0 }],
  'exposure-time': [
    { unit: 's', decimals: 1, from: 1 },
    { unit: 'ms', decimals: 1 },
  ],
  'sound-level': [{ unit: 'dB(A)', plain: 'dBA', decimals: 0 }],
  'energy-price': [{ unit: '/kWh', decimals: 2 }],
  money: [{ unit: '', decimals: 2 }],
  'electric-current': [
    { unit: 'A', decimals: 2, from: 0.1 },
    { unit: 'mA', decimals: 1 },
  ],
  voltage: [
    { unit: 'V', decimals: 1, from: 1 },
    { unit: 'mV', decimals: 0 },
  ],
  angle: [{ unit: '°', decimals: 0 }],
  force: [
    { unit: 'kN', decimals: 2, from: 1000 },
    { unit: 'N', decimals: 1 },
  ],
  stress: [
    { unit: 'N/mm²', plain: 'N/mm2', decimals: 2, from: 100_000 },
    { unit: 'kPa', decimals: 1 },
  ],
  'specific-energy': [{ unit: 'MJ/kg', decimals: 1 }],
  'fire-heat': [
    { unit: 'MJ', decimals: 2, from: 100_000 },
    { unit: 'kJ', decimals: 1 },
  ],
  acceleration: [{ unit: 'm/s²', plain: 'm/s2', decimals: 2 }],
  frequency: [
    { unit: 'kHz', decimals: 1, from: 1000 },
    { unit: 'Hz', decimals: 1 },
  ],
};

const imperial: Readonly<Partial<Record<KindName, readonly Shown[]>>> = {
  length: [
    { unit: 'ft', decimals: 1, from: 3.048 },
    { unit: 'in', decimals: 2 },
  ],
  area: [
    { unit: 'ft²', plain: 'ft2', decimals: 1, from: 0.0929 },
    { unit: 'in²', plain: 'in2', decimals: 1 },
  ],
  volume: [{ unit: 'ft³', plain: 'ft3', decimals: 2 }],
  mass: [
    { unit: 'lb', decimals: 2, from: 0.4536 },
    { unit: 'oz', decimals: 1 },
  ],
  temperature: [{ unit: '°F', decimals: 1 }],
  'temperature-difference': [{ unit: '°F', decimals: 1 }],
  flow: [{ unit: 'cfm', decimals: 1 }],
  pressure: [{ unit: 'inH2O', decimals: 3 }],
  speed: [{ unit: 'ft/min', decimals: 0 }],
  force: [{ unit: 'lbf', decimals: 2 }],
  stress: [{ unit: 'psi', decimals: 0 }],
  'specific-energy': [{ unit: 'BTU/lb', decimals: 0 }],
  'fire-heat': [{ unit: 'BTU', decimals: 0 }],
  acceleration: [{ unit: 'in/s²', plain: 'in/s2', decimals: 1 }],
  illuminance: [{ unit: 'fc', decimals: 1 }],
};

/** Significant digits of a value that comes out of a model; more would claim what nobody knows. */
const DIGITS = 3;

/**
 * An SI value with its unit.
 *
 * @example Metric and imperial
 * ```ts
 * formatQuantity('length', 0.82); // => 820 mm
 * formatQuantity('temperature', 309.55); // => 36.4 °C
 * formatQuantity('flow', 0.01, 'imperial'); // => 21.2 cfm
 * formatQuantity('particle-rate', 1.7e8); // => 1.02e10 /min
 * ```
 */
export function formatQuantity(kind: KindName, value: number, system: UnitSystem = 'metric'): string {
  if (kind === 'duration') return formatDuration(value);
  const shown = shownUnit(kind, value, system);
  const number = formatNumber(inUnit(kind, value, shown), shown.decimals);
  return shown.unit === '' ? number : `${number} ${shown.unit}`;
}

/** A band of values in one unit: `34 to 39 °C`. */
export function formatBand(kind: KindName, low: number, high: number, system: UnitSystem = 'metric'): string {
  if (kind === 'duration') return `${formatDuration(low)} to ${formatDuration(high)}`;
  const shown = shownUnit(kind, Math.max(Math.abs(low), Math.abs(high)), system);
  const [from, to] = [low, high].map((value) => formatNumber(inUnit(kind, value, shown), shown.decimals));
  return `${from} to ${to}${shown.unit === '' ? '' : ` ${shown.unit}`}`;
}

/**
 * The number alone, in the unit in which `beside` is shown: for rows of a table that tell the unit once. Durations in hours and minutes.
 *
 * @example A small one in a row of large ones
 * ```ts
 * formatNumberBeside('energy', 360_000, 14_000_000); // => 0.1
 * formatNumberBeside('duration', 4500, 9000); // => 1:15
 * ```
 */
export function formatNumberBeside(
  kind: KindName,
  value: number,
  beside: number,
  system: UnitSystem = 'metric',
): string {
  if (kind === 'duration') return hoursAndMinutes(value);
  const shown = shownUnit(kind, beside, system);
  return formatNumber(inUnit(kind, value, shown), shown.decimals);
}

function hoursAndMinutes(seconds: number): string {
  const minutes = Math.round(Math.abs(seconds) / 60);
  const sign = seconds < 0 && minutes > 0 ? '-' : '';
  return `${sign}${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}

/** The unit alone in which a kind is shown, for table heads and axes. */
export function shownUnitName(kind: KindName, value: number, system: UnitSystem = 'metric'): string {
  return kind === 'duration' ? 'h' : shownUnit(kind, value, system).unit;
}

/**
 * A number with three significant digits, no more decimals than asked, and an exponent only when there is no other way.
 *
 * @example Large, small and none
 * ```ts
 * formatNumber(36.449, 1); // => 36.4
 * formatNumber(0.0000123, 2); // => 1.23e-5
 * formatNumber(1750, 1); // => 1750
 * ```
 */
export function formatNumber(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return 'unknown';
  const size = Math.abs(value);
  if (size < 1e-12) return '0';
  if (size >= 1e6 || size < 1e-3) return exponent(value);
  const magnitude = Math.floor(Math.log10(size));
  // Below 1, two digits are kept whatever the unit's usual decimals: a gap of 0.15 mm is no gap of 0.2 mm.
  const places = Math.max(0, Math.min(Math.max(decimals, size < 1 ? 1 - magnitude : 0), DIGITS - 1 - magnitude));
  const fixed = value.toFixed(places);
  return places === 0 ? fixed : fixed.replace(/\.?0+$/, '');
}

/**
 * Seconds as people say them.
 *
 * @example Hours and minutes
 * ```ts
 * formatDuration(9000); // => 2 h 30 min
 * formatDuration(45); // => 45 s
 * formatDuration(400_000); // => 4 d 15 h
 * ```
 */
export function formatDuration(seconds: number): string {
  if (!Number.isFinite(seconds)) return 'unknown';
  if (seconds < 0) return `-${formatDuration(-seconds)}`;
  if (seconds < 10) return `${formatNumber(seconds, 1)} s`;
  if (Math.round(seconds) < 120) return `${Math.round(seconds)} s`;
  const minutes = Math.round(seconds / 60);
  if (minutes < 60) return `${minutes} min`;
  if (minutes < 48 * 60) return joined(Math.floor(minutes / 60), 'h', minutes % 60, 'min');
  const hours = Math.round(seconds / 3600);
  if (hours < 24 * 60) return joined(Math.floor(hours / 24), 'd', hours % 24, 'h');
  return `${Math.round(hours / 24)} d`;
}

/**
 * Seconds after midnight as a time of day; later days say so.
 *
 * @example On the second day
 * ```ts
 * formatClock(77_400); // => 21:30
 * formatClock(95_400); // => 2:30 on day 2
 * ```
 */
export function formatClock(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  const day = minutes === 1440 ? 0 : Math.floor(minutes / 1440);
  const left = minutes - day * 1440;
  const clock = `${Math.floor(left / 60)}:${String(left % 60).padStart(2, '0')}`;
  return day === 0 ? clock : `${clock} on day ${day + 1}`;
}

function joined(large: number, largeUnit: string, small: number, smallUnit: string): string {
  return small === 0 ? `${large} ${largeUnit}` : `${large} ${largeUnit} ${small} ${smallUnit}`;
}

function exponent(value: number): string {
  return value
    .toExponential(DIGITS - 1)
    .replace(/\.?0*e/, 'e')
    .replace('e+', 'e');
}

function shownUnit(kind: KindName, value: number, system: UnitSystem): Shown {
  const candidates = (system === 'imperial' ? imperial[kind] : undefined) ??
    metric[kind] ?? [{ unit: '', decimals: 3 }];
  return candidates.find(({ from = 0 }) => Math.abs(value) >= from * (1 - 1e-9)) ?? candidates.at(-1)!;
}

function inUnit(kind: KindName, value: number, { unit, plain = unit }: Shown): number {
  const { factor, before = 0 } = kindOf(kind).units[plain] ?? { factor: 1 };
  return value / factor - before;
}
